package gear

import (
	"math"

	"axlewright/calc/check"
)

// MeshParams is what the tooth force of a pair follows from.
type MeshParams struct {
	Cones              PitchCones // pitch cones of the pair
	WheelTorque        float64    // N·m, T2: torque carried by the crown wheel, as a magnitude
	Flank              Flank      // name, flank of the crown wheel that carries it
	PinionHand         Hand       // name, hand of spiral of the pinion
	DrivePressureAngle float64    // rad, α_nD: angle of the drive flank's normal to the pitch plane
	CoastPressureAngle float64    // rad, α_nC: angle of the coast flank's normal to the pitch plane
}

// MemberForces are the components of the tooth force on one member.
type MemberForces struct {
	Tangential  float64 // N, F_t: in the direction of turning or against it, square to the axis and the mean radius
	AxialAway   float64 // N, F_a: along its axis, away from the apex of its own pitch cone; negative pulls it in
	RadialApart float64 // N, F_r: towards its own axis, parting the pair; negative draws them together
}

// MeshForcesResult is the tooth force at the mean point.
type MeshForcesResult struct {
	Pinion       MemberForces // components of the force on the pinion
	Wheel        MemberForces // components of the force on the crown wheel
	Normal       float64      // N, F_n: force square to the flank
	PinionTorque float64      // N·m, T1: torque at the pinion, without losses
}

// MeshForces returns the components of the tooth force at the mean point on
// both members, for either flank, each named by its direction.
//
//	F_n = T2/(r_m2·cos α_n·cos β2)
//	F_t = F_n·cos α_n·cos β
//	F_a = (F_t/cos β)·(tan α_n·sin δ + s·sin β·cos δ)
//	F_r = (F_t/cos β)·(tan α_n·cos δ − s·sin β·sin δ)
//	drive: s = +1 on the pinion, −1 on the wheel; coast: the reverse
//	T1 = F_t1·r_m1 = T2·z1/z2
//
// A positive axial component pushes the member away from the apex of its own
// cone (the pinion out of the nose, the wheel off the pinion), a positive
// radial one pushes it towards its own axis. The components do not depend on
// the hand; the hand turns the vectors of MeshForceVectors.
//
// Valid for axes at a right angle, no friction, all load at the mean point,
// pressure angles of 5° to 40°. With zero offset it is the spiral bevel pair,
// with zero spiral angle the straight bevel pair.
// Errors: *check.RangeError outside that range.
// Source: ISO 23509:2016, annex on forces; ANSI/AGMA 2005-D03, clause on tooth forces (both from memory).
func MeshForces(p MeshParams) (MeshForcesResult, error) {
	if err := p.valid("gear.MeshForces"); err != nil {
		return MeshForcesResult{}, err
	}
	c := p.Cones
	alpha := p.loadedPressureAngle()
	perLength := p.WheelTorque / (c.WheelMeanRadius * math.Cos(c.WheelSpiral)) // F_t/cos β, the same on both members
	s := p.Flank.wheelThrustSign()
	pinion := memberForces(perLength, alpha, c.PinionSpiral, c.PinionPitchAngle, -s)
	return MeshForcesResult{
		Pinion:       pinion,
		Wheel:        memberForces(perLength, alpha, c.WheelSpiral, c.WheelPitchAngle, s),
		Normal:       perLength / math.Cos(alpha),
		PinionTorque: pinion.Tangential * c.PinionMeanRadius,
	}, nil
}

func memberForces(perLength, alpha, beta, delta, s float64) MemberForces {
	sinD, cosD := math.Sincos(delta)
	return MemberForces{
		Tangential:  perLength * math.Cos(beta),
		AxialAway:   perLength * (math.Tan(alpha)*sinD + s*math.Sin(beta)*cosD),
		RadialApart: perLength * (math.Tan(alpha)*cosD - s*math.Sin(beta)*sinD),
	}
}

func (p MeshParams) loadedPressureAngle() float64 {
	if p.Flank == Drive {
		return p.DrivePressureAngle
	}
	return p.CoastPressureAngle
}

func (p MeshParams) valid(fn string) error {
	if err := check.All(fn,
		check.NotNegative("WheelTorque", p.WheelTorque), knownFlank(p.Flank), knownHand(p.PinionHand),
		pressureAngle("DrivePressureAngle", p.DrivePressureAngle), pressureAngle("CoastPressureAngle", p.CoastPressureAngle),
	); err != nil {
		return err
	}
	return p.Cones.valid(fn)
}

func pressureAngle(name string, alpha float64) check.Condition {
	const low, high = 5 * math.Pi / 180, 40 * math.Pi / 180
	return check.That(name, alpha, alpha >= low && alpha <= high, "5° to 40°")
}
