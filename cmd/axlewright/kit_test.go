package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"axlewright/kit"
)

func TestKitDrawWritesFilesAndPrintsTheBill(t *testing.T) {
	dir := t.TempDir()
	out, err := say(newKit(), "draw", "../../examples/kits/KIT-T24-A.1.yaml", "--batch", "B0417", "--out", dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"KIT-T24-A.1 for casting T24", "issued and unchanged", "1L", "peg plate", "one kit: 7 pieces",
		"✓ fine: peg, M16×1.5 class 8.8", "The bolt breaks before the thread strips", "Fit the first plates to a real casting"} {
		if !strings.Contains(out, want) {
			t.Errorf("no %q in\n%s", want, out)
		}
	}
	checkUnits(t, "kit draw", out)
	for _, name := range []string{"KIT-T24-A.1-1L.dxf", "KIT-T24-A.1-1R.r12.dxf", "KIT-T24-A.1-4.svg", "KIT-T24-A.1.pdf"} {
		if info, err := os.Stat(filepath.Join(dir, name)); err != nil || info.Size() < 500 {
			t.Errorf("%s: %v", name, err)
		}
	}
	if entries, _ := os.ReadDir(dir); len(entries) != 6*3+1 {
		t.Errorf("%d files", len(entries))
	}
}

func TestKitDrawJSON(t *testing.T) {
	out, err := say(newKit(), "draw", "--json", "../../examples/kits/KIT-T20K-A.2.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var r struct {
		Plates []kit.Plate
		Bill   kit.Bill
	}
	if err := json.Unmarshal([]byte(out), &r); err != nil || len(r.Plates) != 4 || !(r.Bill.Mass > 1) {
		t.Errorf("%v: %d plates, %g kg", err, len(r.Plates), r.Bill.Mass)
	}
}

func TestKitIssueEntersTheLedgerOnce(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"KIT-T24-A.1.yaml", "KIT-T24-A.2.yaml", kit.LedgerFile} {
		text, err := os.ReadFile("../../examples/kits/" + name)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, name), text, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	second := filepath.Join(dir, "KIT-T24-A.2.yaml")
	if out, err := say(newKit(), "draw", second); err != nil || !strings.Contains(out, "draft") {
		t.Errorf("%v in\n%s", err, out)
	}
	if out, err := say(newKit(), "draw", second, "--issue", "2026-11-20"); err != nil || !strings.Contains(out, "issued on 2026-11-20") {
		t.Errorf("%v in\n%s", err, out)
	}
	if out, err := say(newKit(), "draw", second); err != nil || !strings.Contains(out, "issued and unchanged") {
		t.Errorf("%v in\n%s", err, out)
	}
	if _, err := say(newKit(), "draw", second, "--issue", "2026-11-21"); err == nil || !strings.Contains(err.Error(), "never used twice") {
		t.Errorf("issued twice: %v", err)
	}
	text, err := os.ReadFile(second)
	if err != nil {
		t.Fatal(err)
	}
	changed := strings.Replace(string(text), "gap: 0.5 mm", "gap: 0.6 mm", 1)
	if err := os.WriteFile(second, []byte(changed), 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err := say(newKit(), "draw", second); err == nil || !strings.Contains(err.Error(), "has been changed since") {
		t.Errorf("a changed revision was drawn: %v", err)
	}
}

func TestKitNestPrintsYieldAndPrice(t *testing.T) {
	dir := t.TempDir()
	out, err := say(newKit(), "nest", "../../examples/kits/nest-20.yaml", "--tries", "2", "--out", dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"S700MC", "R-007", "goes back into stock", "in simple rows", "No nest can do better", "Altogether", "nothing overlaps"} {
		if !strings.Contains(out, want) {
			t.Errorf("no %q in\n%s", want, out)
		}
	}
	checkUnits(t, "kit nest", out)
	if pictures, _ := filepath.Glob(filepath.Join(dir, "*.picture.svg")); len(pictures) < 3 {
		t.Errorf("%d pictures", len(pictures))
	}
}

func TestKitRefusesInWords(t *testing.T) {
	for _, c := range [][]string{{"draw"}, {"nest"}, {"draw", "nothing.yaml"}, {"bend"}} {
		if out, err := say(newKit(), c...); err == nil {
			t.Errorf("%v was taken: %s", c, out)
		}
	}
}

// All keys of the machine-readable answers are of one form.
func TestKitJSONKeysAreSnakeCase(t *testing.T) {
	for _, args := range [][]string{
		{"draw", "--json", "../../examples/kits/KIT-T24-A.2.yaml"},
		{"nest", "--json", "--tries", "1", "../../examples/kits/nest-20.yaml"},
	} {
		out, err := say(newKit(), args...)
		if err != nil {
			t.Fatal(err)
		}
		keys := regexp.MustCompile(`"(\w+)": `).FindAllStringSubmatch(out, -1)
		if len(keys) < 50 {
			t.Fatalf("%v: %d keys", args, len(keys))
		}
		for _, k := range keys {
			if k[1] != strings.ToLower(k[1]) {
				t.Errorf("%v: key %q", args, k[1])
			}
		}
	}
}
