package weld

import (
	"math"

	"axlewright/calc/check"
)

// StressKind tells which fatigue curve a stress range follows.
type StressKind string

// Kinds of stress range.
const (
	DirectRange StressKind = "direct" // normal stress: slopes 3 and 5
	ShearRange  StressKind = "shear"  // shear stress: slope 5
)

var stressKinds = []StressKind{DirectRange, ShearRange}

// Course tells whether all ranges are alike, so that a lasting limit may be counted on.
type Course string

// Courses of the stress.
const (
	ConstantAmplitude Course = "constant amplitude"
	VariableAmplitude Course = "variable amplitude"
)

var courses = []Course{ConstantAmplitude, VariableAmplitude}

// Cycles at the corners of the fatigue curves.
const (
	cyclesReference = 2e6
	cyclesConstant  = 5e6
	cyclesCutOff    = 1e8
	cyclesLeast     = 1e4
)

// CategoryParams is a fatigue curve.
type CategoryParams struct {
	Category      float64    // Pa, Δσ_C: strength at two million cycles, the detail category
	PartialFactor float64    // -, γ_Mf: partial factor on the category, 1.0 to 1.35
	Kind          StressKind // name, direct or shear
}

func (p CategoryParams) check(fn string) error {
	if err := check.All(fn,
		check.Positive("Category", p.Category),
		check.Within("PartialFactor", p.PartialFactor, 1, 2),
	); err != nil {
		return err
	}
	if p.Kind != DirectRange && p.Kind != ShearRange {
		return notNamed(fn, "Kind", p.Kind, stressKinds)
	}
	return nil
}

func (p CategoryParams) strength() float64 { return p.Category / p.PartialFactor }

// FatigueLimitsResult are the corners of a fatigue curve.
type FatigueLimitsResult struct {
	Constant float64 // Pa, Δσ_D: ranges all below it do no harm; for shear the same as the cut-off
	CutOff   float64 // Pa, Δσ_L: single ranges below it do no harm
	Highest  float64 // Pa, range at ten thousand cycles, where the curve begins
}

// FatigueLimits returns the constant-amplitude limit and the cut-off of a detail category.
//
//	Δσ_D = Δσ_C·(2/5)^(1/3)           0.737·Δσ_C, at 5e6 cycles
//	Δσ_L = Δσ_D·(5/100)^(1/5)         0.549·Δσ_D, at 1e8 cycles
//	Δτ_L = Δτ_C·(2/100)^(1/5)         0.457·Δτ_C, at 1e8 cycles
//
// Valid for steel in air. The category is divided by the partial factor first.
// Errors: *check.RangeError for a category that is not positive, a partial factor outside 1 to 2 or an unknown kind.
// Source: EN 1993-1-9:2005, 7.1(2) and (3), figures 7.1 and 7.2 (from memory).
func FatigueLimits(p CategoryParams) (FatigueLimitsResult, error) {
	if err := p.check("weld.FatigueLimits"); err != nil {
		return FatigueLimitsResult{}, err
	}
	return p.limits(), nil
}

func (p CategoryParams) limits() FatigueLimitsResult {
	c := p.strength()
	if p.Kind == ShearRange {
		cutOff := c * math.Pow(cyclesReference/cyclesCutOff, 1.0/5)
		return FatigueLimitsResult{cutOff, cutOff, c * math.Pow(cyclesReference/cyclesLeast, 1.0/5)}
	}
	constant := c * math.Pow(cyclesReference/cyclesConstant, 1.0/3)
	return FatigueLimitsResult{
		Constant: constant,
		CutOff:   constant * math.Pow(cyclesConstant/cyclesCutOff, 1.0/5),
		Highest:  c * math.Pow(cyclesReference/cyclesLeast, 1.0/3),
	}
}

// cycles is the life at a range, zero where the range does no harm.
func (p CategoryParams) cycles(stressRange float64, course Course) float64 {
	l, c := p.limits(), p.strength()
	switch {
	case stressRange < l.CutOff*(1-1e-12):
		return 0
	case p.Kind == ShearRange:
		return cyclesReference * math.Pow(c/stressRange, 5)
	case stressRange >= l.Constant*(1-1e-12):
		return cyclesReference * math.Pow(c/stressRange, 3)
	case course == ConstantAmplitude:
		return 0
	}
	return cyclesConstant * math.Pow(l.Constant/stressRange, 5)
}

// FatigueLifeParams is one stress range on one detail.
type FatigueLifeParams struct {
	Range  float64        // Pa, Δσ: stress range, nominal, times its own partial factor
	Curve  CategoryParams // -, fatigue curve
	Course Course         // name, constant or variable amplitude
}

// FatigueLifeResult is the life at a stress range.
type FatigueLifeResult struct {
	Cycles         float64 // -, N: cycles to failure, 0 where Endless
	DamagePerCycle float64 // -, 1/N, 0 where Endless
	Endless        bool    // -, the range is below the limit that counts for this course
}

// FatigueLife returns the cycles that a welded detail bears at a stress range.
//
//	N = 2e6·(Δσ_C/Δσ)³      Δσ >= Δσ_D
//	N = 5e6·(Δσ_D/Δσ)⁵      Δσ_L <= Δσ < Δσ_D, variable amplitude
//	N = 2e6·(Δτ_C/Δτ)⁵      shear, Δτ >= Δτ_L
//
// Valid for steel in air, as welded, from ten thousand cycles up; the mean stress plays no part.
// Errors: *check.RangeError for a range above the curve's beginning (that is a matter of strength), a negative range or a bad curve.
// Source: EN 1993-1-9:2005, 7.1 (from memory).
func FatigueLife(p FatigueLifeParams) (FatigueLifeResult, error) {
	const fn = "weld.FatigueLife"
	if err := p.Curve.check(fn); err != nil {
		return FatigueLifeResult{}, err
	}
	if p.Course != ConstantAmplitude && p.Course != VariableAmplitude {
		return FatigueLifeResult{}, notNamed(fn, "Course", p.Course, courses)
	}
	if err := check.All(fn, p.Curve.bearable("Range", p.Range)); err != nil {
		return FatigueLifeResult{}, err
	}
	n := p.Curve.cycles(p.Range, p.Course)
	if n == 0 {
		return FatigueLifeResult{Endless: true}, nil
	}
	return FatigueLifeResult{Cycles: n, DamagePerCycle: 1 / n}, nil
}

func (p CategoryParams) bearable(name string, stressRange float64) check.Condition {
	highest := p.limits().Highest
	return check.That(name, stressRange, stressRange >= 0 && stressRange <= highest*(1+1e-12),
		"0 to the range at 1e4 cycles")
}

// StressBlock is a number of like stress ranges.
type StressBlock struct {
	Range  float64 // Pa, Δσ: stress range
	Cycles float64 // -, n: how often it comes
}

// SpectrumParams is a load history, counted, on one detail.
type SpectrumParams struct {
	Blocks []StressBlock  // -, counted ranges
	Curve  CategoryParams // -, fatigue curve
}

// SpectrumResult is the damage of a load history.
type SpectrumResult struct {
	Damage     float64 // -, D: sum of n/N, failure at 1
	Equivalent float64 // Pa, Δσ_E2: range that does the same damage in two million cycles
}

// SpectrumDamage returns the damage sum of a counted load history on a welded detail, and the range that would do the same in two million cycles.
//
//	D = Σ n_i/N_i
//	Δσ_E2 = Δσ_C·D^(1/m),  m = 3 direct, 5 shear
//
// Valid for ranges counted by rainflow or reservoir. Where every range is below Δσ_D
// the standard counts no damage at all, and so does this.
// Errors: *check.RangeError for no blocks, negative counts, a range above the curve's beginning or a bad curve.
// Source: EN 1993-1-9:2005, 7.1(2), 8(3) and annex A.5 (from memory).
func SpectrumDamage(p SpectrumParams) (SpectrumResult, error) {
	const fn = "weld.SpectrumDamage"
	if err := p.Curve.check(fn); err != nil {
		return SpectrumResult{}, err
	}
	if err := check.All(fn, check.That("Blocks", float64(len(p.Blocks)), len(p.Blocks) > 0, "one block at least")); err != nil {
		return SpectrumResult{}, err
	}
	highest := 0.0
	for _, b := range p.Blocks {
		if err := check.All(fn, p.Curve.bearable("Range", b.Range), check.NotNegative("Cycles", b.Cycles)); err != nil {
			return SpectrumResult{}, err
		}
		if b.Cycles > 0 {
			highest = math.Max(highest, b.Range)
		}
	}
	course := VariableAmplitude
	if highest < p.Curve.limits().Constant*(1-1e-12) {
		course = ConstantAmplitude
	}
	var r SpectrumResult
	for _, b := range p.Blocks {
		if n := p.Curve.cycles(b.Range, course); n > 0 {
			r.Damage += b.Cycles / n
		}
	}
	slope := 3.0
	if p.Curve.Kind == ShearRange {
		slope = 5
	}
	r.Equivalent = p.Curve.strength() * math.Pow(r.Damage, 1/slope)
	return r, nil
}
