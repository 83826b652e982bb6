package shop

import (
	"axlewright/quantity"
	"axlewright/setup"
)

var stepsSetting = []Step{
	{
		Key: "assemble", Title: "Get ready to assemble", Picture: "exploded-unit",
		Decides: "Clean, new bolts, cups home.",
		Mistake: "A cup not fully home: the preload is gone in 50 km.",
		Fields: []Field{
			{Key: "washed", Title: "Washed twice, magnet, galleries flushed, breather clear", Kind: FieldChoice, Options: []Option{fine("yes"), look("no", "")}},
			{Key: "gears", Title: "Gear set: marks on wheel and pinion", Kind: FieldText},
			{Key: "set", Title: "The gears are", Kind: FieldChoice, Options: plain(wordsOf(setup.AllGears)...), Hint: "A set that has run goes back to the lash it had."},
			{Key: "wheel_bolts", Title: "Crown wheel bolts, lot", Kind: FieldPart, Lot: LotBolts},
			{Key: "wheel_torque", Title: "Crown wheel bolts torqued to", Kind: FieldFigure, Dim: quantity.Torque, Unit: "N·m", Hint: "thread, grade, oiled or dry"},
			{Key: "runout", Title: "Back-face run-out", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm",
				Bands: items(setup.WheelRunOut)},
			{Key: "centre_face", Title: "Diff centre's flange face run-out", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Bands: items(setup.SeatRunOut), Optional: true},
			{Key: "head_bearing", Title: "Head bearing, lot", Kind: FieldPart, Lot: LotBearings},
			{Key: "tail_bearing", Title: "Tail bearing, lot", Kind: FieldPart, Lot: LotBearings},
			{Key: "side_bearings", Title: "Side bearings, lot", Kind: FieldPart, Lot: LotBearings, Places: []string{"crown side", "other side"}},
			{Key: "heat", Title: "Bearings heated to", Kind: FieldFigure, Dim: quantity.Temperature, Unit: "°C", Limits: []Limit{celsius(noEnd, 120, "any", published)}, Optional: true},
			{Key: "cups", Title: "0.04 mm feeler behind the cups", Kind: FieldChoice, Options: []Option{fine("does not enter"), halt("enters", "The cup is not home.")}},
			{Key: "seal", Title: "Seal, lot", Kind: FieldPart, Lot: LotSeals, Optional: true},
		},
		Cautions: []string{"Gloves for hot bearings and for cold cups; cups no colder than −29 °C. Dry ice drives out air: ventilate."},
	},
	{
		Key: "shim", Title: "Pinion shim", Picture: "pinion-shim",
		Decides: "How thick a shim puts the pinion where its mark wants it.",
		Mistake: "The sign; inch and metric marks; a baffle counted as shim; the wrong step of the gauge block.",
		Papers:  []Paper{PaperSetUpSheet},
		Fields: []Field{
			{Key: "way", Title: "A thicker shim moves the pinion", Kind: FieldChoice, Options: plain("towards the crown wheel", "away from the crown wheel")},
			{Key: "old_mark", Title: "Mark on the old pinion", Kind: FieldText, Optional: true},
			{Key: "new_mark", Title: "Mark on the new pinion", Kind: FieldText, Hint: "With its unit: thou, or hundredths of a millimetre."},
			{Key: "gauge", Title: "Gauge to the lowest point of the side bore", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Places: []string{"crown side", "other side"}, Optional: true},
			{Key: "wanted", Title: "Shim wanted", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Hint: "The sum is kept beside it."},
			{Key: "fitted", Title: "Shims fitted", Kind: FieldPart, Lot: LotShims, Places: numbered(4), Wanted: 1},
		},
	},
	{
		Key: "preload", Title: "Pinion preload", Picture: "turning-torque",
		Decides: "Turning torque, read while turning steadily.",
		Mistake: "Over-crushing a tube and slackening the nut: the tube is for one use.",
		Papers:  []Paper{PaperSetUpSheet},
		Fields: []Field{
			{Key: "bearings", Title: "Bearings", Kind: FieldChoice, Options: plain(wordsOf(setup.AllBearings)...)},
			{Key: "seal", Title: "Seal", Kind: FieldChoice, Options: plain(wordsOf(setup.AllSeals)...), Hint: "It adds 0.3 to 0.6 N·m."},
			{Key: "spacer", Title: "Spacer", Kind: FieldChoice, Options: plain("solid, with shims", "crush tube, new")},
			{Key: "torque", Title: "Turning torque", Kind: FieldFigure, Dim: quantity.Torque, Unit: "N·m", Bands: []Band{{Item: setup.PinionNew, Split: true, find: pinionDrag}}, Hint: "10 to 20 turns first. Inch or foot: say which."},
			{Key: "nut", Title: "Nut torqued to", Kind: FieldFigure, Dim: quantity.Torque, Unit: "N·m"},
		},
	},
	{
		Key: "side", Title: "Side bearings", Picture: "adjusters",
		Decides: "Float out, then preload by spread, with the last move tightening.",
		Mistake: "Slackening to find a slot: line up to the next slot tighter.",
		Papers:  []Paper{PaperSetUpSheet},
		Fields: []Field{
			{Key: "spread", Title: "Spread across the caps", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Bands: items(setup.SideSpread)},
			{Key: "last", Title: "Last move", Kind: FieldChoice, Options: []Option{fine("tightening"), look("slackening", "Go past and come back tightening.")}},
			{Key: "notches", Title: "Notches moved, each side", Kind: FieldText, Optional: true},
			{Key: "total", Title: "Total turning torque", Kind: FieldFigure, Dim: quantity.Torque, Unit: "N·m", Optional: true},
		},
	},
	{
		Key: "lash", Title: "Lash", Picture: "dial-at-heel",
		Decides: "Lash and how much it varies round the wheel.",
		Mistake: "Plunger square to the tooth instead of along the wheel's turn: it shows about three quarters of the lash.",
		Papers:  []Paper{PaperSetUpSheet},
		Fields: []Field{
			{Key: "lash", Title: "Lash at the heel", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Places: numbered(8), Wanted: 4, Bands: []Band{{Item: setup.Lash, find: lashRange}},
				Hint: "Pinion locked, dial along the turn of the wheel."},
			{Key: "dial", Title: "Dial stood", Kind: FieldChoice, Options: []Option{fine("along the turn"), look("square to the tooth", "The reading is short: correct it.")}},
		},
		Cautions: []string{"No power tool to turn the gears, no fingers near them."},
	},
	{
		Key: "pattern", Title: "Contact pattern", Picture: "tooth-four-ends",
		Decides: "Drive side first, then coast; depth before lash; one correction at a time.",
		Mistake: "Chasing a new pattern on used gears: their wear pattern is the truth.",
		Papers:  []Paper{PaperSetUpSheet},
		Fields: []Field{
			{Key: "load", Title: "Turned against", Kind: FieldText, Hint: "Bar or brake, and how hard: it belongs beside the photograph."},
			{Key: "drive", Title: "Drive side", Kind: FieldChoices, Options: patternOptions},
			{Key: "coast", Title: "Coast side", Kind: FieldChoices, Options: patternOptions},
			{Key: "decision", Title: "Decided", Kind: FieldChoice, Options: []Option{fine("accepted"), look("corrected, see the shim", ""), look("kept as it wore", "")}},
		},
	},
	{
		Key: "peg", Title: "Peg", Picture: "peg-gap", For: []Work{WorkPeg},
		Decides: "The gap, cold, after the last side preload, at the wheel's tight spot.",
		Mistake: "Setting it before side preload, at the low spot, or not looking again after locking: burnt pad, bronze in the oil.",
		Papers:  []Paper{PaperSetUpSheet},
		Fields: []Field{
			{Key: "pad", Title: "Pad, lot", Kind: FieldPart, Lot: LotPads, Optional: true},
			{Key: "final", Title: "Side preload was final before", Kind: FieldChoice, Options: []Option{fine("yes"), look("no", "Setting it later moves the crown wheel against the peg.")}},
			{Key: "spot", Title: "Nipped up to touch at the", Kind: FieldChoice, Options: []Option{fine(string(setup.TightSpot)), look(string(setup.SlackSpot), "The run-out comes off the gap."), look(string(setup.UnknownSpot), "The run-out comes off the gap.")},
				Hint: "Turn the wheel right round to find where its back face comes nearest."},
			{Key: "pitch", Title: "Screw pitch", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm"},
			{Key: "angle", Title: "Backed off by", Kind: FieldFigure, Dim: quantity.Angle, Unit: "deg"},
			{Key: "gap", Title: "Gap after locking", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Places: []string{string(setup.TightSpot), "1", "2", "3", "4"}, Wanted: 4,
				Bands: items(setup.PegTight, setup.PegSlack, setup.PegGap),
				Hint:  "Feeler strips. Locking moves it by 0.03 to 0.08 mm."},
			{Key: "nut", Title: "Lock nut torqued to", Kind: FieldFigure, Dim: quantity.Torque, Unit: "N·m", Bands: items(setup.PegLockTorque)},
			{Key: "touches", Title: "Wheel turned once: the peg", Kind: FieldChoice, Options: []Option{fine(PegClear), halt(PegTouches, "A peg that always touches burns.")}},
		},
	},
}

var patternOptions = []Option{fine("centred, fading at both ends"), look("towards the tip", "Pinion too far out."), look("towards the root", "Pinion too deep."),
	look("towards the heel", "Lash too big."), look("towards the toe", "Lash too small."), look("wanders round", "Run-out, burr or bent."), look("patchy", "Run-out, burr or bent.")}

// The words on which the stop of the peg turns.
const (
	PegClear   = "clears all round"
	PegTouches = "touches"
)
