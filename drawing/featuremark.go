package drawing

import (
	"strings"

	"axlewright/casting"
)

// mark is what stands cast on the web: a number, the sign of the foundry, a date.
func (p *pen) mark() {
	pad := Box{8, 8, 52, 36}
	p.add(Rect{Box: pad, Ink: faint, Fill: Paper})
	p.understood = true
	switch {
	case p.answer == "":
		p.shapes = nil
		p.plan()
		p.add(Rect{Box: Box{24, 18, 40, 26}, Ink: asked})
		words := "24"
		switch p.feature.Sort {
		case casting.FoundryMark:
			words = "mark"
		case casting.Date:
			words = "date"
		}
		p.add(Text{At: Point{32, 23.2}, Words: words, Size: normal, Anchor: Middle, Tone: Accent})
	case p.says("none", "no"):
		p.add(Rect{Box: Box{14, 13, 46, 31}, Ink: Ink{Width: thin, Tone: Grey, Dash: []float64{0.8, 0.8}}})
	case p.says("ground", "filed"):
		p.add(Hatch{Outline: Box{13, 13, 47, 31}.Corners(), Angle: 20, Spacing: 1, Ink: faint}, Rect{Box: Box{13, 13, 47, 31}, Ink: told})
	case p.says("anchor"):
		p.anchor()
	case p.says("wheel"):
		p.add(Circle{Centre: centre, Radius: 9, Ink: told}, Circle{Centre: centre, Radius: 2, Ink: told})
		for i := range 6 {
			p.line(contour, around(centre, 2, 60*float64(i)), around(centre, 9, 60*float64(i)))
		}
	case p.says("clock"):
		p.add(Circle{Centre: centre, Radius: 10, Ink: told})
		for i := range 12 {
			p.line(contour, around(centre, 8.4, 30*float64(i)), around(centre, 10, 30*float64(i)))
		}
		p.line(told, around(centre, 7, 60), centre, around(centre, 5, 0))
	case p.says("dots", "dot"):
		n, _ := p.count()
		for i := range max(n, 1) {
			p.add(Circle{Centre: Point{centre.X + 8*(float64(i)-float64(max(n, 1)-1)/2), centre.Y}, Radius: 2.2, Ink: contour, Fill: Black})
		}
	case p.feature.Sort == casting.Date && p.says("year"):
		for i, x := range []float64{14, 31} {
			p.add(Rect{Box: Box{x, 16, x + 15, 28}, Ink: contour, Fill: Paper},
				Text{At: Point{x + 7.5, 24.2}, Words: []string{"year", "week"}[i], Size: normal, Anchor: Middle})
		}
	default:
		p.raised(strings.Split(p.answer, " over "))
	}
}

// raised writes cast letters, one row above the other.
func (p *pen) raised(rows []string) {
	const most = 40.0 // mm of width
	size := 15.0 / float64(len(rows)) * 1.2
	for _, r := range rows {
		if w, known := letters(r, true); known && w*size/1000 > most {
			size = most * 1000 / w
		}
	}
	for i, r := range rows {
		y := centre.Y + size*0.36 + (float64(i)-float64(len(rows)-1)/2)*size*1.05
		p.add(Text{At: Point{centre.X, y}, Words: r, Size: size, Anchor: Middle, Bold: true})
	}
}

func (p *pen) anchor() {
	x, y := centre.X, centre.Y
	p.add(Circle{Centre: Point{x, y - 9}, Radius: 1.8, Ink: told})
	p.line(told, Point{x, y - 7}, Point{x, y + 9})
	p.line(told, Point{x - 5, y - 4}, Point{x + 5, y - 4})
	p.add(Path{Vertices: []Vertex{{At: Point{x - 8, y + 3}, Bulge: 0.6}, {At: Point{x + 8, y + 3}}}, Ink: told})
}
