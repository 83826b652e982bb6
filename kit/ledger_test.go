package kit

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestNames(t *testing.T) {
	n, err := ParseName("KIT-T20K-A.12")
	if err != nil || n != (Name{"T20K", "A", 12}) || n.String() != "KIT-T20K-A.12" || n.Family() != "KIT-T20K-A" {
		t.Errorf("%+v, %v", n, err)
	}
	for _, bad := range []string{"", "KIT-T24-A", "KIT-T24-A.0", "KIT-T24-A.01", "KIT-t24-A.1", "KIT-T24-AB.1", "T24-A.1", "KIT-T24-A.1 ", "KIT--A.1", "KIT-T24-A.99999"} {
		if n, err := ParseName(bad); err == nil {
			t.Errorf("%q was taken for %v", bad, n)
		}
	}
}

func TestExamplesStandInTheLedgerUnchanged(t *testing.T) {
	ledger, err := LoadLedger("../examples/kits/KIT-T24-A.1.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]bool{"KIT-T24-A.1": true, "KIT-T24-A.2": false, "KIT-T20K-A.1": true, "KIT-T20K-A.2": true} {
		k := load(t, name)
		if got, err := ledger.Issued(&k); err != nil || got != want {
			t.Errorf("%s issued: %v, %v", name, got, err)
		}
	}
}

// TestSealPinned: a seal that changes with the program would declare every
// issued kit changed.
func TestSealPinned(t *testing.T) {
	k, err := Parse("small.yaml", []byte(small))
	if err != nil {
		t.Fatal(err)
	}
	if got := k.Seal(); got != "e74ac9e691ce4e63029b84c7d5f79e45" {
		t.Errorf("seal %s", got)
	}
}

func TestASealIsOfWhatIsSaid(t *testing.T) {
	seal := func(old, new string) string {
		k, err := Parse("small.yaml", []byte(strings.Replace(small, old, new, 1)))
		if err != nil {
			t.Fatal(err)
		}
		return k.Seal()
	}
	same := seal("", "")
	if seal("title: a plate", "title:   a plate   # a remark") != same {
		t.Error("a remark changed the seal")
	}
	for old, new := range map[string]string{"50, 50": "50, 50.001", "S355": "S275", "why: a test": "why: another", "± 2 mm": "± 1 mm", "a plate": "the plate"} {
		if seal(old, new) == same {
			t.Errorf("%s to %s kept the seal", old, new)
		}
	}
}

func TestTheLedgerOnlyGrows(t *testing.T) {
	one, two := load(t, "KIT-T24-A.1"), load(t, "KIT-T24-A.2")
	var l Ledger
	if _, _, err := l.Issue(&two, "2026-11-20"); err == nil || !strings.Contains(err.Error(), "revision 1 would be next") {
		t.Errorf("revision 2 before 1: %v", err)
	}
	l, line, err := l.Issue(&one, "2021-11-02")
	if err != nil {
		t.Fatal(err)
	}
	if _, _, err := l.Issue(&one, "2021-11-03"); err == nil || !strings.Contains(err.Error(), "never used twice") {
		t.Errorf("twice: %v", err)
	}
	l, next, err := l.Issue(&two, "2026-11-20")
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, LedgerFile), []byte("# issued\n"+line+next), 0o644); err != nil {
		t.Fatal(err)
	}
	back, err := LoadLedger(filepath.Join(dir, "KIT-T24-A.1.yaml"))
	if err != nil || len(back) != 2 || back[1] != l[1] {
		t.Errorf("%v, %v", back, err)
	}
	one.Title += "!"
	var changed *ChangedError
	if _, err := l.Issued(&one); !errors.As(err, &changed) || !strings.Contains(err.Error(), "KIT-T24-A.2") {
		t.Errorf("a changed revision: %v", err)
	}
	for _, bad := range []string{line + line, "- {kit: T24, seal: a, on: b}\n", "- {kit: KIT-T24-A.1, seel: a}\n", "kit\n"} {
		if err := os.WriteFile(filepath.Join(dir, LedgerFile), []byte(bad), 0o644); err != nil {
			t.Fatal(err)
		}
		if l, err := LoadLedger(filepath.Join(dir, "x.yaml")); err == nil {
			t.Errorf("%q was read as %v", bad, l)
		}
	}
}
