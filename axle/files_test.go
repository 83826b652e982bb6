package axle

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// The example files, which the tests break one by one.
var (
	exampleFiles = []string{"tarnhow.yaml", "upgrades.yaml", "duties.yaml"}
	enquiryFile  = "01-hill-farm.yaml"
)

func exampleText(t testing.TB, name string) string {
	t.Helper()
	folder := "../examples"
	if name == enquiryFile {
		folder = "../examples/enquiries"
	}
	text, err := os.ReadFile(filepath.Join(folder, name))
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// write puts a file into a folder and returns its path.
func write(t testing.TB, folder, name, text string) string {
	t.Helper()
	path := filepath.Join(folder, name)
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// broken writes the example files with one change, loads the catalogue and
// returns what was found, and the line of the change.
func broken(t *testing.T, file, old, with string) (found Findings, line int) {
	t.Helper()
	folder := t.TempDir()
	var paths []string
	for _, name := range exampleFiles {
		text := exampleText(t, name)
		if name == file {
			text, line = changed(t, text, old, with)
		}
		paths = append(paths, write(t, folder, name, text))
	}
	_, err := LoadCatalogue(paths...)
	return findings(t, err), line
}

// brokenEnquiry does the same to an enquiry.
func brokenEnquiry(t *testing.T, old, with string) (found Findings, line int) {
	t.Helper()
	folder := t.TempDir()
	for _, name := range exampleFiles {
		write(t, folder, name, exampleText(t, name))
	}
	text, line := changed(t, strings.ReplaceAll(exampleText(t, enquiryFile), "../", ""), old, with)
	_, _, err := LoadEnquiry(write(t, folder, enquiryFile, text))
	return findings(t, err), line
}

func changed(t *testing.T, text, old, with string) (string, int) {
	t.Helper()
	at := strings.Index(text, old)
	if at < 0 {
		t.Fatalf("the example has no %q", old)
	}
	return text[:at] + with + text[at+len(old):], 1 + strings.Count(text[:at], "\n")
}

// findings takes the findings out of an error, which must be nothing else.
func findings(t *testing.T, err error) Findings {
	t.Helper()
	var found Findings
	if err != nil && !errors.As(err, &found) {
		t.Fatalf("the error is no Findings: %v", err)
	}
	return found
}

// expect looks for a finding that says something at a line; zero is any line.
func expect(t *testing.T, found Findings, line int, field, says string) {
	t.Helper()
	for _, f := range found {
		if (line == 0 || f.Line == line) && f.Field == field && strings.Contains(f.Problem, says) {
			return
		}
	}
	t.Errorf("expected %s in line %d: %q; found\n%v", field, line, says, found)
}
