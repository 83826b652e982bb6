package outline

import "math"

// Side says on which side of an arc the straight pieces lie that stand for it.
type Side int

// The sides.
const (
	On     Side = iota // corners on the arc: drawn pictures
	Around             // the polygon encloses the outline: keeps others out
)

// Flatten is the outline with its arcs as straight pieces that are nowhere
// further from them than a tolerance. The outline must run anticlockwise.
func (l Loop) Flatten(tolerance float64, side Side) []Point {
	var places []Point
	for i := range l {
		e := l.Edge(i)
		places = append(places, e.From)
		if e.Bulge == 0 {
			continue
		}
		sweep, r := math.Abs(e.Sweep()), e.Radius()
		// The height of a chord's arc, and as much again for tangents outside it.
		most := 2 * math.Acos(1-math.Min(1, tolerance/r))
		if side == Around {
			most = 2 * math.Acos(1/(1+tolerance/r))
		}
		n := max(1, int(math.Ceil(sweep/most)), int(math.Ceil(sweep/(math.Pi/2))))
		if side == Around && e.Bulge > 0 {
			c := e.Centre()
			reach := 1 / math.Cos(sweep/float64(2*n))
			for k := range n { // the corners between tangents at the ends of each part
				p := e.At((float64(k) + 0.5) / float64(n))
				places = append(places, c.along(p.minus(c), reach))
			}
			continue
		}
		for k := 1; k < n; k++ {
			places = append(places, e.At(float64(k)/float64(n)))
		}
	}
	return places
}
