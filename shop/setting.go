package shop

import (
	"axlewright/quantity"
	"axlewright/setup"
)

// What setting-up asks of a record.

// bearingsOf says whether the pinion's bearings have run; new where nobody said.
func (j *Job) bearingsOf() setup.Bearings {
	if j.Value("preload", "bearings").Word() == string(setup.UsedBearings) {
		return setup.UsedBearings
	}
	return setup.NewBearings
}

// gearsOf says whether the gear set has run; "" where nobody said.
func (j *Job) gearsOf() setup.Gears { return setup.Gears(j.Value("assemble", "set").Word()) }

// Mean returns the mean of the places of a reading that were read.
func (j *Job) Mean(step StepKey, item string) setup.Reading {
	sum, n := 0.0, 0
	for _, e := range j.All(step, item) {
		if e.Value.SI != nil {
			sum += *e.Value.SI
			n++
		}
	}
	if n == 0 {
		return setup.Reading{}
	}
	return setup.Read(sum / float64(n))
}

// Reading returns what stands in a place as setting-up takes it.
func (j *Job) Reading(s Slot) setup.Reading {
	e := j.Standing(s)
	if e == nil || e.Value.SI == nil {
		return setup.Reading{}
	}
	return setup.Typed(quantity.Quantity{Text: e.Value.Typed, SI: *e.Value.SI, Dim: e.Value.Dim})
}

// PegSetting is how the peg was set and read, as package setup judges it. The
// spec and the window of the load path are the caller's.
func (j *Job) PegSetting() setup.PegSetting {
	in := setup.PegSetting{
		Pitch: j.Reading(Slot{"peg", "pitch", ""}).SI, Angle: j.Reading(Slot{"peg", "angle", ""}), RunOut: j.Reading(Slot{"assemble", "runout", ""}),
		Spot: setup.Spot(j.Value("peg", "spot").Word()), SidePreload: j.Value("peg", "final").Word() == "yes",
		Touching: j.Value("peg", "touches").Word() == PegTouches,
	}
	for _, e := range j.All("peg", "gap") {
		in.Locked = append(in.Locked, j.Reading(e.Slot()))
	}
	return in
}

// pegTouches returns what shows that the crown wheel touches the peg.
func pegTouches(j *Job) (because []*Entry, yes bool) {
	in := j.PegSetting()
	if !in.Touches() {
		return nil, false
	}
	said, _ := j.saying("peg", "touches", PegTouches)
	because = append(because, said...)
	for _, e := range j.All("peg", "gap") {
		if touching(e.Value) {
			because = append(because, e)
		}
	}
	if len(because) == 0 { // it is the sum that says so
		for _, s := range []Slot{{"peg", "pitch", ""}, {"peg", "angle", ""}, {"peg", "spot", ""}, {"assemble", "runout", ""}} {
			if e := j.Standing(s); e != nil {
				because = append(because, e)
			}
		}
	}
	return because, true
}

// touching says whether a gap that was read is none.
func touching(v Value) bool {
	return v.SI != nil && setup.PegSetting{Locked: []setup.Reading{setup.Read(*v.SI)}}.Touches()
}

// pinionDrag is the range of the turning torque as it was read: with the seal
// in, what the seal drags comes on top.
func pinionDrag(j *Job, spec setup.Spec) setup.Limit {
	item := setup.PinionNew
	if j.bearingsOf() == setup.UsedBearings {
		item = setup.PinionUsed
	}
	l := spec.Limit(item)
	if j.Value("preload", "seal").Word() == string(setup.SealIn) {
		return l.Plus(spec.Limit(setup.SealDrag), "with the seal in")
	}
	return l
}

// overCaps is where the second reading over the caps lies: by no more than a
// spreader may stretch beyond the first, else one of the two was misread. Nil
// without a first.
func (j *Job) overCaps() *Limit {
	before := j.Reading(Slot{"side", "before", ""})
	if !before.Taken {
		return nil
	}
	most := before.SI + setup.Spec{}.Limit(setup.SpreaderReach).High
	return &Limit{Low: &before.SI, High: &most, Kind: "from the reading before", Origin: Trade, Source: published}
}

// lashRange is the range of the lash: a set that has run goes back to what it had.
func lashRange(j *Job, spec setup.Spec) setup.Limit {
	return setup.LashRange(spec, j.gearsOf(), j.Mean("strip", "lash_found"), setup.UsualNotch)
}
