package web

import (
	"github.com/a-h/templ"

	"axlewright/shop"
)

// cardPath is where a card is shown.
func cardPath(kind shop.CardKind, id shop.ID) templ.SafeURL {
	if kind == shop.KindLot && id != "new" {
		return templ.SafeURL("/stock/lot/" + string(id))
	}
	return templ.SafeURL("/cards/" + string(kind) + "/" + string(id))
}

func newCardLabel(kind shop.CardKind) string {
	switch kind {
	case shop.KindDonor:
		return "Number on its metal tag"
	case shop.KindVehicle:
		return "What it is: “hill-farm pick-up”"
	}
	return "Name"
}

func shortHash(hash string) string { return hash[:min(12, len(hash))] }
