package shop

import (
	"axlewright/quantity"
	"axlewright/setup"
)

// Marks beyond a quarter of a millimetre, in hundredths, are mostly another number.
var leastMark, mostMark = -25.0, 25.0

var stepsSetting = []Step{
	{
		Key: "assemble", Title: "Get ready to assemble", Pictures: []string{"back-face"},
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
			{Key: "holes", Title: "Bolt holes round the wheel", Kind: FieldFigure, Dim: quantity.Number, Optional: true, Hint: "To tell the wheel's run-out from the seat's, fill what follows."},
			{Key: "face", Title: "Back face, from the wheel's mark", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Places: numbered(8), Optional: true},
			{Key: "turned", Title: "Then turned on by so many bolt holes", Kind: FieldFigure, Dim: quantity.Number, Optional: true},
			{Key: "face_turned", Title: "Back face again, after turning the wheel", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Places: numbered(8), Optional: true},
			{Key: "centre_face", Title: "Diff centre's flange face run-out", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Bands: items(setup.SeatRunOut), Optional: true},
			{Key: "head_bearing", Title: "Head bearing, lot", Kind: FieldPart, Lot: LotBearings},
			{Key: "tail_bearing", Title: "Tail bearing, lot", Kind: FieldPart, Lot: LotBearings},
			{Key: "side_bearings", Title: "Side bearings, lot", Kind: FieldPart, Lot: LotBearings, Places: []string{"crown side", "other side"}},
			{Key: "heat", Title: "Bearings heated to", Kind: FieldFigure, Dim: quantity.Temperature, Unit: "°C", Limits: []Limit{celsius(noEnd, 120, "any", published)}, Optional: true},
			{Key: "cups", Title: "0.04 mm feeler behind the cups", Kind: FieldChoice, Options: []Option{fine("does not enter"), halt("enters", "The cup is not home.")}},
			{Key: "seal", Title: "Seal, lot", Kind: FieldPart, Lot: LotSeals, Optional: true},
		},
		Cautions: []string{"Gloves for hot bearings and for cold cups; cups no colder than −29 °C. Dry ice drives out air: ventilate.",
			"Bearings: drift of brass, press behind a shield. A built unit weighs 28 to 45 kg: two people or a crane."},
	},
	{
		Key: "shim", Title: "Pinion shim", Pictures: []string{"pinion-shim"},
		Decides: "How thick a shim puts the pinion where its mark wants it.",
		Mistake: "The sign; inch and metric marks; a baffle counted as shim; the wrong step of the gauge block.",
		Papers:  []Paper{PaperSetUpSheet},
		Fields: []Field{
			{Key: "way", Title: "A thicker shim moves the pinion", Kind: FieldChoice, Options: plain("towards the crown wheel", "away from the crown wheel")},
			{Key: "new_mark", Title: "Mark on the new pinion", Kind: FieldFigure, Dim: quantity.Number, Limits: []Limit{{Low: &leastMark, High: &mostMark, Kind: "any unit of marks", Origin: Trade, Source: custom}}, Hint: "As it stands there, with its sign: -2, 0, +3."},
			{Key: "mark_unit", Title: "The marks count", Kind: FieldChoice, Options: plain(wordsOf(setup.MarkUnits)...), Hint: "An m beside the number means hundredths on some."},
			{Key: "mark_plus", Title: "Plus means", Kind: FieldChoice, Options: plain(wordsOf(setup.MarkSenses)...), Hint: "Makers differ: look it up."},
			{Key: "in_place", Title: "Shim in place while gauging", Kind: FieldFigure, Whole: true, Limits: []Limit{between(0, 3, "a pack of shims", custom)}, Dim: quantity.Length, Unit: "mm", Optional: true, Hint: "0 for none."},
			{Key: "nominal", Title: "Mounting distance of a pinion marked zero", Kind: FieldFigure, Whole: true, Limits: []Limit{between(50, 300, "any axle of this trade", custom)}, Dim: quantity.Length, Unit: "mm", Optional: true},
			{Key: "distance", Title: "Mounting distance as measured", Kind: FieldFigure, Whole: true, Limits: []Limit{between(50, 300, "any axle of this trade", custom)}, Dim: quantity.Length, Unit: "mm", Optional: true},
			{Key: "gauge", Title: "Gauge to the lowest point of the side bore", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Places: []string{"crown side", "other side"}, Optional: true, Hint: "Without a sign; below, which way the stem went."},
			{Key: "stem", Title: "From the block, the stem went", Kind: FieldChoice, Options: plain(wordsOf(setup.StemMoves)...), Places: []string{"crown side", "other side"}, Optional: true},
			{Key: "wanted", Title: "Shim wanted", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Hint: "The sum stands below."},
			{Key: "fitted", Title: "Shims fitted", Kind: FieldPart, Lot: LotShims, Places: numbered(4), Wanted: 1},
		},
		Cautions: []string{"The head bearing comes off and goes on in a press: behind a shield, or with a drift of brass, goggles on."},
	},
	{
		Key: "preload", Title: "Pinion preload", Pictures: []string{"turning-torque"},
		Decides: "Turning torque, read while turning steadily.",
		Mistake: "Over-crushing a tube and slackening the nut: the tube is for one use.",
		Papers:  []Paper{PaperSetUpSheet},
		Fields: []Field{
			{Key: "bearings", Title: "Bearings", Kind: FieldChoice, Options: plain(wordsOf(setup.AllBearings)...)},
			{Key: "seal", Title: "Seal", Kind: FieldChoice, Options: plain(wordsOf(setup.AllSeals)...), Hint: "It adds 0.3 to 0.6 N·m."},
			{Key: "spacer", Title: "Spacer", Kind: FieldChoice, Options: plain("solid, with shims", "crush tube, new")},
			{Key: "tool", Title: "Read with", Kind: FieldChoice, Options: plain(wordsOf(setup.TorqueTools)...)},
			{Key: "pull", Title: "Pull of the balance", Kind: FieldFigure, Dim: quantity.Force, Unit: "N", Optional: true, Hint: "With string and balance only."},
			{Key: "radius", Title: "Radius of the string", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Optional: true, Hint: "From the axis to the string."},
			{Key: "when", Title: "Read", Kind: FieldChoice, Options: []Option{fine(string(setup.WhileTurning)), look(string(setup.BreakingAway), "That is more than the bearings drag: turn 10 to 20 times, read again.")}},
			{Key: "own_seal", Title: "Drag of this seal, where measured", Kind: FieldFigure, Dim: quantity.Torque, Unit: "N·m", Optional: true, Bands: items(setup.SealDrag)},
			{Key: "torque", Title: "Turning torque", Kind: FieldFigure, Dim: quantity.Torque, Unit: "N·m", Bands: []Band{{Item: setup.PinionNew, Split: true, find: pinionDrag}}, Hint: "10 to 20 turns first. Inch or foot: say which."},
			{Key: "nut", Title: "Nut torqued to", Kind: FieldFigure, Dim: quantity.Torque, Unit: "N·m", Whole: true, Limits: []Limit{newtonMetres(80, 450, "pinion nuts", custom)}},
		},
		Cautions: []string{"Turned by hand only. Hold the flange so that a bar that slips off the nut cannot hit anybody."},
	},
	{
		Key: "side", Title: "Side bearings", Pictures: []string{"adjusters"},
		Decides: "Float out, then preload by spread, with the last move tightening.",
		Mistake: "Slackening to find a slot: line up to the next slot tighter.",
		Papers:  []Paper{PaperSetUpSheet},
		Fields: []Field{
			{Key: "before", Title: "Over the caps, before", Kind: FieldFigure, Whole: true, Dim: quantity.Length, Unit: "mm", Optional: true},
			{Key: "after", Title: "Over the caps, after", Kind: FieldFigure, Whole: true, Dim: quantity.Length, Unit: "mm", Optional: true},
			{Key: "spread", Title: "Spread across the caps", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Bands: items(setup.SideSpread)},
			{Key: "last", Title: "Last move", Kind: FieldChoice, Options: []Option{fine("tightening"), look("slackening", "Go past and come back tightening.")}},
			{Key: "notches", Title: "Notches past zero float", Kind: FieldFigure, Dim: quantity.Number, Places: []string{"crown side", "other side"}, Optional: true, Bands: items(setup.SideNotches)},
			{Key: "to_go", Title: "Part of a notch still to go to the next slot", Kind: FieldFigure, Dim: quantity.Number, Places: []string{"crown side", "other side"}, Optional: true, Hint: "0 to 1, tightening."},
			{Key: "total", Title: "Total turning torque", Kind: FieldFigure, Dim: quantity.Torque, Unit: "N·m", Optional: true},
		},
		Cautions: []string{"A spreader stretches iron: by 0.30 mm (12 thou) at most, fingers out of the caps."},
	},
	{
		Key: "lash", Title: "Lash", Pictures: []string{"dial-at-heel"},
		Decides: "Lash and how much it varies round the wheel.",
		Mistake: "Plunger square to the tooth instead of along the wheel's turn: it shows about three quarters of the lash.",
		Papers:  []Paper{PaperSetUpSheet},
		Fields: []Field{
			{Key: "lash", Title: "Lash at the heel", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Places: numbered(8), Wanted: 4, Bands: []Band{{Item: setup.Lash, find: lashRange}},
				Hint: "Pinion locked, dial along the turn of the wheel."},
			{Key: "wanted", Title: "Lash wanted", Kind: FieldFigure, Whole: true, Bands: []Band{{Item: setup.Lash, find: lashRange}}, Dim: quantity.Length, Unit: "mm", Optional: true, Hint: "Where it is not the middle of the range."},
			{Key: "dial", Title: "Dial stood", Kind: FieldChoice, Options: []Option{fine(DialAlong), look(DialSquare, "The reading is short; the answer below puts it right.")}},
		},
		Cautions: []string{"No power tool to turn the gears, no fingers near them."},
	},
	{
		Key: "pattern", Title: "Contact pattern", Pictures: []string{"tooth-four-ends"},
		Decides: "Drive side first, then coast; depth before lash; one correction at a time.",
		Mistake: "Chasing a new pattern on used gears: their wear pattern is the truth.",
		Papers:  []Paper{PaperSetUpSheet},
		Fields: []Field{
			{Key: "load", Title: "Turned against", Kind: FieldText, Hint: "Bar or brake, and how hard: it belongs beside the photograph."},
			{Key: "drive_along", Title: "Drive side, the convex one, first: along the tooth", Kind: FieldChoice, Options: pictured("drive", setup.Alongs)},
			{Key: "drive_height", Title: "Drive side: up the tooth", Kind: FieldChoice, Options: pictured("drive", setup.Heights)},
			{Key: "drive_shape", Title: "Drive side: shape", Kind: FieldChoice, Options: pictured("drive", setup.Shapes)},
			{Key: "coast_along", Title: "Then coast side, the hollow one: along the tooth", Kind: FieldChoice, Options: pictured("coast", setup.Alongs)},
			{Key: "coast_height", Title: "Coast side: up the tooth", Kind: FieldChoice, Options: pictured("coast", setup.Heights)},
			{Key: "coast_shape", Title: "Coast side: shape", Kind: FieldChoice, Options: pictured("coast", setup.Shapes)},
			{Key: "edge", Title: "A mark runs off the edge of the tooth", Kind: FieldChoices, Optional: true, Options: []Option{look("drive side", "It breaks down there first."), look("coast side", "It breaks down there first.")}},
			{Key: "depth", Title: "Teeth", Kind: FieldChoice, Options: pictured("teeth", setup.Depths), Hint: "Look at one tooth from its end."},
			{Key: "decision", Title: "Decided", Kind: FieldChoice, Options: []Option{fine("accepted"), look("corrected, see the shim", ""), look("kept as it wore", "")}},
		},
		Cautions: []string{"No power tool to spin the gears, no fingers near them; load the wheel with a bar or brake, not with a hand."},
	},
	{
		Key: "peg", Title: "Peg", Pictures: []string{"peg-gap"}, For: []Work{WorkPeg},
		Decides: "The gap, cold, after the last side preload, at the wheel's tight spot.",
		Mistake: "Setting it before side preload, at the low spot, or not looking again after locking: burnt pad, bronze in the oil.",
		Papers:  []Paper{PaperSetUpSheet},
		Fields: []Field{
			{Key: "pad", Title: "Pad, lot", Kind: FieldPart, Lot: LotPads, Optional: true},
			{Key: "final", Title: "Side preload was final before", Kind: FieldChoice, Options: []Option{fine("yes"), look("no", "Setting it later moves the crown wheel against the peg.")}},
			{Key: "spot", Title: "Nipped up to touch at the", Kind: FieldChoice, Options: []Option{fine(string(setup.TightSpot)), look(string(setup.SlackSpot), "The run-out comes off the gap."), look(string(setup.UnknownSpot), "The run-out comes off the gap.")},
				Hint: "Turn the wheel right round to find where its back face comes nearest."},
			{Key: "pitch", Title: "Screw pitch", Kind: FieldFigure, Whole: true, Limits: []Limit{between(0.75, 2.5, "M8 to M20", custom)}, Dim: quantity.Length, Unit: "mm"},
			{Key: "angle", Title: "Backed off by", Kind: FieldFigure, Dim: quantity.Angle, Unit: "deg"},
			{Key: "gap", Title: "Gap after locking", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Places: []string{string(setup.TightSpot), "1", "2", "3", "4"}, Wanted: 4,
				Bands: items(setup.PegTight, setup.PegSlack, setup.PegGap),
				Hint:  "Feeler strips. Locking moves it by 0.03 to 0.08 mm."},
			{Key: "nut", Title: "Lock nut torqued to", Kind: FieldFigure, Dim: quantity.Torque, Unit: "N·m", Bands: items(setup.PegLockTorque)},
			{Key: "touches", Title: "Wheel turned once: the peg", Kind: FieldChoice, Options: []Option{fine(PegClear), halt(PegTouches, "A peg that always touches burns.")}},
		},
		Cautions: []string{"The wheel is turned by hand, fingers away from teeth and peg."},
	},
}

// pictured makes options that are line drawings to tap. A mark in the middle of
// the tooth is right; any other is worth a look.
func pictured[T ~string](drawn string, all []T) []Option {
	var options []Option
	for _, w := range all {
		o := Option{Word: string(w), Verdict: NotYet, Picture: drawn + ": " + string(w)}
		switch any(w) {
		case setup.MidLength, setup.TowardsToe, setup.MidHeight, setup.EvenShape, setup.NarrowBand:
			o.Verdict = Fine
		case setup.TaperedDepth, setup.ParallelDepth, setup.UnknownDepth:
		default:
			o.Verdict = Look
		}
		options = append(options, o)
	}
	return options
}

// The words for how the dial of the lash stood.
const (
	DialAlong  = "along the turn"
	DialSquare = "square to the tooth"
)

// The words on which the stop of the peg turns.
const (
	PegClear   = "clears all round"
	PegTouches = "touches"
)
