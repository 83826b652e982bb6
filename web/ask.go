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
	From             shop.Slot // where a job has it already
}

// asked holds what was typed, and collects what cannot be read.
type asked struct {
	form  url.Values
	ask   ask
	wrong *[]string
	stock []setup.Shim
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
	return setup.Spec{Kind: setup.Kind(in.word("kind")), Pegged: in.word("pegged") == "yes"}
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
	Wrong  []string
}

func settingUpPage(v *visit) error {
	return v.show(settingUpSheet(v.frame("Setting-up").at("setting"), asks))
}

// questionPage asks, and answers what was asked.
func questionPage(v *visit) error {
	a, ok := askOf(v.r.PathValue("question"))
	if !ok {
		return shop.Fault(shop.NotFound, "There is no such question.")
	}
	show := askShow{Ask: a, Form: v.r.URL.Query()}
	f := v.frame(a.Title).at("setting")
	if id := shop.ID(show.Form.Get("job")); id.Valid() {
		j, err := v.shop.Job(v.ctx(), id)
		if err != nil {
			return err
		}
		show.Job = j
		f = v.frame(a.Title).ofJob(j).at("setting")
		f.Live = false
		prefill(j, a, show.Form)
	}
	if show.Form.Get("asked") != "" {
		in := asked{form: show.Form, ask: a, wrong: &show.Wrong}
		if a.Key == "pack" {
			shims, err := v.shop.Shims(v.ctx(), show.Form.Get("axle"))
			if err != nil {
				return err
			}
			for _, s := range shims {
				in.stock = append(in.stock, setup.Shim{Name: s.Title, Thickness: s.Thickness, Count: int(s.Free)})
			}
		}
		answer, err := a.Work(in)
		switch {
		case len(show.Wrong) > 0:
		case err != nil && codeOf(err) != shop.Invalid:
			return err
		case err != nil:
			show.Wrong = strings.Split(faultOf(err).Says, "\n")
		default:
			show.Answer = &answer
		}
	}
	return v.show(questionSheet(f, show))
}

// prefill takes over what the job's record has already.
func prefill(j *shop.Job, a ask, form url.Values) {
	for _, f := range a.Fields {
		if f.From.Step == "" || form.Get(f.Key) != "" {
			continue
		}
		e := j.Standing(f.From)
		switch {
		case e == nil:
		case f.Dim != "" && e.Value.Typed != "":
			form.Set(f.Key, e.Value.Typed)
		case len(f.Options) > 0 && slices.Contains(f.Options, e.Value.Word()):
			form.Set(f.Key, e.Value.Word())
		}
	}
	if slices.Contains(j.Works(), shop.WorkPeg) && form.Get("pegged") == "" {
		form.Set("pegged", "yes")
	}
}
