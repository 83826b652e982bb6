package weld

import (
	"math"
	"testing"

	"axlewright/internal/published"
	"pgregory.net/rapid"
)

func TestHeatInputPublished(t *testing.T) {
	const source = "derived: EN 1011-1:1998, Q = k·U·I/v with k of table 1 (from memory)"
	published.Check(t, []published.Row{
		{Name: "TIG 12 V 140 A 90 mm/min, kJ/mm", Got: must(HeatInput(HeatInputParams{TIG, 12, 140, 90e-3 / 60})) / kJperMm, Printed: "0.672", Source: source},
		{Name: "MAG 24 V 180 A 6 mm/s, kJ/mm", Got: must(HeatInput(HeatInputParams{MAG, 24, 180, 6e-3})) / kJperMm, Printed: "0.576", Source: source},
		{Name: "k submerged arc", Got: must(ThermalEfficiency(SubmergedArc)), Printed: "1.0", Source: source},
	})
	_, err := HeatInput(HeatInputParams{"gas", 24, 180, 6e-3})
	refused(t, "process", err)
	_, err = HeatInput(HeatInputParams{MAG, 24, 180, 0})
	refused(t, "Speed", err)
}

func TestCoolingTimePublished(t *testing.T) {
	const source = "derived: EN 1011-2:2001, annex D (formula read, figures worked out)"
	bead := must(CoolingTime(CoolingParams{1e6, 20 + zeroCelsius, 10 * mm, 1, 1}))
	low := must(CoolingTime(CoolingParams{1.2e6, 150 + zeroCelsius, 8 * mm, 0.45, 0.67}))
	high := must(CoolingTime(CoolingParams{1.2e6, 150 + zeroCelsius, 8 * mm, 0.67, 0.67}))
	published.Check(t, []published.Row{
		{Name: "1 kJ/mm, 20 °C: thick, s", Got: bead.AllRound, Printed: "5.288", Source: source},
		{Name: "1 kJ/mm, 20 °C, 10 mm: thin, s", Got: bead.InPlane, Printed: "11.36", Source: source},
		{Name: "transition, mm", Got: bead.Transition / mm, Printed: "14.66", Source: source},
		{Name: "tee fillet 1.2 kJ/mm, 150 °C: thick, s", Got: low.AllRound, Printed: "6.308", Source: source},
		{Name: "tee fillet, 8 mm, F_2 0.45: thin, s", Got: low.InPlane, Printed: "21.45", Source: source},
		{Name: "tee fillet, 8 mm, F_2 0.67: thin, s", Got: high.InPlane, Printed: "31.94", Source: source},
	})
	if !bead.Thin || bead.Time != bead.InPlane {
		t.Errorf("10 mm under a transition of %g m is thin: %+v", bead.Transition, bead)
	}
}

func TestShapeFactorsPublished(t *testing.T) {
	const source = "EN 1011-2:2001, table D.1 (from memory)"
	tee, corner := must(ShapeFactors(TeeFillet)), must(ShapeFactors(CornerFillet))
	published.Check(t, []published.Row{
		{Name: "tee F_2 least", Got: tee.TwoLow, Printed: "0.45", Source: source},
		{Name: "tee F_2 greatest", Got: tee.TwoHigh, Printed: "0.67", Source: source},
		{Name: "tee F_3", Got: tee.Three, Printed: "0.67", Source: source},
		{Name: "corner F_2 least", Got: corner.TwoLow, Printed: "0.67", Source: source},
		{Name: "corner F_2 greatest", Got: corner.TwoHigh, Printed: "0.9", Source: source},
		{Name: "butt F_2", Got: must(ShapeFactors(ButtFill)).TwoLow, Printed: "0.9", Source: source},
		{Name: "bead F_3", Got: must(ShapeFactors(BeadOnPlate)).Three, Printed: "1", Source: source},
	})
	_, err := ShapeFactors("edge")
	refused(t, "joint", err)
}

func TestCoolingLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := CoolingParams{
			rapid.Float64Range(0.2e6, 5e6).Draw(t, "q"),
			zeroCelsius + rapid.Float64Range(0, 300).Draw(t, "t0"),
			rapid.Float64Range(2, 60).Draw(t, "d") * mm,
			rapid.Float64Range(0.45, 1).Draw(t, "f2"), rapid.Float64Range(0.67, 1).Draw(t, "f3"),
		}
		r := must(CoolingTime(p))
		if want := math.Max(r.InPlane, r.AllRound); math.Abs(r.Time-want) > 1e-12*want {
			t.Fatalf("time %g is not the longer of %g and %g", r.Time, r.InPlane, r.AllRound)
		}
		at := p
		at.Thickness = r.Transition
		if e := must(CoolingTime(at)); math.Abs(e.InPlane-e.AllRound) > 1e-9*e.AllRound {
			t.Fatalf("at the transition %g and %g", e.InPlane, e.AllRound)
		}
		hot := p
		hot.Preheat += 50
		if must(CoolingTime(hot)).Time <= r.Time {
			t.Fatal("more preheat cools faster")
		}
		q := must(HeatInputForCoolingTime(HeatForCoolingParams{r.Time, p.Preheat, p.Thickness, p.TwoFactor, p.Three}))
		if math.Abs(q-p.HeatInput) > 1e-9*p.HeatInput {
			t.Fatalf("heat input back: %g, want %g", q, p.HeatInput)
		}
	})
	_, err := CoolingTime(CoolingParams{1e6, 20, 10 * mm, 1, 1}) // 20 K: a forgotten conversion
	refused(t, "Preheat", err)
}
