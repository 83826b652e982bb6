package document

import (
	"fmt"
	"math"
	"strings"

	"axlewright/assess"
	"axlewright/quantity"
)

// The sentences of an advice, for the terminal and for paper alike.

// recommendation is the answer in a sentence or two, with its sign. Names goes
// before the name of a build and may be empty: "build 3, ".
func recommendation(a *assess.Advice, names func(build int) string) (sign, sentence string) {
	if len(a.Builds) == 0 {
		return "△", "No build can be made for this casting."
	}
	sign, sentence = carries(a, names)
	b := nearest(a)
	switch {
	case a.Distance <= 0:
	case a.Recommended >= 0 && b.WearsOut():
		sign = "△"
		sentence += fmt.Sprintf(" But it is likely to wear out before %s: chance to last %s; first: %s.", distance(a.Distance), quantity.Chance(b.Lasts.Value), b.Links[b.WearsFirst].Name)
	default:
		sentence += fmt.Sprintf(" Chance that nothing in it wears out before %s: %s.", distance(a.Distance), quantity.Chance(b.Lasts.Value))
	}
	return sign, sentence
}

// carries is the answer as far as it is about the demand.
func carries(a *assess.Advice, names func(build int) string) (sign, sentence string) {
	b := nearest(a)
	name := names(a.Best) + b.Label()
	switch {
	case a.Recommended >= 0:
		if a.Verdict == assess.Standard {
			name = "rebuild it as standard"
		}
		return "✓", fmt.Sprintf("Recommended: %s (price %s). It carries the demand with a chance of %s; %s are wanted.", name, price(b.Price), quantity.Chance(b.Carries.Value), quantity.Chance(a.Wanted))
	case a.Verdict == assess.NotThisAxle:
		return "✕", fmt.Sprintf("Recommended: not this axle. Even the best build (%s, price %s) carries the demand with a chance of only %s.", name, price(b.Price), quantity.Chance(b.Carries.Value))
	}
	return "△", fmt.Sprintf("Recommended: none. No build carries the demand with the wanted %s. The nearest is %s (price %s) with %s.", quantity.Chance(a.Wanted), name, price(b.Price), quantity.Chance(b.Carries.Value))
}

// fromWords tells what an answer was worked out from; empty where it was not
// kept with it.
func fromWords(a *assess.Advice) string {
	parts := make([]string, len(a.From))
	for i, g := range a.From {
		parts[i] = g.Name + " " + g.Text
	}
	if len(parts) == 0 {
		return ""
	}
	return "Worked out from: " + strings.Join(parts, "; ") + "."
}

// unnamed leaves builds without a number.
func unnamed(int) string { return "" }

// nearest is the build that the answer is about: the recommended one, or the
// one that comes nearest.
func nearest(a *assess.Advice) *assess.Build {
	return &a.Builds[min(max(a.Best, 0), len(a.Builds)-1)]
}

// weakWords tells the weak link and the runner-up of a build.
func weakWords(b *assess.Build) string {
	weak, there := link(b, b.Weak)
	if !there {
		return ""
	}
	words := fmt.Sprintf("%s (first to go in %s of the draws, %s)", weak.Name, quantity.Chance(weak.First), bandText(weak.GiveOut))
	if second, there := link(b, b.RunnerUp); there && b.RunnerUp != b.Weak {
		words += fmt.Sprintf("; then %s (%s, %s)", second.Name, quantity.Chance(second.First), bandText(second.GiveOut))
	}
	return words + "."
}

func link(b *assess.Build, i int) (*assess.Rung, bool) {
	if i < 0 || i >= len(b.Links) {
		return nil, false
	}
	return &b.Links[i], true
}

// nextWords tells the next build up, what it mends and what it does not.
func nextWords(a *assess.Advice, names func(build int) string) string {
	if a.NextUp < 0 || a.NextUp >= len(a.Builds) {
		return ""
	}
	n := &a.Builds[a.NextUp]
	return strings.TrimSpace(fmt.Sprintf("%s (price %s), chance %s. %s", names(a.NextUp)+n.Label(), price(n.Price), quantity.Chance(n.Carries.Value), a.NextFixes))
}

// flankWords tells which flank pulls, and how hard the other is worked.
func flankWords(a *assess.Advice) string {
	return fmt.Sprintf("The flank that pulls forward sees %s of the peak, the other %s.", quantity.Percent(a.Demand.Forward), quantity.Percent(a.Demand.Backward))
}

// hiddenWords counts the builds that are not shown.
func hiddenWords(hidden, setAside int) string {
	var parts []string
	switch {
	case hidden == 1:
		parts = append(parts, "1 more build costs more and carries this vehicle no more surely")
	case hidden > 1:
		parts = append(parts, fmt.Sprintf("%d more builds cost more and carry this vehicle no more surely", hidden))
	}
	switch {
	case setAside == 1:
		parts = append(parts, "1 other is dearer and in no link stronger")
	case setAside > 1:
		parts = append(parts, fmt.Sprintf("%d others are dearer and in no link stronger", setAside))
	}
	if len(parts) == 0 {
		return ""
	}
	return strings.Join(parts, "; ") + "."
}

// bandText is "4,120 N·m (3,040 lbf·ft), 3,300 to 5,100 N·m".
func bandText(b assess.Band) string {
	switch {
	case !finite(b.Median):
		return "beyond what was looked at"
	case !finite(b.High):
		return fmt.Sprintf("%s, from %s", torque(b.Median), metric(b.Low))
	}
	return fmt.Sprintf("%s, %s", torque(b.Median), rangeText(b))
}

// rangeText is "3,300 to 5,100 N·m", the 10 to 90 % of a band.
func rangeText(b assess.Band) string {
	switch {
	case !finite(b.Low):
		return "beyond what was looked at"
	case !finite(b.High):
		return "from " + metric(b.Low)
	}
	return strings.TrimSuffix(metric(b.Low), " N·m") + " to " + metric(b.High)
}

// distance prints a distance in km, as the advice has it, in both systems.
func distance(km float64) string { return quantity.FormatDigits(km*1000, quantity.Length, 2) }

func finite(x float64) bool { return !math.IsInf(x, 0) && !math.IsNaN(x) }

// torque prints with both systems, to three figures: more would pretend.
func torque(x float64) string { return quantity.FormatDigits(x, quantity.Torque, 3) }

func metric(x float64) string {
	text, _, _ := strings.Cut(torque(x), " (")
	return text
}

// other is the torque in the other system, without brackets.
func other(x float64) string {
	_, text, _ := strings.Cut(torque(x), " (")
	return strings.TrimSuffix(text, ")")
}

// price prints whole money in the shop's own, with its thousands apart.
func price(x float64) string {
	text := fmt.Sprintf("%.0f", x)
	for i := len(text) - 3; i > 0 && text[i-1] != '-'; i -= 3 {
		text = text[:i] + "," + text[i:]
	}
	return text
}
