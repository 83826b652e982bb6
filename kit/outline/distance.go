package outline

import "math"

// Gap is the least distance between two edges; nought where they meet.
func (e Edge) Gap(f Edge) float64 {
	if places, _ := e.Meet(f); len(places) > 0 {
		return 0
	}
	least := math.Inf(1)
	try := func(d float64) { least = math.Min(least, d) }
	try(f.Distance(e.From))
	try(f.Distance(e.To))
	try(e.Distance(f.From))
	try(e.Distance(f.To))
	// Between the ends, two edges are nearest where a line square to both joins
	// them: through an arc's centre square to the line, or through both centres.
	switch {
	case !e.Straight() && f.Straight():
		e.square(f, f.Direction(0).left(), try)
	case e.Straight() && !f.Straight():
		f.square(e, e.Direction(0).left(), try)
	case !e.Straight() && !f.Straight():
		d := f.Centre().minus(e.Centre())
		if size := math.Hypot(d.X, d.Y); size > 0 {
			e.square(f, d.times(1/size), try)
			f.square(e, d.times(1/size), try)
		}
	}
	return least
}

// square tries the two places of an arc in a direction from its centre.
func (e Edge) square(f Edge, u Point, try func(float64)) {
	for _, r := range [2]float64{e.Radius(), -e.Radius()} {
		p := e.Centre().along(u, r)
		if _, ok := e.share(p); ok {
			try(f.Distance(p))
		}
	}
}

// Gap is the least distance between two outlines, whichever encloses which;
// nought where they cross or touch. Beyond stops the search early: a gap that
// is greater may be returned as any number greater than it.
func (l Loop) Gap(m Loop, beyond float64) float64 {
	least := math.Inf(1)
	boxes := make([]Box, len(m))
	for j := range m {
		boxes[j] = m.Edge(j).Bounds()
	}
	for i := range l {
		e := l.Edge(i)
		b := e.Bounds()
		for j := range m {
			if b.Near(boxes[j], math.Min(least, beyond)) {
				least = math.Min(least, e.Gap(m.Edge(j)))
			}
		}
	}
	return least
}

// Overlaps says whether two outlines share area or come closer than a gap,
// which must be above nought. One within the other overlaps it too.
func (l Loop) Overlaps(m Loop, gap float64) bool {
	if !l.Bounds().Near(m.Bounds(), gap) {
		return false
	}
	return l.Gap(m, gap) < gap-Touch || l.Contains(m[0].At) || m.Contains(l[0].At)
}

// Margin is how far a place is from the edge of the outline: positive within.
func (l Loop) Margin(p Point) float64 {
	least := math.Inf(1)
	for i := range l {
		least = math.Min(least, l.Edge(i).Distance(p))
	}
	if l.Contains(p) {
		return least
	}
	return -least
}
