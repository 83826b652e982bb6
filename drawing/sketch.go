package drawing

import "math"

// A sketch is a line drawing in the making: what a fitter draws on the bench to
// show where to measure and which way something goes.
type sketch struct{ shapes []Shape }

// The size of a sketch on paper. It stands on a phone's width, so that its
// letters are read there.
const (
	sketchWidth  = 80
	sketchHeight = 54
	sketchText   = 3.3
)

func (s *sketch) drawing(name, title, desc string) Drawing {
	return Drawing{Name: name, Width: sketchWidth, Height: sketchHeight, Title: title, Desc: desc, Layers: []Layer{{Name: "sketch", Shapes: s.shapes}}}
}

func (s *sketch) add(shapes ...Shape) { s.shapes = append(s.shapes, shapes...) }

// part is an outline in front of what was drawn before it.
func (s *sketch) part(points ...Point) { s.add(closed(Paper, medium, points...)) }

// casting is cut iron: hatched.
func (s *sketch) casting(points ...Point) {
	s.add(closed(Paper, 0, points...), Hatch{Outline: points, Angle: 45, Spacing: 1.8, Ink: Ink{Width: thin, Tone: Grey}}, closed("", medium, points...))
}

// solid is what the eye should go to.
func (s *sketch) solid(points ...Point) { s.add(closed(Accent, light, points...)) }

func closed(fill Tone, width float64, points ...Point) Path {
	p := Path{Closed: true, Fill: fill, Ink: Ink{Width: width}}
	for _, at := range points {
		p.Vertices = append(p.Vertices, Vertex{At: at})
	}
	return p
}

func rect(left, top, right, bottom float64) []Point {
	return Box{left, top, right, bottom}.Corners()
}

func (s *sketch) line(width float64, points ...Point) {
	for i := range points[1:] {
		s.add(Line{From: points[i], To: points[i+1], Ink: Ink{Width: width}})
	}
}

func (s *sketch) axis(from, to Point) {
	s.add(Line{From: from, To: to, Ink: Ink{Width: thin, Tone: Grey, Dash: []float64{5, 1.2, 0.8, 1.2}}})
}

func (s *sketch) dashed(from, to Point) {
	s.add(Line{From: from, To: to, Ink: Ink{Width: light, Dash: []float64{1.6, 1}}})
}

func (s *sketch) circle(x, y, radius float64) {
	s.add(Circle{Centre: Point{x, y}, Radius: radius, Ink: Ink{Width: medium}, Fill: Paper})
}

// words stand at a place; bold is what to do.
func (s *sketch) words(x, y float64, text string, anchor Anchor) {
	s.add(Text{At: Point{x, y}, Words: text, Size: sketchText, Anchor: anchor, Clear: true})
}

func (s *sketch) bold(x, y float64, text string, anchor Anchor) {
	s.add(Text{At: Point{x, y}, Words: text, Size: sketchText, Anchor: anchor, Bold: true, Clear: true})
}

// arrow says which way: thick, with a head.
func (s *sketch) arrow(from, to Point) {
	angle := math.Atan2(to.Y-from.Y, to.X-from.X)
	at := func(back, side float64) Point {
		sin, cos := math.Sincos(angle)
		return Point{to.X - back*cos - side*sin, to.Y - back*sin + side*cos}
	}
	s.add(Line{From: from, To: at(2.4, 0), Ink: Ink{Width: heavy, Tone: Accent}}, closed(Accent, 0, to, at(3.2, 1.7), at(3.2, -1.7)))
}

// pointer leads from words to what they name.
func (s *sketch) pointer(from, to Point) {
	s.add(Line{From: from, To: to, Ink: Ink{Width: thin}}, Circle{Centre: to, Radius: 0.6, Fill: Black})
}

// gap is a distance to be read.
func (s *sketch) gap(from, to Point, offset float64, words string) {
	s.add(Dimension{From: from, To: to, Offset: offset, Words: words, Size: sketchText, Ink: Ink{Width: light}})
}

// dial is a dial gauge whose stem touches at a place.
func (s *sketch) dial(centre, touch Point) {
	s.line(strong, centre, touch)
	s.circle(centre.X, centre.Y, 4)
	s.line(light, centre, Point{centre.X + 1.8, centre.Y - 2.4})
	s.add(Circle{Centre: touch, Radius: 0.8, Fill: Black})
}

// bearing is a taper roller bearing in section, on one side of its axis. The
// small ends of its rollers are at left, wherever that is.
func (s *sketch) bearing(left, top, right, bottom float64) {
	s.part(rect(min(left, right), top, max(left, right), bottom)...)
	h, in := bottom-top, math.Copysign(1.2, right-left)
	s.part(Point{left + in, top + h*0.36}, Point{right - in, top + h*0.22}, Point{right - in, bottom - h*0.22}, Point{left + in, bottom - h*0.36})
}

// arc is a piece of a circle as a row of places.
func arc(centre Point, radius, from, to float64) []Point {
	const steps = 24
	var points []Point
	for i := range steps + 1 {
		sin, cos := math.Sincos((from + (to-from)*float64(i)/steps) * math.Pi / 180)
		points = append(points, Point{centre.X + radius*cos, centre.Y - radius*sin})
	}
	return points
}
