package drawing

import (
	"math"
	"slices"
)

// Lines are the lines of the hatch, clipped to its outline, for back ends that
// have no hatches of their own. A crossed hatch has its second set after the first.
func (h Hatch) Lines() []Line {
	lines := h.set(h.Angle)
	if h.Crossed {
		lines = append(lines, h.set(h.Angle+90)...)
	}
	return lines
}

// mostLines keeps a mistaken spacing from filling the memory.
const mostLines = 5000

// set is one set of parallel lines. It turns the outline until they are level
// and walks down it; where the outline crosses a level an odd number of times
// from the left, it is inside. All hatches share their levels, so that two that
// meet run into each other.
func (h Hatch) set(angle float64) []Line {
	sin, cos := math.Sincos(angle * math.Pi / 180)
	turned := make([]Point, len(h.Outline))
	low, high := math.Inf(1), math.Inf(-1)
	for i, p := range h.Outline {
		turned[i] = Point{p.X*cos - p.Y*sin, p.X*sin + p.Y*cos}
		low, high = math.Min(low, turned[i].Y), math.Max(high, turned[i].Y)
	}
	if !(h.Spacing > 0) || !(high-low < h.Spacing*mostLines) {
		return nil
	}
	back := func(x, y float64) Point { return Point{x*cos + y*sin, -x*sin + y*cos} }
	var lines []Line
	for k := math.Floor(low / h.Spacing); k*h.Spacing < high; k++ {
		y := (k + 0.5) * h.Spacing
		var crossings []float64
		for i, a := range turned {
			b := turned[(i+1)%len(turned)]
			if (a.Y <= y) != (b.Y <= y) {
				crossings = append(crossings, a.X+(b.X-a.X)*(y-a.Y)/(b.Y-a.Y))
			}
		}
		slices.Sort(crossings)
		for i := 0; i+1 < len(crossings); i += 2 {
			lines = append(lines, Line{From: back(crossings[i], y), To: back(crossings[i+1], y), Ink: h.Ink})
		}
	}
	return lines
}
