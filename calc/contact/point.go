package contact

import (
	"math"

	"axlewright/calc/check"
)

// PointParams describe two balls, or a ball on a flat, pressed together.
type PointParams struct {
	Force     float64 // N, F: normal force
	Curvature float64 // 1/m, 1/R: sum of the curvatures of both bodies, hollow ones negative
	Modulus   float64 // Pa, E*: contact modulus of the pair
}

// PointResult is the state of a circular contact.
type PointResult struct {
	Radius       float64 // m, a: radius of the circle that touches
	PeakPressure float64 // Pa, p0: pressure in the middle of the circle
	Approach     float64 // m, δ: approach of distant points of the two bodies
	PeakShear    float64 // Pa, τ_max: largest shear stress, below the surface
	ShearDepth   float64 // m, z: depth of the largest shear stress
}

// The largest shear stress under a circular contact for ν = 0.3, from the
// stresses on the axis; handbooks round them to 0.31 and 0.48.
const (
	pointShear      = 0.310021
	pointShearDepth = 0.480864
)

// PointContact returns the pressure, approach and shear stress where two rounded bodies touch at a point.
//
//	a = (3·F·R/(4·E*))^(1/3)
//	p0 = 3·F/(2π·a²)
//	δ = a²/R
//	τ_max = 0.3100·p0 at z = 0.4809·a
//
// Valid for bodies as round one way as the other, no friction, a small beside
// R; the shear stress for a Poisson's ratio of 0.3.
// Errors: *check.RangeError outside that range.
// Source: Johnson, Contact Mechanics (1985), 3.4 and 4.2(a) (from memory).
func PointContact(p PointParams) (PointResult, error) {
	if err := check.All("contact.PointContact",
		check.Positive("Force", p.Force),
		check.Positive("Curvature", p.Curvature),
		check.Positive("Modulus", p.Modulus),
	); err != nil {
		return PointResult{}, err
	}
	a := math.Cbrt(3 * p.Force / (4 * p.Modulus * p.Curvature))
	p0 := 3 * p.Force / (2 * math.Pi * a * a)
	return PointResult{
		Radius:       a,
		PeakPressure: p0,
		Approach:     a * a * p.Curvature,
		PeakShear:    pointShear * p0,
		ShearDepth:   pointShearDepth * a,
	}, nil
}
