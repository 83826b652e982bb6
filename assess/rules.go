package assess

import (
	"fmt"
	"math"
	"slices"

	"axlewright/axle"
	"axlewright/calc/gear"
	"axlewright/calc/material"
	"axlewright/quantity"
)

// smallPinion is the pinion tooth number at and below which the pinion itself
// is the fuse and no work on the casting cures it. Common practice, no source.
const smallPinion = 9

// applyRules adds the advice that does not come from the sums. All of it is
// common practice of the trade, no source, unless a rule says otherwise.
func (s *study) applyRules(a *Advice) {
	e := s.enquiry
	add := func(because, text string) { a.Rules = append(a.Rules, Rule{Because: because, Text: text}) }
	override := func(because, text string) {
		a.Rules = append(a.Rules, Rule{Because: because, Text: text, Overrides: true})
	}
	uses := func(u axle.Use) bool { return slices.Contains(e.Use, u) }
	had := func(f axle.Fault) bool { return slices.Contains(e.History, f) }

	if uses(axle.Towing) {
		add("towing", "Steady load is heat and bearing life, not shock: see to oil level and grade, a free breather and the bearings first; plates do not cool. Stop and look if the case climbs past 120 °C (248 °F).")
	}
	if uses(axle.Salt) {
		add("salt or sea water", "Corrosion eats cap bolts, locks and breather before load does: plate or coat the fixings (never plated 12.9), seal the joint faces, renew oil after each dip.")
	}
	if uses(axle.Original) {
		originalRule(a, override)
	}
	if uses(axle.Competition) || uses(axle.Rock) {
		add("shock", "Landing and grip after spin multiply the torque; the shock factor here is a guess with a spread. Set lash in the upper third of its band and check the pattern a little to the toe.")
	}
	if e.Mounting.Forward == gear.Coast {
		add("pulls forward on the coast side", "The push on the crown wheel is two to three times that of an axle pulling on its drive side: caps, adjusters and peg work hardest here.")
	}
	if had(axle.HeelBreaks) {
		add("heel breaks before", "Ask for the broken parts and the lash as found: a wheel that moves away breaks heels. Look for lash, cap bolts and side preload before selling a peg.")
	}
	if had(axle.OilStarved) {
		add("ran short of oil before", "Find why first: level, breather, seal, nose-up mounting. No build survives that.")
	}
	if had(axle.CapWalk) {
		add("caps walked before", "Measure the register before anything else: bores made with caps torqued, bolts as computed, ring dowels if the register is gone.")
	}
	s.wearRule(a, add)
	s.pinionRule(a, override)
	s.metalRule(a, add)
	s.indexRule(a, add)
	if a.Builds[a.Best].Welds {
		add("structural welds", "Only on metal that has been identified; vent every cavity; recheck the bores; the welds cannot be undone and may need an inspector's consent for road use.")
	}
}

// originalRule says what the owner's wish for the axle as it was made costs.
func originalRule(a *Advice, override func(because, text string)) {
	switch {
	case a.Builds[a.Best].Welds:
		override("originality", "The owner wants it as it was made, but no build without a structural weld carries the demand with the wanted chance: tell him so before any work.")
	case a.Recommended > slices.IndexFunc(a.Builds, a.enough):
		override("originality", "The owner wants it as it was made: the cheapest build without a structural weld that carries the demand is recommended, though one with a weld is cheaper.")
	}
}

// WearsOut says whether the build is more likely than not to wear out before
// the wanted distance.
func (b Build) WearsOut() bool { return b.WearsFirst >= 0 && b.Lasts.Value < 0.5 }

// wearRule says when the best build carries the peak but wears out early, and
// which build that carries it lasts surest.
func (s *study) wearRule(a *Advice, add func(because, text string)) {
	b := &a.Builds[a.Best]
	if b.WearsFirst < 0 || b.Lasts.Value >= 0.8 {
		return
	}
	text := fmt.Sprintf("Under this duty the chance to reach %s km is %s; first to wear: %s, at about %s km (10 to 90 %%: %s to %s). Life is good to a factor of three at best: use it to compare, and mind oil, lash and load first.",
		kilometres(a.Distance), quantity.Chance(b.Lasts.Value), b.Links[b.WearsFirst].Name, kilometres(b.Life.Median), kilometres(b.Life.Low), kilometres(b.Life.High))
	if surest := s.lastsSurest(a); surest != a.Best {
		text += fmt.Sprintf(" Surest to last of those that carry it: %s (price %.0f), %s.", a.Builds[surest].Label(), a.Builds[surest].Price, quantity.Chance(a.Builds[surest].Lasts.Value))
	} else if b.WearsOut() {
		text += " No build offered lasts clearly longer: only less load, other gears or a shorter distance help."
	}
	add("wear", text)
}

// lastsSurest returns the cheapest build that lasts about as surely as any, of
// those that carry the demand and bring no weld the owner does not want. It is
// the best build itself where none lasts clearly longer.
func (s *study) lastsSurest(a *Advice) int {
	original := slices.Contains(s.enquiry.Use, axle.Original)
	surest, most := a.Best, a.Builds[a.Best].Lasts.Value
	for i, b := range a.Builds {
		if a.enough(b) && !(original && b.Welds) && b.Lasts.Value > most+0.05 {
			surest, most = i, b.Lasts.Value
		}
	}
	return surest
}

// kilometres prints a distance to two figures, thousands apart.
func kilometres(km float64) string {
	if math.IsInf(km, 1) || km >= 1e6 {
		return "over 1,000,000"
	}
	step := math.Pow(10, math.Floor(math.Log10(math.Max(km, 10)))-1)
	n := int(math.Round(km/step) * step)
	if n < 1000 {
		return fmt.Sprint(n)
	}
	return fmt.Sprintf("%d,%03d", n/1000, n%1000)
}

// pinionRule turns the answer to a bigger axle where the pinion's own teeth
// are the fuse.
func (s *study) pinionRule(a *Advice, override func(because, text string)) {
	g, err := s.catalogue.GearSet(s.enquiry.Gears)
	if err != nil || a.Recommended >= 0 {
		return
	}
	best := &a.Builds[a.Best]
	if best.Weak < 0 {
		return
	}
	weak := best.Links[best.Weak]
	if weak.Part != "pinion" && g.PinionTeeth > smallPinion {
		return
	}
	if weak.Part == "pinion" {
		a.Verdict = NotThisAxle
		override("small pinion", fmt.Sprintf("The pinion (%d teeth) goes first in the best build, and nothing done to the casting mends that: another ratio or a bigger axle.", g.PinionTeeth))
	}
}

func (s *study) metalRule(a *Advice, add func(because, text string)) {
	k, err := s.catalogue.Casting(s.enquiry.Casting)
	if err != nil {
		return
	}
	metal, err := material.Lookup(k.Metal)
	if err != nil {
		return
	}
	family, err := material.FamilyOf(metal.Family)
	if err == nil && (family.Weldability == material.DoNotWeld || family.Weldability == material.WeldUnloaded) {
		add("metal of the casting", fmt.Sprintf("%s (%s) takes no structural weld: builds with welded plates are for castings proved to be another metal.", metal.Name, metal.Family))
	}
}

// indexRule shows the trade's own band for the demand index, where the sums and
// the band part company.
func (s *study) indexRule(a *Advice, add func(because, text string)) {
	i := a.Demand.Index
	if i == 0 {
		return
	}
	band := "a standard rebuild"
	switch {
	case i > 2.5:
		band = "plates and large bearings, or another axle"
	case i > 2.0:
		band = "plates welded to nose and caps"
	case i > 1.5:
		band = "a peg if it works in front, in reverse or under shock, else better fixings"
	case i >= 1.2:
		band = "better fixings"
	}
	add(fmt.Sprintf("demand index %.2f", i), "The trade's starting band for it is "+band+". The index knows nothing of links, duty or flanks; the sums above go before it.")
}

// cautions are printed once on the sheet.
func cautions(a *Advice) []string {
	list := []string{
		"This is a comparison, not a strength rating and not a road approval. Local codes and licensed practice decide; tell the insurer and the inspection body.",
	}
	if a.Best >= 0 && a.Builds[a.Best].Welds {
		list = append(list, "Welding: no part cleaned with chlorinated solvent, every cavity vented, bearings out, fume drawn off at the source.")
	}
	return append(list, "A built unit weighs 28 to 45 kg (62 to 99 lb): two people or a crane.")
}
