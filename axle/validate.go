package axle

import (
	"fmt"
	"math"
	"slices"

	"axlewright/calc/bearing"
	"axlewright/calc/bolt"
	"axlewright/calc/gear"
	"axlewright/calc/material"
	"axlewright/quantity"
)

// checkFigures finds what is wrong with one file of a catalogue by itself.
func (c *Catalogue) checkFigures() Findings { return checkFigures(c, "") }

// checkNames finds what is wrong with a whole catalogue: names that stand for
// nothing, parts that do not go together.
func (c *Catalogue) checkNames() Findings {
	var found Findings
	add := func(field, format string, args ...any) {
		found = append(found, Finding{Field: field, Problem: fmt.Sprintf(format, args...)})
	}
	eachRepeated(c.Castings, func(x Casting) string { return x.Name }, "castings", add)
	eachRepeated(c.GearSets, func(x GearSet) string { return x.Name }, "gear_sets", add)
	eachRepeated(c.Bearings, func(x Bearing) string { return x.Name }, "bearings", add)
	eachRepeated(c.DiffCentres, func(x DiffCentre) string { return x.Name }, "diff_centres", add)
	eachRepeated(c.HalfShafts, func(x HalfShafts) string { return x.Name }, "half_shafts", add)
	eachRepeated(c.Upgrades, func(x Upgrade) string { return x.Name }, "upgrades", add)
	eachRepeated(c.Duties, func(x Duty) string { return x.Name }, "duties", add)
	for _, b := range c.Bearings {
		checkBearing(b, add)
	}
	for _, g := range c.GearSets {
		checkGears(g, add)
	}
	for _, d := range c.DiffCentres {
		checkCentre(d, add)
	}
	for i := range c.Castings {
		c.checkCasting(&c.Castings[i], add)
	}
	for i := range c.Upgrades {
		c.checkUpgrade(&c.Upgrades[i], add)
	}
	for _, d := range c.Duties {
		checkDuty(d, add)
	}
	for _, m := range c.Measurements {
		if m.Leaves < 0 || m.Leaves >= 1 {
			add("measurements", "%q leaves %g of the doubt; expected 0 to below 1", m.How, m.Leaves)
		}
	}
	return found
}

type adder func(field, format string, args ...any)

func eachRepeated[T any](items []T, name func(T) string, list string, add adder) {
	seen := map[string]bool{}
	for i, item := range items {
		switch n := name(item); {
		case n == "":
			add(fmt.Sprintf("%s[%d]", list, i+1), "has no name")
		case seen[n]:
			add(fmt.Sprintf("%s[%s]", list, n), "stands twice; names must differ")
		default:
			seen[n] = true
		}
	}
}

func checkBearing(b Bearing, add adder) {
	field := fmt.Sprintf("bearings[%s]", b.Name)
	if _, err := bearing.Proportions(b.Geometry()); err != nil {
		add(field, "cannot be a bearing: %v; measure again", err)
	}
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

func checkGears(g GearSet, add adder) {
	field := fmt.Sprintf("gear_sets[%s]", g.Name)
	if g.Hand != gear.LeftHand && g.Hand != gear.RightHand {
		add(field+".hand", "%q is not a hand of spiral; expected left or right, of the pinion", g.Hand)
	}
	if _, err := g.Cones(); err != nil {
		add(field, "teeth that cannot mesh: %v", err)
	}
	if g.Face.Value > 0.35*g.OutsideDiameter.Value/2 {
		add(field+".face", "a face of %s is over a third of the wheel's radius; no such wheel is cut", g.Face.Text)
	}
	if g.Plate.Bore.Value >= g.Plate.Outer.Value {
		add(field+".plate", "the bore %s is not smaller than the outer radius %s; both are radii", g.Plate.Bore.Text, g.Plate.Outer.Text)
	}
	checkBolts(g.WheelBolts, field+".wheel_bolts", add)
	checkMetal(g.Metal, field+".metal", add)
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

func checkBolts(b Bolts, field string, add adder) {
	if b.Count < 1 {
		add(field+".count", "needs one bolt or more")
	}
	size, err := bolt.StandardThread(bolt.Designation(b.Thread))
	if err != nil {
		add(field+".thread", "%v", err)
		return
	}
	if _, err := BoltStrength(b.Grade, size); err != nil {
		add(field+".grade", "%v", err)
	}
}

// BoltStrength returns the least strength of a bolt by what is marked on it.
func BoltStrength(grade string, size bolt.ThreadSizeResult) (bolt.StrengthResult, error) {
	if size.Form == bolt.Metric {
		return bolt.ClassStrength(bolt.Class(grade), size.Diameter)
	}
	return bolt.UnifiedStrength(bolt.UnifiedGrade(grade), size.Diameter)
}

func checkMetal(name, field string, add adder) {
	if _, err := material.Lookup(name); err != nil {
		add(field, "%v", err)
	}
}

func checkCentre(d DiffCentre, add adder) {
	field := fmt.Sprintf("diff_centres[%s]", d.Name)
	if d.Pins != 2 && d.Pins != 4 && d.Pins != 3 {
		add(field+".pins", "a cross has 2, 3 or 4 arms, not %d", d.Pins)
	}
	switch d.Locking {
	case Open, Locked:
	case LimitedSlip:
		if !d.Bias.Given() || d.Bias.Value < 1 {
			add(field+".bias", "a limited-slip centre needs its torque bias, 1 or more")
		}
	default:
		add(field+".locking", "%q is not open, limited slip or locked", d.Locking)
	}
	if d.HubRadius.Value >= d.FlangeRadius.Value {
		add(field, "the hub radius %s is not smaller than the flange radius %s", d.HubRadius.Text, d.FlangeRadius.Text)
	}
}

func (c *Catalogue) checkCasting(k *Casting, add adder) {
	field := fmt.Sprintf("castings[%s]", k.Name)
	checkMetal(k.Metal, field+".metal", add)
	if k.Adjuster.Notches < 1 {
		add(field+".adjuster.notches", "needs one notch or more")
	}
	if k.Cap.Facing != AwayFromNose && k.Cap.Facing != TowardsNose {
		add(field+".cap.facing", "%q is neither %q nor %q", k.Cap.Facing, AwayFromNose, TowardsNose)
	}
	checkBolts(k.CapBolts, field+".cap_bolts", add)
	report := func(key string, err error) {
		if err != nil {
			add(field+"."+key, "%v", err)
		}
	}
	_, err := c.Bearing(k.HeadBearing)
	report("head_bearing", err)
	_, err = c.Bearing(k.TailBearing)
	report("tail_bearing", err)
	side, err := c.Bearing(k.SideBearing)
	report("side_bearing", err)
	if err == nil && math.Abs(side.Outside.Value/2-k.Cap.BoreRadius.Value) > 0.0005 {
		add(field+".side_bearing", "%s has an outside diameter of %s and does not fit a bore of radius %s",
			side.Name, side.Outside.Text, k.Cap.BoreRadius.Text)
	}
	centre, err := c.DiffCentre(k.DiffCentre)
	report("diff_centre", err)
	_, shaftErr := c.Shafts(k.HalfShafts)
	report("half_shafts", shaftErr)
	if len(k.GearSets) == 0 {
		add(field+".gear_sets", "names no gear set; the casting could not be built")
	}
	for _, name := range k.GearSets {
		g, gearErr := c.GearSet(name)
		report("gear_sets", gearErr)
		if gearErr == nil && err == nil && !(centre.HubRadius.Value < g.Plate.Bore.Value && g.Plate.Bore.Value < centre.FlangeRadius.Value) {
			add(field+".gear_sets", "the bore of %s (radius %s) does not sit on the flange of %s (%s to %s)",
				name, g.Plate.Bore.Text, centre.Name, centre.HubRadius.Text, centre.FlangeRadius.Text)
		}
	}
}

func (c *Catalogue) checkUpgrade(u *Upgrade, add adder) {
	field := fmt.Sprintf("upgrades[%s]", u.Name)
	if len(u.Fits) == 0 {
		add(field+".fits", "fits no casting; name at least one or leave the upgrade out")
	}
	for _, name := range u.Fits {
		k, err := c.Casting(name)
		if err != nil {
			add(field+".fits", "%v", err)
			continue
		}
		c.checkFit(u, k, field, add)
	}
	for _, other := range slices.Concat(u.Needs, u.Excludes) {
		if _, err := c.Upgrade(other); err != nil {
			add(field, "%v", err)
		}
		if other == u.Name {
			add(field, "needs or excludes itself")
		}
	}
	if u.Minutes < 0 || u.Parts < 0 {
		add(field, "minutes and parts must not be negative")
	}
	if u.CapBolts != nil {
		checkBolts(*u.CapBolts, field+".cap_bolts", add)
	}
	if u.WheelBolts != nil {
		checkBolts(*u.WheelBolts, field+".wheel_bolts", add)
	}
	if u.DiffCentre != "" {
		if _, err := c.DiffCentre(u.DiffCentre); err != nil {
			add(field+".diff_centre", "%v", err)
		}
	}
	if u.HalfShafts != "" {
		if _, err := c.Shafts(u.HalfShafts); err != nil {
			add(field+".half_shafts", "%v", err)
		}
	}
}

// checkFit finds an upgrade that cannot go into a casting it says it fits.
func (c *Catalogue) checkFit(u *Upgrade, k Casting, field string, add adder) {
	if u.HeadBearing == "" {
		return
	}
	larger, err := c.Bearing(u.HeadBearing)
	if err != nil {
		add(field+".head_bearing", "%v", err)
		return
	}
	stock, err := c.Bearing(k.HeadBearing)
	if err != nil {
		return // told with the casting
	}
	if wall := k.HeadWall.Value - (larger.Outside.Value-stock.Outside.Value)/2; wall <= 0 {
		add(field+".head_bearing", "boring casting %s for %s would leave no iron: the wall is %s and the radius grows by %s",
			k.Name, larger.Name, k.HeadWall.Text, say((larger.Outside.Value-stock.Outside.Value)/2, quantity.Length))
	}
}

func checkDuty(d Duty, add adder) {
	field := fmt.Sprintf("duties[%s]", d.Name)
	if d.Record != "" {
		return
	}
	sum := 0.0
	for _, b := range d.Blocks {
		sum += b.Share.Value
		if b.Going != Forward && b.Going != Overrun && b.Going != Reverse {
			add(field, "block %q goes %q; expected forward, overrun or reverse", b.Name, b.Going)
		}
	}
	if math.Abs(sum-1) > 0.005 {
		add(field, "the shares of its blocks add up to %.4g; expected 1", sum)
	}
}

// check finds what is wrong with an enquiry against its catalogue.
func (e *Enquiry) check(c *Catalogue) Findings {
	found := checkFigures(&e.Vehicle, "vehicle")
	if e.Standard != nil {
		found = append(found, checkFigures(e.Standard, "standard")...)
	}
	add := func(field, format string, args ...any) {
		found = append(found, Finding{Field: field, Problem: fmt.Sprintf(format, args...)})
	}
	if _, err := c.Builds(e.Casting, e.Gears, e.Fitted); err != nil {
		add("casting, gears, fitted", "%v", err)
	}
	if _, err := c.Duty(e.Duty); err != nil {
		add("duty", "%v", err)
	}
	if e.Mounting.Position != Front && e.Mounting.Position != Rear {
		add("mounting.position", "%q is neither front nor rear; it is the first question to ask", e.Mounting.Position)
	}
	if f := e.Mounting.Forward; f != gear.Drive && f != gear.Coast {
		add("mounting.forward", "%q is not a flank; write drive if pulling forward loads the convex side of the crown wheel's teeth (most rear axles), coast if the concave side (a rear gear set used in front)", f)
	}
	if e.Wanted < 0 || e.Wanted >= 1 {
		add("wanted_chance", "%g is not a chance from 0 to below 1", e.Wanted)
	}
	if e.Centre != "" {
		if _, err := c.DiffCentre(e.Centre); err != nil {
			add("diff_centre", "%v", err)
		}
	}
	return found
}
