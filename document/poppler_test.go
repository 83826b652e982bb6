//go:build papers

package document_test

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"axlewright/document"
	"axlewright/document/paper"
	"axlewright/drawing/sample"
	"axlewright/shop"
)

// run runs an independent reader of PDFs. One that is missing is a failure.
func run(t *testing.T, name string, args ...string) string {
	t.Helper()
	out, err := exec.Command(name, args...).Output()
	if err != nil {
		t.Fatalf("%s %s: %v", name, strings.Join(args, " "), err)
	}
	return string(out)
}

// read looks at a paper as other programs do: A4, letters embedded, black and
// white, nothing at the edge of the paper. It gives its text and pictures.
func read(t *testing.T, name string, p paper.Paper) (text string, pictures []string) {
	t.Helper()
	var first, again bytes.Buffer
	if err := p.WritePDF(&first); err != nil {
		t.Fatal(err)
	}
	if err := p.WritePDF(&again); err != nil || !bytes.Equal(first.Bytes(), again.Bytes()) {
		t.Errorf("%s: the second time other bytes: %v", name, err)
	}
	dir := t.TempDir()
	file := filepath.Join(dir, "paper.pdf")
	if err := os.WriteFile(file, first.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	info := run(t, "pdfinfo", file)
	if !strings.Contains(info, "(A4)") || !strings.Contains(info, fmt.Sprintf("Pages:           %d\n", len(p.Pages()))) {
		t.Errorf("%s: %s", name, info)
	}
	fonts := strings.Split(strings.TrimSpace(run(t, "pdffonts", file)), "\n")
	if len(fonts) < 3 {
		t.Errorf("%s: no font", name)
	}
	for _, line := range fonts[min(2, len(fonts)):] {
		if f := strings.Fields(line); len(f) < 5 || f[len(f)-5] != "yes" || f[len(f)-3] != "yes" { // embedded, with its letters' names
			t.Errorf("%s: %s", name, line)
		}
	}
	run(t, "pdftoppm", "-r", "100", file, filepath.Join(dir, "page"))
	pictures, err := filepath.Glob(filepath.Join(dir, "page*.ppm"))
	if err != nil || len(pictures) != len(p.Pages()) {
		t.Fatalf("%s: %v %v", name, pictures, err)
	}
	for _, x := range pictures {
		look(t, name, x)
	}
	return run(t, "pdftotext", "-layout", file, "-"), pictures
}

// look finds coloured dots, ink within 4 mm of the edge, and an empty page.
func look(t *testing.T, name, file string) {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var wide, high, most int
	if _, err := fmt.Sscanf(string(data[:20]), "P6\n%d %d\n%d\n", &wide, &high, &most); err != nil {
		t.Fatal(err)
	}
	dots := data[len(data)-3*wide*high:]
	const edge = 4 * 100 / 25.4
	ink := 0
	for i := 0; i < len(dots); i += 3 {
		r, g, b := dots[i], dots[i+1], dots[i+2]
		if r != g || g != b {
			t.Errorf("%s: a coloured dot", name)
			return
		}
		if r > 200 {
			continue
		}
		ink++
		x, y := i/3%wide, i/3/wide
		if float64(min(x, wide-1-x, y, high-1-y)) < edge {
			t.Errorf("%s: ink at %d, %d of %d, %d", name, x, y, wide, high)
			return
		}
	}
	if ink < wide*high/500 {
		t.Errorf("%s: hardly anything is printed", name)
	}
}

func TestPopplerReadsEveryPaper(t *testing.T) {
	sh, jobs := demoJobs(t)
	read(t, "bench reading", document.BenchReading())
	for _, kind := range document.Papers() {
		empty, _ := document.JobPaper(kind, document.Source{House: house})
		if text, _ := read(t, string(kind)+", empty", empty); !strings.Contains(text, "page 1 of 1") {
			t.Errorf("%s, empty: %s", kind, text)
		}
		s := document.Source{Job: jobs[0], House: house, Day: time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC), Advice: sample.Advice(), Key: sh.PublicKey(),
			Quote: &shop.Quote{Price: 148000, Day: "2026-11-20"}}
		full, _ := document.JobPaper(kind, s)
		text, pictures := read(t, string(kind), full)
		for _, want := range []string{jobs[0].Stamped(), "25 November 2026", house.Name} {
			if !strings.Contains(text, want) {
				t.Errorf("%s: no %q in its text", kind, want)
			}
		}
		if kind == shop.PaperCertificate {
			readSquareCode(t, pictures[0], jobs[0])
		}
	}
}

// readSquareCode lets another program read the square code of a certificate.
func readSquareCode(t *testing.T, picture string, j *shop.Job) {
	t.Helper()
	all := j.Certificates()
	got := run(t, "zbarimg", "--quiet", "--raw", picture)
	if want := all[len(all)-1].Text(); strings.TrimSpace(got) != strings.TrimSpace(want) {
		t.Errorf("the square code says %q, want %q", got, want)
	}
}

// What a customer may be called survives on to the paper, or is told.
func TestPopplerReadsNames(t *testing.T) {
	for name, want := range map[string]string{
		`Bracken & "Sons" <b>of</b> O’Neil`: `Bracken & "Sons" <b>of</b> O’Neil`,
		"Žofie Łukasiewicz Ωμέγα Пётр":      "Žofie Łukasiewicz Ωμέγα Пётр",
		"שלום":   "שלום",
		"Ada 漢😀": "□ is a letter that this print does not have (U+6F22, U+1F600); the record holds it.",
	} {
		p := paper.Paper{Head: paper.Head{Title: "Quote", Number: "FW-1", Subject: name}, Blocks: []paper.Block{paper.Notes{}}}
		if text, _ := read(t, name, p); !strings.Contains(text, want) {
			t.Errorf("%q: no %q in %s", name, want, text)
		}
	}
}
