package document

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"axlewright/document/paper"
	"axlewright/shop"
)

// buildRecord is what was done to a unit, measured and fitted, by whom and when,
// and what was corrected: a row a step, so that a whole unit goes on to a page.
// The range stands beside what is not within it.
func buildRecord(s Source) paper.Paper {
	var p paper.Paper
	t := paper.Table{Small: true, Columns: []paper.Column{{Title: "step", Share: 1.3, Bold: true}, {Title: "found, decided, fitted; ✓ is fine, within the range that stood beside it then", Share: 7}, {Title: "by, when", Share: 1.5}}}
	if s.blank() {
		t.Least = 8
		for _, step := range shop.Steps() {
			if ofBuild(step.Key) {
				t.Rows = append(t.Rows, []string{step.Title})
			}
		}
		p.Add(t, paper.Sign{"Built by", "Looked at by"}, paper.Notes{})
		return p
	}
	p.Add(paper.Text{Words: s.ordered(), Bold: true})
	for _, w := range s.overrides() {
		p.Add(paper.Caution{Words: w})
	}
	for _, view := range s.Job.Steps() {
		if ofBuild(view.Step.Key) {
			t.Rows = append(t.Rows, s.stepRow(view)...)
		}
	}
	p.Foot = noClaim
	p.Add(t, paper.Sign{"Built by"}, paper.Notes{})
	return p
}

// ofBuild leaves out what is the customer's or the till's, and what the unit was
// like before.
func ofBuild(key shop.StepKey) bool {
	return !slices.Contains([]shop.StepKey{"enquiry", "deal", "strip", "return"}, key)
}

// stepRow is a step as a row: its fields run together, then what was corrected.
// There is none where nothing was written.
func (s Source) stepRow(view shop.StepView) [][]string {
	var told, corrected, who []string
	for _, f := range view.Fields {
		if f.Field.Kind == shop.FieldSum && !s.Prices {
			continue
		}
		says, limits := []string{}, []string{}
		for _, p := range f.Places {
			if e := p.Entry; e != nil {
				says = append(says, strings.TrimSpace(named(p.Slot.Place)+ValueText(e.Value)+confirmed(e.Value)+" "+strings.TrimSuffix(entrySign(e), " fine")))
				who = append(who, e.Who.Name+", "+day(e.At))
				if e.Limit != nil && e.Verdict != shop.Fine {
					limits = append(limits, RangeText(*e.Limit, f.Field.Dim)+", "+string(e.Limit.Origin))
				}
			}
			corrected = append(corrected, corrections(f.Field.Title, p)...)
		}
		if len(says) == 0 {
			continue
		}
		words := f.Field.Title + ": " + strings.Join(says, "; ")
		if len(limits) > 0 {
			words += " (" + strings.Join(once(limits), "; ") + ")"
		}
		told = append(told, words)
	}
	for _, n := range view.Notes {
		told = append(told, "note: "+n.Value.Text)
		who = append(who, n.Who.Name+", "+day(n.At))
	}
	if n := len(view.Photos); n > 0 {
		told = append(told, strconv.Itoa(n)+" photographs kept with the record")
	}
	lines := append([]string{strings.Join(told, " · ")}, corrected...)
	if text := strings.TrimSpace(strings.Join(lines, "\n")); text != "" {
		return [][]string{{view.Step.Title, text, strings.Join(once(who), "\n")}}
	}
	return nil
}

func named(place string) string {
	if place == "" {
		return ""
	}
	return place + ": "
}

func confirmed(v shop.Value) string {
	if v.Confirmed {
		return " (asked after, and confirmed)"
	}
	return ""
}

// corrections say what stood in a place before, who wrote it and when, and why
// it no longer stands.
func corrections(title string, p shop.PlaceView) []string {
	var lines []string
	for i := len(p.Earlier) - 1; i >= 0; i-- {
		next := p.Entry
		if i+1 < len(p.Earlier) {
			next = &p.Earlier[i+1]
		}
		if next == nil { // the withdrawal that stands
			lines = append(lines, "△ "+title+" "+named(p.Slot.Place)+"taken back, "+by(p.Earlier[i]))
			continue
		}
		line := "△ " + title + " " + named(p.Slot.Place) + "was " + ValueText(p.Earlier[i].Value) + ", " + by(p.Earlier[i]) + "; corrected by " + by(*next)
		if next.Why != "" {
			line += ": " + next.Why
		}
		lines = append(lines, line)
	}
	return lines
}

// by is who wrote an entry, and when.
func by(e shop.Entry) string { return e.Who.Name + ", " + moment(e.At) }

func with(instrument string) string {
	if instrument == "" {
		return ""
	}
	return ", " + instrument
}

// once leaves out what was said before.
func once(list []string) []string {
	var out []string
	for _, w := range list {
		if !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	return out
}

// ordered says which works were ordered and which of them the record shows.
func (s Source) ordered() string {
	works := s.Job.Works()
	if len(works) == 0 {
		return "Ordered: a rebuild as standard, measured and set."
	}
	var done, not, all []string
	for _, w := range works {
		all = append(all, string(w))
		if s.Job.Done(w) {
			done = append(done, string(w))
		} else {
			not = append(not, string(w))
		}
	}
	says := "Ordered: " + strings.Join(all, ", ") + "."
	if len(done) > 0 {
		says += " Done by the record: " + strings.Join(done, ", ") + "."
	}
	if len(not) > 0 {
		says += " △ Not in the record yet: " + strings.Join(not, ", ") + "."
	}
	return says
}

// overrides are the stops of this unit that somebody answered for, and those
// that stand.
func (s Source) overrides() []string {
	var list []string
	for _, st := range s.Job.Stops() {
		if o := st.Override; o != nil {
			list = append(list, "Stop overridden: "+st.Sentence+" By "+by(*o)+": "+o.Why)
		}
	}
	for _, st := range s.Job.OutStops() {
		list = append(list, "STOP. "+st.Sentence+" "+st.Why)
	}
	return list
}

// wholeRecord is every entry, in the order of writing.
func wholeRecord(s Source) paper.Paper {
	t := paper.Table{Small: true, Columns: []paper.Column{{Title: "no.", Share: 0.55, Right: true}, {Title: "when", Share: 1.45}, {Title: "who", Share: 1.3},
		{Title: "where", Share: 2.4}, {Title: "what", Share: 4}}}
	for _, e := range s.Job.Entries() {
		t.Rows = append(t.Rows, []string{strconv.FormatInt(e.Seq, 10), moment(e.At), e.Who.Name, where(e), s.what(e)})
	}
	if s.blank() {
		t.Blank = 30
	}
	p := paper.Paper{Blocks: []paper.Block{t}}
	if !s.blank() {
		p.Foot = fmt.Sprintf("%d entries. SHA-256 of the last: %s", s.Job.Head.Seq, s.Job.Head.Hash)
	}
	for i, f := range s.Job.Damage {
		if i == 0 {
			p.Blocks = slices.Insert(p.Blocks, 0, paper.Block(paper.Caution{Words: "This record is not whole: " + f.String()}))
		}
	}
	return p
}

func where(e shop.Entry) string {
	words := titleOf(e.Step) + ": " + fieldTitle(e.Slot())
	if e.Place != "" && !e.Slot().Beside() {
		words += ", " + e.Place
	}
	return words
}

// what an entry says, which one it corrects and why.
func (s Source) what(e shop.Entry) string {
	words := ValueText(e.Value)
	f, _ := shop.FieldOf(e.Step, e.Item)
	if !s.Prices && (e.Kind == shop.EntryQuote || f.Kind == shop.FieldSum) {
		words = "a sum of money"
	}
	if e.Kind == shop.EntryCertificate {
		words = "certificate signed"
	}
	if e.Kind == shop.EntryPhoto {
		words = "photograph: " + e.Value.Text
	}
	if sign := signOf(e.Verdict); sign != "" {
		words += "  " + sign
	}
	if e.Limit != nil {
		words += " (" + RangeText(*e.Limit, f.Dim) + ")"
	}
	words += with(e.Instrument)
	if e.Corrects != 0 {
		was := ""
		for _, old := range s.Job.History(e.Slot()) {
			if old.Seq == e.Corrects && (s.Prices || f.Kind != shop.FieldSum) {
				was = ", which said " + ValueText(old.Value)
			}
		}
		words += fmt.Sprintf("\n△ corrects no. %d%s", e.Corrects, was)
	}
	if e.Why != "" {
		words += "\nwhy: " + e.Why
	}
	return words
}
