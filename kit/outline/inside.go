package outline

import "math"

// Contains says whether a place lies within the outline; on the edge, to a
// nanometre, it does.
func (l Loop) Contains(p Point) bool {
	turns := 0.0
	for i := range l {
		e := l.Edge(i)
		if e.Distance(p) <= Touch {
			return true
		}
		turns += e.angleFrom(p)
	}
	return math.Abs(turns) > math.Pi // about 2π within, about 0 without
}

// angleFrom is the angle through which one at p turns his eyes when he follows
// the edge. An arc does as its chord does, and a full turn more where p lies
// between the two.
func (e Edge) angleFrom(p Point) float64 {
	a, b := e.From.minus(p), e.To.minus(p)
	side := a.cross(b) + 0 // above nought on the left of the chord; never −0
	angle := math.Atan2(side, a.dot(b))
	if e.Bulge == 0 {
		return angle
	}
	if onRight := side < 0; onRight == (e.Bulge > 0) && e.Centre().To(p) < e.Radius() {
		return angle + math.Copysign(2*math.Pi, e.Bulge)
	}
	return angle
}

// Distance from a place to the nearest place of the edge.
func (e Edge) Distance(p Point) float64 { return e.nearest(p).To(p) }

// nearest place of the edge.
func (e Edge) nearest(p Point) Point {
	if e.Bulge == 0 {
		share, _ := e.share(p)
		return e.At(math.Min(1, math.Max(0, share)))
	}
	c := e.Centre()
	d := p.minus(c)
	if size := math.Hypot(d.X, d.Y); size > 0 {
		on := c.along(d, e.Radius()/size)
		if _, ok := e.share(on); ok {
			return on
		}
	}
	if e.From.To(p) <= e.To.To(p) {
		return e.From
	}
	return e.To
}
