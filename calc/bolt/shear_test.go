package bolt

import (
	"math"
	"testing"

	"axlewright/internal/published"
)

func TestShearResistancePublished(t *testing.T) {
	const source = "EN 1993-1-8:2005, table 3.4, M10 10.9, γ_M2 1.25; 23.2 kN is also the value of design tables (formula from memory)"
	thread := must(ShearResistance(ShearResistanceParams{Class10_9, true, 58e-6, 1000 * mpa, 1.25}))
	shank := must(ShearResistance(ShearResistanceParams{Class10_9, false, math.Pi / 4 * 100e-6, 1000 * mpa, 1.25}))
	published.Check(t, []published.Row{
		{Name: "thread in the plane, kN", Got: thread / kN, Printed: "23.2", Source: source},
		{Name: "shank in the plane, kN", Got: shank / kN, Printed: "37.6992", Source: source, Within: 1e-4, Why: "shank area rounded to 78.54 mm²"},
		{Name: "tension, kN", Got: must(TensionResistance(1000*mpa, 58e-6, 1.25)) / kN, Printed: "41.8", Source: source},
		{Name: "M20 8.8 thread in the plane, kN", Got: must(ShearResistance(ShearResistanceParams{Class8_8, true, 245e-6, 800 * mpa, 1.25})) / kN, Printed: "94.1",
			Source: "design tables after EN 1993-1-8 for M20 8.8 in single shear (from memory)"},
	})
}

func TestLockBoltsPublished(t *testing.T) {
	const source = "lock bolts of the trade, τ_B 0.6·R_m; common practice, no source"
	const why = "the trade's table takes the stress area at 14.2 mm²"
	threaded, shank := must(StressArea(5*mm, 0.8*mm)), math.Pi/4*25e-6
	strong, plain := must(ClassStrength(Class12_9, 5*mm)).Tensile, must(ClassStrength(Class8_8, 5*mm)).Tensile
	published.Check(t, []published.Row{
		{Name: "M5 12.9 through the thread, kN", Got: must(UltimateShear(strong, threaded, 1)) / kN, Printed: "10.4", Source: source, Within: 0.005, Why: why},
		{Name: "M5 12.9 through a 5 mm shank, kN", Got: must(UltimateShear(strong, shank, 1)) / kN, Printed: "14.4", Source: source},
		{Name: "M5 8.8 through the thread, kN", Got: must(UltimateShear(plain, threaded, 1)) / kN, Printed: "6.8", Source: source},
	})
}

func TestShearAndTensionTogether(t *testing.T) {
	if u := must(ShearTensionUse(ShearTensionParams{10, 0, 20, 40})); u != 0.5 {
		t.Errorf("shear alone: %g", u)
	}
	if u := must(ShearTensionUse(ShearTensionParams{0, 40, 20, 40})); !near(u, 1/1.4, 1e-12) {
		t.Errorf("tension alone: %g", u)
	}
	if u := must(ShearTensionUse(ShearTensionParams{10, 28, 20, 40})); !near(u, 1, 1e-12) {
		t.Errorf("half of one and half of 1.4 of the other must just fill it: %g", u)
	}
}

func TestTwoPlanesCarryTwice(t *testing.T) {
	if one, two := must(UltimateShear(800*mpa, 20e-6, 1)), must(UltimateShear(800*mpa, 20e-6, 2)); !near(two, 2*one, 1e-12) {
		t.Errorf("one %g, two %g", one, two)
	}
}

func TestShearRefuses(t *testing.T) {
	_, err := ShearResistance(ShearResistanceParams{Class12_9, true, 58e-6, 1200 * mpa, 1.25})
	refuses(t, "Class", err)
	_, err = ShearResistance(ShearResistanceParams{Class8_8, true, 58e-6, 800 * mpa, 0.9})
	refuses(t, "Safety", err)
	_, err = TensionResistance(0, 1, 1.25)
	refuses(t, "tensile", err)
	_, err = UltimateShear(1, 1, 0)
	refuses(t, "planes", err)
	_, err = ShearTensionUse(ShearTensionParams{1, 1, 0, 1})
	refuses(t, "ShearResistance", err)
}
