package shaft

import (
	"math"

	"axlewright/calc/check"
)

// OverhungParams describes a shaft of one diameter on two bearings, A and B,
// with a force on its free end beyond B.
type OverhungParams struct {
	Span     float64 // m, l: distance from A to B
	Overhang float64 // m, a: distance of the force beyond B
	Diameter float64 // m, d: diameter
	Modulus  float64 // Pa, E: Young's modulus
	Force    float64 // N, F: force on the free end, at right angles to the shaft
}

// OverhungResult is what the shaft does. Reactions are forces of the bearing on
// the shaft, positive against F; deflections are positive with F.
type OverhungResult struct {
	ReactionA     float64 // N, R_A: reaction in A, negative: it acts with F
	ReactionB     float64 // N, R_B: reaction in B
	SlopeA        float64 // rad, θ_A: slope in A, opposite to that in B
	SlopeB        float64 // rad, θ_B: slope in B
	SlopeTip      float64 // rad, θ_F: slope under the force
	DeflectionTip float64 // m, y_F: deflection under the force
}

// OverhungShaft returns reactions, slopes and deflection of an overhung shaft
// by bending alone.
//
//	y_F = F·a²·(l + a)/(3·E·I),  I = π·d⁴/64
//	R_A = −F·a/l,  R_B = F·(l + a)/l
//	θ_A = F·a·l/(6·E·I),  θ_B = F·a·l/(3·E·I),  θ_F = θ_B + F·a²/(2·E·I)
//
// Valid for long shafts: shear, which this leaves out, adds to the deflection
// where the overhang is shorter than about three diameters.
// Errors: *check.RangeError where a dimension is not positive.
// Source: Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th
// edition, table A-9, case 10 (from memory).
func OverhungShaft(p OverhungParams) (OverhungResult, error) {
	if err := check.All("shaft.OverhungShaft",
		check.Positive("Span", p.Span),
		check.Positive("Overhang", p.Overhang),
		check.Positive("Diameter", p.Diameter),
		check.Positive("Modulus", p.Modulus),
		check.Finite("Force", p.Force),
	); err != nil {
		return OverhungResult{}, err
	}
	f, a, l := p.Force, p.Overhang, p.Span
	ei := p.Modulus * math.Pi * math.Pow(p.Diameter, 4) / 64
	b := f * a * l / (3 * ei)
	return OverhungResult{
		ReactionA: -f * a / l, ReactionB: f * (l + a) / l,
		SlopeA: b / 2, SlopeB: b, SlopeTip: b + f*a*a/(2*ei),
		DeflectionTip: f * a * a * (l + a) / (3 * ei),
	}, nil
}

// GearReactionParams describes a gear overhung beyond the second of two
// bearings, with the three parts of its tooth force.
type GearReactionParams struct {
	Span       float64 // m, l: distance from bearing A to bearing B
	Overhang   float64 // m, a: distance of the gear's mean point beyond B
	Radius     float64 // m, r: mean radius of the gear
	Tangential float64 // N, F_t: tangential force, along z
	Radial     float64 // N, F_r: radial force towards the shaft, along y
	Axial      float64 // N, F_a: axial force, positive from the gear towards the bearings
}

// GearReactionResult is what the bearings carry. Y is positive against the
// radial force, Z against the tangential force at B.
type GearReactionResult struct {
	BY     float64 // N, reaction at B against the radial force
	AY     float64 // N, reaction at A with the radial force
	BZ     float64 // N, reaction at B against the tangential force
	AZ     float64 // N, reaction at A with the tangential force
	B      float64 // N, radial reaction at B, both planes
	A      float64 // N, radial reaction at A, both planes
	Axial  float64 // N, axial reaction of the bearing that locates the shaft
	Torque float64 // N·m, T: torque on the shaft
}

// OverhungGearReactions returns what two bearings carry of the tooth force on
// an overhung gear, by statics.
//
//	F_By = [F_r·(l + a) − F_a·r]/l,  F_Ay = F_By − F_r
//	F_Bz = F_t·(l + a)/l,  F_Az = F_Bz − F_t,  T = F_t·r
//
// The axial force, at the radius of the gear, tilts the shaft: it takes load
// off B or puts load on, by its sense.
//
// Valid for bearings that pass no moment; taper rollers are counted at their
// pressure centres.
// Errors: *check.RangeError where a dimension is not positive.
// Source: Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th
// edition, section 13-16 and example 13-9.
func OverhungGearReactions(p GearReactionParams) (GearReactionResult, error) {
	if err := check.All("shaft.OverhungGearReactions",
		check.Positive("Span", p.Span),
		check.Positive("Overhang", p.Overhang),
		check.Positive("Radius", p.Radius),
		check.Finite("Tangential", p.Tangential),
		check.Finite("Radial", p.Radial),
		check.Finite("Axial", p.Axial),
	); err != nil {
		return GearReactionResult{}, err
	}
	l, a := p.Span, p.Overhang
	r := GearReactionResult{
		BY: (p.Radial*(l+a) - p.Axial*p.Radius) / l,
		BZ: p.Tangential * (l + a) / l,
	}
	r.AY, r.AZ = r.BY-p.Radial, r.BZ-p.Tangential
	r.A, r.B = math.Hypot(r.AY, r.AZ), math.Hypot(r.BY, r.BZ)
	r.Axial, r.Torque = p.Axial, p.Tangential*p.Radius
	return r, nil
}
