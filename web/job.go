package web

import (
	"slices"

	"github.com/a-h/templ"

	"axlewright/document"
	"axlewright/shop"
)

// A jobShow is a job as its first page shows it.
type jobShow struct {
	Job     *shop.Job
	Views   []shop.StepView
	Next    shop.StepKey
	Stops   []shop.StandingStop
	Parts   []shop.Part
	Role    shop.Role
	Advice  []*shop.Entry
	Quotes  []*shop.Entry
	Papers  []*shop.Entry
	Cert    []shop.Certificate
	Failure []shop.Failure
}

// plates says whether anything is welded on: the kit and how it is welded have pages then.
func (s jobShow) plates() bool {
	works := s.Job.Works()
	return slices.Contains(works, shop.WorkPlates) || slices.Contains(works, shop.WorkPeg)
}

// jobPage shows where a job stands and what is next.
func jobPage(v *visit) error {
	j, err := v.job()
	if err != nil {
		return err
	}
	views := j.Steps()
	s := jobShow{Job: j, Views: views, Next: j.Next(views), Stops: j.Stops(), Parts: j.Parts(), Role: v.who.Role,
		Advice: j.Kept(shop.EntryAdvice), Papers: j.Kept(shop.EntryPaper), Cert: j.Certificates()}
	if v.who.Role.May(shop.ActPrices) {
		s.Quotes = j.Kept(shop.EntryQuote)
	}
	for _, w := range j.Value("return", "evidence").Words {
		if f, ok := shop.FailureOf(w); ok {
			s.Failure = append(s.Failure, f)
		}
	}
	title := j.Title()
	if title == "" {
		title = "Nobody named yet"
	}
	return v.show(jobSheet(v.frame(title).ofJob(j), s))
}

// recordPage shows the whole record, newest last, as it was written.
func recordPage(v *visit) error {
	j, err := v.job()
	if err != nil {
		return err
	}
	found, err := v.shop.VerifyJob(v.ctx(), j.ID)
	if err != nil {
		return err
	}
	f := v.frame("The record").ofJob(j)
	f.Wide = true
	return v.show(recordSheet(f, j, found, v.who.Role.May(shop.ActPrices)))
}

// begun is the stops worth showing on the first page: those that somebody's
// reading has caused, and those at the step that is next.
func begun(s jobShow) []shop.StandingStop {
	var all []shop.StandingStop
	for _, st := range s.Stops {
		if !st.Missing || slices.Contains(st.Steps, s.Next) {
			all = append(all, st)
		}
	}
	return all
}

func titleOf(key shop.StepKey) string {
	if s, ok := shop.StepOf(key); ok {
		return s.Title
	}
	if key == shop.StepJob {
		return "The job"
	}
	return string(key)
}

// lastSeq is what the next entry of a place must name.
func lastSeq(j *shop.Job, s shop.Slot) int64 {
	if e := j.Last(s); e != nil {
		return e.Seq
	}
	return 0
}

func stepPath(j *shop.Job, key shop.StepKey) templ.SafeURL {
	return templ.SafeURL("/job/" + string(j.ID) + "/" + string(key))
}

func jobPath(j *shop.Job, more string) templ.SafeURL {
	return templ.SafeURL("/job/" + string(j.ID) + more)
}

// standingText is what stands in all places of a field, for comparing a
// failure with the record.
func standingText(j *shop.Job, s shop.Slot) string {
	text := ""
	for _, e := range j.InPlaces(s.Step, s.Item) {
		if text != "" {
			text += "; "
		}
		if e.Place != "" {
			text += e.Place + ": "
		}
		text += document.ValueText(e.Value)
	}
	if text == "" {
		return "not in the record"
	}
	return text
}

func fieldTitle(s shop.Slot) string {
	if f, ok := shop.FieldOf(s.Step, s.Item); ok {
		return f.Title
	}
	return s.Item
}
