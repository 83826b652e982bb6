package shop

import (
	"maps"
	"slices"
	"time"
)

// A Job is a record read: what stands in every place, and what stood there
// before. It does not change; Shop.Job reads it anew.
type Job struct {
	ID     ID
	Number int64 // running number of the shop that opened it
	Origin Link  // that shop; Kind is KindHouse
	Opened time.Time
	Head   Head
	Damage []Finding // what is wrong with the record: to be shown on every page of it

	sealed  []Sealed
	entries []Entry
	places  map[Slot][]int // indexes into entries, oldest first
}

// Read reads a record. A record that is damaged is read as far as it goes,
// with Damage set.
func Read(job ID, sealed []Sealed, head Head) *Job {
	j := &Job{ID: job, Head: head, sealed: sealed, places: map[Slot][]int{}}
	prev := NoHash
	for i, s := range sealed {
		e, err := Unseal(s)
		if err != nil || s.Seq != int64(i+1) || e.Prev != prev || hashOf(s.Body) != s.Hash || e.Job != job {
			j.Damage = Verify(job, sealed, head)
		}
		prev = s.Hash
		if err != nil {
			continue
		}
		j.add(e)
	}
	if head.Seq != int64(len(sealed)) || len(sealed) > 0 && head.Hash != prev {
		j.Damage = Verify(job, sealed, head)
	}
	return j
}

// whole refuses a record that is damaged: nothing is added to it.
func (j *Job) whole() error {
	if len(j.Damage) == 0 {
		return nil
	}
	return Fault(Damaged, "This record is damaged (%s), so nothing is added to it. Restore it from a backup.", j.Damage[0])
}

// add takes one more entry in. The first one says which job it is.
func (j *Job) add(e Entry) {
	slot := e.Slot()
	at := j.places[slot]
	j.places[slot] = append(at[:len(at):len(at)], len(j.entries))
	j.entries = append(j.entries, e)
	if e.Kind != EntryOpened || slot != slotOpened {
		return
	}
	j.Opened = e.At
	if e.Value.Link != nil {
		j.Origin = *e.Value.Link
	}
	if e.Value.SI != nil {
		j.Number = int64(*e.Value.SI)
	}
}

// with is the job with more entries, which follow its head.
func (j *Job) with(sealed []Sealed, entries []Entry) *Job {
	next := *j
	next.sealed = append(j.sealed[:len(j.sealed):len(j.sealed)], sealed...)
	next.entries = j.entries[:len(j.entries):len(j.entries)]
	next.places = maps.Clone(j.places)
	for _, e := range entries {
		next.add(e)
		next.Head = Head{e.Seq, e.Hash}
	}
	return &next
}

// StepJob is the step of entries about the job as a whole. It is not one of Steps.
const StepJob StepKey = "job"

// The items beside the fields of steps.
const (
	ItemNote  = "note"  // place: the ticket
	ItemPhoto = "photo" // place: the beginning of the file's hash
	ItemMark  = "mark"
)

var (
	slotOpened  = Slot{StepJob, "opened", ""}
	slotState   = Slot{StepJob, "state", ""}
	slotStamped = Slot{"stamp", "number", ""}
)

// Beside says whether the slot is of a note, a photograph or a mark: beside the
// fields of its step.
func (s Slot) Beside() bool { return oneOf(s.Item, []string{ItemNote, ItemPhoto, ItemMark}) }

// Entries returns the whole record, oldest first. Do not change it.
func (j *Job) Entries() []Entry { return j.entries }

// AsOf is the job as it was after its entry of a number: what a certificate covers.
func (j *Job) AsOf(seq int64) *Job {
	if seq < 1 || seq >= int64(len(j.sealed)) {
		return j
	}
	return Read(j.ID, j.sealed[:seq], Head{seq, j.sealed[seq-1].Hash})
}

// Standing returns the entry that stands in a place, nil where there is none
// or where it was withdrawn.
func (j *Job) Standing(s Slot) *Entry {
	e := j.Last(s)
	if e == nil || e.Value.Withdrawn {
		return nil
	}
	return e
}

// Last returns the newest entry of a place, also a withdrawal: the one that the
// next entry of the place must name in Corrects.
func (j *Job) Last(s Slot) *Entry {
	at := j.places[s]
	if len(at) == 0 {
		return nil
	}
	return &j.entries[at[len(at)-1]]
}

// History returns all entries of a place, oldest first.
func (j *Job) History(s Slot) []Entry {
	var all []Entry
	for _, i := range j.places[s] {
		all = append(all, j.entries[i])
	}
	return all
}

// Value returns what stands at a field without places, the zero Value where
// nothing does.
func (j *Job) Value(step StepKey, item string) Value {
	if e := j.Standing(Slot{step, item, ""}); e != nil {
		return e.Value
	}
	return Value{}
}

// All returns what stands at a step, or at one item of it where item is not
// empty, in the order in which the places were first filled.
func (j *Job) All(step StepKey, item string) []*Entry {
	var all []*Entry
	for i := range j.entries {
		e := &j.entries[i]
		if e.Step != step || item != "" && e.Item != item {
			continue
		}
		if at := j.places[e.Slot()]; len(at) == 0 || at[0] != i {
			continue
		}
		if last := j.Standing(e.Slot()); last != nil {
			all = append(all, last)
		}
	}
	return all
}

// InPlaces is All of one item in the order of its field's places: round the
// wheel, and not as they were typed.
func (j *Job) InPlaces(step StepKey, item string) []*Entry {
	all := j.All(step, item)
	f, _ := FieldOf(step, item)
	at := func(e *Entry) int {
		if i := slices.Index(f.Places, e.Place); i >= 0 {
			return i
		}
		return len(f.Places)
	}
	slices.SortStableFunc(all, func(a, b *Entry) int { return at(a) - at(b) })
	return all
}

// Kept returns all entries of a kind, oldest first, without those withdrawn:
// the advice, quotes, papers or certificates of a job.
func (j *Job) Kept(kind EntryKind) []*Entry {
	var all []*Entry
	for i := range j.entries {
		e := &j.entries[i]
		if e.Kind == kind && j.Standing(e.Slot()) == e {
			all = append(all, e)
		}
	}
	return all
}

// State returns where the job stands.
func (j *Job) State() State {
	if e := j.Standing(slotState); e != nil {
		return State(e.Value.Word())
	}
	return StateEnquiry
}

// Works returns what is done beyond a rebuild as standard, in the order of Works.
func (j *Job) Works() []Work {
	chosen := j.Value("enquiry", "work").Words
	var all []Work
	for _, w := range Works {
		if slices.Contains(chosen, string(w)) {
			all = append(all, w)
		}
	}
	return all
}

// Stamped returns the number stamped into the casting, "" before that.
func (j *Job) Stamped() string { return j.Value(slotStamped.Step, slotStamped.Item).Text }

// Casting returns the variant, nil while it is not known.
func (j *Job) Casting() *Link { return j.Value("identify", "casting").Link }

// Title says whose job it is: customer and vehicle.
func (j *Job) Title() string {
	title := ""
	for _, item := range []string{"customer", "vehicle"} {
		if l := j.Value("enquiry", item).Link; l != nil && l.Label != "" {
			if title != "" {
				title += ", "
			}
			title += l.Label
		}
	}
	if end := j.Value("enquiry", "end").Word(); end != "" && title != "" {
		title += ", " + end
	}
	return title
}
