package bolt

import (
	"math"

	"axlewright/calc/check"
)

// ScrewParams describes a screw that is turned under load against its collar.
type ScrewParams struct {
	Force          float64 // N, F: axial load
	Lead           float64 // m, l: advance in one turn, pitch times starts
	PitchDiameter  float64 // m, d_m: mean diameter of the thread
	FlankAngle     float64 // rad, α: half of the thread angle, 0 for a square thread
	ThreadFriction float64 // -, f: friction in the thread
	CollarFriction float64 // -, f_c: friction under the head or collar
	CollarDiameter float64 // m, d_c: mean diameter of the collar, 0 where there is none
}

func (p ScrewParams) check(fn string) error {
	lead := p.Lead / (math.Pi * p.PitchDiameter)
	return check.All(fn,
		check.NotNegative("Force", p.Force),
		check.Positive("PitchDiameter", p.PitchDiameter),
		check.Positive("Lead", p.Lead),
		check.That("FlankAngle", p.FlankAngle, p.FlankAngle >= 0 && p.FlankAngle < math.Pi/4, "0 <= α < π/4"),
		check.That("ThreadFriction", p.ThreadFriction,
			p.ThreadFriction >= 0 && p.ThreadFriction*lead/math.Cos(p.FlankAngle) < 1, "0 <= f, and f·l/cos α below π·d_m (else the screw jams)"),
		check.NotNegative("CollarFriction", p.CollarFriction),
		check.NotNegative("CollarDiameter", p.CollarDiameter),
	)
}

// ScrewRaisingTorque returns the torque that turns a screw against its load.
//
//	T_R = F·d_m/2·(tan λ + f·sec α)/(1 − f·tan λ·sec α) + F·f_c·d_c/2
//	tan λ = l/(π·d_m)
//
//	T_R  torque against the load, N·m
//
// Valid for any lead, flank angle below 45°. With d_c = 1.25·d it is the
// tightening torque of a bolt: T = [d_m/2·(…) + 0.625·f_c·d]·F.
// Errors: *check.RangeError outside F >= 0, l > 0, d_m > 0, 0 <= α < π/4, or where friction jams the screw.
// Source: Shigley's Mechanical Engineering Design, 9th ed., eqs. 8-5, 8-6, 8-26 (from memory).
func ScrewRaisingTorque(p ScrewParams) (float64, error) {
	if err := p.check("bolt.ScrewRaisingTorque"); err != nil {
		return 0, err
	}
	tanLead, f := p.Lead/(math.Pi*p.PitchDiameter), p.ThreadFriction/math.Cos(p.FlankAngle)
	return p.Force*p.PitchDiameter/2*(tanLead+f)/(1-f*tanLead) + p.Force*p.CollarFriction*p.CollarDiameter/2, nil
}

// ScrewLoweringTorque returns the torque that turns a screw with its load; below zero the screw runs back by itself.
//
//	T_L = F·d_m/2·(f·sec α − tan λ)/(1 + f·tan λ·sec α) + F·f_c·d_c/2
//	tan λ = l/(π·d_m)
//
//	T_L  torque with the load, N·m
//
// Valid for any lead, flank angle below 45°, as long as friction stays at its
// value: vibration can take most of it away.
// Errors: *check.RangeError outside F >= 0, l > 0, d_m > 0, 0 <= α < π/4, or where friction jams the screw.
// Source: Shigley's Mechanical Engineering Design, 9th ed., eqs. 8-2, 8-6 (from memory).
func ScrewLoweringTorque(p ScrewParams) (float64, error) {
	if err := p.check("bolt.ScrewLoweringTorque"); err != nil {
		return 0, err
	}
	tanLead, f := p.Lead/(math.Pi*p.PitchDiameter), p.ThreadFriction/math.Cos(p.FlankAngle)
	return p.Force*p.PitchDiameter/2*(f-tanLead)/(1+f*tanLead) + p.Force*p.CollarFriction*p.CollarDiameter/2, nil
}

// ScrewAdvance returns how far a screw moves when it is turned through an angle.
//
//	s = P·φ/(2·π)
//
//	angle  angle turned φ, rad
//	pitch  thread pitch P, m
//	s      advance along the axis, m
//
// Valid for single-start threads; either sign of the angle.
// Errors: *check.RangeError for a pitch of zero or below.
// Source: definition of the pitch.
func ScrewAdvance(angle, pitch float64) (float64, error) {
	if err := check.All("bolt.ScrewAdvance", check.Finite("angle", angle), check.Positive("pitch", pitch)); err != nil {
		return 0, err
	}
	return pitch * angle / (2 * math.Pi), nil
}

// BackOffAngle returns the angle through which a peg screw is turned back to open a gap.
//
//	φ = 2·π·s/P
//
//	gap    gap to be opened s, m
//	pitch  thread pitch P, m
//	φ      angle to turn back, rad
//
// Valid for single-start threads, screw first brought to touch; the play of
// the thread must be taken up the same way by the lock nut.
// Errors: *check.RangeError for a negative gap or a pitch of zero or below.
// Source: definition of the pitch.
func BackOffAngle(gap, pitch float64) (float64, error) {
	if err := check.All("bolt.BackOffAngle", check.NotNegative("gap", gap), check.Positive("pitch", pitch)); err != nil {
		return 0, err
	}
	return 2 * math.Pi * gap / pitch, nil
}

// TightSpotGap returns what is left of a peg gap at the tight spot of a crown wheel that runs out.
//
//	g_min = g − t
//
//	gap     gap set at the slack spot g, m
//	runOut  run-out of the back face, full reading of the dial t, m
//	g_min   gap at the tight spot, m
//
// Valid for a gap set at the slack spot and a run-out no greater than the gap.
// Errors: *check.RangeError where the wheel would touch the peg without load.
// Source: geometry; the rule that run-out should not pass half of the gap is common practice, no source.
func TightSpotGap(gap, runOut float64) (float64, error) {
	if err := check.All("bolt.TightSpotGap",
		check.NotNegative("gap", gap),
		check.That("runOut", runOut, runOut >= 0 && runOut <= gap, "0 <= t <= g, else the peg rubs unloaded"),
	); err != nil {
		return 0, err
	}
	return gap - runOut, nil
}
