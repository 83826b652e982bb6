package drawing

import (
	"fmt"
	"math"

	"axlewright/casting"
	"axlewright/quantity"
)

// ControlChart draws the readings of a station in the order in which they came,
// with mean and limits. A new casting is the last point, apart from the others;
// where there is none it is not a number. A drift is taken out of all of them,
// so that the limits hold for each.
func ControlChart(name string, h *casting.StationHistory, fresh float64) Drawing {
	const width, height, left, right, top, bottom = 72.0, 40.0, 3.0, 69.0, 9.0, 31.0
	d := Drawing{Name: name, Width: width, Height: height, Title: fmt.Sprintf("Station %d, %s: readings so far", h.Station, h.Name), Desc: h.Sentence}
	if h.Chart == nil {
		d.Height = 8
		d.Layers = []Layer{{Name: "chart", Shapes: []Shape{Text{At: Point{left, 5}, Words: "no chart before two castings were measured", Size: normal}}}}
		return d
	}
	points := h.Chart.Points
	level := fresh
	if h.Drifts {
		level -= h.Trend.Slope * float64(h.Castings+1) / 2
	}
	low, high := points[0].Low, points[0].High
	for _, p := range points {
		low, high = math.Min(low, math.Min(p.Low, p.Value)), math.Max(high, math.Max(p.High, p.Value))
	}
	n := len(points)
	if !math.IsNaN(fresh) {
		low, high, n = math.Min(low, level), math.Max(high, level), n+1
	}
	margin := math.Max((high-low)*0.06, 1e-6)
	y := func(v float64) float64 { return bottom - (bottom-top)*(v-low+margin)/(high-low+2*margin) }
	x := func(i int) float64 { return left + (right-left)*(float64(i)+0.5)/float64(n) }
	var shapes []Shape
	text := func(at Point, words string, a Anchor, bold bool) {
		shapes = append(shapes, Text{At: at, Words: words, Size: small, Anchor: a, Bold: bold, Clear: true})
	}
	limit := Ink{Width: light, Dash: []float64{1.6, 1}}
	for i, p := range points {
		half := (right - left) / float64(n) / 2
		shapes = append(shapes, Line{From: Point{x(i) - half, y(p.Low)}, To: Point{x(i) + half, y(p.Low)}, Ink: limit}, Line{From: Point{x(i) - half, y(p.High)}, To: Point{x(i) + half, y(p.High)}, Ink: limit})
	}
	shapes = append(shapes, Line{From: Point{left, y(h.Chart.Centre)}, To: Point{right, y(h.Chart.Centre)}, Ink: Ink{Width: light}})
	var run []Vertex
	for i, p := range points {
		run = append(run, Vertex{At: Point{x(i), y(p.Value)}})
	}
	shapes = append(shapes, Path{Vertices: run, Ink: Ink{Width: thin, Tone: Grey}})
	for i, p := range points {
		at := Point{x(i), y(p.Value)}
		if p.Out {
			shapes = append(shapes, Line{From: Point{at.X - 1.3, at.Y - 1.3}, To: Point{at.X + 1.3, at.Y + 1.3}, Ink: Ink{Width: strong}},
				Line{From: Point{at.X - 1.3, at.Y + 1.3}, To: Point{at.X + 1.3, at.Y - 1.3}, Ink: Ink{Width: strong}})
			continue
		}
		shapes = append(shapes, Circle{Centre: at, Radius: 0.7, Ink: Ink{Width: thin}, Fill: Black})
	}
	if !math.IsNaN(fresh) {
		at := Point{x(n - 1), y(level)}
		shapes = append(shapes, Circle{Centre: at, Radius: 1.7, Ink: Ink{Width: strong, Tone: Accent}, Fill: Paper}, Circle{Centre: at, Radius: 0.6, Ink: Ink{Width: thin, Tone: Accent}, Fill: Accent})
	}
	last := points[len(points)-1]
	about := string(h.Chart.Kind)
	if h.Drifts {
		about += ", the drift taken out"
	}
	text(Point{left, 3.5}, "limits "+quantity.FormatRange(last.Low, last.High, quantity.Length), Start, false)
	text(Point{left, 7}, about, Start, false)
	says := "mean " + quantity.Format(h.Chart.Centre, quantity.Length)
	if !math.IsNaN(fresh) {
		says += "; ring: this casting, " + quantity.Format(fresh, quantity.Length)
		d.Desc += "; this casting " + quantity.Format(fresh, quantity.Length)
	}
	text(Point{left, 35}, says, Start, true)
	text(Point{left, 38.7}, "oldest first; × out of limits", Start, false)
	d.Layers = []Layer{{Name: "chart", Shapes: shapes}}
	return d
}
