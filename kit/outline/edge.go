package outline

import "math"

// An Edge is a straight line or an arc of a circle from one place to another.
// Bulge is the tangent of a quarter of the angle that it turns through,
// positive to the left: 0 is straight, 1 a half circle anticlockwise.
type Edge struct {
	From, To Point
	Bulge    float64
}

// ArcByCentre is the arc from one place to another about a centre. The centre
// is moved to where both places are equally far from it, if that is less than
// a micrometre away.
func ArcByCentre(from, to, centre Point, anticlockwise bool) (Edge, error) {
	a, b := from.minus(centre), to.minus(centre)
	if !from.finite() || !to.finite() || !centre.finite() {
		return Edge{}, fault("a coordinate of the arc is not a number")
	}
	ra, rb := math.Hypot(a.X, a.Y), math.Hypot(b.X, b.Y)
	if math.Abs(ra-rb) > 1e-6 {
		return Edge{}, fault("the centre is %s from the start of the arc and %s from its end", mm(ra), mm(rb))
	}
	if ra < Touch {
		return Edge{}, fault("the arc has no radius")
	}
	if from.To(to) < Touch {
		return Edge{}, fault("the arc ends where it starts; write a circle as two arcs")
	}
	sweep := math.Atan2(a.cross(b), a.dot(b))
	if anticlockwise && sweep <= 0 {
		sweep += 2 * math.Pi
	}
	if !anticlockwise && sweep >= 0 {
		sweep -= 2 * math.Pi
	}
	return Edge{from, to, math.Tan(sweep / 4)}, nil
}

// Straight says whether the edge is a line.
func (e Edge) Straight() bool { return e.Bulge == 0 }

// Sweep is the angle that the edge turns through, positive to the left.
func (e Edge) Sweep() float64 { return 4 * math.Atan(e.Bulge) }

// Chord is the distance from end to end.
func (e Edge) Chord() float64 { return e.From.To(e.To) }

// Radius of an arc; infinite for a line.
func (e Edge) Radius() float64 {
	if e.Bulge == 0 {
		return math.Inf(1)
	}
	return e.Chord() * (1 + e.Bulge*e.Bulge) / (4 * math.Abs(e.Bulge))
}

// Centre of an arc.
func (e Edge) Centre() Point {
	k := (1 - e.Bulge*e.Bulge) / (4 * e.Bulge)
	d := e.To.minus(e.From)
	return e.From.plus(e.To).times(0.5).plus(d.left().times(k))
}

// Length along the edge.
func (e Edge) Length() float64 {
	if e.Bulge == 0 {
		return e.Chord()
	}
	return e.Radius() * math.Abs(e.Sweep())
}

// At is the place a share of the way along the edge, from 0 to 1.
func (e Edge) At(share float64) Point {
	if e.Bulge == 0 {
		return Point{e.From.X + share*(e.To.X-e.From.X), e.From.Y + share*(e.To.Y-e.From.Y)}
	}
	c := e.Centre()
	a := e.From.minus(c)
	sin, cos := math.Sincos(share * e.Sweep())
	return Point{c.X + a.X*cos - a.Y*sin, c.Y + a.X*sin + a.Y*cos}
}

// Direction is the unit vector along the edge at a share of its way.
func (e Edge) Direction(share float64) Point {
	if e.Bulge == 0 {
		return e.To.minus(e.From).times(1 / e.Chord())
	}
	d := e.At(share).minus(e.Centre()).times(math.Copysign(1/e.Radius(), e.Bulge))
	return d.left()
}

// Part is the piece of the edge between two shares of its way.
func (e Edge) Part(from, to float64) Edge {
	p := Edge{e.At(from), e.At(to), math.Tan(math.Atan(e.Bulge) * (to - from))}
	if from == 0 {
		p.From = e.From
	}
	if to == 1 {
		p.To = e.To
	}
	return p
}

// segment is the area between the chord and the arc, positive on the right of
// the chord, where it adds to an area walked anticlockwise.
func (e Edge) segment() float64 {
	if e.Bulge == 0 {
		return 0
	}
	r, sweep := e.Radius(), e.Sweep()
	return r * r / 2 * (sweep - math.Sin(sweep))
}

// share is where along the edge a place lies that is on its line or circle,
// from 0 to 1 within it; ok says whether it is within, to a nanometre.
func (e Edge) share(p Point) (share float64, ok bool) {
	if e.Bulge == 0 {
		d := e.To.minus(e.From)
		length := math.Hypot(d.X, d.Y)
		share = p.minus(e.From).dot(d) / (length * length)
		return share, share*length >= -Touch && (share-1)*length <= Touch
	}
	c := e.Centre()
	a, b := e.From.minus(c), p.minus(c)
	sweep := e.Sweep()
	turn := math.Atan2(a.cross(b), a.dot(b)) * math.Copysign(1, sweep)
	whole, size := 2*math.Pi, math.Abs(sweep)
	slack := Touch / e.Radius()
	if turn < -slack {
		turn += whole
	}
	if turn > size+slack && turn >= whole-slack { // a hair before the start
		turn -= whole
	}
	return turn / size, turn <= size+slack
}

// Bounds is the least upright box round the edge.
func (e Edge) Bounds() Box {
	b := Box{
		Point{math.Min(e.From.X, e.To.X), math.Min(e.From.Y, e.To.Y)},
		Point{math.Max(e.From.X, e.To.X), math.Max(e.From.Y, e.To.Y)},
	}
	if e.Bulge == 0 {
		return b
	}
	c, r := e.Centre(), e.Radius()
	for _, p := range [4]Point{{c.X + r, c.Y}, {c.X, c.Y + r}, {c.X - r, c.Y}, {c.X, c.Y - r}} {
		if _, ok := e.share(p); ok {
			b = b.With(Box{p, p})
		}
	}
	return b
}
