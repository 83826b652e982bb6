package kit

import (
	"fmt"
	"math"
	"slices"

	"axlewright/kit/outline"
)

var holeKinds = map[string]HoleKind{"": Plain, "plain": Plain, "guide": Guide, "pin": Pin, "vent": VentHole}

// mostHoles in one piece.
const mostHoles = 300

// holes works out the round holes.
func (d *draft) holes(plate *Plate, p *Piece, scope names, field string) {
	if len(p.Holes)+len(p.Slots)+len(p.Openings) > mostHoles {
		d.bad(p.Number, field+".holes", "more than %d holes", mostHoles)
		return
	}
	labels := map[string]bool{}
	for _, h := range p.Holes {
		field := fmt.Sprintf("%s.holes[%s]", field, h.Label.Text)
		if labels[h.Label.Text] || !h.Label.Given() {
			d.bad(h.Label, field, "every hole has a label of its own")
		}
		labels[h.Label.Text] = true
		kind, known := holeKinds[h.Kind.Text]
		if !known {
			d.bad(h.Kind, field+".kind", "%q; expected plain, guide, pin or vent", h.Kind.Text)
		}
		one := RoundHole{Label: h.Label.Text, Kind: kind, At: d.spot(h.At, field+".at", scope)}
		if h.Diameter.Given() {
			one.Diameter = d.within(h.Diameter, field+".diameter", scope, 0, 1)
		}
		switch {
		case kind == Guide:
			d.guide(&one, &h, field)
		case h.Drilling.Given():
			d.bad(h.Drilling, field+".drilling", "a drilling goes with a guide hole")
		case !h.Diameter.Given():
			d.bad(h.Label, field+".diameter", "is missing")
		}
		plate.Holes = append(plate.Holes, one)
	}
}

// guide sizes a guide hole by what is drilled through it: somewhat less than
// the drill unless the file says how much.
func (d *draft) guide(one *RoundHole, h *Hole, field string) {
	if !h.Drilling.Given() {
		d.bad(h.Label, field+".drilling", "a guide hole says which drilling it guides")
		return
	}
	i := slices.IndexFunc(d.done.Drilling, func(r Drilled) bool { return r.Name == h.Drilling.Text })
	if i < 0 {
		d.bad(h.Drilling, field+".drilling", "there is no drilling %q", h.Drilling.Text)
		return
	}
	row := &d.done.Drilling[i]
	if one.Diameter == 0 {
		one.Diameter = row.Drill - d.rules.pilot
	}
	if one.Diameter > row.Drill {
		d.bad(h.Diameter, field+".diameter", "%s is more than the drill of %s that it guides", mm(one.Diameter), mm(row.Drill))
	}
	one.Drilling = row.Name
	one.Note = fmt.Sprintf("guide: drill %s, tap %s", mm(row.Drill), row.Thread)
}

// cutouts works out slots and openings.
func (d *draft) cutouts(plate *Plate, p *Piece, scope names, field string) {
	for _, s := range p.Slots {
		field := fmt.Sprintf("%s.slots[%s]", field, s.Label.Text)
		at := d.spot(s.At, field+".at", scope)
		long := d.within(s.Long, field+".long", scope, 0, 10)
		wide := d.within(s.Wide, field+".wide", scope, 0, 10)
		turn := d.degrees(s.Turn, field+".turn", scope)
		c := Cutout{s.Label.Text, "slot", outline.Slot(at, long, wide, turn)}
		if long < wide {
			d.bad(s.Long, field+".long", "a slot is at least as long as wide")
		}
		if s.Tab.Given() {
			c = Cutout{s.Label.Text, "tab slot", outline.Oblong(at, long, wide, turn)}
		}
		plate.Cutouts = append(plate.Cutouts, c)
	}
	for _, o := range p.Openings {
		l, _ := d.rim(o.Outline, fmt.Sprintf("%s.openings[%s]", field, o.Label.Text), scope, o.Label)
		plate.Cutouts = append(plate.Cutouts, Cutout{o.Label.Text, "opening", l})
	}
}

// ligaments refuses holes that cannot be cut: smaller than the least hole, off
// the plate, or too near to its edge or to each other.
func (d *draft) ligaments(plate *Plate, p *Piece, field string) {
	least := d.rules.ligament * plate.Thickness
	type cut struct {
		name string
		loop outline.Loop
		at   Typed
	}
	var cuts []cut
	for i, h := range plate.Holes {
		name := "hole " + h.Label
		if smallest := d.rules.hole * plate.Thickness; h.Diameter < smallest-outline.Touch {
			d.bad(p.Holes[i].Label, field+".holes", "%s of %s is smaller than %s, the least in a plate of %s", name, mm(h.Diameter), mm(smallest), mm(plate.Thickness))
		}
		cuts = append(cuts, cut{name, h.Loop(), p.Holes[i].Label})
	}
	for i, c := range plate.Cutouts {
		var at Typed
		if i < len(p.Slots) {
			at = p.Slots[i].Label
		} else {
			at = p.Openings[i-len(p.Slots)].Label
		}
		if err := c.Loop.Check(); err != nil {
			d.bad(at, field, "%s %s: %v", c.Kind, c.Label, err)
			return
		}
		cuts = append(cuts, cut{c.Kind + " " + c.Label, c.Loop, at})
	}
	for i, c := range cuts {
		if !plate.Outline.Contains(c.loop[0].At) {
			d.bad(c.at, field, "%s lies off the plate", c.name)
			continue
		}
		if gap := c.loop.Gap(plate.Outline, math.Inf(1)); gap < least-outline.Touch {
			d.bad(c.at, field, "%s leaves %s to the edge; the least is %s", c.name, mm(gap), mm(least))
		}
		for _, o := range cuts[:i] {
			if c.loop.Overlaps(o.loop, least) {
				d.bad(c.at, field, "%s and %s leave less than %s between them", c.name, o.name, mm(least))
			}
		}
	}
}
