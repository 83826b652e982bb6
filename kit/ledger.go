package kit

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"axlewright/axle"
)

// LedgerFile is the name of the ledger beside the kits of a folder.
const LedgerFile = "issued.yaml"

// A Ledger lists revisions that were issued: plates were cut from them. It only
// grows; a revision in it may not change and its number is never used again.
type Ledger []Issue

// An Issue is one line of it.
type Issue struct {
	Kit  string `yaml:"kit"`
	Seal string `yaml:"seal"`
	On   string `yaml:"on"` // date
}

// LoadLedger reads the ledger beside a kit file. There may be none yet.
//
// Errors: axle.Findings.
func LoadLedger(beside string) (Ledger, error) {
	path := filepath.Join(filepath.Dir(beside), LedgerFile)
	text, err := os.ReadFile(path)
	if errors.Is(err, os.ErrNotExist) || err == nil && strings.TrimSpace(string(text)) == "" {
		return nil, nil
	}
	if err != nil {
		return nil, axle.Findings{{File: path, Problem: "cannot be read: " + err.Error()}}
	}
	var l Ledger
	if _, err := axle.DecodeSheet(path, string(text), &l); err != nil {
		return nil, err
	}
	seen := map[string]bool{}
	for _, i := range l {
		if _, err := ParseName(i.Kit); err != nil {
			return nil, axle.Findings{{File: path, Problem: err.Error()}}
		}
		if seen[i.Kit] {
			return nil, axle.Findings{{File: path, Problem: i.Kit + " stands twice; a revision is issued once"}}
		}
		seen[i.Kit] = true
	}
	return l, nil
}

// Issued says whether the kit's revision is in the ledger. If it is, the kit
// must not have changed since.
//
// Errors: *ChangedError.
func (l Ledger) Issued(k *Kit) (bool, error) {
	name, err := ParseName(k.Kit.Text)
	if err != nil {
		return false, err
	}
	for _, i := range l {
		if i.Kit == k.Kit.Text {
			if i.Seal != k.Seal() {
				return true, &ChangedError{Name: name, On: i.On}
			}
			return true, nil
		}
	}
	return false, nil
}

// A ChangedError says that an issued revision was changed.
type ChangedError struct {
	Name Name
	On   string
}

func (e *ChangedError) Error() string {
	next := e.Name
	next.Revision++
	return fmt.Sprintf("%s was issued on %s and has been changed since; put it back, and draw the change as a later revision such as %s", e.Name, e.On, next)
}

// Issue returns the ledger with one more line, and that line as text to append
// to its file.
//
// Errors: a day that is none; a revision that was issued before, or that skips one.
func (l Ledger) Issue(k *Kit, on string) (Ledger, string, error) {
	name, err := ParseName(k.Kit.Text)
	if err != nil {
		return l, "", err
	}
	if _, err := time.Parse(time.DateOnly, on); err != nil {
		return l, "", fmt.Errorf("%q is no date; write the day of issue such as 2026-03-02", on)
	}
	last := 0
	for _, i := range l {
		if n, err := ParseName(i.Kit); err == nil && n.Family() == name.Family() {
			last = max(last, n.Revision)
		}
	}
	if name.Revision <= last {
		return l, "", fmt.Errorf("%s cannot be issued: revision %d is out already, and a number is never used twice", name, last)
	}
	if name.Revision != last+1 {
		return l, "", fmt.Errorf("%s cannot be issued: revision %d would be next", name, last+1)
	}
	i := Issue{k.Kit.Text, k.Seal(), on}
	line := fmt.Sprintf("- {kit: %s, seal: %q, on: %q}\n", i.Kit, i.Seal, i.On)
	return append(append(Ledger(nil), l...), i), line, nil
}
