package contact

import (
	"math"

	"axlewright/calc/check"
)

// PadPressure returns the mean pressure under a round pad.
//
//	p = 4·F/(π·d²)
//
//	force     force on the pad F, N
//	diameter  diameter of the pad d, m
//	p         mean pressure, Pa
//
// Valid for a pad that is free to tilt, so that it lies flat.
// Errors: *check.RangeError for a negative force or a diameter not above zero.
// Source: definition of pressure.
func PadPressure(force, diameter float64) (float64, error) {
	if err := check.All("contact.PadPressure",
		check.NotNegative("force", force),
		check.Positive("diameter", diameter),
	); err != nil {
		return 0, err
	}
	return 4 * force / (math.Pi * diameter * diameter), nil
}

// RubbingSpeed returns the speed at which a turning face passes a point.
//
//	v = ω·r
//
//	radius  distance of the point from the axis r, m
//	speed   angular speed of the face ω, rad/s
//	v       rubbing speed, m/s
//
// Valid for any radius; the sense of turning is dropped.
// Errors: *check.RangeError for a negative radius or a speed that is no number.
// Source: definition of angular speed.
func RubbingSpeed(radius, speed float64) (float64, error) {
	if err := check.All("contact.RubbingSpeed",
		check.NotNegative("radius", radius),
		check.Finite("speed", speed),
	); err != nil {
		return 0, err
	}
	return radius * math.Abs(speed), nil
}

// PressureVelocity returns the product of pressure and rubbing speed by which plain bearings are judged.
//
//	pv = p·v
//
//	pressure  mean pressure p, Pa
//	speed     rubbing speed v, m/s
//	pv        pressure times speed, Pa·m/s
//
// Valid for any pressure and speed not below zero.
// Errors: *check.RangeError outside that range.
// Source: Shigley's Mechanical Engineering Design, 8th ed., 12-15 (from memory).
func PressureVelocity(pressure, speed float64) (float64, error) {
	if err := check.All("contact.PressureVelocity",
		check.NotNegative("pressure", pressure),
		check.NotNegative("speed", speed),
	); err != nil {
		return 0, err
	}
	return pressure * speed, nil
}

// RubbingHeat returns the heat that friction makes where a pad rubs.
//
//	Q = µ·F·v
//
//	friction  coefficient of friction µ, -
//	force     force on the pad F, N
//	speed     rubbing speed v, m/s
//	Q         heat, W
//
// Valid for values not below zero.
// Errors: *check.RangeError outside that range.
// Source: Shigley's Mechanical Engineering Design, 8th ed., 12-15 (from memory).
func RubbingHeat(friction, force, speed float64) (float64, error) {
	if err := check.All("contact.RubbingHeat",
		check.NotNegative("friction", friction),
		check.NotNegative("force", force),
		check.NotNegative("speed", speed),
	); err != nil {
		return 0, err
	}
	return friction * force * speed, nil
}
