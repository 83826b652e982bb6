package setup

import (
	"fmt"
	"math"

	"axlewright/axle"
	"axlewright/quantity"
)

// BoresAroundWelding asks what welding did to the bores. The bores were measured
// the same way before and after.
type BoresAroundWelding struct {
	Spec                    Spec
	Before, After           BoreCheck
	BeforeTemp, AfterTemp   Reading // K, of the casting; left out, both are taken as equal
	BeforeGauge, AfterGauge string  // instrument, to see whether it was the same
}

// A BoreChange is how one reading moved.
type BoreChange struct {
	Label         string
	Before, After float64 // m
	Change        float64 // m, warmth taken off; positive is larger
	Shown         string
}

// A WeldResult is what welding did.
type WeldResult struct {
	Answer
	Changes []BoreChange
	Worst   BoreChange
	After   BoreResult // the bores as they are now
}

const (
	ironExpansion = 11e-6  // 1/K, of cast iron; 10 to 12 by grade
	handWarm      = 323.15 // K, below which a casting is measured
)

// CompareBores sets the bores before and after welding side by side.
//
// Warm iron is larger: 72 mm grow 0.008 mm for ten degrees, which is taken off.
func CompareBores(in BoresAroundWelding) (WeldResult, error) {
	var s sheet
	var r WeldResult
	s.optional("BeforeTemp", in.BeforeTemp, quantity.Temperature, 250, 700, "a temperature such as 20 °C")
	s.optional("AfterTemp", in.AfterTemp, quantity.Temperature, 250, 700, "a temperature such as 20 °C")
	if err := s.err(); err != nil {
		return WeldResult{}, err
	}
	before, err := JudgeBores(in.Before)
	if err != nil {
		return WeldResult{}, inField("Before", err)
	}
	if r.After, err = JudgeBores(in.After); err != nil {
		return WeldResult{}, inField("After", err)
	}
	switch {
	case before.State == Stop || r.After.State == Stop:
		for _, one := range []struct {
			when string
			b    BoreResult
		}{{"Before welding", before}, {"After welding", r.After}} {
			if one.b.State == Stop {
				r.settle(Stop, "%s: %s", one.when, one.b.Reason)
			}
		}
		return r, nil
	case !in.Before.Left.taken() || !in.Before.Right.taken() || !in.After.Left.taken() || !in.After.Right.taken():
		r.settle(NotYet, "Still to come: three diameters of both bores, before and after welding.")
		return r, nil
	case in.AfterTemp.Taken && in.AfterTemp.SI > handWarm:
		r.settle(NotYet, "The casting is at %s: let it cool in the jig to under 50 °C (122 °F) first.", shown(in.AfterTemp.SI, quantity.Temperature))
		return r, nil
	}
	r.compare(in)
	r.judge(in)
	return r, nil
}

// inField puts the part of the question before the fields of a finding.
func inField(part string, err error) error {
	found, ok := err.(axle.Findings)
	if !ok {
		return err
	}
	named := make(axle.Findings, len(found))
	for i, f := range found {
		f.Field = part + "." + f.Field
		named[i] = f
	}
	return named
}

func (r *WeldResult) compare(in BoresAroundWelding) {
	warmer := 0.0
	if in.BeforeTemp.Taken && in.AfterTemp.Taken {
		warmer = in.AfterTemp.SI - in.BeforeTemp.SI
	}
	add := func(label string, before, after Reading, grows bool) {
		if !before.Taken || !after.Taken {
			return
		}
		c := BoreChange{Label: label, Before: before.SI, After: after.SI, Change: after.SI - before.SI}
		if grows {
			c.Change -= ironExpansion * warmer * before.SI
		}
		c.Shown = shown(c.Change, quantity.Length)
		r.Changes = append(r.Changes, c)
		r.line("", "Δ", label, c.Change, quantity.Length, axle.Measured, fmt.Sprintf("%s, was %s", length(after.SI), length(before.SI)))
		if len(r.Changes) == 1 || math.Abs(c.Change) > math.Abs(r.Worst.Change) {
			r.Worst = c
		}
	}
	for _, b := range []struct {
		side          string
		before, after Bore
	}{{in.After.leftIs(), in.Before.Left, in.After.Left}, {in.After.rightIs(), in.Before.Right, in.After.Right}} {
		add(b.side+" bore at 0°, along the joint", b.before.Along, b.after.Along, true)
		add(b.side+" bore at 45°", b.before.Aslant, b.after.Aslant, true)
		add(b.side+" bore at 90°, through the crown of the cap", b.before.Across, b.after.Across, true)
	}
	add("side bores out of line", in.Before.OffLine, in.After.OffLine, false)
	add("pinion axis off its place", in.Before.AxisOff, in.After.AxisOff, false)
	add("pinion axis out of square", in.Before.SquareOff, in.After.SquareOff, false)
	if warmer != 0 {
		r.note("The casting was %s warmer after welding; what that grows a bore by is taken off.", shown(warmer, quantity.TemperatureDifference))
	}
}

func (r *WeldResult) judge(in BoresAroundWelding) {
	word := "opened"
	if r.Worst.Change < 0 {
		word = "closed"
	}
	r.say("Most moved: %s %s by %s.", r.Worst.Label, word, length(math.Abs(r.Worst.Change)))
	r.Say = append(r.Say, r.After.Say...)
	r.Checks = append(r.Checks, r.After.Checks...)
	r.settle(r.After.State, "%s", r.After.Reason)
	if in.BeforeGauge != in.AfterGauge {
		r.note("Measured with another instrument after welding (%s, before %s): part of the change may be that.", in.AfterGauge, in.BeforeGauge)
	}
	if l := in.After.Spec.Limit(BoreRound); r.After.State == Fine && math.Abs(r.Worst.Change) > l.High {
		r.note("The bores are good now, but welding moved them by more than %s: look at the jig and the order of the runs.", length(l.High))
	}
}
