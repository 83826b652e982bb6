package assess

import (
	"axlewright/axle"
	"axlewright/calc/shaft"
)

// stemYields is the pinion's stem between teeth and head bearing, bent by the
// tooth force and twisted by its torque.
func stemYields(u *unit, n *notes) (limit, error) {
	g := &u.axle.Gears
	ratio := float64(g.WheelTeeth) / float64(g.PinionTeeth)
	lever := u.axle.Casting.Layout.GearToHead.Value
	return func(flank axle.Flank, torque float64, n *notes) (float64, float64) {
		bending := u.at(flank, pinionForce, torque) * lever
		r, err := shaft.NeckStress(shaft.NeckParams{Diameter: g.PinionNeckMin.Value, Bending: bending, Torque: torque / ratio})
		if err != nil {
			return Beyond, g.PinionYield.Value
		}
		n.say("M", "bending moment at the head bearing", bending, "N·m", "tooth force square to the pinion times its lever; the axial part of the moment is left out")
		n.by("shaft.NeckStress", "σ_v", "von Mises stress of the stem", r.VonMises, "Pa")
		n.say("R_p", "yield of the stem's core", g.PinionYield.Value, "Pa", "catalogue")
		return r.VonMises, g.PinionYield.Value
	}, nil
}

// pinsShear is the cross of the diff centre.
func pinsShear(u *unit, n *notes) (limit, error) {
	c := &u.axle.Centre
	uneven := 1.0
	if c.Pins > 2 {
		uneven = 1.25 // four ends share by luck of making. Common practice, no source.
	}
	r, err := shaft.CentrePins(shaft.CentrePinParams{
		Diameter: c.PinDiameter.Value, Ends: c.Pins, Radius: c.PinRadius.Value, Unevenness: uneven,
		Wall: c.PinDiameter.Value, ShearLimit: c.PinShear.Value,
	})
	if err != nil {
		return nil, err
	}
	n.by("shaft.CentrePins", "T", "torque at which the pins shear", r.ShearTorque, "N·m")
	return constant(r.ShearTorque), nil
}

// shaftYields is the half-shaft that carries more of the axle's torque.
func shaftYields(u *unit, n *notes) (limit, error) {
	share := 0.5
	switch u.axle.Centre.Locking {
	case axle.LimitedSlip:
		share = u.axle.Centre.Bias.Value / (1 + u.axle.Centre.Bias.Value)
	case axle.Locked:
		share = u.doubts.LockedShare.Value
	}
	n.say("share", "of the axle's torque in one half-shaft", share, "-", "diff centre: "+string(u.axle.Centre.Locking))
	r, err := shaft.HalfShaftTorque(shaft.HalfShaftParams{
		Diameter: u.axle.HalfShafts.Diameter.Value, ShearYield: u.axle.HalfShafts.Yield.Value, Share: share,
	})
	if err != nil {
		return nil, err
	}
	n.by("shaft.HalfShaftTorque", "T", "torque at the axle at which the whole section of one half-shaft yields", r.AxlePlastic, "N·m")
	return constant(r.AxlePlastic), nil
}

// jointYields is the propshaft's joint, where its strength is known.
func jointYields(u *unit, n *notes) (limit, error) {
	if !u.vehicle.PropJoint.Given() {
		return nil, nil
	}
	ratio := float64(u.axle.Gears.WheelTeeth) / float64(u.axle.Gears.PinionTeeth)
	capacity := u.vehicle.PropJoint.Value * ratio
	n.say("T", "torque at the axle at which the propshaft's joint yields", capacity, "N·m", "the vehicle's figure times the axle's ratio")
	return constant(capacity), nil
}

// constant is a limit on the torque itself, the same on both flanks.
func constant(capacity float64) limit {
	return func(_ axle.Flank, torque float64, _ *notes) (float64, float64) { return torque, capacity }
}
