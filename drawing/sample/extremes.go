package sample

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"axlewright/assess"
	"axlewright/axle"
	"axlewright/calc/gear"
	"axlewright/calc/traction"
)

// Hopeless is an answer in which no build comes near.
func Hopeless() *assess.Advice {
	a := Advice()
	a.Verdict, a.Best, a.Recommended, a.NextUp, a.NextFixes = assess.NotThisAxle, 2, -1, -1, ""
	a.Mounting = axle.Mounting{Position: axle.Front, Forward: gear.Coast}
	a.Builds = a.Builds[:3]
	a.Demand.Peak = band(19000, 0.2)
	a.Demand.Limit = traction.Engine
	for i := range a.Builds {
		a.Builds[i].Carries.Value = 0.03 * float64(i)
	}
	a.Peg = assess.PegView{Text: "No peg is offered for this casting."}
	a.Measure, a.Shares, a.Comparisons = nil, a.Shares[:1], nil
	return a
}

// Single is an answer with one build, the standard one, and few links.
func Single() *assess.Advice {
	a := Advice()
	a.Verdict, a.Best, a.Recommended, a.NextUp, a.NextFixes = assess.Standard, 0, 0, -1, ""
	a.Builds = a.Builds[:1]
	a.Builds[0].Carries.Value = 1
	a.Builds[0].Links = a.Builds[0].Links[:4]
	a.Demand.Peak = band(3100, 0.2)
	a.Rules, a.Comparisons, a.SetAside = nil, nil, nil
	return a
}

// Full is an answer with the most builds and the longest words that an enquiry
// and a catalogue hold in good faith, each list as long as it gets.
func Full() *assess.Advice {
	a := Advice()
	a.Enquiry, a.Customer = "E-2026-104417", "The Upper Tarnhow and Fellgate District Forestry and Moorland Improvement Co-operative Society, workshop two"
	a.Casting, a.Gears = "T24S with the four straight ribs and the raised foundry mark", "T24S-411 nine by thirty-seven, long pinion stem"
	a.Mounting.Forward = gear.Coast
	for i := range a.Builds {
		b := &a.Builds[i]
		b.Frontier, b.Welds = true, i > 2
		if i > 0 {
			b.Titles = append(slices.Clone(b.Titles), "crown-wheel bolts of the next class with wedge washers and thread lock", "resin in the closed cavities of the nose")
		}
	}
	a.NextFixes = "It raises: head bearing dents, cap walks, cap joint opens, adjuster unwinds, spun cup turns the adjuster and crown wheel slips on its bolts. It leaves as it is: pinion tooth root, crown-wheel tooth root, half-shaft yields and diff-centre pins shear."
	a.Rules = append(a.Rules, []assess.Rule{
		{Because: "pulls forward on the coast side", Text: "The push on the crown wheel is two to three times that of an axle pulling on its drive side: caps, adjusters and peg work hardest here."},
		{Because: "originality", Text: "The owner wants it as it was made, but no build without a structural weld carries the demand with the wanted chance: tell him so before any work.", Overrides: true},
		{Because: "heel breaks before", Text: "Ask for the broken parts and the lash as found: a wheel that moves away breaks heels. Look for lash, cap bolts and side preload before selling a peg."},
		{Because: "salt or sea water", Text: "Corrosion eats cap bolts, locks and breather before load does: plate or coat the fixings (never plated 12.9), seal the joint faces, renew oil after each dip."},
		{Because: "shock", Text: "Landing and grip after spin multiply the torque; the shock factor here is a guess with a spread. Set lash in the upper third of its band and check the pattern a little to the toe."},
		{Because: "ran short of oil before", Text: "Find why first: level, breather, seal, nose-up mounting. No build survives that."},
		{Because: "caps walked before", Text: "Measure the register before anything else: bores made with caps torqued, bolts as computed, ring dowels if the register is gone."},
		{Because: "structural welds", Text: "Only on metal that has been identified; vent every cavity; recheck the bores; the welds cannot be undone and may need an inspector's consent for road use."},
	}...)
	a.Unknown = append(a.Unknown, "the demand against this vehicle as its maker sold it: the standard vehicle was not given")
	a.Caution = append(a.Caution, "Welding: no part cleaned with chlorinated solvent, every cavity vented, bearings out, fume drawn off at the source.")
	a.Measure = append(a.Measure, assess.Narrow{How: "stiffness of the bare casting on the bench, dial on the far seat, a jack between pinion bore and cap, three loads up and down", Cost: 140, Before: 4200, After: 3300})
	return a
}

// Wild is advice with figures at the ends of what a float can be and words that
// nobody types: it must still give a picture that is well formed.
func Wild() *assess.Advice {
	a := Full()
	a.Customer = "\x00\u202e<script>alert('x')</script> & " + strings.Repeat("Ø漢字ẞ", 80)
	a.Demand.Peak = assess.Band{Median: 8000, Low: 1e-9, High: math.Inf(1)}
	wild := []float64{math.Inf(1), math.NaN(), 0, -5, 1e-300, 1e300, 8000}
	for i := range a.Builds {
		b := &a.Builds[i]
		b.Carries.Value = []float64{0, 1, math.NaN(), 0.5, 1e-9, 0.999}[i]
		b.Price = []float64{0, 1e12, 0.4, 5, 6, 7}[i]
		for k := range b.Links {
			r := &b.Links[k]
			r.Name = fmt.Sprintf("%s %s", r.Name, strings.Repeat("unbroken", k))
			r.GiveOut = assess.Band{Median: wild[(i+k)%7], Low: wild[(i+k+1)%7], High: wild[(i+2*k)%7]}
		}
	}
	a.Builds[1].Links, a.Builds[1].Weak, a.Builds[1].RunnerUp = nil, 0, 0
	a.Builds[2].Weak, a.Builds[2].RunnerUp = 99, -1
	for i := range a.Peg.Curve {
		a.Peg.Curve[i].Load = wild[i%7]
	}
	a.Shares = append(a.Shares, assess.Share{Figure: strings.Repeat("long ", 60), Share: math.NaN(), Origin: "?"}, assess.Share{Figure: "-", Share: 7})
	return a
}
