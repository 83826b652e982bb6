package outline

import "math"

// Polygon is the outline with straight edges through the places given.
func Polygon(places ...Point) Loop {
	l := make(Loop, len(places))
	for i, p := range places {
		l[i].At = p
	}
	return l
}

// Rectangle is the upright rectangle of a box.
func Rectangle(b Box) Loop {
	return Polygon(b.Low, Point{b.High.X, b.Low.Y}, b.High, Point{b.Low.X, b.High.Y})
}

// Circle is a full circle as two half circles.
func Circle(centre Point, diameter float64) Loop {
	r := diameter / 2
	return Loop{{At: Point{centre.X - r, centre.Y}, Bulge: 1}, {At: Point{centre.X + r, centre.Y}, Bulge: 1}}
}

// Slot is a slot with round ends, long over all, its middle at a place and its
// length turned by an angle. A slot as long as wide is a circle.
func Slot(middle Point, long, wide, angle float64) Loop {
	if long-wide < Touch {
		return Circle(middle, wide)
	}
	x, r := (long-wide)/2, wide/2
	return Loop{
		{At: Point{-x, -r}}, {At: Point{x, -r}, Bulge: 1},
		{At: Point{x, r}}, {At: Point{-x, r}, Bulge: 1},
	}.Turned(angle).Shifted(middle)
}

// Oblong is a slot with square ends, as a tab needs.
func Oblong(middle Point, long, wide, angle float64) Loop {
	x, y := long/2, wide/2
	return Polygon(Point{-x, -y}, Point{x, -y}, Point{x, y}, Point{-x, y}).Turned(angle).Shifted(middle)
}

// Rounded replaces the corner at vertex i by an arc of a radius that is tangent
// to both edges, which must be straight and long enough.
func (l Loop) Rounded(i int, radius float64) (Loop, error) {
	n := len(l)
	in, out := l.Edge((i+n-1)%n), l.Edge(i)
	if !in.Straight() || !out.Straight() {
		return nil, fault("a corner between arcs cannot be rounded; draw its arc")
	}
	u, v := in.Direction(0), out.Direction(0)
	turn := math.Atan2(u.cross(v), u.dot(v))
	if math.Abs(turn) < 1e-9 || math.Pi-math.Abs(turn) < 1e-9 {
		return nil, fault("there is no corner to round")
	}
	back := radius * math.Tan(math.Abs(turn)/2)
	if back > in.Chord()+Touch || back > out.Chord()+Touch {
		return nil, fault("an edge of %s is too short for a corner of %s, which takes %s of it",
			mm(math.Min(in.Chord(), out.Chord())), mm(radius), mm(back))
	}
	at := l[i].At
	before := Vertex{At: in.From, Tag: l[(i+n-1)%n].Tag}
	arc := Vertex{At: at.along(u, -back), Bulge: math.Tan(turn / 4), Tag: before.Tag}
	after := Vertex{At: at.along(v, back), Tag: l[i].Tag}
	var corner Loop
	if in.Chord()-back > Touch { // else the arc begins at the corner before
		corner = append(corner, before)
	} else {
		arc.At = before.At
	}
	corner = append(corner, arc)
	if out.Chord()-back > Touch { // else it ends at the next corner
		corner = append(corner, after)
	}
	rounded := corner
	for k := 1; k <= n-2; k++ {
		rounded = append(rounded, l[(i+k)%n])
	}
	return rounded.startingNear(l[0].At), nil
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
