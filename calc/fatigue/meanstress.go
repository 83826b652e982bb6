package fatigue

import (
	"math"

	"axlewright/calc/check"
)

// Criterion names the line by which a steady stress takes from the endurance
// limit.
type Criterion string

// The criteria.
const (
	Goodman     Criterion = "goodman"      // straight to the tensile strength
	Gerber      Criterion = "gerber"       // a parabola to the tensile strength
	ASMEEllipse Criterion = "asme-ellipse" // an ellipse to the yield strength
	Soderberg   Criterion = "soderberg"    // straight to the yield strength
)

// MeanStressParams are an alternating stress on top of a steady one.
type MeanStressParams struct {
	Criterion Criterion // name, line to judge by
	Amplitude float64   // Pa, σ_a: alternating stress
	Mean      float64   // Pa, σ_m: steady stress, tension
	Endurance float64   // Pa, S_e: endurance limit of the part
	Ultimate  float64   // Pa, S_u: tensile strength, for goodman and gerber; optional
	Yield     float64   // Pa, S_y: yield strength, for asme-ellipse and soderberg; optional
}

// conditions checks what the criterion needs.
func (p MeanStressParams) conditions() []check.Condition {
	c := []check.Condition{
		check.NotNegative("Mean", p.Mean),
		check.Positive("Endurance", p.Endurance),
	}
	switch p.Criterion {
	case Goodman, Gerber:
		return append(c, check.Positive("Ultimate", p.Ultimate))
	case ASMEEllipse, Soderberg:
		return append(c, check.Positive("Yield", p.Yield))
	}
	return append(c, check.Condition{Param: "Criterion", Value: math.NaN(), Range: "goodman, gerber, asme-ellipse or soderberg"})
}

// FatigueSafety returns the factor by which both alternating and steady stress may grow before fatigue.
//
//	n = 1/(σ_a/S_e + σ_m/S_u)                                              goodman
//	n = ½·(S_u/σ_m)²·(σ_a/S_e)·(−1 + √(1 + (2·σ_m·S_e/(S_u·σ_a))²))        gerber
//	n = 1/√((σ_a/S_e)² + (σ_m/S_y)²)                                       asme-ellipse
//	n = 1/(σ_a/S_e + σ_m/S_y)                                              soderberg
//
//	n  safety factor against fatigue, -
//
// Valid for a steady stress that pulls (σ_m ≥ 0) and an alternating one above
// zero. Yield in the first cycle is another question, except for soderberg.
// Errors: *check.RangeError outside that range or for another criterion.
// Source: Shigley's Mechanical Engineering Design, 8th ed., tables 6-6 to 6-8 (from memory).
func FatigueSafety(p MeanStressParams) (float64, error) {
	if err := check.All("fatigue.FatigueSafety", append(p.conditions(), check.Positive("Amplitude", p.Amplitude))...); err != nil {
		return 0, err
	}
	alternating := p.Amplitude / p.Endurance
	switch p.Criterion {
	case Goodman:
		return 1 / (alternating + p.Mean/p.Ultimate), nil
	case Gerber:
		// the table's form divides 0 by 0 without steady stress; this is the same root, turned over
		steady := p.Mean / p.Ultimate
		return 2 / (alternating * (1 + math.Sqrt(1+math.Pow(2*steady/alternating, 2)))), nil
	case ASMEEllipse:
		return 1 / math.Hypot(alternating, p.Mean/p.Yield), nil
	default: // Soderberg
		return 1 / (alternating + p.Mean/p.Yield), nil
	}
}

// ReversedAmplitudeParams are a stress cycle with a steady part.
type ReversedAmplitudeParams struct {
	Criterion Criterion // name, line to judge by
	Amplitude float64   // Pa, σ_a: alternating stress
	Mean      float64   // Pa, σ_m: steady stress, tension
	Strength  float64   // Pa, S: tensile strength for goodman and gerber, yield strength for asme-ellipse and soderberg
}

// ReversedAmplitude returns the fully reversed stress that does as much damage as a cycle with a steady part.
//
//	σ_ar = σ_a/(1 − σ_m/S)         goodman, soderberg
//	σ_ar = σ_a/(1 − (σ_m/S)²)      gerber
//	σ_ar = σ_a/√(1 − (σ_m/S)²)     asme-ellipse
//
//	σ_ar  reversed stress amplitude, Pa
//
// Valid for 0 ≤ σ_m < S. A steady stress that presses is not credited here.
// Errors: *check.RangeError outside that range or for another criterion.
// Source: Shigley's Mechanical Engineering Design, 8th ed., 6-12 (from memory);
// Dowling, Mechanical Behavior of Materials, for the same forms (from memory).
func ReversedAmplitude(p ReversedAmplitudeParams) (float64, error) {
	if err := check.All("fatigue.ReversedAmplitude",
		check.NotNegative("Amplitude", p.Amplitude),
		check.Positive("Strength", p.Strength),
		check.That("Mean", p.Mean, p.Mean >= 0 && p.Mean < p.Strength, "0 <= Mean < Strength"),
	); err != nil {
		return 0, err
	}
	steady := p.Mean / p.Strength
	switch p.Criterion {
	case Goodman, Soderberg:
		return p.Amplitude / (1 - steady), nil
	case Gerber:
		return p.Amplitude / (1 - steady*steady), nil
	case ASMEEllipse:
		return p.Amplitude / math.Sqrt(1-steady*steady), nil
	}
	return 0, check.All("fatigue.ReversedAmplitude",
		check.Condition{Param: "Criterion", Value: math.NaN(), Range: "goodman, gerber, asme-ellipse or soderberg"})
}
