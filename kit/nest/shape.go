package nest

import (
	"fmt"
	"math"
	"slices"

	"axlewright/kit/outline"
)

// chordHeight is how far the straight pieces that stand for an arc may lie
// outside it while parts are laid.
const chordHeight = 0.02e-3 // m

// A shape is a part at one of its turns, grown by half the gap.
type shape struct {
	part  int
	turn  float64       // rad
	shift outline.Point // from the corner of the grown shape's box to the part's own origin
	wide  float64       // m, of the grown shape
	high  float64
	cols  columns
}

// shapesOf draws every part at every turn that it may have; turns that look
// alike are left out.
func shapesOf(parts []Part, r Rules) ([]shape, [][]int, error) {
	var shapes []shape
	byPart := make([][]int, len(parts))
	for i := range parts {
		p := &parts[i]
		var seen []outline.Loop
		for _, angle := range p.angles(r.Turns) {
			turned := p.Outline.Turned(angle)
			box := turned.Bounds()
			level := turned.Shifted(outline.Point{X: -box.Low.X, Y: -box.Low.Y})
			if slices.ContainsFunc(seen, func(l outline.Loop) bool { return sameShape(l, level) }) {
				continue
			}
			seen = append(seen, level)
			grown, err := grow(turned, r.Gap/2)
			if err != nil {
				return nil, nil, fmt.Errorf("part %s: %w", p.Name, err)
			}
			polygon := grown.Flatten(chordHeight, outline.Around)
			low, high := bounds(polygon)
			for k := range polygon {
				polygon[k] = outline.Point{X: polygon[k].X - low.X, Y: polygon[k].Y - low.Y}
			}
			byPart[i] = append(byPart[i], len(shapes))
			shapes = append(shapes, shape{
				part: i, turn: angle, shift: outline.Point{X: -low.X, Y: -low.Y},
				wide: high.X - low.X, high: high.Y - low.Y, cols: columnsOf(polygon),
			})
		}
	}
	return shapes, byPart, nil
}

// grow is the outer outline of a shape grown by a distance.
func grow(l outline.Loop, by float64) (outline.Loop, error) {
	all, err := l.Offset(by)
	if err != nil {
		return nil, err
	}
	for _, g := range all {
		if g.Area() > 0 {
			return g, nil
		}
	}
	return nil, fmt.Errorf("its outline cannot be grown by %g mm", by*1e3)
}

func bounds(polygon []outline.Point) (low, high outline.Point) {
	low, high = polygon[0], polygon[0]
	for _, p := range polygon {
		low = outline.Point{X: math.Min(low.X, p.X), Y: math.Min(low.Y, p.Y)}
		high = outline.Point{X: math.Max(high.X, p.X), Y: math.Max(high.Y, p.Y)}
	}
	return low, high
}

// sameShape says whether two outlines have the same corners, wherever each begins.
func sameShape(a, b outline.Loop) bool {
	if len(a) != len(b) {
		return false
	}
	for from := range b {
		same := true
		for i := range a {
			v, w := a[i], b[(from+i)%len(b)]
			if v.At.To(w.At) > 1e-7 || math.Abs(v.Bulge-w.Bulge) > 1e-9 {
				same = false
				break
			}
		}
		if same {
			return true
		}
	}
	return false
}
