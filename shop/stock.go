package shop

import (
	"cmp"
	"context"
	"slices"
	"strings"
	"time"
)

// A LotView is a lot and what is left of it.
type LotView struct {
	Lot      Lot
	Used     float64
	Reserved float64
	Free     float64 // negative: more was used than came, so it was counted wrong
	Expired  bool
	Reorder  bool // no more free than the shop wants to have
}

// Lots lists lots with what is left of them; Group of the query is the kind of lot.
func (s *Shop) Lots(ctx context.Context, q CardQuery) ([]LotView, *CardCursor, error) {
	var views []LotView
	var next *CardCursor
	err := s.store.View(ctx, func(tx Tx) error {
		q.Kind, views = KindLot, nil
		page, err := tx.FindCards(q)
		if err != nil {
			return err
		}
		next = page.Next
		views, err = s.lotViews(tx, page.Cards)
		return err
	})
	return views, next, err
}

// Lot reads one lot with what is left of it.
func (s *Shop) Lot(ctx context.Context, id ID) (LotView, error) {
	var v LotView
	err := s.store.View(ctx, func(tx Tx) error {
		card, err := tx.Card(KindLot, id)
		if err != nil {
			return err
		}
		views, err := s.lotViews(tx, []Card{card})
		if err == nil {
			v = views[0]
		}
		return err
	})
	return v, err
}

func (s *Shop) lotViews(tx Tx, cards []Card) ([]LotView, error) {
	ids := make([]ID, len(cards))
	for i, c := range cards {
		ids[i] = c.ID
	}
	taken, err := tx.Taken(ids)
	if err != nil {
		return nil, err
	}
	var views []LotView
	for _, c := range cards {
		lot, err := readSheet[Lot](c)
		if err != nil {
			return nil, err
		}
		views = append(views, s.lotView(lot, taken[c.ID]))
	}
	return views, nil
}

func (s *Shop) lotView(lot Lot, t Taken) LotView {
	v := LotView{Lot: lot, Used: t.Used, Reserved: t.Reserved, Free: lot.Quantity - t.Used - t.Reserved}
	v.Expired = lot.Expires != "" && s.now().UTC().Format(time.DateOnly) > lot.Expires
	v.Reorder = lot.Reorder > 0 && v.Free <= lot.Reorder
	return v
}

// How many uses of a card are looked at.
const (
	usesOfDonor = 100 // one is right
	everyUse    = 1_000_000
)

// A UsedIn is a job that a card went into.
type UsedIn struct {
	Use  Use
	Line Line
}

// UsedIn answers "which units have this bolt lot?": every job that names the
// card, with the quantity and the box where it is named, oldest first. Where
// there are more than the limit it returns the newest, and says so. The way back,
// from a unit to its lots, is Job.Parts.
func (s *Shop) UsedIn(ctx context.Context, kind CardKind, card ID, limit int) (all []UsedIn, more bool, err error) {
	err = s.store.View(ctx, func(tx Tx) error {
		all, more = nil, false
		if _, err := tx.Card(kind, card); err != nil {
			return err
		}
		uses, err := tx.Uses(kind, card, limit+1)
		if err != nil {
			return err
		}
		if more = len(uses) > limit; more {
			uses = uses[1:]
		}
		for _, u := range uses {
			line, err := tx.Line(u.Job)
			if err != nil {
				return err
			}
			all = append(all, UsedIn{u, line})
		}
		return nil
	})
	return all, more, err
}

// A Part is a lot that went into a job, or is set aside for it.
type Part struct {
	Entry    *Entry
	Lot      Link
	Quantity float64
}

// Parts lists the lots of a job in the order in which they were written.
func (j *Job) Parts() []Part {
	var all []Part
	for i := range j.entries {
		e := &j.entries[i]
		if e.Value.Quantity != nil && e.Value.Link != nil && j.Standing(e.Slot()) == e {
			all = append(all, Part{e, *e.Value.Link, *e.Value.Quantity})
		}
	}
	return all
}

// A Shim is a thickness in stock.
type Shim struct {
	Lot       ID
	Title     string
	Thickness float64 // m
	Free      float64 // pieces
}

// Shims lists the shims that are free, thinnest first, for choosing a pack.
// With words, only lots found by them (the axle they belong to).
func (s *Shop) Shims(ctx context.Context, words string) ([]Shim, error) {
	views, _, err := s.Lots(ctx, CardQuery{Group: string(LotShims), Terms: FoldWords(words), Limit: 5000})
	if err != nil {
		return nil, err
	}
	var all []Shim
	for _, v := range views {
		if v.Free > 0 && v.Lot.Thickness != nil {
			all = append(all, Shim{v.Lot.ID, v.Lot.Title, *v.Lot.Thickness, v.Free})
		}
	}
	slices.SortFunc(all, func(a, b Shim) int {
		return cmp.Or(cmp.Compare(a.Thickness, b.Thickness), strings.Compare(string(a.Lot), string(b.Lot)))
	})
	return all, nil
}

// donorSlot is where a job names the donor that it is built from.
const donorSlot = "donor/donor"

// A DonorView is a donor and the job that it is kept for or went into.
type DonorView struct {
	Donor Donor
	Job   *Line
}

// Donors lists donors; Group of the query is a casting, States are DonorStates.
func (s *Shop) Donors(ctx context.Context, q CardQuery) ([]DonorView, *CardCursor, error) {
	var views []DonorView
	var next *CardCursor
	err := s.store.View(ctx, func(tx Tx) error {
		q.Kind, views = KindDonor, nil
		page, err := tx.FindCards(q)
		if err != nil {
			return err
		}
		next = page.Next
		for _, c := range page.Cards {
			d, err := readSheet[Donor](c)
			if err != nil {
				return err
			}
			v := DonorView{Donor: d}
			uses, err := tx.Uses(KindDonor, d.ID, usesOfDonor)
			if err != nil {
				return err
			}
			for _, u := range uses {
				if u.Slot != donorSlot {
					continue
				}
				line, err := tx.Line(u.Job)
				if err != nil {
					return err
				}
				v.Job = &line
			}
			views = append(views, v)
		}
		return nil
	})
	return views, next, err
}
