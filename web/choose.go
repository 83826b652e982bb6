package web

import (
	"strconv"
	"strings"

	"github.com/a-h/templ"

	"axlewright/shop"
)

// A pick is a card that may be put into a box.
type pick struct {
	ID    shop.ID
	Title string
	About string
	Mark  string // something to look at, such as a date of expiry
}

// A chooser is the page on which a card or a lot is put into a box.
type chooser struct {
	Job   *shop.Job
	Slot  shop.Slot
	Field shop.Field
	Last  int64
	Stand *shop.Entry
	Text  string
	Picks []pick
	Kind  shop.CardKind
	New   bool // a card may be made here at once, from a name alone
}

// choosePage offers the cards that fit a box.
func choosePage(v *visit) error {
	j, err := v.job()
	if err != nil {
		return err
	}
	q := v.r.URL.Query()
	c := chooser{Job: j, Slot: slotOf(q), Text: strings.TrimSpace(q.Get("q"))}
	field, ok := shop.FieldOf(c.Slot.Step, c.Slot.Item)
	if !ok || field.Kind != shop.FieldLink && field.Kind != shop.FieldPart {
		return shop.Fault(shop.NotFound, "There is no such box.")
	}
	c.Field, c.Last, c.Stand = field, lastSeq(j, c.Slot), j.Standing(c.Slot)
	c.Kind = field.Card
	if field.Kind == shop.FieldPart {
		c.Kind = shop.KindLot
	}
	c.New = c.Kind == shop.KindCustomer || c.Kind == shop.KindVehicle || c.Kind == shop.KindDonor
	if c.Picks, err = v.picks(j, c); err != nil {
		return err
	}
	f := v.frame(field.Title).ofJob(j)
	f.Live = false // a list that moves under the thumb is worse than an old one
	return v.show(chooseSheet(f, c))
}

func (v *visit) picks(j *shop.Job, c chooser) ([]pick, error) {
	query := shop.CardQuery{Kind: c.Kind, Terms: shop.FoldWords(c.Text), Limit: 60}
	var all []pick
	switch c.Kind {
	case shop.KindLot:
		query.Group = string(c.Field.Lot)
		views, _, err := v.shop.Lots(v.ctx(), query)
		for _, l := range views {
			p := pick{ID: l.Lot.ID, Title: l.Lot.Title, About: strings.TrimSpace(l.Lot.Batch + " · " + amount(l.Free) + " " + l.Lot.Unit + " free")}
			if l.Lot.Place != "" {
				p.About += " · " + l.Lot.Place
			}
			if l.Expired {
				p.Mark = "to be used by " + l.Lot.Expires
			}
			all = append(all, p)
		}
		return all, err
	case shop.KindDonor:
		views, _, err := v.shop.Donors(v.ctx(), query)
		for _, d := range views {
			p := pick{ID: d.Donor.ID, Title: d.Donor.Number, About: "class " + d.Donor.Class + " · " + string(d.Donor.State)}
			if d.Donor.Teeth != "" {
				p.About += " · " + d.Donor.Teeth
			}
			if d.Job != nil && d.Job.Job != j.ID {
				p.Mark = "in " + plateOf(d.Job.Stamped, d.Job.NumberText())
			}
			all = append(all, p)
		}
		return all, err
	case shop.KindVehicle:
		// Vehicles of the customer who is named come first, and alone while nothing is asked for.
		if owner := j.Value("enquiry", "customer").Link; owner != nil && c.Text == "" {
			query.Group = string(owner.ID)
		}
	}
	cards, err := v.cards(query)
	for _, card := range cards {
		all = append(all, pick{ID: card.ID, Title: card.Label, About: card.State})
	}
	return all, err
}

// cards lists cards of any kind.
func (v *visit) cards(q shop.CardQuery) ([]shop.Card, error) {
	var cards []shop.Card
	err := v.shop.Store().View(v.ctx(), func(tx shop.Tx) error {
		found, err := tx.FindCards(q)
		cards = found.Cards
		return err
	})
	return cards, err
}

// newCardFor makes a card from a name and puts it into the box.
func newCardFor(v *visit) error {
	form, j, err := v.formOfJob()
	if err != nil {
		return err
	}
	slot := slotOf(form)
	field, ok := shop.FieldOf(slot.Step, slot.Item)
	if !ok || field.Kind != shop.FieldLink {
		return shop.Fault(shop.NotFound, "There is no such box.")
	}
	id, name := shop.ID(form.Get("id")), strings.TrimSpace(form.Get("name"))
	switch field.Card {
	case shop.KindCustomer:
		_, err = shop.Save(v.ctx(), v.shop, v.who, shop.Customer{Meta: shop.Meta{ID: id}, Name: name, Phone: form.Get("phone")})
	case shop.KindVehicle:
		x := shop.Vehicle{Meta: shop.Meta{ID: id}, Title: name}
		if owner := j.Value("enquiry", "customer").Link; owner != nil {
			x.Customer = owner.ID
		}
		_, err = shop.Save(v.ctx(), v.shop, v.who, x)
	case shop.KindDonor:
		x := shop.Donor{Meta: shop.Meta{ID: id}, Number: name, Class: form.Get("class"), State: shop.DonorDirty, Core: slot.Item == "core"}
		_, err = shop.Save(v.ctx(), v.shop, v.who, x)
	default:
		err = shop.Fault(shop.Invalid, "This card is made on its own page.")
	}
	if err != nil {
		return err
	}
	corrects, _ := strconv.ParseInt(form.Get("corrects"), 10, 64)
	if _, err := v.shop.Record(v.ctx(), v.who, j.ID, shop.Set{Slot: slot, Value: shop.LinkTo(field.Card, id), Corrects: corrects}); err != nil {
		return err
	}
	return v.see(backTo(form, j.ID, slot))
}

func choosePath(job shop.ID, s shop.Slot) templ.SafeURL {
	return templ.SafeURL("/job/" + string(job) + "/choose?step=" + queryEscape(string(s.Step)) + "&item=" + queryEscape(s.Item) + "&place=" + queryEscape(s.Place))
}
