package paper

import (
	"slices"
	"strings"

	"axlewright/drawing"
)

// Boxes are big boxes to read and to write in, two to a row where they are
// short: one that is left over waits for the next short one. What is to be filled stands at the left of its box, with the range in
// which it is fine.
type Boxes []Box

// A Box is one thing that is measured, decided or told.
type Box struct {
	Label   string
	Range   string   // "0.08 to 0.18 mm (3.0 to 7.0 thou)"
	From    string   // where the range comes from
	Unit    string   // within an empty box
	Places  []Place  // one box for each; none is one without a name
	Options []string // to be ticked, where no place holds a text
	Wide    bool     // for a sentence: over the whole width
}

// A Place is what a box holds.
type Place struct {
	Name string // within the box: "crown side", "3"
	Text string // "0.20 mm"; empty is for the pencil
	Also string // small below it: "8 thou"
	Sign string // "✓ fine"
	Stop bool   // heavy frame
}

const (
	between = 5.0 // the two boxes of a row
	inBox   = 1.3
)

// wide says whether a box takes a whole row.
func (b Box) wide() bool { return b.Wide || len(b.Places) > 2 || b.open() && len(b.Options) > 3 }

// open says whether nothing stands in the box.
func (b Box) open() bool {
	return !slices.ContainsFunc(b.Places, func(p Place) bool { return p.Text != "" })
}

func (list Boxes) strips(s size, width float64) []strip {
	var out []strip
	half := (width - between) / 2
	var waiting *strip // in the left half, for one to stand at its right
	for _, b := range list {
		parts := b.strips(s, half)
		switch {
		case b.wide() || len(parts) > 1: // goes before the one that waits
			out = append(out, b.strips(s, width)...)
		case waiting == nil:
			waiting = &parts[0]
		default:
			waiting.shapes = append(waiting.shapes, drawing.Place(parts[0].shapes, drawing.Point{X: half + between}, 1)...)
			waiting.height = max(waiting.height, parts[0].height)
			out = append(out, *waiting)
			waiting = nil
		}
	}
	if waiting != nil {
		out = append(out, *waiting)
	}
	return out
}

// labelWide is the room of the words at the left of a box, the same in half a
// row and in a whole one.
func labelWide(width float64) float64 { return min(width*0.56, 50.4) }

// strips draws one box with its places; more than one strip where a text is long.
func (b Box) strips(s size, width float64) []strip {
	side := labelWide(width)
	var shapes []drawing.Shape
	y := 0.0
	for _, part := range []struct {
		words string
		size  float64
		bold  bool
	}{{b.Label, s.text, false}, {b.Range, s.text, true}, {b.From, s.small, false}} {
		for _, l := range wrapAll(part.words, side-2, part.size, part.bold) {
			shapes = append(shapes, text(0, y+part.size, part.size, part.bold, l))
			y += part.size * line
		}
	}
	list := b.filling(s, width-side)
	list[0].shapes = append(shapes, drawing.Place(list[0].shapes, drawing.Point{X: side}, 1)...)
	list[0].height = max(list[0].height, y)
	for i := range list[1:] {
		list[i+1].shapes = drawing.Place(list[i+1].shapes, drawing.Point{X: side}, 1)
	}
	list[len(list)-1].height += s.gap * 0.55
	return list
}

// filling is what stands right of the words.
func (b Box) filling(s size, width float64) []strip {
	places := b.Places
	if len(places) == 0 {
		places = []Place{{}}
	}
	if b.open() && len(b.Options) > 0 {
		return []strip{b.ticks(s, width)}
	}
	row := perRow(places, width, s)
	each := width / float64(row)
	var list []strip
	for from := 0; from < len(places); from += row {
		high := 0.0
		for _, p := range places[from:min(from+row, len(places))] {
			high = max(high, p.high(s, each-1.5))
		}
		if len(places) == 1 && high > longest*s.text*line {
			return b.long(s, width)
		}
		x := strip{height: high + 1.2}
		for k, p := range places[from:min(from+row, len(places))] {
			x.shapes = append(x.shapes, drawing.Place(p.draw(s, each-1.5, high, b.Unit), drawing.Point{X: float64(k) * each}, 1)...)
		}
		list = append(list, x)
	}
	if len(list) == 1 {
		return list
	}
	for i := range list[:len(list)-1] { // rows of one box stay together
		list[i].bound = len(list) < 8
	}
	return list
}

// perRow is how many places stand beside each other: as many as their words
// leave, in rows of one length.
func perRow(places []Place, width float64, s size) int {
	least := 6.1 * s.text
	for _, p := range places {
		least = max(least, min(drawing.TextWidth(p.Text, s.text, true)+2*inBox+1.5, 8.2*s.text))
	}
	most := max(int(width/least), 1)
	rows := (len(places) + most - 1) / most
	return (len(places) + rows - 1) / rows
}

// lines are the words of a place, as large as they go, and the room for the sign
// beside them.
func (p Place) lines(s size, width float64) (letters float64, lines []string, sign float64) {
	if p.Sign != "" && p.Name == "" {
		sign = drawing.TextWidth(p.Sign, s.small, true) + 1
	}
	letters = fitted(p.Text, width-2*inBox-sign, s.text*1.18, s.text, true)
	return letters, wrapAll(p.Text, width-2*inBox-sign, letters, true), sign
}

// topRow is the room of a name.
func (p Place) topRow(s size) float64 {
	if p.Name == "" {
		return 0.5
	}
	return s.small*line - 0.2
}

// high is how high a place must be: for the pencil where nothing stands in it.
func (p Place) high(s size, width float64) float64 {
	letters, lines, _ := p.lines(s, width)
	if len(lines) == 0 {
		return s.box
	}
	also := wrapAll(p.Also, width-2*inBox, s.small, false)
	return p.topRow(s) + float64(len(lines))*letters*line + float64(len(also))*s.small*line + 1.1
}

// draw is the box of a place.
func (p Place) draw(s size, width, high float64, unit string) []drawing.Shape {
	ink := drawing.Ink{Width: 0.4}
	if p.Stop {
		ink.Width = 1
	}
	list := []drawing.Shape{drawing.Rect{Box: drawing.Box{Left: 0, Top: 0, Right: width, Bottom: high}, Ink: ink}}
	if p.Name != "" {
		name := fitted(p.Name, width-2*inBox, s.small, least, false)
		for i, l := range wrapAll(p.Name, width-2*inBox, name, false) {
			list = append(list, text(inBox, name+0.5+float64(i)*name*line, name, false, l))
		}
	}
	if p.Sign != "" {
		t := text(width-inBox, s.small+0.5, s.small, true, p.Sign)
		if room := width - 2*inBox - drawing.TextWidth(p.Name, s.small, false) - 1; drawing.TextWidth(p.Sign, s.small, true) > room {
			t.Words, _, _ = strings.Cut(p.Sign, " ") // the sign without its word
		}
		t.Anchor = drawing.End
		list = append(list, t)
	}
	letters, lines, _ := p.lines(s, width)
	if len(lines) == 0 {
		t := text(width-inBox, high-1.2, s.small, false, unit)
		t.Anchor = drawing.End
		return append(list, t)
	}
	also := wrapAll(p.Also, width-2*inBox, s.small, false)
	sum := float64(len(lines))*letters*line + float64(len(also))*s.small*line
	y := p.topRow(s) + max(high-p.topRow(s)-sum, 0)/2
	for _, l := range lines {
		list = append(list, text(inBox, y+letters, letters, true, l))
		y += letters * line
	}
	for _, l := range also {
		list = append(list, text(inBox, y+s.small, s.small, false, l))
		y += s.small * line
	}
	return list
}

// ticks are the options, each with a box to tick.
func (b Box) ticks(s size, width float64) strip {
	side := s.text * 1.15
	x, y := 0.0, 0.0
	var shapes []drawing.Shape
	pitch := max(side+1.4, s.text*line)
	for _, o := range b.Options {
		lines := wrapAll(o, width-side-1.5, s.text, false)
		long := 0.0
		for _, l := range lines {
			long = max(long, drawing.TextWidth(l, s.text, false))
		}
		if x > 0 && x+side+1.5+long > width {
			x, y = 0, y+pitch
		}
		shapes = append(shapes, drawing.Rect{Box: drawing.Box{Left: x, Top: y, Right: x + side, Bottom: y + side}, Ink: drawing.Ink{Width: 0.35}})
		for i, l := range lines {
			shapes = append(shapes, text(x+side+1.2, y+side*0.86+float64(i)*s.text*line, s.text, false, l))
		}
		if len(lines) > 1 {
			y += float64(len(lines)-1) * s.text * line
		}
		x += side + 1.5 + long + 4
	}
	return strip{shapes: shapes, height: y + pitch}
}

// long is a text too long for a box, in parts that a page may end between.
func (b Box) long(s size, width float64) []strip {
	lines := wrapAll(b.Places[0].Text, width-2*inBox, s.text, false)
	var list []strip
	for from := 0; from < len(lines); from += longest {
		part := lines[from:min(from+longest, len(lines))]
		x := strip{height: float64(len(part))*s.text*line + 1}
		x.shapes = append(x.shapes, drawing.Line{From: drawing.Point{X: 0, Y: 0}, To: drawing.Point{X: 0, Y: x.height}, Ink: drawing.Ink{Width: 0.4}})
		for i, l := range part {
			x.shapes = append(x.shapes, text(inBox, float64(i)*s.text*line+s.text, s.text, false, l))
		}
		list = append(list, x)
	}
	return list
}
