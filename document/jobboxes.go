package document

import (
	"slices"
	"strings"

	"axlewright/document/paper"
	"axlewright/shop"
)

// step is a step of the job as blocks: its title, what can hurt at it, and the
// boxes of some of its fields, all where none are named. There are none where
// the step is not needed.
func (s Source) step(key shop.StepKey, fields ...string) []paper.Block {
	view, ok := s.Job.Step(key)
	if !ok || view.State == shop.StepNotNeeded && !s.blank() {
		return nil
	}
	list := []paper.Block{paper.Heading{Text: view.Step.Title, Note: view.Step.Decides}}
	if words := strings.Join(view.Step.Cautions, "\n"); words != "" {
		list = append(list, paper.Mind{Words: words})
	}
	for _, stop := range view.Stops {
		if stop.Override == nil && !stop.Missing {
			list = append(list, paper.Caution{Words: "STOP. " + stop.Sentence + " " + stop.Why})
		}
	}
	return append(list, s.boxes(view, fields...))
}

// boxes are the boxes of some fields of a step, all where none are named.
func (s Source) boxes(view shop.StepView, fields ...string) paper.Boxes {
	var list paper.Boxes
	for _, f := range view.Fields {
		if f.Field.Run || len(fields) > 0 && !slices.Contains(fields, f.Field.Key) {
			continue // runs of weld have a table of their own
		}
		if (f.Applies || s.blank() || anyFilled(f)) && (s.Prices || f.Field.Kind != shop.FieldSum) {
			list = append(list, s.box(view.Step.Key, f))
		}
	}
	return list
}

func anyFilled(f shop.FieldView) bool {
	return slices.ContainsFunc(f.Places, func(p shop.PlaceView) bool { return p.Entry != nil })
}

// wideFields hold sentences.
var wideFields = []string{"why", "axle", "evidence", "finds", "trim", "complaint", "settled", "oil", "warranty", "source", "reuse"}

// box is one field with its places.
func (s Source) box(step shop.StepKey, f shop.FieldView) paper.Box {
	b := paper.Box{Label: f.Field.Title, Unit: f.Field.Unit, Wide: f.Field.Kind == shop.FieldText && slices.Contains(wideFields, f.Field.Key)}
	for _, o := range f.Field.Options {
		b.Options = append(b.Options, o.Word)
	}
	if f.Field.Kind == shop.FieldDay {
		b.Unit = "day"
	}
	if f.Field.Kind == shop.FieldFigure {
		if limit, _ := shop.LimitsFor(s.Job, step, f.Field, s.Casting, &s.House); limit != nil {
			b.Range, b.From = RangeText(*limit, f.Field.Dim), limitOrigin(*limit)
		}
	}
	for _, p := range s.printed(f) {
		b.Places = append(b.Places, placeOf(p))
	}
	return b
}

// printed are the places of a field that a paper has room for: those round the
// wheel all; of a dozen those that are filled, and four in a row for the pencil.
func (s Source) printed(f shop.FieldView) []shop.PlaceView {
	enough, row := 8, 4
	if f.Field.Kind == shop.FieldPart {
		enough, row = 2, 2
	}
	var list []shop.PlaceView
	for i, p := range f.Places {
		last := len(f.Places) <= enough || i < row || len(list)%row != 0
		if f.Field.Kind == shop.FieldPart && !s.blank() {
			last = false // no boxes for parts that nobody takes
		}
		if p.Entry != nil || last {
			list = append(list, p)
		}
	}
	return list
}

// limitOrigin says where a range comes from, in as few words as tell it.
func limitOrigin(l shop.Limit) string {
	words := string(l.Origin)
	if l.Kind != "" {
		words += ": " + l.Kind
	}
	if l.Origin != shop.Trade && l.Source != "" {
		words += " (" + l.Source + ")"
	}
	return words
}

// placeOf is what stands in one box.
func placeOf(p shop.PlaceView) paper.Place {
	x := paper.Place{Name: p.Slot.Place}
	e := p.Entry
	if e == nil {
		return x
	}
	x.Text = ValueText(e.Value)
	if e.Value.SI != nil {
		x.Text, x.Also = parted(x.Text)
	}
	x.Sign, x.Stop = signOf(e.Verdict), e.Verdict == shop.Halt
	if len(shop.Query(e)) > 0 { // in the words: a small box has no room for them beside the sign
		x.Also = strings.TrimSpace(x.Also + " in question")
	}
	return x
}

// inQuestion marks a reading that is queried while nobody has said what was meant.
const inQuestion = "△ in question"

// entrySign is what is printed beside a reading that stands.
func entrySign(e *shop.Entry) string {
	if len(shop.Query(e)) > 0 {
		return inQuestion
	}
	return signOf(e.Verdict)
}

// signOf is a verdict as it is printed; nothing where there is none.
func signOf(v shop.Verdict) string {
	if v == "" || v == shop.NotYet {
		return ""
	}
	return v.Sign() + " " + string(v)
}

// parted is "0.20 mm (8 thou)" in its two parts.
func parted(both string) (main, also string) {
	main, also, ok := strings.Cut(both, " (")
	if !ok || !strings.HasSuffix(also, ")") {
		return both, ""
	}
	return main, strings.TrimSuffix(also, ")")
}
