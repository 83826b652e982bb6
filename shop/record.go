package shop

import (
	"context"
	"reflect"
	"slices"
	"strings"
	"time"

	"axlewright/quantity"
)

// A Set asks for one value to be written in one place of a record.
type Set struct {
	Slot  Slot
	Value Value

	// Corrects is the Seq of the entry that the sender saw in this place (also
	// a withdrawn one), 0 where it saw none. If another stands there by now,
	// the set is refused with a Conflict that carries both.
	Corrects int64

	Why        string    // of a correction; demanded where a certificate covers what is corrected
	Instrument string    // "dial gauge 3"
	Taken      time.Time // when it was typed, where it was sent later
	Ticket     string    // the same ticket is written once, however often it is sent
}

// Record writes values into a job's record, all or none of them. What it
// refuses:
//
//   - Invalid: the value is not what the field holds (Field says which)
//   - Conflict: another entry stands in the place by now, or the ticket was
//     used for something else
//   - Stopped: a stop stands at the step
//   - Short: less of a lot is free than is to be set aside
//   - Forbidden, NotFound, Damaged
//
// A value that stands already is not written again. A reading outside its range
// is never refused: it is written with its verdict.
func (s *Shop) Record(ctx context.Context, by Actor, job ID, sets ...Set) (*Job, error) {
	var result *Job
	err := s.store.Update(ctx, func(tx Tx) error {
		j, err := readJob(tx, job)
		if err != nil {
			return err
		}
		result, err = s.set(tx, by, j, sets)
		return err
	})
	if err != nil {
		return nil, err
	}
	return result, nil
}

// set writes each set on top of those before it, so that a later one sees what
// an earlier one has changed.
func (s *Shop) set(tx Tx, by Actor, j *Job, sets []Set) (*Job, error) {
	if len(sets) == 0 {
		return j, nil
	}
	if err := j.whole(); err != nil {
		return nil, err
	}
	for _, set := range sets {
		e, write, err := s.entryOf(tx, by, j, set)
		if err != nil {
			return nil, err
		}
		if !write {
			continue
		}
		if j, err = s.write(tx, by, j, []Entry{e}); err != nil {
			return nil, err
		}
	}
	return j, nil
}

// entryOf turns a set into an entry, or says that it is written already.
func (s *Shop) entryOf(tx Tx, by Actor, j *Job, set Set) (Entry, bool, error) {
	at := set.Slot.String()
	e := Entry{Kind: EntrySet, Step: set.Slot.Step, Item: set.Slot.Item, Place: set.Slot.Place, Corrects: set.Corrects,
		Why: set.Why, Instrument: set.Instrument, Taken: set.Taken, Ticket: set.Ticket, Value: set.Value}
	step, ok := StepOf(set.Slot.Step)
	if !ok {
		return e, false, Fault(NotFound, "There is no step %q.", set.Slot.Step).At(at)
	}
	if err := mayRecord(by, step.Key); err != nil {
		return e, false, err
	}
	if err := firstFault(checkTicket(set.Ticket), lengthOf(at, set.Why, 1000), lengthOf(at, set.Instrument, 100)); err != nil {
		return e, false, err
	}
	if !set.Taken.IsZero() && set.Taken.After(s.now().Add(24*time.Hour)) {
		return e, false, Fault(Invalid, "The tablet's clock is wrong: it says %s.", set.Taken.Format(time.DateOnly)).At(at)
	}

	// The ticket comes first: what is sent again is answered as the first time.
	if twin := j.ticket(set.Ticket); twin != nil {
		if twin.Slot() == set.Slot && twin.Value.saysWhat(set.Value) {
			return e, false, nil
		}
		return e, false, &Error{Code: Conflict, Says: "This was already sent, with something else in it.", Field: at, Clash: &Clash{Stands: twin, Refused: &e}}
	}

	last := j.Last(set.Slot)
	switch {
	case set.Slot.Beside():
		if err := changeBeside(last, &e); err != nil {
			return e, false, err
		}
	default:
		if err := s.fill(tx, j, step, last, &e); err != nil {
			return e, false, err
		}
	}
	confirms := e.Value.Confirmed && (last == nil || !last.Value.Confirmed)
	if last != nil && last.Value.saysWhat(e.Value) && !confirms || last == nil && e.Value.Withdrawn {
		return e, false, nil
	}
	if err := s.overtaken(by, last, e); err != nil {
		return e, false, err
	}
	if last != nil && set.Why == "" && j.Certified(set.Slot) {
		return e, false, Fault(Invalid, "A certificate has been given for this: say why it is changed.").At(at)
	}
	return e, true, nil
}

// fill checks the value against its field, names the cards it links to, and
// adds range and verdict.
func (s *Shop) fill(tx Tx, j *Job, step Step, last *Entry, e *Entry) error {
	at := e.Slot().String()
	f, ok := FieldOf(step.Key, e.Item)
	if !ok {
		return Fault(NotFound, "There is no box %q at %s.", e.Item, step.Title).At(at)
	}
	if err := checkPlace(f, e.Place, last); err != nil {
		return err
	}
	if e.Value.Withdrawn {
		e.Value = Value{Withdrawn: true}
		return nil // taking back is never stopped
	}
	if err := checkValue(f, at, e.Value); err != nil {
		return err
	}
	if stop := j.stopAt(step.Key, e.Item); stop != nil {
		return stop.refusal(e.Slot())
	}
	switch f.Kind {
	case FieldText:
		if _, err := quantity.ParseTyre(e.Value.Text); err != nil && step.Key == "enquiry" && oneOf(e.Item, []string{"tyre_fitted", "tyre_planned"}) {
			e.Verdict = Look // kept as told: no size can be read from it
		}
	case FieldFigure:
		limit, err := limitFor(tx, j, step.Key, f)
		if err != nil {
			return err
		}
		if step.Key == weldStep && e.Item == "amps" {
			limit = ampsBand(f, limit, j.placed("plate", e.Place))
		}
		if step.Key == "side" && e.Item == "after" {
			limit = j.overCaps()
		}
		e.Verdict = NotYet
		if limit != nil {
			e.Limit, e.Verdict = limit, Judge(*e.Value.SI, *limit)
		}
		if step.Key == "peg" && e.Item == "gap" && touching(e.Value) {
			e.Verdict = Halt
		}
	case FieldChoice, FieldChoices:
		e.Verdict = judgeChoice(f, e.Value.Words)
	case FieldLink:
		return linkCard(tx, j, f, e)
	case FieldPart:
		return s.takePart(tx, j, f, e)
	}
	return nil
}

// changeBeside lets notes, photographs and marks be withdrawn, and notes be
// put in other words.
func changeBeside(last *Entry, e *Entry) error {
	at := e.Slot().String()
	if last == nil {
		return Fault(NotFound, "There is nothing here to change.").At(at)
	}
	e.Kind = last.Kind
	switch {
	case e.Value.Withdrawn:
		e.Value = Value{Withdrawn: true}
	case last.Kind == EntryNote && e.Value.Text != "":
		e.Value = Value{Text: e.Value.Text}
		return lengthOf(at, e.Value.Text, longText)
	case last.Kind == EntryPhoto:
		caption := e.Value.Text
		e.Value = last.Value
		e.Value.Text, e.Value.Withdrawn = caption, false
		if e.Value.File == nil {
			return Fault(Invalid, "This photograph was withdrawn: add it again.").At(at)
		}
		return lengthOf(at, caption, 1000)
	default:
		return Fault(Invalid, "This can only be taken back.").At(at)
	}
	return nil
}

// limitFor returns the range that a reading is judged against, nil where there is none.
func limitFor(tx Tx, j *Job, step StepKey, f Field) (*Limit, error) {
	house, err := getSheet[House](tx, HouseID)
	if err != nil {
		return nil, err
	}
	var casting *Casting
	if link := j.Casting(); link != nil {
		c, err := getSheet[Casting](tx, link.ID)
		if err != nil && CodeOf(err) != NotFound { // the card of an imported job may be missing
			return nil, err
		}
		if err == nil {
			casting = &c
		}
	}
	limit, _ := LimitsFor(j, step, f, casting, &house)
	return limit, nil
}

func (j *Job) ticket(ticket string) *Entry {
	if ticket == "" {
		return nil
	}
	for i := range j.entries {
		if j.entries[i].Ticket == ticket {
			return &j.entries[i]
		}
	}
	return nil
}

// saysWhat compares what people said, without what the shop added to it.
func (v Value) saysWhat(w Value) bool {
	bare := func(v Value) Value {
		v.Fits, v.Text, v.Confirmed = nil, strings.TrimSpace(v.Text), false
		if v.Quantity != nil {
			v.Text = ""
		}
		if v.Link != nil {
			v.Link = &Link{Kind: v.Link.Kind, ID: v.Link.ID}
		}
		if len(v.Words) > 1 {
			v.Words = slices.Sorted(slices.Values(v.Words))
		}
		return v
	}
	return reflect.DeepEqual(bare(v), bare(w))
}

func lastSeq(e *Entry) int64 {
	if e == nil {
		return 0
	}
	return e.Seq
}

// mayRecord refuses those who may not write at the step.
func mayRecord(by Actor, step StepKey) error { return by.Must(by.Role.recordAct(step)) }
