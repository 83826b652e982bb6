package nest

import (
	"math"
	"slices"

	"axlewright/kit/outline"
)

// A span is the open interval of y between two values.
type span struct{ low, high float64 }

// spans are disjoint, from low to high.
type spans []span

// columns are the spans that a shape takes in each column of a width; column 0
// begins at x = 0.
type columns []spans

// step is the width of a column. Parts lie at multiples of it.
const step = 0.5e-3 // m

// columnsOf divides a polygon that lies right of x = 0, given as its rim and
// its holes, into columns. What it takes in a column is never less than the
// polygon does anywhere in it.
func columnsOf(polygon ...[]outline.Point) columns {
	_, high := bounds(polygon[0])
	cs := make(columns, int(math.Ceil(high.X/step-1e-6)))
	for i := range cs {
		cs[i] = column(polygon, float64(i)*step, float64(i+1)*step)
	}
	return cs
}

// column is what a polygon takes between two values of x: where its middle line
// is inside, widened to every place where the rim runs through the column.
func column(polygon [][]outline.Point, left, right float64) spans {
	var taken spans
	var crossings []float64
	middle := (left + right) / 2
	for _, ring := range polygon {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if (a.X <= middle) != (b.X <= middle) {
				crossings = append(crossings, a.Y+(b.Y-a.Y)*(middle-a.X)/(b.X-a.X))
			}
			if s, ok := within(a, b, left, right); ok {
				taken = append(taken, s)
			}
		}
	}
	slices.Sort(crossings)
	for i := 0; i+1 < len(crossings); i += 2 {
		taken = append(taken, span{crossings[i], crossings[i+1]})
	}
	return joined(taken)
}

// within is the span of y that a line takes between two values of x.
func within(a, b outline.Point, left, right float64) (span, bool) {
	if math.Max(a.X, b.X) < left || math.Min(a.X, b.X) > right {
		return span{}, false
	}
	y1, y2 := a.Y, b.Y
	if a.X != b.X {
		at := func(x float64) float64 {
			return a.Y + (b.Y-a.Y)*math.Min(1, math.Max(0, (x-a.X)/(b.X-a.X)))
		}
		y1, y2 = at(left), at(right)
	}
	return span{math.Min(y1, y2), math.Max(y1, y2)}, y1 != y2
}

// joined puts spans in order and joins those that meet.
func joined(list spans) spans {
	slices.SortFunc(list, func(a, b span) int {
		switch {
		case a.low < b.low:
			return -1
		case a.low > b.low:
			return 1
		}
		return 0
	})
	kept := list[:0]
	for _, s := range list {
		if n := len(kept); n > 0 && s.low <= kept[n-1].high+1e-12 {
			kept[n-1].high = math.Max(kept[n-1].high, s.high)
		} else {
			kept = append(kept, s)
		}
	}
	return kept
}

// add joins one more span to a list that is in order.
func (list spans) add(s span) spans {
	from := 0
	for from < len(list) && list[from].high < s.low {
		from++
	}
	to := from
	for to < len(list) && list[to].low <= s.high {
		s.low = math.Min(s.low, list[to].low)
		s.high = math.Max(s.high, list[to].high)
		to++
	}
	if to == from {
		return slices.Insert(list, from, s)
	}
	list[from] = s
	if to == from+1 {
		return list
	}
	return slices.Delete(list, from+1, to)
}

// free is the least y from 0 to most that no span holds.
func (list spans) free(most float64) (float64, bool) {
	y := 0.0
	for _, s := range list {
		if s.low >= y { // a span that begins at y leaves y itself free
			break
		}
		y = math.Max(y, s.high)
	}
	return y, y <= most
}
