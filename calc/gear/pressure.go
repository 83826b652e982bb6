package gear

import "axlewright/calc/check"

// PressureAngles are the pressure angles of the two flanks at the mean point.
type PressureAngles struct {
	Limit          float64 // rad, α_lim: limit pressure angle
	GeneratedDrive float64 // rad, α_nD: inclination of the drive flank to the normal of the pitch plane
	GeneratedCoast float64 // rad, α_nC: inclination of the coast flank to the normal of the pitch plane
	EffectiveDrive float64 // rad, α_eD: the drive flank's inclination beyond the limit
	EffectiveCoast float64 // rad, α_eC: the coast flank's inclination beyond the limit
}

// PressureAnglesParams is what FlankPressureAngles needs.
type PressureAnglesParams struct {
	DesignDrive float64 // rad, α_dD: design pressure angle of the drive flank
	DesignCoast float64 // rad, α_dC: design pressure angle of the coast flank
	Limit       float64 // rad, α_lim: limit pressure angle, negative for the usual offset
	Influence   float64 // -, f_αlim: share of the limit angle put into the flanks, 0 to 1; mostly 1
}

// FlankPressureAngles returns the pressure angles that each flank of a hypoid
// tooth is cut with and works with.
//
//	α_nD = α_dD + f_αlim·α_lim
//	α_nC = α_dC − f_αlim·α_lim
//	α_eD = α_nD − α_lim
//	α_eC = α_nC + α_lim
//
// The generated angles lean the flank against the pitch plane: the tooth forces
// take them. The effective angles say how the pair rolls: strength takes them.
// In older American texts the limit angle has the other sign.
//
// Valid for design angles of 14° to 30°, a limit angle within ±15° and generated angles of 5° to 40°.
// Errors: *check.RangeError outside that range.
// Source: ISO 23509:2016, 6.4 (from memory).
func FlankPressureAngles(p PressureAnglesParams) (PressureAngles, error) {
	shift := p.Influence * p.Limit
	r := PressureAngles{
		Limit:          p.Limit,
		GeneratedDrive: p.DesignDrive + shift,
		GeneratedCoast: p.DesignCoast - shift,
	}
	r.EffectiveDrive = r.GeneratedDrive - p.Limit
	r.EffectiveCoast = r.GeneratedCoast + p.Limit
	return r, check.All("gear.FlankPressureAngles",
		check.That("DesignDrive", p.DesignDrive, within(p.DesignDrive, 14, 30), "14° to 30°"),
		check.That("DesignCoast", p.DesignCoast, within(p.DesignCoast, 14, 30), "14° to 30°"),
		check.That("Limit", p.Limit, within(p.Limit, -15, 15), "−15° to 15°"),
		check.Within("Influence", p.Influence, 0, 1),
		check.That("Limit", p.Limit, within(r.GeneratedDrive, 5, 40) && within(r.GeneratedCoast, 5, 40),
			"what leaves both flanks 5° to 40°"),
	)
}

// within compares an angle in radians with limits in degrees, which read better.
func within(angle, low, high float64) bool {
	const degrees = 3.14159265358979323846 / 180
	return angle >= low*degrees && angle <= high*degrees
}
