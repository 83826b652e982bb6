package weld

import (
	"math"

	"axlewright/calc/check"
)

// FlangeTiltParams is a flange with a fillet along its middle.
type FlangeTiltParams struct {
	Leg       float64 // m, ω: leg of the fillet
	Width     float64 // m, W: full width of the flange
	Thickness float64 // m, t: thickness of the flange
}

// FlangeTilt returns how far the edges of a flange are drawn up by fillets along its middle.
//
//	Δ = 0.02·W·ω^1.3/t²
//
//	Δ  movement of the edge, m
//
// In the formula's letters all lengths are in inches. LOW CONFIDENCE: ± 50 % at best, procedures
// differ; a trial weld is the only sure guide. Valid for a free steel flange with ω <= t.
// Errors: *check.RangeError outside that range.
// Source: Blodgett, Design of Welded Structures, 1966, section 7.7 (from memory, low confidence).
func FlangeTilt(p FlangeTiltParams) (float64, error) {
	if err := check.All("weld.FlangeTilt",
		check.Positive("Width", p.Width),
		check.Positive("Thickness", p.Thickness),
		check.That("Leg", p.Leg, p.Leg > 0 && p.Leg <= p.Thickness*(1+1e-12), "0 < Leg <= Thickness"),
	); err != nil {
		return 0, err
	}
	const inch = 0.0254
	w, omega, t := p.Width/inch, p.Leg/inch, p.Thickness/inch
	return 0.02 * w * math.Pow(omega, 1.3) / (t * t) * inch, nil
}

// BowParams is a member with a weld off its middle.
type BowParams struct {
	Area         float64 // m², A_w: area of the weld's section, all runs
	Offset       float64 // m, d: from the centroid of the member to the centroid of the weld
	Length       float64 // m, L: length of the member, welded throughout
	SecondMoment float64 // m⁴, I: of the member
}

// LongitudinalBow returns how far a member bows under the shrinkage of a weld off its middle.
//
//	Δ = 0.005·A_w·d·L²/I
//
//	Δ  bow at mid-length, m
//
// LOW CONFIDENCE: ± 50 %. The form is the same in inches and in metres. Valid for free,
// slender steel members welded along their whole length.
// Errors: *check.RangeError for figures that are not positive (the offset may be zero).
// Source: Blodgett, Design of Welded Structures, 1966, section 7.7 (from memory).
func LongitudinalBow(p BowParams) (float64, error) {
	if err := check.All("weld.LongitudinalBow",
		check.Positive("Area", p.Area),
		check.NotNegative("Offset", p.Offset),
		check.Positive("Length", p.Length),
		check.Positive("SecondMoment", p.SecondMoment),
	); err != nil {
		return 0, err
	}
	return 0.005 * p.Area * p.Offset * p.Length * p.Length / p.SecondMoment, nil
}

// TendonForce returns the force with which a cooled weld pulls along its length.
//
//	F = 0.2·η·q
//
//	heatInput  heat that reached the work for each metre η·q, J/m
//	F          pull along the weld, N
//
// In the formula's letters F is in kN and η·q in J/mm. LOW CONFIDENCE: ± 30 % on a single run,
// runs laid cold do not add up in full. Valid for steel plates large enough to stay elastic beside the weld.
// Errors: *check.RangeError for a heat input that is not positive.
// Source: White, Leggatt and Dwight, 1980; critical review in Verhaeghe, Predictive Formulae for Weld Distortion, 1999 (from memory).
func TendonForce(heatInput float64) (float64, error) {
	if err := check.All("weld.TendonForce", check.Positive("heatInput", heatInput)); err != nil {
		return 0, err
	}
	return 0.2 * heatInput, nil // 0.2 kN to each J/mm is 0.2 N to each J/m
}

// TendonParams is a straight member pulled along by a weld.
type TendonParams struct {
	Force        float64 // N, F: pull of the weld
	Offset       float64 // m, e: from the centroid of the member to the weld
	Length       float64 // m, L: length
	Area         float64 // m², A: section
	SecondMoment float64 // m⁴, I: second moment of the section
	Modulus      float64 // Pa, E: Young's modulus
}

// TendonMovementResult is what the pull of a weld does to a member.
type TendonMovementResult struct {
	Shortening float64 // m, shortening of the centroid's line
	Bow        float64 // m, bow at mid-length, hollow towards the weld
}

// TendonMovement returns the shortening and the bow of a member under the pull of a weld.
//
//	δ = F·L/(A·E)
//	Δ = F·e·L²/(8·E·I)
//
// LOW CONFIDENCE through the force; the rest is elastic beam theory. Valid for straight
// members welded along their whole length, not clamped.
// Errors: *check.RangeError for figures that are not positive (force and offset may be zero).
// Source: White, Leggatt and Dwight, 1980 (from memory); beam theory.
func TendonMovement(p TendonParams) (TendonMovementResult, error) {
	if err := check.All("weld.TendonMovement",
		check.NotNegative("Force", p.Force),
		check.NotNegative("Offset", p.Offset),
		check.Positive("Length", p.Length),
		check.Positive("Area", p.Area),
		check.Positive("SecondMoment", p.SecondMoment),
		check.Positive("Modulus", p.Modulus),
	); err != nil {
		return TendonMovementResult{}, err
	}
	return TendonMovementResult{
		Shortening: p.Force * p.Length / (p.Area * p.Modulus),
		Bow:        p.Force * p.Offset * p.Length * p.Length / (8 * p.Modulus * p.SecondMoment),
	}, nil
}
