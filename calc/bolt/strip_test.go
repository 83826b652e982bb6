package bolt

import (
	"math"
	"testing"

	"axlewright/internal/published"

	"pgregory.net/rapid"
)

// unifiedShear is the shear area of a 2A bolt in a 2B hole for one inch of engagement, from limits of size in inches.
func unifiedShear(n, boltMajor, boltPitch, holePitch, holeMinor float64) ShearAreaResult {
	return must(ShearArea(ShearAreaParams{Unified, inch / n, inch, boltMajor * inch, boltPitch * inch, holePitch * inch, holeMinor * inch}))
}

func TestUnifiedShearAreasPublished(t *testing.T) {
	const source = "FED-STD-H28 thread strength table, in² for 1 inch of engagement, class 2A/2B limits of ASME B1.1 (from memory)"
	var rows []published.Row
	for _, c := range []struct {
		name       string
		area       ShearAreaResult
		bolt, hole string
	}{
		{"1/4-20 UNC", unifiedShear(20, 0.2408, 0.2127, 0.2224, 0.207), "0.368", "0.539"},
		{"3/8-16 UNC", unifiedShear(16, 0.3643, 0.3287, 0.3401, 0.321), "0.576", "0.828"},
		{"1/2-13 UNC", unifiedShear(13, 0.4876, 0.4435, 0.4565, 0.434), "0.779", "1.12"},
	} {
		rows = append(rows,
			published.Row{Name: c.name + " bolt thread", Got: c.area.Bolt / (inch * inch), Printed: c.bolt, Source: source},
			published.Row{Name: c.name + " hole thread", Got: c.area.Hole / (inch * inch), Printed: c.hole, Source: source})
	}
	published.Check(t, rows)
}

func TestShearAreaLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.Float64Range(5, 24).Draw(t, "d") * mm
		pitch := d * rapid.Float64Range(0.07, 0.16).Draw(t, "P")
		form := rapid.SampledFrom([]Form{Metric, Unified, Whitworth}).Draw(t, "form")
		g := must(ThreadGeometry(form, d, pitch))
		p := ShearAreaParams{form, pitch, d, d, g.PitchDiameter, g.PitchDiameter, g.HoleMinor}
		area := must(ShearArea(p))
		if area.Bolt >= area.Hole {
			t.Errorf("%s: the hole's thread, on the larger diameter, must have the larger area: %+v", form, area)
		}
		longer := p
		longer.Engagement *= 2
		if got := must(ShearArea(longer)); !near(got.Bolt, 2*area.Bolt, 1e-12) || !near(got.Hole, 2*area.Hole, 1e-12) {
			t.Errorf("twice the length: %+v of %+v", got, area)
		}
		// a hole opened out to the pitch diameter leaves the bolt half of a full cylinder there
		worn := p
		worn.HoleMinor = g.PitchDiameter * (1 - 1e-9)
		worn.HolePitch = g.PitchDiameter
		if got, half := must(ShearArea(worn)).Bolt, math.Pi*g.PitchDiameter*d/2; !near(got, half, 1e-6) {
			t.Errorf("a hole worn to the pitch diameter: %g, want half of the cylinder there %g", got, half)
		}
	})
}

func TestBendingFactorsMeetAtEqualStrength(t *testing.T) {
	below, above, at := must(ThreadBending(1-1e-9)), must(ThreadBending(1+1e-9)), must(ThreadBending(1))
	if !near(below.Hole, at.Hole, 0.001) || !near(above.Bolt, at.Bolt, 0.001) || at.Bolt != 0.897 || at.Hole != 0.897 {
		t.Errorf("below %+v, at %+v, above %+v", below, at, above)
	}
	for r := 0.45; r < 2.2; r += 0.05 {
		b := must(ThreadBending(r))
		if b.Bolt < 0.85 || b.Bolt > 1.3 || b.Hole < 0.85 || b.Hole > 1.3 {
			t.Errorf("R_S %.2f: %+v", r, b)
		}
	}
}

func TestThreadFactorsDerived(t *testing.T) {
	const source = "derived: Alexander's polynomials as in VDI 2230-1:2015, 5.5.5, by hand (polynomials from memory)"
	weak, strong := must(ThreadBending(0.8)), must(ThreadBending(1.5))
	published.Check(t, []published.Row{
		{Name: "C_1 at s/d 1.5", Got: must(NutDilation(1.5*12*mm, 12*mm)), Printed: "0.840", Source: source},
		{Name: "C_1 at s/d 1.6", Got: must(NutDilation(1.6*12*mm, 12*mm)), Printed: "0.910", Source: source},
		{Name: "C_3 at R_S 0.8", Got: weak.Hole, Printed: "0.9533", Source: source},
		{Name: "C_2 at R_S 1.5", Got: strong.Bolt, Printed: "1.1043", Source: source},
	})
}

func TestNutDilationReachesOneAndFalls(t *testing.T) {
	if got := must(NutDilation(1.9*12*mm, 12*mm)); !near(got, 1, 1e-12) {
		t.Errorf("at 1.9·d: %g", got)
	}
	if got := must(NutDilation((1.9-1e-9)*12*mm, 12*mm)); !near(got, 1, 1e-6) {
		t.Errorf("just below 1.9·d: %g, the branches do not meet", got)
	}
	if a, b := must(NutDilation(1.4*12*mm, 12*mm)), must(NutDilation(1.6*12*mm, 12*mm)); a >= b {
		t.Errorf("a thinner boss must keep less: %g, %g", a, b)
	}
}

func TestStrippingForceAndRatio(t *testing.T) {
	published.Check(t, []published.Row{
		{Name: "300 mm² of 180 MPa iron, kN", Got: must(StrippingForce(300e-6, 180*mpa, 1)) / kN, Printed: "54.0", Source: "derived: τ·A"},
		{Name: "strength ratio of 330 mm² at 400 by 250 mm² at 1040 MPa", Printed: "0.508",
			Got:    must(StrengthRatio(StrengthRatioParams{330e-6, 400 * mpa, 250e-6, 1040 * mpa})),
			Source: "derived: A_SGM·R_mM/(A_SGS·R_mS)"},
	})
}

func TestStripRefuses(t *testing.T) {
	_, err := ShearArea(ShearAreaParams{Metric, 1.75 * mm, 12 * mm, 12 * mm, 10 * mm, 10.8 * mm, 10.1 * mm})
	refuses(t, "BoltPitch", err)
	_, err = ShearArea(ShearAreaParams{"acme", 1.75 * mm, 12 * mm, 12 * mm, 10.8 * mm, 10.8 * mm, 10.1 * mm})
	refuses(t, "Form", err)
	_, err = StrengthRatio(StrengthRatioParams{1, 1, 0, 1})
	refuses(t, "BoltArea", err)
	_, err = ThreadBending(0.3)
	refuses(t, "ratio", err)
	_, err = NutDilation(15*mm, 12*mm)
	refuses(t, "width", err)
	_, err = StrippingForce(1, 1, 1.1)
	refuses(t, "keep", err)
	_, err = ShearRatio("brass")
	refuses(t, "metal", err)
}
