package assess

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"axlewright/axle"
	"axlewright/quantity"
)

// advice turns the finished draws into an answer.
func (s *study) advice() (Advice, error) {
	e := s.enquiry
	a := Advice{
		Enquiry: e.Number, Customer: e.Customer, Casting: e.Casting, Gears: e.Gears, Mounting: e.Mounting, From: s.given(),
		Draws: s.draws.n, Seed: s.draws.seed,
		Demand: s.demand(), Wanted: s.wanted(), Distance: s.duty.Life.Value, Recommended: -1, NextUp: -1,
	}
	order := make([]int, len(s.builds))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(x, y int) int { return cmp.Compare(s.builds[x].Price, s.builds[y].Price) })

	s.columns = s.linkColumns()
	dominates := newDominance(s.columns)
	var kept []int // indexes into s.builds
	var columns []column
	for _, b := range order {
		if k := slices.IndexFunc(kept, func(cheaper int) bool { return dominates.covers(s, cheaper, b) }); k >= 0 {
			a.SetAside = append(a.SetAside, SetAside{
				Name: s.label(b), Price: s.builds[b].Price, Better: s.label(kept[k]),
			})
			continue
		}
		c := s.column(b)
		kept, columns = append(kept, b), append(columns, c)
		a.Builds = append(a.Builds, s.describe(b, c))
	}
	markFrontier(a.Builds)
	s.recommend(&a)
	s.compare(&a, columns)
	s.nextFixes(&a)
	if err := s.pegView(&a); err != nil {
		return a, err
	}
	var err error
	if a.Loads, err = s.bearingShares(kept[a.Best]); err != nil {
		return a, err
	}
	s.applyRules(&a)
	a.Shares = s.shares(columns[a.Best].least)
	a.Measure = s.measureNext(a.Shares, a.Builds[a.Best].GiveOut)
	a.Unknown = unknowns(s.enquiry)
	a.Caution = cautions(&a)
	return a, nil
}

// given is what the answer was worked out from: the figures that govern it.
func (s *study) given() []Given {
	v := &s.enquiry.Vehicle
	plain := func(x float64) string { return fmt.Sprintf("%.3g", x) }
	gearing := "first " + plain(v.FirstGear.Value) + ", low range " + plain(v.LowRange.Value)
	if g, err := s.catalogue.GearSet(s.enquiry.Gears); err == nil {
		gearing += ", axle " + plain(g.Ratio())
	}
	tyre := "loaded radius " + quantity.FormatDigits(v.Tyre.LoadedRadius.Value, quantity.Length, 3)
	if v.Tyre.Size != "" {
		tyre = v.Tyre.Size
	}
	uses := make([]string, len(s.enquiry.Use))
	for i, u := range s.enquiry.Use {
		uses[i] = string(u)
	}
	list := []Given{
		{"axle load", quantity.FormatDigits(v.AxleLoad.Value, quantity.Mass, 4)},
		{"tyre", tyre},
		{"engine torque", quantity.FormatDigits(v.Engine.Value, quantity.Torque, 3)},
		{"gearing", gearing},
		{"grip", plain(v.Friction.Value)},
	}
	if len(uses) > 0 {
		list = append(list, Given{"use", joinAnd(uses)})
	}
	return list
}

// wanted is the chance that the shop wants of a build it recommends.
func (s *study) wanted() float64 {
	return cmp.Or(s.enquiry.Wanted, s.catalogue.WantedChance, DefaultWanted)
}

// markFrontier marks the builds, sorted by price, that carry the demand more
// surely than every cheaper one.
func markFrontier(builds []Build) {
	best := -1.0
	for i := range builds {
		if c := builds[i].Carries; c.Value > best+math.Max(2*c.Error, 0.005) {
			builds[i].Frontier, best = true, c.Value
		}
	}
}

// enough says whether a build carries the demand with the wanted chance.
func (a *Advice) enough(b Build) bool { return b.Carries.Value >= a.Wanted }

// recommend picks the cheapest build that is good enough, without a structural
// weld where the owner wants the axle as it was made; or says that there is none.
func (s *study) recommend(a *Advice) {
	a.Recommended = slices.IndexFunc(a.Builds, a.enough)
	if slices.Contains(s.enquiry.Use, axle.Original) {
		if i := slices.IndexFunc(a.Builds, func(b Build) bool { return a.enough(b) && !b.Welds }); i >= 0 {
			a.Recommended = i
		}
	}
	switch {
	case a.Recommended < 0:
		best := 0 // what costs more beyond the last build of the frontier buys nothing
		for i, b := range a.Builds {
			if b.Frontier {
				best = i
			}
		}
		a.Verdict = NothingCarries
		if a.Builds[best].Carries.Value < 0.5 {
			a.Verdict = NotThisAxle
		}
		a.Best = best
		return
	case len(a.Builds[a.Recommended].Upgrades) == len(s.enquiry.Fitted):
		a.Verdict = Standard
	default:
		a.Verdict = Strengthen
	}
	a.Best = a.Recommended
	for i := a.Recommended + 1; i < len(a.Builds); i++ {
		if a.Builds[i].Carries.Value > a.Builds[a.Recommended].Carries.Value &&
			a.Builds[i].GiveOut.Median > a.Builds[a.Recommended].GiveOut.Median*1.02 {
			a.NextUp = i
			return
		}
	}
}

// compare sets neighbours in price on the frontier side by side; the
// recommended build and the next one up are always among them.
func (s *study) compare(a *Advice, columns []column) {
	var shown []int
	for i, b := range a.Builds {
		if b.Frontier || i == a.Recommended || i == a.NextUp {
			shown = append(shown, i)
		}
	}
	for k := 1; k < len(shown); k++ {
		cheaper, dearer := shown[k-1], shown[k]
		wins := 0.0
		for i, t := range columns[dearer].least {
			switch u := columns[cheaper].least[i]; {
			case t > u:
				wins++
			case t == u:
				wins += 0.5
			}
		}
		c := Comparison{Cheaper: cheaper, Dearer: dearer, Stronger: chanceOf(wins, s.draws.n)}
		c.TooClose = c.Stronger.TooClose()
		if c.TooClose {
			c.Text = fmt.Sprintf("%s against %s: too close to call.", a.Builds[dearer].Label(), a.Builds[cheaper].Label())
		} else {
			c.Text = fmt.Sprintf("%s is stronger than %s in %s of the cases we cannot tell apart from yours.",
				a.Builds[dearer].Label(), a.Builds[cheaper].Label(), quantity.Chance(c.Stronger.Value))
		}
		a.Comparisons = append(a.Comparisons, c)
	}
}

// Label names a build for people.
func (b Build) Label() string {
	if len(b.Titles) == 0 {
		return "the standard rebuild"
	}
	return joinAnd(b.Titles)
}

func joinAnd(words []string) string {
	n := len(words)
	if n < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
}

// nextFixes says what the next build up fixes and what it does not.
func (s *study) nextFixes(a *Advice) {
	if a.NextUp < 0 {
		return
	}
	now, next := a.Builds[a.Recommended], a.Builds[a.NextUp]
	var fixed, left []string
	for _, r := range now.Links {
		if r.Kind == Wears || r.First < 0.05 {
			continue
		}
		after, there := next.Rung(r.Name)
		switch {
		case !there || after.GiveOut.Median > r.GiveOut.Median*1.03:
			fixed = append(fixed, r.Name)
		default:
			left = append(left, r.Name)
		}
	}
	var says []string
	if len(fixed) > 0 {
		says = append(says, fmt.Sprintf("It raises: %s.", joinAnd(fixed)))
	}
	if len(left) > 0 {
		says = append(says, fmt.Sprintf("It leaves as it is: %s.", joinAnd(left)))
	}
	a.NextFixes = strings.Join(says, " ")
}

// Rung returns a link of the build by name.
func (b Build) Rung(name string) (Rung, bool) {
	i := slices.IndexFunc(b.Links, func(r Rung) bool { return r.Name == name })
	if i < 0 {
		return Rung{}, false
	}
	return b.Links[i], true
}

// unknowns tells what no sum here can know.
func unknowns(e *axle.Enquiry) []string {
	list := []string{
		"the strength of this casting: nobody publishes it; what is given is a comparison with its standard build, not a rating",
		"pores, old cracks and earlier repairs: dye penetrant finds those that reach the surface",
		"how the vehicle will be driven: a landed wheel or a dropped clutch is in the shock factor, as a guess with a spread",
		"where the contact pattern moves under load: only a loaded pattern on the bench shows it",
	}
	if e.Standard == nil {
		list = append(list, "the demand against this vehicle as its maker sold it: the standard vehicle was not given")
	}
	return list
}
