package web

import (
	"bytes"
	"slices"

	"axlewright/assess"
	"axlewright/axle"
	"axlewright/drawing"
	"axlewright/quantity"
)

// printedAdvice is advice as it is kept with a job: finished words and pictures.
// It is shown as it stands and never worked out anew.
type printedAdvice struct {
	Format   int            `json:"format"`
	Verdict  string         `json:"verdict"`
	Headline string         `json:"headline"`
	Enquiry  string         `json:"enquiry"` // as the sums took it, YAML
	Demand   string         `json:"demand"`
	Ladder   string         `json:"ladder"`              // SVG
	PegCurve string         `json:"peg_curve,omitempty"` // SVG, where a build with a peg was looked at
	Builds   []printedBuild `json:"builds"`
	Next     string         `json:"next_fixes"`
	Peg      string         `json:"peg"`
	Gap      *printedGap    `json:"gap,omitempty"` // of the best build with a peg
	Rules    []string       `json:"rules"`
	Measure  []string       `json:"measure_next"`
	Unknown  []string       `json:"not_known"`
	Cautions []string       `json:"cautions"`
	Workings []printedLink  `json:"workings"`
	Advice   *assess.Advice `json:"advice"`
	Doubts   []printedShare `json:"doubts"`
	Compare  []string       `json:"compare"`
	Best     string         `json:"best"`
}

type printedBuild struct {
	Label, Price, Carries, Lasts, GiveOut, Doubt, Weak string
	Best                                               bool
	Shown                                              bool // on the ladder
}

type printedShare struct{ Figure, Share, Origin string }

// A printedGap is between which gaps the peg of a build pleases road, wheel and pad.
type printedGap struct {
	assess.GapAdvice
	Build string `json:"build"`
}

type printedLink struct {
	Link, GiveOut string
	Steps         []printedStep
}

type printedStep struct{ Symbol, Meaning, Text, By, Source string }

// printAdvice puts advice into words and pictures.
func printAdvice(a *assess.Advice, e *axle.Enquiry, c *axle.Catalogue, asked string) (printedAdvice, error) {
	p := printedAdvice{Format: 1, Verdict: string(a.Verdict), Enquiry: asked, Next: a.NextFixes, Peg: a.Peg.Text,
		Unknown: a.Unknown, Cautions: a.Caution, Advice: a}
	torque := func(x float64) string { return quantity.FormatDigits(x, quantity.Torque, 3) }
	p.Demand = "What the vehicle can put through this axle: " + torque(a.Demand.Peak.Median) + " with shock, 10 to 90 % " +
		torque(a.Demand.Peak.Low) + " to " + torque(a.Demand.Peak.High) + ". " + titleCase(a.Demand.Why) + "."
	shown := drawing.Shown(a)
	for i, b := range a.Builds {
		row := printedBuild{Shown: slices.Contains(shown, i), Label: b.Label(), Price: quantity.Format(b.Price, quantity.Money), Carries: quantity.Chance(b.Carries.Value),
			Lasts: quantity.Chance(b.Lasts.Value), GiveOut: bandText(b.GiveOut.Median), Best: i == a.Recommended}
		row.Doubt = bandText(b.GiveOut.Low) + " to " + bandText(b.GiveOut.High)
		if b.Weak >= 0 && b.Weak < len(b.Links) {
			row.Weak = b.Links[b.Weak].Name
		}
		p.Builds = append(p.Builds, row)
	}
	best := a.Recommended
	if best < 0 {
		best = a.Best
	}
	p.Headline = titleCase(string(a.Verdict))
	if best >= 0 && best < len(a.Builds) {
		p.Best = a.Builds[best].Label()
		chance := quantity.Chance(a.Builds[best].Carries.Value) + " of the cases that we cannot tell apart from this one"
		if a.Recommended >= 0 {
			p.Headline += ": " + p.Best + ". It carries the demand in " + chance + "."
		} else {
			p.Headline += ". The build that comes nearest, " + p.Best + ", carries the demand in " + chance + "; " + quantity.Chance(a.Wanted) + " are wanted."
		}
	}
	for _, r := range a.Rules {
		p.Rules = append(p.Rules, r.Text)
	}
	for _, m := range a.Measure {
		p.Measure = append(p.Measure, m.How)
	}
	for _, x := range a.Comparisons {
		p.Compare = append(p.Compare, x.Text)
	}
	for i, s := range a.Shares {
		if i < 8 {
			p.Doubts = append(p.Doubts, printedShare{s.Figure, quantity.Chance(s.Share), string(s.Origin)})
		}
	}
	var ladder bytes.Buffer
	if err := drawing.WriteSVG(&ladder, drawing.Ladder(a)); err != nil {
		return p, err
	}
	if a.Peg.Offered && len(a.Peg.Curve) > 1 {
		var curve bytes.Buffer
		if err := drawing.WriteSVG(&curve, drawing.PegCurve(a)); err != nil {
			return p, err
		}
		p.PegCurve = curve.String()
	}
	p.Ladder = ladder.String()
	var err error
	if p.Workings, err = workings(e, c, a, best); err != nil {
		return p, err
	}
	if p.Gap, err = gapOf(e, c, a, best); err != nil { // the advice stands without it
		p.Unknown = append(slices.Clone(p.Unknown), "between which gaps the peg does its work: "+firstLine(err.Error()))
	}
	return p, nil
}

// gapOf works out the gap window of the best build, or else of the cheapest other
// that has a peg; nil where none has.
func gapOf(e *axle.Enquiry, c *axle.Catalogue, a *assess.Advice, best int) (*printedGap, error) {
	builds, err := c.BuildsFor(e)
	if err != nil {
		return nil, err
	}
	order := make([]int, 0, len(a.Builds)+1)
	if best >= 0 && best < len(a.Builds) {
		order = append(order, best)
	}
	for i := range a.Builds {
		order = append(order, i)
	}
	for _, i := range order {
		b, ok := buildOf(builds, a.Builds[i])
		if !ok || b.Peg == nil {
			continue
		}
		gap, err := assess.PegGap(e, c, b)
		if err != nil {
			return nil, err
		}
		return &printedGap{gap, a.Builds[i].Label()}, nil
	}
	return nil, nil
}

// buildOf finds the build that an advice speaks of.
func buildOf(builds []axle.Assembly, advised assess.Build) (axle.Assembly, bool) {
	i := slices.IndexFunc(builds, func(b axle.Assembly) bool { return slices.Equal(b.Upgrades, advised.Upgrades) })
	if i < 0 {
		return axle.Assembly{}, false
	}
	return builds[i], true
}

// bandText is a torque of which nobody knows more than two or three digits.
func bandText(x float64) string {
	if x == assess.Beyond {
		return "beyond what was looked at"
	}
	return quantity.FormatDigits(x, quantity.Torque, 3)
}

// workings shows the sum of each link of a build, from its result downward.
func workings(e *axle.Enquiry, c *axle.Catalogue, a *assess.Advice, build int) ([]printedLink, error) {
	if build < 0 || build >= len(a.Builds) {
		return nil, nil
	}
	builds, err := c.BuildsFor(e)
	if err != nil {
		return nil, err
	}
	b, ok := buildOf(builds, a.Builds[build])
	if !ok {
		return nil, nil
	}
	all, err := assess.Explain(e, c, b)
	if err != nil {
		return nil, err
	}
	var links []printedLink
	for _, x := range all {
		l := printedLink{Link: x.Link, GiveOut: bandText(x.GiveOut)}
		for i := len(x.Steps) - 1; i >= 0; i-- {
			l.Steps = append(l.Steps, printStep(x.Steps[i]))
		}
		links = append(links, l)
	}
	return links, nil
}

func printStep(s assess.Step) printedStep {
	p := printedStep{Symbol: s.Symbol, Meaning: s.Meaning, By: s.By, Source: s.Source}
	if dim, ok := quantity.ByMeaning(s.Unit, s.Meaning); ok {
		p.Text = quantity.FormatDigits(s.Value, dim, 4)
	} else {
		p.Text = quantity.FormatDigits(s.Value, quantity.Number, 4) + " " + s.Unit
	}
	return p
}

// onLadder parts the builds into those on the ladder and the others.
func (p printedAdvice) onLadder(yes bool) []printedBuild {
	var all []printedBuild
	for _, b := range p.Builds {
		if b.Shown == yes {
			all = append(all, b)
		}
	}
	return all
}
