package kit

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"axlewright/kit/outline"
)

// A corner is a vertex of an outline that is being drawn.
type corner struct {
	outline.Vertex
	radius float64 // m, to round it with; nought leaves it sharp
	round  Typed
	number int // of the station it follows; nought for none
}

// mostSteps keeps a mistaken file from taking for ever.
const mostSteps = 500

// rim draws the outline of steps: edges first, then tabs and vents on them,
// then rounded corners. It runs anticlockwise whichever way it was drawn.
func (d *draft) rim(steps []Step, field string, scope names, where Typed) (outline.Loop, map[int]outline.Point) {
	if len(steps) < 3 || len(steps) > mostSteps {
		d.bad(where, field, "an outline has from 3 to %d steps: from, to, …, to: start", mostSteps)
		return nil, nil
	}
	before := len(d.found)
	corners := d.corners(steps, field, scope)
	if len(d.found) > before {
		return nil, nil
	}
	bare := loopOf(corners)
	if err := bare.Check(); err != nil {
		d.faulty(err, steps, field, where)
		return nil, nil
	}
	corners = d.tabs(steps, corners, field, scope, bare.Area() > 0)
	if len(d.found) > before {
		return nil, nil
	}
	follows := map[int]outline.Point{}
	for _, c := range corners {
		if c.number > 0 {
			follows[c.number] = c.At
		}
	}
	l := d.rounded(corners, field)
	if len(d.found) > before {
		return nil, nil
	}
	if err := l.Check(); err != nil {
		d.faulty(err, steps, field, where)
		return nil, nil
	}
	return l.Anticlockwise(), follows
}

func loopOf(corners []corner) outline.Loop {
	l := make(outline.Loop, len(corners))
	for i, c := range corners {
		l[i] = c.Vertex
	}
	return l
}

// faulty tells what is wrong with an outline at the step where it happens.
func (d *draft) faulty(err error, steps []Step, field string, where Typed) {
	var f *outline.Fault
	if errors.As(err, &f) && f.Edges[0]+1 < len(steps) {
		// Tabs and rounded corners shift the numbers; the place is in the words.
		where = steps[f.Edges[0]+1].To.typed()
	}
	d.bad(where, field, "%v", err)
}

// corners works out where each step ends and how it gets there.
func (d *draft) corners(steps []Step, field string, scope names) []corner {
	var list []corner
	if !steps[0].From.given() || steps[0].From.Start {
		d.bad(steps[0].To.typed(), field, "the first step says where the outline begins, such as from: [0, 0]")
		return nil
	}
	list = append(list, corner{Vertex: outline.Vertex{At: d.spot(steps[0].From, field+".from", scope)}, number: steps[0].Station})
	for i, s := range steps[1:] {
		last := i == len(steps)-2
		field := fmt.Sprintf("%s[%d]", field, i+1)
		switch {
		case s.From.given():
			d.bad(s.From.typed(), field, "only the first step has a from")
			return nil
		case s.To.Start != last:
			d.bad(s.To.typed(), field, "the last step, and only that, goes to: start")
			return nil
		}
		to := list[0].At
		if !last {
			to = d.spot(s.To, field+".to", scope)
		}
		from := &list[len(list)-1]
		from.Bulge = d.bulge(s, from.At, to, field, scope)
		seam, known := seams[s.Seam.Text]
		if !known {
			d.bad(s.Seam, field+".seam", "%q is no seam; expected weld, open or vent", s.Seam.Text)
		}
		from.Tag = int(seam)
		radius := 0.0
		if s.Corner.Given() {
			radius = d.within(s.Corner, field+".corner", scope, 0, 10)
		}
		if last {
			list[0].radius, list[0].round = radius, s.Corner
			if s.Station > 0 {
				list[0].number = s.Station
			}
		} else {
			list = append(list, corner{Vertex: outline.Vertex{At: to}, radius: radius, round: s.Corner, number: s.Station})
		}
	}
	return list
}

// bulge of a step that is straight, has a bulge, or turns about a centre.
func (d *draft) bulge(s Step, from, to outline.Point, field string, scope names) float64 {
	switch {
	case s.Bulge.Given() && s.Centre.given():
		d.bad(s.Bulge, field+".bulge", "an arc has a bulge or a centre; leave one out")
	case s.Bulge.Given():
		b, _ := d.plain(s.Bulge, field+".bulge", scope)
		return b
	case s.Centre.given():
		if s.Turn.Text != "left" && s.Turn.Text != "right" {
			d.bad(s.Centre.typed(), field+".turn", "an arc about a centre turns left or right")
			return 0
		}
		e, err := outline.ArcByCentre(from, to, d.spot(s.Centre, field+".centre", scope), s.Turn.Text == "left")
		if err != nil {
			d.bad(s.Centre.typed(), field+".centre", "%v", err)
		}
		return e.Bulge
	case s.Turn.Given():
		d.bad(s.Turn, field+".turn", "a turn goes with a centre")
	}
	return 0
}

// rounded rounds the corners that have a radius.
func (d *draft) rounded(corners []corner, field string) outline.Loop {
	l := loopOf(corners)
	for _, c := range corners {
		if c.radius == 0 {
			continue
		}
		i := slices.IndexFunc(l, func(v outline.Vertex) bool { return v.At.To(c.At) < outline.Touch })
		if i < 0 {
			d.bad(c.round, field, "there is no corner left here to round: its neighbours took it")
			continue
		}
		next, err := l.Rounded(i, c.radius)
		if err != nil {
			d.bad(c.round, field, "%v", err)
			continue
		}
		l = next
	}
	return l
}

// A stretch is a part of an edge with a tab or a vent, by its ends' distance
// from the start of the edge.
type stretch struct {
	from, to, depth float64
	at              Typed
	vent            bool
}

// tabs puts tabs and vents on the edges that have them.
func (d *draft) tabs(steps []Step, corners []corner, field string, scope names, anticlockwise bool) []corner {
	var list []corner
	for i, c := range corners {
		list = append(list, c)
		step := &steps[i+1]
		e := outline.Edge{From: c.At, To: corners[(i+1)%len(corners)].At, Bulge: c.Bulge}
		parts := d.stretches(step, e, fmt.Sprintf("%s[%d]", field, i+1), scope)
		length := e.Length()
		done := 0.0
		for _, p := range parts {
			u := e.Direction(0)
			out := outline.Point{X: u.Y, Y: -u.X}
			if !anticlockwise {
				out = outline.Point{X: -u.Y, Y: u.X}
			}
			share := func(x float64) float64 { return math.Min(1, x/length) }
			list[len(list)-1].Bulge = e.Part(share(done), share(p.from)).Bulge
			middle := e.Part(share(p.from), share(p.to))
			add := func(at outline.Point, bulge float64, tag int) {
				list = append(list, corner{Vertex: outline.Vertex{At: at, Bulge: bulge, Tag: tag}})
			}
			if p.vent {
				add(middle.From, middle.Bulge, int(VentSeam))
			} else {
				add(middle.From, 0, c.Tag)
				add(outline.Point{X: middle.From.X + out.X*p.depth, Y: middle.From.Y + out.Y*p.depth}, 0, c.Tag)
				add(outline.Point{X: middle.To.X + out.X*p.depth, Y: middle.To.Y + out.Y*p.depth}, 0, c.Tag)
			}
			add(middle.To, e.Part(share(p.to), 1).Bulge, c.Tag)
			done = p.to
		}
	}
	return list
}

// stretches works out and orders the tabs and vents of one edge.
func (d *draft) stretches(s *Step, e outline.Edge, field string, scope names) []stretch {
	var list []stretch
	add := func(at, wide, depth Typed, vent bool) {
		a := d.within(at, field+".at", scope, 0, e.Length())
		w := d.within(wide, field+".wide", scope, 0, e.Length())
		p := stretch{from: a - w/2, to: a + w/2, at: at, vent: vent}
		if !vent {
			p.depth = d.within(depth, field+".depth", scope, 0, 0.2)
			if !e.Straight() {
				d.bad(at, field, "a tab stands on a straight edge")
			}
		}
		if p.from < 10*outline.Touch || p.to > e.Length()-10*outline.Touch {
			d.bad(at, field, "it reaches beyond its edge, which is %s long", mm(e.Length()))
		}
		list = append(list, p)
	}
	for _, t := range s.Tabs {
		add(t.At, t.Wide, t.Depth, false)
	}
	for _, v := range s.Vents {
		add(v.At, v.Wide, Typed{}, true)
	}
	slices.SortFunc(list, func(a, b stretch) int { return cmp.Compare(a.from, b.from) })
	for i := 1; i < len(list); i++ {
		if list[i].from < list[i-1].to+10*outline.Touch {
			d.bad(list[i].at, field, "it runs into the tab or vent before it")
		}
	}
	return list
}
