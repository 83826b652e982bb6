package drawing

import (
	"fmt"
	"math"
	"strings"

	"axlewright/assess"
	"axlewright/quantity"
)

// tag says in words why a build is shown, where there is something to say.
func (l *ladder) tag(c *ladderColumn) string {
	switch {
	case c.index == l.advice.Recommended:
		return "recommended"
	case c.index == l.advice.NextUp:
		return "next one up"
	case l.advice.Recommended < 0 && c.index == l.advice.Best:
		return "comes nearest"
	case len(c.build.Upgrades) == 0:
		return "standard"
	}
	return ""
}

// frame rules the columns off and puts a frame round the recommended one.
func (l *ladder) frame(c *ladderColumn) {
	bottom := l.plot.Bottom + l.foot
	l.frames = append(l.frames, Line{Point{c.box.Left, l.plot.Top}, Point{c.box.Left, bottom}, Ink{Width: hairline, Tone: Grey}})
	tag := l.tag(c)
	if tag == "" {
		return
	}
	line, _ := Shorten(tag, c.box.Width()-1.6, small, true)
	name := Text{At: Point{(c.box.Left + c.box.Right) / 2, l.plot.Top - 2.1}, Words: line, Size: small, Anchor: Middle}
	if c.index == l.advice.Recommended {
		tab := Box{c.box.Left, 0.9, c.box.Right, l.plot.Top}
		l.frames = append(l.frames,
			Rect{Box: Box{tab.Left, tab.Top, tab.Right, bottom}, Ink: Ink{Width: 0.7, Tone: Accent}},
			Rect{Box: tab, Fill: Accent})
		name.Bold, name.Tone = true, Paper
	}
	l.frames = append(l.frames, name)
}

// footOf gives number, price and chances of a build.
func (l *ladder) footOf(c *ladderColumn) {
	left, right := c.box.Left+1.4, min(c.box.Right-1.4, c.box.Left+41)
	y := l.plot.Bottom
	number := fmt.Sprint(c.number)
	plate := Box{left, y + 1.2, left + 5.2, y + 6.2}
	l.feet = append(l.feet,
		Rect{Box: plate, Ink: Ink{Width: medium}},
		Text{At: Point{(plate.Left + plate.Right) / 2, plate.Bottom - 1.25}, Words: number, Size: large, Anchor: Middle, Bold: true})
	l.footLine("price "+tickWords(math.Round(c.build.Price)), Point{plate.Right + 1.4, y + 4.8}, right, false, normal, small)

	state := StateOf(c.build.Carries.Value, l.advice.Wanted)
	l.chanceBar(Box{left, y + 7.6, right, y + 9.6}, c.build.Carries.Value, state)
	l.feet = append(l.feet, signShapes(state, Point{left + 1.5, y + 12.0}, 3)...)
	l.footLine(quantity.Chance(c.build.Carries.Value), Point{left + 4.2, y + 13.3}, right, true, large, normal, small)
	l.footLine(string(state), Point{left, y + 16.3}, right, false, small)
	if l.distance() {
		l.footLine("lasts: "+quantity.Chance(c.build.Lasts.Value), Point{left, y + 16.3 + lastsRoom}, right, false, small)
	}
}

// footLine sets a text in the first of the sizes in which it goes in, or else
// shortens it.
func (l *ladder) footLine(text string, at Point, right float64, bold bool, sizes ...float64) {
	size := sizes[len(sizes)-1]
	for _, s := range sizes {
		if TextWidth(text, s, bold) <= right-at.X {
			size = s
			break
		}
	}
	line, whole := Shorten(text, right-at.X, size, bold)
	t := Text{At: at, Words: line, Size: size, Anchor: Start, Bold: bold}
	if !whole {
		t.Full = Clean(text)
	}
	l.feet = append(l.feet, t)
}

// chanceBar is a bar from 0 to 100 % with a mark at the wanted chance. Its
// filling tells the state: full, hatched, crossed.
func (l *ladder) chanceBar(box Box, chance float64, state State) {
	if !(chance >= 0) {
		chance = 0
	}
	part := box
	part.Right = box.Left + box.Width()*min(chance, 1)
	switch state {
	case Fine:
		l.feet = append(l.feet, Rect{Box: part, Fill: Black})
	case Look:
		l.feet = append(l.feet, Hatch{Outline: part.Corners(), Angle: 45, Spacing: 0.7, Ink: Ink{Width: light}})
	default:
		l.feet = append(l.feet, Hatch{Outline: part.Corners(), Angle: 45, Spacing: 1.1, Crossed: true, Ink: Ink{Width: thin}})
	}
	l.feet = append(l.feet, Rect{Box: box, Ink: Ink{Width: thin}},
		Line{Point{part.Right, box.Top}, Point{part.Right, box.Bottom}, Ink{Width: thin}})
	if w := l.advice.Wanted; w > 0 && w <= 1 {
		x := box.Left + box.Width()*w
		l.feet = append(l.feet, Path{
			Vertices: []Vertex{{At: Point{x, box.Top}}, {At: Point{x - 0.7, box.Top - 1.2}}, {At: Point{x + 0.7, box.Top - 1.2}}},
			Closed:   true, Fill: Black,
		})
	}
}

// signShapes draws the sign of a state, so that no face needs to have it.
func signShapes(s State, middle Point, size float64) []Shape {
	h := size / 2
	at := func(x, y float64) Vertex { return Vertex{At: Point{middle.X + x*h, middle.Y + y*h}} }
	ink := Ink{Width: size * 0.17}
	switch s {
	case Fine:
		return []Shape{Path{Vertices: []Vertex{at(-0.85, 0.1), at(-0.25, 0.75), at(0.85, -0.75)}, Ink: ink}}
	case Look:
		return []Shape{Path{Vertices: []Vertex{at(0, -0.8), at(0.9, 0.75), at(-0.9, 0.75)}, Closed: true, Ink: ink}}
	}
	return []Shape{
		Path{Vertices: []Vertex{at(-0.75, -0.75), at(0.75, 0.75)}, Ink: ink},
		Path{Vertices: []Vertex{at(-0.75, 0.75), at(0.75, -0.75)}, Ink: ink},
	}
}

// legend tells the ends of rungs and the mark apart.
func (l *ladder) legend() {
	x, y := 4.0, l.box.Bottom-1.3
	middle := y - small*0.32
	entry := func(width float64, text string, shapes ...Shape) {
		w := TextWidth(text, small, false)
		if x+width+1+w > l.box.Right {
			return
		}
		l.key = append(l.key, shapes...)
		l.key = append(l.key, Text{At: Point{x + width + 1, y}, Words: text, Size: small, Anchor: Start})
		x += width + 1 + w + 4
	}
	ink := Ink{Width: medium}
	rung := func(r assess.Rung) []Shape { return rungShapes(&r, x, x+6, middle, ink) }
	entry(6, "breaks or slips", rung(assess.Rung{Kind: assess.Breaks})...)
	entry(7, "wears out", rung(assess.Rung{Kind: assess.Wears})...)
	entry(7, "moves too far", rung(assess.Rung{Kind: assess.Moves})...)
	entry(6, "outside the casting", rung(assess.Rung{Kind: assess.Breaks, Outside: true})...)
	entry(1.6, "10 to 90 %", whisker(x+0.8, y-2.5, y+0.5, 1.4, Ink{Width: light}, false, false)...)
	if l.distance() {
		km, _, _ := strings.Cut(distanceWords(l.advice.Distance), " (")
		entry(-1, "lasts: to "+km)
	}
	if w := l.advice.Wanted; w > 0 && w <= 1 {
		entry(1.6, quantity.Chance(w)+" wanted", Path{
			Vertices: []Vertex{{At: Point{x + 0.8, y - 0.2}}, {At: Point{x + 0.1, y - 1.6}}, {At: Point{x + 1.5, y - 1.6}}}, Closed: true, Fill: Black,
		})
	}
}
