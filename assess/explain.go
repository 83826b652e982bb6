package assess

import (
	"fmt"
	"math"

	"axlewright/axle"
	"axlewright/quantity"
)

// An Explanation is the working of one link of one build, every figure at its
// stated value, at the torque at which the link gives out.
type Explanation struct {
	Build    string     `json:"build"`
	Link     string     `json:"link"`
	Flank    axle.Flank `json:"flank"`
	GiveOut  float64    `json:"give_out"` // N·m; steady, before the shock factor, for a link that wears
	Demand   float64    `json:"demand"`   // at the give-out torque: equals the capacity
	Capacity float64    `json:"capacity"`
	Steps    []Step     `json:"steps"`
}

// Explain shows the working of every link of a build, in the order of links.
// Links that the build does not have, or that hold beyond four times the
// vehicle's demand on both flanks, are left out.
func Explain(e *axle.Enquiry, c *axle.Catalogue, build axle.Assembly) ([]Explanation, error) {
	s := &study{catalogue: c, enquiry: e, builds: []axle.Assembly{build}, doubts: newModelDoubts()}
	u, _, err := s.nominalUnit(&build, 0)
	if err != nil {
		return nil, err
	}
	var all []Explanation
	for i := range links {
		one, err := u.explain(&links[i], s.highest)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", links[i].name, err)
		}
		if one != nil {
			one.Build = buildName(build)
			all = append(all, *one)
		}
	}
	return all, nil
}

// nominalUnit is a build with every figure at its stated value, its load path
// solved, up to the highest torque worth looking at, and at least to one.
func (s *study) nominalUnit(build *axle.Assembly, least float64) (*unit, wheelPlates, error) {
	var err error
	if s.duty, err = s.catalogue.Duty(s.enquiry.Duty); err != nil {
		return nil, wheelPlates{}, err
	}
	if err := s.look(); err != nil {
		return nil, wheelPlates{}, err
	}
	if least > 10*s.highest {
		return nil, wheelPlates{}, fmt.Errorf("%s is %.0f times what this vehicle can ask of this axle; is the torque right?",
			quantity.Format(least, quantity.Torque), highestTimes*least/s.highest)
	}
	s.highest = math.Max(s.highest, least)
	plates, err := newWheelPlates([]*axle.Assembly{build})
	if err != nil {
		return nil, wheelPlates{}, err
	}
	path, err := nominalPaths(build, plates[0], s.highest)
	if err != nil {
		return nil, wheelPlates{}, err
	}
	return s.unitOf(build, path, plates[0]), plates[0], nil
}

// unitOf is a build as stated in its vehicle as stated.
func (s *study) unitOf(build *axle.Assembly, path paths, plates wheelPlates) *unit {
	return &unit{
		axle: build, vehicle: &s.enquiry.Vehicle, duty: &s.duty, mounting: s.enquiry.Mounting, doubts: &s.doubts,
		paths: path, plate: plates.peg, governing: s.governing,
	}
}

func (u *unit) explain(l *link, highest float64) (*Explanation, error) {
	out, err := u.giveOut(l, highest)
	if err != nil {
		return nil, err
	}
	x := Explanation{Link: l.name, Flank: flanks[0], GiveOut: out[0]}
	if l.kind != Wears && out[1] < out[0] {
		x.Flank, x.GiveOut = flanks[1], out[1]
	}
	if x.GiveOut == Beyond {
		return nil, nil
	}
	n := &notes{}
	reach, err := l.prepare(u, n)
	if err != nil {
		return nil, err
	}
	n.say("T", "torque at the axle at which it gives out", x.GiveOut, "N·m", "where demand meets capacity")
	x.Demand, x.Capacity = reach(x.Flank, x.GiveOut, n)
	x.Steps = n.steps
	return &x, nil
}
