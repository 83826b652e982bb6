package nest

import (
	"cmp"
	"math"
	"slices"

	"axlewright/kit/outline"
)

// Rows lays parts in simple rows, the way it is done by hand on paper: upright
// boxes of parts, the highest first, side by side along the sheet, the next row
// above. Each part is turned to lie low if its grain allows. It keeps the same
// gap and edge; pairs are not kept on one sheet. It is what Nest is compared with.
//
// Errors: what is wrong with parts, stock or rules.
func Rows(parts []Part, stock []Stock, r Rules) (Plan, error) {
	if err := check(parts, stock, r); err != nil {
		return Plan{}, err
	}
	plan := Plan{Parts: parts, Stock: stock, Rules: r, Left: make([]int, len(parts)), Tried: 1, Placing: "simple rows"}
	order := make([]int, len(parts))
	boxes := make([]outline.Box, len(parts))
	turns := make([]float64, len(parts))
	for i := range parts {
		order[i] = i
		plan.Left[i] = parts[i].Count
		for k, angle := range parts[i].angles(r.Turns) {
			b := parts[i].Outline.Turned(angle).Bounds()
			if k == 0 || b.Height() < boxes[i].Height()-outline.Touch {
				boxes[i], turns[i] = b, angle
			}
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(boxes[b].Height(), boxes[a].Height()) })
	t := table{stock: stock}
	for _, s := range t.inOrder() {
		box := stock[s].Outline.Bounds()
		if !sameShape(stock[s].Outline, outline.Rectangle(box)) {
			continue // rows need a rectangle
		}
		for serial := 1; serial <= stock[s].Count; serial++ {
			sheet := Sheet{Stock: s, Serial: serial}
			x, y, high := box.Low.X+r.Edge, box.Low.Y+r.Edge, 0.0
			for _, i := range order {
				b := boxes[i]
				for plan.Left[i] > 0 {
					if x+b.Width() > box.High.X-r.Edge+outline.Touch && high > 0 { // next row
						x, y, high = box.Low.X+r.Edge, y+high+r.Gap, 0
					}
					if x+b.Width() > box.High.X-r.Edge+outline.Touch || y+b.Height() > box.High.Y-r.Edge+outline.Touch {
						break
					}
					sheet.Places = append(sheet.Places, Place{i, turns[i], outline.Point{X: x - b.Low.X, Y: y - b.Low.Y}})
					plan.Left[i]--
					x, high = x+b.Width()+r.Gap, math.Max(high, b.Height())
				}
			}
			if len(sheet.Places) == 0 {
				break
			}
			sheet.finish(parts, &stock[s], r)
			plan.Sheets = append(plan.Sheets, sheet)
		}
	}
	return plan, nil
}

// LeastSheet is the area that no plan can do without: every part takes half a
// gap all round, and along the rim the sheet lends half a gap.
//
// Errors: outlines that cannot be grown.
func LeastSheet(parts []Part, r Rules) (float64, error) {
	sum := 0.0
	for _, p := range parts {
		grown, err := grow(p.Outline, r.Gap/2)
		if err != nil {
			return 0, err
		}
		sum += grown.Area() * float64(p.Count)
	}
	return sum, nil
}
