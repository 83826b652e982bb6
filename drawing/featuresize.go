package drawing

// sized is the figure at a dimension: the reading, or a question mark.
func (p *pen) sized() string {
	p.understood = true
	if p.answer == "" {
		return "?"
	}
	return p.answer
}

func (p *pen) bore() {
	words := p.sized()
	p.add(Circle{Centre: centre, Radius: 19, Ink: contour, Fill: Paper})
	ring := make([]Point, 0, 48)
	for i := range 48 {
		ring = append(ring, around(centre, 19, 7.5*float64(i)))
	}
	p.add(Hatch{Outline: ring, Angle: 45, Spacing: 1.8, Ink: faint}, Circle{Centre: centre, Radius: 13, Ink: told, Fill: Paper})
	for _, a := range []float64{60, 120} {
		p.line(Ink{Width: thin, Tone: Accent, Dash: []float64{1.6, 1}}, around(centre, 13, a), around(centre, 13, a+180))
	}
	p.add(Dimension{From: around(centre, 13, 180), To: around(centre, 13, 0), Words: words, Size: normal, Ink: Ink{Width: thin, Tone: Accent}})
}

func (p *pen) pitch() {
	words := p.sized()
	p.add(Rect{Box: Box{5, 18, 55, 38}, Ink: contour, Fill: Paper})
	for _, x := range []float64{15, 45} {
		p.add(Circle{Centre: Point{x, 28}, Radius: 4.5, Ink: told, Fill: Paper})
		p.line(faint, Point{x, 21}, Point{x, 35})
		p.line(faint, Point{x - 6, 28}, Point{x + 6, 28})
	}
	p.add(Dimension{From: Point{15, 18}, To: Point{45, 18}, Offset: 8, Words: words, Size: normal, Ink: Ink{Width: thin, Tone: Accent}})
}

// width is a size between two faces: of a wall, a height above a face, or a seat.
func (p *pen) width() {
	words := p.sized()
	accent := Ink{Width: thin, Tone: Accent}
	switch {
	case p.is("wall", "thick"):
		wall := Box{24, 4, 36, 30}
		p.add(Hatch{Outline: wall.Corners(), Angle: 45, Spacing: 1.6, Ink: faint}, Rect{Box: wall, Ink: told})
		p.add(Dimension{From: Point{24, 30}, To: Point{36, 30}, Offset: -8, Words: words, Size: normal, Ink: accent})
	case p.is("height", "depth"):
		p.closed(contour, Paper, Point{3, 38}, Point{3, 32}, Point{10, 32}, Point{10, 12}, Point{28, 12}, Point{28, 32}, Point{38, 32}, Point{38, 38})
		p.line(told, Point{10, 12}, Point{28, 12})
		p.add(Dimension{From: Point{28, 32}, To: Point{28, 12}, Offset: 6, Words: words, Size: normal, Ink: accent})
	default:
		p.closed(contour, Paper, Point{10, 38}, Point{10, 16}, Point{20, 16}, Point{20, 26}, Point{40, 26}, Point{40, 16}, Point{50, 16}, Point{50, 38})
		p.line(told, Point{20, 26}, Point{40, 26})
		p.add(Dimension{From: Point{20, 16}, To: Point{40, 16}, Offset: 7, Words: words, Size: normal, Ink: accent})
	}
}
