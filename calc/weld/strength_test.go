package weld

import (
	"math"
	"testing"

	"axlewright/internal/published"
	"pgregory.net/rapid"
)

func filletStrength(grade SteelGrade, fu float64) FilletStrengthParams {
	return FilletStrengthParams{fu * mpa, must(CorrelationFactor(grade)), 1.25}
}

func TestFilletShearStrengthPublished(t *testing.T) {
	const derived = "derived: EN 1993-1-8:2005, eq. (4.4) with β_w of table 4.1 (from memory)"
	var rows []published.Row
	for _, c := range []struct {
		grade   SteelGrade
		fu      float64
		printed string
		source  string
	}{
		{S235, 360, "207.8", derived},
		{S275, 430, "233.7", derived},
		{S275, 410, "222.8", derived + ", f_u of EN 10025-2"},
		{S355, 510, "261.7", "worked example of an end-plate weld by EN 1993-1-8, f_u 510 (title of the example not recorded)"},
		{S355, 470, "241.2", derived + ", f_u of EN 10025-2"},
		{S420, 520, "240.2", derived},
		{S460, 540, "249.4", derived},
	} {
		got := must(FilletShearStrength(filletStrength(c.grade, c.fu)))
		rows = append(rows, published.Row{Name: string(c.grade), Got: got / mpa, Printed: c.printed, Source: c.source})
	}
	strength := must(FilletShearStrength(filletStrength(S355, 510)))
	rows = append(rows, published.Row{
		Name: "throat for 335.6 N/mm, S355, mm", Got: must(RequiredThroat(335.6e3, strength)) / mm, Printed: "1.28",
		Source: "worked example of an end-plate weld by EN 1993-1-8, f_u 510 (title of the example not recorded)",
	})
	published.Check(t, rows)
}

func TestDirectionalPublished(t *testing.T) {
	const source = "derived: EN 1993-1-8:2005, 4.5.3.2 and 4.5.3.3 for a transverse fillet, a 4, l 100 mm, 50 kN, f_u 510"
	stress := must(ThroatStresses(ThroatForces{Across: 50e3 / 0.1, Throat: 4 * mm}))
	strength := filletStrength(S355, 510)
	check := must(DirectionalCheck(DirectionalParams{stress, strength}))
	simple := 50e3 / 0.1 / (4 * mm) / must(FilletShearStrength(strength))
	published.Check(t, []published.Row{
		{Name: "σ_⊥", Got: stress.Normal / mpa, Printed: "88.39", Source: source},
		{Name: "τ_⊥", Got: stress.ShearAcross / mpa, Printed: "88.39", Source: source},
		{Name: "use, directional", Got: check.Use, Printed: "0.390", Source: source},
		{Name: "use, simplified", Got: simple, Printed: "0.478", Source: source},
		{Name: "gain of a transverse weld", Got: simple / check.Use, Printed: "1.225", Source: "EN 1993-1-8: √1.5, stated in every commentary (from memory)"},
	})
}

// Whatever the direction, the directional method never asks for more weld than the
// simplified one, and never gives more than √1.5 on the equivalent stress.
func TestDirectionalLiesBetweenSimplifiedAndRootOnePointFive(t *testing.T) {
	strength := filletStrength(S355, 470)
	shear := must(FilletShearStrength(strength))
	force := rapid.Float64Range(-1e6, 1e6)
	rapid.Check(t, func(t *rapid.T) {
		p := ThroatForces{force.Draw(t, "along"), force.Draw(t, "across"), force.Draw(t, "upright"), 4 * mm}
		s := must(ThroatStresses(p))
		r := must(DirectionalCheck(DirectionalParams{s, strength}))
		resultant := math.Sqrt(p.Along*p.Along+p.Across*p.Across+p.Upright*p.Upright) / p.Throat
		stress := math.Sqrt(s.Normal*s.Normal + s.ShearAcross*s.ShearAcross + s.ShearAlong*s.ShearAlong)
		if math.Abs(stress-resultant) > 1e-9*resultant {
			t.Fatalf("resolving changes the resultant: %g, %g", stress, resultant)
		}
		simple := resultant / shear
		use := r.Equivalent / r.EquivalentLimit
		if use > simple*(1+1e-9) {
			t.Fatalf("directional %g above simplified %g", use, simple)
		}
		// a force square to the throat has no shear at all: there the σ_⊥ limit rules
		if s.ShearAcross != 0 && math.Abs(s.ShearAcross) >= math.Abs(s.Normal) && simple > use*math.Sqrt(1.5)*(1+1e-9) {
			t.Fatalf("gain %g above √1.5", simple/use)
		}
	})
}

func TestNormalStressLimitRulesAForceSquareToTheThroat(t *testing.T) {
	s := must(ThroatStresses(ThroatForces{Across: 1e6, Upright: 1e6, Throat: 4 * mm}))
	r := must(DirectionalCheck(DirectionalParams{s, filletStrength(S460, 540)}))
	near(t, "shear", s.ShearAcross+1, 1, 1e-12)
	near(t, "use", r.Use, s.Normal/(0.9*540*mpa/1.25), 1e-12)
}

func TestStrengthRefusals(t *testing.T) {
	_, err := FilletLineResistance(240*mpa, 2.9*mm)
	refused(t, "throat", err)
	near(t, "3 mm", must(FilletLineResistance(240*mpa, 3*mm)), 720e3, 1e-12)
	_, err = FilletShearStrength(FilletStrengthParams{510 * mpa, 0.7, 1.25})
	refused(t, "Correlation", err)
	_, err = DirectionalCheck(DirectionalParams{ThroatStressesResult{Normal: math.Inf(1)}, filletStrength(S235, 360)})
	refused(t, "Normal", err)
	_, err = RequiredThroat(-1, 240*mpa)
	refused(t, "force", err)
}
