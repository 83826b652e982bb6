package web

import (
	"net/url"
	"slices"
	"strings"

	"axlewright/quantity"
	"axlewright/setup"
	"axlewright/shop"
)

// An ask is a question of setting-up: what is asked for, and the sum that
// answers it in the fitter's words.
type ask struct {
	Key, Title string
	About      string
	Steps      []shop.StepKey // at which it is offered
	Fields     []askField
	Work       func(in asked) (setup.Answer, error)
}

// An askField is one reading or choice of a question.
type askField struct {
	Key, Title, Hint string
	Dim              quantity.Dimension
	Unit             string
	Options          []string
	Optional         bool
	Drawn            string // its options are line drawings to tap: "drive"
	From             source // what a job has of it already
}

// asked holds what was typed, and collects what cannot be read.
type asked struct {
	desk
	form  url.Values
	ask   ask
	wrong *[]string
	kept  *[]keep
}

// A keep is a result that may go into the record with one tap.
type keep struct {
	Slot  shop.Slot
	Typed string
	Last  int64 // what the entry follows
}

// keep offers a result for a box of the record that does not hold it yet.
func (in asked) keep(step shop.StepKey, item string, si float64, dim quantity.Dimension) {
	slot := shop.Slot{Step: step, Item: item}
	typed := typedMetric(si, dim)
	if in.job == nil || in.job.Value(step, item).Typed == typed {
		return
	}
	*in.kept = append(*in.kept, keep{slot, typed, lastSeq(in.job, slot)})
}

// reading is a figure that was typed; left out, it has not been taken.
func (in asked) reading(key string) setup.Reading {
	q, ok := in.quantity(key)
	if !ok {
		return setup.Reading{}
	}
	return setup.Typed(q)
}

// number is the SI value of what was typed, zero where nothing was.
func (in asked) number(key string) float64 {
	q, _ := in.quantity(key)
	return q.SI
}

func (in asked) whole(key string) int { return int(in.number(key)) }

func (in asked) quantity(key string) (quantity.Quantity, bool) {
	i := slices.IndexFunc(in.ask.Fields, func(f askField) bool { return f.Key == key })
	text := strings.TrimSpace(in.form.Get(key))
	if i < 0 || text == "" {
		return quantity.Quantity{}, false
	}
	f := in.ask.Fields[i]
	unit := in.form.Get(key + ".unit")
	if unit == "" {
		unit = f.Unit
	}
	q, err := quantity.Parse(withUnit(text, unit), f.Dim)
	if err != nil {
		*in.wrong = append(*in.wrong, f.Title+": "+faultOf(err).Says)
		return q, false
	}
	return q, true
}

func (in asked) word(key string) string { return in.form.Get(key) }

// several are n readings of one kind, each in a box of its own: see places.
func (in asked) several(key string, n int) []setup.Reading {
	var all []setup.Reading
	for i := range n {
		all = append(all, in.reading(key+itoa(i+1)))
	}
	return all
}

func (in asked) spec() setup.Spec {
	spec := in.desk.spec
	spec.Kind = setup.Kind(in.word("kind"))
	spec.Pegged = in.word("pegged") == "yes"
	return spec
}

func (in asked) mark(key string) setup.Mark {
	m := setup.Mark{Unit: setup.MarkUnit(in.word("mark_unit")), Plus: setup.MarkSense(in.word("mark_plus"))}
	m.Count = in.reading(key)
	return m
}

// askOf finds a question.
func askOf(key string) (ask, bool) {
	for _, a := range asks {
		if a.Key == key {
			return a, true
		}
	}
	return ask{}, false
}

// asksOf are the questions that belong to a step.
func asksOf(step shop.StepKey) []ask {
	var all []ask
	for _, a := range asks {
		if slices.Contains(a.Steps, step) {
			all = append(all, a)
		}
	}
	return all
}

// An askShow is a question with what was typed and the answer.
type askShow struct {
	Ask    ask
	Form   url.Values
	Job    *shop.Job
	Answer *setup.Answer
	Keep   []keep
	Wrong  []string
	Back   string // the page to come back to after keeping
}

// answer works a question out.
func (a ask) answer(d desk, form url.Values) (askShow, error) {
	show := askShow{Ask: a, Form: form, Job: d.job}
	in := asked{desk: d, form: form, ask: a, wrong: &show.Wrong, kept: &show.Keep}
	got, err := a.Work(in)
	switch {
	case len(show.Wrong) > 0:
	case err != nil && codeOf(err) != shop.Invalid:
		return show, err
	case err != nil:
		show.Wrong = strings.Split(faultOf(err).Says, "\n")
	default:
		show.Answer = &got
	}
	return show, nil
}

// waiting is the answer to a question that lacks something.
func waiting(words string) setup.Answer {
	return setup.Answer{State: setup.NotYet, Reason: "Still to come: " + words + "."}
}

// gist is the answer in one sentence: what to do first, else why it stands so.
func (s askShow) gist() string {
	if len(s.Answer.Say) > 0 && s.Answer.State != setup.Stop {
		return s.Answer.Say[0]
	}
	return s.Answer.Reason
}

// tells says whether there is more in the answer than what it waits for.
func (s askShow) tells() bool {
	a := s.Answer
	return a != nil && (a.State != setup.NotYet || len(a.Say)+len(a.Checks)+len(a.Sum) > 0)
}

func settingUpPage(v *visit) error {
	return v.show(settingUpSheet(v.frame("Setting-up").at("setting"), asks))
}

// questionPage asks, and answers what was asked. From a job it answers at once
// what the record has.
func questionPage(v *visit) error {
	a, ok := askOf(v.r.PathValue("question"))
	if !ok {
		return shop.Fault(shop.NotFound, "There is no such question.")
	}
	form := v.r.URL.Query()
	f := v.frame(a.Title).at("setting")
	var j *shop.Job
	if id := shop.ID(form.Get("job")); id.Valid() {
		var err error
		if j, err = v.shop.Job(v.ctx(), id); err != nil {
			return err
		}
		f = v.frame(a.Title).ofJob(j).at("setting")
		f.Live = false
	}
	d, err := v.desk(j)
	if err != nil {
		return err
	}
	a = a.withGears(d)
	show := askShow{Ask: a, Form: form, Job: j}
	if j != nil && form.Get("asked") == "" {
		a.fill(d, form)
	}
	doubt := a.doubted(d, form)
	switch {
	case doubt != nil:
		show.Answer = doubt
	case j != nil || form.Get("asked") != "":
		if show, err = a.answer(d, form); err != nil {
			return err
		}
		if form.Get("asked") == "" { // nobody has pressed the button yet
			show.Wrong = nil
		}
	}
	show.Back = v.r.URL.RequestURI()
	return v.show(questionSheet(f, show))
}

// fill takes over what the job's record has already.
func (a ask) fill(d desk, form url.Values) {
	for _, f := range a.Fields {
		if f.From == nil || form.Get(f.Key) != "" {
			continue
		}
		text := f.From(d)
		if len(f.Options) > 0 && !slices.Contains(f.Options, text) {
			continue
		}
		form.Set(f.Key, text)
	}
}

// doubted is the answer of a question that takes a reading which is queried, nil
// of any other: first somebody says what was meant.
func (a ask) doubted(d desk, form url.Values) *setup.Answer {
	if d.job == nil || form.Get("asked") != "" {
		return nil
	}
	var open []string
	for _, e := range d.job.Queried() {
		less, without := d, url.Values{}
		less.job = d.job.Without([]*shop.Entry{e})
		a.fill(less, without)
		if slices.ContainsFunc(a.Fields, func(f askField) bool { return form.Get(f.Key) != without.Get(f.Key) }) {
			open = append(open, "whether "+e.Value.Typed+" is right ("+strings.TrimSuffix(slotTitle(e.Slot().String())+", "+e.Place, ", ")+")")
		}
	}
	if len(open) == 0 {
		return nil
	}
	answer := waiting(strings.Join(open, "; "))
	return &answer
}

// withGears offers the gear sets of the catalogue where a question takes one.
func (a ask) withGears(d desk) ask {
	i := slices.IndexFunc(a.Fields, func(f askField) bool { return f.Key == gearSetField.Key })
	if i < 0 {
		return a
	}
	a.Fields = slices.Clone(a.Fields)
	for _, g := range d.gears {
		a.Fields[i].Options = append(a.Fields[i].Options, g.Name)
	}
	if len(d.gears) == 0 {
		a.Fields = slices.Delete(a.Fields, i, i+1)
	}
	return a
}

// answersOf are the answers at a step that the record is enough for.
func (v *visit) answersOf(j *shop.Job, step shop.StepKey) ([]askShow, error) {
	questions := asksOf(step)
	if len(questions) == 0 {
		return nil, nil
	}
	d, err := v.desk(j)
	if err != nil {
		return nil, err
	}
	var all []askShow
	for _, a := range questions {
		a = a.withGears(d)
		form := url.Values{}
		a.fill(d, form)
		if doubt := a.doubted(d, form); doubt != nil {
			all = append(all, askShow{Ask: a, Form: form, Job: j, Answer: doubt})
			continue
		}
		show, err := a.answer(d, form)
		if err != nil {
			return nil, err
		}
		show.Back = "/job/" + string(j.ID) + "/" + string(step)
		if len(show.Wrong) == 0 && show.tells() && a.asksRecord(d) {
			all = append(all, show)
		}
	}
	return all, nil
}

// asksRecord says whether the record has anything that is read or decided at the
// bench for this question, beside what is known of the axle.
func (a ask) asksRecord(d desk) bool {
	return slices.ContainsFunc(a.Fields, func(f askField) bool { return f.From != nil && !f.known() && f.From(d) != "" })
}

// known is what is known of the axle without a reading.
func (f askField) known() bool {
	return slices.ContainsFunc([]askField{kindField, peggedField, useField, gearSetField, seenField}, func(k askField) bool { return k.Key == f.Key })
}
