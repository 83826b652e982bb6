package fit

import (
	"math"

	"axlewright/calc/check"
)

// Dimension is one part of a stack.
type Dimension struct {
	Nominal   float64 // m, middle of the tolerance
	Tolerance float64 // m, t: half of the tolerance, as in ± t
	Closes    bool    // -, yes where the part fills the gap, no where it opens it
}

// StackParams is a row of parts that leaves a gap.
type StackParams struct {
	Dimensions []Dimension // -, parts of the stack
	Inflation  float64     // -, factor on the statistical spread: 1, or 1.5 where parts are not centred
}

// StackResult is the gap that a stack leaves.
type StackResult struct {
	Gap         float64 // m, w: middle of the gap, negative where the parts interfere
	WorstCase   float64 // m, half range with every part at its worst
	Statistical float64 // m, half range of the root of the sum of squares, inflated
	Least       float64 // m, least gap, worst case
	Greatest    float64 // m, greatest gap, worst case
}

// Stack returns the gap that a row of parts leaves, worst case and statistical.
//
//	w = Σ opening − Σ closing
//	worst case = Σ t,  statistical = z·√(Σ t²)
//
// Valid for parts made independently; the statistical range needs many parts and centred work.
// Errors: *check.RangeError for no part, a negative tolerance, or an inflation below 1.
// Source: Shigley's Mechanical Engineering Design, 9th ed., 1-13; inflation 1.5: A. Bender, Statistical tolerancing as it relates to quality control (1968), from memory.
func Stack(p StackParams) (StackResult, error) {
	conditions := []check.Condition{
		check.That("Dimensions", float64(len(p.Dimensions)), len(p.Dimensions) > 0, "at least one part"),
		check.That("Inflation", p.Inflation, p.Inflation >= 1, ">= 1"),
	}
	var r StackResult
	squares := 0.0
	for _, d := range p.Dimensions {
		conditions = append(conditions, check.Finite("Dimensions", d.Nominal), check.NotNegative("Dimensions", d.Tolerance))
		if d.Closes {
			r.Gap -= d.Nominal
		} else {
			r.Gap += d.Nominal
		}
		r.WorstCase += d.Tolerance
		squares += d.Tolerance * d.Tolerance
	}
	if err := check.All("fit.Stack", conditions...); err != nil {
		return StackResult{}, err
	}
	r.Statistical = p.Inflation * math.Sqrt(squares)
	r.Least, r.Greatest = r.Gap-r.WorstCase, r.Gap+r.WorstCase
	return r, nil
}

// UniformDeviation returns the standard deviation of a size that lies anywhere in its tolerance with equal chance.
//
//	σ = t/√3
//
//	tolerance  half of the tolerance t, m
//	σ          standard deviation, m
//
// Valid for an even chance between −t and +t.
// Errors: *check.RangeError for a negative tolerance.
// Source: JCGM 100:2008 (GUM), 4.3.7.
func UniformDeviation(tolerance float64) (float64, error) {
	if err := check.All("fit.UniformDeviation", check.NotNegative("tolerance", tolerance)); err != nil {
		return 0, err
	}
	return tolerance / math.Sqrt(3), nil
}
