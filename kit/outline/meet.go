package outline

import "math"

// Meet returns the places where two edges meet, at most two. Where they run
// along each other for a while, along is true and the places are its ends.
func (e Edge) Meet(f Edge) (places []Point, along bool) {
	if !e.Bounds().Near(f.Bounds(), Touch) {
		return nil, false
	}
	switch {
	case e.Straight() && f.Straight():
		return lineLine(e, f)
	case e.Straight():
		return lineArc(e, f), false
	case f.Straight():
		return lineArc(f, e), false
	}
	return arcArc(e, f)
}

func lineLine(e, f Edge) ([]Point, bool) {
	u, v := e.Direction(0), f.Direction(0)
	gap := f.From.minus(e.From)
	sine := u.cross(v)
	// Nearly parallel lines meet where the far end of one lies on the other.
	if math.Abs(sine)*math.Max(e.Chord(), f.Chord()) < Touch {
		if math.Abs(u.cross(gap)) > Touch {
			return nil, false
		}
		return shared(e, f)
	}
	p := e.From.along(u, gap.cross(v)/sine)
	return both(e, f, p), false
}

func lineArc(line, arc Edge) []Point {
	c, r, u := arc.Centre(), arc.Radius(), line.Direction(0)
	foot := line.From.along(u, c.minus(line.From).dot(u))
	h := c.To(foot)
	if h > r+Touch {
		return nil
	}
	half := math.Sqrt(math.Max(0, (r-h)*(r+h)))
	if h > r-Touch { // touches: one place
		half = 0
	}
	places := both(line, arc, foot.along(u, half))
	if half > 0 {
		places = append(places, both(line, arc, foot.along(u, -half))...)
	}
	return places
}

func arcArc(e, f Edge) ([]Point, bool) {
	c1, r1, c2, r2 := e.Centre(), e.Radius(), f.Centre(), f.Radius()
	d := c1.To(c2)
	if d < Touch && math.Abs(r1-r2) < Touch {
		return shared(e, f)
	}
	if d > r1+r2+Touch || d < math.Abs(r1-r2)-Touch || d == 0 {
		return nil, false
	}
	u := c2.minus(c1).times(1 / d)
	x := (d*d + (r1-r2)*(r1+r2)) / (2 * d)
	half := math.Sqrt(math.Max(0, (r1-x)*(r1+x)))
	if d > r1+r2-Touch || d < math.Abs(r1-r2)+Touch { // touch: one place
		half = 0
		x = math.Copysign(r1, x)
	}
	places := both(e, f, c1.along(u, x).along(u.left(), half))
	if half > 0 {
		places = append(places, both(e, f, c1.along(u, x).along(u.left(), -half))...)
	}
	return places, false
}

// both keeps a place that is on the lines or circles of two edges where it is
// within both.
func both(e, f Edge, p Point) []Point {
	if _, ok := e.share(p); !ok {
		return nil
	}
	if _, ok := f.share(p); !ok {
		return nil
	}
	return []Point{p}
}

// shared finds the ends of what two edges on one line or circle have in common.
func shared(e, f Edge) (places []Point, along bool) {
	add := func(p Point) {
		for _, q := range places {
			if q.To(p) <= 2*Touch {
				return
			}
		}
		places = append(places, p)
	}
	for _, p := range []Point{f.From, f.To} {
		if _, ok := e.share(p); ok {
			add(p)
		}
	}
	for _, p := range []Point{e.From, e.To} {
		if _, ok := f.share(p); ok {
			add(p)
		}
	}
	if len(places) < 2 {
		return places, false
	}
	if e.Straight() {
		return places, true
	}
	// Two arcs of one circle may share both ends and nothing else.
	for _, s := range [3]float64{0.25, 0.5, 0.75} {
		if _, ok := f.share(e.At(s)); ok {
			return places, true
		}
		if _, ok := e.share(f.At(s)); ok {
			return places, true
		}
	}
	return places, false
}
