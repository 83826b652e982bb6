package shop

import (
	"cmp"
	"context"
	"slices"
	"time"

	"axlewright/casting"
)

// A Sighting is what one job found out about its casting. It is worked out from
// the record and kept nowhere.
type Sighting struct {
	Job      ID
	Name     string // the casting's own: its donor's tag, else the job's number
	Day      string
	Variant  ID   // card of the variant that it was called; empty while it is open
	Sure     bool // nobody doubted it
	New      bool // it was none of the variants known when it came
	Modified bool
	Seen     []SeenLine
	Metal    casting.MetalEvidence
	Readings map[string]float64 // m, by number of the station
}

// A SeenLine is one line of what was seen, as the record has it.
type SeenLine struct {
	Feature, Says string
	Entry         *Entry
}

// Sighting reads what the job found out about its casting.
func (j *Job) Sighting() Sighting {
	s := Sighting{Job: j.ID, Name: j.castingName(), Day: j.Opened.Format(time.DateOnly), Metal: j.MetalEvidence(), Readings: map[string]float64{}}
	if l := j.Casting(); l != nil {
		s.Variant = l.ID
	}
	sure := j.Value("identify", "sure").Word()
	s.Sure, s.New = sure == SureYes, sure == SureNew
	s.Modified = j.Value("identify", "modified").Word() == ModifiedYes
	for _, e := range j.All("identify", SeenItem) {
		s.Seen = append(s.Seen, SeenLine{e.Place, e.Value.Text, e})
	}
	for _, e := range j.All("stations", StationItem) {
		if e.Value.SI != nil {
			s.Readings[e.Place] = *e.Value.SI
		}
	}
	return s
}

// castingName is what the casting goes by.
func (j *Job) castingName() string {
	return cmp.Or(j.Value("donor", "donor").label(), j.Stamped(), "job "+j.NumberText())
}

// sightings reads every job that names a variant, the oldest first.
func (s *Shop) sightings(ctx context.Context) ([]Sighting, error) {
	var all []Sighting
	err := s.store.View(ctx, func(tx Tx) error {
		cards, err := tx.FindCards(CardQuery{Kind: KindCasting, Retired: true, Limit: mostCards})
		if err != nil {
			return err
		}
		for _, c := range cards.Cards {
			uses, err := tx.Uses(KindCasting, c.ID, everyUse)
			if err != nil {
				return err
			}
			for _, u := range uses {
				if u.Slot != slotCasting.String() {
					continue
				}
				one, err := s.sighting(tx, u.Job)
				if err != nil {
					return err
				}
				all = append(all, one)
			}
		}
		return nil
	})
	slices.SortStableFunc(all, func(a, b Sighting) int { return cmp.Or(cmp.Compare(a.Day, b.Day), cmp.Compare(a.Job, b.Job)) })
	return all, err
}

const mostCards = 5000

// sighting reads one job, once for each state of its record: what a record says
// follows from its head.
func (s *Shop) sighting(tx Tx, job ID) (Sighting, error) {
	head, err := tx.Head(job)
	if err != nil {
		return Sighting{}, err
	}
	if kept, ok := s.seen.Load(job); ok && kept.(readSighting).head == head {
		return kept.(readSighting).Sighting, nil
	}
	j, err := readJob(tx, job)
	if err != nil {
		return Sighting{}, err
	}
	one := j.Sighting()
	s.seen.Store(job, readSighting{one, head})
	return one, nil
}

// A readSighting is a sighting and the head of the record that it was read from.
type readSighting struct {
	Sighting
	head Head
}
