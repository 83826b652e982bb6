package paper

import "axlewright/drawing"

// A Table has rows of cells under a head that is repeated on every page. Cells
// wrap; a row that is very long is parted.
type Table struct {
	Columns []Column
	Rows    [][]string
	Blank   int     // empty rows below them, for the pencil
	Least   float64 // height of a row at least, mm; 0 is as high as its words
	Small   bool    // in small letters
}

// A Column of a table.
type Column struct {
	Title string  // a table without titles has no head
	Share float64 // of the width, against the others'; 0 counts as 1
	Right bool    // figures
	Bold  bool
}

// longest is how many lines of a row stay together.
const longest = 12

func (t Table) strips(s size, width float64) []strip {
	letters := s.text
	if t.Small {
		letters = s.small
	}
	widths := t.widths(width)
	head := t.head(s, width, widths)
	var list []strip
	if head != nil {
		head.bound = true
		list = append(list, *head)
	}
	rows := t.Rows
	for range t.Blank {
		rows = append(rows[:len(rows):len(rows)], nil)
	}
	for i, row := range rows {
		least := t.Least
		if i >= len(t.Rows) {
			least = max(least, s.box*0.8)
		}
		for _, x := range t.row(row, widths, letters, width, least) {
			x.head = head
			list = append(list, x)
		}
	}
	return list
}

const cellPad = 1.2

func (t Table) widths(width float64) []float64 {
	sum := 0.0
	list := make([]float64, len(t.Columns))
	for i, c := range t.Columns {
		list[i] = max(c.Share, 0)
		if list[i] == 0 {
			list[i] = 1
		}
		sum += list[i]
	}
	for i := range list {
		list[i] *= width / sum
	}
	return list
}

func (t Table) head(s size, width float64, widths []float64) *strip {
	titled := false
	height := 0.0
	var shapes []drawing.Shape
	x := 0.0
	for i, c := range t.Columns {
		titled = titled || c.Title != ""
		for k, l := range wrapAll(c.Title, widths[i]-2*cellPad, s.small, true) {
			shapes = append(shapes, c.place(l, x, widths[i], float64(k)*s.small*line+s.small, s.small, true))
			height = max(height, float64(k+1)*s.small*line)
		}
		x += widths[i]
	}
	if !titled {
		return nil
	}
	height += 1
	return &strip{height: height, shapes: append(shapes, drawing.Line{From: drawing.Point{X: 0, Y: height}, To: drawing.Point{X: width, Y: height}, Ink: drawing.Ink{Width: 0.5}})}
}

// row is a row in parts of at most so many lines, ruled off below the last.
func (t Table) row(cells []string, widths []float64, letters, width, least float64) []strip {
	most := 0
	lines := make([][]string, len(t.Columns))
	for i, c := range t.Columns {
		if i < len(cells) {
			lines[i] = wrapAll(cells[i], widths[i]-2*cellPad, letters, c.Bold)
		}
		most = max(most, len(lines[i]))
	}
	var list []strip
	for from := 0; from == 0 || from < most; from += longest {
		part := strip{height: float64(min(longest, most-from))*letters*line + 1}
		x := 0.0
		for i, c := range t.Columns {
			for k := from; k < min(from+longest, len(lines[i])); k++ {
				part.shapes = append(part.shapes, c.place(lines[i][k], x, widths[i], float64(k-from)*letters*line+letters+0.4, letters, c.Bold))
			}
			x += widths[i]
		}
		list = append(list, part)
	}
	last := &list[len(list)-1]
	last.height = max(last.height, least)
	last.shapes = append(last.shapes, drawing.Line{From: drawing.Point{X: 0, Y: last.height}, To: drawing.Point{X: width, Y: last.height}, Ink: drawing.Ink{Width: 0.13}})
	return list
}

// place is a line of a cell, which begins at x.
func (c Column) place(words string, x, width, y, size float64, bold bool) drawing.Text {
	t := text(x+cellPad, y, size, bold, words)
	if c.Right {
		t.At.X, t.Anchor = x+width-cellPad, drawing.End
	}
	return t
}
