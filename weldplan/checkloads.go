package weldplan

import (
	"fmt"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

func (j *Job) checkCavities(c *checker, runs map[string]string) {
	names := map[string]string{}
	for i, v := range j.Cavities {
		field := fmt.Sprintf("cavities[%d]", i)
		c.named(field, v.Name, names)
		sized := c.within(field+".volume", v.Volume.Number, 1e-8, 0.02, false, "85 cm³")
		area := c.within(field+".area", v.Area.Number, 1e-5, 1, false, "40 cm²")
		depth := c.within(field+".depth", v.Depth.Number, 0.5e-3, 0.3, false, "20 mm")
		switch {
		case sized && area:
			c.add(field, "has a volume and an area; leave one out")
		case v.Backfill && !sized && !(area && depth):
			c.add(field, "is to be filled: it needs a volume, or area and depth")
		}
		c.within(field+".resin", v.Resin.Number, 900, 4000, false, "2.0 g/cm³")
		if t := v.Vent; t != nil {
			hole := c.within(field+".vent.hole", t.Hole.Number, 0.5e-3, 20e-3, false, "3.5 mm")
			open := c.within(field+".vent.unwelded", t.Unwelded.Number, 1e-3, 50e-3, false, "7 mm")
			if !hole && !open {
				c.add(field+".vent", "needs a hole or an unwelded length, such as {hole: 3.5 mm, at_top: true}")
			}
			if _, known := runs[t.Run]; t.Run != "" && !known {
				c.add(field+".vent.run", "there is no run %q", t.Run)
			}
		}
	}
}

func (j *Job) checkLoads(c *checker, plates map[string]string) {
	names := map[string]string{}
	for i, l := range j.Loads {
		field := fmt.Sprintf("loads[%d]", i)
		c.named(field, l.Name, names)
		_, plate := plates[l.On]
		bore := slices.ContainsFunc(j.Casting.Bores, func(b Bore) bool { return b.Name == l.On })
		switch {
		case !plate && !bore && !(l.On == "peg" && j.Casting.Peg != nil):
			c.add(field+".on", "%q is no bore, no plate, and not the peg", l.On)
		case plate && !l.At.Given:
			c.add(field, "acts on a plate: it needs a place `at`")
		case !plate && !j.Casting.Held.Given:
			c.add("casting", "lacks held_at: where %s leaves the casting", l.Name)
		}
		if !(r3.Norm(l.vec()) > 0) {
			c.add(field+".force", "is nothing; expected three forces along x, y and z, such as [0 kN, 12 kN, 0 kN]")
		}
		c.within(field+".cycles", l.Cycles.Number, 1, 1e12, false, "2e6")
	}
}

// vec is the force of a load.
func (l *Load) vec() r3.Vec {
	return r3.Vec{X: l.Force[0].Value, Y: l.Force[1].Value, Z: l.Force[2].Value}
}
