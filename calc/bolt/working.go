package bolt

import (
	"fmt"
	"math"

	"axlewright/calc/check"
)

// WorkingStressParams describes a tightened bolt in service.
type WorkingStressParams struct {
	Preload        float64 // N, F_M: assembly preload, which sets the twist
	Force          float64 // N, F_S: greatest force in the bolt in service
	StressDiameter float64 // m, d_0: diameter of the stress area
	PitchDiameter  float64 // m, d_2: pitch diameter
	Pitch          float64 // m, P: thread pitch
	ThreadFriction float64 // -, µ_G: friction in the thread
	TwistLeft      float64 // -, k_τ: share of the twist still there in service, 0.5 by custom, 1 if none has gone
}

// WorkingStress returns the tension, the torsion and the equivalent stress in a bolt in service.
//
//	σ_red = √(σ² + 3·(k_τ·τ)²)
//	σ = F_S/A_0,  τ = F_M·d2/2·(P/(π·d2) + 1.155·µ_G)/(π/16·d0³)
//
// Valid for 60° threads, elastic torsion. Torsion is given with k_τ in it.
// Errors: *check.RangeError outside 0 <= µ_G <= 0.5, 0 <= k_τ <= 1, forces >= 0, 0 < P < d2/2.
// Source: VDI 2230-1:2015, 5.5.2 (from memory).
func WorkingStress(p WorkingStressParams) (StressResult, error) {
	const fn = "bolt.WorkingStress"
	q := PreloadParams{p.StressDiameter, p.PitchDiameter, p.Pitch, p.ThreadFriction, 1, 1}
	if err := q.check(fn); err != nil {
		return StressResult{}, err
	}
	if err := check.All(fn,
		check.NotNegative("Preload", p.Preload),
		check.NotNegative("Force", p.Force),
		check.Within("TwistLeft", p.TwistLeft, 0, 1),
	); err != nil {
		return StressResult{}, err
	}
	d0, d2, P := p.StressDiameter, p.PitchDiameter, p.Pitch
	sigma := p.Force / (math.Pi / 4 * d0 * d0)
	twist := p.Preload * d2 / 2 * (P/(math.Pi*d2) + 1.155*p.ThreadFriction)
	tau := p.TwistLeft * twist / (math.Pi / 16 * d0 * d0 * d0)
	return StressResult{sigma, tau, math.Sqrt(sigma*sigma + 3*tau*tau)}, nil
}

// StressAmplitudeParams describes a bolt that is pulled to and fro.
type StressAmplitudeParams struct {
	Greatest   float64 // N, F_SAo: greatest part of the working load in the bolt
	Least      float64 // N, F_SAu: least part of the working load in the bolt
	StressArea float64 // m², A_S: tensile stress area
}

// StressAmplitude returns the alternating stress in a bolt.
//
//	σ_a = (F_SAo − F_SAu)/(2·A_S)
//
//	σ_a  alternating stress, Pa
//
// Valid for loads along the bolt's axis, without bending.
// Errors: *check.RangeError where the least passes the greatest, or for an area of zero or below.
// Source: VDI 2230-1:2015, 5.5.3 (from memory).
func StressAmplitude(p StressAmplitudeParams) (float64, error) {
	if err := check.All("bolt.StressAmplitude",
		check.Finite("Greatest", p.Greatest),
		check.That("Least", p.Least, p.Least <= p.Greatest, "<= F_SAo"),
		check.Positive("StressArea", p.StressArea),
	); err != nil {
		return 0, err
	}
	return (p.Greatest - p.Least) / (2 * p.StressArea), nil
}

// Rolling says when a thread was rolled.
type Rolling string

// The usual bolt, and the dearer one.
const (
	RolledBefore Rolling = "before heat treatment"
	RolledAfter  Rolling = "after heat treatment"
)

// FatigueLimit returns the alternating stress that a rolled thread stands for ever.
//
//	σ_A = 0.85·(150/d + 45) in MPa, d in mm (before heat treatment)
//	σ_A = (2 − F_Sm/F_0.2)·0.85·(150/d + 45) (after heat treatment)
//
//	rolling    when the thread was rolled, name
//	d          nominal diameter, m
//	meanShare  mean force in the bolt by its yield force F_Sm/F_0.2, -
//	σ_A        fatigue limit of the thread as stress amplitude, Pa
//
// Valid for classes 8.8 to 12.9, 5 to 40 mm, 0.3 <= F_Sm/F_0.2 < 1, bare steel; not for cut threads or old bolts.
// Errors: *check.RangeError outside that range or for an unknown rolling.
// Source: VDI 2230-1:2015, 5.5.3 (from memory).
func FatigueLimit(rolling Rolling, d, meanShare float64) (float64, error) {
	if err := check.All("bolt.FatigueLimit",
		check.That("rolling", 0, rolling == RolledBefore || rolling == RolledAfter, fmt.Sprintf("%q or %q, not %q", RolledBefore, RolledAfter, rolling)),
		check.Within("d", d, 5e-3, 40e-3),
		check.That("meanShare", meanShare, meanShare >= 0.3 && meanShare < 1, "0.3 <= F_Sm/F_0.2 < 1"),
	); err != nil {
		return 0, err
	}
	limit := 0.85 * (150/(d*1e3) + 45) * 1e6
	if rolling == RolledAfter {
		limit *= 2 - meanShare
	}
	return limit, nil
}
