package pin

import (
	"math"
	"testing"

	"axlewright/internal/published"

	"pgregory.net/rapid"
)

const (
	mm  = 1e-3
	kN  = 1e3
	mpa = 1e6
)

// must is the value of a formula whose inputs are in range.
func must[T any](value T, err error) T {
	if err != nil {
		panic(err)
	}
	return value
}

var refuses = published.Refuses

func TestDowelsPublished(t *testing.T) {
	published.Check(t, []published.Row{
		{Name: "8 mm hardened dowel, double shear at 700 MPa, kN", Got: must(DowelShear(8*mm, 700*mpa, 2)) / kN, Printed: "70.3717", Source: "derived: 2·π/4·8²·700"},
		{Name: "20 kN on a 10 mm pin in 12 mm plate, MPa", Got: must(BearingPressure(20*kN, 10*mm, 12*mm)) / mpa, Printed: "166.667", Source: "derived: F/(d·t)"},
		{Name: "cast ear 8 by 5 mm at 250 MPa, kN", Got: 250 * mpa / must(BearingPressure(1, 8*mm, 5*mm)) / kN, Printed: "10", Source: "common practice, no source: bearing limit of a cast lock ear"},
	})
}

func TestRingDowelDerived(t *testing.T) {
	const source = "derived: 480·π/4·(18² − 13²) and 250·18·6 by hand"
	r := must(RingDowel(RingDowelParams{18 * mm, 13 * mm, 6 * mm, 480 * mpa, 250 * mpa}))
	published.Check(t, []published.Row{
		{Name: "ring 18/13 mm at 480 MPa, kN", Got: r.Shear / kN, Printed: "58.43", Source: source},
		{Name: "6 mm deep in iron at 250 MPa, kN", Got: r.Crushing / kN, Printed: "27.00", Source: source},
		{Name: "what it carries, kN", Got: r.Capacity / kN, Printed: "27.00", Source: source},
	})
}

// A ring with no bore left is a solid dowel; deep in hard metal it shears, shallow it crushes.
func TestRingDowelLimits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		D := rapid.Float64Range(8, 30).Draw(t, "D") * mm
		p := RingDowelParams{D, D * 1e-6, D * rapid.Float64Range(0.1, 2).Draw(t, "t"), 400 * mpa, 300 * mpa}
		r := must(RingDowel(p))
		if solid := must(DowelShear(D, 400*mpa, 1)); math.Abs(r.Shear-solid) > 1e-9*solid {
			t.Errorf("bore gone: %g, solid dowel %g", r.Shear, solid)
		}
		if p := must(BearingPressure(r.Crushing, D, p.Depth)); math.Abs(p-300*mpa) > 1e-3 {
			t.Errorf("crushes at %g", p)
		}
		if r.Capacity > r.Shear || r.Capacity > r.Crushing {
			t.Errorf("carries more than its weakest: %+v", r)
		}
	})
}

func TestPinsRefuse(t *testing.T) {
	_, err := SpringPin("coiled", 3*mm)
	refuses(t, "series", err)
	_, err = SpringPin(Heavy, 3.2*mm)
	refuses(t, "d", err)
	_, err = NestedPins(8*mm, 6*mm)
	refuses(t, "inner", err)
	_, err = NestedPins(4*mm, 2*mm)
	refuses(t, "outer", err)
	_, err = TubeShearStress(1, 2, 3*mm, 2*mm)
	refuses(t, "wall", err)
	_, err = DowelShear(8*mm, 700*mpa, 0)
	refuses(t, "planes", err)
	_, err = BearingPressure(1, 8*mm, 0)
	refuses(t, "thickness", err)
	_, err = RingDowel(RingDowelParams{18 * mm, 18 * mm, 6 * mm, 1, 1})
	refuses(t, "Inside", err)
}
