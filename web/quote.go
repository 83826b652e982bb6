package web

import (
	"net/url"
	"slices"
	"strings"

	"axlewright/shop"
)

// A quoteShow is the page on which a quote is worked out and given.
type quoteShow struct {
	Job    *shop.Job
	Ask    shop.QuoteRequest
	Quote  shop.Quote
	Kept   []shop.Quote
	May    bool
	Ticket shop.ID
	Extra  string
	Beside []string // the newest advice, where it says something else
}

// quotePage works out a price from the shop's own minutes and costs.
func quotePage(v *visit) error {
	j, err := v.job()
	if err != nil {
		return err
	}
	prices, err := v.shop.Prices(v.ctx(), v.who)
	if err != nil {
		return err
	}
	q := quoteShow{Job: j, May: v.who.Role.May(shop.ActSell), Ticket: shop.NewID()}
	form := v.r.URL.Query()
	if q.Ask, err = quoteRequest(j, form); err != nil {
		return err
	}
	q.Extra = form.Get("extra")
	if q.Quote, err = prices.Quote(q.Ask); err != nil {
		return err
	}
	if q.Beside, err = v.besideAdvice(j, q.Quote); err != nil {
		return err
	}
	if q.Kept, err = v.shop.Quotes(v.ctx(), v.who, j); err != nil {
		return err
	}
	return v.show(quoteSheet(v.frame("Quote").ofJob(j), q))
}

// quoteRequest reads what is to be quoted; the job's own works where nothing is said.
func quoteRequest(j *shop.Job, form url.Values) (shop.QuoteRequest, error) {
	get := func(name string) string { return strings.TrimSpace(form.Get(name)) }
	r := shop.QuoteRequest{}
	if get("asked") == "" {
		r.Works = j.Works()
	}
	for _, w := range form["work"] {
		r.Works = append(r.Works, shop.Work(w))
	}
	var err error
	for name, into := range map[string]*shop.Money{"donor": &r.Donor, "price": &r.Price} {
		if text := get(name); text != "" {
			if *into, err = moneyOf(text); err != nil {
				return r, err
			}
		}
	}
	if title := get("extra"); title != "" {
		line := shop.QuoteLine{Title: title}
		if text := get("extra_cost"); text != "" {
			if line.Cost, err = moneyOf(text); err != nil {
				return r, err
			}
		}
		r.Extras = append(r.Extras, line)
	}
	return r, nil
}

// keepQuote keeps a quote with its job as it is given.
func keepQuote(v *visit) error {
	form, j, err := v.formOfJob()
	if err != nil {
		return err
	}
	prices, err := v.shop.Prices(v.ctx(), v.who)
	if err != nil {
		return err
	}
	ask, err := quoteRequest(j, form)
	if err != nil {
		return err
	}
	q, err := prices.Quote(ask)
	if err != nil {
		return err
	}
	if _, err := v.shop.KeepQuote(v.ctx(), v.who, j.ID, q, form.Get("ticket")); err != nil {
		return err
	}
	return v.see("/job/" + string(j.ID) + "/quote")
}

func (q quoteShow) asks(w shop.Work) bool { return slices.Contains(q.Ask.Works, w) }
