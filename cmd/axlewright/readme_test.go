package main

import (
	"context"
	"net/http"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"axlewright/sqlstore"
)

// TestREADMELinesRun runs each line of the README's table as it stands, in a
// folder as the demo makes it.
func TestREADMELinesRun(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	var lines []string
	for row := range strings.SplitSeq(string(readme), "\n") {
		if cells := strings.Split(row, "|"); len(cells) == 4 {
			for _, m := range regexp.MustCompile("`axlewright ([^`]+)`").FindAllStringSubmatch(cells[2], -1) {
				lines = append(lines, m[1])
			}
		}
	}
	if len(lines) < 20 {
		t.Fatalf("the README has %d lines to run", len(lines))
	}
	dir := filepath.Join(t.TempDir(), "axlewright-demo")
	if err := copyExamples(dir); err != nil {
		t.Fatal(err)
	}
	t.Chdir(dir)
	for _, line := range lines {
		words := strings.Fields(line)
		if words[0] == "serve" {
			serveOnce(t, words[1])
			continue
		}
		if words[0] == "advise" || words[0] == "calibrate" && words[1] != "--sheet" {
			words = append(words, "--draws", "100") // the rest is as long with few
		}
		out, err := run(t, words...)
		if err != nil {
			t.Errorf("axlewright %s: %v", line, err)
		}
		if strings.Contains(line, "build-c.yaml") && strings.Contains(line, "coast") && !strings.Contains(out, "PEG") {
			t.Errorf("axlewright %s says nothing of a peg", line)
		}
	}
	for _, file := range []string{"sheet.pdf", "procedure.pdf", "cut/KIT-T24-A.1.pdf", "../shop-backup.zip", "../shop-again/" + sqlstore.FileName} {
		if _, err := os.Stat(file); err != nil {
			t.Error(err)
		}
	}
}

// serveOnce opens the bench of a folder, begins a job and closes it.
func serveOnce(t *testing.T, dir string) {
	t.Helper()
	ctx, stop := context.WithCancel(t.Context())
	defer stop()
	var out spoken
	done := make(chan error, 1)
	go func() { done <- serving{dir: dir, listen: "127.0.0.1:0", out: &out}.run(ctx) }()
	resp, err := http.Post(out.find(t, `http://127\.0\.0\.1:\d+`)+"/job", "application/x-www-form-urlencoded", strings.NewReader("ticket=one"))
	if err != nil {
		t.Fatal(err)
	}
	resp.Body.Close()
	stop()
	if err := <-done; err != nil {
		t.Errorf("serve stopped with %v", err)
	}
}
