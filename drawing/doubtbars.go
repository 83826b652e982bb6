package drawing

import (
	"fmt"
	"strings"

	"axlewright/assess"
	"axlewright/axle"
	"axlewright/quantity"
)

// mostBars is how many figures the picture names; the others are one bar.
const mostBars = 8

// DoubtBars draws which figures cause the doubt of the answer: a bar for each,
// largest first, with its share, its name and where it came from.
func DoubtBars(a *assess.Advice) Drawing {
	const width, left, right, pitch = 150.0, 62.0, 118.0, 8.4
	d := Drawing{Name: "doubt", Width: width, Title: "What the doubt hangs on: the part of each figure in it"}
	shares := knownShares(a.Shares)
	shares = shares[:min(mostBars, len(shares))]
	rest, most := 1.0, 0.01
	for _, s := range shares {
		rest -= s.Share
		most = max(most, s.Share)
	}
	most = max(most, rest)

	var bars, labels []Shape
	var told []string
	y := 2.0
	row := func(figure, origin string, share float64, fill func(Box) []Shape) {
		bar := Box{left, y + 1.5, left + max((right-left)*share/most, 0.4), y + pitch - 1.5}
		bars = append(bars, fill(bar)...)
		bars = append(bars, Rect{Box: bar, Ink: Ink{Width: thin}})
		name := words{size: small, width: left - 4}
		name.add(figure, false, 2)
		for _, shape := range name.shapes(0, y+pitch/2) {
			t := shape.(Text)
			t.At.X, t.Anchor = left-2, End
			labels = append(labels, t)
		}
		value := Text{At: Point{bar.Right + 1.5, y + pitch/2 + small*0.28}, Words: quantity.Chance(share), Size: normal, Anchor: Start, Bold: true}
		from, _ := Shorten(origin, width-value.Box().Right-2.5, small, false)
		labels = append(labels, value, Text{At: Point{value.Box().Right + 1.5, value.At.Y}, Words: from, Size: small, Anchor: Start})
		told = append(told, strings.TrimSpace(fmt.Sprintf("%s %s %s", Clean(figure), quantity.Chance(share), Clean(origin))))
		y += pitch
	}
	for _, s := range shares {
		row(s.Figure, string(s.Origin), s.Share, func(b Box) []Shape { return originFill(s.Origin, b) })
	}
	if rest > 0.005 && len(shares) > 0 {
		row("all else, and figures that act together", "", rest, func(Box) []Shape { return nil })
	}
	if len(shares) == 0 {
		labels = append(labels, Text{At: Point{2, y + 4}, Words: "No single figure causes a share of the doubt that the draws can tell.", Size: normal, Anchor: Start})
		told = []string{"no single figure causes a share that the draws can tell"}
		y += pitch
	}
	bars = append(bars, Line{Point{left, 2}, Point{left, y}, Ink{Width: light}})
	d.Height = y + 2
	d.Desc = "Shares of the doubt about the give-out torque: " + strings.Join(told, "; ") + "."
	d.Layers = []Layer{{"bars", bars}, {"labels", labels}}
	return d
}

// knownShares leaves out shares that are no numbers.
func knownShares(all []assess.Share) []assess.Share {
	var list []assess.Share
	for _, s := range all {
		if s.Share > 0 && drawable(s.Share) {
			list = append(list, s)
		}
	}
	return list
}

// originFill tells the surest origin from the least sure without words: full
// for measured, ever more open to assumed.
func originFill(o axle.Origin, b Box) []Shape {
	h := Hatch{Outline: b.Corners(), Ink: Ink{Width: thin}}
	switch o {
	case axle.Measured:
		return []Shape{Rect{Box: b, Fill: Black}}
	case axle.Maker:
		h.Angle, h.Spacing = 0, 0.8
	case axle.Computed:
		h.Angle, h.Spacing = 90, 0.9
	case axle.Trade:
		h.Angle, h.Spacing = 45, 1.1
	default:
		h.Angle, h.Spacing, h.Crossed = 45, 1.6, true
	}
	return []Shape{h}
}
