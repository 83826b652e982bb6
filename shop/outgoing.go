package shop

import (
	"slices"
	"strings"
)

// OutStops are the stops that keep a unit from being certified and handed over:
// those that nobody has overridden and that guard the handover, or a step at
// which something stands. Their cause was found after the work, or changed since
// it was overridden. A stop on welding keeps no unit back that is not welded.
func (j *Job) OutStops() []StandingStop {
	var all []StandingStop
	for _, st := range j.Stops() {
		guarded := func(e Entry) bool {
			return e.Kind == EntrySet && slices.Contains(st.Steps, e.Step) && j.Standing(e.Slot()) != nil
		}
		if st.Override == nil && (slices.Contains(st.Steps, "handover") || slices.ContainsFunc(j.entries, guarded)) {
			all = append(all, st)
		}
	}
	return all
}

// mayGoOut refuses to certify a unit or to hand it over while a stop stands, or
// while a reading is queried and nobody has said what was meant.
func (j *Job) mayGoOut(slot Slot) error {
	all := j.OutStops()
	if len(all) == 0 {
		return j.answered(slot)
	}
	may := strings.Join(wordsOf(all[0].May), " or ")
	e := all[0].refusal(slot)
	e.Says = "This unit does not go out while a stop stands: " + all[0].Sentence + " Settle its cause, or let the " + may + " override it by name and with a reason."
	return e
}

// answered refuses while a reading is queried, and names it.
func (j *Job) answered(slot Slot) error {
	open := j.Queried()
	if len(open) == 0 {
		return nil
	}
	e := open[0]
	step, _ := StepOf(e.Step)
	f, _ := FieldOf(e.Step, e.Item)
	name := step.Title + ", " + f.Title
	if e.Place != "" {
		name += " " + e.Place
	}
	return Fault(Invalid, "A reading is in question: %s, typed %s. Say at its step what was meant; until then nothing is signed and the unit does not go out.", name, e.Value.Typed).At(slot.String())
}

// provedBy is where the record shows that a work was done.
var provedBy = map[Work][]Slot{
	WorkFixings: {{"caps", "bolts", ""}, {"caps", "torque", ""}},
	WorkPeg:     {{"peg", "gap", ""}},
	WorkPlates:  {{"weld", "runs", ""}, {"weld", "amps", ""}, {"cooled", "decision", ""}},
	WorkBearing: {{"nose", "wall", ""}, {"nose", "cup", ""}, {"nose", "new_stack", ""}},
}

// Done says whether the record shows that a work was done, and not only ordered.
func (j *Job) Done(w Work) bool {
	return slices.ContainsFunc(provedBy[w], func(s Slot) bool { return len(j.All(s.Step, s.Item)) > 0 })
}
