package pin

import (
	"math"

	"axlewright/calc/check"
)

// DowelShear returns the force that shears a solid dowel through.
//
//	F = n·π/4·d²·τ
//
//	d       diameter of the dowel, m
//	shear   shear strength τ, about 0.6 of the tensile strength, Pa
//	planes  shear planes n, -
//	F       force that shears it, N
//
// Valid for dowels in close holes, planes that share evenly, without bending.
// Errors: *check.RangeError for a diameter or strength of zero or below, or no plane.
// Source: force by area; τ = 0.6·R_m is common practice.
func DowelShear(d, shear float64, planes int) (float64, error) {
	if err := check.All("pin.DowelShear",
		check.Positive("d", d), check.Positive("shear", shear),
		check.That("planes", float64(planes), planes >= 1, ">= 1"),
	); err != nil {
		return 0, err
	}
	return float64(planes) * math.Pi / 4 * d * d * shear, nil
}

// BearingPressure returns the pressure of a pin on the side of its hole.
//
//	p = F/(d·t)
//
//	force      force across the pin F, N
//	d          diameter of the pin, m
//	thickness  thickness of the part that it bears in t, m
//	p          mean pressure on the projected area, Pa
//
// Valid for a close pin that bears evenly along its length; a loose or bent one presses harder at the edge.
// Errors: *check.RangeError for a negative force, or a diameter or thickness of zero or below.
// Source: force by projected area.
func BearingPressure(force, d, thickness float64) (float64, error) {
	if err := check.All("pin.BearingPressure",
		check.NotNegative("force", force), check.Positive("d", d), check.Positive("thickness", thickness),
	); err != nil {
		return 0, err
	}
	return force / (d * thickness), nil
}

// RingDowelParams describes a hollow dowel round a bolt, across the joint of two parts.
type RingDowelParams struct {
	Outside  float64 // m, D: outside diameter
	Inside   float64 // m, d_i: inside diameter
	Depth    float64 // m, t: length in the part that has less of it, chamfers off
	Shear    float64 // Pa, τ: shear strength of the dowel
	Crushing float64 // Pa, p_max: bearing pressure that the weaker part stands
}

// RingDowelResult says what side force a ring dowel carries and what gives out.
type RingDowelResult struct {
	Shear    float64 // N, force that shears the ring through
	Crushing float64 // N, force that crushes the side of its hole
	Capacity float64 // N, the lesser of the two
}

// RingDowel returns the side force that a hollow dowel round a bolt carries across a joint.
//
//	F = min(τ·π/4·(D² − d_i²), p_max·D·t)
//
// Valid for a close dowel after the joint has slipped by its clearance; friction of the joint
// must not be counted on top at full value, and the bolt inside must have room.
// Errors: *check.RangeError outside 0 < d_i < D, or for a depth or strength of zero or below.
// Source: force by ring area and by projected area.
func RingDowel(p RingDowelParams) (RingDowelResult, error) {
	if err := check.All("pin.RingDowel",
		check.Positive("Outside", p.Outside),
		check.That("Inside", p.Inside, p.Inside > 0 && p.Inside < p.Outside, "0 < d_i < D"),
		check.Positive("Depth", p.Depth),
		check.Positive("Shear", p.Shear),
		check.Positive("Crushing", p.Crushing),
	); err != nil {
		return RingDowelResult{}, err
	}
	shear := p.Shear * math.Pi / 4 * (p.Outside*p.Outside - p.Inside*p.Inside)
	crush := p.Crushing * p.Outside * p.Depth
	return RingDowelResult{shear, crush, math.Min(shear, crush)}, nil
}
