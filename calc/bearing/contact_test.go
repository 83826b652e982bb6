package bearing

import (
	"math"
	"testing"

	"axlewright/internal/published"
)

func TestApproachUndoesRollerLoad(t *testing.T) {
	for _, length := range []float64{8e-3, 16e-3, 30e-3} {
		for _, load := range []float64{0, 10, 5000, 40000} {
			d, err := ApproachUnderLoad(load, length)
			must(t, d, err)
			q, err := RollerLoad(d, length)
			near(t, "Q", must(t, q, err), load, 1e-12)
			one, err := RollerApproach(load, length)
			must(t, one, err)
			near(t, "both contacts against twice Palmgren's one", d, 2*one, 0.05)
		}
	}
}

func TestApproachUnderLoadPublished(t *testing.T) {
	// 10 000 N on 15 mm: worked with logarithms apart from this code
	d, err := ApproachUnderLoad(10000, 15e-3)
	check1(t, "approach of cup and cone, µm", must(t, d, err)*1e6, "36.23",
		"derived: c_L = 35 948·L^(8/9) of ISO/TS 16281:2008 (from memory), worked with logarithms")
}

func TestContactPressureKeepsItsLaws(t *testing.T) {
	at := func(load float64, r Rollers, w Raceway) float64 {
		p, err := ContactPressure(PressureParams{Rollers: r, Load: load, Raceway: w})
		return must(t, p, err)
	}
	near(t, "four times the load", at(4000, flat, Cone), 2*at(1000, flat, Cone), 1e-12)
	if at(1000, flat, Cone) <= at(1000, flat, Cup) {
		t.Error("the cup is pressed harder than the cone")
	}
	near(t, "cone against the pressure of the lamina model", at(1000, flat, Cone), conePressure(flat, 1000/flat.Length), 1e-12)
	// 0.418·√(q·E·Σρ) with ν = 0.3
	r := flat
	published.Check(t, []published.Row{{
		Name: "line contact of steel, factor", Printed: "0.418",
		Got:    at(1000, r, Cup) / math.Sqrt(1000/r.Length*206e9*2/r.Diameter/(1+r.gamma())),
		Source: "Hertz with ν = 0.3: p = 0.418·√(q·E/R), Niemann, Maschinenelemente (from memory)",
		Within: 2e-3, Why: "0.4182 with ν = 0.3",
	}})
	if _, err := ContactPressure(PressureParams{Rollers: flat, Load: 1, Raceway: "rib"}); err == nil {
		t.Error("an unknown raceway is accepted")
	}
}
