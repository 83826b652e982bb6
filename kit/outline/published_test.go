package outline

import (
	"math"
	"testing"

	"axlewright/internal/published"
)

// segmentOf is a circular segment of radius 1 by its central angle in degrees.
func segmentOf(degrees float64) Loop {
	half := degrees / 2 * math.Pi / 180
	return Loop{
		{At: polar(-math.Pi/2-half, 1), Bulge: math.Tan(half / 2)},
		{At: polar(-math.Pi/2+half, 1)},
	}
}

func TestSegmentsOfCirclesAsTabled(t *testing.T) {
	const source = "Machinery's Handbook, table Segments of Circles for Radius = 1 (from memory)"
	var rows []published.Row
	for _, r := range []struct{ degrees, arc, height, chord, area string }{
		{"30", "0.5236", "0.0341", "0.5176", "0.0118"},
		{"60", "1.0472", "0.1340", "1.0000", "0.0906"},
		{"90", "1.5708", "0.2929", "1.4142", "0.2854"},
		{"120", "2.0944", "0.5000", "1.7321", "0.6142"},
		{"180", "3.1416", "1.0000", "2.0000", "1.5708"},
	} {
		var degrees float64
		for _, c := range r.degrees {
			degrees = 10*degrees + float64(c-'0')
		}
		l := segmentOf(degrees)
		e := l.Edge(0)
		rows = append(rows,
			published.Row{Name: r.degrees + "°: length of arc", Got: e.Length(), Printed: r.arc, Source: source},
			published.Row{Name: r.degrees + "°: height", Got: l.Bounds().Height(), Printed: r.height, Source: source},
			published.Row{Name: r.degrees + "°: chord", Got: e.Chord(), Printed: r.chord, Source: source},
			published.Row{Name: r.degrees + "°: area", Got: l.Area(), Printed: r.area, Source: source},
		)
	}
	published.Check(t, rows)
}

func TestShapesWithClosedFormulas(t *testing.T) {
	// Two circles of radius 1 whose centres are 1 apart: the outline of what
	// they share, each arc of 120°.
	s := math.Sqrt(3) / 2
	lens := Loop{{At: Point{0.5, -s}, Bulge: math.Tan(math.Pi / 6)}, {At: Point{0.5, s}, Bulge: math.Tan(math.Pi / 6)}}
	// A triangle of side 1 with arcs of radius 1 for sides.
	b := math.Tan(math.Pi / 12)
	reuleaux := Loop{{At: Point{0, 0}, Bulge: b}, {At: Point{1, 0}, Bulge: b}, {At: Point{0.5, s}, Bulge: b}}
	quarter := Loop{{At: Point{0, 0}}, {At: Point{1, 0}, Bulge: math.Tan(math.Pi / 8)}, {At: Point{0, 1}}}
	slot := Slot(Point{3, 4}, 5, 2, 0.3)
	published.Check(t, []published.Row{
		{Name: "area of a lens of two unit circles 1 apart", Got: lens.Area(), Printed: "1.2284", Source: "Weisstein, CRC Concise Encyclopedia of Mathematics, Circle-circle intersection: 2π/3 − √3/2 (from memory)"},
		{Name: "area of a Reuleaux triangle of width 1", Got: reuleaux.Area(), Printed: "0.7048", Source: "Weisstein, as above, Reuleaux triangle: (π − √3)/2 (from memory)"},
		{Name: "perimeter of it", Got: reuleaux.Length(), Printed: "3.1416", Source: "Barbier's theorem: π times the width"},
		{Name: "centroid of a half disc above its diameter", Got: segmentOf(180).Centroid().Y, Printed: "-0.4244", Source: "Machinery's Handbook, Center of gravity: 4r/3π (from memory)"},
		{Name: "centroid of a quarter disc", Got: quarter.Centroid().X, Printed: "0.4244", Source: "Machinery's Handbook, Center of gravity: 4r/3π (from memory)"},
		{Name: "area of a slot 5 by 2", Got: slot.Area(), Printed: "9.1416", Source: "derived: a rectangle 3 by 2 and a circle of 2"},
		{Name: "its centroid", Got: slot.Centroid().X, Printed: "3.0000", Source: "derived: symmetry"},
	})
}

// TestParallelBodies: a convex outline grown by d has the area A + L·d + π·d²
// and the perimeter L + 2π·d (J. Steiner 1840).
func TestParallelBodies(t *testing.T) {
	b := math.Tan(math.Pi / 12)
	for name, l := range map[string]Loop{
		"rectangle": Rectangle(Box{Point{}, Point{0.12, 0.05}}),
		"triangle":  Polygon(Point{}, Point{0.1, 0.01}, Point{0.03, 0.08}),
		"slot":      Slot(Point{0.2, 0.1}, 0.08, 0.03, 0.7),
		"arcs":      Loop{{At: Point{0, 0}, Bulge: b}, {At: Point{0.1, 0}, Bulge: b}, {At: Point{0.05, 0.0866}, Bulge: b}},
	} {
		for _, d := range []float64{1e-4, 3e-3, 0.05} {
			grown, err := l.Offset(d)
			if err != nil || len(grown) != 1 {
				t.Fatalf("%s grown by %g: %d outlines, %v", name, d, len(grown), err)
			}
			agree(t, name+": area", grown[0].Area(), l.Area()+l.Length()*d+math.Pi*d*d, 1e-9)
			agree(t, name+": length", grown[0].Length(), l.Length()+2*math.Pi*d, 1e-7)
		}
	}
}

func agree(t *testing.T, name string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %.12g, expected %.12g ± %g", name, got, want, within)
	}
}
