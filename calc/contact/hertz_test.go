package contact

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"
)

const (
	rounded = "the source rounds the depth and size of the shear stress to two digits"
	johnson = "Johnson, Contact Mechanics (1985), chapter 4; recomputed from its formulas, which are from memory"
)

// steel is steel on steel, 206 GPa and 0.3.
func steel(t *testing.T) float64 {
	t.Helper()
	modulus, err := ContactModulus(ModulusParams{206e9, 206e9, 0.3, 0.3})
	if err != nil {
		t.Fatal(err)
	}
	return modulus
}

func TestLineContactPublished(t *testing.T) {
	r, err := LineContact(LineParams{Force: 20e3, Length: 0.020, Curvature1: 1 / 0.030, Curvature2: 1 / 0.060, Modulus: steel(t)})
	if err != nil {
		t.Fatal(err)
	}
	published.Check(t, []published.Row{
		{Name: "half width, mm", Got: r.HalfWidth * 1e3, Printed: "0.474321", Source: johnson},
		{Name: "peak pressure, MPa", Got: r.PeakPressure / 1e6, Printed: "1342.17", Source: johnson},
		{Name: "peak shear, MPa", Got: r.PeakShear / 1e6, Printed: "402.651", Source: johnson, Within: 0.001, Why: rounded},
		{Name: "its depth, mm", Got: r.ShearDepth * 1e3, Printed: "0.372816", Source: johnson, Within: 0.001, Why: rounded},
	})
}

func TestPointContactPublished(t *testing.T) {
	r, err := PointContact(PointParams{Force: 3e3, Curvature: 1 / 0.015, Modulus: steel(t)})
	if err != nil {
		t.Fatal(err)
	}
	published.Check(t, []published.Row{
		{Name: "radius, mm", Got: r.Radius * 1e3, Printed: "0.668076", Source: johnson},
		{Name: "peak pressure, MPa", Got: r.PeakPressure / 1e6, Printed: "3209.3", Source: johnson},
		{Name: "approach, µm", Got: r.Approach * 1e6, Printed: "29.7551", Source: johnson},
		{Name: "peak shear, MPa", Got: r.PeakShear / 1e6, Printed: "994.884", Source: johnson, Within: 0.001, Why: rounded},
		{Name: "its depth, mm", Got: r.ShearDepth * 1e3, Printed: "0.320677", Source: johnson, Within: 0.002, Why: rounded},
	})
}

// The factors of the largest shear stress must be the maximum of the stress
// difference on the axis, which has closed forms.
func TestShearFactorsAreTheMaximumOnTheAxis(t *testing.T) {
	line := func(z float64) float64 { return z - z*z/math.Sqrt(1+z*z) }
	point := func(z float64) float64 {
		radial := -1.3*(1-z*math.Atan(1/z)) + 0.5/(1+z*z)
		return (radial + 1/(1+z*z)) / 2
	}
	for name, c := range map[string]struct {
		stress      func(float64) float64
		size, depth float64
	}{
		"line":  {line, lineShear, lineShearDepth},
		"point": {point, pointShear, pointShearDepth},
	} {
		if got := c.stress(c.depth); math.Abs(got-c.size) > 1e-6 {
			t.Errorf("%s: stress at its depth %.7f, constant %.7f", name, got, c.size)
		}
		for _, step := range []float64{-0.01, 0.01} {
			if c.stress(c.depth+step) >= c.stress(c.depth) {
				t.Errorf("%s: no maximum at %.4f", name, c.depth)
			}
		}
	}
}

// The pressure integrated over the contact carries the force.
func TestContactPressureCarriesTheForce(t *testing.T) {
	line, err := LineContact(LineParams{Force: 7e3, Length: 0.03, Curvature1: 40, Curvature2: -25, Modulus: 1e11})
	if err != nil {
		t.Fatal(err)
	}
	if got := math.Pi / 2 * line.PeakPressure * line.HalfWidth * 0.03; math.Abs(got/7e3-1) > 1e-12 {
		t.Errorf("line carries %g N of 7000", got)
	}
	ellipse, err := EllipticalContact(EllipseParams{Force: 7e3, SmallCurvature: 3, LargeCurvature: 90, Modulus: 1e11})
	if err != nil {
		t.Fatal(err)
	}
	if got := 2 * math.Pi / 3 * ellipse.PeakPressure * ellipse.LongSemiAxis * ellipse.ShortSemiAxis; math.Abs(got/7e3-1) > 1e-12 {
		t.Errorf("ellipse carries %g N of 7000", got)
	}
}

func TestHertzScalesWithForce(t *testing.T) {
	line := LineParams{Force: 1e3, Length: 0.02, Curvature1: 50, Modulus: 1.1e11}
	point := PointParams{Force: 1e3, Curvature: 50, Modulus: 1.1e11}
	l1, _ := LineContact(line)
	p1, _ := PointContact(point)
	line.Force, point.Force = 8e3, 8e3
	l8, _ := LineContact(line)
	p8, _ := PointContact(point)
	if got := l8.PeakPressure / l1.PeakPressure; math.Abs(got-math.Sqrt(8)) > 1e-9 {
		t.Errorf("eight times the force: line pressure × %g, want √8", got)
	}
	if got := p8.PeakPressure / p1.PeakPressure; math.Abs(got-2) > 1e-9 {
		t.Errorf("eight times the force: point pressure × %g, want 2", got)
	}
}

func TestHertzRefusesBodiesThatDoNotClose(t *testing.T) {
	var r *check.RangeError
	if _, err := LineContact(LineParams{Force: 1, Length: 1, Curvature1: 10, Curvature2: -10, Modulus: 1e11}); !errors.As(err, &r) {
		t.Errorf("a ball in a hollow as round as itself: got %v, want a range error", err)
	}
	if _, err := PointContact(PointParams{Force: 1, Curvature: 0, Modulus: 1e11}); !errors.As(err, &r) {
		t.Errorf("flat on flat: got %v, want a range error", err)
	}
	if _, err := ContactModulus(ModulusParams{206e9, 206e9, 0.3, 0.6}); !errors.As(err, &r) || r.Param != "Poisson2" {
		t.Errorf("Poisson 0.6: got %v, want a range error on Poisson2", err)
	}
}
