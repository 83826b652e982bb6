package assess

import (
	"math"

	"axlewright/axle"
	"axlewright/calc/material"
)

// ironStrength is the tensile strength of the casting, beside a structural weld
// where the build has one.
func ironStrength(u *unit, n *notes) (float64, error) {
	metal, err := material.Lookup(u.axle.Casting.Metal)
	if err != nil {
		return 0, err
	}
	strength := metal.TensileMean * u.doubts.CastingMetal.Value
	n.say("R_m", "tensile strength of "+metal.Name+", with this casting's own luck", strength, "Pa", metal.Standard)
	if u.axle.Welds {
		toe, err := toeShare(u, n)
		if err != nil {
			return 0, err
		}
		strength *= toe
		n.say("R_m", "beside a structural weld", strength, "Pa", "")
	}
	return strength, nil
}

// toeShare is what a structural weld leaves of the casting's strength beside it.
func toeShare(u *unit, n *notes) (float64, error) {
	metal, err := material.Lookup(u.axle.Casting.Metal)
	if err != nil {
		return 0, err
	}
	family, err := material.FamilyOf(metal.Family)
	if err != nil {
		return 0, err
	}
	share := family.Toe * u.doubts.WeldToe.Value
	n.say("k", "strength left at the weld's toe", share, "-", family.ToeSource)
	return share, nil
}

// legCracks is the leg of a side bearing bent at its root by side thrust. A
// structural weld nearby costs iron a good part of its strength.
func legCracks(u *unit, n *notes) (limit, error) {
	capacity, err := ironStrength(u, n)
	if err != nil {
		return nil, err
	}
	leg := &u.axle.Casting.Leg
	section := leg.Width.Value * leg.Depth.Value * leg.Depth.Value / 6
	n.say("W", "section modulus at the root", section, "m³", "width·depth²/6")
	return func(flank axle.Flank, torque float64, n *notes) (float64, float64) {
		thrust := math.Max(u.at(flank, nearAxial, torque), u.at(flank, farAxial, torque))
		stress := math.Max(0, thrust) * leg.Height.Value / section
		n.say("F", "side thrust", thrust, "N", "load path")
		n.say("σ", "bending stress at the root of the leg", stress, "Pa", "F·height/W")
		return stress, capacity
	}, nil
}
