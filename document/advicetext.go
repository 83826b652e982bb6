package document

import (
	"fmt"
	"io"
	"math"
	"strings"

	"axlewright/assess"
	"axlewright/quantity"
)

// width is the line length of text for a terminal.
const width = 92

// AdviceText writes advice for a terminal or a pipe.
func AdviceText(out io.Writer, a *assess.Advice) error {
	t := &text{out: out}
	t.line("%s   %s", a.Enquiry, a.Customer)
	t.line("Casting %s, gear set %s, %s axle, pulls forward on the %s side of the crown wheel's teeth", a.Casting, a.Gears, a.Mounting.Position, a.Mounting.Forward)
	t.blank()
	t.demand(&a.Demand)
	t.verdict(a)
	t.builds(a)
	t.comparisons(a)
	t.heading("Peg")
	t.wrap("", a.Peg.Text)
	if len(a.Rules) > 0 {
		t.heading("Beside the sums")
		for _, r := range a.Rules {
			mark := "·"
			if r.Overrides {
				mark = "△"
			}
			t.wrap(mark+" ", fmt.Sprintf("%s: %s", r.Because, r.Text))
		}
	}
	t.measure(a)
	t.heading("Not known")
	for _, u := range a.Unknown {
		t.wrap("· ", u)
	}
	t.heading("Cautions")
	for _, c := range a.Caution {
		t.wrap("△ ", c)
	}
	t.blank()
	t.wrap("", fmt.Sprintf("From %d draws, seed %d. Give-out torque: the torque at the axle, both wheels together, at which a link slips, breaks, moves too far or wears out before its distance. \"10 to 90 %%\" is our doubt, not a tolerance.", a.Draws, a.Seed))
	return t.err
}

// text writes lines and keeps the first error.
type text struct {
	out io.Writer
	err error
}

func (t *text) line(format string, args ...any) {
	if t.err == nil {
		_, t.err = fmt.Fprintf(t.out, format+"\n", args...)
	}
}

func (t *text) blank() { t.line("") }

func (t *text) heading(words string) {
	t.blank()
	t.line("%s", strings.ToUpper(words))
}

// wrap writes a paragraph behind a mark.
func (t *text) wrap(mark, words string) {
	indent := strings.Repeat(" ", len([]rune(mark)))
	line := mark
	for _, w := range strings.Fields(words) {
		if len([]rune(line))+len([]rune(w))+1 > width && line != mark && line != indent {
			t.line("%s", strings.TrimRight(line, " "))
			line = indent
		}
		line += w + " "
	}
	t.line("%s", strings.TrimRight(line, " "))
}

func (t *text) demand(d *assess.Demand) {
	t.heading("What the vehicle can put through this axle")
	t.line("  engine could send   %s", bandText(d.Engine))
	t.line("  tyres can hold      %s", bandText(d.Grip))
	t.line("  %-6s governs      %s   in %.0f %% of the draws", d.Limit, bandText(d.Governing), 100*d.Share)
	t.line("  peak, with shock    %s", bandText(d.Peak))
	t.wrap("  ", "Why: "+d.Why+".")
	t.wrap("  ", fmt.Sprintf("The flank that pulls forward sees %.0f %% of the peak, the other %.0f %%.", 100*d.Forward, 100*d.Backward))
	if d.IndexText != "" {
		t.wrap("  ", "Demand index "+d.IndexText+".")
	}
}

func (t *text) verdict(a *assess.Advice) {
	t.heading("Advice")
	switch {
	case a.Recommended >= 0:
		b := &a.Builds[a.Recommended]
		if a.Verdict == assess.Standard {
			t.wrap("✓ ", fmt.Sprintf("Recommended: rebuild it as standard (%s). It carries the demand with a chance of %s; %.0f %% are wanted.", price(b.Price), chance(b.Carries), 100*a.Wanted))
		} else {
			t.wrap("✓ ", fmt.Sprintf("Recommended: %s (%s). It carries the demand with a chance of %s; %.0f %% are wanted.", b.Label(), price(b.Price), chance(b.Carries), 100*a.Wanted))
		}
		t.weakLink(b)
	case a.Verdict == assess.NotThisAxle:
		b := &a.Builds[a.Best]
		t.wrap("✕ ", fmt.Sprintf("Recommended: not this axle. Even the best build (%s, %s) carries the demand with a chance of only %s.", b.Label(), price(b.Price), chance(b.Carries)))
		t.weakLink(b)
	default:
		b := &a.Builds[a.Best]
		t.wrap("△ ", fmt.Sprintf("Recommended: none. No build carries the demand with the wanted %.0f %%. The nearest is %s (%s) with %s.", 100*a.Wanted, b.Label(), price(b.Price), chance(b.Carries)))
		t.weakLink(b)
	}
	if a.NextUp >= 0 {
		n := &a.Builds[a.NextUp]
		t.wrap("  ", fmt.Sprintf("Next one up: %s (%s), chance %s. %s", n.Label(), price(n.Price), chance(n.Carries), a.NextFixes))
	}
}

func (t *text) weakLink(b *assess.Build) {
	if len(b.Links) == 0 {
		return
	}
	weak, second := &b.Links[b.Weak], &b.Links[b.RunnerUp]
	t.wrap("  ", fmt.Sprintf("Weak link: %s (first to go in %.0f %% of the draws, %s); then %s (%.0f %%, %s).",
		weak.Name, 100*weak.First, bandText(weak.GiveOut), second.Name, 100*second.First, bandText(second.GiveOut)))
}

func (t *text) builds(a *assess.Advice) {
	t.heading("Builds that buy something, by price")
	t.line("  %-9s %-7s %-34s %-24s %s", "price", "chance", "give-out torque, 10 to 90 %", "weak link", "build")
	hidden := 0
	for i := range a.Builds {
		b := &a.Builds[i]
		if !b.Frontier && i != a.Recommended && i != a.NextUp {
			hidden++
			continue
		}
		mark := " "
		if i == a.Recommended {
			mark = "✓"
		}
		weak := ""
		if len(b.Links) > 0 {
			weak = b.Links[b.Weak].Name
		}
		t.line("%s %-9s %-7s %-34s %-24s %s", mark, price(b.Price), fmt.Sprintf("%.0f %%", 100*b.Carries.Value), bandText(b.GiveOut), weak, b.Label())
	}
	t.wrap("  ", fmt.Sprintf("%d more builds cost more and carry this vehicle no more surely; %d others are dearer and in no link stronger.", hidden, len(a.SetAside)))
}

func (t *text) comparisons(a *assess.Advice) {
	if len(a.Comparisons) == 0 {
		return
	}
	t.heading("Side by side")
	for _, c := range a.Comparisons {
		t.wrap("· ", c.Text)
	}
}

func (t *text) measure(a *assess.Advice) {
	t.heading("What the doubt hangs on")
	for i, s := range a.Shares {
		if i == 5 {
			break
		}
		t.line("  %3.0f %%  %s (%s)", 100*s.Share, s.Figure, s.Origin)
	}
	if len(a.Measure) == 0 {
		t.wrap("  ", "No measurement in the catalogue would narrow it.")
		return
	}
	t.heading("What to measure next")
	for i, m := range a.Measure {
		if i == 3 {
			break
		}
		t.wrap(fmt.Sprintf("%d ", i+1), fmt.Sprintf("%s (%s). It would narrow the 10 to 90 %% band from %s to about %s.", m.How, price(m.Cost), torque(m.Before), torque(m.After)))
	}
}

// bandText is "4,120 N·m (3,040 lbf·ft), 3,300 to 5,100 N·m".
func bandText(b assess.Band) string {
	switch {
	case math.IsInf(b.Median, 1):
		return "beyond what was looked at"
	case math.IsInf(b.High, 1):
		return fmt.Sprintf("%s, from %s", torque(b.Median), metric(b.Low))
	}
	return fmt.Sprintf("%s, %s to %s", torque(b.Median), strings.TrimSuffix(metric(b.Low), " N·m"), metric(b.High))
}

// torque prints with both systems, to three figures: more would pretend.
func torque(x float64) string { return quantity.FormatDigits(x, quantity.Torque, 3) }

func metric(x float64) string {
	text, _, _ := strings.Cut(torque(x), " (")
	return text
}

func price(x float64) string { return fmt.Sprintf("%.0f", x) }

func chance(c assess.Chance) string {
	p := 100 * c.Value
	switch {
	case p > 99 && p < 100:
		return fmt.Sprintf("%.1f %%", p)
	case p == 100:
		return "over 99 %"
	}
	return fmt.Sprintf("%.0f %%", p)
}
