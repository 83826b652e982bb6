package bearing

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestRatingAgreesWithTheCheckedFormulas(t *testing.T) {
	r, err := RatingFromRollers(params(flat, ClosedForm))
	must(t, r, err)
	rapid.Check(t, func(t *rapid.T) {
		fr := rapid.Float64Range(1, 2e4).Draw(t, "F_r")
		fa := rapid.Float64Range(0, 1e4).Draw(t, "F_a")
		kappa := rapid.Float64Range(0.1, 5).Draw(t, "κ")
		ec := rapid.Float64Range(0, 1).Draw(t, "e_C")
		same := func(what string, got, want float64, err error) {
			if err != nil || math.Abs(got/want-1) > 1e-12 {
				t.Fatalf("%s: %g, want %g (%v)", what, got, want, err)
			}
		}
		p, err := EquivalentDynamicLoad(DynamicLoadParams{Radial: fr, Axial: fa, E: r.E, Y: r.Y})
		same("P", r.EquivalentDynamic(fr, fa), p, err)
		p0, err := EquivalentStaticLoad(StaticLoadParams{Radial: fr, Axial: fa, Y0: r.Y0})
		same("P_0", r.EquivalentStatic(fr, fa), p0, err)
		s, err := StaticSafety(StaticSafetyParams{Rating: r.Static, Load: p0})
		same("S_0", r.StaticSafety(p0), s, err)
		a, err := SystemFactor(SystemFactorParams{Kappa: kappa, Contamination: ec, FatigueLimit: r.FatigueLimit, Load: p})
		same("a_ISO", r.SystemFactor(p, kappa, ec), a, err)
		if p > r.Dynamic/2 {
			return
		}
		l, err := BasicLife(LifeParams{Rating: r.Dynamic, Load: p, Element: Roller})
		same("L10", r.Life(p), l, err)
		m, err := ModifiedLife(ModifiedLifeParams{Rating: r.Dynamic, Load: p, ReliabilityFactor: 1, SystemFactor: a})
		same("L10m", r.ModifiedLife(p, kappa, ec), m, err)
	})
	k, err := ViscosityRatio(ViscosityRatioParams{Viscosity: 3e-5, Speed: 90, PitchDiameter: r.PitchDiameter})
	near(t, "κ", r.Kappa(3e-5, 90), must(t, k, err), 1e-12)
	if r.Kappa(3e-5, 0) != 0 || r.SystemFactor(1e4, 0, 0.3) != 0.1 {
		t.Error("a bearing at rest is given a film")
	}
	if !math.IsInf(r.Life(0), 1) || !math.IsInf(r.StaticSafety(0), 1) {
		t.Error("a bearing without load wears out")
	}
}

func TestRatingFromMakerFillsInWhatIsMissing(t *testing.T) {
	f, err := LoadFactors(flat.CupAngle)
	must(t, f, err)
	p := MakerParams{Dynamic: 60e3, Static: 70e3, E: f.E, Bore: 35e-3, OutsideDiameter: 72e-3}
	r, err := RatingFromMaker(p)
	must(t, r, err)
	near(t, "Y", r.Y, f.Y, 1e-12)
	near(t, "Y_0", r.Y0, f.Y0, 1e-12)
	near(t, "C_u", r.FatigueLimit, 70e3/8.2, 1e-12)
	near(t, "D_pw", r.PitchDiameter, 53.5e-3, 1e-12)
	p.Y, p.Y0, p.FatigueLimit = 1.7, 0.9, 8e3
	r, err = RatingFromMaker(p)
	must(t, r, err)
	if r.Y != 1.7 || r.Y0 != 0.9 || r.FatigueLimit != 8e3 {
		t.Errorf("the maker's figures are not kept: %+v", r)
	}
	p.OutsideDiameter = 30e-3
	if _, err := RatingFromMaker(p); err == nil {
		t.Error("an outside diameter below the bore is accepted")
	}
}

func TestRatingMakesNoGarbage(t *testing.T) {
	r, err := RatingFromRollers(params(flat, ClosedForm))
	must(t, r, err)
	sum := 0.
	if n := testing.AllocsPerRun(100, func() {
		p := r.EquivalentDynamic(9e3, 4e3)
		sum += r.ModifiedLife(p, 0.7, 0.2) + r.StaticSafety(r.EquivalentStatic(9e3, 4e3))
	}); n != 0 {
		t.Errorf("%g allocations a load case", n)
	}
	if !(sum > 0) {
		t.Error(sum)
	}
}

func BenchmarkRatingBasicLife(b *testing.B) {
	r, err := RatingFromRollers(params(flat, ClosedForm))
	if err != nil {
		b.Fatal(err)
	}
	sum := 0.
	for i := range b.N {
		sum += r.Life(r.EquivalentDynamic(9e3, float64(i%8000)))
	}
	if !(sum > 0) {
		b.Fatal(sum)
	}
}

func BenchmarkRatingModifiedLife(b *testing.B) {
	r, err := RatingFromRollers(params(flat, ClosedForm))
	if err != nil {
		b.Fatal(err)
	}
	sum := 0.
	for i := range b.N {
		sum += r.ModifiedLife(r.EquivalentDynamic(9e3, float64(i%8000)), 0.7, 0.2)
	}
	if !(sum > 0) {
		b.Fatal(sum)
	}
}
