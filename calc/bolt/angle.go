package bolt

import (
	"math"

	"axlewright/calc/check"
)

// TighteningAngle returns the angle past snug that stretches a bolt to a preload.
//
//	ψ = 2·π·F·(δ_S + δ_P)/P
//
//	preload     force to be reached beyond snug F, N
//	resilience  resilience of bolt and clamped parts together δ_S + δ_P, m/N
//	pitch       thread pitch P, m
//	ψ           angle to turn past snug, rad
//
// Valid for bolts below yield, from a snug torque that has closed every gap.
// Errors: *check.RangeError for a negative preload or a resilience or pitch of zero or below.
// Source: VDI 2230-1:2015, 5.4.3.3 (from memory).
func TighteningAngle(preload, resilience, pitch float64) (float64, error) {
	if err := check.All("bolt.TighteningAngle",
		check.NotNegative("preload", preload), check.Positive("resilience", resilience), check.Positive("pitch", pitch),
	); err != nil {
		return 0, err
	}
	return 2 * math.Pi * preload * resilience / pitch, nil
}

// PreloadFromAngle returns the preload that an angle past snug leaves in a bolt.
//
//	F = ψ·P/(2·π·(δ_S + δ_P))
//
//	angle       angle turned past snug ψ, rad
//	resilience  resilience of bolt and clamped parts together δ_S + δ_P, m/N
//	pitch       thread pitch P, m
//	F           force gained beyond snug, N
//
// Valid for bolts below yield, from a snug torque that has closed every gap.
// Errors: *check.RangeError for a negative angle or a resilience or pitch of zero or below.
// Source: VDI 2230-1:2015, 5.4.3.3 (from memory).
func PreloadFromAngle(angle, resilience, pitch float64) (float64, error) {
	if err := check.All("bolt.PreloadFromAngle",
		check.NotNegative("angle", angle), check.Positive("resilience", resilience), check.Positive("pitch", pitch),
	); err != nil {
		return 0, err
	}
	return angle * pitch / (2 * math.Pi * resilience), nil
}

// PreloadFromStretch returns the preload that a measured stretch of the bolt means.
//
//	F = f_S/δ_S
//
//	stretch     lengthening of the bolt, measured over its ends f_S, m
//	resilience  resilience of the bolt alone δ_S, m/N
//	F           force in the bolt, N
//
// Valid for bolts below yield, at the same temperature loose and tight.
// Errors: *check.RangeError for a negative stretch or a resilience of zero or below.
// Source: definition of the resilience, VDI 2230-1:2015, 5.1.1 (from memory).
func PreloadFromStretch(stretch, resilience float64) (float64, error) {
	if err := check.All("bolt.PreloadFromStretch",
		check.NotNegative("stretch", stretch), check.Positive("resilience", resilience),
	); err != nil {
		return 0, err
	}
	return stretch / resilience, nil
}
