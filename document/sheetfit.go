package document

import (
	"fmt"
	"math"
	"strings"

	"axlewright/drawing"
)

// The paper, mm. sheet.css has the same figures.
const (
	paperWidth   = 190.0 // A4 less 10 mm each side
	paperHeight  = 280.5 // A4 less 8 mm above and below, and a little to spare
	columnGap    = 6.0
	columnWidth  = (paperWidth - columnGap) / 2
	demandWidth  = 92.0
	answerWidth  = paperWidth - demandWidth - columnGap
	tallestLine  = 1.27 // height of a line in sizes of its letters
	headingSpace = 1.6  // above and below a heading
	itemSpace    = 0.5
	rowSpace     = 1.0 // in a row of a table
	markWidth    = 3.2
)

// columnWidths of the table of builds, mm.
var columnWidths = []float64{6, 86, 12, 18, 15, 15, 13, 25}

// mm is a size of letters in points as a length.
const mm = 25.4 / 72

// A fit is how tightly the page is set.
type fit struct {
	size  float64 // of the text, points
	notes float64 // mm, for notes by hand
	least float64 // mm, the lowest ladder that will do
	rows  int     // lines of the name of a build, at most
	lines int     // of one item, at most
	items int     // of one section, at most
	firm  int     // lines of one item in a section that is shortened last

	ladder float64 // mm, the ladder that there is room for
}

// fits are tried from the most comfortable to the tightest.
var fits = []fit{
	{size: 8.5, notes: 20, least: 100, rows: 3, lines: 9, items: 9, firm: 9},
	{size: 8, notes: 16, least: 94, rows: 3, lines: 9, items: 9, firm: 9},
	{size: 8, notes: 10, least: 88, rows: 2, lines: 9, items: 9, firm: 9},
	{size: 7.5, notes: 10, least: 86, rows: 2, lines: 9, items: 9, firm: 9},
	{size: 7.5, notes: 8, least: 78, rows: 2, lines: 9, items: 9, firm: 9},
	{size: 7.5, notes: 8, least: 74, rows: 2, lines: 5, items: 9, firm: 9},
	{size: 7.5, notes: 8, least: 74, rows: 2, lines: 4, items: 9, firm: 9},
	{size: 7.5, notes: 8, least: 74, rows: 2, lines: 3, items: 9, firm: 9},
	{size: 7.5, notes: 8, least: 74, rows: 2, lines: 2, items: 9, firm: 9},
	{size: 7.5, notes: 8, least: 74, rows: 2, lines: 2, items: 6, firm: 8},
	{size: 7.5, notes: 8, least: 74, rows: 2, lines: 2, items: 4, firm: 7},
	{size: 7.5, notes: 8, least: 74, rows: 1, lines: 2, items: 4, firm: 6},
	{size: 7.5, notes: 8, least: 74, rows: 1, lines: 2, items: 3, firm: 5},
	{size: 7.5, notes: 8, least: 74, rows: 1, lines: 1, items: 2, firm: 5},
	{size: 7.5, notes: 8, least: math.Inf(-1), rows: 1, lines: 1, items: 1, firm: 3},
}

const (
	tallestLadder = 112.0
	lowestLadder  = 74.0
	leastNotes    = 7.0 // mm, a line by hand
)

// arrange sets the page as comfortably as it goes onto one sheet, and gives
// back what was cut as far as there is room: words go before room for notes.
// Widths are measured as the pictures measure them, no narrower than most faces,
// so what room is left over goes to the notes.
func (s *sheet) arrange(beside, below []section) {
	for _, f := range fits {
		if s.lay(beside, below, f) < f.least {
			continue
		}
		loose := f
		loose.notes = leastNotes
		for _, give := range givenBack(beside, below) {
			give.Whole = true
			if s.lay(beside, below, loose) < lowestLadder {
				give.Whole = false
			}
		}
		for loose.rows < fits[0].rows {
			loose.rows++
			if s.lay(beside, below, loose) < lowestLadder {
				loose.rows--
				break
			}
		}
		room := s.lay(beside, below, loose)
		s.fit = loose
		s.fit.notes = math.Min(f.notes, leastNotes+room-lowestLadder)
		s.fit.ladder = math.Max(math.Min(leastNotes+room-s.fit.notes, tallestLadder), lowestLadder)
		for i := range s.Builds {
			s.Builds[i].shorten(s.fit)
		}
		return
	}
}

// givenBack are the items in the order in which they get back what was cut.
func givenBack(lists ...[]section) []*item {
	var first, then []*item
	for _, list := range lists {
		for i := range list {
			for k := range list[i].Items {
				if one := &list[i].Items[k]; list[i].Firm {
					first = append(first, one)
				} else {
					then = append(then, one)
				}
			}
		}
	}
	return append(first, then...)
}

// lay places the sections, cut to a fit, and returns the height that is left for
// the ladder.
func (s *sheet) lay(beside, below []section, f fit) float64 {
	s.Beside, s.Left = cutAll(beside, f, answerWidth), cutAll(below, f, columnWidth)
	for len(s.Left) > 1 && s.answerHeight(f)+stack(s.Left[:1], f, answerWidth) <= s.demandHeight(f) {
		s.Beside, s.Left = append(s.Beside, s.Left[0]), s.Left[1:]
	}
	s.Left, s.Right = balance(s.Left, f)
	return paperHeight - f.notes - s.upper(f) - math.Max(stack(s.Left, f, columnWidth), stack(s.Right, f, columnWidth))
}

func cutAll(list []section, f fit, width float64) []section {
	cut := make([]section, len(list))
	for i, s := range list {
		cut[i] = s.cut(f, width)
	}
	return cut
}

// cut shortens a section to a fit. What is cut off can be read in the tip of
// the shortened item, and in the text of the terminal.
func (s section) cut(f fit, width float64) section {
	items, most, high := s.Items, f.items, f.lines
	if s.Firm {
		most, high = len(items), f.firm
	}
	if n := len(items) - most; n > 0 {
		items = items[:most]
		s.More = fmt.Sprintf("and %d more, in the full text", n)
	}
	s.Items = nil
	for _, i := range items {
		if i.Whole {
			s.Items = append(s.Items, i)
			continue
		}
		lead := i.lead(s)
		lines, whole := drawing.Wrap(lead+i.Text, s.textWidth(width)-boldLead(lead), f.size*mm, false, high)
		if !whole {
			i.Full = i.Text
			i.Text = strings.TrimPrefix(strings.Join(lines, " "), lead)
		}
		s.Items = append(s.Items, i)
	}
	return s
}

// lead is what stands before an item's text in its first line.
func (i item) lead(s section) string {
	switch {
	case s.runsIn():
		return s.Title + " "
	case i.Lead != "":
		return i.Lead + " "
	}
	return ""
}

// boldLead is what bold letters in the first line may take more than the plain
// ones that are measured.
func boldLead(lead string) float64 { return 0.06 * float64(len(lead)) }

// textWidth is the width of a section's text in a column.
func (s section) textWidth(column float64) float64 {
	if s.runsIn() {
		return column
	}
	return column - markWidth
}

// balance parts the sections into two columns so that the longer is as short
// as can be. The first stays first, and each column keeps the order of reading.
func balance(all []section, f fit) (left, right []section) {
	heights := make([]float64, len(all))
	for i, s := range all {
		heights[i] = s.height(f, columnWidth)
	}
	best, chosen := math.Inf(1), 0
	for choice := 0; choice < 1<<len(all); choice += 2 { // bit i sends section i to the right
		var tall [2]float64
		for i, h := range heights {
			tall[choice>>i&1] += h
		}
		if h := math.Max(tall[0], tall[1]); h < best {
			best, chosen = h, choice
		}
	}
	for i, s := range all {
		if chosen>>i&1 == 0 {
			left = append(left, s)
		} else {
			right = append(right, s)
		}
	}
	return left, right
}

// stack is the height of sections under each other.
func stack(list []section, f fit, width float64) float64 {
	h := 0.0
	for _, s := range list {
		h += s.height(f, width)
	}
	return h
}

func (s section) height(f fit, width float64) float64 {
	line := f.size * mm * tallestLine
	h := line + headingSpace
	if s.runsIn() {
		h = headingSpace / 2
	}
	for _, i := range s.Items {
		lead := i.lead(s)
		h += float64(count(lead+i.Text, s.textWidth(width)-boldLead(lead), f.size, false))*line + itemSpace
	}
	if s.More != "" {
		h += line + itemSpace
	}
	return h
}

// count is the number of lines that words take.
func count(words string, width, size float64, bold bool) int {
	lines, _ := drawing.Wrap(words, width, size*mm, bold, 1000)
	return len(lines)
}

// widestPlate is the most of the page's width that the stamped number takes.
const widestPlate = 70.0

// plate is the size of the stamped number and of the title, points.
func (s *sheet) plate() float64 {
	size := 17.0
	for size > 11 && drawing.TextWidth(s.Number, size*mm, true)*1.1 > widestPlate {
		size -= 0.5
	}
	return size
}

// headLines are the number and the title, in the lines they take.
func (s *sheet) headLines() (number, title []string) {
	size := s.plate() * mm
	number, _ = drawing.Wrap(s.Number, widestPlate/1.1+0.01, size, true, 3)
	widest := 0.0
	for _, line := range number {
		widest = math.Max(widest, drawing.TextWidth(line, size, true)*1.1) // letters are spaced
	}
	title, _ = drawing.Wrap(s.Title, paperWidth-widest-55, size, true, 2)
	return number, title
}

// upper is the height of all that is neither ladder, notes nor sections.
func (s *sheet) upper(f fit) float64 {
	line := f.size * mm * tallestLine
	lines := func(words string, width float64) float64 { return float64(count(words, width, f.size, false)) * line }

	h := math.Max(13, float64(max(len(s.NumberLines), len(s.TitleLines)))*s.plate()*mm*1.15+5)
	h += lines(s.Facts+" "+s.Flank, paperWidth) + 0.7

	h += math.Max(s.demandHeight(f), s.answerHeight(f)) + 0.3
	h += line + headingSpace + lines(s.Note, paperWidth) + 1
	h += line + rowSpace
	for _, b := range s.Builds {
		h += s.rowLines(b, f)*line + rowSpace
	}
	h += lines(s.Hidden, paperWidth) + 0.8
	return h + float64(count(s.Footer, paperWidth, 7.5, false))*7.5*mm*tallestLine + 3
}

// demandHeight is the height of what stands left of the answer.
func (s *sheet) demandHeight(f fit) float64 {
	line := f.size * mm * tallestLine
	h := line + headingSpace + 5*(line+rowSpace)
	for _, w := range s.Why {
		h += float64(count(w, demandWidth, f.size, false))*line + itemSpace
	}
	return h
}

// answerHeight is the height of the answer and of what belongs to it.
func (s *sheet) answerHeight(f fit) float64 {
	size := f.size * 1.25
	answer := float64(count(s.Sign+" "+s.Answer, answerWidth-7.6, size, true))*size*mm*tallestLine + 6.5
	return answer + stack(s.Beside, f, answerWidth)
}

// rowLines is the height of a row in lines.
func (s *sheet) rowLines(b buildRow, f fit) float64 {
	most := 1
	for i, cell := range []string{"", b.Label, b.Price, b.Carries, b.Lasts, b.Metric, b.Other, b.Range} {
		lines := count(cell, columnWidths[i]-1.6, f.size, b.Recommended)
		if cell == b.Label {
			lines = min(lines, f.rows)
		}
		most = max(most, lines)
	}
	return float64(most)
}

// shorten cuts the name of a build to the lines it may have.
func (b *buildRow) shorten(f fit) {
	lines, whole := drawing.Wrap(b.Label, columnWidths[1]-1.6, f.size*mm, b.Recommended, f.rows)
	if !whole {
		b.Label, b.Full = strings.Join(lines, " "), b.Label
	}
}
