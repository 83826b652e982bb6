package web

import (
	"axlewright/quantity"
	"axlewright/setup"
	"axlewright/shop"
)

func steps(keys ...shop.StepKey) []shop.StepKey { return keys }

// seenFields are the marks on one flank.
func seenFields(key, title string) []askField {
	return []askField{
		{Key: key + "_along", Title: title + ", along the tooth", Options: words(setup.Alongs), Optional: true, Drawn: key, From: record("pattern", key+"_along")},
		{Key: key + "_height", Title: title + ", up the tooth", Options: words(setup.Heights), Optional: true, Drawn: key, From: record("pattern", key+"_height")},
		{Key: key + "_shape", Title: title + ", shape", Options: words(setup.Shapes), Optional: true, Drawn: key, From: record("pattern", key+"_shape")},
		{Key: key + "_edge", Title: title + ", runs off the edge", Options: []string{"no", "yes"}, Optional: true, From: yesIf("pattern", "edge", key+" side")},
	}
}

func (in asked) seen(side string) setup.Seen {
	s := setup.Seen{Along: setup.Along(in.word(side + "_along")), Height: setup.Height(in.word(side + "_height")), Shape: setup.Shape(in.word(side + "_shape"))}
	s.OffEdge = s != setup.Seen{} && in.word(side+"_edge") == "yes"
	return s
}

var (
	meanField   = from(length("lash", "Lash now, the mean round the wheel"), lashMean)
	wantedField = hint(optional(length("wanted", "Lash wanted", "lash", "wanted")), "left out, the middle of the range")
	toGoSides   = []askField{from(hint(plain("left", "Left, notches still to go"), "0 to 1"), sided(setup.Left, "side", "to_go")), from(hint(plain("right", "Right, notches still to go"), "0 to 1"), sided(setup.Right, "side", "to_go"))}
)

var asksLash = []ask{
	{
		Key: "lash", Title: "Lash round the wheel", Steps: steps("lash"),
		About:  "Mean, variation, and what the variation looks like.",
		Fields: together(places(8, "lash", "Lash at place", "lash", "lash"), []askField{{Key: "dial", Title: "Dial stood", Options: []string{shop.DialAlong, shop.DialSquare}, From: record("lash", "dial")}, gearField, foundField, gearSetField, useField, kindField}),
		Work: func(in asked) (setup.Answer, error) {
			r, err := setup.LashOfRound(setup.LashRound{Spec: in.spec(), Readings: trim(in.several("lash", 8)), Plunger: plungerOf(in.word("dial")), Gears: setup.Gears(in.word("gears")), AsFound: in.reading("found"), Use: setup.Use(in.word("use")), Mesh: in.mesh()})
			return r.Answer, err
		},
	},
	{
		Key: "adjust", Title: "Adjusters for a wanted lash", Steps: steps("lash", "side"),
		About:  "Which adjuster goes how far; the side preload stays, and the last move tightens.",
		Fields: together([]askField{meanField, wantedField, gearField, foundField}, adjusterFields, []askField{gearSetField, kindField}),
		Work: func(in asked) (setup.Answer, error) {
			r, err := setup.NotchesForLash(setup.AdjustLash{Spec: in.spec(), Adjusters: in.adjusters(), Mesh: in.mesh(), Lash: in.reading("lash"), Gears: setup.Gears(in.word("gears")), AsFound: in.reading("found"), Wanted: in.number("wanted")})
			return r.Answer, err
		},
	},
	{
		Key: "notch", Title: "What one notch does", Steps: steps("locks", "side", "lash"),
		About:  "To the place of the crown wheel and to the lash.",
		Fields: together(adjusterFields, []askField{gearSetField}),
		Work: func(in asked) (setup.Answer, error) {
			r, err := setup.OneNotch(in.adjusters(), in.mesh())
			return r.Answer, err
		},
	},
	{
		Key: "mesh", Title: "What a movement does to the lash", Steps: steps("pattern"),
		About:  "Lash per movement of crown wheel and of pinion, from the geometry of a gear set.",
		Fields: []askField{gearSetField, hint(optional(length("wheel", "Crown wheel away from the pinion by")), "such as 0.10 mm"), hint(optional(length("pinion", "Pinion out of the nose by")), "such as 0.10 mm")},
		Work: func(in asked) (setup.Answer, error) {
			return setup.LashOfMove(setup.MoveOfMesh{Mesh: in.mesh(), Wheel: in.reading("wheel"), Pinion: in.reading("pinion")})
		},
	},
	{
		Key: "lineup", Title: "On to the next slot", Steps: steps("side"),
		About:  "What it does to turn both adjusters on to where their locks fit: tighter, never back.",
		Fields: together(adjusterFields, toGoSides, []askField{optional(length("spread", "Spread of the caps now", "side", "spread")), from(optional(length("lash", "Lash now")), lashMean), gearSetField, kindField}),
		Work: func(in asked) (setup.Answer, error) {
			r, err := setup.NextNotchTighter(setup.LineUp{Spec: in.spec(), Adjusters: in.adjusters(), Mesh: in.mesh(), Left: in.reading("left"), Right: in.reading("right"), Spread: in.reading("spread"), Lash: in.reading("lash")})
			return r.Answer, err
		},
	},
	{
		Key: "runout", Title: "Run-out: the wheel’s or the seat’s", Steps: steps("assemble"),
		About:  "Two rounds on the back face, the crown wheel turned on its bolt holes between them.",
		Fields: together([]askField{holesField, plain("turned", "Turned on by so many holes", "assemble", "turned")}, places(8, "first", "First round, place", "assemble", "face"), places(8, "second", "Second round, place", "assemble", "face_turned"), []askField{kindField, peggedField}),
		Work: func(in asked) (setup.Answer, error) {
			r, err := setup.SeparateRunOut(setup.RunOutByTurning{Spec: in.spec(), Holes: in.whole("holes"), First: setup.Round{Readings: trim(in.several("first", 8))}, Second: setup.Round{Readings: trim(in.several("second", 8)), Turned: in.whole("turned")}})
			if err == nil && r.Total > 0 {
				in.keep("assemble", "runout", r.Total, quantity.Length)
			}
			return r.Answer, err
		},
	},
	{
		Key: "face", Title: "Run-out: the wheel’s, from the bare flange", Steps: steps("assemble"),
		About: "The flange face of the bare diff centre and the back face of the wheel bolted to it, both from one mark.",
		Fields: together([]askField{holesField, length("flange_at", "Radius of the dial on the flange face"), length("back_at", "Radius of the dial on the back face")}, places(8, "flange", "Flange face, place"),
			places(8, "back", "Back face, place", "assemble", "face"), []askField{kindField, peggedField}),
		Work: func(in asked) (setup.Answer, error) {
			r, err := setup.RunOutFromFace(setup.RunOutByFace{Spec: in.spec(), Holes: in.whole("holes"), Flange: trim(in.several("flange", 8)), FlangeRadius: in.number("flange_at"), BackFace: setup.Round{Readings: trim(in.several("back", 8))}, BackFaceRadius: in.number("back_at")})
			return r.Answer, err
		},
	},
	{
		Key: "pattern", Title: "Read the pattern", Steps: steps("pattern"),
		About: "Drive side first, then coast; one correction at a time.",
		Fields: together(seenFields("drive", "Drive side"), seenFields("coast", "Coast side"), []askField{{Key: "depth", Title: "Teeth", Drawn: "teeth", Options: words(setup.Depths), Hint: "tapered: lower at the toe", From: record("pattern", "depth")}, gearField, useField,
			{Key: "load", Title: "Turned against", Hint: "bar or brake, and how hard", From: record("pattern", "load")}, from(optional(length("lash", "Lash")), lashMean), foundField, optional(pushField)}, optionals(adjusterFields), []askField{gearSetField, kindField}),
		Work: func(in asked) (setup.Answer, error) {
			p := setup.Pattern{Spec: in.spec(), Drive: in.seen("drive"), Coast: in.seen("coast"), Depth: setup.Depth(in.word("depth")), Gears: setup.Gears(in.word("gears")), Use: setup.Use(in.word("use")), Load: in.word("load"), Lash: in.reading("lash"), AsFoundLash: in.reading("found"), Mesh: in.mesh(), ThickerPushes: setup.Push(in.word("push"))}
			if a := in.adjusters(); a.Pitch > 0 && a.Notches > 0 && a.WheelSide != "" { // else amounts are told without notches
				p.Adjusters = a
			}
			r, err := setup.ReadPattern(p)
			return r.Answer, err
		},
	},
	{
		Key: "peg", Title: "Set the peg", Steps: steps("peg"),
		About: "Cold, after the last side preload; the gap at the tight and at the slack spot, against the window of the load path where advice is kept.",
		Fields: together([]askField{length("pitch", "Pitch of the peg’s thread", "peg", "pitch"), hint(optional(angle("angle", "Turned back from touch", "peg", "angle")), "a flat is 60 degrees"),
			length("runout", "Back-face run-out", "assemble", "runout"), {Key: "spot", Title: "Nipped up to touch at the", Options: words(setup.Spots), From: record("peg", "spot")},
			{Key: "final", Title: "Side preload was final", Options: []string{"yes", "no"}, From: record("peg", "final")}, {Key: "touching", Title: "Touches somewhere in a turn", Options: []string{"no", "yes"}, From: yesIf("peg", "touches", shop.PegTouches)},
			optional(length("locked0", "Gap after locking, tight spot", "peg", "gap", string(setup.TightSpot)))}, places(4, "locked", "Gap after locking, place", "peg", "gap"), []askField{kindField}),
		Work: func(in asked) (setup.Answer, error) {
			spec := in.spec()
			spec.Pegged = true
			r, err := setup.SetPeg(setup.PegSetting{Spec: spec, Window: in.window, Pitch: in.number("pitch"), Angle: in.reading("angle"), RunOut: in.reading("runout"), Spot: setup.Spot(in.word("spot")), SidePreload: in.word("final") == "yes",
				Locked: append([]setup.Reading{in.reading("locked0")}, in.several("locked", 4)...), Touching: in.word("touching") == "yes"})
			return r.Answer, err
		},
	},
}

func optionals(fields []askField) []askField {
	var all []askField
	for _, f := range fields {
		all = append(all, optional(f))
	}
	return all
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
