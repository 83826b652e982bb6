package material

import (
	"testing"

	"axlewright/internal/published"
)

func TestEqualPlatePublished(t *testing.T) {
	const source = "common practice, no source: 3 mm of 700 MPa plate against milder steel"
	mild := must(EqualPlate(PlateParams{3e-3, 700e6, 210e9, 275e6, 210e9}))
	middle := must(EqualPlate(PlateParams{3e-3, 700e6, 210e9, 355e6, 210e9}))
	published.Check(t, []published.Row{
		{Name: "275 MPa, tension, mm", Got: mild.Tension * 1e3, Printed: "7.6", Source: source},
		{Name: "275 MPa, bending, mm", Got: mild.Bending * 1e3, Printed: "4.8", Source: source},
		{Name: "275 MPa, stiffness, mm", Got: mild.Bend * 1e3, Printed: "3.0", Source: source},
		{Name: "355 MPa, tension, mm", Got: middle.Tension * 1e3, Printed: "5.9", Source: source},
		{Name: "355 MPa, bending, mm", Got: middle.Bending * 1e3, Printed: "4.2", Source: source},
		{Name: "355 MPa, stiffness, mm", Got: middle.Stretch * 1e3, Printed: "3.0", Source: source},
	})
	_, err := EqualPlate(PlateParams{3e-3, 700e6, 210e9, 0, 210e9})
	refused(t, "OtherYield", err)
}

// A plate made as thick as the answer says does carry the same: by the section's own sums.
func TestEqualPlateCarriesTheSame(t *testing.T) {
	p := PlateParams{6e-3, 355e6, 210e9, 250e6, 169e9}
	r := must(EqualPlate(p))
	for what, pair := range map[string][2]float64{
		"pull":              {p.Thickness * p.Yield, r.Tension * p.OtherYield},
		"moment":            {p.Thickness * p.Thickness * p.Yield, r.Bending * r.Bending * p.OtherYield},
		"stretch stiffness": {p.Thickness * p.Modulus, r.Stretch * p.OtherModulus},
		"bend stiffness":    {p.Thickness * p.Thickness * p.Thickness * p.Modulus, r.Bend * r.Bend * r.Bend * p.OtherModulus},
	} {
		if d := pair[0]/pair[1] - 1; d > 1e-12 || d < -1e-12 {
			t.Errorf("%s: %g and %g", what, pair[0], pair[1])
		}
	}
}

func TestGrowthPublished(t *testing.T) {
	closing := must(GapClosing(ClosingParams{30e-3, 18e-6, 80, 11e-6, 80}))
	published.Check(t, []published.Row{
		{Name: "30 mm bronze in iron, 80 K: mm", Got: closing * 1e3, Printed: "0.017", Source: "common practice, no source"},
		{Name: "1 m of steel, 100 K: mm", Got: must(ThermalGrowth(GrowthParams{1, must(Lookup("S355")).Expansion, 100})) * 1e3, Printed: "1.2", Source: "EN 1993-1-1:2005, 3.2.6, α = 12e-6 (from memory)"},
	})
	if open := must(GapClosing(ClosingParams{30e-3, 18e-6, -40, 11e-6, -40})); open >= 0 {
		t.Errorf("cold does not open the gap: %g", open)
	}
	_, err := ThermalGrowth(GrowthParams{1, 12e-6, 353})
	refused(t, "Rise", err)
}
