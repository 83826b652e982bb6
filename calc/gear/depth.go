package gear

import (
	"math"

	"axlewright/calc/check"
)

// DepthsParams is what the tooth heights at the mean point follow from.
type DepthsParams struct {
	Cones         PitchCones // pitch cones of the pair
	DepthFactor   float64    // -, k_d: working depth in mean normal modules; optional, by pinion teeth where not given (± 0.05)
	ClearFactor   float64    // -, k_c: clearance as a share of the working depth; optional, 0.125 (0.11 to 0.15)
	WheelAddendum float64    // -, c_ham: wheel addendum as a share of the working depth; optional, by pinion teeth (± 0.03)
}

// MeanDepths are the tooth heights at the mean point.
type MeanDepths struct {
	Working         float64 // m, h_mw: working depth
	Whole           float64 // m, h_m: whole depth
	Clearance       float64 // m, c: from tip to root of the mate
	PinionAddendum  float64 // m, h_am1: addendum of the pinion
	WheelAddendum   float64 // m, h_am2: addendum of the wheel
	PinionDedendum  float64 // m, h_fm1: dedendum of the pinion
	WheelDedendum   float64 // m, h_fm2: dedendum of the wheel
	PinionShift     float64 // -, x_hm1: profile shift of the pinion in mean normal modules; the wheel has the reverse
	PinionThickness float64 // -, x_sm1: extra half thickness of the pinion's tooth in mean normal modules; the wheel has the reverse
}

// MeanToothDepths returns the tooth heights at the mean point of a spiral bevel
// or hypoid pair.
//
//	h_mw = k_d·m_mn
//	h_am2 = c_ham·h_mw, h_am1 = h_mw − h_am2
//	c = k_c·h_mw
//	h_fm1 = h_am2 + c, h_fm2 = h_am1 + c
//	x_hm1 = (h_am1 − h_am2)/(2·m_mn)
//	x_sm1 = k_t/2, k_t = −0.088 + 0.092·u − 0.004·u² + 0.0016·(z1 − 30)·(u − 1)
//
// Where not given, k_d is 2.00 from 11 pinion teeth on and 0.05 less for each
// tooth below; c_ham is 0.210 + 0.290·(z1·cos δ2)/(z2·cos δ1) for bevel pairs of
// 12 and more pinion teeth, the share of BevelBlanks below that, and for hypoid
// pairs 0.170, falling by 0.02 for each pinion tooth below 9. The thickness is
// a maker's choice: k_t is uncertain by ± 0.06.
//
// Valid for 6 and more pinion teeth, 1.5 ≤ k_d ≤ 2.3, 0.08 ≤ k_c ≤ 0.2, 0.05 ≤ c_ham ≤ 0.5.
// Errors: *check.RangeError outside that range or where the cones do not touch.
// Source: ISO 23509:2016, data type II and annex B; the tables by tooth number as
// in ANSI/AGMA 2005-D03 (all from memory).
func MeanToothDepths(p DepthsParams) (MeanDepths, error) {
	const fn = "gear.MeanToothDepths"
	c := p.Cones
	if err := c.valid(fn); err != nil {
		return MeanDepths{}, err
	}
	if err := check.All(fn, check.That("PinionTeeth", float64(c.PinionTeeth), c.PinionTeeth >= 6, ">= 6")); err != nil {
		return MeanDepths{}, err
	}
	z1, u := c.PinionTeeth, float64(c.WheelTeeth)/float64(c.PinionTeeth)
	kd := orElse(p.DepthFactor, 2-0.05*float64(max(0, 11-z1)))
	kc := orElse(p.ClearFactor, 0.125)
	cham := orElse(p.WheelAddendum, wheelShare(c))
	if err := check.All(fn,
		check.Within("DepthFactor", kd, 1.5, 2.3), check.Within("ClearFactor", kc, 0.08, 0.2),
		check.Within("WheelAddendum", cham, 0.05, 0.5),
	); err != nil {
		return MeanDepths{}, err
	}
	hw := kd * c.NormalModule
	ha2 := cham * hw
	ha1 := hw - ha2
	clear := kc * hw
	kt := -0.088 + 0.092*u - 0.004*u*u + 0.0016*(float64(z1)-30)*(u-1)
	return MeanDepths{
		Working: hw, Whole: hw + clear, Clearance: clear,
		PinionAddendum: ha1, WheelAddendum: ha2,
		PinionDedendum: ha2 + clear, WheelDedendum: ha1 + clear,
		PinionShift:     (ha1 - ha2) / (2 * c.NormalModule),
		PinionThickness: kt / 2,
	}, nil
}

// wheelShare is c_ham where nobody knows better.
func wheelShare(c PitchCones) float64 {
	z1 := c.PinionTeeth
	if c.Offset != 0 {
		return 0.170 - 0.02*float64(max(0, 9-z1))
	}
	if z1 < 12 {
		return fewTeeth[z1-6][2] / fewTeeth[z1-6][0]
	}
	return 0.210 + 0.290*float64(z1)*math.Cos(c.WheelPitchAngle)/(float64(c.WheelTeeth)*math.Cos(c.PinionPitchAngle))
}

// orElse is the value, or the default where it was left out.
func orElse(value, standard float64) float64 {
	if value == 0 {
		return standard
	}
	return value
}
