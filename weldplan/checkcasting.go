package weldplan

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"axlewright/axle"
)

func (k *Casting) check(c *checker) {
	const field = "casting"
	if k.Variant == "" {
		c.add(field, "lacks variant, such as T24")
	}
	if len(k.Metal.Families) == 0 && k.Metal.Unknown == 0 {
		c.add(field, "lacks metal: a grade, a family, families with their chances, or unknown")
	}
	c.within(field+".mass", k.Mass.Number, 0.5, 500, true, "14 kg")
	c.within(field+".skin", k.Skin.Number, 0.005, 5, true, "0.22 m²")
	k.Analysis.check(c, field+".analysis")
	names := map[string]string{}
	for i := range k.Limbs {
		at := fmt.Sprintf("%s.limbs[%d]", field, i)
		c.named(at, k.Limbs[i].Name, names)
		k.Limbs[i].check(c, at)
	}
	if len(k.Limbs) == 0 {
		c.add(field, "lacks limbs: the legs, the back and the nose that bend")
	}
	k.checkBores(c, names)
	c.within(field+".moved_over_planned", k.Measured.Number, 0.02, 10, false, "0.6 ± 0.2, measured")
	if k.Limits != nil {
		l := k.Limits
		for _, limit := range []struct {
			key string
			n   axle.Length
		}{{"in_line", l.InLine}, {"apart", l.Apart}, {"square", l.Square}, {"offset", l.Offset}, {"peg_face", l.PegFace}, {"peg_tilt", l.PegTilt}} {
			c.within(field+".allowed_moves."+limit.key, limit.n.Number, 1e-6, 5e-3, false, "0.05 mm")
		}
	}
	if len(c.found) == 0 {
		k.checkJoined(c)
	}
}

func (l *Limb) check(c *checker, field string) {
	from, to := c.place(field+".from", l.From), c.place(field+".to", l.To)
	if from && to && r3.Norm(r3.Sub(l.To.At, l.From.At)) < 2*closest {
		c.add(field, "begins where it ends")
	}
	width := c.within(field+".width", l.Width.Number, 2e-3, 0.6, true, "40 mm")
	depth := c.within(field+".depth", l.Depth.Number, 2e-3, 0.6, true, "30 mm")
	wall := c.within(field+".wall", l.Wall.Number, 1e-3, 0.3, false, "8 mm")
	if width && depth && wall && 2*l.Wall.Value > math.Min(l.Width.Value, l.Depth.Value) {
		c.add(field+".wall", "%s twice is more than the limb has; leave wall out of a solid one", l.Wall.Text)
	}
	switch {
	case l.Across == "":
		c.add(field, "lacks across: the direction of its width, %s", listed(allSides))
	case from && to && alongside(r3.Sub(l.To.At, l.From.At), l.Across.Vec()):
		c.add(field+".across", "runs along the limb; the width lies across it")
	}
}

// alongside says whether two directions are as good as one.
func alongside(a, b r3.Vec) bool {
	return r3.Norm(r3.Cross(a, b)) < 0.05*r3.Norm(a)*r3.Norm(b)
}

func (k *Casting) checkBores(c *checker, limbs map[string]string) {
	on := func(field, limb string) {
		if _, known := limbs[limb]; !known {
			c.add(field+".on", "there is no limb %q", limb)
		}
	}
	names, sides := map[string]string{}, 0
	for i, b := range k.Bores {
		field := fmt.Sprintf("casting.bores[%d]", i)
		c.named(field, b.Name, names)
		if b.Role == "" {
			c.add(field, "lacks role: %s", listed(roles))
		}
		if b.Role == SideBore {
			sides++
		}
		c.place(field+".at", b.At)
		on(field, b.On)
	}
	pinions := pinionBores(k.Bores)
	switch {
	case sides != 0 && sides != 2:
		c.add("casting.bores", "have %d side bores; there are two, or none is watched", sides)
	case sides == 0 && len(pinions) < 2:
		c.add("casting.bores", "need the two side bores, or head and tail bore, to watch what moves")
	case len(k.Bores) != sides+len(pinions):
		c.add("casting.bores", "have more than one head or tail bore")
	}
	for role, pair := range map[Role][]Bore{SideBore: boresOf(k.Bores, SideBore), HeadBore: pinions} {
		if len(pair) == 2 && pair[0].At.Given && pair[1].At.Given && r3.Norm(r3.Sub(pair[0].At.At, pair[1].At.At)) < 5e-3 {
			c.add("casting.bores", "%s and %s lie in one place (%s)", pair[0].Name, pair[1].Name, role)
		}
	}
	if p := k.Peg; p != nil {
		c.place("casting.peg.at", p.At)
		if p.Facing == "" {
			c.add("casting.peg", "lacks facing: the way the peg points, %s", listed(allSides))
		}
		on("casting.peg", p.On)
		if sides != 2 {
			c.add("casting.peg", "is watched against the side bores; they are missing")
		}
	}
}

// checkJoined finds limbs that hang in the air.
func (k *Casting) checkJoined(c *checker) {
	var s skeleton
	for i := range k.Limbs {
		s.limbs = append(s.limbs, newLimb(&k.Limbs[i], 1, 0.3))
	}
	s.join()
	if err := s.build(k.Limbs[0].From.At); err != nil {
		c.add("casting.limbs", "%v", err)
	}
}

// check finds an analysis that is none.
func (a *Analysis) check(c *checker, field string) {
	if a == nil {
		return
	}
	c.within(field+".C", a.Carbon.Number, 0.0001, 0.006, true, "0.18 %")
	for _, e := range []struct {
		key  string
		n    axle.Ratio
		most float64
	}{
		{"Si", a.Silicon, 0.02}, {"Mn", a.Manganese, 0.02}, {"Cr", a.Chromium, 0.02}, {"Mo", a.Molybdenum, 0.01}, {"V", a.Vanadium, 0.005},
		{"Ni", a.Nickel, 0.035}, {"Cu", a.Copper, 0.02}, {"Nb", a.Niobium, 0.002}, {"B", a.Boron, 0.0001},
	} {
		c.within(field+"."+e.key, e.n.Number, 0, e.most, false, "0.4 %")
	}
}
