package assess

import (
	"math"

	"axlewright/axle"
	"axlewright/calc/bolt"
	"axlewright/calc/material"
	"axlewright/calc/pin"
)

// A capJoint is what holds a side bearing down.
type capJoint struct {
	joint
	bolts    float64
	prying   float64
	outward  float64
	sideways float64
}

func newCapJoint(u *unit, n *notes) (capJoint, error) {
	k := &u.axle.Casting
	j, err := newJoint(k.CapBolts, k.Cap.Modulus.Value, k.Cap.LoadPlane.Value, n)
	return capJoint{
		joint: j, bolts: float64(k.CapBolts.Count), prying: k.Cap.Prying.Value,
		outward: k.Cap.JointOutward.Value, sideways: k.Cap.JointAcross.Value,
	}, err
}

// lift is the force that pulls a cap off, the greater of both caps. A bearing
// load along the joint lifts the cap too: the bore is a wedge.
func (j capJoint) lift(u *unit, flank axle.Flank, torque float64) float64 {
	one := func(lift, across int) float64 {
		return math.Max(0, u.at(flank, lift, torque)) + j.outward*math.Abs(u.at(flank, across, torque))
	}
	return math.Max(one(nearLift, nearAcross), one(farLift, farAcross))
}

// perBolt is the working load of one bolt.
func (j capJoint) perBolt(lift float64) float64 { return j.prying * lift / j.bolts }

func capOpens(u *unit, n *notes) (limit, error) {
	j, err := newCapJoint(u, n)
	if err != nil {
		return nil, err
	}
	return func(flank axle.Flank, torque float64, n *notes) (float64, float64) {
		load := j.perBolt(j.lift(u, flank, torque))
		n.say("F_A", "working load of one cap bolt", load, "N", "lift of the side bearing, shared by the bolts of its cap, with the prying of the arch")
		demand := (1 - j.factor) * load
		n.by("bolt.ResidualClamp", "F_V − F_K", "clamp that the load takes away", demand, "N")
		return demand, j.settled
	}, nil
}

func capBoltYields(u *unit, n *notes) (limit, error) {
	j, err := newCapJoint(u, n)
	if err != nil {
		return nil, err
	}
	capacity := j.strength.Yield * j.area * u.doubts.boltStrength()
	n.by("bolt.ClassStrength", "R_p0.2·A_s", "yield of one bolt", capacity, "N")
	return func(flank axle.Flank, torque float64, n *notes) (float64, float64) {
		force := j.boltForce(j.perBolt(j.lift(u, flank, torque)))
		n.by("bolt.BoltForce", "F_S", "force in the bolt", force, "N")
		return force, capacity
	}, nil
}

func capThreadStrips(u *unit, n *notes) (limit, error) {
	j, err := newCapJoint(u, n)
	if err != nil {
		return nil, err
	}
	metal, err := material.Lookup(u.axle.Casting.Metal)
	if err != nil {
		return nil, err
	}
	areas, err := bolt.ShearArea(bolt.ShearAreaParams{
		Form: j.size.Form, Pitch: j.size.Pitch, Engagement: u.axle.Casting.CapBolts.Engaged.Value,
		BoltMajor: j.size.Diameter, BoltPitch: j.thread.PitchDiameter, HolePitch: j.thread.PitchDiameter, HoleMinor: j.thread.HoleMinor,
	})
	if err != nil {
		return nil, err
	}
	capacity := areas.Hole * metal.Shear * metal.TensileMean / metal.Tensile * u.doubts.castingStrength()
	n.by("bolt.ShearArea", "A_SGM", "area along which the casting's thread would strip", areas.Hole, "m²")
	n.by("bolt.StrippingForce", "F", "force that strips it", capacity, "N")
	return func(flank axle.Flank, torque float64, n *notes) (float64, float64) {
		return j.boltForce(j.perBolt(j.lift(u, flank, torque))), capacity
	}, nil
}

// capWalks is the sideways slip of a cap. A ring dowel helps once its fit has
// closed; how much of its strength then counts is a figure of its own.
func capWalks(u *unit, n *notes) (limit, error) {
	j, err := newCapJoint(u, n)
	if err != nil {
		return nil, err
	}
	cap := &u.axle.Casting.Cap
	friction, dowels := cap.Friction.Value, 0.0
	if d := u.axle.RingDowel; d != nil {
		metal, err := material.Lookup(u.axle.Casting.Metal)
		if err != nil {
			return nil, err
		}
		strength, err := pin.RingDowel(pin.RingDowelParams{
			Outside: d.Outer.Value, Inside: d.Inner.Value, Depth: d.Depth.Value,
			Shear: 0.6 * d.Yield.Value, Crushing: metal.TensileMean * u.doubts.castingStrength(),
		})
		if err != nil {
			return nil, err
		}
		dowels = d.Share.Value * j.bolts * strength.Capacity
		n.by("pin.RingDowel", "F_d", "what the ring dowels add: shear of the dowel or crushing of the casting, the lesser", dowels, "N")
	}
	one := func(flank axle.Flank, torque float64, lift, across int) (demand, capacity float64) {
		side := math.Abs(u.at(flank, across, torque))
		load := j.perBolt(math.Max(0, u.at(flank, lift, torque)) + j.outward*side)
		demand = j.sideways * side * (1 - cap.ThreadShare.Value)
		return demand, friction*j.bolts*j.clamp(load) + dowels
	}
	return func(flank axle.Flank, torque float64, n *notes) (float64, float64) {
		nearDemand, nearCapacity := one(flank, torque, nearLift, nearAcross)
		farDemand, farCapacity := one(flank, torque, farLift, farAcross)
		if nearDemand-nearCapacity > farDemand-farCapacity {
			farDemand, farCapacity = nearDemand, nearCapacity
		}
		n.say("F_Q", "side force on the cap that friction must hold", farDemand, "N", "share of the bearing's load along the joint; bolts in their holes take a little")
		n.by("bolt.SlipCapacity", "µ·F_K", "what clamp and dowels hold", farCapacity, "N")
		return farDemand, farCapacity
	}, nil
}

// capBreaks is the arch of the cap in bending, with or without a steel overlay.
func capBreaks(u *unit, n *notes) (limit, error) {
	cap := &u.axle.Casting.Cap
	arch, err := capUnderForce(u.axle, u.memo)
	if err != nil {
		return nil, err
	}
	stress := arch.MaxTension // for each newton
	n.by("ring.Cap", "σ/F", "greatest tension in the cap for each newton of lift", stress, "Pa/N")
	capacity := cap.Yield.Value * u.doubts.castingStrength()
	j := capJoint{outward: cap.JointOutward.Value}
	return func(flank axle.Flank, torque float64, n *notes) (float64, float64) {
		demand := stress * j.lift(u, flank, torque)
		n.say("σ", "greatest tension in the cap", demand, "Pa", "stress for each newton times the lift of the side bearing")
		return demand, capacity
	}, nil
}
