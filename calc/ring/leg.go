package ring

import (
	"gonum.org/v1/gonum/integrate/quad"

	"axlewright/calc/check"
)

// LegParams describes a leg of a casting that stands out from its root and is
// pushed at its end, of rectangular section with a depth that tapers evenly.
type LegParams struct {
	Length    float64 // m, L: distance from the force to the root
	TipDepth  float64 // m, h_t: depth along the force, at the force
	RootDepth float64 // m, h_r: depth along the force, at the root
	Width     float64 // m, b: width across the force
	Modulus   float64 // Pa, E: Young's modulus
	Poisson   float64 // -, ν: Poisson's ratio
	Force     float64 // N, F: force at right angles to the leg
}

// LegResult is what the leg does.
type LegResult struct {
	Deflection float64 // m, δ: movement of the force
	Stiffness  float64 // N/m, k: force against movement
	Slope      float64 // rad, θ: slope under the force, by bending
	RootStress float64 // Pa, σ_r: bending stress at the root
	MaxStress  float64 // Pa, σ: largest bending stress
	MaxPlace   float64 // m, its distance from the force
}

// TaperedLeg returns movement and stress of a tapered cantilever, with shear.
//
//	δ = ∫ [F·x²/(E·I) + 1.2·F/(G·b·h)] dx from 0 to L
//	h = h_t + (h_r − h_t)·x/L,  I = b·h³/12,  θ = ∫ F·x/(E·I) dx
//	σ = 6·F·x/(b·h²), largest where h = 2·h_t, or at the root before that
//
// A leg that is more than twice as deep at its root as at the force is
// stressed most part of the way down, not at the root.
//
// Valid for slopes of a side up to about 15°; the root is taken as rigid,
// though a casting gives there too.
// Errors: *check.RangeError where a dimension is not positive.
// Source: Gere, Mechanics of Materials, 5th edition, sections 5.7 and 9.7
// (beams whose section varies); 1.2 for the shear of a rectangle: section 9.8.
func TaperedLeg(p LegParams) (LegResult, error) {
	if err := check.All("ring.TaperedLeg",
		check.Positive("Length", p.Length),
		check.Positive("TipDepth", p.TipDepth),
		check.Positive("RootDepth", p.RootDepth),
		check.Positive("Width", p.Width),
		check.Positive("Modulus", p.Modulus),
		check.That("Poisson", p.Poisson, p.Poisson >= 0 && p.Poisson < 0.5, "0 <= ν < 0.5"),
		check.Positive("Force", p.Force),
	); err != nil {
		return LegResult{}, err
	}
	depth := func(x float64) float64 { return p.TipDepth + (p.RootDepth-p.TipDepth)*x/p.Length }
	shear := p.Modulus / (2 * (1 + p.Poisson))
	var r LegResult
	x, w := make([]float64, 41), make([]float64, 41)
	quad.Legendre{}.FixedLocations(x, w, 0, p.Length)
	for i := range x {
		h := depth(x[i])
		bend := p.Force * x[i] / (p.Modulus * p.Width * h * h * h / 12)
		r.Slope += w[i] * bend
		r.Deflection += w[i] * (bend*x[i] + 1.2*p.Force/(shear*p.Width*h))
	}
	r.Stiffness = p.Force / r.Deflection
	stress := func(x float64) float64 { return 6 * p.Force * x / (p.Width * depth(x) * depth(x)) }
	r.RootStress = stress(p.Length)
	r.MaxPlace = p.Length
	if p.RootDepth > 2*p.TipDepth {
		r.MaxPlace = p.Length * p.TipDepth / (p.RootDepth - p.TipDepth)
	}
	r.MaxStress = stress(r.MaxPlace)
	return r, nil
}
