package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// runWeld runs the command and returns what it prints and what it says beside.
func runWeld(args ...string) (out, beside string, err error) {
	var o, e bytes.Buffer
	cmd := newWeld()
	cmd.SetOut(&o)
	cmd.SetErr(&e)
	cmd.SetArgs(args)
	cmd.SilenceErrors, cmd.SilenceUsage = true, true
	err = cmd.Execute()
	return o.String(), e.String(), err
}

func TestWeldPlanIsPrinted(t *testing.T) {
	out, beside, err := runWeld("plan", "../../examples/weld/t31-steel.yaml")
	if err != nil || beside != "" {
		t.Fatalf("%v, %q", err, beside)
	}
	for _, want := range []string{"WELD PLAN  FAW 2231  T31", "No stops.", "PREHEAT", "ORDER", "MEASURE", "Local codes", "approves nothing"} {
		if !strings.Contains(out, want) {
			t.Errorf("no %q in\n%s", want, out)
		}
	}
}

func TestWeldPlanAsSheet(t *testing.T) {
	path := filepath.Join(t.TempDir(), "plan.pdf")
	out, _, err := runWeld("plan", "../../examples/weld/t31-steel.yaml", "--pdf", path)
	if err != nil || !strings.Contains(out, "wrote "+path) {
		t.Errorf("%v in\n%s", err, out)
	}
	if sheet, err := os.ReadFile(path); err != nil || !strings.HasPrefix(string(sheet), "%PDF-") {
		t.Errorf("%v: %.20q", err, sheet)
	}
}

func TestWeldPlanAsJSONAndWithStops(t *testing.T) {
	out, beside, err := runWeld("plan", "--json", "../../examples/weld/unknown-metal.yaml")
	if err == nil || !strings.Contains(err.Error(), "no plan: Unknown metal") {
		t.Errorf("refused, and yet %v", err)
	}
	var plan struct {
		Go    bool
		Stops []struct{ What string }
	}
	if err := json.Unmarshal([]byte(out), &plan); err != nil {
		t.Fatal(err)
	}
	if plan.Go || len(plan.Stops) < 5 || beside != "" {
		t.Errorf("go %v, %d stops, beside %q", plan.Go, len(plan.Stops), beside)
	}

	// A stop that leaves the rest planned is no refusal.
	damp := filepath.Join(t.TempDir(), "damp.yaml")
	text, err := os.ReadFile("../../examples/weld/t31-steel.yaml")
	if err != nil {
		t.Fatal(err)
	}
	wet := strings.NewReplacer("cleaned_with: aqueous", "cleaned_with: aqueous\n  damp: true", "logs: [fellgate-log.yaml]", "").Replace(string(text))
	if err := os.WriteFile(damp, []byte(wet), 0o600); err != nil {
		t.Fatal(err)
	}
	out, beside, err = runWeld("plan", damp)
	if err != nil || !strings.Contains(beside, "there are stops") || !strings.Contains(out, "Too cold or damp") || !strings.Contains(out, "ORDER") {
		t.Errorf("%v, beside %q, in\n%s", err, beside, out)
	}
}

func TestWeldPlanRefusals(t *testing.T) {
	var usage usageError
	if _, _, err := runWeld("plan"); !errors.As(err, &usage) {
		t.Errorf("no file: %v", err)
	}
	if _, _, err := runWeld("bend"); !errors.As(err, &usage) {
		t.Errorf("no such command: %v", err)
	}
	if _, _, err := runWeld("plan", "none.yaml"); err == nil || errors.As(err, &usage) || !strings.Contains(err.Error(), "no such file") {
		t.Errorf("no such file: %v", err)
	}
	bad := filepath.Join(t.TempDir(), "bad.yaml")
	if err := os.WriteFile(bad, []byte("job: x\ncolour: red\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, _, err := runWeld("plan", bad); err == nil || !strings.Contains(err.Error(), bad+":2:1") || !strings.Contains(err.Error(), "colour") {
		t.Errorf("unknown key: %v", err)
	}
}
