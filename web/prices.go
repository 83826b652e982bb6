package web

import (
	"slices"
	"strconv"
	"strings"

	"axlewright/shop"
)

// pricesPage shows the shop's own minutes and costs.
func pricesPage(v *visit) error {
	p, err := v.shop.Prices(v.ctx(), v.who)
	if err != nil {
		return err
	}
	return v.show(pricesSheet(v.frame("Prices").at("settings"), p, v.who.Role.May(shop.ActSettings)))
}

// savePrices keeps them. A line whose title is emptied is dropped.
func savePrices(v *visit) error {
	form, err := v.form()
	if err != nil {
		return err
	}
	p := shop.Prices{Meta: shop.Meta{ID: shop.PricesID}, Note: form.Get("note")}
	p.Revision, _ = strconv.ParseInt(form.Get("revision"), 10, 64)
	money := func(name string, into *shop.Money) {
		if text := strings.TrimSpace(form.Get(name)); text != "" && err == nil {
			*into, err = moneyOf(text)
		}
	}
	number := func(text string) float64 {
		if err != nil || strings.TrimSpace(text) == "" {
			return 0
		}
		var x float64
		x, err = numberOf(text)
		return x
	}
	money("rate", &p.Rate)
	money("round_to", &p.RoundTo)
	money("deposit", &p.Deposit)
	p.Scrap, p.Margin = number(form.Get("scrap"))/100, number(form.Get("margin"))/100
	p.ScrapAfter = number(form.Get("scrap_after"))
	for i, title := range form["minutes_title"] {
		if title = strings.TrimSpace(title); title == "" || i >= len(form["minutes"]) {
			continue
		}
		line := shop.MinutesPrice{Title: title, Minutes: number(form["minutes"][i]), Hidden: form.Get("minutes_hidden_"+strconv.Itoa(i)) != ""}
		line.For = worksOf(form["minutes_for_"+strconv.Itoa(i)])
		p.Minutes = append(p.Minutes, line)
	}
	for i, title := range form["material_title"] {
		if title = strings.TrimSpace(title); title == "" || i >= len(form["material"]) {
			continue
		}
		line := shop.MaterialCost{Title: title, For: worksOf(form["material_for_"+strconv.Itoa(i)])}
		if err == nil {
			line.Cost, err = moneyOf(form["material"][i])
		}
		p.Materials = append(p.Materials, line)
	}
	if err != nil {
		return err
	}
	if _, err := shop.Save(v.ctx(), v.shop, v.who, p); err != nil {
		return err
	}
	return v.see("/settings/prices")
}

func worksOf(words []string) []shop.Work {
	var all []shop.Work
	for _, w := range shop.Works {
		if slices.Contains(words, string(w)) {
			all = append(all, w)
		}
	}
	return all
}
