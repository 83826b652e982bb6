package shop

import (
	"context"
	"slices"
)

// SetState moves a job to a state. Corrects is the Seq of the state that the
// caller saw (Job.Last of StateSlot), 0 for none. A unit is not handed over while
// a stop stands that keeps it back (OutStops), nor without a reason where OutDoubts
// has something to say.
func (s *Shop) SetState(ctx context.Context, by Actor, job ID, to State, corrects int64, why string) (*Job, error) {
	if !oneOf(to, States) {
		return nil, Fault(Invalid, "There is no state %q.", to).At("state")
	}
	if err := firstFault(by.Must(by.Role.either(ActBuild, ActSell)), lengthOf("why", why, 1000)); err != nil {
		return nil, err
	}
	e := Entry{Kind: EntryState, Step: slotState.Step, Item: slotState.Item, Corrects: corrects, Why: why, Value: Words(string(to))}
	return s.change(ctx, by, job, func(_ Tx, j *Job) ([]Entry, error) {
		if to == StateOut && j.State() != StateOut {
			if err := j.mayBeHandedOver(slotState, why); err != nil {
				return nil, err
			}
		}
		return j.follow(by, s, e)
	})
}

// StateSlot is where a job's state stands.
func StateSlot() Slot { return slotState }

// Mark marks a step done or not needed, whatever its gaps.
func (s *Shop) Mark(ctx context.Context, by Actor, job ID, step StepKey, word string, corrects int64, why string) (*Job, error) {
	if word != MarkDone && word != MarkNotNeeded {
		return nil, Fault(Invalid, "A step is done or not needed.").At("mark")
	}
	if _, ok := StepOf(step); !ok {
		return nil, Fault(NotFound, "There is no step %q.", step)
	}
	if err := firstFault(mayRecord(by, step), lengthOf("why", why, 1000)); err != nil {
		return nil, err
	}
	e := Entry{Kind: EntryMark, Step: step, Item: ItemMark, Corrects: corrects, Why: why, Value: Words(word)}
	return s.change(ctx, by, job, func(_ Tx, j *Job) ([]Entry, error) {
		if stop := j.stopAt(step, ItemMark); stop != nil && word == MarkDone {
			return nil, stop.refusal(e.Slot())
		}
		return j.follow(by, s, e)
	})
}

// follow writes an entry after the one it names, or tells of the clash.
func (j *Job) follow(by Actor, s *Shop, e Entry) ([]Entry, error) {
	last := j.Last(e.Slot())
	if last != nil && last.Value.saysWhat(e.Value) {
		return nil, nil
	}
	if err := s.overtaken(by, last, e); err != nil {
		return nil, err
	}
	return []Entry{e}, nil
}

// overtaken is the clash of an entry that follows another one than stands last
// in its place.
func (s *Shop) overtaken(by Actor, last *Entry, e Entry) error {
	if lastSeq(last) == e.Corrects {
		return nil
	}
	e.Who, e.At = by.By(), s.now()
	return &Error{Code: Conflict, Says: "Somebody else wrote here in the meantime: look at both.", Field: e.Slot().String(),
		Clash: &Clash{Stands: last, Refused: &e}}
}

// Override lets the job go on over a stop, by the name of the actor and for
// the reason given. It covers the cause as it stands now: if the cause
// changes, the stop stands again.
func (s *Shop) Override(ctx context.Context, by Actor, job ID, stop, why string) (*Job, error) {
	if err := firstFault(by.Must(ActOverride), required("why", why), lengthOf("why", why, 1000)); err != nil {
		return nil, err
	}
	return s.change(ctx, by, job, func(_ Tx, j *Job) ([]Entry, error) {
		for _, st := range j.Stops() {
			if st.Key != stop {
				continue
			}
			if !slices.Contains(st.May, by.Role) {
				return nil, Fault(Forbidden, "Only the owner may override this: %s", st.Sentence)
			}
			if st.Override != nil {
				return nil, nil
			}
			slot := Slot{StepJob, "override", st.Key}
			return []Entry{{Kind: EntryOverride, Step: slot.Step, Item: slot.Item, Place: slot.Place, Corrects: lastSeq(j.Last(slot)),
				Why: why, Value: Value{Text: st.Sentence, Because: st.Because}}}, nil
		}
		return nil, Fault(NotFound, "No such stop stands at this job.")
	})
}
