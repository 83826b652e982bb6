package demo

import (
	"context"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"axlewright/quantity"
	"axlewright/shop"
)

// A Filled says where things are in the shop that was filled.
type Filled struct {
	Jobs   map[shop.State][]shop.ID
	Advise shop.ID // the enquiry that waits for its advice
	By     shop.Actor
}

// Fill fills an empty shop. Now is the day on which the demo is looked at;
// enquiry is the YAML that is kept with the vehicle of the newest enquiry.
func Fill(ctx context.Context, store shop.Store, now time.Time, enquiry string) (Filled, error) {
	c := &clock{at: now.AddDate(0, 0, -200)}
	sh, err := shop.Open(ctx, store, shop.Options{Now: c.now})
	if err != nil {
		return Filled{}, err
	}
	if counts, err := sh.CountJobs(ctx); err != nil || len(counts) > 0 {
		if err == nil {
			err = shop.Fault(shop.Conflict, "There are jobs in this shop already: the demo fills an empty one.")
		}
		return Filled{}, err
	}
	f := &filling{ctx: ctx, shop: sh, clock: c, today: now, enquiry: enquiry, cards: map[string]card{}, filled: Filled{Jobs: map[shop.State][]shop.ID{}}}
	if err := f.house(); err != nil {
		return f.filled, err
	}
	for i, j := range jobs {
		if err := f.job(j); err != nil {
			return f.filled, fmt.Errorf("demo job %d: %w", i+1, err)
		}
	}
	return f.filled, nil
}

// A clock goes on by itself: a reading a minute.
type clock struct{ at time.Time }

func (c *clock) now() time.Time {
	c.at = c.at.Add(time.Minute)
	return c.at
}

type filling struct {
	ctx                     context.Context
	shop                    *shop.Shop
	clock                   *clock
	today                   time.Time
	enquiry                 string
	owner, builder, adviser shop.Actor
	cards                   map[string]card // by what people call them
	filled                  Filled
}

type card struct {
	kind shop.CardKind
	id   shop.ID
}

// day is so many days after the day of the demo, or before it.
func (f *filling) day(days int) string { return f.today.AddDate(0, 0, days).Format(time.DateOnly) }

// job opens one job and takes it as far as it has come.
func (f *filling) job(j job) error {
	f.clock.at = f.today.AddDate(0, 0, -j.days)
	opened, err := f.shop.OpenJob(f.ctx, f.adviser, "")
	if err != nil {
		return err
	}
	if j.works != "" {
		j.told += "\nenquiry/work  " + j.works
	}
	if err := f.write(opened.ID, j.told); err != nil {
		return err
	}
	if j.advise {
		f.filled.Advise, f.filled.By = opened.ID, f.adviser
	}
	if j.quoted {
		if err := f.quote(opened.ID); err != nil {
			return err
		}
	}
	for _, block := range j.record {
		f.clock.at = f.clock.at.Add(3 * 24 * time.Hour)
		if f.clock.at.After(f.today) { // nothing is written tomorrow
			f.clock.at = f.today.Add(-time.Hour)
		}
		if err := f.write(opened.ID, block); err != nil {
			return err
		}
	}
	if j.certified {
		if _, err := f.shop.Certify(f.ctx, f.builder, opened.ID, leftOpen); err != nil {
			return err
		}
	}
	if j.after != "" {
		f.clock.at = f.today.AddDate(0, 0, -4)
	}
	if err := f.write(opened.ID, j.after); err != nil {
		return err
	}
	if j.state != shop.StateEnquiry {
		if j.state == shop.StateOut && j.why == "" {
			j.why = leftOpen
		}
		if _, err := f.shop.SetState(f.ctx, f.adviser, opened.ID, j.state, 0, j.why); err != nil {
			return err
		}
	}
	f.filled.Jobs[j.state] = append(f.filled.Jobs[j.state], opened.ID)
	return nil
}

func (f *filling) quote(id shop.ID) error {
	prices, err := f.shop.Prices(f.ctx, f.owner)
	if err != nil {
		return err
	}
	j, err := f.shop.Job(f.ctx, id)
	if err != nil {
		return err
	}
	q, err := prices.Quote(shop.QuoteRequest{Works: j.Works(), Donor: shop.MoneyOf(90)})
	if err != nil {
		return err
	}
	_, err = f.shop.KeepQuote(f.ctx, f.adviser, id, q, "")
	return err
}

// write fills boxes, one a line: the place, two spaces or more, what is typed.
// "note" in place of a box is a note beside the step. What one person fills in a
// row is written together.
func (f *filling) write(id shop.ID, block string) error {
	var sets []shop.Set
	var by shop.Actor
	flush := func() error {
		_, err := f.shop.Record(f.ctx, by, id, sets...)
		sets = nil
		return err
	}
	for line := range strings.Lines(block) {
		line = strings.TrimSpace(line)
		if line == "" {
			continue
		}
		at, typed, _ := strings.Cut(line, "  ")
		parts := append(strings.SplitN(at, "/", 3), "", "")
		slot, typed := shop.Slot{Step: shop.StepKey(parts[0]), Item: parts[1], Place: parts[2]}, strings.TrimSpace(typed)
		again := slices.ContainsFunc(sets, func(s shop.Set) bool { return s.Slot == slot })
		if who := f.writes(slot.Step); who != by || again || slot.Item == shop.ItemNote {
			if err := flush(); err != nil {
				return err
			}
			by = who
		}
		if slot.Item == shop.ItemNote {
			if _, err := f.shop.Note(f.ctx, by, id, slot.Step, typed, ""); err != nil {
				return err
			}
			continue
		}
		set, err := f.set(id, slot, typed)
		if err != nil {
			return fmt.Errorf("%s: %w", line, err)
		}
		sets = append(sets, set)
	}
	return flush()
}

// writes is who fills the boxes of a step: the adviser what is told and agreed,
// the builder the rest.
func (f *filling) writes(step shop.StepKey) shop.Actor {
	if step == "enquiry" || !f.builder.Role.MayRecord(step) {
		return f.adviser
	}
	return f.builder
}

func (f *filling) set(id shop.ID, slot shop.Slot, typed string) (shop.Set, error) {
	set := shop.Set{Slot: slot}
	field, ok := shop.FieldOf(slot.Step, slot.Item)
	if !ok {
		return set, fmt.Errorf("there is no such box")
	}
	var err error
	if set.Value, err = f.value(field, typed); err != nil {
		return set, err
	}
	j, err := f.shop.Job(f.ctx, id)
	if err != nil {
		return set, err
	}
	if last := j.Last(slot); last != nil {
		set.Corrects, set.Why = last.Seq, "read again"
	}
	if field.Kind == shop.FieldFigure && strings.HasSuffix(typed, " mm") {
		set.Instrument = "dial gauge 3"
	}
	return set, nil
}

// value reads what is typed in a box of that kind.
func (f *filling) value(field shop.Field, typed string) (shop.Value, error) {
	switch field.Kind {
	case shop.FieldFigure:
		q, err := quantity.Parse(typed, field.Dim)
		return shop.Figure(typed, q.SI, field.Dim), err
	case shop.FieldChoice, shop.FieldChoices:
		return shop.Words(strings.Split(typed, " | ")...), nil
	case shop.FieldDay:
		if typed == "now" {
			return shop.Day(f.clock.at.Format(time.DateOnly)), nil
		}
		days, err := strconv.Atoi(typed)
		return shop.Day(f.day(days)), err
	case shop.FieldSum:
		sum, err := strconv.ParseFloat(typed, 64)
		return shop.Sum(shop.MoneyOf(sum)), err
	case shop.FieldLink:
		c, err := f.card(field.Card, typed)
		return shop.LinkTo(field.Card, c), err
	case shop.FieldPart:
		aside, wanted := strings.CutPrefix(typed, "set aside ")
		amount, name, _ := strings.Cut(aside, " ")
		n, err := strconv.ParseFloat(amount, 64)
		if err != nil {
			return shop.Value{}, err
		}
		lot, err := f.card(shop.KindLot, name)
		if wanted {
			return shop.SetAside(lot, n), err
		}
		return shop.Used(lot, n), err
	}
	return shop.Text(typed), nil
}

func (f *filling) card(kind shop.CardKind, name string) (shop.ID, error) {
	c, ok := f.cards[name]
	if !ok || c.kind != kind {
		return "", fmt.Errorf("the demo has no %s %q", kind, name)
	}
	return c.id, nil
}

// leftOpen is why the invented shop signs and hands over with boxes left empty.
const leftOpen = "what is left open was not asked for"
