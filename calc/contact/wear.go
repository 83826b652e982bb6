package contact

import (
	"math"

	"axlewright/calc/check"
)

// BushingWearParams describe a shaft that wears its bush.
type BushingWearParams struct {
	Diameter          float64 // m, D: bore of the bush
	Length            float64 // m, L: length of the bush
	Depth             float64 // m, w: wear that is allowed, radial
	Force             float64 // N, F: radial load
	ShaftSpeed        float64 // rad/s, ω: angular speed of the shaft
	WearFactor        float64 // m²/N, K: volume worn for each newton metre rubbed
	MotionFactor      float64 // -, f1: 1 to about 5, for the kind of motion, pressure and speed
	EnvironmentFactor float64 // -, f2: 1 clean and below 60 °C, to about 6 dirty and hot
}

// BushingWearResult is the life of a bush until it is worn by the allowed depth.
type BushingWearResult struct {
	PeakPressure     float64 // Pa, P_max: 4·F/(π·D·L)
	MeanPressure     float64 // Pa, P: F/(D·L)
	RubbingSpeed     float64 // m/s, V: ω·D/2
	PressureVelocity float64 // Pa·m/s, PV: mean pressure times rubbing speed
	Life             float64 // s, t: time until worn
	Revolutions      float64 // -, turns of the shaft until worn
}

// BushingWear returns how long a bush under boundary lubrication lasts until it is worn by a given depth.
//
//	t = π·D·L·w/(4·f1·f2·K·V·F),  V = ω·D/2
//
// Valid for boundary lubrication and a wear factor found for the pair.
// Errors: *check.RangeError for values not above zero.
// Source: Shigley's Mechanical Engineering Design, 8th ed., 12-15, eq. 12-32.
func BushingWear(p BushingWearParams) (BushingWearResult, error) {
	if err := check.All("contact.BushingWear",
		check.Positive("Diameter", p.Diameter),
		check.Positive("Length", p.Length),
		check.Positive("Depth", p.Depth),
		check.Positive("Force", p.Force),
		check.Positive("ShaftSpeed", p.ShaftSpeed),
		check.Positive("WearFactor", p.WearFactor),
		check.Positive("MotionFactor", p.MotionFactor),
		check.Positive("EnvironmentFactor", p.EnvironmentFactor),
	); err != nil {
		return BushingWearResult{}, err
	}
	v := p.ShaftSpeed * p.Diameter / 2
	mean := p.Force / (p.Diameter * p.Length)
	t := math.Pi * p.Diameter * p.Length * p.Depth /
		(4 * p.MotionFactor * p.EnvironmentFactor * p.WearFactor * v * p.Force)
	return BushingWearResult{
		PeakPressure:     4 / math.Pi * mean,
		MeanPressure:     mean,
		RubbingSpeed:     v,
		PressureVelocity: mean * v,
		Life:             t,
		Revolutions:      p.ShaftSpeed * t / (2 * math.Pi),
	}, nil
}

// PadWearParams describe a flat pad that rubs for a time.
type PadWearParams struct {
	Pressure          float64 // Pa, P: mean pressure
	Speed             float64 // m/s, V: rubbing speed
	Duration          float64 // s, t: time in contact
	WearFactor        float64 // m²/N, K: volume worn for each newton metre rubbed
	MotionFactor      float64 // -, f1: 1 to about 5, for the kind of motion, pressure and speed
	EnvironmentFactor float64 // -, f2: 1 clean and below 60 °C, to about 6 dirty and hot
}

// PadWear returns the depth that a flat pad wears away while it rubs.
//
//	w = f1·f2·K·P·V·t
//
//	w  depth worn, m
//
// Valid for boundary lubrication and a wear factor found for the pair.
// Errors: *check.RangeError for values below zero (factors: not above zero).
// Source: Shigley's Mechanical Engineering Design, 8th ed., 12-15, eq. 12-30 and 12-31 (from memory).
func PadWear(p PadWearParams) (float64, error) {
	if err := check.All("contact.PadWear",
		check.NotNegative("Pressure", p.Pressure),
		check.NotNegative("Speed", p.Speed),
		check.NotNegative("Duration", p.Duration),
		check.Positive("WearFactor", p.WearFactor),
		check.Positive("MotionFactor", p.MotionFactor),
		check.Positive("EnvironmentFactor", p.EnvironmentFactor),
	); err != nil {
		return 0, err
	}
	return p.MotionFactor * p.EnvironmentFactor * p.WearFactor * p.Pressure * p.Speed * p.Duration, nil
}
