package shop

import (
	"slices"
	"strconv"
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

// refuseStopped refuses to certify a unit or to hand it over while a stop stands.
func (j *Job) refuseStopped(slot Slot) error {
	all := j.OutStops()
	if len(all) == 0 {
		return nil
	}
	may := strings.Join(wordsOf(all[0].May), " or ")
	e := all[0].refusal(slot)
	e.Says = "This unit does not go out while a stop stands: " + all[0].Sentence + " Settle its cause, or let the " + may + " override it by name and with a reason."
	return e
}

// mayBeCertified refuses while a stop stands or a reading is queried, and where
// something is not in the record and nobody says why.
func (j *Job) mayBeCertified(slot Slot, why string) error {
	if err := j.refuseStopped(slot); err != nil {
		return err
	}
	if open := j.Queried(); len(open) > 0 {
		return Fault(Invalid, "%s Say at its step what was meant: until then nothing is signed.", inQuestion(open[0])).At(slot.String())
	}
	if missing := j.NotInRecord(); len(missing) > 0 && required("why", why) != nil {
		return Fault(Invalid, "Not in the record: %s. Fill it, or say why it is signed without.", strings.Join(missing, ", ")).At("why")
	}
	return nil
}

// mayBeHandedOver refuses while a stop stands that keeps the unit back. Where
// OutDoubts has something to say, somebody must say why it goes out.
func (j *Job) mayBeHandedOver(slot Slot, why string) error {
	if err := j.refuseStopped(slot); err != nil {
		return err
	}
	if doubts := j.OutDoubts(); len(doubts) > 0 && required("why", why) != nil {
		return Fault(Invalid, "%s Settle it, or write beside the states why the unit goes out all the same.", strings.Join(doubts, " ")).At("why")
	}
	return nil
}

// OutDoubts are sentences on what speaks against handing the unit over without a
// reason: a stop on work that was ordered, a reading in question, gaps.
func (j *Job) OutDoubts() []string {
	var all []string
	works := j.Works()
	ordered := func(key StepKey) bool { s, _ := StepOf(key); return meets(s.For, works) }
	for _, st := range j.Stops() {
		if st.Override == nil && slices.ContainsFunc(st.Steps, ordered) {
			all = append(all, "A stop stands: "+st.Sentence)
		}
	}
	for _, e := range j.Queried() {
		all = append(all, inQuestion(e))
	}
	if missing := j.NotInRecord(); len(missing) > 0 {
		all = append(all, "Not in the record: "+strings.Join(missing, ", ")+".")
	}
	return all
}

// NotInRecord names the steps of the build whose wanted boxes are empty, all or
// some of them, whether or not somebody marked the step done.
func (j *Job) NotInRecord() []string {
	var all []string
	for _, v := range j.Steps() {
		if v.Gaps == 0 || slices.Contains([]StepKey{"enquiry", "deal", "handover", "return"}, v.Step.Key) {
			continue
		}
		name := strings.ToLower(v.Step.Title[:1]) + v.Step.Title[1:]
		if v.State != StepEmpty {
			name += " (" + strconv.Itoa(v.Gaps) + " open)"
		}
		all = append(all, name)
	}
	return all
}

// inQuestion is the sentence on a reading that is queried.
func inQuestion(e *Entry) string {
	step, _ := StepOf(e.Step)
	f, _ := FieldOf(e.Step, e.Item)
	name := step.Title + ", " + f.Title
	if e.Place != "" {
		name += " " + e.Place
	}
	return "A reading is in question: " + name + ", typed " + e.Value.Typed + "."
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
