package document

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"axlewright/assess"
	"axlewright/drawing"
	"axlewright/drawing/sample"
)

// samples are advices of every kind. Figures of the wild one are no figures, so
// that it is looked at by itself.
var samples = map[string]func() *assess.Advice{
	"plain": sample.Advice, "hopeless": sample.Hopeless, "single": sample.Single, "full": sample.Full,
	"empty": func() *assess.Advice { return &assess.Advice{Best: -1, Recommended: -1, NextUp: -1} },
}

func page(t testing.TB, a *assess.Advice) []byte {
	var b bytes.Buffer
	if err := AdviceSheet(&b, a); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestSheetsAreSoundPages(t *testing.T) {
	for name, advice := range samples {
		if err := checkPage(page(t, advice())); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	root, err := readPage(page(t, sample.Wild()))
	if err != nil {
		t.Fatal(err)
	}
	if len(root.all("script")) > 0 || !strings.Contains(root.words(), "<script>alert('x')") {
		t.Error("what a customer is called got into the page as more than words")
	}
}

func TestBenchSheetIsASoundPage(t *testing.T) {
	var b bytes.Buffer
	if err := BenchSheet(&b); err != nil {
		t.Fatal(err)
	}
	if err := checkPage(b.Bytes()); err != nil {
		t.Error(err)
	}
}

// The recommendation sheet of the trade holds these, in this order of reading.
func TestSheetSays(t *testing.T) {
	root, err := readPage(page(t, sample.Advice()))
	if err != nil {
		t.Fatal(err)
	}
	words := strings.ReplaceAll(root.words(), "\u00a0", " ")
	at := 0
	for _, want := range []string{
		"E-0412", "Advice for Hollin Bank Farm", "Casting T24, gear set T24-354, rear axle.", "drive side", "100 % of the peak, the other 60 %",
		"engine could send 13,600", "tyres can hold", "grip governs", "peak, with shock 8,300 6,120 6,140 to 10,900", "Demand index 1.84",
		"Recommended: build 3, better cap bolts, ring dowels and bolted adjuster locks (price 866). It carries the demand with a chance of 93 %; 90 % are wanted. Chance that nothing in it wears out before 60,000 km (37,000 mi): 86 %.",
		"Weak link: head bearing dents (first to go in 39 %", "then pinion tooth root", "Next one up: build 4", "It raises", "leaves as it is", "83 % of the cases",
		"Where each build gives out", "Ladder of give-out torques", "5 better cap bolts, plates welded",
	} {
		i := strings.Index(words[at:], want)
		if i < 0 {
			t.Fatalf("no %q after %q", want, words[max(0, at-40):at])
		}
		at += i
	}
	for _, want := range []string{"Peg: No peg. The teeth push", "Beside the sums", "What to measure next", "Not known:", "Cautions: △ This is a comparison", "Care:",
		"Notes", "2000 draws, seed 1", "a comparison, not a rating"} {
		if !strings.Contains(words, want) {
			t.Errorf("no %q on the page", want)
		}
	}
}

func TestStopIsMarked(t *testing.T) {
	root, err := readPage(page(t, sample.Hopeless()))
	if err != nil {
		t.Fatal(err)
	}
	for _, n := range root.all("p") {
		if n.attr["class"] == "answer stop" && strings.Contains(n.words(), "✕ Recommended: not this axle.") {
			return
		}
	}
	t.Error("the answer is not marked as a stop")
}

// used is the height that the page takes, as it is measured.
func used(s *sheet) float64 {
	f := s.fit
	return f.notes + f.ladder + s.upper(f) + math.Max(stack(s.Left, f, columnWidth), stack(s.Right, f, columnWidth))
}

func TestSheetsGoOntoOnePage(t *testing.T) {
	for name, advice := range samples {
		s := newSheet(advice())
		if h := used(s); h > paperHeight+1e-9 || s.fit.ladder < lowestLadder || s.fit.size < 7.5 {
			t.Errorf("%s: %.1f mm high of %.1f mm, ladder %.1f mm, letters of %.1f points", name, h, paperHeight, s.fit.ladder, s.fit.size)
		}
	}
	if s := newSheet(sample.Advice()); strings.Contains(words(s), "…") {
		t.Error("an answer of the usual size is shortened")
	}
}

// words joins what the sections say.
func words(s *sheet) string {
	var b strings.Builder
	for _, list := range [][]section{s.Beside, s.Left, s.Right} {
		for _, one := range list {
			b.WriteString(one.Title + one.More)
			for _, i := range one.Items {
				b.WriteString(i.Lead + i.Text)
			}
		}
	}
	return b.String()
}

// Whatever is typed, the page holds together and stays one page.
func TestSheetOfAnything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := sample.Full()
		text := func(name string) string {
			return rapid.OneOf(rapid.String(), rapid.StringMatching(`([a-zA-Z0-9,.%&<>"']{1,20} ){0,30}`)).Draw(t, name)
		}
		a.Enquiry, a.Customer, a.Casting, a.Gears = text("number"), text("customer"), text("casting"), text("gears")
		for i := range a.Builds {
			if rapid.Bool().Draw(t, "retitle") {
				a.Builds[i].Titles = []string{text("title"), text("title")}
			}
		}
		for i := range a.Rules {
			if rapid.Bool().Draw(t, "rule") {
				a.Rules[i] = assess.Rule{Because: text("because"), Text: text("rule")}
			}
		}
		if rapid.Bool().Draw(t, "notes") {
			a.Peg.Text, a.Unknown[0], a.Caution[0], a.Demand.Why = text("peg"), text("unknown"), text("caution"), text("why")
		}
		s := newSheet(a)
		if h := used(s); h > paperHeight+1e-9 {
			t.Fatalf("%.1f mm high in the fit %+v", h, s.fit)
		}
		var b bytes.Buffer
		if err := AdviceSheet(&b, a); err != nil {
			t.Fatal(err)
		}
		if _, err := readPage(b.Bytes()); err != nil {
			t.Fatal(err)
		}
	})
}

func TestShortenedTextsKeepTheirWhole(t *testing.T) {
	s := newSheet(sample.Full())
	shortened := 0
	for _, list := range [][]section{s.Beside, s.Left, s.Right} {
		for _, one := range list {
			for _, i := range one.Items {
				switch {
				case strings.HasSuffix(i.Text, "…"):
					shortened++
					if !strings.HasPrefix(i.Full, strings.TrimSuffix(i.Text, "…")) {
						t.Errorf("%q is not the beginning of %q", i.Text, i.Full)
					}
				case i.Full != "":
					t.Errorf("%q is whole, but has a tip", i.Text)
				}
			}
		}
	}
	if shortened == 0 {
		t.Error("the fullest page shortens nothing: the test has nothing to look at")
	}
	if n := strings.Count(words(s), "originality"); n != 1 {
		t.Errorf("the rule that overrules the sums is there %d times", n)
	}
}

func TestColumnsAndNumbersAgreeWithTheLadder(t *testing.T) {
	total := 0.0
	for _, w := range columnWidths {
		total += w
	}
	if total != paperWidth {
		t.Errorf("columns are %v mm wide together, the paper %v mm", total, paperWidth)
	}
	a := sample.Advice()
	rows, _ := buildRows(a)
	for n, i := range drawing.Shown(a) {
		if rows[n].Number != n+1 || rows[n].Recommended != (i == a.Recommended) {
			t.Errorf("row %d: %+v", n, rows[n])
		}
	}
}
