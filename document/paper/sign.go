package paper

import (
	"math"

	"github.com/boombuler/barcode/qr"

	"axlewright/drawing"
)

// Sign has a line to sign on for each of its names, with the day.
type Sign []string

func (names Sign) strips(s size, width float64) []strip {
	var list []strip
	for _, n := range names {
		high := s.box * 0.95
		base := high - 1.5
		const day = 42.0
		lead := drawing.TextWidth(n, s.text, true) + 3
		list = append(list, strip{height: high, shapes: []drawing.Shape{
			text(0, base, s.text, true, n), rule(lead, width-day-4, base+0.6),
			text(width-day, base, s.text, false, "day"), rule(width-day+9, width, base+0.6),
		}})
	}
	return list
}

// A Picture is drawn as wide as it is told, or as it is where Width is 0, and no
// larger than there is room for.
type Picture struct {
	Drawing drawing.Drawing
	Width   float64
}

// tallest is how high a picture may be.
const tallest = 200.0

func (p Picture) strips(s size, width float64) []strip {
	d := p.Drawing
	if d.Width <= 0 || d.Height <= 0 {
		return nil
	}
	wide := p.Width
	if wide == 0 {
		wide = d.Width
	}
	scale := min(wide, width) / d.Width
	scale = min(scale, tallest/d.Height)
	x := strip{height: d.Height * scale}
	at := drawing.Point{X: (width - d.Width*scale) / 2}
	for _, layer := range d.Layers {
		x.shapes = append(x.shapes, drawing.Place(layer.Shapes, at, scale)...)
	}
	return []strip{x}
}

// Grow is a picture that is drawn as high as there is room for.
type Grow struct {
	Least, Most float64 // mm
	Draw        func(width, height float64) drawing.Drawing
}

func (g Grow) strips(_ size, width float64) []strip {
	draw := func(height float64) []drawing.Shape {
		var shapes []drawing.Shape
		for _, layer := range g.Draw(width, min(height, g.Most)).Layers {
			shapes = append(shapes, layer.Shapes...)
		}
		return shapes
	}
	return []strip{{height: g.Least, most: g.Most, grow: draw}}
}

// Code is a square code that any reader reads, with words beside it.
type Code struct {
	Text   string  // what it holds
	Side   float64 // mm, with its quiet border; 0 is 40
	Beside []Block
}

func (c Code) strips(s size, width float64) []strip {
	side := c.Side
	if side == 0 {
		side = 40
	}
	code, err := qr.Encode(c.Text, qr.M, qr.Unicode)
	if err != nil { // more than a square code holds
		return append(lay("Too long for a square code: "+c.Text, 0, width, s.small, false), stack(c.Beside, s, width)...)
	}
	const quiet = 4
	n := code.Bounds().Dx()
	module := side / float64(n+2*quiet)
	x := strip{height: side}
	for row := range n {
		for from := 0; from < n; from++ {
			to := from
			for to < n && dark(code.At(to, row).RGBA()) {
				to++
			}
			if to > from {
				x.shapes = append(x.shapes, drawing.Rect{Fill: drawing.Black, Box: drawing.Box{
					Left: float64(quiet+from) * module, Top: float64(quiet+row) * module,
					Right: float64(quiet+to) * module, Bottom: float64(quiet+row+1) * module}})
				from = to
			}
		}
	}
	gap := 4.0
	beside := one(stack(c.Beside, s, width-side-gap))
	x.shapes = append(x.shapes, drawing.Place(beside.shapes, drawing.Point{X: side + gap, Y: float64(quiet) * module}, 1)...)
	x.height = max(x.height, beside.height+float64(quiet)*module)
	return []strip{x}
}

func dark(r, _, _, _ uint32) bool { return r < 0x8000 }

// Columns set blocks beside each other, and under each other where they are
// too long for a page.
type Columns struct {
	Left, Right []Block
	Share       float64 // of the left one; 0 is half
}

const gutter = 6.0 // between columns

func (c Columns) strips(s size, width float64) []strip {
	share := c.Share
	if share == 0 {
		share = 0.5
	}
	lw := (width - gutter) * share
	l, r := one(stack(c.Left, s, lw)), one(stack(c.Right, s, width-gutter-lw))
	if max(l.height, r.height) > tallest {
		return append(stack(c.Left, s, width), stack(c.Right, s, width)...)
	}
	l.shapes = append(l.shapes, drawing.Place(r.shapes, drawing.Point{X: lw + gutter}, 1)...)
	l.height = max(l.height, r.height)
	return []strip{l}
}

// Balanced sets blocks in two columns of even height, read down the left one
// first.
type Balanced []Block

func (list Balanced) strips(s size, width float64) []strip {
	column := (width - gutter) / 2
	best, height := 0, math.Inf(1)
	for at := range len(list) + 1 {
		if h := max(one(stack(list[:at], s, column)).height, one(stack(list[at:], s, column)).height); h < height {
			best, height = at, h
		}
	}
	return Columns{Left: list[:best], Right: list[best:]}.strips(s, width)
}

// A Group is blocks that stay together in one column.
type Group []Block

func (g Group) strips(s size, width float64) []strip { return stack(g, s, width) }

// stack sets blocks under each other.
func stack(blocks []Block, s size, width float64) []strip {
	var list []strip
	for i, b := range blocks {
		if i > 0 {
			list = append(list, s.between(blocks[i-1]))
		}
		list = append(list, b.strips(s, width)...)
	}
	return list
}

// one makes one strip of several.
func one(list []strip) strip {
	var sum strip
	for _, x := range list {
		sum.shapes = append(sum.shapes, drawing.Place(x.shapes, drawing.Point{Y: sum.height}, 1)...)
		sum.height += x.height
	}
	return sum
}
