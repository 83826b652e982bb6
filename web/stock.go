package web

import (
	"slices"
	"strings"

	"axlewright/shop"
)

// stockPage lists the donors, by variant and state.
func stockPage(v *visit) error {
	q := v.r.URL.Query()
	text, state := strings.TrimSpace(q.Get("q")), q.Get("state")
	query := shop.CardQuery{Terms: shop.FoldWords(text), Limit: 200}
	if slices.Contains(shop.DonorStates, shop.DonorState(state)) {
		query.States = []string{state}
	} else {
		state = ""
		for _, s := range shop.DonorStates {
			if s != shop.DonorSold && s != shop.DonorScrap {
				query.States = append(query.States, string(s))
			}
		}
	}
	donors, _, err := v.shop.Donors(v.ctx(), query)
	if err != nil {
		return err
	}
	castings, err := v.cards(shop.CardQuery{Kind: shop.KindCasting, Limit: 1000, Retired: true})
	if err != nil {
		return err
	}
	names := map[shop.ID]string{}
	for _, c := range castings {
		names[c.ID] = c.Label
	}
	f := v.frame("Stock").at("stock")
	return v.show(stockSheet(f, donors, names, text, state))
}

// lotsPage lists lots with what is left of them.
func lotsPage(v *visit) error {
	q := v.r.URL.Query()
	text, kind := strings.TrimSpace(q.Get("q")), q.Get("kind")
	lots, _, err := v.shop.Lots(v.ctx(), shop.CardQuery{Terms: shop.FoldWords(text), Group: kind, Limit: 300})
	if err != nil {
		return err
	}
	return v.show(lotsSheet(v.frame("Lots").at("stock"), lots, text, kind))
}

// lotPage answers "which units have this lot?".
func lotPage(v *visit) error {
	id := shop.ID(v.r.PathValue("id"))
	lot, err := v.shop.Lot(v.ctx(), id)
	if err != nil {
		return err
	}
	used, more, err := v.shop.UsedIn(v.ctx(), shop.KindLot, id, 2000)
	if err != nil {
		return err
	}
	return v.show(lotSheet(v.frame(lot.Lot.Title).at("stock"), lot, used, more))
}

// slotTitle puts a place of a record, "caps/bolts/1", into words.
func slotTitle(slot string) string {
	parts := strings.SplitN(slot, "/", 3)
	if len(parts) < 2 {
		return slot
	}
	return titleOf(shop.StepKey(parts[0])) + ": " + fieldTitle(shop.Slot{Step: shop.StepKey(parts[0]), Item: parts[1]})
}
