package outline

import "math"

// Rounded replaces the corner at vertex i by an arc of a radius that is tangent
// to both edges, lines or arcs. The arc has the tag of the edge before it.
//
// Errors: *Fault where there is no corner or an edge is too short.
func (l Loop) Rounded(i int, radius float64) (Loop, error) {
	n := len(l)
	in, out := l.Edge((i+n-1)%n), l.Edge(i)
	u, v := in.Direction(1), out.Direction(0)
	turn := math.Atan2(u.cross(v), u.dot(v))
	if math.Abs(turn) < 1e-6 || math.Pi-math.Abs(turn) < 1e-6 {
		return nil, fault("there is no corner to round")
	}
	centre, ok := filletCentre(in, out, radius, turn)
	if !ok {
		return nil, fault("the edges of %s and %s that meet here are too short for a corner of radius %s", mm(in.Length()), mm(out.Length()), mm(radius))
	}
	start, end := in.nearest(centre), out.nearest(centre)
	bend, err := ArcByCentre(start, end, centre, turn > 0)
	if err != nil {
		return nil, err
	}
	a, _ := in.share(start)
	b, _ := out.share(end)
	before := Vertex{At: in.From, Bulge: in.Part(0, a).Bulge, Tag: l[(i+n-1)%n].Tag}
	arc := Vertex{At: start, Bulge: bend.Bulge, Tag: before.Tag}
	after := Vertex{At: end, Bulge: out.Part(b, 1).Bulge, Tag: l[i].Tag}
	var rounded Loop
	if in.From.To(start) > 10*Touch { // else the arc begins at the corner before
		rounded = append(rounded, before)
	} else {
		arc.At = in.From
	}
	rounded = append(rounded, arc)
	if end.To(out.To) > 10*Touch { // else it ends at the next corner
		rounded = append(rounded, after)
	}
	for k := 1; k <= n-2; k++ {
		rounded = append(rounded, l[(i+k)%n])
	}
	return rounded.startingNear(l[0].At), nil
}

// filletCentre is as far from both edges as the radius, on the inner side of
// the corner: where their parallels meet.
func filletCentre(in, out Edge, radius, turn float64) (Point, bool) {
	inward := math.Copysign(radius, -turn)
	p, ok := in.parallel(inward)
	q, also := out.parallel(inward)
	if !ok || !also {
		return Point{}, false
	}
	places, _ := p.Meet(q)
	best, least := Point{}, math.Inf(1)
	for _, c := range places {
		if d := c.To(out.From); d < least {
			best, least = c, d
		}
	}
	return best, len(places) > 0
}

// startingNear is the same outline from the vertex nearest to a place.
func (l Loop) startingNear(p Point) Loop {
	best := 0
	for i := range l {
		if l[i].At.To(p) < l[best].At.To(p) {
			best = i
		}
	}
	return append(append(Loop{}, l[best:]...), l[:best]...)
}
