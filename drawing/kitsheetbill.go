package drawing

import (
	"fmt"
	"math"

	"axlewright/kit"
	"axlewright/quantity"
)

// KitBill is the first A4 sheet of a kit: its bill, the drill-and-tap table and
// why the revision exists.
func KitBill(d *kit.Drawn) Drawing {
	b := d.Bill()
	title := fmt.Sprintf("%s: %s", d.Name, d.Title)
	w := sheetWriter{y: 38}
	w.heading("Bill of one kit")
	bill := sheetTable{
		columns: []float64{0, 11, 56, 70, 92, 108, 140, 158},
		heads:   []string{"piece", "", "in a kit", "steel", "thick", "box", "mass", "cut, pierces"},
		wide:    a4Wide - 2*a4Margin,
	}
	for _, r := range b.Rows {
		bill.add(r.Key, r.Name, fmt.Sprint(r.Count), r.Steel, bare(r.Thickness)+" mm", fmt.Sprintf("%.1f × %.1f mm", r.Long*1e3, r.Wide*1e3),
			fmt.Sprintf("%.3f kg", r.Mass), fmt.Sprintf("%.0f mm, %d", r.Cut*1e3, r.Pierces))
	}
	bill.add("", "one kit", fmt.Sprint(b.Count), "", "", fmt.Sprintf("%.0f cm²", b.Area*1e4), fmt.Sprintf("%.3f kg", b.Mass), fmt.Sprintf("%.2f m", b.Cut))
	w.table(&bill)
	if len(d.Drilling) > 0 {
		w.heading("Drill and tap through the guide holes")
		w.table(drillTable(d))
		for _, r := range d.Drilling {
			words := fmt.Sprintf("%s: %s, %s.", map[kit.Verdict]string{kit.Fine: "✓ fine", kit.Look: "△ look", kit.Stop: "✕ stop"}[r.Verdict], r.Name, r.Screw())
			for _, s := range r.Sentences {
				words += " " + s
			}
			w.words(words, r.Verdict == kit.Stop, 4)
		}
		w.words("Depths are taken at the thinnest that the wall may be; measure it first. Iron: suction, not air. Least strengths of standards, no rating.", false, 2)
	}
	w.heading("Why this revision")
	w.words(d.Reason.Why.Text+".", false, 3)
	for _, m := range d.Reason.Moved {
		w.words("Moved: "+m+".", false, 2)
	}
	for i, n := range d.Reason.Builds {
		if i == 0 {
			w.words("Builds that taught it: "+n, false, 1)
			continue
		}
		w.words("    "+n, false, 1)
	}
	right := a4Wide - a4Margin
	shapes := append(frame(),
		Text{At: Point{a4Margin, 19}, Words: d.Name.String(), Size: 7, Bold: true},
		Text{At: Point{right, 16}, Words: "casting " + d.Casting, Size: large, Anchor: End},
		Text{At: Point{right, 21}, Words: "drawn " + d.Date.Format("2 January 2006"), Size: normal, Anchor: End},
		Text{At: Point{right, 25.5}, Words: fmt.Sprintf("sheet 1 of %d", len(d.Plates)+1), Size: normal, Anchor: End},
		Text{At: Point{right, 30}, Words: "seal " + d.Seal, Size: small, Anchor: End, Tone: Grey},
		Line{Point{a4Margin - 4, 34}, Point{a4Wide - a4Margin + 4, 34}, Ink{Width: light}})
	name, _ := Shorten(d.Title, a4Wide-2*a4Margin-55, 4.2, true)
	shapes = append(shapes, Text{At: Point{a4Margin, 27}, Words: name, Size: 4.2, Bold: true})
	return Drawing{
		Name: "bill-" + fileWord(d.Name.String()), Width: a4Wide, Height: math.Max(a4High, w.y+a4Margin), Title: title,
		Desc:   fmt.Sprintf("%d pieces, %s in one kit, %d tapped holes.", b.Count, quantity.Format(b.Mass, quantity.Mass), len(d.Drilling)),
		Layers: []Layer{{"paper", shapes}, {"words", w.shapes}},
	}
}

func drillTable(d *kit.Drawn) *sheetTable {
	t := sheetTable{
		columns: []float64{0, 34, 56, 69, 94, 110, 130, 148, 168},
		heads:   []string{"hole", "thread", "class", "tapped metal", "drill", "depth", "thread", "needed", "left"},
		wide:    a4Wide - 2*a4Margin,
	}
	for _, r := range d.Drilling {
		left := "through"
		if !r.Through {
			left = bare(r.Left) + " mm"
		}
		t.add(r.Name, r.Screw(), r.Class, r.Metal, bare(r.Drill), bare(r.Depth)+" mm", bare(r.Have)+" mm", bare(r.Need)+" mm", left)
	}
	return &t
}

// A sheetWriter sets headings, tables and words below each other.
type sheetWriter struct {
	shapes []Shape
	y      float64
}

func (w *sheetWriter) heading(words string) {
	w.y += 5
	w.shapes = append(w.shapes, Text{At: Point{a4Margin, w.y}, Words: words, Size: large, Bold: true})
	w.y += 2
}

func (w *sheetWriter) table(t *sheetTable) {
	w.shapes = append(w.shapes, t.shapes(a4Margin, w.y)...)
	w.y += t.high() + 5
}

func (w *sheetWriter) words(words string, bold bool, most int) {
	lines, _ := Wrap(words, a4Wide-2*a4Margin, normal, bold, most)
	for _, l := range lines {
		w.y += 1
		w.shapes = append(w.shapes, Text{At: Point{a4Margin, w.y + 2}, Words: l, Size: normal, Bold: bold})
		w.y += 3.2
	}
	w.y += 1
}
