package drawing

import (
	"math"
	"strconv"
	"strings"

	"axlewright/casting"
)

// The size of a picture of a feature, mm.
const (
	featureWidth  = 60.0
	featureHeight = 44.0
)

var centre = Point{featureWidth / 2, featureHeight / 2}

// Feature draws a feature of a casting: with an answer as a casting looks that
// gives it, without one as the place to look at or to measure. Name is the
// picture's own on its page.
//
// All is drawn from the words of the catalogue: counts, shapes, sides, threads,
// sizes. Words that mean nothing to the pen are written instead.
func Feature(name string, f *casting.Feature, answer string) Drawing {
	d := Drawing{Name: name, Width: featureWidth, Height: featureHeight, Title: f.Name, Desc: f.Ask}
	if answer != "" {
		d.Title, d.Desc = f.Name+": "+answer, "How "+f.Name+" looks where the answer is "+answer+"."
	}
	p := pen{feature: f, answer: answer, words: strings.Fields(strings.ToLower(answer))}
	draw := map[casting.Sort]func(*pen){
		casting.Rib: (*pen).rib, casting.Boss: (*pen).boss, casting.Studs: (*pen).studs, casting.Pad: (*pen).flat, casting.Plug: (*pen).plug,
		casting.Thread: (*pen).thread, casting.Number: (*pen).mark, casting.FoundryMark: (*pen).mark, casting.Date: (*pen).mark,
		casting.Paint: (*pen).paint, casting.OldWork: (*pen).oldWork,
		casting.Bore: (*pen).bore, casting.Pitch: (*pen).pitch, casting.Width: (*pen).width,
	}[f.Sort]
	if draw != nil {
		draw(&p)
	}
	if answer != "" && !p.understood {
		p.shapes = nil
		p.write(centre, answer, large)
	}
	d.Layers = []Layer{{Name: "feature", Shapes: p.shapes}}
	return d
}

// A pen draws one feature.
type pen struct {
	feature    *casting.Feature
	answer     string
	words      []string
	shapes     []Shape
	understood bool // the answer's words meant something
}

var (
	contour = Ink{Width: medium}
	faint   = Ink{Width: thin, Tone: Grey}
	told    = Ink{Width: heavy} // what the picture is about
	asked   = Ink{Width: strong, Tone: Accent, Dash: []float64{1.6, 1}}
)

func (p *pen) add(s ...Shape) { p.shapes = append(p.shapes, s...) }

func (p *pen) line(ink Ink, at ...Point) {
	v := make([]Vertex, len(at))
	for i := range at {
		v[i].At = at[i]
	}
	p.add(Path{Vertices: v, Ink: ink})
}

func (p *pen) closed(ink Ink, fill Tone, at ...Point) {
	v := make([]Vertex, len(at))
	for i := range at {
		v[i].At = at[i]
	}
	p.add(Path{Vertices: v, Closed: true, Ink: ink, Fill: fill})
}

func (p *pen) write(at Point, words string, size float64) {
	p.add(Text{At: Point{at.X, at.Y + size/3}, Words: words, Size: size, Anchor: Middle, Bold: true, Clear: true})
}

// says reports whether one of the words is in the answer.
func (p *pen) says(any ...string) bool {
	for _, w := range any {
		for _, have := range p.words {
			if strings.Trim(have, ",.;") == w {
				p.understood = true
				return true
			}
		}
	}
	return false
}

// is reports whether one of the words is in the name of the feature.
func (p *pen) is(any ...string) bool {
	for _, w := range any {
		if strings.Contains(strings.ToLower(p.feature.Name), w) {
			return true
		}
	}
	return false
}

// count is the first number in the answer, written or in figures.
func (p *pen) count() (int, bool) {
	for _, w := range p.words {
		for n, name := range []string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"} {
			if w == name && n > 0 {
				p.understood = true
				return n, true
			}
		}
		if n, err := strconv.Atoi(w); err == nil && n > 0 && n <= 36 {
			p.understood = true
			return n, true
		}
	}
	return 0, false
}

// around is a place on a circle; angles are degrees, anticlockwise from the right.
func around(c Point, r, degrees float64) Point {
	a := degrees * math.Pi / 180
	return Point{c.X + r*math.Cos(a), c.Y - r*math.Sin(a)}
}

// from above: case flange on the left, pinion flange on the right.
func (p *pen) plan() {
	p.closed(contour, Paper, Point{10, 9}, Point{13, 9}, Point{45, 15}, Point{45, 29}, Point{13, 35}, Point{10, 35})
	p.add(Rect{Box: Box{7, 3, 10, 41}, Ink: contour, Fill: Paper}, Rect{Box: Box{45, 12, 48, 32}, Ink: contour, Fill: Paper},
		Rect{Box: Box{48, 19, 55, 25}, Ink: faint, Fill: Paper}, Rect{Box: Box{3, 10, 7, 15}, Ink: contour, Fill: Paper}, Rect{Box: Box{3, 29, 7, 34}, Ink: contour, Fill: Paper})
}

// end draws the casting seen from the pinion flange.
func (p *pen) end(studs int) {
	p.add(Circle{Centre: centre, Radius: 20, Ink: contour, Fill: Paper}, Circle{Centre: centre, Radius: 13.5, Ink: faint}, Circle{Centre: centre, Radius: 8, Ink: contour, Fill: Paper},
		Circle{Centre: centre, Radius: 3, Ink: faint})
	for i := range studs {
		p.add(Circle{Centre: around(centre, 16.8, 90+360*float64(i)/float64(studs)), Radius: 1.1, Ink: told, Fill: Paper})
	}
}

// edge is half the width of the body seen from above, at x.
func edge(x float64) float64 { return 13 - (x-13)*6/32 }

func (p *pen) rib() {
	if p.is("web") || p.says("solid", "window") {
		p.web()
		return
	}
	p.plan()
	n, counted := p.count()
	curved := p.says("curved", "bent")
	p.says("straight")
	if !counted {
		p.closed(asked, "", Point{14, 10.5}, Point{43.5, 16}, Point{43.5, 28}, Point{14, 33.5})
		return
	}
	for i := range n {
		at := 0.0
		if n > 1 {
			at = -1 + 2*float64(i)/float64(n-1)
		}
		at *= 0.8
		from, to := Point{13.5, 22 + at*edge(13.5)}, Point{44.5, 22 + at*edge(44.5)}
		v := []Vertex{{At: from}, {At: to}}
		if curved {
			v[0].At.Y, v[1].At.Y, v[0].Bulge = 22+at*edge(13.5)*0.75-3, 22+at*edge(44.5)*0.9-1, 0.12
		}
		p.add(Path{Vertices: v, Ink: told})
	}
}

// web is what stands between the two bores of the pinion, cut lengthwise.
func (p *pen) web() {
	p.closed(contour, Paper, Point{8, 8}, Point{52, 12}, Point{52, 32}, Point{8, 36})
	p.line(Ink{Width: thin, Dash: []float64{6, 1.5, 1, 1.5}}, Point{4, 22}, Point{56, 22})
	p.add(Rect{Box: Box{8, 16, 14, 28}, Ink: contour, Fill: Paper}, Rect{Box: Box{46, 16, 52, 28}, Ink: contour, Fill: Paper})
	middle := Box{18, 15, 42, 29}
	switch {
	case p.says("window", "open"):
		p.add(Hatch{Outline: middle.Corners(), Angle: 45, Spacing: 1.8, Ink: faint}, Rect{Box: middle, Ink: contour}, Rect{Box: Box{23, 18, 37, 26}, Ink: told, Fill: Paper})
	case p.says("solid", "closed"):
		p.add(Hatch{Outline: middle.Corners(), Angle: 45, Spacing: 1.8, Ink: faint}, Rect{Box: middle, Ink: told})
	default:
		p.add(Rect{Box: middle, Ink: asked})
	}
}

func (p *pen) boss() {
	p.end(0)
	side := 0.0
	switch {
	case p.says("left"):
		side = -1
	case p.says("right"):
		side = 1
	}
	at := func(side float64) Point { return Point{centre.X + side*10.8, centre.Y - 6} }
	welded := p.says("welded")
	switch {
	case side == 0 && p.says("none", "no"):
		for _, s := range []float64{-1, 1} {
			p.add(Circle{Centre: at(s), Radius: 3.6, Ink: Ink{Width: thin, Tone: Grey, Dash: []float64{0.8, 0.8}}})
		}
	case p.answer == "":
		p.add(Circle{Centre: at(-1), Radius: 4.2, Ink: asked}, Circle{Centre: at(1), Radius: 4.2, Ink: asked})
	case p.is("trough", "channel", "oil"):
		x := centre.X + side*11
		p.add(Rect{Box: Box{x - 2.6, centre.Y - 11, x + 2.6, centre.Y + 11}, Ink: told, Fill: Paper})
		p.line(contour, Point{x, centre.Y - 11}, Point{x, centre.Y + 11})
	case side == 0 && !welded:
	default:
		if side == 0 {
			side = 1
		}
		c := at(side)
		p.add(Circle{Centre: c, Radius: 3.8, Ink: told, Fill: Paper}, Circle{Centre: c, Radius: 1.2, Ink: contour})
		if welded {
			for i := range 12 {
				p.add(Circle{Centre: around(c, 4.8, 30*float64(i)), Radius: 1.1, Ink: contour, Fill: Paper})
			}
		}
	}
}

func (p *pen) studs() {
	n, counted := p.count()
	if counted {
		p.end(n)
		p.write(centre, strconv.Itoa(n), large)
		return
	}
	p.end(0)
	p.add(Circle{Centre: centre, Radius: 16.8, Ink: asked})
}

// flat is a pad: a face raised or machined on the side of the body.
func (p *pen) flat() {
	p.plan()
	pad := Box{20, 18, 34, 26}
	switch {
	case p.answer == "":
		p.add(Rect{Box: pad, Ink: asked})
	case p.says("none", "no"):
		p.add(Rect{Box: pad, Ink: Ink{Width: thin, Tone: Grey, Dash: []float64{0.8, 0.8}}})
	case p.says("round"):
		p.add(Circle{Centre: Point{27, 22}, Radius: 5, Ink: told, Fill: Paper})
	case p.says("machined", "flat", "square", "yes", "long", "short"):
		if p.says("long") {
			pad.Right = 40
		}
		p.add(Rect{Box: pad, Ink: told, Fill: Paper}, Hatch{Outline: pad.Corners(), Angle: 0, Spacing: 1.4, Ink: faint})
	}
}

func (p *pen) plug() {
	p.add(Circle{Centre: centre, Radius: 15, Ink: contour, Fill: Paper})
	polygon := func(n int, r, turn float64, ink Ink) {
		var at []Point
		for i := range n {
			at = append(at, around(centre, r, turn+360*float64(i)/float64(n)))
		}
		p.closed(ink, Paper, at...)
	}
	switch {
	case p.says("square"):
		polygon(4, 9, 45, told)
	case p.says("hexagon", "hex"):
		polygon(6, 10, 0, told)
	case p.says("socket"):
		p.add(Circle{Centre: centre, Radius: 11, Ink: told, Fill: Paper})
		polygon(6, 6, 0, told)
		p.add(Hatch{Outline: Box{centre.X - 3, centre.Y - 3, centre.X + 3, centre.Y + 3}.Corners(), Angle: 45, Spacing: 1, Ink: faint})
	case p.says("slot"):
		p.add(Rect{Box: Box{centre.X - 10, centre.Y - 1.2, centre.X + 10, centre.Y + 1.2}, Ink: told, Fill: Paper})
	case p.says("no", "none"):
		p.add(Circle{Centre: centre, Radius: 15, Ink: Ink{Width: heavy, Dash: []float64{1.4, 1.4}}, Fill: Paper})
	case p.answer == "":
		p.add(Circle{Centre: centre, Radius: 10, Ink: asked})
	}
}

// paint is a corner of the casting in which old colour is left; which colour
// is a word, for a picture in black and white.
func (p *pen) paint() {
	p.closed(contour, Paper, Point{8, 6}, Point{52, 6}, Point{52, 16}, Point{24, 16}, Point{24, 38}, Point{8, 38})
	corner := []Point{{24, 16}, {40, 16}, {24, 32}}
	p.understood = true
	if p.says("bare", "none") || p.answer == "" {
		p.closed(asked, "", corner...)
	} else {
		p.add(Hatch{Outline: corner, Angle: 45, Spacing: 1, Crossed: true, Ink: faint})
		p.closed(told, "", corner...)
	}
	if p.answer != "" {
		p.add(Text{At: Point{43, 30}, Words: p.answer, Size: large, Anchor: Middle, Bold: true})
	}
}

// oldWork is a bore with what somebody did to it after it was cast.
func (p *pen) oldWork() {
	c := Point{22, centre.Y}
	p.add(Circle{Centre: c, Radius: 15, Ink: contour, Fill: Paper}, Circle{Centre: c, Radius: 9, Ink: contour, Fill: Paper})
	p.add(Rect{Box: Box{37, 14, 55, 30}, Ink: contour, Fill: Paper})
	weld := p.says("weld", "welded")
	if p.says("sleeve", "bush") {
		p.add(Circle{Centre: c, Radius: 9, Ink: told, Fill: Paper}, Circle{Centre: c, Radius: 7, Ink: told, Fill: Paper})
	}
	if weld {
		for y := 13.0; y <= 31; y += 2 {
			p.add(Circle{Centre: Point{37.4, y}, Radius: 1.5, Ink: told, Fill: Paper})
		}
	}
	if p.answer == "" {
		p.add(Circle{Centre: c, Radius: 8, Ink: asked}, Rect{Box: Box{35, 12, 40, 32}, Ink: asked})
	}
	p.says("none", "no")
}
