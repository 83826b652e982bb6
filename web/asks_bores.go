package web

import (
	"axlewright/quantity"
	"axlewright/setup"
	"axlewright/shop"
)

// boreFields are three diameters of one bore. where are the boxes of the record
// that have them, the newest measurement first.
func boreFields(key, title string, where ...[2]string) []askField {
	var all []askField
	for _, d := range []struct{ name, at, words string }{{"_along", "0°", ", 0°, along the joint"}, {"_aslant", "45°", ", 45°"}, {"_across", "90°", ", 90°, through the cap"}} {
		var sources []source
		for _, w := range where {
			sources = append(sources, record(shop.StepKey(w[0]), w[1], d.at))
		}
		all = append(all, from(length(key+d.name, title+d.words), firstOf(sources...)))
	}
	return all
}

func (in asked) bore(key string) setup.Bore {
	return setup.Bore{Along: in.reading(key + "_along"), Aslant: in.reading(key + "_aslant"), Across: in.reading(key + "_across")}
}

var (
	capsField    = askField{Key: "caps", Title: "Caps", Options: words([]setup.Caps{setup.CapsTorqued, setup.CapsNotTorqued}), From: firstOf(record("bores", "caps"), record("cooled", "caps"))}
	crackedField = askField{Key: "cracked", Title: "Crack into a bore or an ear", Options: []string{"no", "yes"}, From: yesIf("clean", "cracks", shop.CrackEar, shop.CrackBore)}
	mandrelField = askField{Key: "mandrel", Title: "Mandrel through both", Options: words([]setup.Mandrel{setup.MandrelFree, setup.MandrelStiff, setup.MandrelBlocks}), From: firstOf(record("bores", "mandrel"), record("cooled", "mandrel"))}

	crownNow = boreFields("left", "Crown-side bore", [2]string{"bores", "bore_crown"}, [2]string{"cooled", "bore_crown"})
	otherNow = boreFields("right", "Other bore", [2]string{"bores", "bore_other"}, [2]string{"cooled", "bore_other"})
)

const crownSide, otherSide = "crown-side", "other"

// boreCheck is what was read of the bores as they are.
func (in asked) boreCheck() setup.BoreCheck {
	return setup.BoreCheck{Spec: in.spec(), Caps: setup.Caps(in.word("caps")), Cracked: in.word("cracked") == "yes", LeftIs: crownSide, RightIs: otherSide,
		Left: in.bore("left"), Right: in.bore("right"), Mandrel: setup.Mandrel(in.word("mandrel")), Feeler: in.reading("feeler"),
		OffLine: in.reading("line"), LineLength: in.over("line"), AxisOff: in.reading("axis"), SquareOff: in.reading("square"), SquareLen: in.over("square")}
}

// over is the length that an error was read over: as typed, else as the boxes of
// the record have it.
func (in asked) over(key string) setup.Reading {
	if r := in.reading(key + "_over"); r.Taken || !in.reading(key).Taken {
		return r
	}
	f, _ := shop.FieldOf("bores", key)
	return setup.Read(f.Bands[0].Over)
}

var asksBores = []ask{
	{
		Key: "bores", Title: "Accept, scrape, line-bore or scrap", Steps: steps("cooled", "bores"),
		About: "Both side bores, with the caps torqued.",
		Fields: together([]askField{capsField, crackedField}, crownNow, otherNow,
			[]askField{mandrelField, optional(length("feeler", "Thickest feeler beside it", "bores", "feeler")),
				optional(length("line", "One bore off the line of the other", "bores", "line")), hint(optional(length("line_over", "Over this length")), "left out, 140 mm"), optional(length("axis", "Pinion axis off its place", "bores", "offset")),
				from(optional(length("square", "Swing of the dial round the mandrel")), firstOf(record("bores", "square"), record("cooled", "square"))), hint(optional(length("square_over", "Over this length")), "left out, 100 mm"), kindField}),
		Work: func(in asked) (setup.Answer, error) {
			r, err := setup.JudgeBores(in.boreCheck())
			return r.Answer, err
		},
	},
	{
		Key: "weld", Title: "What welding did to the bores", Steps: steps("cooled"),
		About: "The bores before and after, measured the same way; what warmth grows them by is taken off.",
		Fields: together([]askField{capsField, crackedField}, boreFields("left_was", "Before: crown-side bore", [2]string{"jig", "bore_crown"}), boreFields("right_was", "Before: other bore", [2]string{"jig", "bore_other"}),
			crownNow, otherNow, []askField{mandrelField, optional(warmth("before_temp", "Casting before, at")), optional(warmth("after_temp", "Casting after, at")), kindField}),
		Work: func(in asked) (setup.Answer, error) {
			after := in.boreCheck()
			before := setup.BoreCheck{Spec: after.Spec, Caps: setup.CapsTorqued, Left: in.bore("left_was"), Right: in.bore("right_was"), Mandrel: after.Mandrel, LeftIs: crownSide, RightIs: otherSide}
			r, err := setup.CompareBores(setup.BoresAroundWelding{Spec: after.Spec, Before: before, After: after, BeforeTemp: in.reading("before_temp"), AfterTemp: in.reading("after_temp"),
				BeforeGauge: in.instrument("jig", "bore_crown"), AfterGauge: in.instrument("cooled", "bore_crown")})
			return r.Answer, err
		},
	},
}

func warmth(key, title string) askField {
	return figure(quantity.Temperature, "°C", key, title, nil)
}

// instrument is what a reading of the record was taken with, "" where that is not known.
func (in asked) instrument(step shop.StepKey, item string) string {
	if in.job == nil {
		return ""
	}
	for _, e := range in.job.All(step, item) {
		return e.Instrument
	}
	return ""
}
