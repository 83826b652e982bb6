package web

import (
	"maps"
	"net/url"
	"slices"

	"axlewright/quantity"
	"axlewright/shop"
)

// A cardShow is a card as its page shows it.
type cardShow struct {
	Kind   cardKind
	Text   sheetText
	New    bool
	Gauged bool // of a variant: there is a file with its stations
	May    bool
	Money  bool // this person may see prices
	Used   []shop.UsedIn
	More   bool // it is used in more jobs than those
	Offers map[shop.CardKind][]shop.Card

	Sent  url.Values        // what was typed, where it was not saved
	Wrong map[string]string // by the name of the field, "" for the card as a whole
}

// wrongs are the sentences to show above the card, with the titles of their fields.
func (c cardShow) wrongs() []string {
	var all []string
	left := maps.Clone(c.Wrong)
	for _, f := range c.Kind.Fields {
		if w, ok := left[f.Name]; ok {
			all = append(all, f.Title+": "+w)
			delete(left, f.Name)
		}
	}
	return append(all, slices.Sorted(maps.Values(left))...)
}

// value is what stands in a field, as it is typed.
func (c cardShow) value(f cardField) string {
	if c.Sent != nil {
		return c.Sent.Get(f.Name)
	}
	switch x := c.Text.fields[f.Name].(type) {
	case string:
		return x
	case bool:
		if x {
			return "yes"
		}
	case float64:
		switch f.As {
		case "money":
			return shop.Money(x).String()
		case "length":
			return quantity.Exact(x, quantity.Length)
		}
		return amount(x)
	}
	return ""
}

// fields leaves out what this person may not see.
func (c cardShow) fields() []cardField {
	var all []cardField
	for _, f := range c.Kind.Fields {
		if f.As != "money" || c.Money {
			all = append(all, f)
		}
	}
	return all
}

// A listed is one entry of a list within a card: a station, a revision.
type listed struct{ Name, Says string }

// list reads a list of small things within a card.
func (c cardShow) list(name, key string, also ...string) []listed {
	var all []listed
	entries, _ := c.Text.fields[name].([]any)
	for _, e := range entries {
		m, _ := e.(map[string]any)
		text := func(k string) string { s, _ := m[k].(string); return s }
		l := listed{Name: text(key)}
		for _, a := range also {
			if t := text(a); t != "" {
				if l.Says != "" {
					l.Says += "; "
				}
				l.Says += t
			}
		}
		if fits, ok := m["fits"].([]any); ok {
			for _, id := range fits {
				for _, card := range c.Offers[shop.KindCasting] {
					if string(card.ID) == id {
						l.Says += " fits " + card.Label
					}
				}
			}
		}
		all = append(all, l)
	}
	return all
}
