package outline

import (
	"math"
	"slices"
)

// Offset returns the outlines at a distance outside an anticlockwise outline, or
// inside it where the distance is negative. Corners are rounded on the outer
// side, so that every place of the result is exactly that far from the outline.
// An outline may vanish, fall apart, or close round a hole, which runs
// clockwise.
//
// Errors: *Fault for an outline that Check refuses.
func (l Loop) Offset(distance float64) ([]Loop, error) {
	if err := l.Check(); err != nil {
		return nil, err
	}
	if math.IsNaN(distance) || math.Abs(distance) > farthest {
		return nil, fault("an offset of %s", mm(distance))
	}
	if math.Abs(distance) < Touch {
		return []Loop{slices.Clone(l)}, nil
	}
	var pieces []tagged
	raw := l.parallels(distance)
	for i := range raw {
		pieces = append(pieces, l.valid(raw, i, distance)...)
	}
	return stitch(pieces), nil
}

// A tagged edge remembers what the owner said about the edge it came from.
type tagged struct {
	Edge
	tag int
}

// parallels are the edges moved by the distance, and an arc round each corner
// where they leave a gap.
func (l Loop) parallels(distance float64) []tagged {
	var raw []tagged
	n := len(l)
	for i := range l {
		e := l.Edge(i)
		if moved, ok := e.parallel(distance); ok {
			raw = append(raw, tagged{moved, l[i].Tag})
		}
		in := l.Edge((i + n - 1) % n)
		u, v := in.Direction(1), e.Direction(0)
		turn := math.Atan2(u.cross(v), u.dot(v))
		if math.Abs(turn) < 1e-9 || (turn > 0) != (distance > 0) {
			continue
		}
		from := e.From.along(u.left(), -distance)
		to := e.From.along(v.left(), -distance)
		if from.To(to) > 2*Touch {
			raw = append(raw, tagged{Edge{from, to, math.Tan(turn / 4)}, l[i].Tag})
		}
	}
	return raw
}

// parallel is the edge moved to its right. An arc that would have no radius
// left is gone: whatever lay there is nearer to its ends.
func (e Edge) parallel(distance float64) (Edge, bool) {
	from := e.From.along(e.Direction(0).left(), -distance)
	to := e.To.along(e.Direction(1).left(), -distance)
	if e.Bulge != 0 && e.Radius()+math.Copysign(distance, e.Bulge*distance) < 10*Touch {
		return Edge{}, false
	}
	return Edge{from, to, e.Bulge}, true
}

// smallest is the length below which a piece of an offset is rounding.
const smallest = 20 * Touch

// valid cuts raw edge i wherever another meets it and keeps the pieces that
// are nowhere nearer to the outline than the distance.
func (l Loop) valid(raw []tagged, i int, distance float64) []tagged {
	e := raw[i]
	cuts := []float64{0, 1}
	for j := range raw {
		if j == i {
			continue
		}
		places, _ := e.Meet(raw[j].Edge)
		for _, p := range places {
			share, _ := e.share(p)
			cuts = append(cuts, math.Min(1, math.Max(0, share)))
		}
	}
	slices.Sort(cuts)
	length := e.Length()
	var kept []tagged
	for k := 1; k < len(cuts); k++ {
		if (cuts[k]-cuts[k-1])*length < smallest {
			cuts[k] = cuts[k-1] // so that the next piece starts where this one did
			continue
		}
		middle := e.At((cuts[k-1] + cuts[k]) / 2)
		if l.nearest(middle) > math.Abs(distance)-smallest/4 {
			kept = append(kept, tagged{e.Part(cuts[k-1], cuts[k]), e.tag})
		}
	}
	return kept
}

// nearest is the distance from a place to the outline.
func (l Loop) nearest(p Point) float64 {
	least := math.Inf(1)
	for i := range l {
		least = math.Min(least, l.Edge(i).Distance(p))
	}
	return least
}
