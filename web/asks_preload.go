package web

import (
	"axlewright/calc/bearing"
	"axlewright/calc/bolt"
	"axlewright/quantity"
	"axlewright/setup"
)

var (
	bearingsField = askField{Key: "bearings", Title: "Bearings", Options: words(setup.AllBearings), From: record("preload", "bearings")}
	notchSides    = []askField{from(plain("left", "Left, notches past zero float"), sided(setup.Left, "side", "notches")), from(plain("right", "Right, notches past zero float"), sided(setup.Right, "side", "notches"))}
)

// bearingFields describe one taper roller bearing of the pinion.
func bearingFields(key, title string) []askField {
	return []askField{hint(length(key+"_dm", title+": mean diameter"), "mean of bore and outside"), hint(plain(key+"_y", title+": axial factor Y"), "of its maker’s table"), hint(angle(key+"_cup", title+": half angle of the cup"), "such as 15"),
		hint(angle(key+"_taper", title+": half taper of a roller"), "half of cup angle less cone angle"), plain(key+"_count", title+": rollers"), hint(length(key+"_length", title+": length of a roller"), "without the rounded ends"),
		hint(optional(length(key+"_rib", title+": where its end touches the rib")), "left out, a sixtieth of its mean diameter")}
}

func (in asked) bearing(key string) setup.PinionBearing {
	b := setup.PinionBearing{
		Drag:    bearing.PreloadedBearing{MeanDiameter: in.number(key + "_dm"), Y: in.number(key + "_y"), HalfTaper: in.number(key + "_taper"), RibHeight: in.number(key + "_rib")},
		Rollers: bearing.Rollers{Count: in.whole(key + "_count"), Length: in.number(key + "_length"), CupAngle: in.number(key + "_cup"), PitchDiameter: in.number(key + "_dm")},
	}
	if b.Drag.RibHeight == 0 {
		b.Drag.RibHeight = b.Drag.MeanDiameter / 60
	}
	return b
}

var asksPreload = []ask{
	{
		Key: "preload", Title: "Pinion preload", Steps: steps("preload"),
		About: "Turning torque by wrench, or by string and spring balance; seal in or out.",
		Fields: []askField{
			bearingsField,
			{Key: "seal", Title: "Seal", Options: words(setup.AllSeals), From: record("preload", "seal")},
			optional(turning("own_seal", "Drag of this seal, where measured", "preload", "own_seal")),
			{Key: "tool", Title: "Read with", Options: words(setup.TorqueTools), From: record("preload", "tool")},
			hint(optional(turning("torque", "Torque", "preload", "torque")), "of the wrench"),
			hint(optional(figure(quantity.Force, "N", "pull", "Pull of the balance", []string{"preload", "pull"})), "of the string"),
			hint(optional(length("radius", "Radius of the string", "preload", "radius")), "from the axis"),
			{Key: "when", Title: "Read", Options: words([]setup.Turning{setup.WhileTurning, setup.BreakingAway}), From: record("preload", "when")}, kindField},
		Work: func(in asked) (setup.Answer, error) {
			r, err := setup.JudgePinionPreload(setup.PinionPreload{Spec: in.spec(), Bearings: setup.Bearings(in.word("bearings")), Seal: setup.Seal(in.word("seal")), OwnSeal: in.reading("own_seal"), Tool: setup.TorqueTool(in.word("tool")), Torque: in.reading("torque"), Pull: in.reading("pull"), Radius: in.reading("radius"), When: setup.Turning(in.word("when"))})
			if err == nil && in.word("tool") == string(setup.SpringBalance) && r.Torque > 0 {
				in.keep("preload", "torque", r.Torque, quantity.Torque)
			}
			return r.Answer, err
		},
	},
	{
		Key: "spacer", Title: "Spacer for a wanted preload", Steps: steps("preload"),
		About:  "How much thinner the solid spacer has to be, from the drag now and the two bearings.",
		Fields: together([]askField{bearingsField, hint(turning("drag", "Drag of the bearings alone"), "seal taken off"), hint(optional(turning("wanted", "Drag wanted")), "left out, the middle of the range")}, bearingFields("head", "Head bearing"), bearingFields("tail", "Tail bearing"), []askField{kindField}),
		Work: func(in asked) (setup.Answer, error) {
			r, err := setup.SpacerFor(setup.SpacerChange{Spec: in.spec(), Bearings: setup.Bearings(in.word("bearings")), Drag: in.reading("drag"), Wanted: in.number("wanted"), Pair: [2]setup.PinionBearing{in.bearing("head"), in.bearing("tail")}})
			return r.Answer, err
		},
	},
	{
		Key: "total", Title: "Turning torque with the crown wheel in", Steps: steps("side"),
		About:  "Whether the side bearings add what they should.",
		Fields: []askField{turning("pinion", "Pinion alone", "preload", "torque"), turning("with", "With the crown wheel in", "side", "total"), kindField},
		Work: func(in asked) (setup.Answer, error) {
			return setup.JudgeTotalTorque(setup.TotalTorque{Spec: in.spec(), Pinion: in.reading("pinion"), Total: in.reading("with")})
		},
	},
	{
		Key: "spread", Title: "Side preload by the spread of the caps", Steps: steps("side"),
		About: "The distance over the caps before and after the adjusters were tightened.",
		Fields: []askField{length("before", "Over the caps, before", "side", "before"), length("after", "Over the caps, after", "side", "after"), optional(turning("left_feel", "Torque at the left adjuster at the end")), optional(turning("right_feel", "Torque at the right adjuster at the end")),
			{Key: "spreader", Title: "Stretched with a spreader", Options: []string{"no", "yes"}, Optional: true}, kindField},
		Work: func(in asked) (setup.Answer, error) {
			r, err := setup.SideSpreadByMicrometer(setup.CapSpread{Spec: in.spec(), Before: []setup.Reading{in.reading("before")}, After: []setup.Reading{in.reading("after")}, LeftFeel: in.reading("left_feel"), RightFeel: in.reading("right_feel"), BySpreader: in.word("spreader") == "yes"})
			if err == nil && r.Spread > 0 {
				in.keep("side", "spread", r.Spread, quantity.Length)
			}
			return r.Answer, err
		},
	},
	{
		Key: "notches", Title: "Side preload by notches", Steps: steps("side"),
		About:  "Counted from zero float, each adjuster.",
		Fields: together(adjusterFields, notchSides, []askField{kindField}),
		Work: func(in asked) (setup.Answer, error) {
			r, err := setup.SidePreloadByNotches(setup.NotchPreload{Spec: in.spec(), Adjusters: in.adjusters(), Left: in.reading("left"), Right: in.reading("right")})
			return r.Answer, err
		},
	},
	{
		Key: "bolt", Title: "What a torque does to a bolt", Steps: steps("caps", "assemble"),
		About: "Preload and how much of the proof load it uses.",
		Fields: []askField{{Key: "joint", Title: "Bolts of", Options: []string{"cap bolts", "crown wheel bolts", "other"}}, {Key: "thread", Title: "Thread", Hint: "M12x1.75 or 7/16-20 UNF"}, {Key: "grade", Title: "Grade on the head", Hint: "10.9, 8, or “unmarked”"},
			{Key: "finish", Title: "Threads", Options: words([]setup.Finish{setup.Oiled, setup.Dry})}, {Key: "washer", Title: "Washer", Options: words([]setup.Washer{setup.NoWasher, setup.PlainWasher, setup.HardenedWasher, setup.WedgeWasher})},
			turning("torque", "Torque"), {Key: "source", Title: "Where the torque is from", Hint: "maker’s page, shop’s own"}, kindField},
		Work: func(in asked) (setup.Answer, error) {
			r, err := setup.JudgeTightening(in.spec(), setup.Tightening{Joint: in.word("joint"), Thread: bolt.Designation(in.word("thread")), Grade: in.word("grade"), Finish: setup.Finish(in.word("finish")), Washer: setup.Washer(in.word("washer")), Source: in.word("source"), Torque: in.reading("torque")})
			return r.Answer, err
		},
	},
	{
		Key: "columns", Title: "Oiled and dry columns of a torque table", Steps: steps("caps", "assemble"),
		About:  "Whether the two columns of a table were swapped.",
		Fields: []askField{turning("oiled", "Torque oiled, as printed"), turning("dry", "Torque dry, as printed")},
		Work: func(in asked) (setup.Answer, error) {
			return setup.CompareColumns(in.reading("oiled"), in.reading("dry"))
		},
	},
	{
		Key: "range", Title: "One reading beside its range", Steps: nil,
		About: "For readings that need no sum: a feeler behind a cup, run-out of the pinion flange, drag of the diff centre alone.",
		Fields: []askField{{Key: "item", Title: "Reading of", Options: words(setup.Items())},
			{Key: "value", Title: "Reading", Hint: "with its unit: 0.04 mm, 0.6 N·m, 1.2′"}, kindField, peggedField},
		Work: func(in asked) (setup.Answer, error) {
			item := setup.Item(in.word("item"))
			text := in.word("value")
			if item == "" || text == "" {
				return waiting("what was read, and the reading"), nil
			}
			q, err := quantity.Parse(text, item.Dim())
			if err != nil {
				return setup.Answer{}, err
			}
			return setup.Judge(in.spec(), item, setup.Typed(q))
		},
	},
}
