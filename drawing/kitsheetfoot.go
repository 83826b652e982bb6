package drawing

import (
	"fmt"
	"strings"

	"axlewright/kit"
)

// foot is the lower part of a plate's sheet: holes, mark, stations, reason and
// caution. It is set from the bottom, and top says where it begins.
func (s *kitSheet) foot() (shapes []Shape, top float64) {
	t := sheetTable{
		columns: []float64{0, 16, 36, 70, 96, 124},
		heads:   []string{"hole", "kind", "size", "from left", "from below", "what for"},
		wide:    a4Wide - 2*a4Margin,
	}
	box := s.plate.Outline.Bounds()
	for _, h := range s.plate.Holes {
		t.add(h.Label, string(h.Kind), "Ø "+metricOnly(h.Diameter), metricOnly(h.At.X-box.Low.X), metricOnly(h.At.Y-box.Low.Y), kit.ScrewWords(h.Note))
	}
	for _, c := range s.plate.Cutouts {
		b := c.Loop.Bounds()
		t.add(c.Label, c.Kind, fmt.Sprintf("%s × %s", bare(b.Width()), metricOnly(b.Height())), metricOnly(b.Middle().X-box.Low.X), metricOnly(b.Middle().Y-box.Low.Y), "middle of its box")
	}
	notes := s.notes()
	const line = 4.2
	high := t.high() + float64(len(notes))*line + 6
	top = a4High - a4Margin - high
	shapes = append(shapes, t.shapes(a4Margin, top)...)
	y := top + t.high() + 5
	for _, n := range notes {
		n.At = Point{a4Margin, y}
		shapes = append(shapes, n)
		y += line
	}
	return shapes, top
}

// notes below the table, a line each.
func (s *kitSheet) notes() []Text {
	var list []Text
	wide := a4Wide - 2*a4Margin
	add := func(words string, bold bool, most int) {
		lines, _ := Wrap(words, wide, normal, bold, most)
		for _, l := range lines {
			list = append(list, Text{Words: l, Size: normal, Bold: bold})
		}
	}
	p, d := s.plate, s.drawn
	scale := "Heavy edges are welded, thin ones never"
	if p.SeamLength(kit.VentSeam) > 0 {
		scale += ", dotted ones stay open until the last so that the cavity can breathe"
	}
	add(fmt.Sprintf("%s. %s of edge to weld. Edges exact to the file; figures rounded.", scale, lengthWords(p.SeamLength(kit.WeldSeam))), false, 2)
	if len(p.Etched.Lines) > 0 {
		add("Etched: "+strings.Join(p.Etched.Lines, " / ")+fmt.Sprintf(", capitals of %s; the arrow points %s.", metricOnly(p.Etched.Size), p.Frame.Up), false, 2)
	}
	if len(p.Stations) > 0 {
		var names []string
		for _, st := range p.Stations {
			names = append(names, fmt.Sprintf("%d %s", st.Number, st.Name))
		}
		add("Stations: "+strings.Join(names, "; ")+".", false, 3)
	}
	add("Why this revision: "+d.Reason.Why.Text+".", false, 2)
	if len(d.Reason.Moved) > 0 {
		add("Moved: "+strings.Join(d.Reason.Moved, "; ")+".", false, 2)
	}
	add("△ Fit the first plate to a real casting of this variant before a batch is cut. Plates just cut are hot and sharp. This drawing is no strength rating.", true, 2)
	return list
}

// bare is a length without its unit.
func bare(x float64) string {
	words, _, _ := strings.Cut(metricOnly(x), " ")
	return words
}

// A sheetTable is a small ruled table.
type sheetTable struct {
	columns []float64 // mm, left edge of each
	heads   []string
	rows    [][]string
	wide    float64
}

const tableRow = 4.6 // mm

func (t *sheetTable) add(cells ...string) { t.rows = append(t.rows, cells) }

func (t *sheetTable) high() float64 {
	if len(t.rows) == 0 {
		return 0
	}
	return float64(len(t.rows)+1)*tableRow + 1
}

// shapes draws the table with its upper left corner at a place.
func (t *sheetTable) shapes(left, top float64) []Shape {
	if len(t.rows) == 0 {
		return nil
	}
	var list []Shape
	rule := func(y, width float64) {
		list = append(list, Line{Point{left, y}, Point{left + t.wide, y}, Ink{Width: width}})
	}
	line := func(y float64, cells []string, bold bool) {
		for i, c := range cells {
			room := t.wide - t.columns[i]
			if i+1 < len(t.columns) {
				room = t.columns[i+1] - t.columns[i]
			}
			short, whole := Shorten(c, room-1.5, normal, bold)
			text := Text{At: Point{left + t.columns[i], y}, Words: short, Size: normal, Bold: bold}
			if !whole {
				text.Full = c
			}
			list = append(list, text)
		}
	}
	y := top + tableRow
	line(y-1.2, t.heads, true)
	rule(y, light)
	for _, row := range t.rows {
		y += tableRow
		line(y-1.2, row, false)
		rule(y, hairline)
	}
	return list
}
