package outline

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// TestOffsetAndBack: an outline without corners turned inwards comes back as it
// was. One with such corners comes back with them rounded (a closing).
func TestOffsetAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := plate(t)
		d := rapid.Float64Range(1e-4, 0.03).Draw(t, "distance")
		grown, err := l.Offset(d)
		if err != nil {
			t.Fatal(err)
		}
		outer := -1
		for i, g := range grown {
			if g.Area() > 0 {
				if outer >= 0 {
					t.Fatalf("two outer outlines: %v and %v", grown[outer], g)
				}
				outer = i
			}
		}
		if outer < 0 {
			t.Fatal("nothing was grown")
		}
		sameDistance(t, l, grown[outer], d)
		back, err := grown[outer].Offset(-d)
		if err != nil {
			t.Fatal(err)
		}
		if len(back) != 1 {
			t.Skip("a notch closed over")
		}
		if convex(l) {
			if math.Abs(back[0].Area()-l.Area()) > 1e-8 || math.Abs(back[0].Length()-l.Length()) > 1e-6 {
				t.Fatalf("%v came back as %v", l, back[0])
			}
		} else if len(grown) == 1 && back[0].Area() < l.Area()-1e-8 {
			t.Fatalf("area %g came back as %g", l.Area(), back[0].Area())
		}
	})
}

// sameDistance demands that every place of the offset is at the distance and
// that no place of the outline is nearer.
func sameDistance(t *rapid.T, l, grown Loop, d float64) {
	for i := range grown {
		for _, s := range []float64{0, 0.3, 0.5, 0.77} {
			p := grown.Edge(i).At(s)
			if margin := l.Margin(p); math.Abs(margin+d) > 2e-7 {
				t.Fatalf("%v of the offset is %g away, not %g", p, -margin, d)
			}
		}
	}
	for i := range l {
		for _, s := range []float64{0, 0.25, 0.6} {
			if margin := grown.Margin(l.Edge(i).At(s)); margin < d-2e-7 {
				t.Fatalf("the outline comes within %g of its offset of %g", margin, d)
			}
		}
	}
}

// convex says whether the outline turns left everywhere.
func convex(l Loop) bool {
	for i := range l {
		in, out := l.Edge((i+len(l)-1)%len(l)), l.Edge(i)
		if out.Bulge < 0 || in.Direction(1).cross(out.Direction(0)) < 0 {
			return false
		}
	}
	return true
}

func TestOffsetInwards(t *testing.T) {
	l := Rectangle(Box{Point{}, Point{0.1, 0.06}})
	in, err := l.Offset(-0.01)
	if err != nil || len(in) != 1 || len(in[0]) != 4 {
		t.Fatalf("%v %v", in, err)
	}
	agree(t, "area", in[0].Area(), 0.08*0.04, 1e-12)
	if gone, err := l.Offset(-0.031); err != nil || len(gone) != 0 {
		t.Errorf("a plate of 60 mm less 31 mm all round is %v, %v", gone, err)
	}
	// A dog bone: 60 mm ends and a neck of 20 mm. Less 11 mm all round it is two.
	bone := Polygon(Point{0, 0}, Point{0.06, 0}, Point{0.06, 0.02}, Point{0.1, 0.02}, Point{0.1, 0}, Point{0.16, 0},
		Point{0.16, 0.06}, Point{0.1, 0.06}, Point{0.1, 0.04}, Point{0.06, 0.04}, Point{0.06, 0.06}, Point{0, 0.06})
	two, err := bone.Offset(-0.011)
	if err != nil || len(two) != 2 {
		t.Fatalf("%d outlines, %v", len(two), err)
	}
	// A slotted ring grown until its slot of 4 mm closes round the hole.
	ring := Polygon(Point{0, 0}, Point{0.1, 0}, Point{0.1, 0.048}, Point{0.08, 0.048}, Point{0.08, 0.02}, Point{0.02, 0.02},
		Point{0.02, 0.08}, Point{0.08, 0.08}, Point{0.08, 0.052}, Point{0.1, 0.052}, Point{0.1, 0.1}, Point{0, 0.1})
	closed, err := ring.Offset(0.003)
	if err != nil || len(closed) != 2 {
		t.Fatalf("%d outlines, %v", len(closed), err)
	}
	hole := math.Min(closed[0].Area(), closed[1].Area())
	// A 54 mm square, and towards the slot the room left by two arcs of 3 mm
	// round its corners, 4 mm apart.
	room := 12 - 2*math.Sqrt(5) - 9*math.Asin(2./3)
	agree(t, "hole that closed", hole, -(54*54+room)*1e-6, 1e-12)
	// Inside corners of arcs: a hole of radius 5 mm cut from the edge, grown by 6 mm.
	bite := Loop{{At: Point{0, 0}}, {At: Point{0.1, 0}}, {At: Point{0.1, 0.05}}, {At: Point{0.055, 0.05}, Bulge: -1}, {At: Point{0.045, 0.05}}, {At: Point{0, 0.05}}}
	grown, err := bite.Offset(0.006)
	if err != nil || len(grown) != 1 {
		t.Fatalf("%d outlines, %v", len(grown), err)
	}
}

func TestRoundedCorner(t *testing.T) {
	l := Rectangle(Box{Point{}, Point{0.1, 0.06}})
	for i := 3; i >= 0; i-- {
		var err error
		if l, err = l.Rounded(i, 0.01); err != nil {
			t.Fatal(err)
		}
	}
	agree(t, "area", l.Area(), 0.1*0.06-(4-math.Pi)*0.01*0.01, 1e-15)
	agree(t, "length", l.Length(), 0.24+2*math.Pi*0.01, 1e-15)
	if err := l.Check(); err != nil {
		t.Error(err)
	}
	whole := Rectangle(Box{Point{}, Point{0.06, 0.06}})
	for i := 3; i >= 0; i-- {
		var err error
		if whole, err = whole.Rounded(i, 0.03); err != nil {
			t.Fatal(err)
		}
	}
	agree(t, "square rounded to a circle", whole.Area(), math.Pi*0.03*0.03, 1e-15)
	if _, err := Rectangle(Box{Point{}, Point{0.1, 0.06}}).Rounded(1, 0.07); err == nil {
		t.Error("a corner of 70 mm was cut from an edge of 60 mm")
	}
}

// TestRoundedCornerOfAnArc rounds the corner between a half circle and its
// diameter: the arc's centre lies r above the diameter and R − r from the
// circle's centre, so √(R² − 2·R·r) along it.
func TestRoundedCornerOfAnArc(t *testing.T) {
	const R, r = 0.05, 0.01
	l := Loop{{At: Point{-R, 0}}, {At: Point{R, 0}, Bulge: 1}}
	rounded, err := l.Rounded(1, r)
	if err != nil {
		t.Fatal(err)
	}
	if err := rounded.Check(); err != nil {
		t.Fatal(err)
	}
	agree(t, "end of the diameter", rounded[1].At.X, math.Sqrt(R*R-2*R*r), 1e-15)
	agree(t, "radius of the corner", rounded.Edge(1).Radius(), r, 1e-15)
	agree(t, "tangent there", rounded.Edge(1).Direction(1).cross(rounded.Edge(2).Direction(0)), 0, 1e-12)
	// A corner turned inwards, between two arcs.
	heart := Loop{{At: Point{0, 0}, Bulge: 0.2}, {At: Point{0.1, 0.1}, Bulge: 0.8}, {At: Point{0, 0.1}, Bulge: 0.8}, {At: Point{-0.1, 0.1}, Bulge: 0.2}}
	soft, err := heart.Rounded(2, 0.005)
	if err != nil {
		t.Fatal(err)
	}
	if err := soft.Check(); err != nil || soft.Area() < heart.Area() {
		t.Errorf("a rounded inner corner adds area: %g after %g, %v", soft.Area(), heart.Area(), err)
	}
}
