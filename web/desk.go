package web

import (
	"encoding/json"
	"fmt"
	"os"
	"strings"
	"sync"

	"axlewright/axle"
	"axlewright/calc/gear"
	"axlewright/loadpath"
	"axlewright/quantity"
	"axlewright/setup"
	"axlewright/shop"
)

// A desk is what the sums of setting-up draw on beside what is typed: the job's
// record with its ranges, the shims on the shelf, the gear sets of the catalogue
// and the last advice.
type desk struct {
	job    *shop.Job // nil where there is none
	spec   setup.Spec
	stock  []setup.Shim
	gears  []axle.GearSet
	gear   string       // the set that the last advice was worked out with
	window setup.Window // the peg's, from the load path of the last advice
}

// desk lays out what the sums need. Without a job it is the shelf and the catalogue.
func (v *visit) desk(j *shop.Job) (desk, error) {
	d := desk{job: j}
	d.gears = v.gears.of(v.catalogue())
	words := ""
	if j != nil {
		b, err := v.bounds(v.ctx(), j)
		if err != nil {
			return d, err
		}
		d.spec = shop.SetUpSpec(j, b.casting, b.house)
		if err := d.readAdvice(v); err != nil {
			return d, err
		}
		words = d.spec.Name
	}
	shims, err := v.shop.Shims(v.ctx(), words)
	if err == nil && len(shims) == 0 && words != "" { // lots that name no variant
		shims, err = v.shop.Shims(v.ctx(), "")
	}
	for _, s := range shims {
		d.stock = append(d.stock, setup.Shim{Name: s.Title, Thickness: s.Thickness, Count: int(s.Free)})
	}
	return d, err
}

// readAdvice takes gear set and gap window from the last advice.
func (d *desk) readAdvice(v *visit) error {
	kept := d.job.Kept(shop.EntryAdvice)
	if len(kept) == 0 || kept[len(kept)-1].Value.File == nil {
		return nil
	}
	e := kept[len(kept)-1]
	content, err := v.shop.File(v.ctx(), *e.Value.File)
	if err != nil {
		return err
	}
	var p printedAdvice
	if err := json.Unmarshal(content, &p); err != nil {
		return shop.Fault(shop.Damaged, "This advice cannot be read.").Because(err)
	}
	d.gear = flatten(p.Enquiry)["gears"]
	if g := p.Gap; g != nil {
		d.window = setup.Window{Low: g.Least, Aim: g.Aim, Shut: g.Verdict == loadpath.WindowShut, Reason: "load path of advice " + e.Place + ", " + g.Build}
		if g.Most != nil && !d.window.Shut {
			d.window.High = *g.Most
		}
		if d.window.Shut {
			d.window.Reason += ": " + strings.TrimSuffix(g.Text[0], ".")
		}
	}
	return nil
}

// gearShelf holds the gear sets of the catalogue until one of its files changes.
type gearShelf struct {
	mu   sync.Mutex
	read string // names, sizes and times of the files
	sets []axle.GearSet
}

func (g *gearShelf) of(files []string) []axle.GearSet {
	now := ""
	for _, name := range files {
		if info, err := os.Stat(name); err == nil {
			now += fmt.Sprintln(name, info.Size(), info.ModTime())
		}
	}
	g.mu.Lock()
	defer g.mu.Unlock()
	if now != g.read {
		g.read, g.sets = now, nil
		if c, err := axle.LoadCatalogue(files...); err == nil { // what is wrong with it is told where advice is asked
			g.sets = c.GearSets
		}
	}
	return g.sets
}

// mesh is the geometry of a gear set of the catalogue, the zero Mesh where it
// is not named.
func (d desk) mesh(name string) (setup.Mesh, error) {
	for _, g := range d.gears {
		if g.Name == name {
			return setup.MeshOf(g)
		}
	}
	return setup.Mesh{}, nil
}

// A source says what a job's record has for a box, as it would be typed; "" is
// nothing. It is not asked without a job.
type source func(desk) string

// record is what stands in a place of the record.
func record(step shop.StepKey, item string, place ...string) source {
	s := shop.Slot{Step: step, Item: item}
	if len(place) > 0 {
		s.Place = place[0]
	}
	return func(d desk) string {
		e := d.job.Standing(s)
		switch {
		case e == nil:
			return ""
		case e.Value.SI != nil:
			return e.Value.Typed
		case e.Value.Text != "":
			return e.Value.Text
		}
		return e.Value.Word()
	}
}

// firstOf is the first source that has something.
func firstOf(all ...source) source {
	return func(d desk) string {
		for _, s := range all {
			if text := s(d); text != "" {
				return text
			}
		}
		return ""
	}
}

// always is what holds for every job.
func always(text string) source { return func(desk) string { return text } }

// meanOf is the mean of all places of a reading.
func meanOf(step shop.StepKey, item string) source {
	return func(d desk) string {
		if r := d.job.Mean(step, item); r.Taken {
			return typedMetric(r.SI, quantity.Length)
		}
		return ""
	}
}

// sided is what the record has for the left or right adjuster: the record knows
// the crown wheel's side and the other.
func sided(side setup.Side, step shop.StepKey, item string) source {
	return func(d desk) string {
		switch record("locks", "wheel_side")(d) {
		case "":
			return ""
		case string(side):
			return record(step, item, "crown side")(d)
		}
		return record(step, item, "other side")(d)
	}
}

// yesIf is yes where the record chose one of the words, else no where it chose any.
func yesIf(step shop.StepKey, item string, among ...string) source {
	return func(d desk) string {
		chosen := d.job.Value(step, item).Words
		if len(chosen) == 0 {
			return ""
		}
		for _, w := range chosen {
			for _, a := range among {
				if w == a {
					return "yes"
				}
			}
		}
		return "no"
	}
}

// typedMetric is a figure as it would be typed, to three digits.
func typedMetric(si float64, dim quantity.Dimension) string {
	text, _, _ := strings.Cut(quantity.FormatDigits(si, dim, 3), " (")
	return text
}

// lashMean is the mean lash round the wheel, a plunger that stood square put right.
func lashMean(d desk) string {
	var readings []setup.Reading
	for _, e := range d.job.All("lash", "lash") {
		readings = append(readings, d.job.Reading(e.Slot()))
	}
	mesh, err := d.mesh(d.gear)
	if err != nil {
		return ""
	}
	r, err := setup.LashOfRound(setup.LashRound{Readings: readings, Plunger: plungerOf(record("lash", "dial")(d)), Gears: setup.NewGears, Mesh: mesh})
	if err != nil || r.Mean == 0 {
		return ""
	}
	return typedMetric(r.Mean, quantity.Length)
}

// shimOfMarks is the shim that the marks ask for, until another is written down.
func shimOfMarks(d desk) string {
	mark := func(s shop.Slot) setup.Mark {
		return setup.Mark{Count: d.job.Reading(s), Unit: setup.MarkUnit(record("shim", "mark_unit")(d)), Plus: setup.MarkSense(record("shim", "mark_plus")(d))}
	}
	r, err := setup.ShimFromMarks(setup.ShimByMarks{Spec: d.spec, ThickerPushes: setup.Push(record("shim", "way")(d)), OldShim: d.job.Reading(shop.Slot{Step: "strip", Item: "old_shim"}),
		OldMark: mark(shop.Slot{Step: "strip", Item: "old_mark"}), NewMark: mark(shop.Slot{Step: "shim", Item: "new_mark"})})
	if err != nil || r.Shim <= 0 {
		return ""
	}
	return typedMetric(r.Shim, quantity.Length)
}

func plungerOf(word string) gear.DialSetting {
	switch word {
	case shop.DialSquare:
		return gear.DialSquare
	case shop.DialAlong:
		return gear.DialTangential
	}
	return ""
}
