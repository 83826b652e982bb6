package nest

import (
	"math"

	"axlewright/kit/outline"
)

// finish finds the box round the parts and the rests that go back into stock.
func (s *Sheet) finish(parts []Part, stock *Stock, r Rules) {
	for i, at := range s.Places {
		b := parts[at.Part].Outline.Turned(at.Turn).Shifted(at.Shift).Bounds()
		if i == 0 {
			s.Used = b
		}
		s.Used = s.Used.With(b)
	}
	box := stock.Outline.Bounds()
	if !sameShape(stock.Outline, outline.Rectangle(box)) {
		return // what is left of an odd remnant is scrap
	}
	s.Offcuts = offcuts(box, s.Used, r)
}

// offcuts shears the rest of a sheet off by two straight cuts, a gap beyond the
// parts, in the order that leaves the larger single piece.
func offcuts(sheet, used outline.Box, r Rules) []outline.Box {
	x := math.Min(used.High.X+r.Gap, sheet.High.X)
	y := math.Min(used.High.Y+r.Gap, sheet.High.Y)
	rightFirst := [2]outline.Box{
		{Low: outline.Point{X: x, Y: sheet.Low.Y}, High: sheet.High},
		{Low: outline.Point{X: sheet.Low.X, Y: y}, High: outline.Point{X: x, Y: sheet.High.Y}},
	}
	topFirst := [2]outline.Box{
		{Low: outline.Point{X: sheet.Low.X, Y: y}, High: sheet.High},
		{Low: outline.Point{X: x, Y: sheet.Low.Y}, High: outline.Point{X: sheet.High.X, Y: y}},
	}
	keep := func(cut [2]outline.Box) (kept []outline.Box, largest float64) {
		for _, b := range cut {
			if math.Min(b.Width(), b.Height()) >= r.LeastOffcut && b.Width()*b.Height() > 0 {
				kept = append(kept, b)
				largest = math.Max(largest, b.Width()*b.Height())
			}
		}
		if len(kept) == 2 && kept[1].Width()*kept[1].Height() > kept[0].Width()*kept[0].Height() {
			kept[0], kept[1] = kept[1], kept[0]
		}
		return kept, largest
	}
	a, largestA := keep(rightFirst)
	b, largestB := keep(topFirst)
	if largestB > largestA {
		return b
	}
	return a
}
