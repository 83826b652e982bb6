package axle

import (
	"math"
	"slices"

	"axlewright/calc/material"
	"axlewright/quantity"
)

// checkUpgrade finds an upgrade that cannot be fitted as it says.
func (r *reading) checkUpgrade(c *Catalogue, u *Upgrade) {
	field := "upgrades[" + u.Name + "]"
	if !r.clean(field) {
		return
	}
	if len(u.Fits) == 0 {
		r.about(field+".fits", "fits no casting; name at least one, or leave the upgrade out")
	}
	if u.parts() == 0 {
		r.about(field, "changes nothing; expected at least one part, such as cap_bolts, peg or lock")
	}
	for _, other := range u.Excludes {
		_, err := c.Upgrade(other)
		r.unknown(field+".excludes", err)
		if other == u.Name {
			r.about(field+".excludes", "excludes itself")
		}
	}
	for _, other := range u.Needs {
		_, err := c.Upgrade(other)
		r.unknown(field+".needs", err)
		switch {
		case slices.Contains(u.Excludes, other):
			r.about(field+".needs", "needs and excludes %q", other)
		case c.needs(other, u.Name, nil):
			r.about(field+".needs", "needs itself by way of %q; make one upgrade of the two", other)
		}
	}
	r.checkUpgradeParts(c, u, field)
	for _, name := range u.Fits {
		k, err := c.Casting(name)
		if err != nil {
			r.about(field+".fits", "%v", err)
			continue
		}
		if r.clean(field) && r.clean("castings["+name+"]") {
			r.checkFit(c, u, &k, field)
		}
	}
}

// needs says whether an upgrade needs another, itself or by way of others.
func (c *Catalogue) needs(name, other string, seen []string) bool {
	if name == other {
		return true
	}
	u, err := c.Upgrade(name)
	if err != nil || slices.Contains(seen, name) {
		return false
	}
	return slices.ContainsFunc(u.Needs, func(next string) bool { return c.needs(next, other, append(seen, name)) })
}

func (r *reading) checkUpgradeParts(c *Catalogue, u *Upgrade, field string) {
	if u.CapBolts != nil {
		r.checkBolts(u.CapBolts, field+".cap_bolts")
	}
	if u.WheelBolts != nil {
		r.checkBolts(u.WheelBolts, field+".wheel_bolts")
		if !u.WheelBolts.Radius.Given() {
			r.about(field+".wheel_bolts", "lacks radius, of the bolt circle")
		}
	}
	if u.Overlay != nil {
		r.checkMetal(u.Overlay.Metal, field+".overlay.metal")
	}
	if d := u.RingDowel; d != nil && d.Inner.Value >= d.Outer.Value {
		r.about(field+".ring_dowel.inner", "the hole %s is not smaller than the dowel, %s", d.Inner.Text, d.Outer.Text)
	}
	if u.Neck != nil && u.Neck.Least.Value > u.Neck.Diameter.Value {
		r.about(field+".pinion_neck.least", "the least diameter %s is more than the diameter %s", u.Neck.Least.Text, u.Neck.Diameter.Text)
	}
	if u.Peg != nil {
		r.checkPeg(u.Peg, field+".peg")
	}
	if u.HeadBearing != "" {
		_, err := c.Bearing(u.HeadBearing)
		r.unknown(field+".head_bearing", err)
	}
	if u.DiffCentre != "" {
		_, err := c.DiffCentre(u.DiffCentre)
		r.unknown(field+".diff_centre", err)
	}
	if u.HalfShafts != "" {
		_, err := c.Shafts(u.HalfShafts)
		r.unknown(field+".half_shafts", err)
	}
}

func (r *reading) checkPeg(p *Peg, field string) {
	r.checkMetal(p.PadMetal, field+".pad_metal")
	if p.Plate.Count < 1 {
		r.about(field+".plate.count", "needs one plate or more")
	}
	if p.Plate.Short.Value > p.Plate.Long.Value {
		r.about(field+".plate.short", "the short side %s is longer than the long one, %s", p.Plate.Short.Text, p.Plate.Long.Text)
	}
	size, err := ThreadSize(p.ScrewThread)
	switch {
	case err != nil:
		r.about(field+".screw_thread", "%v", err)
	case math.Abs(size.Pitch-p.ScrewPitch.Value) > 1e-5:
		r.about(field+".screw_pitch", "%s is not the pitch of %s", p.ScrewPitch.Text, p.ScrewThread)
	case math.Abs(size.Diameter-p.Screw.Value) > fit:
		r.about(field+".screw_diameter", "%s is not the diameter of %s", p.Screw.Text, p.ScrewThread)
	}
}

// checkFit finds an upgrade that cannot go into a casting it says it fits.
func (r *reading) checkFit(c *Catalogue, u *Upgrade, k *Casting, field string) {
	if metal, err := material.Lookup(k.Metal); err == nil && u.Welds {
		if family, err := material.FamilyOf(metal.Family); err == nil && family.Weldability == material.DoNotWeld {
			r.about(field+".fits", "has a structural weld, and casting %s is %s: %s", k.Name, metal.Family, family.Weld)
		}
	}
	r.checkCapParts(u, k, field)
	for _, name := range k.GearSets {
		g, err := c.GearSet(name)
		if err != nil {
			continue // told with the casting
		}
		if u.DiffCentre != "" {
			if d, err := c.DiffCentre(u.DiffCentre); err == nil {
				r.complain(field+".diff_centre", flangeMisfit(&g, &d))
			}
		}
		if u.Peg != nil && u.Peg.Radius.Value >= g.Plate.Outer.Value {
			r.about(field+".peg.radius", "a peg at radius %s misses the back of the crown wheel of %s, whose outer radius is %s", u.Peg.Radius.Text, name, g.Plate.Outer.Text)
		}
		neck, least := g.PinionNeck, g.PinionNeckMin
		if u.Neck != nil {
			neck, least = u.Neck.Diameter, u.Neck.Least
		}
		if u.HeadBearing != "" || u.Neck != nil {
			head := u.HeadBearing
			if head == "" {
				head = k.HeadBearing
			}
			if b, err := c.Bearing(head); err == nil {
				r.complain(field+".head_bearing", neckMisfit(&b, name, neck, least))
			}
		}
	}
	if u.HeadBearing != "" {
		r.checkBoring(c, u, k, field)
	}
}

// checkBoring finds a head bearing that leaves no iron round its bore.
func (r *reading) checkBoring(c *Catalogue, u *Upgrade, k *Casting, field string) {
	larger, err := c.Bearing(u.HeadBearing)
	if err != nil {
		return
	}
	stock, err := c.Bearing(k.HeadBearing)
	if err != nil {
		return
	}
	growth := (larger.Outside.Value - stock.Outside.Value) / 2
	left := k.HeadWall.Value - growth
	switch {
	case growth < -fit:
		r.about(field+".head_bearing", "%s is smaller outside than %s of casting %s and would hang loose in its bore", larger.Name, stock.Name, k.Name)
	case left <= 0:
		r.about(field+".head_bearing", "boring casting %s for %s would leave no iron: the wall is %s and the radius grows by %s",
			k.Name, larger.Name, k.HeadWall.Text, say(growth, quantity.Length))
	case u.HeadWall != nil && u.HeadWall.Value > left+fit:
		r.about(field+".head_wall", "%s is more than boring casting %s leaves, %s", u.HeadWall.Text, k.Name, say(left, quantity.Length))
	}
}

// checkCapParts finds bolts and dowels that do not go into the casting's holes.
func (r *reading) checkCapParts(u *Upgrade, k *Casting, field string) {
	stock, err := ThreadSize(k.CapBolts.Thread)
	if err != nil {
		return
	}
	if u.CapBolts != nil {
		size, err := ThreadSize(u.CapBolts.Thread)
		switch {
		case err != nil:
		case u.CapBolts.Count != k.CapBolts.Count:
			r.about(field+".cap_bolts.count", "casting %s has %d bolts to a cap, not %d", k.Name, k.CapBolts.Count, u.CapBolts.Count)
		case size.Diameter < stock.Diameter-1e-6:
			r.about(field+".cap_bolts.thread", "%s falls through the holes of casting %s, which are tapped %s", u.CapBolts.Thread, k.Name, k.CapBolts.Thread)
		case size.Diameter < stock.Diameter+1e-6 && math.Abs(size.Pitch-stock.Pitch) > 1e-6:
			r.about(field+".cap_bolts.thread", "%s does not screw into casting %s, which is tapped %s", u.CapBolts.Thread, k.Name, k.CapBolts.Thread)
		default:
			stock = size
		}
	}
	if d := u.RingDowel; d != nil && d.Inner.Value < stock.Diameter {
		r.about(field+".ring_dowel.inner", "a hole of %s does not let the %s cap bolts of casting %s through", d.Inner.Text, k.CapBolts.Thread, k.Name)
	}
}
