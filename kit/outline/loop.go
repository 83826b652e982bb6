package outline

import "math"

// A Loop is a closed outline: its edges run from vertex to vertex and back to
// the first.
type Loop []Vertex

// A Vertex is a corner of an outline and the edge that leaves it.
type Vertex struct {
	At    Point   `json:"at"`
	Bulge float64 `json:"bulge"` // of the edge to the next vertex, see Edge
	Tag   int     `json:"tag"`   // what the owner says about that edge; moves and mirrors keep it
}

// Edge is the edge that leaves vertex i.
func (l Loop) Edge(i int) Edge {
	v := l[i]
	return Edge{v.At, l[(i+1)%len(l)].At, v.Bulge}
}

// Area enclosed, positive where the outline runs anticlockwise: the polygon
// through the corners and a circular segment for each arc.
func (l Loop) Area() float64 {
	if len(l) == 0 {
		return 0
	}
	origin := l[0].At // near by, so that an outline far from the origin loses no digits
	sum := 0.0
	for i := range l {
		e := l.Edge(i)
		sum += e.From.minus(origin).cross(e.To.minus(origin))/2 + e.segment()
	}
	return sum
}

// Length of all edges.
func (l Loop) Length() float64 {
	sum := 0.0
	for i := range l {
		sum += l.Edge(i).Length()
	}
	return sum
}

// Bounds is the least upright box round the outline.
func (l Loop) Bounds() Box {
	b := nothing()
	for i := range l {
		b = b.With(l.Edge(i).Bounds())
	}
	return b
}

// Centroid of the area enclosed.
func (l Loop) Centroid() Point {
	if len(l) == 0 {
		return Point{}
	}
	origin := l[0].At
	var area float64
	var moment Point
	add := func(a float64, at Point) {
		area += a
		moment = moment.plus(at.times(a))
	}
	for i := range l {
		e := l.Edge(i)
		p, q := e.From.minus(origin), e.To.minus(origin)
		add(p.cross(q)/2, p.plus(q).times(1./3))
		if e.Bulge != 0 {
			a := e.segment()
			// A segment's centroid lies chord³/(12·A) from the centre.
			d := math.Pow(e.Chord(), 3) / (12 * math.Abs(a))
			out := e.At(0.5).minus(e.Centre()).times(1 / e.Radius())
			add(a, e.Centre().minus(origin).along(out, d))
		}
	}
	return origin.plus(moment.times(1 / area))
}

// Reversed is the same outline walked the other way from the same first vertex.
func (l Loop) Reversed() Loop {
	n := len(l)
	r := make(Loop, n)
	for i := range l {
		r[i].At = l[(n-i)%n].At
		before := l[(2*n-i-1)%n] // the edge that arrived now leaves
		r[i].Bulge, r[i].Tag = 0-before.Bulge, before.Tag
	}
	return r
}

// Anticlockwise is the outline, reversed if it ran clockwise.
func (l Loop) Anticlockwise() Loop {
	if l.Area() < 0 {
		return l.Reversed()
	}
	return l
}

// Shifted is the outline moved.
func (l Loop) Shifted(by Point) Loop {
	return l.each(func(v Vertex) Vertex { v.At = v.At.plus(by); return v })
}

// Turned is the outline turned about the origin, radians anticlockwise. Turns
// by quarters are exact.
func (l Loop) Turned(angle float64) Loop {
	return l.each(func(v Vertex) Vertex { v.At = v.At.Turned(angle); return v })
}

// Turned is the place turned about the origin.
func (p Point) Turned(angle float64) Point {
	sin, cos := math.Sincos(angle)
	if quarters := angle / (math.Pi / 2); math.Abs(quarters-math.Round(quarters)) < 1e-12 {
		sin, cos = math.Round(sin), math.Round(cos)
	}
	return Point{p.X*cos - p.Y*sin, p.X*sin + p.Y*cos}.whole()
}

// Mirrored is the mirror image left for right, with the same winding. Twice
// gives the same outline.
func (l Loop) Mirrored() Loop {
	return l.each(func(v Vertex) Vertex {
		v.At, v.Bulge = v.At.Mirrored(), 0-v.Bulge
		return v
	}).Reversed()
}

// Mirrored is the place with left for right.
func (p Point) Mirrored() Point { return Point{0 - p.X, p.Y} }

func (l Loop) each(change func(Vertex) Vertex) Loop {
	moved := make(Loop, len(l))
	for i, v := range l {
		moved[i] = change(v)
	}
	return moved
}
