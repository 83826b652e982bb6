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

// lashRange is the range of the lash: a set that has run goes back to what it had.
func lashRange(j *Job, spec setup.Spec) setup.Limit {
	return setup.LashRange(spec, j.gearsOf(), j.Mean("strip", "lash_found"), setup.UsualNotch)
}
