package kit

import (
	"fmt"
	"math"

	"axlewright/quantity"
)

// A Change is something that differs between two drawings of a kit.
type Change struct {
	Plate string // "1L"; empty for the kit as a whole
	Words string
}

// Changes tells what moved from one drawing to a later one: for the reason of a
// new revision, or to see what a casting's own stations would ask for.
func Changes(before, after *Drawn) []Change {
	var list []Change
	old := map[string]*Plate{}
	for i := range before.Plates {
		old[before.Plates[i].Key()] = &before.Plates[i]
	}
	for i := range after.Plates {
		p := &after.Plates[i]
		q := old[p.Key()]
		delete(old, p.Key())
		if q == nil {
			list = append(list, Change{p.Key(), "new: " + p.Name})
			continue
		}
		for _, words := range p.changesFrom(q) {
			list = append(list, Change{p.Key(), words})
		}
	}
	for i := range before.Plates {
		if key := before.Plates[i].Key(); old[key] != nil {
			list = append(list, Change{key, "no longer in the kit"})
		}
	}
	return list
}

// felt is the least difference that is told: a hundredth of a millimetre.
const felt = 1e-5 // m

func (p *Plate) changesFrom(q *Plate) (words []string) {
	say := func(format string, args ...any) { words = append(words, fmt.Sprintf(format, args...)) }
	length := func(x float64) string { return quantity.Format(x, quantity.Length) }
	if math.Abs(p.Thickness-q.Thickness) > 1e-9 {
		say("thickness %s, was %s", mm(p.Thickness), mm(q.Thickness))
	}
	if p.Steel != q.Steel {
		say("steel %s, was %s", p.Steel, q.Steel)
	}
	if p.Count != q.Count {
		say("%d in a kit, were %d", p.Count, q.Count)
	}
	for _, s := range p.Stations {
		for _, t := range q.Stations {
			if s.Number == t.Number && s.Corner.To(t.Corner) > felt {
				say("the corner at station %d moved by %s: %s along x, %s up", s.Number, length(s.Corner.To(t.Corner)),
					length(s.Corner.X-t.Corner.X), length(s.Corner.Y-t.Corner.Y))
			}
		}
	}
	holes := map[string]RoundHole{}
	for _, h := range q.Holes {
		holes[h.Label] = h
	}
	for _, h := range p.Holes {
		g, had := holes[h.Label]
		delete(holes, h.Label)
		switch {
		case !had:
			say("new hole %s", h.Label)
		case h.At.To(g.At) > felt:
			say("hole %s moved by %s", h.Label, length(h.At.To(g.At)))
		}
		if had && math.Abs(h.Diameter-g.Diameter) > felt {
			say("hole %s is %s, was %s", h.Label, mm(h.Diameter), mm(g.Diameter))
		}
	}
	for _, h := range q.Holes {
		if _, gone := holes[h.Label]; gone {
			say("hole %s is gone", h.Label)
		}
	}
	if a, b := p.Outline, q.Outline; math.Abs(a.Area()-b.Area()) > felt*a.Length() || math.Abs(a.Length()-b.Length()) > felt {
		say("the outline encloses %.1f cm², was %.1f cm²", a.Area()*1e4, b.Area()*1e4)
	}
	return words
}
