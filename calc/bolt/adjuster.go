package bolt

import (
	"math"

	"axlewright/calc/check"
)

// UnwindingTorque returns the torque with which thrust tries to unwind a threaded adjuster that has lost all friction.
//
//	T = F·P/(2·π)
//
//	thrust  thrust along the adjuster F, N
//	pitch   thread pitch P, m
//	T       unwinding torque, N·m
//
// Valid for single-start threads shaken free of friction: the most that thrust can do.
// Errors: *check.RangeError for a negative thrust or a pitch of zero or below.
// Source: work of the screw in one turn.
func UnwindingTorque(thrust, pitch float64) (float64, error) {
	if err := check.All("bolt.UnwindingTorque", check.NotNegative("thrust", thrust), check.Positive("pitch", pitch)); err != nil {
		return 0, err
	}
	return thrust * pitch / (2 * math.Pi), nil
}

// AdjusterParams describes a threaded adjuster under thrust.
type AdjusterParams struct {
	Thrust        float64 // N, F: thrust along the adjuster
	Pitch         float64 // m, P: thread pitch
	PitchDiameter float64 // m, d_2: pitch diameter
	FlankAngle    float64 // rad, β: half of the thread angle
	Friction      float64 // -, µ: friction in the thread that vibration leaves
}

// AdjusterTorqueResult says whether an adjuster stays where it is.
type AdjusterTorqueResult struct {
	Unwinding float64 // N·m, torque with which thrust unwinds it; below zero it holds itself by that much
	Critical  float64 // -, µ_0: thread friction below which it runs back
}

// AdjusterTorque returns the torque that unwinds a threaded adjuster against what friction is left in its thread.
//
//	T = F·d_2/2·(tan λ − µ/cos β)/(1 + tan λ·µ/cos β)
//	tan λ = P/(π·d_2),  µ_0 = tan λ·cos β
//
// Valid for single-start threads, thread friction alone: friction between adjuster and cup comes on top while the cup stands still.
// Errors: *check.RangeError for a negative thrust or friction, P >= d_2/2, or β outside 0 to π/4.
// Source: Shigley's Mechanical Engineering Design, 9th ed., eq. 8-2 with sec α (from memory).
func AdjusterTorque(p AdjusterParams) (AdjusterTorqueResult, error) {
	if err := check.All("bolt.AdjusterTorque",
		check.NotNegative("Thrust", p.Thrust),
		check.NotNegative("Friction", p.Friction),
		check.That("Pitch", p.Pitch, p.Pitch > 0 && p.Pitch < p.PitchDiameter/2, "0 < P < d_2/2"),
		check.That("FlankAngle", p.FlankAngle, p.FlankAngle >= 0 && p.FlankAngle < math.Pi/4, "0 <= β < π/4"),
	); err != nil {
		return AdjusterTorqueResult{}, err
	}
	tanLead, f := p.Pitch/(math.Pi*p.PitchDiameter), p.Friction/math.Cos(p.FlankAngle)
	return AdjusterTorqueResult{
		Unwinding: p.Thrust * p.PitchDiameter / 2 * (tanLead - f) / (1 + tanLead*f),
		Critical:  tanLead * math.Cos(p.FlankAngle),
	}, nil
}

// NotchAdvance returns how far a threaded adjuster moves from one lock notch to the next.
//
//	Δa = P/N
//
//	pitch    thread pitch P, m
//	notches  notches round the adjuster N, -
//	Δa       advance a notch, m
//
// Valid for single-start threads; a lock with half steps counts twice the notches.
// Errors: *check.RangeError for a pitch of zero or below or no notch.
// Source: definition of the pitch.
func NotchAdvance(pitch float64, notches int) (float64, error) {
	if err := check.All("bolt.NotchAdvance",
		check.Positive("pitch", pitch), check.That("notches", float64(notches), notches >= 1, ">= 1"),
	); err != nil {
		return 0, err
	}
	return pitch / float64(notches), nil
}

// NotchesForMove returns how many notches of a threaded adjuster make up a move.
//
//	n = Δa·N/P
//
//	move     move along the axis Δa, m
//	pitch    thread pitch P, m
//	notches  notches round the adjuster N, -
//	n        notches to turn, a fraction where the lock allows no such stop, -
//
// Valid for single-start threads; either sign of the move.
// Errors: *check.RangeError for a pitch of zero or below or no notch.
// Source: definition of the pitch.
func NotchesForMove(move, pitch float64, notches int) (float64, error) {
	advance, err := NotchAdvance(pitch, notches)
	if err != nil {
		return 0, err
	}
	if err := check.All("bolt.NotchesForMove", check.Finite("move", move)); err != nil {
		return 0, err
	}
	return move / advance, nil
}

// CupDragTorque returns the torque with which a bearing cup that has spun free drags its adjuster round.
//
//	T = F_r·µ·r
//
//	load      radial load on the cup F_r, N
//	friction  friction between cup and bore or adjuster µ, -
//	radius    radius at which it rubs r, m
//	T         torque on the adjuster, N·m
//
// Valid for a cup that creeps and takes the adjuster with it: the worst a lock sees.
// Errors: *check.RangeError for a negative load, µ outside 0 to 1, or a radius of zero or below.
// Source: equilibrium of the dragged adjuster.
func CupDragTorque(load, friction, radius float64) (float64, error) {
	if err := check.All("bolt.CupDragTorque",
		check.NotNegative("load", load), check.Within("friction", friction, 0, 1), check.Positive("radius", radius),
	); err != nil {
		return 0, err
	}
	return load * friction * radius, nil
}

// LockForce returns the tangential force on the lock of an adjuster.
//
//	F_t = T/r
//
//	torque  torque on the adjuster T, N·m
//	radius  radius at which the lock bites r, m
//	F_t     tangential force on the lock, N
//
// Valid for one lock that takes it all.
// Errors: *check.RangeError for a negative torque or a radius of zero or below.
// Source: equilibrium of the adjuster.
func LockForce(torque, radius float64) (float64, error) {
	if err := check.All("bolt.LockForce", check.NotNegative("torque", torque), check.Positive("radius", radius)); err != nil {
		return 0, err
	}
	return torque / radius, nil
}
