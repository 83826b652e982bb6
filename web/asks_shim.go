package web

import (
	"axlewright/quantity"
	"axlewright/setup"
)

// shim keeps the thickness that a sum asks for.
func (in asked) shim(r setup.ShimResult, err error) (setup.Answer, error) {
	if err == nil && r.State != setup.NotYet && r.Shim > 0 {
		in.keep("shim", "wanted", r.Shim, quantity.Length)
	}
	return r.Answer, err
}

var (
	nominalField = length("nominal", "Mounting distance of a pinion marked zero", "shim", "nominal")
	inPlaceField = hint(length("fitted", "Shim in place when it was measured", "shim", "in_place"), "0 for none")
	oldShimField = length("old", "Shim that came out", "strip", "old_shim")
	marking      = []askField{newMark, markUnit, markPlus}
)

var asksShim = []ask{
	{
		Key: "marks", Title: "Pinion shim from the marks", Steps: steps("shim"),
		About:  "The first shim, from the one that came out and the marks on both pinions.",
		Fields: []askField{pushField, oldShimField, hint(plain("old_mark", "Mark on the old pinion", "strip", "old_mark"), "with its sign: -2, 0, +3"), from(hint(plain("new_mark", "Mark on the new pinion"), "with its sign"), newMark.From), markUnit, markPlus, kindField},
		Work: func(in asked) (setup.Answer, error) {
			return in.shim(setup.ShimFromMarks(setup.ShimByMarks{Spec: in.spec(), ThickerPushes: setup.Push(in.word("push")), OldShim: in.reading("old"), OldMark: in.mark("old_mark"), NewMark: in.mark("new_mark")}))
		},
	},
	{
		Key: "distance", Title: "Pinion shim from the mounting distance", Steps: steps("shim"),
		About:  "From a mounting distance measured directly with the pinion in.",
		Fields: together([]askField{pushField, inPlaceField, nominalField}, marking, []askField{length("measured", "Mounting distance as measured", "shim", "distance"), kindField}),
		Work: func(in asked) (setup.Answer, error) {
			return in.shim(setup.ShimFromDistance(setup.ShimByDistance{Spec: in.spec(), ThickerPushes: setup.Push(in.word("push")), Fitted: in.reading("fitted"), Nominal: in.reading("nominal"), Mark: in.mark("mark"), Method: setup.Directly, Measured: in.reading("measured")}))
		},
	},
	{
		Key: "arbor", Title: "Pinion shim from a block up to an arbor", Steps: steps("shim"),
		About: "Gauge block on the pinion, gap up to an arbor in the side bores.",
		Fields: together([]askField{pushField, inPlaceField, nominalField}, marking, []askField{hint(length("block", "Height of the gauge block"), "the step that was used"), length("gap", "Gap from the block to the arbor"), length("arbor", "Diameter of the arbor"),
			hint(optional(length("face", "From the block’s face to the face the distance counts from")), "left out where they are one"), kindField}),
		Work: func(in asked) (setup.Answer, error) {
			return in.shim(setup.ShimFromDistance(setup.ShimByDistance{Spec: in.spec(), ThickerPushes: setup.Push(in.word("push")), Fitted: in.reading("fitted"), Nominal: in.reading("nominal"), Mark: in.mark("mark"), Method: setup.OverArbor,
				Block: in.reading("block"), Gap: in.reading("gap"), Arbor: in.reading("arbor"), Face: in.reading("face")}))
		},
	},
	{
		Key: "bores-dial", Title: "Pinion shim from a dial in both bores", Steps: steps("shim"),
		About: "Dial zeroed on the maker’s block, then to the lowest point of each side bore.",
		Fields: together([]askField{pushField, inPlaceField, nominalField}, marking, []askField{
			length("left", "Crown-side bore, as read", "shim", "gauge", "crown side"), {Key: "left_stem", Title: "The stem there went", Options: words(setup.StemMoves), From: record("shim", "stem", "crown side")},
			length("right", "Other bore, as read", "shim", "gauge", "other side"), {Key: "right_stem", Title: "The stem there went", Options: words(setup.StemMoves), From: record("shim", "stem", "other side")}, kindField}),
		Work: func(in asked) (setup.Answer, error) {
			return in.shim(setup.ShimFromDistance(setup.ShimByDistance{Spec: in.spec(), ThickerPushes: setup.Push(in.word("push")), Fitted: in.reading("fitted"), Nominal: in.reading("nominal"), Mark: in.mark("mark"), Method: setup.BothBores,
				Left:  setup.BoreReading{Amount: in.reading("left"), Stem: setup.StemMove(in.word("left_stem"))},
				Right: setup.BoreReading{Amount: in.reading("right"), Stem: setup.StemMove(in.word("right_stem"))}}))
		},
	},
	{
		Key: "gauge", Title: "Pinion shim from a maker’s gauge", Steps: steps("shim"),
		About:  "From the gap that a maker’s gauge leaves.",
		Fields: together([]askField{pushField, inPlaceField, length("gap", "Gap under the gauge"), hint(length("allowance", "The maker’s allowance"), "0 for none"), {Key: "page", Title: "Page where the maker says so", Optional: true}}, marking, []askField{kindField}),
		Work: func(in asked) (setup.Answer, error) {
			return in.shim(setup.ShimFromGap(setup.ShimByGap{Spec: in.spec(), ThickerPushes: setup.Push(in.word("push")), Fitted: in.reading("fitted"), Gap: in.reading("gap"), Allowance: in.reading("allowance"), Page: in.word("page"), Mark: in.mark("mark")}))
		},
	},
	{
		Key: "depth", Title: "Pinion shim from the bare casting", Steps: steps("shim", "nose"),
		About:  "From the depth of the casting, the bearing and the pinion, before anything is fitted.",
		Fields: together([]askField{pushField, length("depth", "Side axis to the seat of the shim"), nominalField}, marking, []askField{length("bearing", "Head bearing over cup and cone", "nose", "new_stack"), kindField}),
		Work: func(in asked) (setup.Answer, error) {
			return in.shim(setup.ShimFromDepth(setup.ShimByDepth{Spec: in.spec(), ThickerPushes: setup.Push(in.word("push")), Depth: in.reading("depth"), Distance: in.reading("nominal"), Mark: in.mark("mark"), Bearing: in.reading("bearing")}))
		},
	},
	{
		Key: "bearing", Title: "Shim after another head bearing", Steps: steps("shim", "nose"),
		About:  "The pinion stays where it was; the bearing is of another height.",
		Fields: []askField{pushField, oldShimField, length("old_stack", "Old head bearing over cup and cone", "nose", "old_stack"), length("new_stack", "New one", "nose", "new_stack"), kindField},
		Work: func(in asked) (setup.Answer, error) {
			return in.shim(setup.ShimForOtherBearing(setup.ShimForBearing{Spec: in.spec(), ThickerPushes: setup.Push(in.word("push")), OldShim: in.reading("old"), OldStack: in.reading("old_stack"), NewStack: in.reading("new_stack")}))
		},
	},
	{
		Key: "pack", Title: "Nearest pack from the shims in stock", Steps: steps("shim"),
		About:  "From what is free on the shelf now.",
		Fields: []askField{from(length("wanted", "Shim wanted"), firstOf(record("shim", "wanted"), shimOfMarks)), optional(pushField), kindField},
		Work: func(in asked) (setup.Answer, error) {
			wanted := in.reading("wanted")
			if !wanted.Taken {
				return waiting("the shim that is wanted"), nil
			}
			r, err := setup.NearestPack(setup.PackChoice{Spec: in.spec(), Wanted: wanted.SI, Stock: in.stock, ThickerPushes: setup.Push(in.word("push"))})
			return r.Answer, err
		},
	},
}
