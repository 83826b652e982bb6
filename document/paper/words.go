package paper

import "axlewright/drawing"

// Heading begins a part of the paper. It stays with what follows.
type Heading struct {
	Text  string
	Note  string // small, behind it
	Small bool
}

func (h Heading) strips(s size, width float64) []strip {
	letters := s.heading
	if h.Small {
		letters = s.small
	}
	list := bind(lay(h.Text, 0, width, letters, true))
	if len(list) == 0 || h.Note == "" {
		return list
	}
	last := &list[len(list)-1]
	end := drawing.TextWidth(last.shapes[0].(drawing.Text).Words, letters, true) + 3
	if drawing.TextWidth(h.Note, s.small, false) <= width-end {
		last.shapes = append(last.shapes, text(end, letters, s.small, false, h.Note))
		return list
	}
	return append(list, bind(lay(h.Note, 0, width, s.small, false))...)
}

// Text is a paragraph, or several where it holds line ends.
type Text struct {
	Words string
	Bold  bool
	Small bool
	Big   bool // as large as a heading: an answer
}

func (t Text) strips(s size, width float64) []strip {
	letters := s.text
	if t.Small {
		letters = s.small
	}
	if t.Big {
		letters = s.heading
	}
	return lay(t.Words, 0, width, letters, t.Bold)
}

// A List has a mark before each of its items, "·" where none is given.
type List []Item

// An Item is one of a list.
type Item struct{ Mark, Words string }

func (l List) strips(s size, width float64) []strip {
	const indent = 4.5
	var list []strip
	for _, i := range l {
		lines := lay(i.Words, indent, width-indent, s.text, false)
		if i.Mark == "" {
			i.Mark = "·"
		}
		if len(lines) > 0 {
			lines[0].shapes = append(lines[0].shapes, text(0.6, s.text, s.text, true, i.Mark))
			lines[len(lines)-1].height += s.gap / 3
		}
		list = append(list, lines...)
	}
	return list
}

// Caution is what can hurt somebody at this place of the paper: in a frame,
// with its sign.
type Caution struct{ Words string }

func (c Caution) strips(s size, width float64) []strip {
	const in, pad = 11.0, 1.6
	lines := wrapAll(c.Words, width-in-pad, s.text, true)
	if len(lines) == 0 {
		return nil
	}
	height := float64(len(lines))*s.text*line + 2*pad
	shapes := []drawing.Shape{
		drawing.Rect{Box: drawing.Box{Left: 0.3, Top: 0, Right: width - 0.3, Bottom: height}, Ink: drawing.Ink{Width: 0.6}},
		drawing.Text{At: drawing.Point{X: in / 2, Y: height/2 + 2.3}, Words: "⚠", Size: 6.5, Bold: true, Anchor: drawing.Middle},
	}
	for i, l := range lines {
		shapes = append(shapes, text(in, pad+s.text+float64(i)*s.text*line-0.3, s.text, true, l))
	}
	return []strip{{shapes: shapes, height: height}}
}

// Mind is a caution without a frame, where there are many: bold, with its sign.
type Mind struct{ Words string }

func (m Mind) strips(s size, width float64) []strip {
	const in = 5.5
	list := bind(lay(m.Words, in, width-in, s.text, true))
	if len(list) == 0 {
		return nil
	}
	list[0].shapes = append(list[0].shapes, text(0.3, s.text*1.05, s.text*1.25, true, "⚠"))
	list[len(list)-1].height += 0.8
	return list
}

// An Answer is the one sentence that the paper is for, large, in a frame.
type Answer struct{ Sign, Words string }

func (a Answer) strips(s size, width float64) []strip {
	const in, pad = 12.0, 2.0
	letters := s.text * 1.15
	lines := wrapAll(a.Words, width-in-pad, letters, true)
	height := float64(max(len(lines), 1))*letters*line + 2*pad
	shapes := []drawing.Shape{
		drawing.Rect{Box: drawing.Box{Left: 0.4, Top: 0, Right: width - 0.4, Bottom: height}, Ink: drawing.Ink{Width: 0.8}},
		drawing.Text{At: drawing.Point{X: in / 2, Y: height/2 + 2.6}, Words: a.Sign, Size: 7.5, Bold: true, Anchor: drawing.Middle},
	}
	for i, l := range lines {
		shapes = append(shapes, text(in, pad+letters+float64(i)*letters*line-0.4, letters, true, l))
	}
	return []strip{{shapes: shapes, height: height}}
}

// Space leaves room.
type Space struct{ Height float64 }

func (x Space) strips(size, float64) []strip { return []strip{{height: x.Height}} }

// Notes are ruled lines over what is left of the page.
type Notes struct{ Title string }

func (n Notes) strips(s size, width float64) []strip {
	if n.Title == "" {
		n.Title = "Notes"
	}
	const apart, fewest = 8.0, 2
	return []strip{{grow: func(height float64) []drawing.Shape {
		lines := int((height - s.small*line) / apart)
		if lines < fewest {
			return nil
		}
		shapes := []drawing.Shape{text(0, s.small, s.small, true, n.Title)}
		for i := range lines {
			shapes = append(shapes, rule(0, width, s.small*line+float64(i+1)*apart-1))
		}
		return shapes
	}}}
}

// text is a line of words with its base line at y.
func text(x, y, size float64, bold bool, words string) drawing.Text {
	return drawing.Text{At: drawing.Point{X: x, Y: y}, Words: words, Size: size, Bold: bold}
}

// lay sets words in lines, a strip each.
func lay(words string, x, width, size float64, bold bool) []strip {
	var list []strip
	for _, l := range wrapAll(words, width, size, bold) {
		list = append(list, strip{shapes: []drawing.Shape{text(x, size, size, bold, l)}, height: size * line})
	}
	return list
}

// bind keeps strips on the page of what follows them.
func bind(list []strip) []strip {
	for i := range list {
		list[i].bound = true
	}
	return list
}
