package shop

import (
	"context"
	"encoding/json"
	"math"
	"time"
)

// A QuoteRequest is what a quote is made for.
type QuoteRequest struct {
	Works  []Work
	Donor  Money       // what the casting costs us; 0 for the customer's own
	Extras []QuoteLine // skid pan, breather kit, ratio change: cost to us
	Price  Money       // a price already spoken of; 0 is to work it out
}

// A Quote is a price and what is behind it. It is kept as it is given.
type Quote struct {
	Works   []Work      `json:"works"`
	Lines   []QuoteLine `json:"lines"`
	Minutes float64     `json:"minutes"` // at the bench
	Labour  Money       `json:"labour"`  // all time, hidden time too
	Parts   Money       `json:"parts"`   // material, donor, extras
	Scrap   Money       `json:"scrap"`   // what a good one must carry for those lost
	Cost    Money       `json:"cost"`
	Price   Money       `json:"price"`
	Margin  Money       `json:"margin"`
	Share   float64     `json:"share"` // margin as a share of the price; negative where it costs more
	Deposit Money       `json:"deposit"`
	Prices  int64       `json:"prices"` // revision of the price card it was worked out with
	Day     string      `json:"day"`
}

// A QuoteLine is one part of the cost.
type QuoteLine struct {
	Title   string  `json:"title"`
	Minutes float64 `json:"minutes,omitempty"`
	Cost    Money   `json:"cost"`
	Hidden  bool    `json:"hidden,omitempty"`
}

// Quote works out a price. With a share s of the castings lost, each good one
// carries s/(1−s) of a lost one: its donor and the work that was in it. Only
// welded builds lose castings so. The price leaves the wanted margin, rounded up.
func (p Prices) Quote(r QuoteRequest) (Quote, error) {
	if err := p.Check(); err != nil {
		return Quote{}, err
	}
	for _, w := range r.Works {
		if !oneOf(w, Works) {
			return Quote{}, Fault(Invalid, "There is no work %q.", w).At("works")
		}
	}
	if r.Donor < 0 || r.Price < 0 {
		return Quote{}, Fault(Invalid, "A sum is not negative.").At("price")
	}
	q := Quote{Works: r.Works, Deposit: p.Deposit, Prices: p.Revision}
	perMinute := p.Rate.Units() / 60
	for _, m := range p.Minutes {
		if !meets(m.For, r.Works) {
			continue
		}
		cost := MoneyOf(m.Minutes * perMinute)
		q.Lines = append(q.Lines, QuoteLine{Title: m.Title, Minutes: m.Minutes, Cost: cost, Hidden: m.Hidden})
		q.Labour += cost
		if !m.Hidden {
			q.Minutes += m.Minutes
		}
	}
	for _, m := range p.Materials {
		if meets(m.For, r.Works) {
			q.Lines = append(q.Lines, QuoteLine{Title: m.Title, Cost: m.Cost})
			q.Parts += m.Cost
		}
	}
	if r.Donor > 0 {
		q.Lines = append(q.Lines, QuoteLine{Title: "casting", Cost: r.Donor})
		q.Parts += r.Donor
	}
	for _, x := range r.Extras {
		if err := firstFault(required("extras", x.Title), lengthOf("extras", x.Title, 200)); err != nil {
			return Quote{}, err
		}
		if x.Cost < 0 || !(x.Minutes >= 0) || x.Minutes > 1e6 {
			return Quote{}, Fault(Invalid, "An extra does not cost less than nothing.").At("extras")
		}
		x.Cost += MoneyOf(x.Minutes * perMinute)
		q.Lines = append(q.Lines, x)
		q.Minutes += x.Minutes
		q.Parts += x.Cost
	}
	if oneOf(WorkPlates, r.Works) {
		lost := r.Donor.Units() + p.ScrapAfter*perMinute
		q.Scrap = MoneyOf(p.Scrap / (1 - p.Scrap) * lost)
		q.Lines = append(q.Lines, QuoteLine{Title: "castings lost", Cost: q.Scrap, Hidden: true})
	}
	q.Cost = q.Labour + q.Parts + q.Scrap
	q.Price = r.Price
	if q.Price == 0 {
		q.Price = roundUp(MoneyOf(q.Cost.Units()/(1-p.Margin)), p.RoundTo)
	}
	q.Margin = q.Price - q.Cost
	if q.Price > 0 {
		q.Share = math.Round(float64(q.Margin)/float64(q.Price)*1e4) / 1e4
	}
	return q, nil
}

func roundUp(m, to Money) Money {
	if to <= 0 || m%to == 0 {
		return m
	}
	return m + to - m%to
}

// Prices reads the price card, or the starting one while there is none.
func (s *Shop) Prices(ctx context.Context, by Actor) (Prices, error) {
	if err := by.Must(ActPrices); err != nil {
		return Prices{}, err
	}
	p, err := Get[Prices](ctx, s, PricesID)
	if CodeOf(err) == NotFound {
		return StartPrices(), nil
	}
	return p, err
}

// KeepQuote keeps a quote with its job, as it was given.
func (s *Shop) KeepQuote(ctx context.Context, by Actor, job ID, q Quote, ticket string) (*Job, error) {
	if q.Day == "" {
		q.Day = s.now().Format(time.DateOnly)
	}
	content, err := json.Marshal(q)
	if err != nil {
		return nil, Fault(Internal, "The quote cannot be written.").Because(err)
	}
	return s.Attach(ctx, by, job, Attachment{Kind: EntryQuote, Step: "deal", Name: "quote.json", Media: "application/json",
		Content: content, Words: wordsOf(q.Works), Text: q.Price.String(), Ticket: ticket})
}

// Quotes reads the quotes kept with a job, oldest first, as they were given.
func (s *Shop) Quotes(ctx context.Context, by Actor, j *Job) ([]Quote, error) {
	if err := by.Must(ActPrices); err != nil {
		return nil, err
	}
	var all []Quote
	for _, e := range j.Kept(EntryQuote) {
		if e.Value.File == nil {
			continue
		}
		content, err := s.File(ctx, *e.Value.File)
		if err != nil {
			return nil, err
		}
		var q Quote
		if err := json.Unmarshal(content, &q); err != nil {
			return nil, Fault(Damaged, "A quote cannot be read.").Because(err)
		}
		all = append(all, q)
	}
	return all, nil
}
