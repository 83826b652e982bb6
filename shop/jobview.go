package shop

import (
	"slices"
	"strconv"
)

// StepState is how far a step is.
type StepState string

// The states of a step.
const (
	StepEmpty     StepState = "not begun"
	StepBegun     StepState = "begun"      // with gaps
	StepFull      StepState = "full"       // no gap
	StepDone      StepState = "done"       // marked so, gaps or not
	StepNotNeeded StepState = "not needed" // marked so, or not of this job's works
)

// A StepView is a step of one job, ready to be shown.
type StepView struct {
	Step    Step
	State   StepState
	Applies bool // the step belongs to this job's works
	Fields  []FieldView
	Gaps    int     // boxes wanted and empty
	Verdict Verdict // the worst of its readings
	Stops   []StandingStop
	Notes   []*Entry
	Photos  []*Entry
	Mark    *Entry // "done" or "not needed"
}

// A FieldView is a field of one job with all its places.
type FieldView struct {
	Field   Field
	Applies bool
	Places  []PlaceView
	Gaps    int
}

// A PlaceView is one box.
type PlaceView struct {
	Slot    Slot
	Entry   *Entry  // what stands; nil where nothing does
	Last    int64   // what a new entry must name in Corrects
	Earlier []Entry // what stood before, oldest first
}

// meets says whether what is for some works only belongs to a job of these.
func meets(wanted, have []Work) bool {
	return len(wanted) == 0 || slices.ContainsFunc(have, func(w Work) bool { return slices.Contains(wanted, w) })
}

// Steps returns all steps of the job in their usual order.
func (j *Job) Steps() []StepView {
	var all []StepView
	works, stops := j.Works(), j.Stops()
	for _, s := range steps {
		all = append(all, j.view(s, works, stops))
	}
	return all
}

// Step returns one step of the job.
func (j *Job) Step(key StepKey) (StepView, bool) {
	s, ok := StepOf(key)
	if !ok {
		return StepView{}, false
	}
	return j.view(s, j.Works(), j.Stops()), true
}

func (j *Job) view(s Step, works []Work, stops []StandingStop) StepView {
	v := StepView{Step: s, State: StepEmpty, Applies: meets(s.For, works), Verdict: NotYet,
		Notes: j.All(s.Key, ItemNote), Photos: j.All(s.Key, ItemPhoto), Mark: j.Standing(Slot{s.Key, ItemMark, ""})}
	begun := len(v.Notes) > 0 || len(v.Photos) > 0
	for _, f := range s.Fields {
		fv := j.fieldView(s, f, works)
		for _, p := range fv.Places {
			if p.Entry != nil {
				begun = true
				v.Verdict = Worst(v.Verdict, p.Entry.Verdict)
			}
		}
		v.Gaps += fv.Gaps
		v.Fields = append(v.Fields, fv)
	}
	for _, stop := range stops {
		if slices.Contains(stop.Steps, s.Key) {
			v.Stops = append(v.Stops, stop)
		}
	}
	switch {
	case v.Mark != nil && v.Mark.Value.Word() == MarkDone:
		v.State = StepDone
	case v.Mark != nil || !v.Applies && !begun:
		v.State, v.Gaps = StepNotNeeded, 0
	case begun && v.Gaps == 0:
		v.State = StepFull
	case begun:
		v.State = StepBegun
	}
	return v
}

// The words of a step's mark.
const (
	MarkDone      = "done"
	MarkNotNeeded = "not needed"
)

func (j *Job) fieldView(s Step, f Field, works []Work) FieldView {
	v := FieldView{Field: f, Applies: meets(f.For, works)}
	names := f.Places
	if len(names) == 0 {
		names = []string{""}
	}
	for _, e := range j.All(s.Key, f.Key) { // places named freely, or no longer offered
		if !slices.Contains(names, e.Place) {
			names = append(slices.Clone(names), e.Place)
		}
	}
	filled := 0
	for _, name := range names {
		slot := Slot{s.Key, f.Key, name}
		p := PlaceView{Slot: slot, Entry: j.Standing(slot)}
		if history := j.History(slot); len(history) > 0 {
			p.Last = history[len(history)-1].Seq
			p.Earlier = history[:len(history)-1]
			if p.Entry == nil {
				p.Earlier = history
			}
		}
		if p.Entry != nil {
			filled++
		}
		v.Places = append(v.Places, p)
	}
	wanted := f.Wanted
	if wanted == 0 {
		wanted = max(len(f.Places), 1)
	}
	if !f.Optional && v.Applies && filled < wanted {
		v.Gaps = wanted - filled
	}
	return v
}

// Gaps counts the boxes that are wanted and empty, in all steps up to the
// furthest one that has been begun.
func Gaps(views []StepView) int {
	gaps, open := 0, 0
	for _, v := range views {
		if v.State != StepDone {
			open += v.Gaps
		}
		if v.State != StepEmpty && v.State != StepNotNeeded {
			gaps = open
		}
	}
	return gaps
}

// Next returns the step to go on with, for the line "do next": the one worked at
// last while it has gaps, else the next one that has, else the first; "" when
// there is none. A unit that came back goes on with its return, a job that was
// quoted with what follows the quote.
func (j *Job) Next(views []StepView) StepKey {
	index := func(key StepKey) int {
		return slices.IndexFunc(views, func(v StepView) bool { return v.Step.Key == key })
	}
	if at := index("return"); j.State() == StateBack && at >= 0 && views[at].Mark == nil {
		return "return"
	}
	here := 0
	for i := len(j.entries) - 1; i >= 0; i-- {
		if j.entries[i].Kind == EntrySet {
			here = max(0, slices.IndexFunc(views, func(v StepView) bool { return v.Step.Key == j.entries[i].Step }))
			break
		}
	}
	if j.State() == StateQuoted {
		here = max(here, index("deal")+1)
	}
	for i := range views {
		v := views[(here+i)%len(views)]
		if v.Applies && v.Gaps > 0 && v.State != StepDone {
			return v.Step.Key
		}
	}
	return ""
}

// numberText is the running number as it is written: four digits at least.
func numberText(n int64) string {
	text := strconv.FormatInt(n, 10)
	for len(text) < 4 {
		text = "0" + text
	}
	return text
}

// NumberText is the running number as it is written, four digits at least: "0117".
func (j *Job) NumberText() string { return numberText(j.Number) }

// NumberText is the running number as it is written, four digits at least: "0117".
func (l Line) NumberText() string { return numberText(l.Number) }
