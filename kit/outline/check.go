package outline

import "math"

// Limits of what is taken for a plate.
const (
	mostVertices = 5000
	farthest     = 100.0 // m, of a coordinate
)

// Check refuses an outline that does not enclose one piece: coordinates that
// are not numbers, edges without length, an outline that crosses, touches or
// runs along itself.
//
// Errors: *Fault with the edges and the place.
func (l Loop) Check() error {
	switch {
	case len(l) < 2 || len(l) == 2 && l[0].Bulge == 0 && l[1].Bulge == 0:
		return fault("an outline needs three corners, or two with an arc")
	case len(l) > mostVertices:
		return fault("an outline of %d corners; the most is %d", len(l), mostVertices)
	}
	for i, v := range l {
		switch {
		case !v.At.finite() || math.IsNaN(v.Bulge) || math.IsInf(v.Bulge, 0):
			return &Fault{Problem: "a coordinate or a bulge is not a number", Edges: [2]int{i, i}}
		case math.Max(math.Abs(v.At.X), math.Abs(v.At.Y)) > farthest:
			return &Fault{Problem: "a corner lies more than " + mm(farthest) + " away", Edges: [2]int{i, i}, At: v.At}
		}
	}
	for i := range l {
		e := l.Edge(i)
		switch {
		case e.Chord() < 10*Touch:
			return &Fault{Problem: "an edge has no length at " + at(e.From), Edges: [2]int{i, i}, At: e.From}
		case e.Bulge != 0 && e.Radius() > 10*farthest:
			return &Fault{Problem: "an arc is flatter than any that can be cut at " + at(e.From) + "; make it a line", Edges: [2]int{i, i}, At: e.From}
		case math.Abs(e.Bulge) > 100:
			return &Fault{Problem: "an arc is nearly a full circle at " + at(e.From) + "; divide it", Edges: [2]int{i, i}, At: e.From}
		}
	}
	if err := l.crossing(); err != nil {
		return err
	}
	if math.Abs(l.Area()) < 1e-9 { // m²: a thousandth of a square millimetre
		return fault("the outline encloses nothing")
	}
	return nil
}

// crossing looks for two edges that share more than the corner between them.
func (l Loop) crossing() error {
	n := len(l)
	edges, boxes := make([]Edge, n), make([]Box, n)
	for i := range l {
		edges[i] = l.Edge(i)
		boxes[i] = edges[i].Bounds()
	}
	for i := range edges {
		for j := i + 1; j < n; j++ {
			if !boxes[i].Near(boxes[j], Touch) {
				continue
			}
			places, along := edges[i].Meet(edges[j])
			if along {
				return &Fault{Problem: "the outline runs along itself at " + at(places[0]), Edges: [2]int{i, j}, At: places[0]}
			}
			for _, p := range places {
				if j == i+1 && p.To(edges[j].From) < cornerSlack(edges[i], edges[j]) {
					continue
				}
				if i == 0 && j == n-1 && p.To(edges[i].From) < cornerSlack(edges[j], edges[i]) {
					continue
				}
				return &Fault{Problem: "the outline crosses itself at " + at(p), Edges: [2]int{i, j}, At: p}
			}
		}
	}
	return nil
}

// cornerSlack is how far from their common corner two edges may seem to meet.
// Where they leave it in one direction and bend apart, rounding moves the place
// along them.
func cornerSlack(in, out Edge) float64 {
	const sharp = 0.1 // rad
	u, v := in.Direction(1), out.Direction(0)
	if math.Abs(u.cross(v)) > sharp {
		return 20 * Touch
	}
	bend := 0.0
	for _, e := range [2]Edge{in, out} {
		if e.Bulge != 0 {
			bend += 1 / e.Radius()
		}
	}
	if bend == 0 {
		return 20 * Touch
	}
	return math.Max(20*Touch, 4*math.Sqrt(2*Touch/bend))
}
