package weld

import (
	"math"

	"axlewright/calc/check"
)

// FilletShape is the cross-section of a fillet weld.
type FilletShape struct {
	LegA  float64 // m, z_1: leg on the one part
	LegB  float64 // m, z_2: leg on the other part
	Angle float64 // rad, θ: angle between the two fused faces, π/2 for a square corner
}

// Throat returns the design throat of a fillet weld: the height, from the root, of
// the largest triangle that fits into the weld.
//
//	a = z_1·z_2·sin(θ)/√(z_1² + z_2² − 2·z_1·z_2·cos(θ))
//
//	a  design throat, m
//
// Valid for 60° <= θ <= 120° and a foot of the height on the weld's face
// (z_1·cos(θ) < z_2 and the reverse). Penetration past the root is not counted.
// Errors: *check.RangeError outside that range.
// Source: EN 1993-1-8:2005, 4.3.2.1(1) and 4.5.2(1) (from memory); the height of the triangle is geometry.
func Throat(p FilletShape) (float64, error) {
	if err := check.All("weld.Throat",
		check.Positive("LegA", p.LegA),
		check.Positive("LegB", p.LegB),
		faceAngle("Angle", p.Angle),
		check.That("LegA", p.LegA, p.LegA*math.Cos(p.Angle) < p.LegB, "LegA·cos(Angle) < LegB"),
		check.That("LegB", p.LegB, p.LegB*math.Cos(p.Angle) < p.LegA, "LegB·cos(Angle) < LegA"),
	); err != nil {
		return 0, err
	}
	z1, z2 := p.LegA, p.LegB
	face := math.Sqrt(z1*z1 + z2*z2 - 2*z1*z2*math.Cos(p.Angle))
	return z1 * z2 * math.Sin(p.Angle) / face, nil
}

// LegForThroat returns the leg that an equal-legged fillet weld needs for a throat.
//
//	z = a/cos(θ/2)
//
//	throat  throat wanted, m
//	angle   angle θ between the two fused faces, rad
//	z       leg, m
//
// Valid for 60° <= θ <= 120°.
// Errors: *check.RangeError outside that range.
// Source: geometry of EN 1993-1-8:2005, 4.5.2(1) (from memory).
func LegForThroat(throat, angle float64) (float64, error) {
	if err := check.All("weld.LegForThroat",
		check.Positive("throat", throat),
		faceAngle("angle", angle),
	); err != nil {
		return 0, err
	}
	return throat / math.Cos(angle/2), nil
}

func faceAngle(name string, angle float64) check.Condition {
	const degree = math.Pi / 180
	holds := angle >= (60-1e-9)*degree && angle <= (120+1e-9)*degree
	return check.That(name, angle, holds, "π/3 to 2·π/3")
}
