package web

import "axlewright/setup"

var asksShim = []ask{
	{
		Key: "marks", Title: "Pinion shim from the marks", Steps: steps("shim", "strip"),
		About:  "The first shim, from the one that came out and the marks on both pinions.",
		Fields: []askField{pushField, length("old", "Shim that came out", "strip", "old_shim"), hint(plain("old_mark", "Mark on the old pinion"), "with its sign: -2, 0, +3"), hint(plain("new_mark", "Mark on the new pinion"), "with its sign"), markUnit, markPlus, kindField},
		Work: func(in asked) (setup.Answer, error) {
			r, err := setup.ShimFromMarks(setup.ShimByMarks{Spec: in.spec(), ThickerPushes: setup.Push(in.word("push")), OldShim: in.reading("old"), OldMark: in.mark("old_mark"), NewMark: in.mark("new_mark")})
			return r.Answer, err
		},
	},
	{
		Key: "distance", Title: "Pinion shim from the mounting distance", Steps: steps("shim"),
		About:  "From a mounting distance measured directly with the pinion in.",
		Fields: []askField{pushField, hint(length("fitted", "Shim in place when it was measured"), "0 for none"), length("nominal", "Mounting distance of a pinion marked zero"), hint(plain("mark", "Mark on this pinion"), "with its sign"), markUnit, markPlus, length("measured", "Mounting distance as measured"), kindField},
		Work: func(in asked) (setup.Answer, error) {
			r, err := setup.ShimFromDistance(setup.ShimByDistance{Spec: in.spec(), ThickerPushes: setup.Push(in.word("push")), Fitted: in.reading("fitted"), Nominal: in.reading("nominal"), Mark: in.mark("mark"), Method: setup.Directly, Measured: in.reading("measured")})
			return r.Answer, err
		},
	},
	{
		Key: "bores-dial", Title: "Pinion shim from a dial in both bores", Steps: steps("shim"),
		About: "Dial zeroed on the maker’s block, then to the lowest point of each side bore.",
		Fields: []askField{pushField, hint(length("fitted", "Shim in place when it was measured"), "0 for none"), length("nominal", "Mounting distance of a pinion marked zero"), hint(plain("mark", "Mark on this pinion"), "with its sign"), markUnit, markPlus,
			length("left", "Left bore, as read"), {Key: "left_stem", Title: "The stem there went", Options: words([]setup.StemMove{setup.StemOut, setup.StemIn})},
			length("right", "Right bore, as read"), {Key: "right_stem", Title: "The stem there went", Options: words([]setup.StemMove{setup.StemOut, setup.StemIn})}, kindField},
		Work: func(in asked) (setup.Answer, error) {
			r, err := setup.ShimFromDistance(setup.ShimByDistance{Spec: in.spec(), ThickerPushes: setup.Push(in.word("push")), Fitted: in.reading("fitted"), Nominal: in.reading("nominal"), Mark: in.mark("mark"), Method: setup.BothBores,
				Left:  setup.BoreReading{Amount: in.reading("left"), Stem: setup.StemMove(in.word("left_stem"))},
				Right: setup.BoreReading{Amount: in.reading("right"), Stem: setup.StemMove(in.word("right_stem"))}})
			return r.Answer, err
		},
	},
	{
		Key: "gauge", Title: "Pinion shim from a maker’s gauge", Steps: steps("shim"),
		About:  "From the gap that a maker’s gauge leaves.",
		Fields: []askField{pushField, hint(length("fitted", "Shim in place when the gap was read"), "0 for none"), length("gap", "Gap under the gauge"), hint(length("allowance", "The maker’s allowance"), "0 for none"), {Key: "page", Title: "Page where the maker says so", Optional: true}, hint(plain("mark", "Mark on this pinion"), "with its sign"), markUnit, markPlus, kindField},
		Work: func(in asked) (setup.Answer, error) {
			r, err := setup.ShimFromGap(setup.ShimByGap{Spec: in.spec(), ThickerPushes: setup.Push(in.word("push")), Fitted: in.reading("fitted"), Gap: in.reading("gap"), Allowance: in.reading("allowance"), Page: in.word("page"), Mark: in.mark("mark")})
			return r.Answer, err
		},
	},
	{
		Key: "depth", Title: "Pinion shim from the bare casting", Steps: steps("shim", "nose"),
		About:  "From the depth of the casting, the bearing and the pinion, before anything is fitted.",
		Fields: []askField{pushField, length("depth", "Side axis to the seat of the shim"), length("nominal", "Mounting distance of a pinion marked zero"), hint(plain("mark", "Mark on this pinion"), "with its sign"), markUnit, markPlus, length("bearing", "Head bearing over cup and cone"), kindField},
		Work: func(in asked) (setup.Answer, error) {
			r, err := setup.ShimFromDepth(setup.ShimByDepth{Spec: in.spec(), ThickerPushes: setup.Push(in.word("push")), Depth: in.reading("depth"), Distance: in.reading("nominal"), Mark: in.mark("mark"), Bearing: in.reading("bearing")})
			return r.Answer, err
		},
	},
	{
		Key: "bearing", Title: "Shim after another head bearing", Steps: steps("shim", "nose"),
		About:  "The pinion stays where it was; the bearing is of another height.",
		Fields: []askField{pushField, length("old", "Shim that came out", "strip", "old_shim"), length("old_stack", "Old head bearing over cup and cone"), length("new_stack", "New one"), kindField},
		Work: func(in asked) (setup.Answer, error) {
			r, err := setup.ShimForOtherBearing(setup.ShimForBearing{Spec: in.spec(), ThickerPushes: setup.Push(in.word("push")), OldShim: in.reading("old"), OldStack: in.reading("old_stack"), NewStack: in.reading("new_stack")})
			return r.Answer, err
		},
	},
	{
		Key: "pack", Title: "Nearest pack from the shims in stock", Steps: steps("shim"),
		About:  "From what is free on the shelf now.",
		Fields: []askField{length("wanted", "Shim wanted", "shim", "wanted"), optional(pushField), {Key: "axle", Title: "Only lots named", Optional: true, Hint: "words of the lot’s name"}, kindField},
		Work: func(in asked) (setup.Answer, error) {
			r, err := setup.NearestPack(setup.PackChoice{Spec: in.spec(), Wanted: in.number("wanted"), Stock: in.stock, ThickerPushes: setup.Push(in.word("push"))})
			return r.Answer, err
		},
	},
}
