package gear

import (
	"math"

	"axlewright/calc/check"
)

// LimitPressureAngle returns the inclination to the pitch plane at which both
// flanks of a hypoid tooth would work alike.
//
//	α_lim = atan(−(R_m1·sin β1 − R_m2·sin β2)/(R_m1·tan δ1 + R_m2·tan δ2))
//
//	c      pitch cones that share their pitch plane, -
//	α_lim  limit pressure angle, rad
//
// The standard's leading factor tan δ1·tan δ2/cos ζ is one at a right angle.
//
// Valid for axes at a right angle. Negative for the usual offset, zero for spiral bevel.
// Errors: *check.RangeError where the cones do not touch at the mean point.
// Source: ISO 23509:2016, method 1 (from memory).
func LimitPressureAngle(c PitchCones) (float64, error) {
	if err := c.valid("gear.LimitPressureAngle"); err != nil {
		return 0, err
	}
	return math.Atan(c.tanLimit()), nil
}

func (c PitchCones) tanLimit() float64 {
	r1, r2 := c.PinionConeDistance, c.WheelConeDistance
	return -(r1*math.Sin(c.PinionSpiral) - r2*math.Sin(c.WheelSpiral)) /
		(r1*math.Tan(c.PinionPitchAngle) + r2*math.Tan(c.WheelPitchAngle))
}

// LimitCurvature returns the lengthwise radius of curvature at which a tooth cut
// at the limit pressure angle meets its mate without sliding out of contact.
//
//	ρ_lim = sec α_lim·(tan β1 − tan β2)/N
//	N = −tan α_lim·(tan β1/(R_m1·tan δ1) + tan β2/(R_m2·tan δ2)) + 1/(R_m1·cos β1) − 1/(R_m2·cos β2)
//
//	c      pitch cones that share their pitch plane, with an offset, -
//	ρ_lim  limit radius of curvature, m
//
// Valid for axes at a right angle and an offset that is not zero.
// Errors: *check.RangeError outside that range or where the cones do not touch.
// Source: ISO 23509:2016, method 1 (from memory).
func LimitCurvature(c PitchCones) (float64, error) {
	if err := c.valid("gear.LimitCurvature"); err != nil {
		return 0, err
	}
	if err := check.All("gear.LimitCurvature", check.That("c.Offset", c.Offset, c.Offset != 0, "not zero")); err != nil {
		return 0, err
	}
	return 1 / c.limitCurve(), nil
}

// limitCurve is 1/ρ_lim, which passes through zero where ρ_lim jumps from +∞ to −∞.
func (c PitchCones) limitCurve() float64 {
	t := c.tanLimit()
	r1, r2 := c.PinionConeDistance, c.WheelConeDistance
	n := -t*(math.Tan(c.PinionSpiral)/(r1*math.Tan(c.PinionPitchAngle))+math.Tan(c.WheelSpiral)/(r2*math.Tan(c.WheelPitchAngle))) +
		1/(r1*math.Cos(c.PinionSpiral)) - 1/(r2*math.Cos(c.WheelSpiral))
	return n / (math.Hypot(1, t) * (math.Tan(c.PinionSpiral) - math.Tan(c.WheelSpiral)))
}

// valid refuses cones that do not share a pitch plane at the mean point, as cones
// typed in by hand with rounded angles may fail to.
func (c PitchCones) valid(fn string) error {
	const slack = 1e-6 // far above rounding, far below what moves a force by a newton
	near := func(got, want, scale float64) bool { return math.Abs(got-want) <= slack*scale }
	return check.All(fn,
		teeth("PinionTeeth", c.PinionTeeth), wheelTeeth("WheelTeeth", c.PinionTeeth, c.WheelTeeth),
		check.Positive("WheelMeanRadius", c.WheelMeanRadius), check.Positive("PinionMeanRadius", c.PinionMeanRadius),
		check.That("PinionPitchAngle", c.PinionPitchAngle, c.PinionPitchAngle > 0 && c.PinionPitchAngle < math.Pi/2, "0 to 90°"),
		check.That("WheelPitchAngle", c.WheelPitchAngle, c.WheelPitchAngle > 0 && c.WheelPitchAngle < math.Pi/2, "0 to 90°"),
		check.That("PinionSpiral", c.PinionSpiral, c.PinionSpiral >= 0 && c.PinionSpiral < math.Pi/2, "0 to 90°"),
		check.That("WheelSpiral", c.WheelSpiral, near(c.WheelSpiral, c.PinionSpiral-c.OffsetAngle, 1), "PinionSpiral − OffsetAngle"),
		check.That("OffsetAngle", c.OffsetAngle,
			near(math.Cos(c.OffsetAngle), math.Tan(c.PinionPitchAngle)*math.Tan(c.WheelPitchAngle), 1),
			"cos ζ = tan δ1·tan δ2"),
		check.That("Offset", c.Offset, near(c.Offset, (c.PinionMeanRadius*math.Cos(c.WheelPitchAngle)+
			c.WheelMeanRadius*math.Cos(c.PinionPitchAngle))*math.Sin(c.OffsetAngle), c.WheelMeanRadius),
			"(r_m1·cos δ2 + r_m2·cos δ1)·sin ζ"),
		check.That("PinionMeanRadius", c.PinionMeanRadius, near(c.PinionMeanRadius*math.Cos(c.PinionSpiral)*float64(c.WheelTeeth),
			c.WheelMeanRadius*math.Cos(c.WheelSpiral)*float64(c.PinionTeeth), c.WheelMeanRadius*float64(c.WheelTeeth)),
			"r_m2·(z1/z2)·cos β2/cos β1"),
		check.That("PinionConeDistance", c.PinionConeDistance, near(c.PinionConeDistance*math.Sin(c.PinionPitchAngle),
			c.PinionMeanRadius, c.PinionMeanRadius), "r_m1/sin δ1"),
		check.That("WheelConeDistance", c.WheelConeDistance, near(c.WheelConeDistance*math.Sin(c.WheelPitchAngle),
			c.WheelMeanRadius, c.WheelMeanRadius), "r_m2/sin δ2"),
	)
}
