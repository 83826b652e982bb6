package shop

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"axlewright/axle"
	"axlewright/casting"
)

// Variants is what the shop knows of castings when one of them lies on the bench.
type Variants struct {
	Catalogue casting.Catalogue // files, variants made from jobs, and what confirmed castings taught
	Lessons   []casting.Lesson
	Confirmed int // castings of the shop's jobs that it learnt from

	cards []Casting
	all   []Sighting
}

// Variants joins what the shop knows of castings: the catalogue of its files,
// the variants that were made from its jobs, and what its confirmed castings
// taught about both. A casting is confirmed when its job says which variant it
// is and that this is sure. The job in hand is left out: a casting is no
// evidence for itself.
func (s *Shop) Variants(ctx context.Context, files casting.Catalogue, inHand ID) (*Variants, error) {
	cards, _, err := List[Casting](ctx, s, CardQuery{Retired: true, Limit: mostCards})
	if err != nil {
		return nil, err
	}
	all, err := s.sightings(ctx)
	if err != nil {
		return nil, err
	}
	v := &Variants{Catalogue: files, cards: cards, all: all}
	v.Catalogue.Variants = slices.Clone(files.Variants)
	for i := range cards {
		if cards[i].From != inHand {
			v.found(&cards[i])
		}
	}
	kits, _, err := List[Kit](ctx, s, CardQuery{Limit: mostCards})
	if err != nil {
		return nil, err
	}
	for i := range v.Catalogue.Variants {
		known := &v.Catalogue.Variants[i]
		known.Kit = newestOpen(kits, known.Kit, func(r *KitRevision) bool {
			return slices.ContainsFunc(r.Fits, func(id ID) bool { return v.NameOf(id) == known.Name })
		})
	}
	var confirmed []casting.Confirmed
	for i := range all {
		one := &all[i]
		if one.Job == inHand {
			continue
		}
		name := v.NameOf(one.Variant)
		_, err := v.Catalogue.Variant(name)
		switch founder := v.founder(one.Variant); {
		case err != nil, !one.Sure && !one.New:
		case founder == one.Job:
			confirmed = append(confirmed, casting.Confirmed{Modified: one.Modified}) // its variant was made from it
		default:
			bench, _ := one.Bench(&v.Catalogue)
			confirmed = append(confirmed, casting.Confirmed{Bench: bench, Variant: name, Modified: one.Modified})
		}
	}
	v.Confirmed = len(confirmed)
	if v.Catalogue, v.Lessons, err = v.Catalogue.Learn(confirmed); err != nil {
		return nil, Fault(Invalid, "The confirmed castings cannot be counted.").Because(err)
	}
	return v, nil
}

// found adds the variant of a card that was made from a job.
func (v *Variants) found(card *Casting) {
	if _, err := v.Catalogue.Variant(card.Name); err == nil {
		return // a file has it by now
	}
	for i := range v.all {
		if one := &v.all[i]; one.Job == card.From {
			bench, _ := one.Bench(&v.Catalogue)
			if made, err := v.Catalogue.NewVariant(card.Name, bench); err == nil {
				made.Metal = card.Metal
				v.Catalogue.Variants = append(v.Catalogue.Variants, made)
			}
		}
	}
}

// card of a variant's name, nil where there is none.
func (v *Variants) card(name string) *Casting {
	for i := range v.cards {
		if c := &v.cards[i]; c.Name == name || c.Catalogue == name {
			return c
		}
	}
	return nil
}

// NameOf is the name that the catalogue has for the variant of a card.
func (v *Variants) NameOf(card ID) string {
	for i := range v.cards {
		if c := &v.cards[i]; c.ID == card {
			if _, err := v.Catalogue.Variant(c.Name); err != nil && c.Catalogue != "" {
				return c.Catalogue
			}
			return c.Name
		}
	}
	return ""
}

// founder is the job that the variant of a card was made from.
func (v *Variants) founder(card ID) ID {
	for i := range v.cards {
		if v.cards[i].ID == card {
			return v.cards[i].From
		}
	}
	return ""
}

// firstProblem is the first sentence of what an error found.
func firstProblem(err error) string {
	var found axle.Findings
	if errors.As(err, &found) && len(found) > 0 {
		return strings.TrimPrefix(found[0].Field+": "+found[0].Problem, ": ")
	}
	return err.Error()
}

// An Unread is a line of what was seen that the catalogue does not understand.
type Unread struct{ Feature, Says, Why string }

// Bench is the sighting as evidence for a catalogue. Lines that the catalogue
// does not understand are left out and returned with the reason.
func (s *Sighting) Bench(c *casting.Catalogue) (casting.Bench, []Unread) {
	b := casting.Bench{Casting: s.Name, Metal: s.Metal}
	var unread []Unread
	for _, x := range s.Seen {
		item, err := c.Item(x.Feature, x.Says)
		if err != nil {
			unread = append(unread, Unread{x.Feature, x.Says, err.Error()})
			continue
		}
		b.Evidence = append(b.Evidence, item)
	}
	return b, unread
}

// A Call is what somebody decides that a casting is.
type Call struct {
	Variant string // a variant of the catalogue, or the name of a new one
	New     bool
	Sure    string // one of the words of the step
}

// CallCasting writes into a job's record which variant its casting is. A card
// is made for a variant that has none. A new variant is its card, which names
// the job: what was seen is read from there.
func (s *Shop) CallCasting(ctx context.Context, by Actor, job ID, v *Variants, call Call) (*Job, error) {
	j, err := s.Job(ctx, job)
	if err != nil {
		return nil, err
	}
	if err := mayRecord(by, "identify"); err != nil {
		return nil, err
	}
	known, err := v.Catalogue.Variant(call.Variant)
	card := v.card(call.Variant)
	switch {
	case call.New && (err == nil || card != nil):
		return nil, Fault(Invalid, "There is a variant %s already: give the new one a name of its own.", call.Variant).At("variant")
	case call.New:
		sighting := j.Sighting()
		bench, _ := sighting.Bench(&v.Catalogue)
		if _, err := v.Catalogue.NewVariant(call.Variant, bench); err != nil {
			return nil, Fault(Invalid, "%s", firstProblem(err)).At("variant")
		}
		card = &Casting{Name: call.Variant, From: job, Note: "made from " + j.castingName()}
		call.Sure = SureNew
	case err != nil:
		return nil, Fault(Invalid, "%s", err.Error()).At("variant")
	case card == nil:
		card = &Casting{Name: known.Name, Maker: known.Maker, Metal: known.Metal, Note: known.Note}
	}
	if card.ID == "" {
		saved, err := Save(ctx, s, by, *card)
		if err != nil {
			return nil, err
		}
		card = &saved
	}
	sets := []Set{{Slot: slotCasting, Value: LinkTo(KindCasting, card.ID)}, {Slot: slotSure, Value: Words(call.Sure)}}
	for i := range sets {
		sets[i].Corrects = lastSeq(j.Last(sets[i].Slot))
	}
	return s.Record(ctx, by, job, sets...)
}

var (
	slotCasting = Slot{"identify", "casting", ""}
	slotSure    = Slot{"identify", "sure", ""}
)

// Gauging puts the castings that jobs measured at the stations of a variant
// behind those of its file, the oldest first. The job in hand stands apart, as
// the one to be placed.
func (v *Variants) Gauging(g casting.Gauging, inHand *Job) casting.Gauging {
	g.History, g.New = slices.Clone(g.History), nil
	taken := map[string]bool{}
	for _, m := range g.History {
		taken[m.Casting] = true
	}
	for i := range v.all {
		one := &v.all[i]
		if one.Job == inHand.ID || !one.Sure || v.NameOf(one.Variant) != g.Variant {
			continue
		}
		if m, ok := one.measured(&g); ok && !taken[m.Casting] {
			taken[m.Casting] = true
			later := slices.IndexFunc(g.History, func(h casting.Measured) bool { return h.Date > m.Date })
			if later < 0 {
				later = len(g.History)
			}
			g.History = slices.Insert(g.History, later, m)
		}
	}
	here := inHand.Sighting()
	if m, ok := here.measured(&g); ok {
		for taken[m.Casting] {
			m.Casting = fmt.Sprintf("%s, job %s", m.Casting, inHand.NumberText())
		}
		g.New = append(g.New, m)
	}
	return g
}

// measured is what was read at stations that the variant has.
func (s *Sighting) measured(g *casting.Gauging) (casting.Measured, bool) {
	m := casting.Measured{Casting: s.Name, Date: s.Day}
	for _, st := range g.Stations {
		if x, read := s.Readings[strconv.Itoa(st.Number)]; read {
			m.Readings = append(m.Readings, casting.StationReading{Station: st.Number, Value: x, Times: 1})
		}
	}
	return m, len(m.Readings) > 0
}
