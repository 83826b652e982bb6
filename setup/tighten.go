package setup

import (
	"fmt"
	"slices"

	"axlewright/axle"
	"axlewright/calc/bolt"
	"axlewright/quantity"
)

// Finish says how threads and faces were when tightened.
type Finish string

// The finishes.
const (
	Oiled Finish = "oiled"
	Dry   Finish = "dry"
)

// Washer is what lies under the head or nut.
type Washer string

// The washers.
const (
	NoWasher       Washer = "none"
	PlainWasher    Washer = "plain"
	HardenedWasher Washer = "hardened"
	WedgeWasher    Washer = "wedge-lock"
)

// Unmarked is the grade of a bolt whose head says nothing.
const Unmarked = "unmarked"

// A Tightening is one line of a torque table: a torque with all that gives it a
// meaning.
type Tightening struct {
	Joint  string           // "cap bolts"
	Thread bolt.Designation // "M12x1.75", "7/16-20 UNF"
	Grade  string           // "10.9" on a metric bolt, "5" or "8" on an inch one, "R" to "V" on an old British one, or Unmarked
	Finish Finish
	Washer Washer
	Source string // maker's page, washer maker's table, shop's own
	Torque Reading
}

// A TighteningResult is what a torque does.
type TighteningResult struct {
	Answer
	Preload Spread  // N
	Use     Spread  // -, preload over proof load; zero where the grade is not known
	Usual   float64 // N·m, torque for three quarters of the proof load; zero where the grade is not known
	Meant   float64 // N·m, the torque if inch and foot were mixed up
}

// Nut factors of practice and their spread, a third either way.
const (
	oiledFactor, dryFactor = 0.15, 0.20
	factorSpread           = 1.0 / 3
	usualUse               = 0.75
)

// JudgeTightening returns the preload that a torque gives. A bare number is
// refused: without thread, grade, finish, washer and source it means nothing.
//
// The preload is T/(K·d), with the nut factors of practice (no source), 0.15
// oiled and 0.20 dry, each within a third.
func JudgeTightening(spec Spec, in Tightening) (TighteningResult, error) {
	var s sheet
	var r TighteningResult
	s.spec(spec)
	s.complete(in)
	if err := s.err(); err != nil {
		return TighteningResult{}, err
	}
	thread, err := bolt.StandardThread(in.Thread)
	if err != nil {
		return TighteningResult{}, axle.Findings{{Field: "Thread", Problem: fmt.Sprintf("%q is not a thread of the list, expected one as it is written on a drawing such as \"M12x1.75\", \"7/16-20 UNF\" or \"3/8 BSF\"", string(in.Thread))}}
	}
	strength, known, err := gradeStrength(in.Grade, thread)
	if err != nil {
		return TighteningResult{}, err
	}
	if err := r.work(in, thread, strength, known); err != nil {
		return TighteningResult{}, asFinding(err)
	}
	r.judge(spec, in, known)
	return r, nil
}

// complete refuses what is not all there.
func (s *sheet) complete(in Tightening) {
	bare := "is missing"
	if in.Torque.Taken {
		bare = "is missing, and " + torque(in.Torque.SI) + " means nothing without it"
		s.number("Torque", in.Torque.SI, quantity.Torque, in.Torque.SI > 0 && in.Torque.SI <= 3000, "a torque such as 90 N·m or 66 lbf·ft")
	} else {
		s.bad("Torque", "is missing, expected a torque such as 90 N·m or 66 lbf·ft")
	}
	for _, f := range []struct{ field, value, expected string }{
		{"Thread", string(in.Thread), `a thread such as "M12x1.75"`},
		{"Grade", in.Grade, `the mark on the head such as "10.9", or "unmarked"`},
		{"Finish", string(in.Finish), `"oiled" or "dry"`},
		{"Washer", string(in.Washer), `"none", "plain", "hardened" or "wedge-lock"`},
		{"Source", in.Source, "where the torque is from, such as the page of the manual"},
	} {
		if f.value == "" {
			s.bad(f.field, "%s: expected %s", bare, f.expected)
		}
	}
	if in.Finish != "" {
		choose(s, "Finish", "", in.Finish, Oiled, Dry)
	}
	if in.Washer != "" {
		choose(s, "Washer", "", in.Washer, NoWasher, PlainWasher, HardenedWasher, WedgeWasher)
	}
}

// gradeStrength finds the strength behind a mark; it says false where the mark
// tells no proof load.
func gradeStrength(grade string, thread bolt.ThreadSizeResult) (bolt.StrengthResult, bool, error) {
	if grade == Unmarked {
		return bolt.StrengthResult{}, false, nil
	}
	expected := `a class such as "8.8", "10.9" or "12.9"`
	var strength bolt.StrengthResult
	var err error
	switch thread.Form {
	case bolt.Metric:
		strength, err = bolt.ClassStrength(bolt.Class(grade), thread.Diameter)
	case bolt.Unified:
		expected = `a grade such as "5" or "8"`
		strength, err = bolt.UnifiedStrength(bolt.UnifiedGrade(grade), thread.Diameter)
	default:
		expected = `a letter "R", "S", "T" or "V"`
		_, err = bolt.OldGradeTensile(bolt.OldGrade(grade))
	}
	if err != nil {
		return strength, false, axle.Findings{{Field: "Grade", Problem: fmt.Sprintf("%q does not go with this thread, expected %s, or %q", grade, expected, Unmarked)}}
	}
	return strength, thread.Form != bolt.Whitworth, nil
}

func (r *TighteningResult) work(in Tightening, thread bolt.ThreadSizeResult, strength bolt.StrengthResult, known bool) error {
	k := oiledFactor
	if in.Finish == Dry {
		k = dryFactor
	}
	d := thread.Diameter
	at := [3]float64{}
	for i, factor := range []float64{k * (1 + factorSpread), k, k * (1 - factorSpread)} {
		var err error
		if at[i], err = bolt.NutFactorPreload(factor, d, in.Torque.SI); err != nil {
			return err
		}
	}
	r.Preload = ordered(at)
	r.line("", "T", in.Joint+", "+string(in.Finish)+", washer "+string(in.Washer), in.Torque.SI, quantity.Torque, axle.Maker, in.Source)
	r.line("÷", "K", "nut factor, "+string(in.Finish), k, quantity.Number, axle.Trade, "[T] custom of the trade, no source, within a third")
	r.line("÷", "d", "nominal diameter", d, quantity.Length, axle.Computed, string(in.Thread))
	r.computed("=", "F", "preload, "+r.Preload.shown(quantity.Force), r.Preload.Likely, quantity.Force, "")
	if !known {
		return nil
	}
	stressArea := bolt.StressArea
	if thread.Form == bolt.Unified {
		stressArea = bolt.UnifiedStressArea
	}
	area, err := stressArea(d, thread.Pitch)
	if err != nil {
		return err
	}
	proof := strength.Proof * area
	if r.Usual, err = bolt.NutFactorTorque(k, d, usualUse*proof); err != nil {
		return err
	}
	r.Use = r.Preload.times(1 / proof)
	r.line("÷", "F_p", "proof load of grade "+in.Grade, proof, quantity.Force, axle.Computed, "proof stress times stress area")
	r.computed("=", "u", "share of the proof load", r.Use.Likely, quantity.Share, "")
	if load := strength.Yield * area; r.Preload.Likely >= load {
		r.settle(Stop, "%s would stretch the bolt beyond its yield at %s.", torque(in.Torque.SI), shown(load, quantity.Force))
	}
	return nil
}

func (r *TighteningResult) judge(spec Spec, in Tightening, known bool) {
	if !known {
		r.settle(Look, "The grade tells no proof load, so nobody can say how much of the bolt is used.")
		r.say("Use bolts whose heads are marked.")
		return
	}
	low, high := r.Usual*0.5, r.Usual*1.2
	meant, suspected := quantity.MeantTorque(in.Torque.SI, low, high)
	use := r.check("share of the proof load", r.Use.Likely, spec.Limit(BoltUse))
	if suspected {
		r.Meant = meant
		r.settle(Look, "%s looks like %s on the wrong scale: inch and foot differ 12 times.", torque(in.Torque.SI), torque(meant))
		r.ask("Was inch read for foot, or foot for inch? Then it is %s.", torque(meant))
	} else if use == Fine && r.Use.Likely < 0.4 {
		r.settle(Look, "%s uses %s of the bolt only; three quarters of its proof load would be %s.", torque(in.Torque.SI), quantity.Percent(r.Use.Likely), torque(r.Usual))
		r.ask("Is it the right thread and grade?")
	}
	r.finish()
	if in.Washer == WedgeWasher {
		r.note("Wedge-lock washers take the torque of their own maker's table and need a hard flat seat; the nut factor here is not theirs.")
	}
	if slices.Contains([]string{"12.9", "8.2"}, in.Grade) {
		r.note("Into old iron the thread in the casting is the weak part with such bolts: look at its engagement.")
	}
	if r.Use.High > 1 && r.State == Fine {
		r.note("With slippery threads it may reach the proof load.")
	}
	r.note("By torque alone a preload is known within a third either way.")
}

// CompareColumns looks at the two columns of a torque table. A dry thread needs
// more torque for the same preload: where the dry column is the lower one, the
// two were swapped.
func CompareColumns(oiled, dry Reading) (Answer, error) {
	var s sheet
	var a Answer
	const example = "a torque such as 90 N·m or 66 lbf·ft"
	s.need("oiled", "torque oiled", oiled, quantity.Torque, 0.1, 3000, example)
	s.need("dry", "torque dry", dry, quantity.Torque, 0.1, 3000, example)
	if err := s.err(); err != nil {
		return Answer{}, err
	}
	if s.waiting(&a) {
		return a, nil
	}
	a.measured("", "T_dry", "dry", dry, quantity.Torque)
	a.measured("÷", "T_oiled", "oiled", oiled, quantity.Torque)
	ratio := dry.SI / oiled.SI
	a.computed("=", "", "ratio, about 1.33 by practice", ratio, quantity.Number, "")
	if ratio <= 1 {
		a.settle(Look, "Dry %s is not above oiled %s: the columns are swapped, for a dry thread needs more torque for the same preload.", torque(dry.SI), torque(oiled.SI))
		a.ask("Which of the two did the maker mean?")
		return a, nil
	}
	a.done("Dry is above oiled, as it must be.")
	return a, nil
}
