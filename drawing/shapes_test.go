package drawing

import (
	"bytes"
	"math"
	"strings"
	"testing"
)

// The lines of a fine hatch, each a spacing wide, cover their outline once.
func TestHatchCoversItsOutline(t *testing.T) {
	ell := []Point{{10, 10}, {50, 10}, {50, 22}, {22, 22}, {22, 60}, {10, 60}} // 40×12 + 12×38 mm
	const area = 40*12 + 12*38
	for _, angle := range []float64{0, 45, 90, 120, -30} {
		h := Hatch{Outline: ell, Angle: angle, Spacing: 0.05}
		sum := 0.0
		for _, l := range h.Lines() {
			sum += math.Hypot(l.To.X-l.From.X, l.To.Y-l.From.Y)
			x, y := (l.From.X+l.To.X)/2, (l.From.Y+l.To.Y)/2
			if x < 10 || y < 10 || x > 50 || y > 60 || x > 22 && y > 22 {
				t.Fatalf("angle %v: a line through (%v, %v), outside", angle, x, y)
			}
		}
		if got := sum * h.Spacing; math.Abs(got-area) > area*0.005 {
			t.Errorf("angle %v: lines cover %.1f mm², the outline %d mm²", angle, got, area)
		}
	}
	once := Hatch{Outline: ell, Angle: 45, Spacing: 1}
	twice := once
	twice.Crossed = true
	if a, b := len(once.Lines()), len(twice.Lines()); b < 2*a-4 {
		t.Errorf("%d lines, crossed %d", a, b)
	}
	if n := len((Hatch{Outline: ell, Spacing: 0}).Lines()); n != 0 {
		t.Errorf("%d lines without a spacing", n)
	}
}

// The slope of a 45° hatch rises to the right, as angles turn anticlockwise.
func TestHatchSlope(t *testing.T) {
	for _, l := range (Hatch{Outline: Box{0, 0, 10, 10}.Corners(), Angle: 45, Spacing: 1}).Lines() {
		if dx, dy := l.To.X-l.From.X, l.To.Y-l.From.Y; !near(dx, -dy) {
			t.Fatalf("line runs %v, %v", dx, dy)
		}
	}
}

func TestArcs(t *testing.T) {
	quarter := math.Tan(math.Pi / 8) // a quarter of 90°
	for _, c := range []struct {
		path Path
		want string
	}{
		{Path{Vertices: []Vertex{{Point{0, 0}, 1}, {Point{10, 0}, 0}}}, `d="M0 0A5 5 0 0 0 10 0"`},
		{Path{Vertices: []Vertex{{Point{0, 0}, -1}, {Point{10, 0}, 0}}}, `d="M0 0A5 5 0 0 1 10 0"`},
		{Path{Vertices: []Vertex{{Point{7, 0}, quarter}, {Point{0, 7}, 0}}}, `d="M7 0A7 7 0 0 0 0 7"`},
		{Path{Vertices: []Vertex{{Point{0, 0}, 2}, {Point{8, 0}, 0}}}, `A5 5 0 1 0 8 0`}, // height 8 over a chord of 8
		{Path{Vertices: []Vertex{{Point{0, 0}, 1}, {Point{10, 0}, 1}}, Closed: true}, `A5 5 0 0 0 10 0A5 5 0 0 0 0 0Z`},
	} {
		var b bytes.Buffer
		if err := WriteSVG(&b, Drawing{Name: "arc", Width: 20, Height: 20, Layers: []Layer{{"cut", []Shape{c.path}}}}); err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(b.String(), c.want) {
			t.Errorf("no %s in %s", c.want, b.String())
		}
	}
}

func TestDimensionStandsOffItsPlaces(t *testing.T) {
	d := Dimension{From: Point{10, 40}, To: Point{10, 10}, Offset: 6, Words: "30", Size: 3} // upward: left is to the left
	var lines int
	for _, s := range d.Parts() {
		switch f := s.(type) {
		case Line:
			lines++
			if lines == 1 && (!near(f.From.X, 4) || !near(f.To.X, 4) || !near(math.Abs(f.To.Y-f.From.Y), 30)) {
				t.Errorf("dimension line from %v to %v", f.From, f.To)
			}
		case Text:
			if b := f.Box(); b.Right > 4 || !near((b.Top+b.Bottom)/2, 25) {
				t.Errorf("words at %v", b)
			}
		}
	}
	if lines != 3 {
		t.Errorf("%d lines, want the dimension line and two that lead to it", lines)
	}
}

func TestPictureWithoutAPlaceIsRefused(t *testing.T) {
	bad := Drawing{Name: "bad", Width: 10, Height: 10, Layers: []Layer{{"x", []Shape{Line{To: Point{math.NaN(), 1}}}}}}
	var b bytes.Buffer
	if err := WriteSVG(&b, bad); err == nil || b.Len() > 0 {
		t.Errorf("error %v, %d bytes written", err, b.Len())
	}
}

func TestWordsAreEscaped(t *testing.T) {
	var b bytes.Buffer
	d := Drawing{Name: "x", Width: 9, Height: 9, Title: `a<b & "c"`, Desc: "d", Layers: []Layer{{"x", []Shape{Text{Words: "<i>", Size: 3, Full: "<i>&"}}}}}
	if err := WriteSVG(&b, d); err != nil {
		t.Fatal(err)
	}
	if err := wellFormed(b.Bytes()); err != nil || strings.Contains(b.String(), "<i>") {
		t.Errorf("%v in %s", err, b.String())
	}
}
