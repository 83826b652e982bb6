package document_test

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"axlewright/assess"
	"axlewright/document"
	"axlewright/document/paper"
	"axlewright/drawing"
	"axlewright/drawing/sample"
)

// said is a paper's text in one line, and how many pages it takes; everything
// must lie on them.
func said(t testing.TB, p paper.Paper) (pages int, text string) {
	t.Helper()
	sheet := drawing.Box{Right: 210, Bottom: 297}
	var b strings.Builder
	all := p.Pages()
	for _, page := range all {
		for _, layer := range page.Layers {
			for _, shape := range layer.Shapes {
				if x, ok := shape.(drawing.Text); ok {
					b.WriteString(x.Words + " ")
					if !sheet.Holds(x.Box()) {
						t.Errorf("%q lies at %v", x.Words, x.Box())
					}
				}
			}
		}
	}
	return len(all), b.String()
}

// The recommendation sheet of the trade holds these.
func TestRecommendationSays(t *testing.T) {
	pages, words := said(t, document.Recommendation(sample.Advice()))
	if pages != 1 {
		t.Errorf("%d pages", pages)
	}
	for _, want := range []string{
		"E-0412", "Hollin Bank Farm", "casting T24, gear set T24-354, rear axle", "drive side", "the other 60 %",
		"engine could send 13,600", "tyres can hold", "peak, with shock 8,300 6,120 6,140 to 10,900", "Demand index 1.84",
		"Worked out from: axle load 1,450 kg (3,197 lb); tyre 235/85R16; engine torque 190 N·m (140.1 lbf·ft); gearing first 3.6, low range 3.3, axle 3.54; grip 0.7; use farm and towing.",
		"✓ Recommended: build 3, better cap bolts, ring dowels and bolted adjuster locks", "It carries the demand with a chance of 93 %; 90 % are wanted.",
		"Weak link: head bearing dents (first to go in 39 %", "then pinion tooth root", "Next one up: build 4", "It raises", "83 % of the cases",
		"Where each build gives out", "Peg: No peg. The teeth push", "Beside the sums", "What to measure next", "Not known:", "Cautions: △ This is a comparison", "Care:",
		"2000 draws, seed 1", "a comparison, not a rating",
	} {
		if !strings.Contains(words, want) {
			t.Errorf("no %q on the page", want)
		}
	}
}

func TestRecommendationOfEveryKind(t *testing.T) {
	for name, a := range map[string]*assess.Advice{"hopeless": sample.Hopeless(), "single": sample.Single(), "full": sample.Full(), "wild": sample.Wild(),
		"empty": {Best: -1, Recommended: -1, NextUp: -1}} {
		p := document.Recommendation(a)
		pages, words := said(t, p)
		if pages > 2 || pages > 1 && name != "full" && name != "wild" {
			t.Errorf("%s: %d pages", name, pages)
		}
		if name == "hopeless" && !strings.Contains(words, "✕ Recommended: not this axle.") {
			t.Error("the answer is not marked as a stop")
		}
		for _, r := range a.Rules { // nothing is cut
			if name != "wild" && !strings.Contains(words, r.Text[len(r.Text)-12:]) {
				t.Errorf("%s: lost %q", name, r.Text)
			}
		}
		var b bytes.Buffer
		if err := p.WritePDF(&b); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if dir := os.Getenv("AXLEWRIGHT_PAPERS"); dir != "" {
			_ = os.WriteFile(dir+"/advice-"+name+".pdf", b.Bytes(), 0o644)
		}
	}
}

// Whatever is typed, the paper holds together.
func TestRecommendationOfAnything(t *testing.T) {
	anything := rapid.OneOf(rapid.String(), rapid.StringMatching(`([a-zA-Z0-9,.%&<>"']{1,20} ){0,30}`))
	for seed := range 12 {
		a := sample.Full()
		for i, into := range []*string{&a.Enquiry, &a.Customer, &a.Casting, &a.Gears, &a.Peg.Text, &a.Unknown[0], &a.Caution[0], &a.Demand.Why} {
			*into = anything.Example(8*seed + i)
		}
		p := document.Recommendation(a)
		said(t, p)
		if err := p.WritePDF(&bytes.Buffer{}); err != nil {
			t.Fatal(err)
		}
	}
}

func TestBenchReadingIsOnePage(t *testing.T) {
	pages, words := said(t, document.BenchReading())
	if pages != 1 || !strings.Contains(words, "A lever under load stores energy") {
		t.Errorf("%d pages: %s", pages, words)
	}
	if dir := os.Getenv("AXLEWRIGHT_PAPERS"); dir != "" {
		var b bytes.Buffer
		_ = document.BenchReading().WritePDF(&b)
		_ = os.WriteFile(dir+"/bench-reading.pdf", b.Bytes(), 0o644)
	}
}
