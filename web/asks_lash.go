package web

import (
	"axlewright/calc/gear"
	"axlewright/quantity"
	"axlewright/setup"
	"axlewright/shop"
)

func steps(keys ...shop.StepKey) []shop.StepKey { return keys }

var seenFields = []askField{
	{Key: "drive_along", Title: "Drive side, along the tooth", Options: alongs, Optional: true}, {Key: "drive_height", Title: "Drive side, up the tooth", Options: heights, Optional: true}, {Key: "drive_shape", Title: "Drive side, shape", Options: shapes, Optional: true},
	{Key: "coast_along", Title: "Coast side, along the tooth", Options: alongs, Optional: true}, {Key: "coast_height", Title: "Coast side, up the tooth", Options: heights, Optional: true}, {Key: "coast_shape", Title: "Coast side, shape", Options: shapes, Optional: true},
}

var (
	alongs  = words([]setup.Along{setup.AtToe, setup.TowardsToe, setup.MidLength, setup.TowardsHeel, setup.AtHeel})
	heights = words([]setup.Height{setup.AtTip, setup.TowardsTip, setup.MidHeight, setup.TowardsRoot, setup.AtRoot})
	shapes  = words([]setup.Shape{setup.EvenShape, setup.NarrowBand, setup.PatchyShape, setup.Wandering})
)

func (in asked) seen(side string) setup.Seen {
	return setup.Seen{Along: setup.Along(in.word(side + "_along")), Height: setup.Height(in.word(side + "_height")), Shape: setup.Shape(in.word(side + "_shape"))}
}

var asksLash = []ask{
	{
		Key: "lash", Title: "Lash round the wheel", Steps: steps("lash"),
		About:  "Mean, variation, and what the variation looks like.",
		Fields: together(places(8, "lash", "Lash at place", "lash", "lash"), []askField{{Key: "dial", Title: "Dial stood", Options: []string{"along the turn", "square to the tooth"}, From: slotAt("lash", "dial", "")}, gearField, optional(length("found", "Lash as found, of used gears")), useField, kindField}),
		Work: func(in asked) (setup.Answer, error) {
			plunger := gear.DialTangential
			if in.word("dial") == "square to the tooth" {
				plunger = gear.DialSquare
			}
			r, err := setup.LashOfRound(setup.LashRound{Spec: in.spec(), Readings: trim(in.several("lash", 8)), Plunger: plunger, Gears: setup.Gears(in.word("gears")), AsFound: in.reading("found"), Use: setup.Use(in.word("use"))})
			return r.Answer, err
		},
	},
	{
		Key: "adjust", Title: "Adjusters for a wanted lash", Steps: steps("lash", "side"),
		About:  "Which adjuster goes how far; the side preload stays, and the last move tightens.",
		Fields: together(adjusterFields, []askField{length("lash", "Lash now, the mean round the wheel"), hint(optional(length("wanted", "Lash wanted")), "left out, the middle of the range"), gearField, optional(length("found", "Lash as found, of used gears")), kindField}),
		Work: func(in asked) (setup.Answer, error) {
			r, err := setup.NotchesForLash(setup.AdjustLash{Spec: in.spec(), Adjusters: in.adjusters(), Lash: in.reading("lash"), Gears: setup.Gears(in.word("gears")), AsFound: in.reading("found"), Wanted: in.number("wanted")})
			return r.Answer, err
		},
	},
	{
		Key: "notch", Title: "What one notch does", Steps: steps("side", "lash"),
		About:  "To the place of the crown wheel and to the lash.",
		Fields: adjusterFields,
		Work: func(in asked) (setup.Answer, error) {
			r, err := setup.OneNotch(in.adjusters(), setup.Mesh{})
			return r.Answer, err
		},
	},
	{
		Key: "lineup", Title: "On to the next slot", Steps: steps("side"),
		About:  "What it does to turn both adjusters on to where their locks fit: tighter, never back.",
		Fields: together(adjusterFields, []askField{hint(plain("left", "Left, notches still to go"), "0 to 1"), hint(plain("right", "Right, notches still to go"), "0 to 1"), optional(length("spread", "Spread of the caps now", "side", "spread")), optional(length("lash", "Lash now")), kindField}),
		Work: func(in asked) (setup.Answer, error) {
			r, err := setup.NextNotchTighter(setup.LineUp{Spec: in.spec(), Adjusters: in.adjusters(), Left: in.reading("left"), Right: in.reading("right"), Spread: in.reading("spread"), Lash: in.reading("lash")})
			return r.Answer, err
		},
	},
	{
		Key: "runout", Title: "Run-out: the wheel’s or the seat’s", Steps: steps("assemble"),
		About:  "Two rounds on the back face, the crown wheel turned on its bolt holes between them.",
		Fields: together([]askField{plain("holes", "Bolt holes round the wheel"), plain("turned", "Turned on by so many holes")}, places(8, "first", "First round, place"), places(8, "second", "Second round, place"), []askField{kindField, peggedField}),
		Work: func(in asked) (setup.Answer, error) {
			r, err := setup.SeparateRunOut(setup.RunOutByTurning{Spec: in.spec(), Holes: in.whole("holes"), First: setup.Round{Readings: trim(in.several("first", 8))}, Second: setup.Round{Readings: trim(in.several("second", 8)), Turned: in.whole("turned")}})
			return r.Answer, err
		},
	},
	{
		Key: "pattern", Title: "Read the pattern", Steps: steps("pattern"),
		About: "Drive side first, then coast; one correction at a time.",
		Fields: together(seenFields, []askField{{Key: "depth", Title: "Teeth", Options: words([]setup.Depth{setup.TaperedDepth, setup.ParallelDepth, setup.UnknownDepth}), Hint: "tapered: lower at the toe"}, gearField, useField,
			{Key: "load", Title: "Turned against", Hint: "bar or brake, and how hard"}, optional(length("lash", "Lash")), optional(length("found", "Lash as found, of used gears")), optional(pushField), kindField}),
		Work: func(in asked) (setup.Answer, error) {
			r, err := setup.ReadPattern(setup.Pattern{Spec: in.spec(), Drive: in.seen("drive"), Coast: in.seen("coast"), Depth: setup.Depth(in.word("depth")), Gears: setup.Gears(in.word("gears")), Use: setup.Use(in.word("use")), Load: in.word("load"), Lash: in.reading("lash"), AsFoundLash: in.reading("found"), ThickerPushes: setup.Push(in.word("push"))})
			return r.Answer, err
		},
	},
	{
		Key: "peg", Title: "Set the peg", Steps: steps("peg"),
		About: "Cold, after the last side preload; the gap at the tight and at the slack spot.",
		Fields: together([]askField{length("pitch", "Pitch of the peg’s thread", "peg", "pitch"), {Key: "angle", Title: "Turned back from touch", Dim: quantity.Angle, Unit: "deg", Optional: true, From: slotAt("peg", "angle", ""), Hint: "a flat is 60 degrees"},
			length("runout", "Back-face run-out", "assemble", "runout"), {Key: "spot", Title: "Nipped up to touch at the", Options: words([]setup.Spot{setup.TightSpot, setup.SlackSpot, setup.UnknownSpot})},
			{Key: "final", Title: "Side preload was final", Options: []string{"yes", "no"}}, {Key: "touching", Title: "Touches somewhere in a turn", Options: []string{"no", "yes"}}}, places(4, "locked", "Gap after locking, place", "peg", "gap"), []askField{kindField}),
		Work: func(in asked) (setup.Answer, error) {
			spec := in.spec()
			spec.Pegged = true
			r, err := setup.SetPeg(setup.PegSetting{Spec: spec, Pitch: in.number("pitch"), Angle: in.reading("angle"), RunOut: in.reading("runout"), Spot: setup.Spot(in.word("spot")), SidePreload: in.word("final") == "yes", Locked: trim(in.several("locked", 4)), Touching: in.word("touching") == "yes"})
			return r.Answer, err
		},
	},
}

// trim leaves out the untaken readings at the end, so that four places may be
// read where there are boxes for eight.
func trim(all []setup.Reading) []setup.Reading {
	n := len(all)
	for n > 0 && !all[n-1].Taken {
		n--
	}
	return all[:n]
}
