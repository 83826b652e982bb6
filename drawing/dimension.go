package drawing

import "math"

// Parts are the lines, arrow heads and words of the dimension, for back ends
// that have no dimensions of their own. The words stand beside the middle of
// the dimension line, upright, on the side it was moved to.
func (d Dimension) Parts() []Shape {
	dx, dy := d.To.X-d.From.X, d.To.Y-d.From.Y
	length := math.Hypot(dx, dy)
	if length == 0 {
		return []Shape{Text{At: d.From, Words: d.Words, Size: d.Size, Anchor: Start, Tone: d.Ink.Tone, Clear: true}}
	}
	ux, uy := dx/length, dy/length // along
	nx, ny := uy, -ux              // to the left on paper, where y runs down
	off := func(p Point, by float64) Point { return Point{p.X + nx*by, p.Y + ny*by} }
	a, b := off(d.From, d.Offset), off(d.To, d.Offset)
	beyond := math.Copysign(1, d.Offset)
	parts := []Shape{Line{From: a, To: b, Ink: d.Ink}}
	if math.Abs(d.Offset) > 1 {
		parts = append(parts,
			Line{From: off(d.From, beyond*0.8), To: off(a, beyond), Ink: d.Ink},
			Line{From: off(d.To, beyond*0.8), To: off(b, beyond), Ink: d.Ink})
	}
	head := math.Min(2, length/3)
	for _, end := range []struct {
		at   Point
		sign float64
	}{{a, 1}, {b, -1}} {
		base := Point{end.at.X + ux*head*end.sign, end.at.Y + uy*head*end.sign}
		parts = append(parts, Path{
			Vertices: []Vertex{{At: end.at}, {At: off(base, head/5)}, {At: off(base, -head/5)}},
			Closed:   true, Fill: orBlack(d.Ink.Tone),
		})
	}
	if d.Words == "" {
		return parts
	}
	at := off(Point{(a.X + b.X) / 2, (a.Y + b.Y) / 2}, beyond*1.2)
	t := Text{At: at, Words: d.Words, Size: d.Size, Anchor: Middle, Tone: d.Ink.Tone, Clear: true}
	switch side := nx * beyond; {
	case side > 0.5:
		t.Anchor = Start
		t.At.Y += d.Size * (ascent - descent) / 2
	case side < -0.5:
		t.Anchor = End
		t.At.Y += d.Size * (ascent - descent) / 2
	case ny*beyond > 0: // below
		t.At.Y += d.Size * ascent
	}
	return append(parts, t)
}

func orBlack(t Tone) Tone {
	if t == "" {
		return Black
	}
	return t
}
