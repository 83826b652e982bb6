package bolt

import (
	"math"

	"axlewright/calc/check"
)

// PreloadParams describes a bolt at the end of tightening.
type PreloadParams struct {
	StressDiameter float64 // m, d_0: diameter of the stress area, or of a reduced shank if smaller
	PitchDiameter  float64 // m, d_2: pitch diameter
	Pitch          float64 // m, P: thread pitch
	ThreadFriction float64 // -, µ_G: friction in the thread
	Yield          float64 // Pa, R_p0.2: least yield strength
	Utilisation    float64 // -, ν: share of yield used, 0.9 by custom
}

func (p PreloadParams) check(fn string) error {
	return check.All(fn,
		check.Positive("StressDiameter", p.StressDiameter),
		check.That("PitchDiameter", p.PitchDiameter, p.PitchDiameter > 0, "> 0"),
		check.That("Pitch", p.Pitch, p.Pitch > 0 && p.Pitch < p.PitchDiameter/2, "0 < P < d2/2"),
		check.Within("ThreadFriction", p.ThreadFriction, 0, 0.5),
		check.Positive("Yield", p.Yield),
		check.That("Utilisation", p.Utilisation, p.Utilisation > 0 && p.Utilisation <= 1, "0 < ν <= 1"),
	)
}

// AssemblyPreload returns the greatest preload that tightening may leave in a bolt, twist included.
//
//	F_M = ν·R_p0.2·A_0/√(1 + 3·[(3/2)·(d2/d0)·(P/(π·d2) + 1.155·µ_G)]²)
//	A_0 = π/4·d0²
//
//	F_M  assembly preload, N
//
// Valid for 60° threads; the core is taken as fully plastic in torsion, so a
// bolt tightened by turning only. A 55° thread has 1.127 in place of 1.155 (1.5 % of the friction part).
// Errors: *check.RangeError outside 0 <= µ_G <= 0.5, 0 < ν <= 1, 0 < P < d2/2.
// Source: VDI 2230-1:2015, 5.5.1 (from memory).
func AssemblyPreload(p PreloadParams) (float64, error) {
	if err := p.check("bolt.AssemblyPreload"); err != nil {
		return 0, err
	}
	d0, d2, P := p.StressDiameter, p.PitchDiameter, p.Pitch
	twist := 1.5 * (d2 / d0) * (P/(math.Pi*d2) + 1.155*p.ThreadFriction)
	A0 := math.Pi / 4 * d0 * d0
	return A0 * p.Utilisation * p.Yield / math.Sqrt(1+3*twist*twist), nil
}

// AssemblyStressParams describes a bolt while the spanner is on it.
type AssemblyStressParams struct {
	Preload        float64 // N, F_M: force in the bolt
	StressDiameter float64 // m, d_0: diameter of the stress area
	PitchDiameter  float64 // m, d_2: pitch diameter
	Pitch          float64 // m, P: thread pitch
	ThreadFriction float64 // -, µ_G: friction in the thread
}

// StressResult holds the stresses in the stressed section of a bolt.
type StressResult struct {
	Tension    float64 // Pa, σ: direct stress
	Torsion    float64 // Pa, τ: shear stress of the twist
	Equivalent float64 // Pa, σ_red: equivalent stress, distortion energy
}

// AssemblyStress returns the tension, the torsion and the equivalent stress in a bolt while it is tightened.
//
//	σ_red = √(σ² + 3·τ²)
//	σ = F_M/A_0,  τ = M_G/(π/12·d0³),  M_G = F_M·d2/2·(P/(π·d2) + 1.155·µ_G)
//
// Valid for 60° threads; torsion taken as fully plastic, as in AssemblyPreload, of which it is the inverse.
// Errors: *check.RangeError outside 0 <= µ_G <= 0.5, F_M >= 0, 0 < P < d2/2.
// Source: VDI 2230-1:2015, 5.5.1 (from memory).
func AssemblyStress(p AssemblyStressParams) (StressResult, error) {
	q := PreloadParams{p.StressDiameter, p.PitchDiameter, p.Pitch, p.ThreadFriction, 1, 1}
	if err := q.check("bolt.AssemblyStress"); err != nil {
		return StressResult{}, err
	}
	if err := check.All("bolt.AssemblyStress", check.NotNegative("Preload", p.Preload)); err != nil {
		return StressResult{}, err
	}
	d0, d2, P := p.StressDiameter, p.PitchDiameter, p.Pitch
	sigma := p.Preload / (math.Pi / 4 * d0 * d0)
	twist := p.Preload * d2 / 2 * (P/(math.Pi*d2) + 1.155*p.ThreadFriction)
	tau := twist / (math.Pi / 12 * d0 * d0 * d0)
	return StressResult{sigma, tau, math.Sqrt(sigma*sigma + 3*tau*tau)}, nil
}
