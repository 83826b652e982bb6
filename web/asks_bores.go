package web

import "axlewright/setup"

func boreFields(side string, from string) []askField {
	return []askField{length(side+"_along", titleCase(side)+" bore, 0°, along the joint", "cooled", from, "0°"), length(side+"_aslant", titleCase(side)+" bore, 45°", "cooled", from, "45°"), length(side+"_across", titleCase(side)+" bore, 90°", "cooled", from, "90°")}
}

func (in asked) bore(side string) setup.Bore {
	return setup.Bore{Along: in.reading(side + "_along"), Aslant: in.reading(side + "_aslant"), Across: in.reading(side + "_across")}
}

var asksBores = []ask{
	{
		Key: "bores", Title: "Accept, scrape, line-bore or scrap", Steps: steps("cooled", "bores"),
		About: "Both side bores, with the caps torqued.",
		Fields: together([]askField{{Key: "caps", Title: "Caps", Options: words([]setup.Caps{setup.CapsTorqued, setup.CapsNotTorqued}), From: slotAt("bores", "caps", "")},
			{Key: "cracked", Title: "Crack into a bore or an ear", Options: []string{"no", "yes"}}}, boreFields("left", "bore_crown"), boreFields("right", "bore_other"),
			[]askField{{Key: "mandrel", Title: "Mandrel through both", Options: words([]setup.Mandrel{setup.MandrelFree, setup.MandrelStiff, setup.MandrelBlocks})}, optional(length("feeler", "Thickest feeler beside it")),
				optional(length("line", "One bore off the line of the other", "bores", "line")), hint(optional(length("line_over", "Over this length")), "140 mm"), optional(length("axis", "Pinion axis off its place", "bores", "offset")),
				optional(length("square", "Swing of the dial round the mandrel", "bores", "square")), hint(optional(length("square_over", "Over this length")), "100 mm"), kindField}),
		Work: func(in asked) (setup.Answer, error) {
			r, err := setup.JudgeBores(setup.BoreCheck{Spec: in.spec(), Caps: setup.Caps(in.word("caps")), Cracked: in.word("cracked") == "yes", Left: in.bore("left"), Right: in.bore("right"), Mandrel: setup.Mandrel(in.word("mandrel")), Feeler: in.reading("feeler"),
				OffLine: in.reading("line"), LineLength: in.reading("line_over"), AxisOff: in.reading("axis"), SquareOff: in.reading("square"), SquareLen: in.reading("square_over")})
			return r.Answer, err
		},
	},
}
