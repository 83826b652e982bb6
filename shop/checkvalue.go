package shop

import (
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// checkTicket demands a ticket that is short and plain.
func checkTicket(ticket string) error {
	if len(ticket) > 64 {
		return Fault(Invalid, "A ticket has at most 64 characters.").At("ticket")
	}
	return lengthOf("ticket", ticket, 64)
}

// checkPlace demands a place that the field has, or may have.
func checkPlace(f Field, place string, last *Entry) error {
	at := f.Key + "/" + place
	switch {
	case len(f.Places) == 0 && place == "", slices.Contains(f.Places, place), last != nil:
		return nil
	case !f.Open:
		return Fault(Invalid, "%s has no place %q.", f.Title, place).At(at)
	case strings.TrimSpace(place) == "" || utf8.RuneCountInString(place) > 40 || strings.Contains(place, "/"):
		return Fault(Invalid, "A place has 1 to 40 characters and no stroke.").At(at)
	}
	for _, r := range place {
		if !unicode.IsPrint(r) {
			return Fault(Invalid, "A place holds only what can be printed.").At(at)
		}
	}
	return nil
}

// checkValue demands of a value what its field holds, and nothing else.
func checkValue(f Field, at string, v Value) error {
	only := func(w Value) error {
		if !v.saysWhat(w) {
			return Fault(Invalid, "This is not what the box %q holds.", f.Title).At(at)
		}
		return nil
	}
	switch f.Kind {
	case FieldFigure:
		switch {
		case v.SI == nil || strings.TrimSpace(v.Typed) == "":
			return Fault(Invalid, "A number with its unit is wanted here.").At(at)
		case math.IsNaN(*v.SI) || math.IsInf(*v.SI, 0):
			return Fault(Invalid, "This is not a number.").At(at)
		case v.Dim != f.Dim:
			return Fault(Invalid, "A %s is wanted here, not a %s.", f.Dim, v.Dim).At(at)
		case f.Whole && *v.SI < 0:
			return Fault(Invalid, "%s cannot be less than nothing: write it without a minus.", f.Title).At(at)
		}
		return firstFault(lengthOf(at, v.Typed, 100), only(Value{Typed: v.Typed, SI: v.SI, Dim: v.Dim}))
	case FieldChoice, FieldChoices:
		if len(v.Words) == 0 || f.Kind == FieldChoice && len(v.Words) != 1 {
			return Fault(Invalid, "Choose one of the words.").At(at)
		}
		for i, w := range v.Words {
			if !slices.ContainsFunc(f.Options, func(o Option) bool { return o.Word == w }) || slices.Contains(v.Words[:i], w) {
				return Fault(Invalid, "%q is not one of the words.", w).At(at)
			}
		}
		return only(Value{Words: v.Words})
	case FieldText:
		return firstFault(required(at, v.Text), lengthOf(at, v.Text, longText), checkStamped(at, v.Text), only(Value{Text: v.Text}))
	case FieldDay:
		return firstFault(required(at, v.Day), dayOrEmpty(at, v.Day), only(Value{Day: v.Day}))
	case FieldSum:
		if v.Sum == nil || *v.Sum < 0 || *v.Sum > 1e12 {
			return Fault(Invalid, "A sum of money is wanted here.").At(at)
		}
		return only(Value{Sum: v.Sum})
	case FieldLink:
		if v.Link == nil || v.Link.Kind != f.Card || !v.Link.ID.Valid() {
			return Fault(Invalid, "Choose a %s.", f.Card).At(at)
		}
		return only(Value{Link: v.Link})
	case FieldPart:
		switch {
		case v.Link == nil || v.Link.Kind != KindLot || !v.Link.ID.Valid():
			return Fault(Invalid, "Choose a lot.").At(at)
		case v.Quantity == nil || !(*v.Quantity > 0) || *v.Quantity > 1e9:
			return Fault(Invalid, "Say how much of the lot.").At(at)
		}
		return only(Value{Link: v.Link, Quantity: v.Quantity, Reserved: v.Reserved})
	}
	return Fault(Internal, "The box %q is of a kind that is not known.", f.Title).At(at)
}

// checkStamped keeps a stamped number to what can be stamped, found and signed.
func checkStamped(at, text string) error {
	if at != slotStamped.String() {
		return nil
	}
	for _, r := range text {
		if !unicode.IsPrint(r) {
			return Fault(Invalid, "A number stands on one line.").At(at)
		}
	}
	if FoldNumber(text) == "" {
		return Fault(Invalid, "A number holds letters or digits.").At(at)
	}
	return lengthOf(at, text, 40)
}
