package document

import (
	"strings"

	"axlewright/document/paper"
	"axlewright/drawing"
	"axlewright/shop"
)

// The papers of the bench: made of the boxes of its steps, full or for the pencil.

func enquirySheet(s Source) paper.Paper {
	p := paper.Paper{Blocks: s.step("enquiry")}
	p.Add(paper.Sign{"Taken by"}, paper.Notes{})
	return p
}

func identificationCard(s Source) paper.Paper {
	p := paper.Paper{Blocks: s.step("identify")}
	p.Add(s.step("metal")...)
	p.Add(paper.Sign{"Looked at by"}, paper.Notes{})
	return p
}

func setUpSheet(s Source) paper.Paper {
	var p paper.Paper
	if view, ok := s.Job.Step("assemble"); ok {
		p.Add(paper.Heading{Text: "Gears and crown wheel"}, append(paper.Boxes{s.teeth()}, s.boxes(view, "gears", "wheel_torque", "runout")...))
	}
	for _, part := range setUpFields {
		blocks := s.step(part.step, part.fields...)
		if view, ok := s.Job.Step("assemble"); ok && part.step == "lash" && len(blocks) > 0 { // a set that has run goes back to the lash it had
			last := len(blocks) - 1
			blocks[last] = append(blocks[last].(paper.Boxes), s.boxes(view, "set")...)
		}
		p.Add(blocks...)
		if _, tapped := shop.FieldOf("pattern", "drive_along"); tapped && part.step == "pattern" && len(blocks) > 0 {
			p.Add(s.pattern())
		}
	}
	p.Foot = "A range of the trade is a band and no law: the manual of the axle on the bench wins."
	p.Add(paper.Sign{"Set up by"}, paper.Notes{})
	return p
}

// setUpFields are what the set-up sheet holds; how a figure was come by stands in
// the record.
var setUpFields = []struct {
	step   shop.StepKey
	fields []string
}{
	{"shim", []string{"way", "new_mark", "mark_unit", "wanted", "fitted"}},
	{"preload", []string{"bearings", "seal", "spacer", "torque", "nut"}},
	{"side", []string{"spread", "last", "notches"}},
	{"lash", []string{"lash", "dial"}},
	{"pattern", []string{"load", "drive", "coast", "decision"}},
	{"peg", []string{"final", "spot", "pitch", "angle", "gap", "nut", "touches"}},
}

// pattern is where the marks lie on both sides of the teeth: the words chosen,
// or those there are, to put a ring round one.
func (s Source) pattern() paper.Table {
	t := paper.Table{Small: true, Columns: []paper.Column{{Title: "side", Share: 0.5, Bold: true}, {Title: "along the tooth", Share: 1.2}, {Title: "up the tooth"}, {Title: "shape", Share: 1.6}}}
	for _, side := range []string{"drive", "coast"} {
		row := []string{side}
		for _, way := range []string{"along", "height", "shape"} {
			item := side + "_" + way
			words := s.Job.Value("pattern", item).Word()
			if words == "" {
				f, _ := shop.FieldOf("pattern", item)
				var all []string
				for _, o := range f.Options {
					all = append(all, o.Word)
				}
				words = strings.Join(all, "  /  ")
			} else if e := s.Job.Standing(shop.Slot{Step: "pattern", Item: item}); e != nil {
				words += "  " + signOf(e.Verdict)
			}
			row = append(row, words)
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// teeth are counted when the donor comes in.
func (s Source) teeth() paper.Box {
	return paper.Box{Label: "Teeth, wheel / pinion", Places: []paper.Place{{Text: standing(s.Job, shop.Slot{Step: "donor", Item: "teeth"})}}}
}

func returnForm(s Source) paper.Paper {
	p := paper.Paper{Foot: "Nothing goes to scrap before photographs, oil and readings are compared with the record."}
	p.Blocks = s.step("return")
	p.Add(paper.Sign{"Taken in by"}, paper.Notes{})
	return p
}

// donorTag has a tag to cut out, large enough to read across the yard, and what
// is looked at when a casting comes in.
func donorTag(s Source) paper.Paper {
	var d shop.Donor
	if s.Donor != nil {
		d = *s.Donor
	}
	variant := ""
	if c := s.Job.Casting(); c != nil {
		variant = c.Label
	}
	p := paper.Paper{Foot: "A tag of card dies in the wash: stamp the number into metal and wire it on."}
	p.Add(paper.Picture{Drawing: tag(d, variant)})
	price := ""
	if s.Prices && d.Price > 0 {
		price = d.Price.String()
	}
	p.Add(paper.Boxes{
		{Label: "Came on", Unit: "day", Places: []paper.Place{{Text: d.Came}}},
		{Label: "From", Places: []paper.Place{{Text: d.Source}}},
		{Label: "Price paid", Places: []paper.Place{{Text: price}}},
		{Label: "Shelf", Places: []paper.Place{{Text: d.Place}}},
		{Label: "Caps", Places: []paper.Place{{Text: d.Caps}}},
		{Label: "Note", Places: []paper.Place{{Text: d.Note}}},
	})
	p.Add(s.step("donor")...)
	p.Add(paper.Sign{"Taken in by"}, paper.Notes{})
	return p
}

// tag is the part to cut out.
func tag(d shop.Donor, variant string) drawing.Drawing {
	const wide, high = 150.0, 58.0
	thin := drawing.Ink{Width: 0.2}
	shapes := []drawing.Shape{
		drawing.Rect{Box: drawing.Box{Left: 0.5, Top: 0.5, Right: wide - 0.5, Bottom: high - 0.5}, Ink: drawing.Ink{Width: 0.35, Dash: []float64{3, 1.5}}},
		drawing.Circle{Centre: drawing.Point{X: 11, Y: high / 2}, Radius: 4, Ink: drawing.Ink{Width: 0.5}},
		drawing.Text{At: drawing.Point{X: 22, Y: 8}, Words: "DONOR", Size: 4, Bold: true},
	}
	big := 22.0
	if one := drawing.TextWidth(d.Number, 1, true); one > 0 {
		big = min(big, (wide-28)/one)
	}
	if d.Number == "" {
		shapes = append(shapes, drawing.Line{From: drawing.Point{X: 22, Y: 31}, To: drawing.Point{X: wide - 8, Y: 31}, Ink: thin})
	}
	shapes = append(shapes, drawing.Text{At: drawing.Point{X: 22, Y: 31}, Words: d.Number, Size: big, Bold: true})
	for i, part := range []struct{ name, text string }{{"variant", variant}, {"teeth", d.Teeth}, {"class", d.Class}, {"caps", d.Caps}} {
		x, y := 22+float64(i%2)*64, 41+float64(i/2)*11.0
		shapes = append(shapes, drawing.Text{At: drawing.Point{X: x, Y: y}, Words: part.name, Size: 3.2},
			drawing.Line{From: drawing.Point{X: x + 14, Y: y + 1.2}, To: drawing.Point{X: x + 58, Y: y + 1.2}, Ink: thin})
		words, _ := drawing.Shorten(part.text, 44, 5, true)
		shapes = append(shapes, drawing.Text{At: drawing.Point{X: x + 15, Y: y}, Words: words, Size: 5, Bold: true})
	}
	return drawing.Drawing{Name: "tag", Width: wide, Height: high, Title: "Donor " + d.Number, Layers: []drawing.Layer{{Name: "tag", Shapes: shapes}}}
}

// weldLog has the steps of the weld, and a row for each run.
func weldLog(s Source) paper.Paper {
	p := paper.Paper{Foot: "Local rules on hot work come first. Weld only metal that has been identified."}
	var runs [][]string
	if view, ok := s.Job.Step("weld"); ok {
		for _, place := range weldPlaces(view) {
			row := []string{place}
			for _, items := range weldItems {
				var words []string
				for _, item := range items {
					if e := s.Job.Standing(shop.Slot{Step: "weld", Item: item, Place: place}); e != nil {
						text := ValueText(e.Value)
						if e.Verdict != shop.Fine {
							text = strings.TrimSpace(entrySign(e) + " " + text)
						}
						words = append(words, text)
					}
				}
				row = append(row, strings.Join(words, ", "))
			}
			who := ""
			if e := s.Job.Standing(shop.Slot{Step: "weld", Item: "amps", Place: place}); e != nil {
				who = e.Who.Name + ", " + day(e.At)
			}
			runs = append(runs, append(row, who))
		}
	}
	rows := 4
	if s.blank() {
		rows = 7
	}
	for _, key := range []shop.StepKey{"plates", "jig", "weld", "cooled"} {
		var fields []string
		if key == "jig" {
			fields = []string{"caps", "mandrel", "dial"}
		}
		blocks := s.step(key, fields...)
		if key == "weld" && len(blocks) > 0 {
			last := len(blocks) - 1
			blocks[last] = withoutPlaces(blocks[last].(paper.Boxes))
			blocks = append(blocks, paper.Table{Columns: []paper.Column{{Title: "run", Share: 0.7}, {Title: s.weldHead("start", "warm at the start"), Share: 1.6},
				{Title: s.weldHead("interpass", "between runs"), Share: 1.6}, {Title: s.weldHead("amps", "amps, volts"), Share: 1.6}, {Title: "minutes, filler", Share: 1.4}, {Title: "runs", Share: 0.6}, {Title: "who, when", Share: 1.6}},
				Rows: runs, Blank: max(rows-len(runs), 0)})
		}
		p.Add(blocks...)
	}
	p.Add(paper.Sign{"Welded by"}, paper.Notes{})
	return p
}

// weldItems are what the columns of the weld log hold of each run.
var weldItems = [][]string{{"start"}, {"interpass"}, {"amps", "volts"}, {"minutes", "lot"}, {"runs"}}

// weldHead is the head of a column with the range below it.
func (s Source) weldHead(item, words string) string {
	f, _ := shop.FieldOf("weld", item)
	if limit, _ := shop.LimitsFor(s.Job, "weld", f, s.Casting, &s.House); limit != nil {
		words += "\n" + RangeText(*limit, f.Dim) + "\n" + limitOrigin(*limit)
	}
	return words
}

// weldPlaces are the pieces that something was written of.
func weldPlaces(view shop.StepView) []string {
	var list []string
	seen := map[string]bool{}
	for _, f := range view.Fields {
		for _, p := range f.Places {
			if p.Entry != nil && p.Slot.Place != "" && !seen[p.Slot.Place] {
				seen[p.Slot.Place] = true
				list = append(list, p.Slot.Place)
			}
		}
	}
	return list
}

// withoutPlaces leaves out what stands in the table of runs.
func withoutPlaces(list paper.Boxes) paper.Boxes {
	var rest paper.Boxes
	for _, b := range list {
		if len(b.Places) < 2 {
			rest = append(rest, b)
		}
	}
	return rest
}
