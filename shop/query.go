package shop

import (
	"cmp"
	"maps"
	"math"
	"slices"
	"strings"

	"axlewright/quantity"
)

// A Meant is a figure that somebody may have meant in place of the one typed.
// Why goes into the record if it is taken.
type Meant quantity.Slip

// slipUnits are the units that are taken for each other at the bench.
var slipUnits = map[quantity.Dimension][]string{
	quantity.Length: {"mm", "thou", "in"},
	quantity.Torque: {"N·m", "lbf·in", "lbf·ft"},
}

// Query returns what may have been meant by a reading outside its range: inch and
// foot mixed up, the point one place out, another unit. A reading is never
// refused for it; one that was confirmed is not queried again.
func Query(e *Entry) []Meant {
	l := e.Limit
	if l == nil || e.Value.SI == nil || e.Value.Confirmed {
		return nil
	}
	low, high := 0.0, math.Inf(1)
	if l.Low != nil {
		low = *l.Low
	}
	if l.High != nil {
		high = *l.High
	}
	var other, point []Meant
	for _, s := range quantity.Slips(e.Value.Typed, e.Value.Dim, low, high, slipUnits[e.Value.Dim]) {
		if s.Why == quantity.PointOut {
			point = append(point, Meant(s))
			continue
		}
		other = append(other, Meant(s))
	}
	if e.Value.Dim == quantity.Torque && l.Low != nil && l.High != nil && len(other) == 0 {
		if meant, suspected := quantity.MeantTorque(*e.Value.SI, low, high); suspected {
			text, _, _ := strings.Cut(quantity.FormatDigits(meant, quantity.Torque, 3), " (")
			other = []Meant{{text, meant, quantity.InchForFoot}}
		}
	}
	return append(other, point...)
}

// Queried returns the readings that stand and are queried: no sum is worked out
// from them before somebody has said what was meant.
func (j *Job) Queried() []*Entry {
	var all []*Entry
	for slot := range j.places {
		if e := j.Standing(slot); e != nil && len(Query(e)) > 0 {
			all = append(all, e)
		}
	}
	slices.SortFunc(all, func(a, b *Entry) int { return cmp.Compare(a.Seq, b.Seq) })
	return all
}

// Without is the job as if nothing stood in the places of these entries.
func (j *Job) Without(entries []*Entry) *Job {
	less := *j
	less.places = maps.Clone(j.places)
	for _, e := range entries {
		delete(less.places, e.Slot())
	}
	return &less
}
