package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// runCatalogue runs the command and returns what it prints.
func runCatalogue(t *testing.T, args ...string) (string, error) {
	t.Helper()
	var out bytes.Buffer
	cmd := newCatalogue()
	cmd.SetOut(&out)
	cmd.SetErr(&out)
	cmd.SetArgs(args)
	cmd.SilenceErrors, cmd.SilenceUsage = true, true
	err := cmd.Execute()
	return out.String(), err
}

func TestCatalogueCheckSaysWhatItRead(t *testing.T) {
	const folder = "../../examples/"
	out, err := runCatalogue(t, "check", folder+"tarnhow.yaml", folder+"upgrades.yaml", folder+"duties.yaml", folder+"enquiries/01-hill-farm.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"all is well", "5 castings", "7 duties", "T24 can be built in 56 ways", "enquiry 01 of Hill farm: casting T24 with 24-3.54, rear axle pulling on the drive side, duty farm in 6 blocks", "56 builds to choose from"} {
		if !strings.Contains(out, want) {
			t.Errorf("no %q in\n%s", want, out)
		}
	}
}

func TestCatalogueCheckTellsAllThatIsWrong(t *testing.T) {
	folder := t.TempDir()
	bad := filepath.Join(folder, "bad.yaml")
	ring := filepath.Join(folder, "ring.yaml")
	for path, text := range map[string]string{bad: "labour: 60\nration: 3\n", ring: "vehicle: {tyre: 235/85R16}\n"} {
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	_, err := runCatalogue(t, "check", bad, ring, filepath.Join(folder, "lost.yaml"))
	if err == nil {
		t.Fatal("all is well")
	}
	for _, want := range []string{bad + ":2:1: ration: unknown key", "lost.yaml: there is no such file", ring + ":1:1: casting: is not told yet."} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("no %q in\n%v", want, err)
		}
	}
}

func TestCatalogueCheckReadsAFileOnce(t *testing.T) {
	const file = "../../examples/tarnhow.yaml"
	_, err := runCatalogue(t, "check", file, "../../examples/./tarnhow.yaml")
	if err == nil || !strings.Contains(err.Error(), "is named twice") || strings.Contains(err.Error(), "default doubt") {
		t.Errorf("got %v", err)
	}
}

func TestCatalogueSchemaIsJSON(t *testing.T) {
	for _, args := range [][]string{{"schema"}, {"schema", "--enquiry"}} {
		out, err := runCatalogue(t, args...)
		if err != nil || !json.Valid([]byte(out)) {
			t.Errorf("%v: %v", args, err)
		}
	}
}

func TestCatalogueAsksForFiles(t *testing.T) {
	for _, args := range [][]string{{"check"}, {"schema", "x"}, {"chek"}} {
		if _, err := runCatalogue(t, args...); err == nil {
			t.Errorf("%v passes", args)
		}
	}
}
