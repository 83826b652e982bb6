package paper

import (
	"bytes"
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"axlewright/drawing"
	"axlewright/drawing/sample"
)

// everything is a paper with all blocks.
func everything() Paper {
	p := Paper{Head: Head{Title: "Set-up sheet", Number: "A-0117", Subject: "Hollin Bank Farm, pick-up 1984, rear", Shop: "Fellgate Axle Works",
		Contact: "3 Fellgate Lane, Lower Fell\n01000 111 222", Day: time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)}, Foot: "A comparison, not a rating."}
	p.Add(
		Caution{"No power tool to turn the gears, no fingers near them."},
		Heading{Text: "Pinion preload", Note: "read while turning steadily"},
		Boxes{
			{Label: "Bearings", Options: []string{"new", "used"}},
			{Label: "Turning torque", Range: "2.3 to 2.8 N·m (20 to 25 lbf·inch)", From: "trade", Places: []Place{{Text: "2.50 N·m", Also: "22 lbf·inch", Sign: "✓ fine"}}},
			{Label: "Nut torqued to", Unit: "N·m"},
			{Label: "Back-face run-out", Range: "up to 0.10 mm (3.9 thou)", From: "trade", Places: []Place{{Text: "0.14 mm", Also: "5.5 thou", Sign: "△ look", Stop: true}}},
			{Label: "Lash at the heel", Range: "0.08 to 0.18 mm (3.0 to 7.0 thou)", From: "trade", Unit: "mm", Places: []Place{
				{Name: "1", Text: "0.15 mm", Also: "6 thou", Sign: "✓ fine"}, {Name: "2"}, {Name: "3"}, {Name: "4"}, {Name: "5"}, {Name: "6"}, {Name: "7"}, {Name: "8"}}},
			{Label: "Drive side", Options: []string{"centred, fading at both ends", "towards the tip", "towards the root", "towards the heel"}},
			{Label: "Gauge", Unit: "mm", Places: []Place{{Name: "crown side"}, {Name: "other side"}}},
		},
		Columns{Left: []Block{Heading{Text: "Left"}, Text{Words: strings.Repeat("some words ", 12)}}, Right: []Block{Heading{Text: "Right"}, List{{Words: "an item"}, {"△", "another"}}}},
		Table{Columns: []Column{{Title: "when"}, {Title: "what", Share: 3}, {Title: "figure", Right: true}}, Rows: [][]string{{"25 Nov", "lash", "0.15 mm"}}, Blank: 2},
		Picture{Drawing: drawing.DoubtBars(sample.Advice())},
		Code{Text: "https://example.org", Side: 20, Beside: []Block{Text{Words: "Anybody can read this code.", Small: true}}},
		Sign{"Set up by", "Looked at by"},
		Notes{},
	)
	return p
}

// long is a paper of many pages, of every kind of block that can be long.
func long(rows, words int) Paper {
	p := everything()
	t := Table{Columns: []Column{{Title: "no."}, {Title: "what", Share: 4}}}
	for i := range rows {
		t.Rows = append(t.Rows, []string{fmt.Sprint(i + 1), fmt.Sprintf("row-%d %s", i+1, strings.Repeat("and more ", words))})
	}
	p.Blocks = append([]Block{t, Boxes{{Label: "Told", Places: []Place{{Text: strings.Repeat("told ", words*3)}}}}}, p.Blocks...)
	return p
}

// lines are the texts of the pages.
func lines(pages []drawing.Drawing) (list []drawing.Text) {
	for _, d := range pages {
		for _, l := range d.Layers {
			for _, s := range l.Shapes {
				if t, ok := s.(drawing.Text); ok {
					list = append(list, t)
				}
			}
		}
	}
	return list
}

func words(pages []drawing.Drawing) string {
	var b strings.Builder
	for _, t := range lines(pages) {
		b.WriteString(t.Words + "\n")
	}
	return b.String()
}

func TestOnePageHoldsEverything(t *testing.T) {
	pages := everything().Pages()
	if len(pages) != 1 {
		t.Errorf("%d pages", len(pages))
	}
	for _, want := range []string{"A-0117", "page 1 of 1", "25 November 2026", "Fellgate Axle Works", "0.15 mm", "6 thou", "Set up by"} {
		if !strings.Contains(words(pages), want) {
			t.Errorf("no %q on the page", want)
		}
	}
}

func TestNothingIsCutAndNothingLeavesThePage(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rows, count := rapid.IntRange(0, 60).Draw(t, "rows"), rapid.IntRange(0, 150).Draw(t, "words")
		p := long(rows, count)
		p.Number = rapid.String().Draw(t, "number")
		p.Subject = rapid.StringMatching(`[A-Zא-ת漢 "']{0,300}`).Draw(t, "subject")
		pages := p.Pages()
		all := words(pages)
		for i := range rows {
			if !strings.Contains(all, fmt.Sprintf("row-%d", i+1)) {
				t.Fatalf("row %d is lost", i+1)
			}
		}
		if n := strings.Count(strings.ReplaceAll(all, "\n", " "), "told "); n != count*3 {
			t.Fatalf("%d of %d words", n, count*3)
		}
		sheet := drawing.Box{Left: left - 0.5, Top: top - 1, Right: left + width + 0.5, Bottom: high - bottom + 2}
		for _, x := range lines(pages) {
			if !sheet.Holds(x.Box()) {
				t.Fatalf("%q lies at %v", x.Words, x.Box())
			}
			if x.Size < least-1e-9 {
				t.Fatalf("%q is set in %v mm", x.Words, x.Size)
			}
		}
		for i := range pages[:len(pages)-1] {
			if !strings.Contains(words(pages[i:i+1]), fmt.Sprintf("continued on page %d", i+2)) {
				t.Fatalf("page %d does not say that it goes on", i+1)
			}
		}
	})
}

func TestSameBytes(t *testing.T) {
	var a, b bytes.Buffer
	if err := everything().WritePDF(&a); err != nil {
		t.Fatal(err)
	}
	if err := everything().WritePDF(&b); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Error("the same paper gave other bytes")
	}
	if dir := os.Getenv("AXLEWRIGHT_PAPERS"); dir != "" {
		_ = os.WriteFile(dir+"/everything.pdf", a.Bytes(), 0o644)
		var l, e bytes.Buffer
		_ = long(60, 40).WritePDF(&l)
		_ = os.WriteFile(dir+"/long.pdf", l.Bytes(), 0o644)
		_ = Paper{Head: Head{Title: "Weld log"}, Blocks: []Block{Boxes{{Label: "Amps", Range: "80 to 120 A", Unit: "A"}}, Notes{}}}.WritePDF(&e)
		_ = os.WriteFile(dir+"/empty.pdf", e.Bytes(), 0o644)
	}
}

func TestMissingLettersAreNamed(t *testing.T) {
	p := Paper{Head: Head{Title: "Quote", Subject: "漢 and 😀"}}
	if all := words(p.Pages()); !strings.Contains(all, "U+6F22, U+1F600") {
		t.Errorf("the foot does not name them:\n%s", all)
	}
	if err := p.WritePDF(&bytes.Buffer{}); err != nil {
		t.Error(err)
	}
}

func TestEmptyPaperHasAPage(t *testing.T) {
	if pages := (Paper{}).Pages(); len(pages) != 1 {
		t.Errorf("%d pages", len(pages))
	}
}
