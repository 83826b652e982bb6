package shop

import (
	"bytes"
	"context"
	"encoding/json"
	"time"
)

// Get reads a card: shop.Get[shop.Donor](ctx, s, id).
func Get[T any, P Sheet[T]](ctx context.Context, s *Shop, id ID) (T, error) {
	var sheet T
	err := s.store.View(ctx, func(tx Tx) (err error) {
		sheet, err = getSheet[T, P](tx, id)
		return err
	})
	return sheet, err
}

// List reads cards: shop.List[shop.Lot](ctx, s, shop.CardQuery{Group: string(shop.LotShims)}).
// The query's Kind is filled in.
func List[T any, P Sheet[T]](ctx context.Context, s *Shop, q CardQuery) ([]T, *CardCursor, error) {
	var sheets []T
	var next *CardCursor
	err := s.store.View(ctx, func(tx Tx) error {
		q.Kind = P(new(T)).Kind()
		page, err := tx.FindCards(q)
		if err != nil {
			return err
		}
		next = page.Next
		sheets, err = readSheets[T, P](page.Cards)
		return err
	})
	return sheets, next, err
}

// History reads all revisions of a card, oldest first, each with who and when.
func History[T any, P Sheet[T]](ctx context.Context, s *Shop, id ID) ([]T, error) {
	var sheets []T
	err := s.store.View(ctx, func(tx Tx) error {
		cards, err := tx.CardHistory(P(new(T)).Kind(), id)
		if err != nil {
			return err
		}
		sheets, err = readSheets[T, P](cards)
		return err
	})
	return sheets, err
}

// Save keeps a card as it is now. A new one has an empty ID, or one that the
// caller made (so that sending it twice makes one card), and Revision 0. It is
// a Conflict with both cards if somebody has saved another revision since this
// one was read; saving what is kept already changes nothing.
func Save[T any, P Sheet[T]](ctx context.Context, s *Shop, by Actor, sheet T) (T, error) {
	if err := by.Must(actOf(P(&sheet).Kind())); err != nil {
		return sheet, err
	}
	err := s.store.Update(ctx, func(tx Tx) error {
		p := P(&sheet)
		m := p.meta()
		if m.ID == "" {
			m.ID = NewID()
		}
		if err := allowed[T, P](tx, p); err != nil {
			return err
		}
		if err := saveSheet[T, P](tx, s.now(), by.By(), p); err != nil {
			return err
		}
		saved, err := getSheet[T, P](tx, m.ID)
		if err == nil {
			sheet = saved
		}
		return err
	})
	return sheet, err
}

// actOf is who may change which cards.
func actOf(kind CardKind) Act {
	switch kind {
	case KindCustomer, KindVehicle:
		return ActSell
	case KindPerson, KindPrices, KindHouse:
		return ActSettings
	}
	return ActStock
}

// allowed holds the rules that need to know what the card was before, or
// what else there is.
func allowed[T any, P Sheet[T]](tx Tx, sheet P) error {
	switch next := any(sheet).(type) {
	case *Kit:
		before, err := getSheet[Kit](tx, next.ID)
		if err != nil {
			return ignore(err, NotFound)
		}
		return next.keepsRevisions(before)
	case *Person:
		return keepAnOwner(tx, next)
	case *House:
		if next.ID != HouseID {
			return Fault(Invalid, "There is one shop.").At("id")
		}
	case *Prices:
		if next.ID != PricesID {
			return Fault(Invalid, "There is one list of prices.").At("id")
		}
	}
	return nil
}

// keepsRevisions refuses to change or drop a kit's revision: plates of it may
// be anywhere. It may be closed, its drawing may be added where there was none,
// and how it is welded may be bettered.
func (k *Kit) keepsRevisions(before Kit) error {
	for _, old := range before.Revisions {
		now, ok := k.Revision(old.Name)
		was, is := old, now
		was.Closed, is.Closed = false, false
		was.Weld, is.Weld = "", ""
		if was.Drawing == "" {
			is.Drawing = ""
		}
		if a, _ := json.Marshal(was); ok {
			if b, _ := json.Marshal(is); bytes.Equal(a, b) {
				continue
			}
		}
		return Fault(Invalid, "Revision %s of kit %s is not changed or dropped: plates of it may be in stock. Make a new one.", old.Name, before.Name).At("revisions")
	}
	return nil
}

func getSheet[T any, P Sheet[T]](tx Tx, id ID) (T, error) {
	var none T
	if !id.Valid() {
		return none, Fault(NotFound, "There is no such %s.", P(&none).Kind())
	}
	c, err := tx.Card(P(&none).Kind(), id)
	if err != nil {
		return none, err
	}
	return readSheet[T, P](c)
}

func readSheet[T any, P Sheet[T]](c Card) (T, error) {
	var sheet T
	if err := json.Unmarshal(c.Body, &sheet); err != nil {
		return sheet, Fault(Damaged, "The card of %s %s cannot be read.", c.Kind, c.Label).Because(err)
	}
	*P(&sheet).meta() = Meta{ID: c.ID, Revision: c.Revision, Retired: c.Retired, At: c.At, Who: c.Who}
	return sheet, nil
}

func readSheets[T any, P Sheet[T]](cards []Card) ([]T, error) {
	var sheets []T
	for _, c := range cards {
		sheet, err := readSheet[T, P](c)
		if err != nil {
			return nil, err
		}
		sheets = append(sheets, sheet)
	}
	return sheets, nil
}

// saveSheet checks a sheet and puts it as the next revision of its card.
func saveSheet[T any, P Sheet[T]](tx Tx, now time.Time, by By, sheet P) error {
	m := sheet.meta()
	if !m.ID.Valid() {
		return Fault(Invalid, "This cannot be the ID of a card.").At("id")
	}
	if err := sheet.Check(); err != nil {
		return err
	}
	body, err := json.Marshal(sheet)
	if err != nil {
		return Fault(Internal, "The card cannot be written.").Because(err)
	}
	if len(body) > maxCard {
		return Fault(TooLarge, "This is too much for one card.")
	}
	d := sheet.describe()
	card := Card{Kind: sheet.Kind(), ID: m.ID, Revision: m.Revision + 1, Body: body, Label: d.label, Sort: FoldLabel(d.label),
		Group: d.group, State: d.state, Retired: m.Retired, At: instant(now), Who: by}
	standing, err := tx.Card(card.Kind, card.ID)
	switch {
	case err == nil && bytes.Equal(standing.Body, body) && standing.Retired == card.Retired:
		return nil // saved already, perhaps by the same tablet
	case err == nil && standing.Revision != m.Revision:
		return cardConflict(standing, card)
	case err != nil && CodeOf(err) != NotFound:
		return err
	}
	return tx.PutCard(card, d.terms())
}

// maxCard is the largest card, in bytes.
const maxCard = 1 << 20

func cardConflict(stands, refused Card) *Error {
	return &Error{Code: Conflict, Says: "Somebody else changed this card in the meantime: look at both.", Field: "revision",
		Clash: &Clash{StandsCard: &stands, RefusedCard: &refused}}
}

// ignore drops an error of that code.
func ignore(err error, code Code) error {
	if CodeOf(err) == code {
		return nil
	}
	return err
}
