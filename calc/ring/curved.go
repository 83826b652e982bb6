package ring

import (
	"math"

	"axlewright/calc/check"
)

// CurvedBeamParams describes a section of a curved beam: a trapezoid, or a
// rectangle where both widths are the same.
type CurvedBeamParams struct {
	InnerRadius float64 // m, a: radius of the inner face
	OuterRadius float64 // m, c: radius of the outer face
	InnerWidth  float64 // m, b1: width of the inner face
	OuterWidth  float64 // m, b2: width of the outer face
	Force       float64 // N, P: force along the beam at the centroid, tension positive
	Moment      float64 // N·m, M: moment about the centroid, positive where it straightens the beam
}

// CurvedBeamResult is the section and its stress.
type CurvedBeamResult struct {
	Area           float64 // m², A: area
	CentroidRadius float64 // m, R: radius of the centroid
	NeutralRadius  float64 // m, r_n: radius of the neutral fibre in pure bending
	InnerStress    float64 // Pa, σ_i: stress of the inner face
	OuterStress    float64 // Pa, σ_o: stress of the outer face
}

// CurvedBeam returns the stress at the inner and outer face of a curved beam.
//
//	σ = P/A + M·(A − r·A_m)/(A·r·(R·A_m − A)),  A_m = ∫dA/r,  r_n = A/A_m
//	A_m = (b1·c − b2·a)/(c − a)·ln(c/a) − b1 + b2,  A = (b1 + b2)/2·(c − a)
//	R = a + (c − a)·(b1 + 2·b2)/(3·(b1 + b2))
//
// Valid for bending in the plane of curvature of a solid section; thin flanges
// of I and T sections bend along and need an effective width.
// Errors: *check.RangeError where a dimension is not positive or c <= a.
// Source: Boresi and Schmidt, Advanced Mechanics of Materials, 6th edition,
// equation 9.11 and table 9.2.
func CurvedBeam(p CurvedBeamParams) (CurvedBeamResult, error) {
	if err := check.All("ring.CurvedBeam",
		check.Positive("InnerRadius", p.InnerRadius),
		check.That("OuterRadius", p.OuterRadius, p.OuterRadius > p.InnerRadius, "> InnerRadius"),
		check.Positive("InnerWidth", p.InnerWidth),
		check.Positive("OuterWidth", p.OuterWidth),
		check.Finite("Force", p.Force),
		check.Finite("Moment", p.Moment),
	); err != nil {
		return CurvedBeamResult{}, err
	}
	a, c, b1, b2 := p.InnerRadius, p.OuterRadius, p.InnerWidth, p.OuterWidth
	area := (b1 + b2) / 2 * (c - a)
	am := (b1*c-b2*a)/(c-a)*math.Log(c/a) - b1 + b2
	centroid := a + (c-a)*(b1+2*b2)/(3*(b1+b2))
	stress := func(r float64) float64 {
		return p.Force/area + p.Moment*(area-r*am)/(area*r*(centroid*am-area))
	}
	return CurvedBeamResult{
		Area: area, CentroidRadius: centroid, NeutralRadius: area / am,
		InnerStress: stress(a), OuterStress: stress(c),
	}, nil
}

// CurvedArcParams describes a curved bar, held at one end, loaded across its
// plane at the other.
type CurvedArcParams struct {
	Radius           float64 // m, R: radius of the bar's axis
	Angle            float64 // rad, α: angle of arc; π/2 is a quarter ring
	Force            float64 // N, P: force at the free end, at right angles to the plane of the arc
	BendingStiffness float64 // N·m², EI: bending stiffness out of the plane
	TwistStiffness   float64 // N·m², GJ: torsional stiffness
}

// OutOfPlaneArc returns the deflection of a curved cantilever loaded across
// its plane.
//
//	δ = P·R³·[(α/2 − sin 2α/4)/EI + (3·α/2 − 2·sin α + sin 2α/4)/GJ]
//
//	δ  deflection of the free end, m
//
// Valid for bars thin against their radius, 0 < α <= 2·π.
// Errors: *check.RangeError outside that range.
// Source: Timoshenko, Strength of Materials, part I, 3rd edition, article 80
// (π/4 and 3·π/4 − 2 for a quarter ring; from memory).
func OutOfPlaneArc(p CurvedArcParams) (float64, error) {
	if err := check.All("ring.OutOfPlaneArc",
		check.Positive("Radius", p.Radius),
		check.That("Angle", p.Angle, p.Angle > 0 && p.Angle <= 2*math.Pi, "0 < α <= 2·π"),
		check.Finite("Force", p.Force),
		check.Positive("BendingStiffness", p.BendingStiffness),
		check.Positive("TwistStiffness", p.TwistStiffness),
	); err != nil {
		return 0, err
	}
	bend := p.Angle/2 - math.Sin(2*p.Angle)/4
	twist := 1.5*p.Angle - 2*math.Sin(p.Angle) + math.Sin(2*p.Angle)/4
	return p.Force * math.Pow(p.Radius, 3) * (bend/p.BendingStiffness + twist/p.TwistStiffness), nil
}
