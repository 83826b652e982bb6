package contact

import (
	"math"

	"axlewright/calc/check"
)

// LineParams describe two cylinders with parallel axes pressed together.
type LineParams struct {
	Force      float64 // N, F: normal force
	Length     float64 // m, L: length of the line
	Curvature1 float64 // 1/m, 1/R1: curvature of the first body; 0 flat, negative hollow
	Curvature2 float64 // 1/m, 1/R2: curvature of the second body; 0 flat, negative hollow
	Modulus    float64 // Pa, E*: contact modulus of the pair
}

// LineResult is the state of a line contact.
type LineResult struct {
	HalfWidth    float64 // m, b: half the width of the strip that touches
	PeakPressure float64 // Pa, p0: pressure in the middle of the strip
	PeakShear    float64 // Pa, τ_max: largest shear stress, below the surface
	ShearDepth   float64 // m, z: depth of the largest shear stress
}

// The largest shear stress under a line contact and its depth follow from the
// stresses on the axis, τ = p0·(ζ − ζ²/√(1+ζ²)) with ζ = z/b. Handbooks round
// them to 0.30 and 0.78 or 0.79.
const (
	lineShear      = 0.300283
	lineShearDepth = 0.786152
)

// LineContact returns the pressure and the shear stress where two cylinders touch along a line.
//
//	b = √(4·F·R/(π·L·E*)),  1/R = 1/R1 + 1/R2
//	p0 = 2·F/(π·b·L)
//	τ_max = 0.3003·p0 at z = 0.7862·b
//
// Valid for parallel axes, no friction, b small beside R and L, and a closed
// pair (1/R1 + 1/R2 > 0).
// Errors: *check.RangeError outside that range.
// Source: Johnson, Contact Mechanics (1985), 4.2(c) (from memory).
func LineContact(p LineParams) (LineResult, error) {
	curvature := p.Curvature1 + p.Curvature2
	if err := check.All("contact.LineContact",
		check.Positive("Force", p.Force),
		check.Positive("Length", p.Length),
		check.Positive("Modulus", p.Modulus),
		check.That("Curvature1", p.Curvature1, curvature > 0, "Curvature1 + Curvature2 > 0"),
		check.Finite("Curvature2", p.Curvature2),
	); err != nil {
		return LineResult{}, err
	}
	b := math.Sqrt(4 * p.Force / (math.Pi * p.Length * p.Modulus * curvature))
	p0 := 2 * p.Force / (math.Pi * b * p.Length)
	return LineResult{
		HalfWidth:    b,
		PeakPressure: p0,
		PeakShear:    lineShear * p0,
		ShearDepth:   lineShearDepth * b,
	}, nil
}
