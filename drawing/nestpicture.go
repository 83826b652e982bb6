package drawing

import (
	"fmt"
	"math"

	"axlewright/kit"
	"axlewright/kit/outline"
	"axlewright/quantity"
)

// NestPicture shows what is cut from one sheet: plates with their keys, the
// offcuts that go back into stock hatched, and the yield in words.
func NestPicture(c *kit.Cutting, sheet int) Drawing {
	const wide, margin, top = 270.0, 8.0, 16.0
	s := &c.Plan.Sheets[sheet]
	stock := c.Plan.Stock[s.Stock].Outline
	box := stock.Bounds()
	k := (wide - 2*margin) / box.Width() // mm on paper for a metre
	high := top + box.Height()*k + 20
	at := func(p outline.Point) Point {
		return Point{margin + (p.X-box.Low.X)*k, top + (box.High.Y-p.Y)*k}
	}
	path := func(l outline.Loop, ink Ink, fill Tone) Path {
		v := make([]Vertex, len(l))
		for i := range l {
			v[i] = Vertex{at(l[i].At), l[i].Bulge}
		}
		return Path{Vertices: v, Closed: true, Ink: ink, Fill: fill}
	}
	rim := Layer{Name: "sheet", Shapes: []Shape{Rect{Box: Box{0, 0, wide, high}, Fill: Paper}, path(stock, Ink{Width: strong}, Paper)}}
	for _, o := range s.Offcuts {
		l := outline.Rectangle(o)
		corners := make([]Point, len(l))
		for i := range l {
			corners[i] = at(l[i].At)
		}
		rim.Shapes = append(rim.Shapes, Hatch{Outline: corners, Angle: 45, Spacing: 4, Ink: Ink{Width: hairline, Tone: Grey}},
			path(l, Ink{Width: light, Dash: []float64{2, 1}}, ""),
			Text{At: at(o.Middle()), Words: "offcut " + lengthWords(o.Width()) + " × " + lengthWords(o.Height()), Size: normal, Anchor: Middle, Clear: true})
	}
	plates, words := Layer{Name: "plates"}, Layer{Name: "keys"}
	for _, place := range s.Places {
		p := &c.Plates[place.Part]
		plates.Shapes = append(plates.Shapes, path(c.Plan.Outline(place), Ink{Width: thin}, Paper))
		for _, h := range p.Holes {
			m := h.At.Turned(place.Turn)
			plates.Shapes = append(plates.Shapes, Circle{Centre: at(outline.Point{X: m.X + place.Shift.X, Y: m.Y + place.Shift.Y}), Radius: h.Diameter / 2 * k, Ink: Ink{Width: hairline}})
		}
		for _, q := range p.Cutouts {
			plates.Shapes = append(plates.Shapes, path(q.Loop.Turned(place.Turn).Shifted(place.Shift), Ink{Width: hairline}, ""))
		}
		middle := p.Outline.Centroid().Turned(place.Turn)
		b := p.Outline.Bounds()
		if size := math.Min(b.Width(), b.Height()) * k; size > 2.2*small { // else there is no room for it
			words.Shapes = append(words.Shapes, Text{At: at(outline.Point{X: middle.X + place.Shift.X, Y: middle.Y + place.Shift.Y}), Words: p.Key(), Size: small, Anchor: Middle, Clear: true})
		}
	}
	y := c.Plan.YieldOf(sheet)
	title := fmt.Sprintf("%s, %s, sheet %s: %d pieces", c.Steel, lengthWords(c.Thickness), c.Plan.Name(sheet), len(s.Places))
	said := fmt.Sprintf("%s of the sheet became plates; offcuts not counted, %s.", quantity.Percent(y.OfSheet()), quantity.Percent(y.OfUsed()))
	rules := fmt.Sprintf("Gap %s, edge %s; rolling direction left to right. Checked with the exact outlines: nothing overlaps.",
		lengthWords(c.Plan.Rules.Gap), lengthWords(c.Plan.Rules.Edge))
	words.Shapes = append(words.Shapes,
		Text{At: Point{margin, 10}, Words: title, Size: 5, Bold: true},
		Text{At: Point{margin, high - 10}, Words: said, Size: large},
		Text{At: Point{margin, high - 4.5}, Words: rules, Size: normal})
	return Drawing{Name: fileWord("nest-" + c.Steel + "-" + c.Plan.Name(sheet)), Width: wide, Height: high, Title: title, Desc: said,
		Layers: []Layer{rim, plates, words}}
}
