package outline

import (
	"errors"
	"math"
	"strings"
	"testing"
)

func TestOutlinesThatCannotBeCut(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for name, c := range map[string]struct {
		l    Loop
		says string
	}{
		"empty":           {nil, "three corners"},
		"two straight":    {Polygon(Point{0, 0}, Point{1, 0}), "three corners"},
		"NaN":             {Polygon(Point{0, 0}, Point{nan, 0}, Point{0, 1}), "not a number"},
		"infinite":        {Polygon(Point{0, 0}, Point{1, 0}, Point{0, inf}), "not a number"},
		"NaN bulge":       {Loop{{At: Point{0, 0}, Bulge: nan}, {At: Point{1, 0}}, {At: Point{1, 1}}}, "not a number"},
		"huge":            {Polygon(Point{0, 0}, Point{1e9, 0}, Point{0, 1}), "away"},
		"no length":       {Polygon(Point{0, 0}, Point{0, 0}, Point{1, 0}, Point{1, 1}), "no length"},
		"bow tie":         {Polygon(Point{0, 0}, Point{1, 1}, Point{1, 0}, Point{0, 1}), "crosses itself"},
		"spike":           {Polygon(Point{0, 0}, Point{1, 0}, Point{2, 0}, Point{1, 0}, Point{1, 1}), "itself"},
		"there and back":  {Polygon(Point{0, 0}, Point{1, 0}, Point{0.5, 0}, Point{0, 1}), "along itself"},
		"touches":         {Polygon(Point{0, 0}, Point{2, 0}, Point{2, 1}, Point{1, 0}, Point{0, 1}), "crosses itself"},
		"arc over line":   {Loop{{At: Point{0, 0}, Bulge: -1}, {At: Point{1, 0}}, {At: Point{1, 0.2}}, {At: Point{0, 0.2}}}, "crosses itself"},
		"arc along arc":   {Loop{{At: Point{0, 0}, Bulge: 1}, {At: Point{1, 0}, Bulge: -1}}, "along itself"},
		"nothing inside":  {Polygon(Point{0, 0}, Point{1e-5, 0}, Point{0, 1e-5}), "encloses nothing"},
		"nearly a circle": {Loop{{At: Point{0, 0}, Bulge: 1000}, {At: Point{1e-3, 0}}, {At: Point{0, 1e-3}}}, "full circle"},
	} {
		err := c.l.Check()
		var f *Fault
		if !errors.As(err, &f) || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, expected %q", name, err, c.says)
		}
	}
}

func TestOutlinesThatCanBeCut(t *testing.T) {
	for name, l := range map[string]Loop{
		"rectangle":         Rectangle(Box{Point{}, Point{0.1, 0.05}}),
		"circle":            Circle(Point{1, 2}, 0.01),
		"slot":              Slot(Point{1, 2}, 0.03, 0.01, 0.4),
		"tangent arcs":      {{At: Point{0, 0}, Bulge: 0.4}, {At: Point{0.1, 0}, Bulge: 0.4}, {At: Point{0.1, 0.1}, Bulge: -0.2}, {At: Point{0, 0.1}}},
		"corner on a curve": {{At: Point{0, 0}}, {At: Point{0.1, 0}}, {At: Point{0.1, 0.05}, Bulge: math.Tan(math.Pi / 8)}, {At: Point{0.05, 0.1}}, {At: Point{0, 0.1}}},
	} {
		if err := l.Check(); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestArcByCentre(t *testing.T) {
	a, b := Point{0.01, 0}, Point{0, 0.01}
	left, err := ArcByCentre(a, b, Point{}, true)
	if err != nil {
		t.Fatal(err)
	}
	agree(t, "sweep to the left", left.Sweep(), math.Pi/2, 1e-15)
	right, err := ArcByCentre(a, b, Point{}, false)
	if err != nil {
		t.Fatal(err)
	}
	agree(t, "sweep to the right", right.Sweep(), -3*math.Pi/2, 1e-15)
	agree(t, "centre", right.Centre().To(Point{}), 0, 1e-16)
	agree(t, "radius", right.Radius(), 0.01, 1e-17)
	for name, try := range map[string][3]Point{
		"not round":   {a, {0, 0.02}, {}},
		"full circle": {a, a, {}},
		"no radius":   {a, a, a},
		"NaN":         {a, b, {math.NaN(), 0}},
	} {
		if e, err := ArcByCentre(try[0], try[1], try[2], true); err == nil {
			t.Errorf("%s: %v was drawn", name, e)
		}
	}
}
