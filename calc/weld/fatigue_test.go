package weld

import (
	"math"
	"testing"

	"axlewright/internal/published"
	"pgregory.net/rapid"
)

func direct(category float64) CategoryParams { return CategoryParams{category * mpa, 1, DirectRange} }
func shear(category float64) CategoryParams  { return CategoryParams{category * mpa, 1, ShearRange} }

func TestFatigueLifePublished(t *testing.T) {
	const source = "derived: EN 1993-1-9:2005, 7.1, two million cycles at the category (from memory)"
	life := func(curve CategoryParams, stress float64) float64 {
		return must(FatigueLife(FatigueLifeParams{stress * mpa, curve, VariableAmplitude})).Cycles
	}
	published.Check(t, []published.Row{
		{Name: "category 71 at 100 MPa", Got: life(direct(71), 100), Printed: "715822", Source: source},
		{Name: "category 36 at 50 MPa", Got: life(direct(36), 50), Printed: "746496", Source: source},
		{Name: "shear category 80 at 100 MPa", Got: life(shear(80), 100), Printed: "655360", Source: source},
		{Name: "category 71 at its own range", Got: life(direct(71), 71), Printed: "2000000", Source: "EN 1993-1-9:2005, 1.2.2: definition of the category"},
	})
}

func TestFatigueLimitsPublished(t *testing.T) {
	const source = "EN 1993-1-9:2005, figures 7.1 and 7.2, by the factors 0.737, 0.549 and 0.457 (from memory)"
	a, b, c := must(FatigueLimits(direct(80))), must(FatigueLimits(direct(36))), must(FatigueLimits(shear(80)))
	published.Check(t, []published.Row{
		{Name: "80: Δσ_D", Got: a.Constant / mpa, Printed: "58.9", Source: source},
		{Name: "80: Δσ_L", Got: a.CutOff / mpa, Printed: "32.4", Source: source},
		{Name: "36: Δσ_D", Got: b.Constant / mpa, Printed: "26.5", Source: source},
		{Name: "36: Δσ_L", Got: b.CutOff / mpa, Printed: "14.6", Source: source},
		{Name: "80: Δτ_L", Got: c.CutOff / mpa, Printed: "36.6", Source: source},
		{Name: "Δσ_D/Δσ_C", Got: a.Constant / (80 * mpa), Printed: "0.737", Source: "EN 1993-1-9:2005, 7.1(2) (from memory)"},
		{Name: "Δσ_L/Δσ_D", Got: a.CutOff / a.Constant, Printed: "0.549", Source: "EN 1993-1-9:2005, 7.1(3) (from memory)"},
		{Name: "Δτ_L/Δτ_C", Got: c.CutOff / (80 * mpa), Printed: "0.457", Source: "EN 1993-1-9:2005, 7.1(3) (from memory)"},
	})
}

func TestFatigueCurveIsWholeAtItsCorners(t *testing.T) {
	for _, curve := range []CategoryParams{direct(63), {63 * mpa, 1.35, DirectRange}, shear(80)} {
		l := must(FatigueLimits(curve))
		at := func(stress float64) FatigueLifeResult {
			return must(FatigueLife(FatigueLifeParams{stress, curve, VariableAmplitude}))
		}
		near(t, "beginning", at(l.Highest).Cycles, 1e4, 1e-9)
		near(t, "cut-off", at(l.CutOff).Cycles, 1e8, 1e-9)
		if r := at(l.CutOff * 0.999); !r.Endless || r.DamagePerCycle != 0 {
			t.Errorf("below the cut-off: %+v", r)
		}
		if curve.Kind == DirectRange {
			near(t, "bend from above", at(l.Constant).Cycles, 5e6, 1e-9)
			near(t, "bend from below", at(l.Constant*(1-1e-9)).Cycles, 5e6, 1e-7)
			if r := must(FatigueLife(FatigueLifeParams{l.Constant * 0.99, curve, ConstantAmplitude})); !r.Endless {
				t.Error("constant amplitude below Δσ_D is not endless")
			}
		}
		_, err := FatigueLife(FatigueLifeParams{l.Highest * 1.001, curve, VariableAmplitude})
		refused(t, "Range", err)
	}
}

func TestFatigueFallsWithRangeAndRisesWithCategory(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.Float64Range(36, 160).Draw(t, "category")
		stress := rapid.Float64Range(0.5, 5).Draw(t, "stress") * c * mpa
		n := must(FatigueLife(FatigueLifeParams{stress, direct(c), VariableAmplitude})).Cycles
		more := must(FatigueLife(FatigueLifeParams{stress * 1.1, direct(c), VariableAmplitude})).Cycles
		better := must(FatigueLife(FatigueLifeParams{stress * 1.1, direct(c * 1.1), VariableAmplitude})).Cycles
		if more >= n {
			t.Fatal("a greater range lives longer")
		}
		if math.Abs(better-n) > 1e-9*n {
			t.Fatal("life hangs on more than the ratio of range to category")
		}
	})
}

func TestSpectrumDamage(t *testing.T) {
	one := must(SpectrumDamage(SpectrumParams{[]StressBlock{{100 * mpa, 715822}}, direct(71)}))
	near(t, "one block to the end", one.Damage, 1, 1e-6)
	near(t, "its equivalent", one.Equivalent, 71*mpa, 1e-6)
	// all below Δσ_D: no damage, by 7.1(2); one range above it wakes the others
	below := []StressBlock{{45 * mpa, 1e6}, {40 * mpa, 5e6}}
	if r := must(SpectrumDamage(SpectrumParams{below, direct(71)})); r.Damage != 0 || r.Equivalent != 0 {
		t.Errorf("all below the constant-amplitude limit: %+v", r)
	}
	woken := must(SpectrumDamage(SpectrumParams{append(below, StressBlock{60 * mpa, 1}), direct(71)}))
	d := 71 * math.Pow(0.4, 1.0/3)
	want := 1e6*math.Pow(45/d, 5)/5e6 + 5e6*math.Pow(40/d, 5)/5e6 + math.Pow(60.0/71, 3)/2e6
	near(t, "woken", woken.Damage, want, 1e-12)
	near(t, "equivalent", math.Pow(woken.Equivalent/(71*mpa), 3), woken.Damage, 1e-9)
	_, err := SpectrumDamage(SpectrumParams{nil, direct(71)})
	refused(t, "Blocks", err)
	_, err = SpectrumDamage(SpectrumParams{[]StressBlock{{500 * mpa, 1}}, direct(71)})
	refused(t, "Range", err)
	_, err = SpectrumDamage(SpectrumParams{below, CategoryParams{71 * mpa, 1, "bending"}})
	refused(t, "Kind", err)
}

func TestThroatRangesAndTheRest(t *testing.T) {
	r := must(ThroatRanges(ThroatStressesResult{30 * mpa, -40 * mpa, -25 * mpa}))
	near(t, "σ_wf", r.Direct, 50*mpa, 1e-12)
	near(t, "τ_wf", r.Shear, 25*mpa, 1e-12)
	near(t, "combined", must(CombinedFatigueUse(CombinedFatigueParams{40, 80, 40, 80})), 0.125+0.03125, 1e-12)
	near(t, "both tension", must(RelievedRange(ExtremeStresses{80 * mpa, 20 * mpa})), 60*mpa, 1e-12)
	near(t, "across zero", must(RelievedRange(ExtremeStresses{80 * mpa, -50 * mpa})), 110*mpa, 1e-12)
	near(t, "both compression", must(RelievedRange(ExtremeStresses{-20 * mpa, -80 * mpa})), 36*mpa, 1e-12)
	_, err := RelievedRange(ExtremeStresses{0, 1})
	refused(t, "Highest", err)
	near(t, "25 mm", must(ThicknessFactor(25*mm)), 1, 1e-15)
	published.Check(t, []published.Row{{Name: "k_s at 50 mm", Got: must(ThicknessFactor(50 * mm)), Printed: "0.871", Source: "derived: EN 1993-1-9:2005, table 8.3, (25/50)^0.2"}})
}

func TestDetailCategoriesPublished(t *testing.T) {
	const source = "EN 1993-1-9:2005, tables 8.2 to 8.5 (from memory)"
	category := func(d Detail, length, thickness float64) float64 {
		return must(DetailCategory(DetailParams{d, length * mm, thickness * mm})).Category / mpa
	}
	var rows []published.Row
	for _, c := range []struct {
		detail            Detail
		length, thickness float64
		printed           string
	}{
		{ToeOfLoadCarryingFillet, 40, 10, "80"},
		{ToeOfLoadCarryingFillet, 70, 10, "71"},
		{ToeOfLoadCarryingFillet, 90, 40, "63"},
		{ToeOfLoadCarryingFillet, 110, 40, "56"},
		{ToeOfLoadCarryingFillet, 150, 15, "56"},
		{ToeOfLoadCarryingFillet, 150, 25, "50"},
		{ToeOfLoadCarryingFillet, 250, 25, "50"},
		{ToeOfLoadCarryingFillet, 250, 40, "45"},
		{ToeOfLoadCarryingFillet, 350, 40, "45"},
		{ToeOfLoadCarryingFillet, 350, 60, "40"},
		{RootOfFillet, 10, 10, "36"},
		{ShearAlongFillet, 10, 10, "80"},
		{OverlappingPlate, 10, 10, "45"},
		{EndOfAttachment, 50, 10, "80"},
		{EndOfAttachment, 80, 10, "71"},
		{EndOfAttachment, 100, 10, "63"},
		{EndOfAttachment, 101, 10, "56"},
		{StiffenerToe, 50, 10, "80"},
		{StiffenerToe, 60, 10, "71"},
		{EndOfThinnerCover, 300, 15, "56"},
		{EndOfThinnerCover, 300, 40, "45"},
		{EndOfThickerCover, 300, 15, "50"},
	} {
		rows = append(rows, published.Row{Name: string(c.detail), Got: category(c.detail, c.length, c.thickness), Printed: c.printed, Source: source})
	}
	const iiw = "IIW recommendations for fatigue design of welded joints, 2016 (from memory)"
	rows = append(rows,
		published.Row{Name: "IIW root", Got: category(IIWRootOfFillet, 10, 10), Printed: "36", Source: iiw},
		published.Row{Name: "IIW toe", Got: category(IIWToeOfLoadCarryingFillet, 10, 10), Printed: "63", Source: iiw},
		published.Row{Name: "IIW toe, full penetration", Got: category(IIWToeOfFullPenetration, 10, 10), Printed: "71", Source: iiw},
		published.Row{Name: "IIW shear", Got: category(IIWShearAlongFillet, 10, 10), Printed: "80", Source: iiw},
	)
	published.Check(t, rows)
	_, err := DetailCategory(DetailParams{StiffenerToe, 90 * mm, 10 * mm})
	refused(t, "Length", err)
	_, err = DetailCategory(DetailParams{"spot weld", 10 * mm, 10 * mm})
	refused(t, "Detail", err)
}

func TestEveryDetailHasACategoryTheFatigueCurveTakes(t *testing.T) {
	for _, row := range detailRows {
		r := must(DetailCategory(DetailParams{row.detail, 45 * mm, 10 * mm}))
		l := must(FatigueLimits(CategoryParams{r.Category, 1, StressKind(r.Kind)}))
		if l.CutOff <= 0 || l.CutOff > l.Constant || l.Constant > l.Highest || r.Source == "" || r.Note == "" {
			t.Errorf("%s: %+v, %+v", row.detail, r, l)
		}
	}
}
