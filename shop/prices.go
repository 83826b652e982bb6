package shop

import "fmt"

// Prices is what the shop's time and material cost: there is one card, with the
// ID PricesID. All figures are the shop's own.
type Prices struct {
	Meta      `json:"-"`
	Rate      Money          `json:"rate"` // of an hour
	Minutes   []MinutesPrice `json:"minutes"`
	Materials []MaterialCost `json:"materials"`

	Scrap      float64 `json:"scrap"`       // share of castings lost in strengthening, 0.125 is 1 in 8
	ScrapAfter float64 `json:"scrap_after"` // minutes of work in them when they are lost
	Margin     float64 `json:"margin"`      // wanted share of the price, 0.25
	RoundTo    Money   `json:"round_to"`    // prices are rounded up to a multiple of this
	Deposit    Money   `json:"deposit"`     // usually held for a core
	Note       string  `json:"note,omitempty"`
}

// A MinutesPrice is time on one kind of work.
type MinutesPrice struct {
	Title   string  `json:"title"`
	Minutes float64 `json:"minutes"`
	For     []Work  `json:"for,omitempty"`    // only with one of these works; empty is every unit
	Hidden  bool    `json:"hidden,omitempty"` // costs, but is not bench time: telephone, hunting donors
}

// A MaterialCost is material for one unit.
type MaterialCost struct {
	Title string `json:"title"`
	Cost  Money  `json:"cost"`
	For   []Work `json:"for,omitempty"`
}

// Kind is KindPrices.
func (*Prices) Kind() CardKind { return KindPrices }

// Check demands figures that can be counted with.
func (p *Prices) Check() error {
	switch {
	case p.Rate < 0:
		return Fault(Invalid, "An hour does not cost less than nothing.").At("rate")
	case !(p.Scrap >= 0 && p.Scrap <= 0.9):
		return Fault(Invalid, "The share of castings lost is from 0 to 0.9.").At("scrap")
	case !(p.ScrapAfter >= 0 && p.ScrapAfter < 1e6):
		return Fault(Invalid, "The minutes in a lost casting are a number from zero up.").At("scrap_after")
	case !(p.Margin >= 0 && p.Margin <= 0.9):
		return Fault(Invalid, "The margin is a share of the price from 0 to 0.9.").At("margin")
	case p.RoundTo < 0 || p.Deposit < 0:
		return Fault(Invalid, "A sum is not negative.").At("round_to")
	}
	for i, m := range p.Minutes {
		if !(m.Minutes >= 0 && m.Minutes < 1e6) {
			return Fault(Invalid, "Minutes are a number from zero up.").At(fmt.Sprintf("minutes/%d", i+1))
		}
		if err := lengthOf(fmt.Sprintf("minutes/%d", i+1), m.Title, 200); err != nil {
			return err
		}
	}
	for i, m := range p.Materials {
		if err := lengthOf(fmt.Sprintf("materials/%d", i+1), m.Title, 200); err != nil {
			return err
		}
		if m.Cost < 0 {
			return Fault(Invalid, "A cost is not negative.").At(fmt.Sprintf("materials/%d", i+1))
		}
	}
	return lengthOf("note", p.Note, longText)
}

func (p *Prices) describe() description { return description{label: "prices"} }

// StartPrices is what a shop begins with: the minutes are what such shops take
// (common practice, no source), the money is invented. Each shop enters its own.
func StartPrices() Prices {
	plates, peg, bearing, fixings := []Work{WorkPlates}, []Work{WorkPeg}, []Work{WorkBearing}, []Work{WorkFixings, WorkPlates}
	return Prices{
		Meta: Meta{ID: PricesID},
		Rate: MoneyOf(60), Scrap: 0.125, ScrapAfter: 180, Margin: 0.25, RoundTo: MoneyOf(5), Deposit: MoneyOf(150),
		Minutes: []MinutesPrice{
			{Title: "strip, wash, bake", Minutes: 75},
			{Title: "inspect, penetrant, identify", Minutes: 25},
			{Title: "inspect for welding", Minutes: 15, For: plates},
			{Title: "fettle plates", Minutes: 60, For: plates},
			{Title: "jig, tack, weld", Minutes: 150, For: plates},
			{Title: "caps", Minutes: 30, For: fixings},
			{Title: "drill and tap for plates", Minutes: 30, For: plates},
			{Title: "peg", Minutes: 30, For: peg},
			{Title: "check bores", Minutes: 15},
			{Title: "check and scrape after welding", Minutes: 30, For: plates},
			{Title: "check the bored nose", Minutes: 15, For: bearing},
			{Title: "bore the nose", Minutes: 120, For: bearing},
			{Title: "resin", Minutes: 25, For: plates},
			{Title: "stamp, paint", Minutes: 10},
			{Title: "paint the plates", Minutes: 15, For: plates},
			{Title: "assemble and set", Minutes: 150},
			{Title: "set after welding", Minutes: 20, For: plates},
			{Title: "set the big bearing", Minutes: 30, For: bearing},
			{Title: "papers and photographs", Minutes: 15},
			{Title: "weld log", Minutes: 10, For: plates},
			{Title: "telephone, hunting the donor", Minutes: 45, Hidden: true},
		},
		Materials: []MaterialCost{
			{Title: "bearings and seals", Cost: MoneyOf(120)},
			{Title: "bolts, washers, pins", Cost: MoneyOf(30)},
			{Title: "consumables", Cost: MoneyOf(15)},
			{Title: "carriage", Cost: MoneyOf(30)},
			{Title: "plate kit", Cost: MoneyOf(45), For: plates},
			{Title: "filler, gas, resin", Cost: MoneyOf(40), For: plates},
			{Title: "peg, pad, nut", Cost: MoneyOf(25), For: peg},
			{Title: "big head bearing", Cost: MoneyOf(90), For: bearing},
		},
	}
}
