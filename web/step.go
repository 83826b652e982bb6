package web

import (
	"bytes"
	"slices"
	"strings"

	"axlewright/drawing"
	"axlewright/setup"
	"axlewright/shop"
)

// A stepShow is one step of a job as its page shows it.
type stepShow struct {
	Job      *shop.Job
	Views    []shop.StepView
	View     shop.StepView
	Fields   []fieldShow
	Prev     shop.StepKey
	Next     shop.StepKey
	Gauges   []shop.Gauge
	May      bool // this person may write here
	Role     shop.Role
	Ask      []ask     // questions of setting-up that belong here
	Answer   []askShow // what they say of the readings that there are
	Chart    string
	Lead     lead
	Sketches []string // its line drawings, SVG
}

// A fieldShow is a field with its boxes.
type fieldShow struct {
	View  shop.FieldView
	Boxes []box
}

// stepPage shows one step.
func stepPage(v *visit) error {
	j, err := v.job()
	if err != nil {
		return err
	}
	views := j.Steps()
	s := stepShow{Job: j, Views: views, Role: v.who.Role}
	found := false
	for i, view := range views {
		if string(view.Step.Key) != v.r.PathValue("step") {
			continue
		}
		s.View, found = view, true
		if i > 0 {
			s.Prev = views[i-1].Step.Key
		}
		if i+1 < len(views) {
			s.Next = views[i+1].Step.Key
		}
	}
	if !found {
		return shop.Fault(shop.NotFound, "There is no such step.")
	}
	key := s.View.Step.Key
	s.May = v.who.Role.MayRecord(key)
	b, err := v.bounds(v.ctx(), j)
	if err != nil {
		return err
	}
	if s.Lead, err = v.lead(j, key); err != nil {
		return err
	}
	for _, f := range s.View.Fields {
		if f.Field.Run || !f.Applies && f.Gaps == 0 && !filled(f) || f.Field.Key == s.Lead.Own {
			continue
		}
		show := fieldShow{View: f}
		places := shownPlaces(f)
		if q := v.r.URL.Query(); f.Field.Open && q.Get("field") == f.Field.Key {
			places = withPlace(f, places, strings.TrimSpace(q.Get("place")))
		}
		if key == "weld" { // what a run took stands in the weld log
			places = slices.DeleteFunc(slices.Clone(places), func(p shop.PlaceView) bool {
				return p.Slot.Place != "" && !slices.Contains(f.Field.Places, p.Slot.Place) && p.Slot.Place != v.r.URL.Query().Get("place")
			})
		}
		for _, p := range places {
			show.Boxes = append(show.Boxes, v.boxOf(j, b, key, f, p))
		}
		s.Fields = append(s.Fields, show)
	}
	if s.Gauges, _, err = shop.List[shop.Gauge](v.ctx(), v.shop, shop.CardQuery{}); err != nil {
		return err
	}
	s.Ask = asksOf(key)
	if s.Answer, err = v.answersOf(j, key); err != nil {
		return err
	}
	s.Chart = chartOf(j, key)
	for _, key := range picturesOf(j, s.View.Step) {
		s.Sketches = append(s.Sketches, sketchOf(key))
	}
	f := v.frame(s.View.Step.Title).ofJob(j)
	return v.show(stepSheet(f, s))
}

func filled(f shop.FieldView) bool {
	for _, p := range f.Places {
		if written(p) {
			return true
		}
	}
	return false
}

// written says whether anything stands in a place or ever stood there.
func written(p shop.PlaceView) bool { return p.Last != 0 }

// shownPlaces leaves out empty places beyond those that are wanted and one more:
// twelve empty boxes for three runs would hide the three.
func shownPlaces(f shop.FieldView) []shop.PlaceView {
	wanted := f.Field.Wanted
	if wanted == 0 && !f.Field.Optional || len(f.Places) <= 4 {
		return f.Places
	}
	last := 0
	for i, p := range f.Places {
		if written(p) {
			last = i + 1
		}
	}
	n := min(max(wanted, last+1), len(f.Places))
	return f.Places[:n]
}

// withPlace adds the box of a place that somebody named.
func withPlace(f shop.FieldView, places []shop.PlaceView, name string) []shop.PlaceView {
	if name == "" || slices.ContainsFunc(places, func(p shop.PlaceView) bool { return p.Slot.Place == name }) {
		return places
	}
	slot := f.Places[0].Slot
	slot.Place = name
	if p, ok := placeOf(f, slot); ok {
		return append(slices.Clone(places), p)
	}
	return append(slices.Clone(places), shop.PlaceView{Slot: slot})
}

// figures says whether the step has a reading, so that an instrument is asked for.
func (s stepShow) figures() bool {
	if s.View.Step.Key == "enquiry" {
		return false
	}
	for _, f := range s.Fields {
		if f.View.Field.Kind == shop.FieldFigure {
			return true
		}
	}
	return false
}

// many says whether a field has several places, and so a heading of its own.
func (f fieldShow) many() bool { return len(f.View.Places) > 1 }

func (s stepShow) path() string { return "/job/" + string(s.Job.ID) + "/" + string(s.View.Step.Key) }

// picturesOf are the line drawings of a step: a thicker shim moves the drawn
// pinion the way that the record says.
func picturesOf(j *shop.Job, s shop.Step) []string {
	if s.Key == "shim" && j.Value("shim", "way").Word() == string(setup.AwayFromWheel) {
		return []string{"pinion-shim-out"}
	}
	return s.Pictures
}

// sketchOf is a line drawing as SVG, "" where there is none of that key.
func sketchOf(key string) string {
	d, ok := drawing.Sketch(key)
	if !ok {
		return ""
	}
	var out bytes.Buffer
	if err := drawing.WriteSVG(&out, d); err != nil {
		return ""
	}
	return out.String()
}
