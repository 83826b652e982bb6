package fit

import (
	"math"

	"axlewright/calc/check"
)

// ThermalGapParams describes a part that stands across a gap in a body of another metal.
type ThermalGapParams struct {
	PartLength    float64 // m, L_1: length of the part, such as a bronze peg
	PartExpansion float64 // 1/K, α_1: expansion of the part
	PartWarming   float64 // K, ΔT_1: how much the part warms
	BodyLength    float64 // m, L_2: length of the body beside it
	BodyExpansion float64 // 1/K, α_2: expansion of the body
	BodyWarming   float64 // K, ΔT_2: how much the body warms
}

// ThermalClosing returns how much a gap closes when part and body warm up; below zero it opens.
//
//	Δg = α_1·L_1·ΔT_1 − α_2·L_2·ΔT_2
//
//	Δg  closing of the gap, m
//
// Valid for parts that are warm right through and free to grow.
// Errors: *check.RangeError for a negative length or an expansion of zero or below.
// Source: definition of the coefficient of expansion.
func ThermalClosing(p ThermalGapParams) (float64, error) {
	if err := check.All("fit.ThermalClosing",
		check.NotNegative("PartLength", p.PartLength), check.Positive("PartExpansion", p.PartExpansion), check.Finite("PartWarming", p.PartWarming),
		check.NotNegative("BodyLength", p.BodyLength), check.Positive("BodyExpansion", p.BodyExpansion), check.Finite("BodyWarming", p.BodyWarming),
	); err != nil {
		return 0, err
	}
	return p.PartExpansion*p.PartLength*p.PartWarming - p.BodyExpansion*p.BodyLength*p.BodyWarming, nil
}

// AngleOverLength returns the angle that a deviation over a length means, such as two bores out of line.
//
//	φ = atan(e/L)
//
//	deviation  deviation across the length e, m
//	length     length L, m
//	φ          angle, rad
//
// Valid for any deviation over a length above zero.
// Errors: *check.RangeError for a length of zero or below.
// Source: geometry.
func AngleOverLength(deviation, length float64) (float64, error) {
	if err := check.All("fit.AngleOverLength", check.Finite("deviation", deviation), check.Positive("length", length)); err != nil {
		return 0, err
	}
	return math.Atan(deviation / length), nil
}
