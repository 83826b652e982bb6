package axle

import (
	"errors"
	"fmt"
	"math"
	"regexp"

	"axlewright/calc/bearing"
	"axlewright/calc/bolt"
	"axlewright/calc/check"
	"axlewright/calc/gear"
	"axlewright/quantity"
)

// checkBearing finds sizes that cannot be those of one bearing.
func (r *reading) checkBearing(b *Bearing) {
	field := "bearings[" + b.Name + "]"
	if b.AsGiven || !r.clean(field) {
		return
	}
	_, err := bearing.Proportions(b.Geometry())
	var out *check.RangeError
	switch {
	case errors.As(err, &out):
		key, known := bearingKeys[out.Param]
		if !known {
			key = out.Param
		}
		value := say(out.Value, quantity.Length)
		switch out.Param {
		case "Count":
			value = fmt.Sprintf("%g", out.Value)
		case "CupAngle":
			value = say(out.Value, quantity.Angle)
		}
		expected := out.Range
		for name, word := range bearingKeys {
			expected = regexp.MustCompile(`\b`+name+`\b`).ReplaceAllString(expected, word)
		}
		r.about(field+"."+key, "%s cannot be: expected %s; measure again", value, expected)
	case err != nil:
		r.about(field, "cannot be a bearing: %v; measure again", err)
	}
}

// bearingKeys are the keys of a bearing by the names that calc/bearing gives them.
var bearingKeys = map[string]string{
	"Bore": "bore", "OutsideDiameter": "outside", "Width": "width", "Count": "rollers",
	"Diameter": "roller_diameter", "Length": "roller_length", "PitchDiameter": "pitch_diameter", "CupAngle": "cup_angle",
}

// Geometry is the bearing as calc/bearing takes it.
func (b Bearing) Geometry() bearing.Geometry {
	return bearing.Geometry{
		Bore: b.Bore.Value, OutsideDiameter: b.Outside.Value, Width: b.Width.Value, Rollers: b.RollerSet(),
	}
}

// RollerSet is the bearing's rollers as calc/bearing takes them.
func (b Bearing) RollerSet() bearing.Rollers {
	return bearing.Rollers{
		Count: b.Rollers, Diameter: b.RollerDiameter.Value, Length: b.RollerLength.Value,
		PitchDiameter: b.PitchDiameter.Value, CupAngle: b.CupAngle.Value,
	}
}

// Limits of a crown wheel and pinion that anybody has cut for a nose casting.
// Common practice, no source.
const (
	fewestTeeth  = 5
	widestFace   = 0.35 // of half the outside diameter
	largestRatio = 10
)

func (r *reading) checkGears(g *GearSet) {
	field := "gear_sets[" + g.Name + "]"
	if !r.clean(field) {
		return
	}
	switch {
	case g.PinionTeeth < fewestTeeth:
		r.about(field+".pinion_teeth", "a pinion of %d teeth is not cut; expected %d or more", g.PinionTeeth, fewestTeeth)
	case g.WheelTeeth <= g.PinionTeeth:
		r.about(field+".wheel_teeth", "teeth that cannot mesh: %d on the crown wheel and %d on the pinion; are the two the wrong way round?", g.WheelTeeth, g.PinionTeeth)
	case g.WheelTeeth > largestRatio*g.PinionTeeth:
		r.about(field+".wheel_teeth", "a ratio of %d to %d is not cut; expected up to %d", g.WheelTeeth, g.PinionTeeth, largestRatio)
	default:
		if _, err := g.Cones(); err != nil {
			r.about(field, "teeth that cannot mesh: no pair of cones has this offset with this spiral angle and radius (%s)", sentence(err))
		}
	}
	if g.Face.Value > widestFace*g.OutsideDiameter.Value/2 {
		r.about(field+".face", "a face of %s is over a third of the wheel's radius; no such wheel is cut", g.Face.Text)
	}
	if g.MeanRadius.Given() && g.MeanRadius.Value >= g.OutsideDiameter.Value/2 {
		r.about(field+".mean_radius", "the mean radius %s is not within the wheel of %s outside diameter", g.MeanRadius.Text, g.OutsideDiameter.Text)
	}
	if g.Plate.Bore.Value >= g.Plate.Outer.Value {
		r.about(field+".plate.bore", "the bore %s is not smaller than the outer radius %s; both are radii", g.Plate.Bore.Text, g.Plate.Outer.Text)
	}
	if g.PinionNeckMin.Value > g.PinionNeck.Value {
		r.about(field+".pinion_neck_min", "the least diameter %s of the neck is more than its diameter %s", g.PinionNeckMin.Text, g.PinionNeck.Text)
	}
	if g.PinionSpline.Value > g.PinionShank.Value {
		r.about(field+".pinion_spline", "a spline of %s does not pass through the tail bearing, whose shank is %s", g.PinionSpline.Text, g.PinionShank.Text)
	}
	r.checkBolts(&g.WheelBolts, field+".wheel_bolts")
	switch at := g.WheelBolts.Radius; {
	case !at.Given():
		r.about(field+".wheel_bolts", "lacks radius, of the bolt circle")
	case at.Value <= g.Plate.Bore.Value || at.Value >= g.Plate.Outer.Value:
		r.about(field+".wheel_bolts.radius", "a bolt circle of radius %s is not within the crown wheel (%s to %s)", at.Text, g.Plate.Bore.Text, g.Plate.Outer.Text)
	}
	r.checkMetal(g.Metal, field+".metal")
}

// Cones solves the pitch cones of the set.
func (g GearSet) Cones() (gear.PitchCones, error) {
	radius := g.MeanRadius.Value
	if radius == 0 {
		delta := math.Atan2(float64(g.WheelTeeth), float64(g.PinionTeeth))
		radius = (g.OutsideDiameter.Value - g.Face.Value*math.Sin(delta)) / 2
	}
	return gear.HypoidPitchCones(gear.HypoidConesParams{
		PinionTeeth: g.PinionTeeth, WheelTeeth: g.WheelTeeth, Offset: g.Offset.Value,
		PinionSpiral: g.PinionSpiral.Value, WheelMeanRadius: radius, Condition: gear.ApexAtCrossing,
	})
}

// checkBolts finds bolts that do not exist, and returns their size.
func (r *reading) checkBolts(b *Bolts, field string) (size bolt.ThreadSizeResult, ok bool) {
	if !r.clean(field) {
		return size, false
	}
	if b.Count < 1 {
		r.about(field+".count", "needs one bolt or more")
	}
	size, err := ThreadSize(b.Thread)
	if err != nil {
		r.about(field+".thread", "%v", err)
		return size, false
	}
	strength, err := BoltStrength(b.Grade, size)
	if err != nil {
		r.about(field+".grade", "%q is no grade of a %s bolt; expected such as 8.8, 10.9 or 12.9 for metric ones, 5 or 8 for inch ones", b.Grade, b.Thread)
		return size, true
	}
	r.checkTightening(b, size, strength, field)
	return size, true
}

// checkTightening finds a torque that no such bolt survives: mostly a slip
// between inch and foot, or of the decimal point.
func (r *reading) checkTightening(b *Bolts, size bolt.ThreadSizeResult, strength bolt.StrengthResult, field string) {
	area, err := bolt.StressArea(size.Diameter, size.Pitch)
	if err != nil {
		return
	}
	preload, err := bolt.NutFactorPreload(b.Nut.Value, size.Diameter, b.Torque.Value)
	if err != nil {
		r.about(field+".nut_factor", "%s", sentence(err))
		return
	}
	const torn = 1.3 // past yield by so much, twist and doubt allowed for
	if stress := preload / area; stress > torn*strength.Tensile {
		r.about(field+".torque", "%s with a nut factor of %s would tear a %s bolt of grade %s (%s); look for a slip between inch and foot, or of the decimal point",
			b.Torque.Text, b.Nut.Text, b.Thread, b.Grade, say(stress, quantity.Pressure))
	}
}

func (r *reading) checkCentre(d *DiffCentre) {
	field := "diff_centres[" + d.Name + "]"
	if !r.clean(field) {
		return
	}
	if d.Pins < 2 || d.Pins > 4 {
		r.about(field+".pins", "a cross has 2, 3 or 4 ends, not %d", d.Pins)
	}
	switch {
	case d.Locking == LimitedSlip && !d.Bias.Given():
		r.about(field, "a limited-slip centre needs its bias, such as bias: 2.5")
	case d.Locking != LimitedSlip && d.Bias.Given():
		r.about(field+".bias", "only a limited-slip centre has a bias; this one is %s", d.Locking)
	}
	if d.HubRadius.Value >= d.FlangeRadius.Value {
		r.about(field+".hub_radius", "the hub radius %s is not smaller than the flange radius %s", d.HubRadius.Text, d.FlangeRadius.Text)
	}
	for _, tube := range []struct {
		outer, inner *Length
		key          string
	}{{&d.NearOuter, &d.NearInner, ".near_inner"}, {&d.FarOuter, &d.FarInner, ".far_inner"}} {
		if tube.inner.Value >= tube.outer.Value {
			r.about(field+tube.key, "the inner diameter %s is not smaller than the outer one, %s", tube.inner.Text, tube.outer.Text)
		}
	}
}
