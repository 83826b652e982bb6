package assess

import (
	"math"

	"axlewright/calc/bolt"
)

// wheelSlips is the crown wheel slipping round on its flange: a friction joint.
func wheelSlips(u *unit, n *notes) (limit, error) {
	b := &u.axle.Gears.WheelBolts
	j, err := newJoint(*b, u.axle.Gears.Plate.Modulus.Value, 0.5, n)
	if err != nil {
		return nil, err
	}
	capacity, err := bolt.SlipTorque(bolt.SlipTorqueParams{
		Bolts: b.Count, Clamp: j.settled, Friction: b.Friction.Value, Radius: b.Radius.Value,
	})
	if err != nil {
		return nil, err
	}
	n.by("bolt.SlipTorque", "T_slip", "torque at which the flange slips", capacity, "N·m")
	return constant(capacity), nil
}

// wheelBoltsShear is what is left when friction has gone: the bolts in shear,
// not through their thread, unevenly loaded.
func wheelBoltsShear(u *unit, n *notes) (limit, error) {
	b := &u.axle.Gears.WheelBolts
	j, err := newJoint(*b, u.axle.Gears.Plate.Modulus.Value, 0.5, nil)
	if err != nil {
		return nil, err
	}
	d := j.size.Diameter
	one, err := bolt.UltimateShear(j.strength.Tensile*u.doubts.boltStrength(), math.Pi/4*d*d, 1)
	if err != nil {
		return nil, err
	}
	// Clearance holes let a part of the bolts carry first. Common practice, no source.
	const bearingTogether = 0.6
	capacity := bearingTogether * float64(b.Count) * one * b.Radius.Value
	n.by("bolt.UltimateShear", "F", "one bolt in shear through its shank", one, "N")
	n.say("T_shear", "torque at which the bolts shear, six in ten of them bearing at once", capacity, "N·m", "common practice, no source")
	return constant(capacity), nil
}
