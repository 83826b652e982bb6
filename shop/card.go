package shop

import (
	"strings"
	"time"
)

// CardKind is a kind of card.
type CardKind string

// The kinds of card.
const (
	KindCustomer CardKind = "customer"
	KindVehicle  CardKind = "vehicle"
	KindCasting  CardKind = "casting" // a variant
	KindKit      CardKind = "kit"
	KindDonor    CardKind = "donor"
	KindLot      CardKind = "lot"
	KindPerson   CardKind = "person"
	KindGauge    CardKind = "gauge" // an instrument of the shop
	KindSteel    CardKind = "steel" // sheets and remnants that plates are cut from
	KindNest     CardKind = "nest"  // which plates are cut from which sheets
	KindPrices   CardKind = "prices"
	KindHouse    CardKind = "house" // name, address, own limits
)

// CardKinds lists them.
var CardKinds = []CardKind{KindCustomer, KindVehicle, KindCasting, KindKit, KindDonor, KindLot, KindPerson,
	KindGauge, KindSteel, KindNest, KindPrices, KindHouse}

// A Card is one revision of one thing of the shop, as the store keeps it.
type Card struct {
	Kind     CardKind  `json:"kind"`
	ID       ID        `json:"id"`
	Revision int64     `json:"revision"` // 1, 2, 3 …
	Body     []byte    `json:"-"`        // JSON of the sheet: Donor, Lot …
	Label    string    `json:"label"`    // what it is called in lists and records
	Sort     string    `json:"sort"`     // folded label
	Group    string    `json:"group"`    // what it belongs to: a vehicle's customer, a lot's kind, a donor's casting
	State    string    `json:"state"`    // of a donor; else empty
	Retired  bool      `json:"retired"`  // put away: no longer offered, still found
	At       time.Time `json:"at"`
	Who      By        `json:"who"`
}

// Meta is what every sheet carries of its card. It is filled by Get and List;
// Save compares ID and Revision with what is kept.
type Meta struct {
	ID       ID        `json:"-"`
	Revision int64     `json:"-"` // 0 in a new card
	Retired  bool      `json:"-"`
	At       time.Time `json:"-"`
	Who      By        `json:"-"`
}

func (m *Meta) meta() *Meta { return m }

// A Sheet is the body of a card: *Customer, *Vehicle, *Casting, *Kit, *Donor,
// *Lot, *Person, *Gauge, *Prices, *House.
type Sheet[T any] interface {
	*T
	Kind() CardKind
	Check() error // *Error of code Invalid with the Field that is wrong
	meta() *Meta
	describe() description
}

// description is what a sheet is listed and found by.
type description struct {
	label, group, state string
	words               []string // beside the label
}

// terms are the folded words that the card is found by.
func (d description) terms() []string { return foundBy(d.label + " " + strings.Join(d.words, " ")) }
