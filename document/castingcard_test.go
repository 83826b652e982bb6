package document

import (
	"strings"
	"testing"

	"axlewright/casting"
	"axlewright/document/paper"
	"axlewright/drawing"
)

// words are all the words of a paper's pages.
func wordsOn(pages []drawing.Drawing) string {
	var b strings.Builder
	for _, d := range pages {
		for _, l := range d.Layers {
			for _, s := range l.Shapes {
				if t, ok := s.(drawing.Text); ok {
					b.WriteString(t.Words + " ")
				}
			}
		}
	}
	return strings.Join(strings.Fields(b.String()), " ")
}

// A card of an odd casting stands on one page, with its stops and what would settle it.
func TestCastingCard(t *testing.T) {
	for name, wanted := range map[string][]string{
		"same-number-ribs":  {"✓ T20K, sure enough", "KIT-T20K-A.2", "boss height"},
		"number-ground-off": {"△ Likely T20K", "To settle it", "Cap seat", "cannot be seen"},
		"modified-before":   {"✕ Modified before", "STOP.", "Dye penetrant"},
		"new-variant":       {"None of the known variants", "a new variant, like T20"},
		"grey-replacement":  {"Replacements were cast in other metals"},
	} {
		b, c, err := casting.LoadBench("../examples/identify/" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		id, err := casting.NewMatcher(&c).Identify(b)
		if err != nil {
			t.Fatal(err)
		}
		pages := CastingCard(paper.Head{Title: "Casting card", Number: "FW-1"}, &id, &c).Pages()
		if len(pages) != 1 {
			t.Errorf("%s: %d pages", name, len(pages))
		}
		said := wordsOn(pages)
		for _, w := range wanted {
			if !strings.Contains(said, w) {
				t.Errorf("%s: %q is not on the card: %s", name, w, said)
			}
		}
	}
}

// A trim sheet stands on one page, full and empty.
func TestTrimSheet(t *testing.T) {
	g, err := casting.LoadGauging("../examples/stations/t24.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, n := range []int{0, 1} {
		part := g
		part.New = g.New[:n]
		r, err := part.Placement()
		if err != nil {
			t.Fatal(err)
		}
		pages := TrimSheet(paper.Head{Title: "Trim sheet"}, &part, &r, "", "").Pages()
		said := wordsOn(pages)
		if len(pages) != 1 || !strings.Contains(said, "right edge of the peg boss") || !strings.Contains(said, "Grinding: guard on") || strings.Contains(said, "done") != (n == 1) {
			t.Errorf("%d placed: %d pages: %s", n, len(pages), said)
		}
		said = wordsOn(TrimSheet(paper.Head{Title: "Trim sheet"}, &part, &r, "Kit K-2", "Measure against the plate").Pages())
		if !strings.Contains(said, "Measure against the plate") || !strings.Contains(said, "Kit K-2") || strings.Contains(said, "done") {
			t.Errorf("%d placed, in doubt: %s", n, said)
		}
	}
}
