// Package sample holds invented advice for the tests of pictures and papers:
// one as it comes from the bench, and ones with the longest words and the
// wildest figures that a paper must stand.
package sample

import (
	"cmp"
	"math"
	"slices"

	"axlewright/assess"
	"axlewright/axle"
	"axlewright/calc/gear"
	"axlewright/calc/traction"
)

// Advice is an answer of the usual size for an invented enquiry.
func Advice() *assess.Advice {
	a := &assess.Advice{
		Enquiry: "E-0412", Customer: "Hollin Bank Farm", Casting: "T24", Gears: "T24-354",
		Mounting: axle.Mounting{Position: axle.Rear, Forward: gear.Drive},
		From: []assess.Given{{Name: "axle load", Text: "1,450 kg (3,197 lb)"}, {Name: "tyre", Text: "235/85R16"}, {Name: "engine torque", Text: "190 N·m (140.1 lbf·ft)"},
			{Name: "gearing", Text: "first 3.6, low range 3.3, axle 3.54"}, {Name: "grip", Text: "0.7"}, {Name: "use", Text: "farm and towing"}},
		Draws: 2000, Seed: 1, Wanted: 0.9, Distance: 60000,
		Demand: assess.Demand{
			Engine: band(13600, 0.1), Grip: band(5900, 0.17), Governing: band(5900, 0.17), Peak: band(8300, 0.26),
			Limit: traction.Grip, Share: 0.99,
			Why:     "the engine in its lowest gear could send 2.3 times what the tyres hold, so grip sets the limit: axle load, tyre radius and ground matter, power does not",
			Forward: 1, Backward: 0.6, Index: 1.84, IndexText: "1.84 times what this vehicle asked of the axle as its maker sold it",
		},
		Verdict: assess.Strengthen, Best: 2, Recommended: 2, NextUp: 4,
		NextFixes: "It raises: head bearing dents and cap walks. It leaves as it is: pinion tooth root.",
		Peg: assess.PegView{
			Offered: true, Gain: 0.004, Longer: 0.011, Flank: gear.Coast, Curve: pegCurve(),
			Text: "No peg. The teeth push the crown wheel off the pinion with 4.3 kN for each 1,000 N·m on the drive side and 11.8 kN on the coast side; this axle pulls forward on its drive side. Added to better cap bolts it moves the chance of carrying the demand by +0 points and the median give-out torque by +1 %: not worth its money here.",
		},
		Rules: []assess.Rule{
			{Because: "towing", Text: "Steady load is heat and bearing life, not shock: see to oil level and grade, a free breather and the bearings first; plates do not cool. Stop and look if the case climbs past 120 °C (248 °F)."},
			{Because: "demand index 1.84", Text: "The trade's starting band for it is a peg if it works in front, in reverse or under shock, else better fixings. The index knows nothing of links, duty or flanks; the sums above go before it."},
		},
		Shares: []assess.Share{
			{Figure: "shock factor", Share: 0.41, Origin: axle.Assumed}, {Figure: "cap bolts: nut factor (torque to preload)", Share: 0.22, Origin: axle.Trade},
			{Figure: "strength of this casting's metal", Share: 0.12, Origin: axle.Assumed}, {Figure: "casting stiffness", Share: 0.07, Origin: axle.Computed},
			{Figure: "tyre: loaded radius", Share: 0.04, Origin: axle.Measured}, {Figure: "head bearing: basic rating", Share: 0.02, Origin: axle.Maker},
		},
		Measure: []assess.Narrow{
			{How: "torque-angle trace of the cap bolts at assembly", Cost: 18, Before: 4200, After: 3500},
			{How: "hardness of the casting at three places", Cost: 12, Before: 4200, After: 3900},
		},
		Unknown: []string{
			"the strength of this casting: nobody publishes it; what is given is a comparison with its standard build, not a rating",
			"pores, old cracks and earlier repairs: dye penetrant finds those that reach the surface",
			"how the vehicle will be driven: a landed wheel or a dropped clutch is in the shock factor, as a guess with a spread",
			"where the contact pattern moves under load: only a loaded pattern on the bench shows it",
		},
		Caution: []string{
			"This is a comparison, not a strength rating and not a road approval. Local codes and licensed practice decide; tell the insurer and the inspection body.",
			"A built unit weighs 28 to 45 kg (62 to 99 lb): two people or a crane.",
		},
		SetAside: []assess.SetAside{{Name: "a", Price: 900, Better: "b"}, {Name: "c", Price: 1200, Better: "b"}},
	}
	a.Builds = []assess.Build{
		build(690, 0.41, 1, nil, "cap walks", 0.58, "adjuster unwinds", 0.2),
		build(742, 0.66, 1.18, []string{"torqued cap bolts of class 12.9"}, "cap walks", 0.47, "head bearing dents", 0.22),
		build(866, 0.931, 1.5, []string{"better cap bolts", "ring dowels", "bolted adjuster locks"}, "head bearing dents", 0.39, "pinion tooth root", 0.3),
		build(1130, 0.929, 1.52, []string{"better cap bolts", "ring dowels", "bolted adjuster locks", "peg"}, "head bearing dents", 0.4, "pinion tooth root", 0.29),
		build(1480, 0.967, 1.75, []string{"better cap bolts", "ring dowels", "large head bearing"}, "pinion tooth root", 0.55, "crown wheel pushed off the pinion", 0.17),
		build(2350, 0.978, 1.8, []string{"better cap bolts", "plates welded to nose and caps", "large head bearing"}, "pinion tooth root", 0.66, "half-shaft yields", 0.12),
	}
	for _, i := range []int{0, 1, 2, 4, 5} {
		a.Builds[i].Frontier = true
	}
	a.Builds[5].Welds = true
	a.Comparisons = []assess.Comparison{{Cheaper: 2, Dearer: 4, Stronger: assess.Chance{Value: 0.83, Error: 0.01},
		Text: "the large head bearing is stronger than better cap bolts in 83 % of the cases we cannot tell apart from yours."}}
	return a
}

func band(median, doubt float64) assess.Band {
	return assess.Band{Median: median, Low: median * (1 - doubt), High: median * (1 + 1.2*doubt)}
}

// ladder is every link with its torque in the standard build.
var ladder = []assess.Rung{
	{Name: "cap walks", Part: "cap", Kind: assess.Breaks, Flank: gear.Coast, GiveOut: band(7700, 0.3)},
	{Name: "near side bearing life", Part: "side bearing", Kind: assess.Wears, GiveOut: band(9300, 0.22)},
	{Name: "adjuster unwinds", Part: "adjuster lock", Kind: assess.Breaks, Flank: gear.Coast, GiveOut: band(9900, 0.2)},
	{Name: "head bearing dents", Part: "head bearing", Kind: assess.Breaks, Flank: gear.Drive, GiveOut: band(10200, 0.14)},
	{Name: "cap joint opens", Part: "cap", Kind: assess.Breaks, Flank: gear.Coast, GiveOut: band(10700, 0.25)},
	{Name: "crown wheel pushed off the pinion", Part: "mesh", Kind: assess.Moves, Flank: gear.Coast, GiveOut: band(11800, 0.22)},
	{Name: "head bearing life", Part: "head bearing", Kind: assess.Wears, GiveOut: band(12200, 0.2)},
	{Name: "pinion tooth root", Part: "pinion", Kind: assess.Breaks, Flank: gear.Drive, GiveOut: band(12900, 0.15)},
	{Name: "half-shaft yields", Part: "half-shaft", Kind: assess.Breaks, Outside: true, GiveOut: band(14300, 0.1)},
	{Name: "tooth flanks pit", Part: "crown wheel", Kind: assess.Wears, GiveOut: band(14800, 0.2)},
	{Name: "crown-wheel tooth root", Part: "crown wheel", Kind: assess.Breaks, Flank: gear.Drive, GiveOut: band(15600, 0.15)},
	{Name: "diff-centre pins shear", Part: "diff centre", Kind: assess.Breaks, Outside: true, GiveOut: band(16500, 0.14)},
	{Name: "pinion tooth bending life", Part: "pinion", Kind: assess.Wears, GiveOut: band(17400, 0.2)},
	{Name: "offset shifts", Part: "mesh", Kind: assess.Moves, GiveOut: band(19100, 0.2)},
	{Name: "crown wheel slips on its bolts", Part: "crown-wheel bolts", Kind: assess.Breaks, GiveOut: band(21000, 0.25)},
	{Name: "cap bolt yields", Part: "cap bolts", Kind: assess.Breaks, GiveOut: band(23000, 0.2)},
	{Name: "casting leg cracks", Part: "casting", Kind: assess.Breaks, GiveOut: band(26000, 0.3)},
	{Name: "tail bearing dents", Part: "tail bearing", Kind: assess.Breaks, GiveOut: band(31000, 0.15)},
	{Name: "pinion stem yields", Part: "pinion", Kind: assess.Breaks, GiveOut: band(39000, 0.15)},
	{Name: "crown-wheel bolts shear", Part: "crown-wheel bolts", Kind: assess.Breaks,
		GiveOut: assess.Band{Median: math.Inf(1), Low: 47000, High: math.Inf(1)}},
}

// build raises the links below a floor, so that the weak ones come as named.
func build(price, carries, floor float64, titles []string, weak string, first float64, next string, second float64) assess.Build {
	b := assess.Build{
		Price: price, Minutes: price / 2, Titles: titles, Upgrades: titles,
		Carries: assess.Chance{Value: carries, Error: 0.01}, GiveOut: band(7400*floor, 0.2),
		Lasts: assess.Chance{Value: 0.3 + 0.6*carries, Error: 0.01}, Life: band(71000*floor, 0.5),
	}
	for i, r := range ladder {
		lowest := 7700 * floor
		if r.Name != weak && r.Name != next {
			lowest *= 1.12 + 0.03*float64(i)
		}
		if raise := lowest / r.GiveOut.Median; raise > 1 {
			r.GiveOut = assess.Band{Median: r.GiveOut.Median * raise, Low: r.GiveOut.Low * raise, High: r.GiveOut.High * raise}
		}
		switch r.Name {
		case weak:
			r.First = first
		case next:
			r.First = second
		default:
			r.First = (1 - first - second) / float64(len(ladder)-2)
		}
		b.Links = append(b.Links, r)
	}
	slices.SortStableFunc(b.Links, func(x, y assess.Rung) int { return cmp.Compare(x.GiveOut.Median, y.GiveOut.Median) })
	is := func(name string) func(assess.Rung) bool { return func(r assess.Rung) bool { return r.Name == name } }
	b.WearsFirst = slices.IndexFunc(b.Links, func(r assess.Rung) bool { return r.Kind == assess.Wears })
	b.Weak, b.RunnerUp = slices.IndexFunc(b.Links, is(weak)), slices.IndexFunc(b.Links, is(next))
	return b
}

// pegCurve is a peg that touches at some 4,300 N·m.
func pegCurve() []assess.PegPoint {
	var curve []assess.PegPoint
	for i := range 25 {
		t := 1000 * float64(i)
		p := assess.PegPoint{Torque: t, Without: 2.0e-8*t + 1e-13*t*t}
		p.With = p.Without
		if over := t - 4300; over > 0 {
			p.Load = 6.4 * over
			p.With = 2.0e-8*4300 + 1e-13*4300*4300 + 0.9e-8*over
		}
		curve = append(curve, p)
	}
	return curve
}
