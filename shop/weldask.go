package shop

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"axlewright/axle"
	"axlewright/calc/material"
	"axlewright/casting"
	"axlewright/quantity"
	"axlewright/weldplan"
)

// A WeldAsk is all that a job's weld plan is made from.
type WeldAsk struct {
	Kit      KitChoice
	Job      weldplan.Job
	From     []string // what the job's record said, and who wrote it
	Assumed  []string // what it does not say, and what stands in for it
	FromSeqs []int64  // the entries that were read, rising
}

// AskWeld puts together what a weld plan of the job is made from: how the kit's
// plates are welded, and over it what the record says of this casting: its metal,
// how it was cleaned, the gaps, the vents, how warm it is.
//
// NotFound says that the job has no kit with a weld file yet.
func (s *Shop) AskWeld(ctx context.Context, j *Job) (WeldAsk, error) {
	choices, err := s.KitsFor(ctx, j)
	if err != nil {
		return WeldAsk{}, err
	}
	at := slices.IndexFunc(choices, func(c KitChoice) bool { return c.Revision.Weld != "" })
	switch {
	case j.Casting() == nil:
		return WeldAsk{}, Fault(NotFound, "The variant is not known yet: identify it first.")
	case len(choices) > 0 && choices[0].Bench && !choices[0].Fits:
		return WeldAsk{}, Fault(NotFound, "The plates on the bench are %s.%s, which was not drawn for %s.", choices[0].Kit.Name, choices[0].Revision.Name, j.Casting().Label)
	case len(choices) > 0 && choices[0].Bench:
		at = 0
	case at < 0:
		return WeldAsk{}, Fault(NotFound, "No kit for %s has a weld file here.", j.Casting().Label)
	}
	a := WeldAsk{Kit: choices[at]}
	if a.Job, err = a.Kit.Revision.WeldJob(); err != nil {
		return a, err
	}
	a.read(j)
	slices.Sort(a.FromSeqs)
	return a, nil
}

func (a *WeldAsk) read(j *Job) {
	w := &a.Job
	w.Name, w.Casting.Variant, w.Logs = j.unit(), j.Casting().Label, nil
	w.Note = fmt.Sprintf("%s.%s, revision as drawn %s", a.Kit.Kit.Name, a.Kit.Revision.Name, a.Kit.Revision.Day)
	a.metal(j)
	a.cleaning(j)
	a.practice(j)
	a.gaps(j)
	a.vents(j)
	if e := a.saw(j.Standing(Slot{weldStep, "start", "1"})); e != nil && e.Value.SI != nil {
		w.Shop.Air = axle.Temperature{Number: figureOf(e.Value)}
		a.From = append(a.From, said("Casting warm at the start", e))
	} else {
		a.Assumed = append(a.Assumed, "air and casting at "+w.Shop.Air.Text+", as the weld file says")
	}
	for _, item := range []string{"resin", "mass"} {
		if e := a.saw(j.Standing(Slot{"resin", item, ""})); e != nil && !w.Shop.Resin {
			w.Shop.Resin = true
			a.From = append(a.From, said("Resin is in it", e))
		}
	}
}

// saw notes that an entry was read.
func (a *WeldAsk) saw(e *Entry) *Entry {
	if e != nil && !slices.Contains(a.FromSeqs, e.Seq) {
		a.FromSeqs = append(a.FromSeqs, e.Seq)
	}
	return e
}

func said(what string, e *Entry) string {
	text := strings.Join(e.Value.Words, ", ")
	if text == "" {
		text = e.Value.Typed
	}
	if text == "" {
		text = e.Value.label()
	}
	return fmt.Sprintf("%s: %s (%s, %s)", what, text, e.Who.Name, e.At.Format("2 January 2006"))
}

// families are what the words of the metal step may be.
var families = map[string][]weldplan.Chance{
	MetalSteel:     {{Family: material.CastSteel, Chance: 1}},
	MetalDuctile:   {{Family: material.DuctileIron, Chance: 1}},
	MetalGrey:      {{Family: material.GreyIron, Chance: 1}},
	MetalMalleable: {{Family: material.BlackheartIron, Chance: 0.5}, {Family: material.WhiteheartIron, Chance: 0.5}}, // the word does not tell which
}

// metal is what was decided of this casting; the weld file's grade stays where it
// is of the same family.
func (a *WeldAsk) metal(j *Job) {
	c := &a.Job.Casting
	e := a.saw(j.Standing(Slot{"metal", "metal", ""}))
	if e == nil {
		c.Metal = weldplan.Metal{Unknown: 1}
		a.Assumed = append(a.Assumed, "the metal: it is not decided in the record, so it counts as unknown")
		return
	}
	is := families[e.Value.Word()]
	a.From = append(a.From, said("Metal", e))
	if found, err := casting.AssessMetal(j.MetalEvidence()); err == nil && len(found.ByTests) > 0 && e.Value.Word() != MetalGrey {
		for _, f := range found.Families {
			if f.Family == material.GreyIron && f.Chance > 0.05 {
				a.Assumed = append(a.Assumed, fmt.Sprintf("%s, as decided: the tests in the record leave a chance of %s that it is grey iron", e.Value.Word(), quantity.Percent(f.Chance)))
			}
		}
	}
	switch {
	case is == nil:
		c.Metal = weldplan.Metal{Unknown: 1}
	case c.Metal.Grade == "" || len(c.Metal.Families) != 1 || c.Metal.Families[0].Family != is[0].Family:
		c.Metal = weldplan.Metal{Families: is}
	}
	if c.Analysis == nil || is == nil || is[0].Family != material.CastSteel {
		return
	}
	analysis := *c.Analysis
	for item, to := range map[string]*axle.Ratio{"carbon": &analysis.Carbon, "silicon": &analysis.Silicon} {
		if e := a.saw(j.Standing(Slot{"metal", item, ""})); e != nil && e.Value.SI != nil {
			to.Number = figureOf(e.Value)
			a.From = append(a.From, said("Laboratory, "+item, e))
		}
	}
	c.Analysis = &analysis
}

// cleaning is what it was washed with last, and whether it was baked.
func (a *WeldAsk) cleaning(j *Job) {
	s := &a.Job.Shop
	e := a.saw(j.Standing(Slot{"clean", "wash", ""}))
	s.Cleaned, s.Baked = weldplan.NotKnown, false
	if e == nil {
		a.Assumed = append(a.Assumed, "what it was cleaned with: not in the record, so not known")
	} else {
		a.From = append(a.From, said("Washed with", e))
		switch words := e.Value.Words; {
		case slices.Contains(words, SolventChlorinated):
			s.Cleaned = weldplan.Chlorinated
		case slices.Contains(words, "acetone or alcohol, dried") && len(words) == 1:
			s.Cleaned = weldplan.Acetone
		default:
			s.Cleaned = weldplan.Aqueous
		}
	}
	hot, long := a.saw(j.Standing(Slot{"clean", "bake", ""})), a.saw(j.Standing(Slot{"clean", "bake_time", ""}))
	const warm, hour = 150 + 273.15, 3600.0
	if hot != nil && long != nil && hot.Value.SI != nil && long.Value.SI != nil {
		s.Baked = *hot.Value.SI >= warm-0.5 && *long.Value.SI >= hour-1
		a.From = append(a.From, said("Baked at", hot), said("Baked for", long))
	}
}

func (a *WeldAsk) practice(j *Job) {
	s := &a.Job.Shop
	s.Torch = false
	e := a.saw(j.Standing(Slot{weldStep, "method", ""}))
	if e == nil {
		return
	}
	a.From = append(a.From, said("Method", e))
	switch e.Value.Word() {
	case "cold, short runs":
		s.Practice = weldplan.Cold
	case "hot, whole casting":
		s.Practice = weldplan.Hot
	case "one corner with a torch":
		s.Torch = true
	}
}

// gaps are those measured at the weld: of the run that the place names, or the
// worst of the others for every run that has none of its own.
func (a *WeldAsk) gaps(j *Job) {
	worst := -1.0
	var of *Entry
	own := map[string]*Entry{}
	for _, e := range j.All("plates", "fit") {
		a.saw(e)
		if e.Value.SI == nil {
			continue
		}
		if a.runNamed(e.Place) != nil {
			own[e.Place] = e
		} else if *e.Value.SI > worst {
			worst, of = *e.Value.SI, e
		}
	}
	for i := range a.Job.Plates {
		for k := range a.Job.Plates[i].Runs {
			r := &a.Job.Plates[i].Runs[k]
			if e := own[r.Name]; e != nil {
				r.Gap = axle.Length{Number: figureOf(e.Value)}
			} else if of != nil {
				r.Gap = axle.Length{Number: figureOf(of.Value)}
			}
		}
	}
	switch {
	case of != nil:
		a.From = append(a.From, said("Gap at the weld, worst", of))
	case len(own) == 0:
		a.Assumed = append(a.Assumed, "gaps at the weld: none measured")
	}
}

func (a *WeldAsk) runNamed(name string) *weldplan.Run {
	for i := range a.Job.Plates {
		for k := range a.Job.Plates[i].Runs {
			if a.Job.Plates[i].Runs[k].Name == name {
				return &a.Job.Plates[i].Runs[k]
			}
		}
	}
	return nil
}

func (a *WeldAsk) vents(j *Job) {
	e := a.saw(j.Standing(Slot{"plates", "vents", ""}))
	if e == nil {
		if len(a.Job.Cavities) > 0 {
			a.Assumed = append(a.Assumed, "vents as the weld file has them: not looked at yet")
		}
		return
	}
	a.From = append(a.From, said("Vents", e))
	if e.Value.Word() == VentMissing {
		for i := range a.Job.Cavities {
			a.Job.Cavities[i].Vent = nil
		}
	}
}
