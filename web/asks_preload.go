package web

import (
	"axlewright/calc/bolt"
	"axlewright/quantity"
	"axlewright/setup"
)

var asksPreload = []ask{
	{
		Key: "preload", Title: "Pinion preload", Steps: steps("preload"),
		About: "Turning torque by wrench, or by string and spring balance; seal in or out.",
		Fields: []askField{
			{Key: "bearings", Title: "Bearings", Options: words([]setup.Bearings{setup.NewBearings, setup.UsedBearings}), From: slotAt("preload", "bearings", "")},
			{Key: "seal", Title: "Seal", Options: words([]setup.Seal{setup.SealOut, setup.SealIn}), From: slotAt("preload", "seal", "")},
			optional(turning("own_seal", "Drag of this seal, where measured")),
			{Key: "tool", Title: "Read with", Options: words([]setup.TorqueTool{setup.TorqueWrench, setup.SpringBalance})},
			hint(optional(turning("torque", "Torque", "preload", "torque")), "of the wrench"),
			{Key: "pull", Title: "Pull of the balance", Dim: quantity.Force, Unit: "N", Optional: true, Hint: "of the string"},
			hint(optional(length("radius", "Radius of the string")), "from the axis"),
			{Key: "when", Title: "Read", Options: words([]setup.Turning{setup.WhileTurning, setup.BreakingAway})}, kindField},
		Work: func(in asked) (setup.Answer, error) {
			r, err := setup.JudgePinionPreload(setup.PinionPreload{Spec: in.spec(), Bearings: setup.Bearings(in.word("bearings")), Seal: setup.Seal(in.word("seal")), OwnSeal: in.reading("own_seal"), Tool: setup.TorqueTool(in.word("tool")), Torque: in.reading("torque"), Pull: in.reading("pull"), Radius: in.reading("radius"), When: setup.Turning(in.word("when"))})
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
		Fields: []askField{length("before", "Over the caps, before"), length("after", "Over the caps, after"), optional(turning("left_feel", "Torque at the left adjuster at the end")), optional(turning("right_feel", "Torque at the right adjuster at the end")),
			{Key: "spreader", Title: "Stretched with a spreader", Options: []string{"no", "yes"}, Optional: true}, kindField},
		Work: func(in asked) (setup.Answer, error) {
			r, err := setup.SideSpreadByMicrometer(setup.CapSpread{Spec: in.spec(), Before: []setup.Reading{in.reading("before")}, After: []setup.Reading{in.reading("after")}, LeftFeel: in.reading("left_feel"), RightFeel: in.reading("right_feel"), BySpreader: in.word("spreader") == "yes"})
			return r.Answer, err
		},
	},
	{
		Key: "notches", Title: "Side preload by notches", Steps: steps("side"),
		About:  "Counted from zero float, each adjuster.",
		Fields: together(adjusterFields, []askField{plain("left", "Left, notches past zero float"), plain("right", "Right, notches past zero float"), kindField}),
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
}
