package drawing

import (
	"bytes"
	"math"
	"sync"
	"testing"
	"time"
)

// shapesOfEachKind is a picture with one of each.
func shapesOfEachKind() Drawing {
	ink := Ink{Width: 0.3, Dash: []float64{2, 1}}
	return Drawing{Name: "each", Width: 100, Height: 80, Layers: []Layer{{Name: "all", Shapes: []Shape{
		Line{From: Point{1, 1}, To: Point{9, 9}, Ink: ink},
		Path{Vertices: []Vertex{{Point{20, 20}, 0.4}, {Point{30, 20}, -2}, {Point{25, 30}, 1}}, Closed: true, Ink: ink, Fill: Pale},
		Rect{Box: Box{40, 5, 60, 20}, Ink: ink, Fill: Accent},
		Circle{Centre: Point{70, 20}, Radius: 8, Ink: ink},
		Hatch{Outline: []Point{{5, 50}, {30, 50}, {30, 70}}, Angle: 45, Spacing: 2, Ink: ink},
		Text{At: Point{50, 60}, Words: "0.20 mm (8 thou) ⌀ ≥", Size: 3, Anchor: Middle, Turn: 30, Clear: true},
		Dimension{From: Point{10, 40}, To: Point{60, 40}, Offset: 5, Words: "50 mm", Size: 3, Ink: ink},
	}}}}
}

func TestPDFIsTheSameEachTimeAndInParallel(t *testing.T) {
	about := PDF{Title: "each", Author: "Fellgate “Axle” Works", At: time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC)}
	out := make([]bytes.Buffer, 8)
	var all sync.WaitGroup
	for i := range out {
		all.Go(func() {
			if err := WritePDF(&out[i], about, shapesOfEachKind(), shapesOfEachKind()); err != nil {
				t.Error(err)
			}
		})
	}
	all.Wait()
	for i := range out {
		if !bytes.Equal(out[0].Bytes(), out[i].Bytes()) || out[i].Len() < 5000 {
			t.Errorf("file %d is another one, of %d bytes", i, out[i].Len())
		}
	}
}

func TestPDFRefusesWhatIsNoLength(t *testing.T) {
	for _, bad := range []Shape{
		Line{From: Point{math.NaN(), 0}, Ink: Ink{Width: 1}},
		Circle{Radius: math.Inf(1), Fill: Black},
		Text{At: Point{0, math.NaN()}, Words: "x", Size: 3},
	} {
		d := Drawing{Name: "bad", Width: 10, Height: 10, Layers: []Layer{{Shapes: []Shape{bad}}}}
		if err := WritePDF(&bytes.Buffer{}, PDF{}, d); err == nil {
			t.Errorf("%+v was drawn", bad)
		}
	}
}

// The order of letters on paper, from the left, by the rules of UAX #9.
func TestLettersStandInTheOrderOfTheirScript(t *testing.T) {
	for words, want := range map[string]string{
		"plain":          "plain",
		"שלום":           "םולש",
		"שלום 12":        "12 םולש",
		"for שלום, rear": "for םולש, rear",
		"e\u0301":        "é",
		"漢 😀 \u202e x":   "□ □ x",
		"\xff\x00a":      "a",
		"“O'Neil”":       "“O'Neil”",
	} {
		if got := visual(words); got != want {
			t.Errorf("%q is printed %q, want %q", words, got, want)
		}
	}
	if got := string(Missing("漢a漢😀é")); got != "漢😀" {
		t.Errorf("missing: %q", got)
	}
}

func TestPlaceScalesAllLengths(t *testing.T) {
	d := shapesOfEachKind()
	twice := Place(Place(d.Layers[0].Shapes, Point{3, 4}, 2), Point{-1.5, -2}, 0.5)
	var a, b bytes.Buffer
	if err := WriteSVG(&a, d); err != nil {
		t.Fatal(err)
	}
	d.Layers[0].Shapes = twice
	if err := WriteSVG(&b, d); err != nil {
		t.Fatal(err)
	}
	if a.String() != b.String() {
		t.Error("twice as large and half as large again is not the same picture")
	}
	moved := Place(d.Layers[0].Shapes, Point{3, 4}, 2)
	if c := moved[3].(Circle); c.Centre != (Point{143, 44}) || c.Radius != 16 || c.Ink.Width != 0.6 {
		t.Errorf("circle %+v", c)
	}
	if h := moved[4].(Hatch); h.Spacing != 4 || h.Outline[0] != (Point{13, 104}) {
		t.Errorf("hatch %+v", h)
	}
}
