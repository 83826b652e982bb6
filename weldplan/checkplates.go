package weldplan

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"axlewright/calc/material"
)

func (p *Plate) check(c *checker, field string, k *Casting, runs map[string]string) {
	steel, err := material.Lookup(p.Steel)
	switch {
	case p.Steel == "":
		c.add(field, "lacks steel, such as S355 or S700MC")
	case err != nil:
		c.add(field+".steel", "%q is not in the tables; expected such as S355 or S700MC", p.Steel)
	case iron(steel.Family) || steel.Family == material.Bronze:
		c.add(field+".steel", "%s is %s; a kit is cut from steel", p.Steel, steel.Family)
	}
	p.Analysis.check(c, field+".analysis")
	c.within(field+".thickness", p.Thickness.Number, leastThickness, mostThickness, true, "3 mm")
	c.within(field+".area", p.Area.Number, 1e-5, 1, false, "60 cm²")
	if len(p.Runs) == 0 {
		c.add(field, "has no runs of weld")
	}
	for i := range p.Runs {
		at := fmt.Sprintf("%s.runs[%d]", field, i)
		c.named(at, p.Runs[i].Name, runs)
		p.Runs[i].check(c, at, p, k)
	}
}

func (r *Run) check(c *checker, field string, p *Plate, k *Casting) {
	from, to := c.place(field+".from", r.From), c.place(field+".to", r.To)
	placed := from && to
	if r.Through.Given {
		placed = c.place(field+".through", r.Through) && placed
	}
	if placed {
		r.checkLine(c, field)
	}
	limb := slices.IndexFunc(k.Limbs, func(l Limb) bool { return l.Name == r.On })
	if limb < 0 {
		c.add(field+".on", "there is no limb %q of the casting", r.On)
	} else if placed && k.Limbs[limb].From.Given && k.Limbs[limb].To.Given {
		r.checkReach(c, field, &k.Limbs[limb])
	}
	switch {
	case r.Side == "":
		c.add(field, "lacks side: the way the casting's face looks there, %s", listed(allSides))
	case placed && !r.Through.Given && alongside(r3.Sub(r.To.At, r.From.At), r.Side.Vec()):
		c.add(field+".side", "the run goes straight out of the face it lies on")
	}
	wall := c.within(field+".wall", r.Wall.Number, 2e-3, 0.15, true, "12 mm")
	if r.Joint == "" {
		c.add(field, "lacks joint: %s", listed(jointKinds))
	}
	if r.Position == "" {
		c.add(field, "lacks position: %s", listed(positions))
	}
	if r.Bead != "" && r.Joint != Tee {
		c.add(field+".bead", "only a tee has a side for its bead")
	}
	leg := c.within(field+".leg", r.Leg.Number, 1e-3, 20e-3, false, "3 mm")
	if leg && wall && r.Joint != Butt && p.Thickness.Given() && r.Leg.Value > math.Max(p.Thickness.Value, leastThickness)*1.5 {
		c.add(field+".leg", "%s on a plate of %s: more weld than the plate can use only distorts", r.Leg.Text, p.Thickness.Text)
	}
	c.within(field+".gap", r.Gap.Number, 0, 10e-3, false, "0.5 mm")
}

// shortestRun is the least length that is planned as a run of its own.
const shortestRun = 8e-3

func (r *Run) checkLine(c *checker, field string) {
	l, ok := lineOf(r)
	switch {
	case !ok && r.Through.Given:
		c.add(field+".through", "the three points lie on one line: leave `through` out of a straight run")
	case !ok:
		c.add(field, "begins where it ends")
	case l.length < shortestRun:
		c.add(field, "is %s long; shorter than %s is a tack", mm(l.length), mm(shortestRun))
	case l.length > 1:
		c.add(field, "is %s long; another unit?", mm(l.length))
	}
}

// checkReach finds a run that lies nowhere near its limb.
func (r *Run) checkReach(c *checker, field string, limb *Limb) {
	b := newLimb(limb, 1, 0.3)
	reach := math.Hypot(limb.Width.Value, limb.Depth.Value)/2 + 25e-3
	for _, p := range []r3.Vec{r.From.At, r.To.At} {
		if off := r3.Norm(r3.Sub(p, b.point(b.project(p)))); off > reach {
			c.add(field+".on", "the run lies %s off the axis of %s; on another limb?", mm(off), r.On)
			return
		}
	}
}
