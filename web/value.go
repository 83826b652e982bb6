package web

import (
	"net/url"
	"strconv"
	"strings"
	"unicode"

	"axlewright/quantity"
	"axlewright/shop"
)

// valueOf reads what a box was filled with. Nothing typed takes back what
// stands there.
func valueOf(f shop.Field, form url.Values) (shop.Value, error) {
	text := strings.TrimSpace(form.Get("value"))
	switch f.Kind {
	case shop.FieldFigure:
		if text == "" {
			return shop.Withdrawn(), nil
		}
		typed := withUnit(text, form.Get("unit"))
		q, err := quantity.Parse(typed, f.Dim)
		if err != nil {
			return shop.Value{}, err
		}
		v := shop.Figure(typed, q.SI, f.Dim)
		v.Confirmed = form.Get("confirmed") != ""
		return v, nil
	case shop.FieldChoice, shop.FieldChoices:
		var words []string
		for _, w := range form["value"] {
			if w != "" {
				words = append(words, w)
			}
		}
		if len(words) == 0 {
			return shop.Withdrawn(), nil
		}
		return shop.Words(words...), nil
	case shop.FieldDay:
		if text == "" {
			return shop.Withdrawn(), nil
		}
		return shop.Day(text), nil
	case shop.FieldSum:
		if text == "" {
			return shop.Withdrawn(), nil
		}
		m, err := moneyOf(text)
		return shop.Sum(m), err
	case shop.FieldLink:
		card := shop.ID(form.Get("card"))
		if card == "" {
			return shop.Withdrawn(), nil
		}
		return shop.LinkTo(f.Card, card), nil
	case shop.FieldPart:
		return partOf(form)
	}
	if text == "" {
		return shop.Withdrawn(), nil
	}
	return shop.Text(strings.ReplaceAll(text, "\r\n", "\n")), nil
}

func partOf(form url.Values) (shop.Value, error) {
	card := shop.ID(form.Get("card"))
	if card == "" {
		return shop.Withdrawn(), nil
	}
	n, err := numberOf(form.Get("quantity"))
	if err != nil || n <= 0 {
		return shop.Value{}, shop.Fault(shop.Invalid, "Say how much of the lot, such as 1.")
	}
	if form.Get("reserved") != "" {
		return shop.SetAside(card, n), nil
	}
	return shop.Used(card, n), nil
}

// withUnit adds the unit that was chosen beside the box, unless one was typed.
func withUnit(text, unit string) string {
	if unit == "" || strings.ContainsFunc(text, func(r rune) bool {
		return unicode.IsLetter(r) || strings.ContainsRune("°%\"'′″Ω", r)
	}) {
		return text
	}
	return text + " " + unit
}

// moneyOf reads a sum: "1250", "1,250.50", "1250,50".
func moneyOf(text string) (shop.Money, error) {
	x, err := numberOf(text)
	if err != nil || x < 0 || x > 1e10 {
		return 0, shop.Fault(shop.Invalid, "“%s” is not a sum of money. Write it as 1250 or 1250.50.", text)
	}
	return shop.MoneyOf(x), nil
}

// numberOf reads a plain number as quantity does.
func numberOf(text string) (float64, error) {
	q, err := quantity.Parse(strings.TrimSpace(text), quantity.Number)
	if err != nil {
		return 0, err
	}
	return q.SI, nil
}

// A unit is offered beside a box; Says is how it is read aloud at the bench.
type unit struct{ Text, Says string }

// unitsOf are the units that the trade types for a field, its usual one first.
func unitsOf(dim quantity.Dimension, usual string) []unit {
	all := map[quantity.Dimension][]unit{
		quantity.Length:      {{"mm", "mm"}, {"thou", "thou"}, {"in", "inch"}},
		quantity.Torque:      {{"N·m", "N·m"}, {"lbf·in", "lbf·inch"}, {"lbf·ft", "lbf·foot"}},
		quantity.Mass:        {{"kg", "kg"}, {"g", "g"}, {"lb", "lb"}},
		quantity.Temperature: {{"°C", "°C"}, {"°F", "°F"}},
		quantity.Pressure:    {{"kPa", "kPa"}, {"bar", "bar"}, {"psi", "psi"}, {"MPa", "MPa"}},
		quantity.Current:     {{"A", "A"}},
		quantity.Angle:       {{"deg", "degrees"}},
		quantity.Time:        {{"min", "minutes"}, {"h", "hours"}, {"s", "seconds"}},
		quantity.Share:       {{"%", "%"}},
		quantity.Force:       {{"N", "N"}, {"kN", "kN"}, {"lbf", "lbf"}},
		quantity.Speed:       {{"km/h", "km/h"}, {"mph", "mph"}, {"m/s", "m/s"}},
	}[dim]
	if usual == "km" {
		return []unit{{"km", "km"}, {"mi", "miles"}}
	}
	if usual == "" {
		return all
	}
	first := []unit{{usual, usual}}
	for _, u := range all {
		if u.Text == usual {
			first[0] = u
			continue
		}
		first = append(first, u)
	}
	return first
}

// splitTyped parts a figure as typed into number and unit, where the unit is
// one of those offered; otherwise all of it stays in the box.
func splitTyped(typed string, units []unit) (number, chosen string) {
	for _, u := range units {
		if n, ok := strings.CutSuffix(typed, u.Text); ok && n != "" {
			n = strings.TrimSpace(n)
			if _, err := strconv.ParseFloat(strings.ReplaceAll(n, ",", "."), 64); err == nil {
				return n, u.Text
			}
		}
	}
	return typed, ""
}
