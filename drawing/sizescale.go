package drawing

import (
	"math"

	"axlewright/casting"
	"axlewright/quantity"
)

// SizeScale draws what the likeliest variants measure at a feature, each with
// the range that nineteen of twenty castings lie in, along one scale. A reading
// is a line across all of them; where there is none, it is not a number.
func SizeScale(name, feature string, sizes []casting.SizeOf, reading float64) Drawing {
	const left, right, top, row = 3.0, 69.0, 7.5, 9.5
	low, high := math.Inf(1), math.Inf(-1)
	take := func(a, b float64) { low, high = math.Min(low, a), math.Max(high, b) }
	for _, s := range sizes {
		take(s.Mean-s.Reach, s.Mean+s.Reach)
	}
	if !math.IsNaN(reading) {
		take(reading, reading)
	}
	margin := math.Max((high-low)*0.08, 1e-5)
	low, high = low-margin, high+margin
	x := func(v float64) float64 { return left + (right-left)*(v-low)/(high-low) }
	var shapes []Shape
	text := func(at Point, words string, size float64, a Anchor, bold bool) {
		shapes = append(shapes, Text{At: at, Words: words, Size: size, Anchor: a, Bold: bold, Clear: true})
	}
	desc := feature + ": "
	for i, s := range sizes {
		y := top + row*float64(i)
		words := quantity.FormatSpread(s.Mean, s.Reach, quantity.Length)
		from, to := x(s.Mean-s.Reach), x(s.Mean+s.Reach)
		shapes = append(shapes, Line{From: Point{from, y}, To: Point{to, y}, Ink: Ink{Width: heavy}},
			Line{From: Point{from, y - 1.2}, To: Point{from, y + 1.2}, Ink: Ink{Width: medium}}, Line{From: Point{to, y - 1.2}, To: Point{to, y + 1.2}, Ink: Ink{Width: medium}},
			Circle{Centre: Point{x(s.Mean), y}, Radius: 1.3, Ink: Ink{Width: medium}, Fill: Paper})
		text(Point{left, y - 2.8}, s.Variant+"  "+words, normal, Start, i == 0)
		desc += s.Variant + " " + words + "; "
	}
	bottom := top + row*float64(len(sizes))
	if !math.IsNaN(reading) {
		shapes = append(shapes, Line{From: Point{x(reading), 1}, To: Point{x(reading), bottom - 3}, Ink: Ink{Width: strong, Tone: Accent, Dash: []float64{1.6, 1}}})
		words := "measured " + quantity.Format(reading, quantity.Length)
		text(Point{math.Min(math.Max(x(reading), 24), 48), bottom + 1}, words, small, Middle, true)
		desc += words
		bottom += 3
	}
	return Drawing{Name: name, Width: 72, Height: bottom, Title: feature + " of the likeliest variants", Desc: desc, Layers: []Layer{{Name: "sizes", Shapes: shapes}}}
}
