package web

import (
	"axlewright/quantity"
	"axlewright/setup"
	"axlewright/shop"
)

// Fields that several questions share.
var (
	kindField   = askField{Key: "kind", Title: "Kind of axle", Options: words(setup.Kinds()), Optional: true, Hint: "for the ranges of the trade"}
	peggedField = askField{Key: "pegged", Title: "Peg behind the wheel", Options: []string{"no", "yes"}, Optional: true}
	pushField   = askField{Key: "push", Title: "A thicker shim moves the pinion", Options: words([]setup.Push{setup.TowardsWheel, setup.AwayFromWheel}),
		From: slotAt("shim", "way", "")}
	markUnit  = askField{Key: "mark_unit", Title: "The mark counts", Options: words([]setup.MarkUnit{setup.MarkThou, setup.MarkHundredths})}
	markPlus  = askField{Key: "mark_plus", Title: "Plus means", Options: words([]setup.MarkSense{setup.PlusFurther, setup.PlusNearer}), Hint: "makers differ"}
	gearField = askField{Key: "gears", Title: "Gears", Options: words([]setup.Gears{setup.NewGears, setup.UsedGears}), From: slotAt("assemble", "set", "")}
	useField  = askField{Key: "use", Title: "Use", Options: words([]setup.Use{setup.OrdinaryUse, setup.CompetitionUse}), Optional: true}

	adjusterFields = []askField{
		length("thread", "Pitch of the adjusters’ thread", "identify", shop.SeenItem, "adjuster pitch"), plain("notches", "Notches round one adjuster"),
		{Key: "half", Title: "The lock holds half way too", Options: []string{"no", "yes"}, Optional: true},
		{Key: "side", Title: "The crown wheel is on the", Options: words([]setup.Side{setup.Left, setup.Right})},
		{Key: "seen", Title: "Seen from", Options: []string{"the pinion flange", "the crown wheel’s back"}},
	}
)

func slotAt(step shop.StepKey, item, place string) shop.Slot {
	return shop.Slot{Step: step, Item: item, Place: place}
}

func length(key, title string, from ...string) askField {
	f := askField{Key: key, Title: title, Dim: quantity.Length, Unit: "mm"}
	if len(from) > 1 {
		f.From = slotAt(shop.StepKey(from[0]), from[1], "")
	}
	if len(from) > 2 {
		f.From.Place = from[2]
	}
	return f
}

func plain(key, title string) askField {
	return askField{Key: key, Title: title, Dim: quantity.Number}
}

func turning(key, title string, from ...string) askField {
	f := length(key, title, from...)
	f.Dim, f.Unit = quantity.Torque, "N·m"
	return f
}

func optional(f askField) askField {
	f.Optional = true
	return f
}

func hint(f askField, text string) askField {
	f.Hint = text
	return f
}

func (in asked) adjusters() setup.Adjusters {
	return setup.Adjusters{Pitch: in.number("thread"), Notches: in.whole("notches"), HalfStep: in.word("half") == "yes",
		WheelSide: setup.Side(in.word("side")), SeenFrom: in.word("seen")}
}

func together(parts ...[]askField) []askField {
	var all []askField
	for _, p := range parts {
		all = append(all, p...)
	}
	return all
}

// places are n boxes of one kind of reading: "lash1" to "lash8".
func places(n int, key, title string, from ...string) []askField {
	var all []askField
	for i := range n {
		f := optional(length(key+itoa(i+1), title+" "+itoa(i+1), from...))
		if len(from) > 0 {
			f.From.Place = itoa(i + 1)
		}
		all = append(all, f)
	}
	return all
}

// asks are the questions, in the order of the work.
var asks = join(asksShim, asksPreload, asksLash, asksBores)

func join(parts ...[]ask) []ask {
	var all []ask
	for _, p := range parts {
		all = append(all, p...)
	}
	return all
}
