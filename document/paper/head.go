package paper

import (
	"fmt"
	"strings"

	"axlewright/drawing"
)

// The head's measures, mm.
const (
	plateHigh   = 15.0
	plateLeast  = 34.0
	plateMost   = 78.0
	plateLetter = 7.4
	shopWide    = 56.0
	least       = 2.65 // the smallest letters that are printed, 7.5 points
)

// head draws the number plate, the title, whose it is, the shop, the day and
// the number of the page, and says how high that is.
func (p Paper) head(s size, number, of int) (list []drawing.Shape, height float64) {
	list, low := p.plate()
	right := list[0].(drawing.Rect).Box.Right + 4
	shop := left + width - shopWide
	put := func(x, y, size float64, bold bool, words string) {
		list = append(list, drawing.Text{At: drawing.Point{X: x, Y: y}, Words: words, Size: size, Bold: bold})
		low = max(low, y+1)
	}

	y := top + 6.2
	const goesOn = 18.0 // room for the word that says so
	big := fitted(p.Title, shop-4-right-goesOn, 6.2, 4, true)
	if number > 1 {
		list = append(list, drawing.Text{At: drawing.Point{X: shop - 4, Y: y}, Words: "continued", Size: 3.2, Bold: true, Anchor: drawing.End})
	}
	for _, l := range wrapAll(p.Title, shop-4-right-goesOn, big, true) {
		put(right, y, big, true, l)
		y += big * line
	}
	if p.Subject == "" {
		put(right, y, s.small, false, "for")
		list = append(list, rule(right+8, shop-4, y+0.6))
	}
	for _, l := range wrapAll(p.Subject, shop-4-right, s.small, false) {
		put(right, y, s.small, false, l)
		y += s.small * line
	}

	y = top + s.small
	for _, part := range []struct {
		words string
		bold  bool
	}{{p.Shop, true}, {p.Contact, false}} {
		for _, l := range wrapAll(part.words, shopWide, s.small, part.bold) {
			put(shop, y, s.small, part.bold, l)
			y += s.small * line
		}
	}
	y += 1
	if p.Day.IsZero() {
		put(shop, y, s.small, false, "day")
		list = append(list, rule(shop+8, shop+33, y+0.6))
	} else {
		put(shop, y, s.small, true, p.Day.Format("2 January 2006"))
	}
	list = append(list, drawing.Text{At: drawing.Point{X: left + width, Y: y}, Words: fmt.Sprintf("page %d of %d", number, of), Size: s.small, Anchor: drawing.End})
	low += 1.6
	return append(list, drawing.Line{From: drawing.Point{X: left, Y: low}, To: drawing.Point{X: left + width, Y: low}, Ink: drawing.Ink{Width: 0.7}}),
		low - top + s.gap
}

// plate is the unit's number in its frame, which comes first, and where it ends.
func (p Paper) plate() (list []drawing.Shape, low float64) {
	number := drawing.Clean(p.Number)
	wide := min(max(drawing.TextWidth(number, plateLetter, true)+8, plateLeast), plateMost)
	size := fitted(number, wide-5, plateLetter, least, true)
	lines := wrapAll(number, wide-5, size, true)
	low = top + plateHigh + float64(max(len(lines)-1, 0))*size*line
	of := p.NumberOf
	if of == "" {
		of = "unit"
	}
	list = []drawing.Shape{
		drawing.Rect{Box: drawing.Box{Left: left, Top: top, Right: left + wide, Bottom: low}, Ink: drawing.Ink{Width: 0.9}},
		drawing.Text{At: drawing.Point{X: left + 1.6, Y: top + 3.6}, Words: of, Size: least},
	}
	for i, l := range lines {
		list = append(list, drawing.Text{At: drawing.Point{X: left + wide/2, Y: top + 12.2 + float64(i)*size*line}, Words: l, Size: size, Bold: true, Anchor: drawing.Middle})
	}
	return list, low
}

// footHeight is what the foot takes: a line that says that the paper goes on,
// or which letters are missing, and those of the paper's own.
func (p Paper) footHeight() float64 { return 5 + float64(len(p.footLines()))*least*line }

func (p Paper) footLines() []string { return wrapAll(p.Foot, width, least, false) }

// foot draws the foot of a page.
func (p Paper) foot(page []drawing.Shape, number, of int) []drawing.Shape {
	y := high - bottom
	list := []drawing.Shape{drawing.Text{At: drawing.Point{X: left, Y: y}, Words: missingLetters(page), Size: least}}
	if number < of {
		list = append(list, drawing.Text{At: drawing.Point{X: left + width, Y: y}, Words: fmt.Sprintf("continued on page %d →", number+1), Size: 3.2, Bold: true, Anchor: drawing.End})
	}
	lines := p.footLines()
	for i, l := range lines {
		list = append(list, drawing.Text{At: drawing.Point{X: left, Y: y - float64(len(lines)-i)*least*line}, Words: l, Size: least})
	}
	return list
}

// missingLetters says which letters of a page the print does not have.
func missingLetters(page []drawing.Shape) string {
	var all strings.Builder
	for _, shape := range page {
		if t, ok := shape.(drawing.Text); ok {
			all.WriteString(t.Words)
		}
	}
	missing := drawing.Missing(all.String())
	if len(missing) == 0 {
		return ""
	}
	var names []string
	for i, r := range missing {
		if i == 3 {
			names = append(names, fmt.Sprintf("and %d more", len(missing)-i))
			break
		}
		names = append(names, fmt.Sprintf("U+%04X", r))
	}
	return "□ is a letter that this print does not have (" + strings.Join(names, ", ") + "); the record holds it."
}

// rule is a line to write on.
func rule(from, to, y float64) drawing.Line {
	return drawing.Line{From: drawing.Point{X: from, Y: y}, To: drawing.Point{X: to, Y: y}, Ink: drawing.Ink{Width: 0.18}}
}

// fitted is the largest size of letters, no more than most and no less than
// least, at which words go into a width.
func fitted(words string, width, most, least float64, bold bool) float64 {
	one := drawing.TextWidth(drawing.Clean(words), 1, bold)
	if one == 0 {
		return most
	}
	return max(min(most, width/one), least)
}

// wrapAll breaks words into lines of a width, and where they hold line ends.
func wrapAll(words string, width, size float64, bold bool) []string {
	var list []string
	for _, part := range strings.Split(words, "\n") {
		lines, _ := drawing.Wrap(part, width, size, bold, 1<<20)
		list = append(list, lines...)
	}
	return list
}
