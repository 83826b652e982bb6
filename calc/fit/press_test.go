package fit

import (
	"testing"

	"axlewright/internal/published"

	"pgregory.net/rapid"
)

func TestBuiltUpCylinderPublished(t *testing.T) {
	const source = "Timoshenko, Strength of Materials part II, 3rd ed., built-up cylinders: a 4, b 6, c 8 in, δ 0.005 in on the radius, E 30e6 psi (from memory)"
	r := must(PressFit(PressParams{0.010 * inch, 12 * inch, 8 * inch, 16 * inch, 30e6 * psi, 0.3, 30e6 * psi, 0.3}))
	published.Check(t, []published.Row{
		{Name: "pressure, psi", Got: r.Pressure / psi, Printed: "4050", Source: source, Within: 0.0005, Why: "printed to three figures"},
	})
}

func drawPress(t *rapid.T) PressParams {
	d := rapid.Float64Range(20, 150).Draw(t, "d") * mm
	return PressParams{
		Interference: d * rapid.Float64Range(0.0001, 0.002).Draw(t, "δ/d"), Diameter: d,
		Bore: d * rapid.Float64Range(0.1, 0.9).Draw(t, "bore"), Outside: d * rapid.Float64Range(1.05, 4).Draw(t, "outside"),
		InnerModulus: 206 * gpa, InnerPoisson: 0.3, OuterModulus: rapid.Float64Range(90, 206).Draw(t, "E") * gpa, OuterPoisson: 0.25,
	}
}

// The interference is what the bore gives and the shaft yields, from Lamé's
// displacements: u = r/E·(σ_t − ν·σ_r).
func TestPressFitClosesTheInterference(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPress(t)
		r := must(PressFit(p))
		opens := p.Diameter / p.OuterModulus * (r.OuterHoop + p.OuterPoisson*r.Pressure)
		closes := -p.Diameter / p.InnerModulus * (r.InnerHoop + p.InnerPoisson*r.Pressure)
		if !near(opens+closes, p.Interference, 1e-10) {
			t.Errorf("opens %g, closes %g, interference %g", opens, closes, p.Interference)
		}
		// hoop stress at the free surfaces is E times the strain there
		if free := r.OuterHoop - r.Pressure; !near(r.OuterGrowth/p.Outside*p.OuterModulus, free, 1e-9) {
			t.Errorf("outside strain %g, stress %g", r.OuterGrowth/p.Outside, free)
		}
		if !near(-r.InnerShrink/p.Bore*p.InnerModulus, r.BoreHoop, 1e-9) {
			t.Errorf("bore strain %g, stress %g", r.InnerShrink/p.Bore, r.BoreHoop)
		}
		twice := p
		twice.Interference *= 2
		if !near(must(PressFit(twice)).Pressure, 2*r.Pressure, 1e-12) {
			t.Error("pressure is not in proportion to interference")
		}
	})
}

// On a solid shaft of the same steel a ring's raceway grows by the interference times d/d_o.
func TestRingOnASolidShaftOfTheSameSteel(t *testing.T) {
	for _, ratio := range []float64{0.7, 0.8, 0.9} {
		p := PressParams{0.02 * mm, 40 * mm, 0, 40 * mm / ratio, 206 * gpa, 0.3, 206 * gpa, 0.3}
		r := must(PressFit(p))
		if !near(r.OuterGrowth, ratio*p.Interference, 1e-12) {
			t.Errorf("d/d_o %.1f: raceway grows by %.3f of the interference", ratio, r.OuterGrowth/p.Interference)
		}
		if r.InnerShrink != 0 || !near(r.BoreHoop, -r.Pressure, 1e-12) {
			t.Errorf("solid shaft: %+v", r)
		}
	}
}

func TestHoldAndEffectiveInterference(t *testing.T) {
	h := must(PressHold(HoldParams{40 * mpa, 50 * mm, 30 * mm, 0.12}))
	published.Check(t, []published.Row{
		{Name: "axial, kN", Got: h.Force / 1e3, Printed: "22.62", Source: "derived: 0.12·40·π·50·30 by hand"},
		{Name: "torque, N·m", Got: h.Torque, Printed: "565.5", Source: "derived: 22.62 kN × 25 mm"},
		{Name: "40 µm over peaks of 6 and 10 µm, µm", Got: must(EffectiveInterference(40*um, 6*um, 10*um)) / um, Printed: "27.2", Source: "derived: DIN 7190-1:2017 form, 40 − 0.8·16 (from memory)"},
	})
}

func TestClearanceLossDerived(t *testing.T) {
	published.Check(t, []published.Row{
		{Name: "16 µm growth, 5 µm shrinkage, 10 K warmer on a 72 mm raceway, µm", Printed: "29.3",
			Got:    must(ClearanceLoss(ClearanceLossParams{16 * um, 5 * um, 10, 11.5e-6, 72 * mm})) / um,
			Source: "derived: 16 + 5 + 11.5e-6·72 000·10"},
	})
}

func TestPressRefuses(t *testing.T) {
	good := PressParams{0.02 * mm, 40 * mm, 0, 60 * mm, 206 * gpa, 0.3, 110 * gpa, 0.26}
	bad := good
	bad.Interference = -0.01 * mm
	_, err := PressFit(bad)
	refuses(t, "Interference", err)
	bad = good
	bad.Outside = 40 * mm
	_, err = PressFit(bad)
	refuses(t, "Outside", err)
	bad = good
	bad.Bore = 45 * mm
	_, err = PressFit(bad)
	refuses(t, "Bore", err)
	_, err = EffectiveInterference(1, -1, 0)
	refuses(t, "inner", err)
	_, err = PressHold(HoldParams{1, 1, 1, 1.2})
	refuses(t, "Friction", err)
	_, err = ClearanceLoss(ClearanceLossParams{Expansion: 11e-6})
	refuses(t, "Raceway", err)
}
