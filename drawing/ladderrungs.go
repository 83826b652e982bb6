package drawing

import (
	"fmt"
	"slices"

	"axlewright/assess"
	"axlewright/quantity"
)

// above says whether a rung lies over the top of the picture, or has no place.
func (l *ladder) above(r *assess.Rung) bool {
	return !drawable(r.GiveOut.Median) || r.GiveOut.Median > l.y.high
}

// rungs draws the rails, and each link as a rung with its whisker.
func (l *ladder) rungs(c *ladderColumn) {
	for _, x := range []float64{c.rails.Left, c.rails.Right} {
		l.rung = append(l.rung, Line{Point{x, c.rails.Top}, Point{x, c.rails.Bottom}, Ink{Width: light, Tone: Grey}})
	}
	lanes := max(int(c.rails.Width()/1.1), 3)
	drawn := 0
	for i := range c.build.Links {
		r := &c.build.Links[i]
		if l.above(r) {
			continue
		}
		drawn++
		x := c.rails.Left + (float64((drawn*2)%lanes)+0.5)/float64(lanes)*c.rails.Width()
		line, wide := Ink{Width: light, Tone: Grey}, Ink{Width: hairline, Tone: Grey}
		switch i {
		case c.build.Weak:
			line, wide = Ink{Width: heavy}, Ink{Width: medium}
		case c.build.RunnerUp:
			line, wide = Ink{Width: strong}, Ink{Width: light}
		}
		l.rung = append(l.rung, l.whisker(x, r.GiveOut, wide)...)
		l.rung = append(l.rung, rungShapes(r, c.rails.Left, c.rails.Right, l.place(r.GiveOut.Median), line)...)
	}
}

// rungShapes is a rung with the end that tells its kind.
func rungShapes(r *assess.Rung, left, right, y float64, ink Ink) []Shape {
	if r.Outside {
		ink.Dash = []float64{1.1, 0.6}
	}
	shapes := []Shape{Line{Point{left, y}, Point{right, y}, ink}}
	edge := Ink{Width: max(thin, min(ink.Width, medium)), Tone: ink.Tone}
	switch r.Kind {
	case assess.Wears:
		shapes = append(shapes, Circle{Centre: Point{right, y}, Radius: 0.75, Ink: edge, Fill: Paper})
	case assess.Moves:
		shapes = append(shapes, Path{
			Vertices: []Vertex{{At: Point{right - 0.6, y - 0.85}}, {At: Point{right + 0.9, y}}, {At: Point{right - 0.6, y + 0.85}}},
			Closed:   true, Ink: edge, Fill: Paper,
		})
	}
	return shapes
}

// whisker draws a band, cut where it leaves the plot.
func (l *ladder) whisker(x float64, b assess.Band, ink Ink) []Shape {
	if !drawable(b.Low) {
		return nil
	}
	top, bottom := l.plot.Top, l.place(b.Low)
	topOpen, bottomOpen := true, b.Low < l.y.low
	if drawable(b.High) && b.High <= l.y.high {
		top, topOpen = l.place(b.High), false
	}
	return whisker(x, top, bottom, 0.9, ink, topOpen, bottomOpen)
}

// whisker is an upright line with a bar across each end that is not open.
func whisker(x, top, bottom, wide float64, ink Ink, topOpen, bottomOpen bool) []Shape {
	shapes := []Shape{Line{Point{x, top}, Point{x, bottom}, ink}}
	if !topOpen {
		shapes = append(shapes, Line{Point{x - wide/2, top}, Point{x + wide/2, top}, ink})
	}
	if !bottomOpen {
		shapes = append(shapes, Line{Point{x - wide/2, bottom}, Point{x + wide/2, bottom}, ink})
	}
	return shapes
}

// A rungLabel is a label with the place it should stand at.
type rungLabel struct {
	text words
	y    float64 // of its rung, or of the head of the picture
	rung bool    // a line leads to a rung
	ink  Ink     // of that line
}

// label names the weak link and the runner-up at their heights, tells what is
// above the picture, and names more rungs where there is room.
func (l *ladder) label(c *ladderColumn) {
	const gap = 0.9
	var list []rungLabel
	var slots []slot
	for _, try := range []struct {
		most  int // lines of a name
		wears bool
	}{{4, true}, {3, true}, {4, false}, {3, false}, {2, false}, {1, false}} {
		list = l.wanted(c, try.most, try.wears)
		slots = slots[:0]
		for _, x := range list {
			slots = append(slots, slot{x.y, x.text.height()})
		}
		free := c.words.Height()
		if try.wears {
			free *= 0.7 // no use where it would push the others far from their rungs
		}
		if room(slots, gap) <= free {
			break
		}
	}
	for len(slots) > 0 && room(slots, gap) > c.words.Height() { // no room even so: the lowest rung stays
		list, slots = list[1:], slots[1:]
	}
	var taken []Box
	for i, middle := range relax(slots, gap, c.words.Top, c.words.Bottom) {
		x := list[i]
		if x.rung {
			l.labels = append(l.labels, leader(c.rails.Right, x.y, c.words.Left, middle, x.ink))
		}
		l.labels = append(l.labels, x.text.shapes(c.words.Left, middle)...)
		taken = append(taken, Box{c.words.Left, middle - slots[i].height/2 - gap, c.words.Right, middle + slots[i].height/2 + gap})
	}
	if c.optional {
		l.more(c, taken)
	}
}

// leader joins a rung to its label: level, then across.
func leader(fromX, fromY, toX, toY float64, ink Ink) Shape {
	return Path{Vertices: []Vertex{{At: Point{fromX + 0.4, fromY}}, {At: Point{fromX + 1.1, fromY}}, {At: Point{toX - 0.4, toY}}}, Ink: ink}
}

// wanted are the labels a column must have, from the head of the picture down,
// each name in at most so many lines, with or without the one that wears first.
func (l *ladder) wanted(c *ladderColumn, most int, wears bool) []rungLabel {
	var list []rungLabel
	named := map[int]bool{}
	name := func(i int, before string, bold bool, ink Ink) {
		r, there := rungAt(c.build, i)
		if !there || named[i] {
			return
		}
		named[i] = true
		x := rungLabel{text: words{size: small, width: c.words.Width()}, rung: true, ink: ink}
		x.text.add(before+r.Name, bold, most)
		x.text.add("first in "+quantity.Chance(r.First), false, 1)
		switch {
		case c.optional && drawable(r.GiveOut.Median):
			x.text.add(quantity.FormatDigits(r.GiveOut.Median, quantity.Torque, 3), false, 2)
		case l.above(r) && drawable(r.GiveOut.Median):
			x.text.add("at "+first(torque(r.GiveOut.Median)), false, 2)
		}
		switch {
		case !drawable(r.GiveOut.Median):
			x.text.add("beyond what was looked at", false, most)
			x.rung, x.y = false, l.plot.Top
		case l.above(r):
			x.rung, x.y = false, l.plot.Top
		default:
			x.y = l.place(r.GiveOut.Median)
		}
		list = append(list, x)
	}
	name(c.build.Weak, "", true, Ink{Width: light})
	name(c.build.RunnerUp, "then ", false, Ink{Width: thin})
	if r, there := wearsFirst(c.build); wears && there && !named[c.build.WearsFirst] && !l.above(r) {
		named[c.build.WearsFirst] = true
		x := rungLabel{text: words{size: small, width: c.words.Width(), tone: Grey}, rung: true, y: l.place(r.GiveOut.Median), ink: Ink{Width: thin, Tone: Grey}}
		x.text.add("wears first: "+r.Name, false, most)
		list = append(list, x)
	}
	over := 0
	for i := range c.build.Links {
		if l.above(&c.build.Links[i]) && !named[i] {
			over++
		}
	}
	if over > 0 {
		noun := "links"
		if over == 1 {
			noun = "link"
		}
		x := rungLabel{text: words{size: small, width: c.words.Width(), tone: Grey}, y: l.plot.Top - 1}
		x.text.add(fmt.Sprintf("and %d %s above", over, noun), false, 2)
		list = append(list, x)
	}
	slices.SortStableFunc(list, func(p, q rungLabel) int {
		switch {
		case p.y < q.y:
			return -1
		case p.y > q.y:
			return 1
		}
		return 0
	})
	return list
}

// more names the rungs that go first now and then, where there is room at their own height.
func (l *ladder) more(c *ladderColumn, taken []Box) {
	order := make([]int, len(c.build.Links))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int {
		switch a, b := c.build.Links[i].First, c.build.Links[j].First; {
		case a > b:
			return -1
		case a < b:
			return 1
		}
		return 0
	})
	for _, i := range order {
		r := &c.build.Links[i]
		if i == c.build.Weak || i == c.build.RunnerUp || l.above(r) || i == c.build.WearsFirst && r.Kind == assess.Wears {
			continue
		}
		text := words{size: small, width: c.words.Width(), tone: Grey}
		if whole := text.add(r.Name, false, 1); !whole {
			continue
		}
		y := l.place(r.GiveOut.Median)
		box := Box{c.words.Left, y - text.height()/2, c.words.Right, y + text.height()/2}
		if !c.words.Holds(box) || slices.ContainsFunc(taken, box.Overlaps) {
			continue
		}
		taken = append(taken, box)
		l.labels = append(l.labels, leader(c.rails.Right, y, c.words.Left, y, Ink{Width: hairline, Tone: Grey}))
		l.labels = append(l.labels, text.shapes(c.words.Left, y)...)
	}
}
