package outline

import (
	"math"
	"slices"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"pgregory.net/rapid"
)

// plate draws an outline whose corners go round a middle, with some edges bent
// unless it then crosses itself.
func plate(t *rapid.T) Loop {
	n := rapid.IntRange(3, 12).Draw(t, "corners")
	middle := Point{rapid.Float64Range(-1, 1).Draw(t, "x"), rapid.Float64Range(-1, 1).Draw(t, "y")}
	l := make(Loop, n)
	for i := range l {
		angle := (float64(i) + rapid.Float64Range(0, 0.8).Draw(t, "turn")) * 2 * math.Pi / float64(n)
		l[i] = Vertex{At: middle.plus(polar(angle, rapid.Float64Range(0.02, 0.2).Draw(t, "reach"))), Tag: i}
		if rapid.Bool().Draw(t, "bent") {
			l[i].Bulge = rapid.Float64Range(-0.6, 0.6).Draw(t, "bulge")
		}
	}
	if l.Check() != nil || l.Area() < 0 { // straighten it
		for i := range l {
			l[i].Bulge = 0
		}
	}
	if l.Check() != nil || l.Area() < 0 {
		t.Skip("crosses itself")
	}
	return l
}

// asPolygon is the outline with very short straight pieces, for another
// library's arithmetic.
func asPolygon(l Loop, tolerance float64, side Side) geom.Polygon {
	var flat []float64
	places := l.Flatten(tolerance, side)
	for _, p := range append(places, places[0]) {
		flat = append(flat, p.X, p.Y)
	}
	ring := geom.NewLineString(geom.NewSequence(flat, geom.DimXY))
	return geom.NewPolygon([]geom.LineString{ring})
}

func TestAreaAndLengthAgreeWithManyChords(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := plate(t)
		const tolerance = 1e-8
		p := asPolygon(l, tolerance, On)
		if difference := math.Abs(l.Area() - p.Area()); difference > l.Length()*tolerance {
			t.Fatalf("area %g, by chords %g", l.Area(), p.Area())
		}
		if rim := p.Boundary().Length(); rim > l.Length()+1e-12 || rim < l.Length()*(1-1e-5) {
			t.Fatalf("length %g, by chords %g", l.Length(), rim)
		}
		c, _ := p.Centroid().Coordinates()
		if d := l.Centroid().To(Point{c.X, c.Y}); d > 1e-6 {
			t.Fatalf("centroid off by %g", d)
		}
		b := l.Bounds()
		e := p.Envelope()
		low, high := e.Min().DumpCoordinates().Get(0), e.Max().DumpCoordinates().Get(0)
		if math.Abs(b.Low.X-low.X)+math.Abs(b.Low.Y-low.Y)+math.Abs(b.High.X-high.X)+math.Abs(b.High.Y-high.Y) > 8*tolerance {
			t.Fatalf("bounds %v, by chords %v %v", b, low, high)
		}
	})
}

func TestAPolygonAroundHoldsTheOutline(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := plate(t)
		const tolerance = 2e-5
		around := asPolygon(l, tolerance, Around)
		if around.Validate() != nil {
			t.Skip("pieces cross") // possible only where edges come nearer than the tolerance
		}
		if extra := around.Area() - l.Area(); extra < -1e-15 || extra > l.Length()*tolerance*1.01 {
			t.Fatalf("the polygon around has %g more area", extra)
		}
		loop := Polygon(l.Flatten(tolerance, Around)...)
		for i := range l {
			for _, s := range []float64{0, 0.2, 0.5, 0.9} {
				if p := l.Edge(i).At(s); loop.Margin(p) < -Touch {
					t.Fatalf("%v of the outline is outside", p)
				}
			}
		}
	})
}

func TestWindingAndMirror(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := plate(t)
		if r := l.Reversed(); math.Abs(r.Area()+l.Area()) > 1e-15 || !slices.Equal(r.Reversed(), l) {
			t.Fatalf("reversed: area %g of %g, or twice is not the same", r.Area(), l.Area())
		}
		m := l.Mirrored()
		if m.Area() < 0 || math.Abs(m.Area()-l.Area()) > 1e-15 || math.Abs(m.Length()-l.Length()) > 1e-14 {
			t.Fatalf("mirrored: area %g of %g", m.Area(), l.Area())
		}
		if !slices.Equal(m.Mirrored(), l) {
			t.Fatalf("mirrored twice is %v, not %v", m.Mirrored(), l)
		}
		if m.Check() != nil {
			t.Fatal("the mirror image crosses itself")
		}
		turned := l
		for range 4 {
			turned = turned.Turned(math.Pi / 2)
		}
		if !slices.Equal(turned, l) {
			t.Fatal("four quarter turns are not the same outline")
		}
	})
}

func TestContainsAgreesWithAnotherLibrary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := plate(t)
		p := asPolygon(l, 1e-8, On).AsGeometry()
		for range 20 {
			at := l.Centroid().plus(Point{rapid.Float64Range(-0.25, 0.25).Draw(t, "dx"), rapid.Float64Range(-0.25, 0.25).Draw(t, "dy")})
			if math.Abs(l.Margin(at)) < 1e-6 {
				continue
			}
			q := geom.NewPoint(geom.Coordinates{XY: geom.XY{X: at.X, Y: at.Y}}).AsGeometry()
			want := geom.Intersects(p, q)
			if l.Contains(at) != want {
				t.Fatalf("%v contained: %v, another library says %v", at, l.Contains(at), want)
			}
			apart, ok := geom.Distance(p.Boundary(), q)
			if margin := math.Abs(l.Margin(at)); !ok || math.Abs(margin-apart) > 1e-7 {
				t.Fatalf("margin %g, another library says %g", margin, apart)
			}
		}
	})
}

func TestGapAgreesWithAnotherLibrary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := plate(t)
		m := plate(t).Shifted(Point{0.3, 0.1})
		want, ok := geom.Distance(asPolygon(l, 1e-8, On).Boundary().AsGeometry(), asPolygon(m, 1e-8, On).Boundary().AsGeometry())
		got := l.Gap(m, math.Inf(1))
		if !ok || math.Abs(got-want) > 1e-6 {
			t.Fatalf("gap %g, another library says %g", got, want)
		}
		if limited := l.Gap(m, 0.01); got < 0.01 && limited != got || got > 0.01 && limited < 0.01 {
			t.Fatalf("gap %g with a limit, %g without", limited, got)
		}
	})
}
