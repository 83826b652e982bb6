package web

import (
	"bytes"
	"strconv"

	"axlewright/document"
	"axlewright/drawing"
	"axlewright/quantity"
	"axlewright/shop"
)

// chartOf draws the readings of a step where a picture tells more than boxes:
// the lash round the wheel, a bar for each place against the range.
func chartOf(j *shop.Job, step shop.StepKey) string {
	if step != "lash" {
		return ""
	}
	var bars []bar
	var limit *shop.Limit
	for _, e := range j.InPlaces("lash", "lash") {
		if e.Value.SI != nil {
			bars = append(bars, bar{e.Place, *e.Value.SI, e.Verdict})
			limit = e.Limit
		}
	}
	if len(bars) < 2 {
		return ""
	}
	var out bytes.Buffer
	if err := drawing.WriteSVG(&out, barChart("lash", "Lash round the wheel", bars, limit)); err != nil {
		return ""
	}
	return out.String()
}

// A bar is one reading of a chart.
type bar struct {
	Name    string
	Value   float64
	Verdict shop.Verdict
}

// barChart draws bars with the allowed range as a hatched band behind them.
func barChart(name, title string, bars []bar, limit *shop.Limit) drawing.Drawing {
	const width, height, left, bottom, top = 150.0, 62.0, 4.0, 50.0, 10.0
	most, least := 0.0, bars[0].Value
	for _, b := range bars {
		most, least = max(most, b.Value), min(least, b.Value)
	}
	scale := most
	if limit != nil && limit.High != nil {
		scale = max(scale, *limit.High)
	}
	y := func(v float64) float64 { return bottom - (bottom-top)*v/(scale*1.1) }
	var shapes []drawing.Shape
	text := func(at drawing.Point, words string, size float64, a drawing.Anchor, bold bool) {
		shapes = append(shapes, drawing.Text{At: at, Words: words, Size: size, Anchor: a, Bold: bold, Clear: true})
	}
	if limit != nil && limit.High != nil {
		low := 0.0
		if limit.Low != nil {
			low = *limit.Low
		}
		band := drawing.Box{Left: left, Top: y(*limit.High), Right: width - left, Bottom: y(low)}
		shapes = append(shapes, drawing.Hatch{Outline: band.Corners(), Angle: 45, Spacing: 2, Ink: drawing.Ink{Width: 0.1}},
			drawing.Rect{Box: band, Ink: drawing.Ink{Width: 0.25}})
	}
	step := (width - 2*left) / float64(len(bars))
	for i, b := range bars {
		x := left + step*(float64(i)+0.5)
		box := drawing.Box{Left: x - step*0.22, Top: y(b.Value), Right: x + step*0.22, Bottom: bottom}
		shapes = append(shapes, drawing.Rect{Box: box, Ink: drawing.Ink{Width: 0.5}, Fill: drawing.Paper})
		text(drawing.Point{X: x, Y: y(b.Value) - 1.4}, b.Verdict.Sign()+" "+metric(b.Value), 3.2, drawing.Middle, true)
		text(drawing.Point{X: x, Y: bottom + 4.2}, b.Name, 3.2, drawing.Middle, false)
	}
	shapes = append(shapes, drawing.Line{From: drawing.Point{X: left, Y: bottom}, To: drawing.Point{X: width - left, Y: bottom}, Ink: drawing.Ink{Width: 0.6}})
	says := title + ": varies by " + quantity.Format(most-least, quantity.Length)
	if limit != nil {
		says += "; hatched: allowed " + document.RangeText(*limit, quantity.Length)
	}
	text(drawing.Point{X: left, Y: height - 2}, says, 3.2, drawing.Start, false)
	return drawing.Drawing{Name: name, Width: width, Height: height, Title: title, Desc: says, Layers: []drawing.Layer{{Name: "readings", Shapes: shapes}}}
}

// metric is a small length without its unit, which the line below the chart names.
func metric(si float64) string { return strconv.FormatFloat(si*1e3, 'f', 2, 64) }
