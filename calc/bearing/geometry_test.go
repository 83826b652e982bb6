package bearing

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"axlewright/calc/check"
	"axlewright/internal/published"
)

// sample is an invented pinion head bearing.
var sample = Geometry{Bore: 35e-3, OutsideDiameter: 80e-3, Width: 32e-3, Rollers: Rollers{
	Count: 15, Diameter: 10.5e-3, Length: 20e-3, PitchDiameter: 58e-3, CupAngle: 15 * degree,
}}

func TestProportionsRefuseImpossibleBearings(t *testing.T) {
	if _, err := Proportions(sample); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name, param string
		change      func(*Geometry)
	}{
		{"too many rollers", "Diameter", func(g *Geometry) { g.Rollers.Count = 18 }},
		{"two rollers", "Count", func(g *Geometry) { g.Rollers.Count = 2 }},
		{"bore as large as the raceway", "Bore", func(g *Geometry) { g.Bore = 45e-3 }},
		{"cup too small for its rollers", "OutsideDiameter", func(g *Geometry) { g.OutsideDiameter = 70e-3 }},
		{"outside and bore swapped", "OutsideDiameter", func(g *Geometry) { g.Bore, g.OutsideDiameter = g.OutsideDiameter, g.Bore }},
		{"rollers longer than the bearing", "Width", func(g *Geometry) { g.Width = 18e-3 }},
		{"angle typed in degrees", "CupAngle", func(g *Geometry) { g.Rollers.CupAngle = 15 }},
		{"no angle", "CupAngle", func(g *Geometry) { g.Rollers.CupAngle = 0 }},
		{"length in millimetres", "Length", func(g *Geometry) { g.Rollers.Length = 20 }},
		{"not a number", "PitchDiameter", func(g *Geometry) { g.Rollers.PitchDiameter = math.NaN() }},
	} {
		g := sample
		c.change(&g)
		_, err := Proportions(g)
		var r *check.RangeError
		if !errors.As(err, &r) || r.Param != c.param {
			t.Errorf("%s: got %v, want a range error on %s", c.name, err, c.param)
		}
	}
}

// Cup, cone and roller are cones with one apex on the axis: seen from there the
// angles must add up and the radii must grow with the distance.
func TestProportionsAreThoseOfConesWithOneApex(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := Rollers{
			Count:         rapid.IntRange(8, 30).Draw(t, "Z"),
			PitchDiameter: rapid.Float64Range(0.02, 0.2).Draw(t, "Dpw"),
			CupAngle:      rapid.Float64Range(5, 44).Draw(t, "α") * degree,
		}
		r.Diameter = rapid.Float64Range(0.3, 1).Draw(t, "fill") * r.chord()
		r.Length = r.Diameter
		p, err := Proportions(Geometry{Bore: 1e-3, OutsideDiameter: 1, Width: 1, Rollers: r})
		if err != nil {
			t.Fatal(err)
		}
		apex := r.PitchDiameter / 2 / math.Sin(p.AxisAngle) // to the roller centre
		if got := 2 * apex * math.Tan(p.HalfTaper); math.Abs(got/r.Diameter-1) > 1e-12 {
			t.Fatalf("roller diameter from the apex %g, want %g", got, r.Diameter)
		}
		if got := p.ConeAngle + 2*p.HalfTaper; math.Abs(got/r.CupAngle-1) > 1e-12 {
			t.Fatalf("cone and roller make %g, cup is %g", got, r.CupAngle)
		}
		if p.ConeAngle <= 0 || p.Gap < 0 {
			t.Fatalf("cone angle %g, gap %g", p.ConeAngle, p.Gap)
		}
	})
}

// An independent road to the pressure centre: the line through the roller
// centre square to the cup raceway, followed to the axis.
func TestLoadCentreLiesOnTheNormalOfTheCup(t *testing.T) {
	const r, alpha = 0.029, 0.27
	x, y := 0., r                                    // roller centre, x along the axis
	nx, ny := math.Sin(alpha), -math.Cos(alpha)      // normal of the cup towards the axis
	tx, ty := math.Cos(alpha), math.Sin(alpha)       // along the raceway
	if dot := nx*tx + ny*ty; math.Abs(dot) > 1e-15 { // the normal is one
		t.Fatal(dot)
	}
	x += nx * (y / -ny)
	got, err := LoadCentre(2*r, alpha)
	near(t, "a_0", must(t, got, err), x, 1e-12)
}

func TestLoadCentrePublished(t *testing.T) {
	// 30 × 62 × 17.25 mm of ISO 355, e = 0.37: catalogues print 14 mm from the
	// back of the cup; the rollers stand about in the middle of the width.
	got, err := LoadCentre((30e-3+62e-3)/2, 14.04*degree)
	published.Check(t, []published.Row{{
		Name: "back of cone to pressure centre, mm", Got: must(t, got, err)*1e3 + 17.25/2, Printed: "14",
		Source: "common catalogue value for a 30 × 62 × 17.25 mm taper roller bearing (from memory)",
		Within: 0.05, Why: "pitch diameter and place of the rollers are taken in the middle",
	}})
}
