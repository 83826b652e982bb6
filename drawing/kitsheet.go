package drawing

import (
	"fmt"
	"math"
	"strings"

	"axlewright/kit"
	"axlewright/kit/outline"
	"axlewright/quantity"
)

// A4 upright, with what stays free along its edges, in mm.
const (
	a4Wide, a4High = 210.0, 297.0
	a4Margin       = 12.0
)

// KitSheet is the dimensioned A4 drawing of plate i of a kit.
func KitSheet(d *kit.Drawn, i int) Drawing {
	p := &d.Plates[i]
	s := kitSheet{plate: p, drawn: d}
	title := fmt.Sprintf("%s, piece %s: %s", p.Kit, p.Key(), p.Name)
	out := Drawing{
		Name: "sheet-" + fileWord(p.File()), Width: a4Wide, Height: a4High, Title: title,
		Desc: fmt.Sprintf("%s of %s, %s thick, %s by %s, with %d holes and cutouts.", title, p.Steel,
			lengthWords(p.Thickness), lengthWords(p.Outline.Bounds().Width()), lengthWords(p.Outline.Bounds().Height()), p.Pierces()-1),
	}
	paper := Layer{Name: "paper"}
	paper.Shapes = append(paper.Shapes, frame()...)
	table, top := s.foot()
	s.fit(Box{a4Margin + 16, 48, a4Wide - a4Margin - 6, top - 18})
	paper.Shapes = append(paper.Shapes, s.heading(i)...)
	paper.Shapes = append(paper.Shapes, table...)
	out.Layers = []Layer{paper, {"plate", s.picture()}, {"dimensions", s.dimensions()}}
	return out
}

// frame is the sheet's border.
func frame() []Shape {
	return []Shape{
		Rect{Box: Box{0, 0, a4Wide, a4High}, Fill: Paper},
		Rect{Box: Box{a4Margin - 4, a4Margin - 4, a4Wide - a4Margin + 4, a4High - a4Margin + 4}, Ink: Ink{Width: medium}},
	}
}

// A kitSheet is a sheet that is being drawn.
type kitSheet struct {
	plate *kit.Plate
	drawn *kit.Drawn
	scale paperScale
	left  float64 // mm on paper, of the plate's lower left corner
	foot0 float64
	low   outline.Point
}

// A paperScale is a scale of ISO 5455.
type paperScale struct {
	words string
	times float64
}

var paperScales = []paperScale{{"5:1", 5}, {"2:1", 2}, {"1:1", 1}, {"1:2", 0.5}, {"1:5", 0.2}, {"1:10", 0.1}, {"1:20", 0.05}, {"1:50", 0.02}}

// fit chooses the largest scale at which the plate goes into the room.
func (s *kitSheet) fit(room Box) {
	b := s.plate.Outline.Bounds()
	s.low = b.Low
	for _, s.scale = range paperScales {
		if b.Width()*1e3*s.scale.times <= room.Width() && b.Height()*1e3*s.scale.times <= room.Height() {
			break
		}
	}
	s.left = (room.Left+room.Right)/2 - b.Width()*500*s.scale.times
	s.foot0 = (room.Top+room.Bottom)/2 + b.Height()*500*s.scale.times
}

// at is where a place of the plate lies on paper.
func (s *kitSheet) at(p outline.Point) Point {
	k := 1e3 * s.scale.times
	return Point{s.left + (p.X-s.low.X)*k, s.foot0 - (p.Y-s.low.Y)*k}
}

// heading is the kit's name as large as a title, and what the piece is.
func (s *kitSheet) heading(i int) []Shape {
	p, d := s.plate, s.drawn
	hand := map[kit.Hand]string{kit.Left: "left", kit.Right: "right, mirror image of the left", kit.Neither: ""}[p.Hand]
	name := fmt.Sprintf("Piece %s  %s", p.Key(), p.Name)
	if hand != "" {
		name += " (" + hand + ")"
	}
	name, _ = Shorten(name, a4Wide-2*a4Margin-60, 4.2, true)
	x, right := a4Margin, a4Wide-a4Margin
	made := fmt.Sprintf("%s, %s thick, %d in a kit", p.Steel, lengthWords(p.Thickness), p.Count)
	figures := fmt.Sprintf("%s each, %.1f cm² face, %s of cut, %d pierces", quantity.Format(p.Mass(), quantity.Mass), p.Area()*1e4, lengthWords(p.CutLength()), p.Pierces())
	return []Shape{
		Text{At: Point{x, 19}, Words: p.Kit.String(), Size: 7, Bold: true},
		Text{At: Point{x, 27}, Words: name, Size: 4.2, Bold: true},
		Text{At: Point{x, 33}, Words: made, Size: normal},
		Text{At: Point{x, 37.5}, Words: figures, Size: normal},
		Text{At: Point{right, 16}, Words: "casting " + p.Casting, Size: large, Anchor: End},
		Text{At: Point{right, 21}, Words: "drawn " + d.Date.Format("2 January 2006"), Size: normal, Anchor: End},
		Text{At: Point{right, 25.5}, Words: fmt.Sprintf("sheet %d of %d, scale %s", i+2, len(d.Plates)+1, s.scale.words), Size: normal, Anchor: End},
		Text{At: Point{right, 30}, Words: "seal " + d.Seal[:8], Size: normal, Anchor: End, Tone: Grey},
		Line{Point{a4Margin - 4, 40}, Point{a4Wide - a4Margin + 4, 40}, Ink{Width: light}},
	}
}

// picture is the plate itself: welded edges heavy, others thin and dashed.
func (s *kitSheet) picture() []Shape {
	var shapes []Shape
	p := s.plate
	for i := range p.Outline {
		e := p.Outline.Edge(i)
		ink := Ink{Width: heavy}
		switch kit.Seam(p.Outline[i].Tag) {
		case kit.OpenSeam:
			ink = Ink{Width: light}
		case kit.VentSeam:
			ink = Ink{Width: heavy, Tone: Accent, Dash: []float64{0.6, 0.6}}
		}
		shapes = append(shapes, Path{Vertices: []Vertex{{s.at(e.From), e.Bulge}, {At: s.at(e.To)}}, Ink: ink})
	}
	for _, c := range p.Cutouts {
		shapes = append(shapes, Path{Vertices: s.vertices(c.Loop), Closed: true, Ink: Ink{Width: medium}})
		b := c.Loop.Bounds()
		shapes = append(shapes, s.label(c.Label, outline.Point{X: b.High.X, Y: b.High.Y}, 0))
	}
	for _, h := range p.Holes {
		at, r := s.at(h.At), h.Diameter*500*s.scale.times
		shapes = append(shapes, Circle{Centre: at, Radius: r, Ink: Ink{Width: medium}})
		arm := r + 1.5
		shapes = append(shapes,
			Line{Point{at.X - arm, at.Y}, Point{at.X + arm, at.Y}, Ink{Width: hairline}},
			Line{Point{at.X, at.Y - arm}, Point{at.X, at.Y + arm}, Ink{Width: hairline}},
			s.label(h.Label, h.At, h.Diameter/2))
	}
	for _, stroke := range p.Etched.Strokes {
		shapes = append(shapes, Path{Vertices: s.vertices(outline.Loop(stroke)), Ink: Ink{Width: hairline, Tone: Accent}})
	}
	return append(shapes, s.stations()...)
}

// label stands above and right of a hole.
func (s *kitSheet) label(words string, at outline.Point, reach float64) Shape {
	p := s.at(at)
	r := reach * 1e3 * s.scale.times * 0.75
	return Text{At: Point{p.X + r + 0.6, p.Y - r - 0.6}, Words: words, Size: normal, Bold: true, Clear: true}
}

// stations are crosses with their numbers beside the corners that follow them.
func (s *kitSheet) stations() []Shape {
	var shapes []Shape
	middle := s.at(s.plate.Outline.Bounds().Middle())
	for _, st := range s.plate.Stations {
		at := s.at(st.At)
		away := Point{at.X - middle.X, at.Y - middle.Y}
		size := math.Max(math.Hypot(away.X, away.Y), 1)
		n := Point{at.X + away.X/size*5, at.Y + away.Y/size*5}
		shapes = append(shapes,
			Line{Point{at.X - 1.5, at.Y}, Point{at.X + 1.5, at.Y}, Ink{Width: thin}},
			Line{Point{at.X, at.Y - 1.5}, Point{at.X, at.Y + 1.5}, Ink{Width: thin}},
			Circle{Centre: n, Radius: 2.4, Ink: Ink{Width: thin}, Fill: Paper},
			Text{At: Point{n.X, n.Y + 1.05}, Words: fmt.Sprint(st.Number), Size: normal, Anchor: Middle})
	}
	return shapes
}

func (s *kitSheet) vertices(l outline.Loop) []Vertex {
	list := make([]Vertex, len(l))
	for i, v := range l {
		list[i] = Vertex{s.at(v.At), v.Bulge}
	}
	return list
}

// dimensions are those over all; places of holes stand in the table, from the
// left and the lower side of the box that the dimensions span.
func (s *kitSheet) dimensions() []Shape {
	b := s.plate.Outline.Bounds()
	low, high := s.at(b.Low), s.at(b.High)
	ink := Ink{Width: thin}
	shapes := []Shape{
		Dimension{From: low, To: Point{high.X, low.Y}, Offset: -11, Words: lengthWords(b.Width()), Size: normal, Ink: ink},
	}
	// The upright figure is turned to read from the right, so that it takes no width.
	x := low.X - 11
	for _, part := range (Dimension{From: Point{low.X, high.Y}, To: low, Offset: -11, Size: normal, Ink: ink}).Parts() {
		if _, words := part.(Text); !words {
			shapes = append(shapes, part)
		}
	}
	return append(shapes, Text{At: Point{x - 1.2, (low.Y + high.Y) / 2}, Words: lengthWords(b.Height()), Size: normal, Anchor: Middle, Turn: 90, Clear: true})
}

// lengthWords prints a length in both systems.
func lengthWords(x float64) string { return quantity.Format(x, quantity.Length) }

// metricOnly is the first of both.
func metricOnly(x float64) string {
	metric, _, _ := strings.Cut(lengthWords(x), " (")
	return metric
}
