package web

import (
	"axlewright/quantity"
	"axlewright/setup"
	"axlewright/shop"
)

// Fields that several questions share.
var (
	kindField = askField{Key: "kind", Title: "Kind of axle", Options: words(setup.Kinds()), Optional: true, Hint: "for the ranges of the trade",
		From: func(d desk) string { return string(d.spec.Kind) }}
	peggedField = askField{Key: "pegged", Title: "Peg behind the wheel", Options: []string{"no", "yes"}, Optional: true,
		From: yesIf("enquiry", "work", string(shop.WorkPeg))}
	pushField    = askField{Key: "push", Title: "A thicker shim moves the pinion", Options: words([]setup.Push{setup.TowardsWheel, setup.AwayFromWheel}), From: record("shim", "way")}
	markUnit     = askField{Key: "mark_unit", Title: "The mark counts", Options: words(setup.MarkUnits), From: record("shim", "mark_unit")}
	markPlus     = askField{Key: "mark_plus", Title: "Plus means", Options: words(setup.MarkSenses), Hint: "makers differ", From: record("shim", "mark_plus")}
	newMark      = askField{Key: "mark", Title: "Mark on this pinion", Dim: quantity.Number, Hint: "with its sign", From: record("shim", "new_mark")}
	gearField    = askField{Key: "gears", Title: "Gears", Options: words(setup.AllGears), From: record("assemble", "set")}
	gearSetField = askField{Key: "gear_set", Title: "Gear set", Optional: true, Hint: "of the catalogue: lash then follows from its geometry", From: func(d desk) string { return d.gear }}
	foundField   = askField{Key: "found", Title: "Lash as found, of used gears", Dim: quantity.Length, Unit: "mm", Optional: true, From: meanOf("strip", "lash_found")}
	useField     = askField{Key: "use", Title: "Use", Options: words([]setup.Use{setup.OrdinaryUse, setup.CompetitionUse}), Optional: true, From: useOf}
	seenField    = askField{Key: "seen", Title: "Seen from", Options: []string{pinionFlange, "the crown wheel’s back"}, From: always(pinionFlange)}
	holesField   = plain("holes", "Bolt holes round the wheel", "assemble", "holes")

	adjusterFields = []askField{
		from(length("thread", "Pitch of the adjusters’ thread"), firstOf(record("locks", "pitch"), record("identify", shop.SeenItem, "adjuster pitch"))),
		plain("notches", "Notches round one adjuster", "locks", "notches"),
		{Key: "half", Title: "The lock holds half way too", Options: []string{"no", "yes"}, Optional: true, From: yesIf("locks", "kind", shop.LockHalf)},
		{Key: "side", Title: "The crown wheel is on the", Options: words(setup.Sides), From: record("locks", "wheel_side")},
		seenField,
	}
)

const pinionFlange = "the pinion flange"

// useOf is competition where the enquiry says so.
func useOf(d desk) string {
	if yesIf("enquiry", "use", "competition")(d) == "yes" {
		return string(setup.CompetitionUse)
	}
	return string(setup.OrdinaryUse)
}

// figure is a box for a reading; where it is from is step, item and place.
func figure(dim quantity.Dimension, unit, key, title string, where []string) askField {
	f := askField{Key: key, Title: title, Dim: dim, Unit: unit}
	if len(where) > 1 {
		f.From = record(shop.StepKey(where[0]), where[1], where[2:]...)
	}
	return f
}

func length(key, title string, where ...string) askField {
	return figure(quantity.Length, "mm", key, title, where)
}

func plain(key, title string, where ...string) askField {
	return figure(quantity.Number, "", key, title, where)
}

func turning(key, title string, where ...string) askField {
	return figure(quantity.Torque, "N·m", key, title, where)
}

func angle(key, title string, where ...string) askField {
	return figure(quantity.Angle, "deg", key, title, where)
}

func from(f askField, s source) askField {
	f.From = s
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
func places(n int, key, title string, where ...string) []askField {
	var all []askField
	for i := range n {
		place := itoa(i + 1)
		if len(where) > 0 {
			all = append(all, optional(length(key+place, title+" "+place, where[0], where[1], place)))
		} else {
			all = append(all, optional(length(key+place, title+" "+place)))
		}
	}
	return all
}

// mesh is the geometry of the gear set that was chosen; the zero Mesh without one.
func (in asked) mesh() setup.Mesh {
	m, err := in.desk.mesh(in.word(gearSetField.Key))
	if err != nil {
		*in.wrong = append(*in.wrong, gearSetField.Title+": "+faultOf(err).Says)
	}
	return m
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
