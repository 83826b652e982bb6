package kit

import (
	"strings"
	"testing"

	"axlewright/kit/outline"
)

func TestLettersKeepToTheirRoom(t *testing.T) {
	for r, strokes := range letters {
		for _, s := range strokes {
			if len(s) < 2 {
				t.Errorf("%c has a stroke of %d places", r, len(s))
			}
			for i := 1; i < len(s); i++ {
				e := outline.Edge{From: s[i-1].At, To: s[i].At, Bulge: s[i-1].Bulge}
				if e.Chord() < outline.Touch {
					t.Errorf("%c has a piece without length", r)
				}
				b := e.Bounds()
				const low, high = -0.2, 1.12 // a comma, a bracket
				if b.Low.X < -0.02 || b.High.X > letterPitch-0.1 || b.Low.Y < low || b.High.Y > high {
					t.Errorf("%c reaches %v", r, b)
				}
			}
		}
	}
}

func TestEveryLetterHasAFormOfItsOwn(t *testing.T) {
	forms := map[string]rune{}
	for r, form := range letterForms {
		if other, twice := forms[form]; twice {
			t.Errorf("%c and %c look alike", r, other)
		}
		forms[form] = r
	}
	for _, r := range "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-+=_.,:/()×Ø°±↑ " {
		if _, known := letters[r]; !known {
			t.Errorf("no form for %q", r)
		}
	}
}

func TestWriteLine(t *testing.T) {
	const size = 3e-3
	strokes, err := WriteLine("kit-t24-a.2", size) // capitals whatever was typed
	if err != nil {
		t.Fatal(err)
	}
	least, most := 1.0, -1.0
	for _, s := range strokes {
		for _, v := range s {
			least, most = min(least, v.At.X), max(most, v.At.X)
		}
	}
	if wide := LineWidth("KIT-T24-A.2", size); least < 0 || most > wide+1e-9 || most < 0.9*wide {
		t.Errorf("letters from %g to %g in a line of %g", least, most, wide)
	}
	if _, err := WriteLine("Maß", size); err == nil || !strings.Contains(err.Error(), "no stroke letter") {
		t.Errorf("ß was written: %v", err)
	}
}

// TestArrowPointsUpWhicheverWayTheWordsRun reads the arrow of a mark that is
// turned: its head is its highest place.
func TestArrowPointsUpWhicheverWayTheWordsRun(t *testing.T) {
	for _, turn := range []string{"0", "90", "-90", "180", "35"} {
		text := strings.Replace(small, "number: 1\n    name: square", "number: 1\n    mark: {at: [50, 75], turn: "+turn+"}\n    name: square", 1)
		k, err := Parse("small.yaml", []byte(text))
		if err != nil {
			t.Fatal(err)
		}
		d, err := k.Draw(Options{})
		if err != nil {
			t.Fatal(err)
		}
		strokes := d.Plates[0].Etched.Strokes
		shaft := strokes[len(strokes)-2]
		near(t, "shaft at "+turn+"°", shaft[1].At.Y-shaft[0].At.Y, d.Plates[0].Etched.Size, 1e-12)
		near(t, "shaft leans", shaft[1].At.X-shaft[0].At.X, 0, 1e-12)
	}
}

func TestMarksStayOffWeldsAndHoles(t *testing.T) {
	k, err := Parse("small.yaml", []byte(small))
	if err != nil {
		t.Fatal(err)
	}
	k.Limits.WeldStrip = Typed{Text: "15 mm"}
	d, err := k.Draw(Options{Batch: "B 12/3"})
	if err != nil {
		t.Fatal(err)
	}
	p := d.Plates[0]
	for _, s := range p.Etched.Strokes {
		for _, v := range s {
			if p.Outline.Margin(v.At) < 15e-3-1e-9 {
				t.Errorf("%v is %g from a welded edge", v.At, p.Outline.Margin(v.At))
			}
			for _, h := range p.Holes {
				if h.At.To(v.At) < h.Diameter/2+markMargin-1e-9 {
					t.Errorf("%v is on hole %s", v.At, h.Label)
				}
			}
		}
	}
	if got := strings.Join(p.Etched.Lines, " "); got != "KIT-T31-B.1 P1 S355 B 12/3" {
		t.Errorf("etched %q", got)
	}
	if p.Etched.Size < leastLetters || p.Etched.Size > mostLetters {
		t.Errorf("letters of %g", p.Etched.Size)
	}
	if _, err := k.Draw(Options{Batch: "№7"}); err == nil || !strings.Contains(err.Error(), "no stroke letter") {
		t.Errorf("a batch that cannot be etched: %v", err)
	}
	k.Limits.WeldStrip = Typed{Text: "45 mm"}
	if _, err := k.Draw(Options{}); err == nil || !strings.Contains(err.Error(), "no room") {
		t.Errorf("a mark without room: %v", err)
	}
	k.Pieces[0].Mark.None = true
	if d, err := k.Draw(Options{}); err != nil || len(d.Plates[0].Etched.Strokes) != 0 {
		t.Errorf("mark none: %v", err)
	}
}
