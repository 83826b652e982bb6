package document

import (
	"fmt"
	"io"
	"strings"

	"axlewright/assess"
	"axlewright/drawing"
	"axlewright/quantity"
)

// width is the line length of text for a terminal.
const width = 92

// AdviceText writes advice for a terminal or a pipe.
func AdviceText(out io.Writer, a *assess.Advice) error {
	t := &text{out: out}
	t.line("%s   %s", a.Enquiry, a.Customer)
	t.line("Casting %s, gear set %s, %s axle, pulls forward on the %s side of the crown wheel's teeth", a.Casting, a.Gears, a.Mounting.Position, a.Mounting.Forward)
	if from := fromWords(a); from != "" {
		t.wrap("", from)
	}
	t.blank()
	t.demand(a)
	t.verdict(a)
	t.builds(a)
	t.comparisons(a)
	t.heading("Peg")
	t.wrap("", a.Peg.Text)
	if a.Peg.Brings && a.Peg.Gap != nil {
		t.wrap("", strings.Join(a.Peg.Gap.Text, " "))
	}
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
	for _, w := range strings.FieldsFunc(together(words), func(r rune) bool { return r == ' ' || r == '\n' }) {
		w = strings.ReplaceAll(w, "\u00a0", " ") // a unit stays with its figure
		if len([]rune(line))+len([]rune(w))+1 > width && line != mark && line != indent {
			t.line("%s", strings.TrimRight(line, " "))
			line = indent
		}
		line += w + " "
	}
	t.line("%s", strings.TrimRight(line, " "))
}

func (t *text) demand(a *assess.Advice) {
	d := &a.Demand
	t.heading("What the vehicle can put through this axle")
	t.line("  engine could send   %s", bandText(d.Engine))
	t.line("  tyres can hold      %s", bandText(d.Grip))
	t.line("  %-6s governs      %s   in %s of the draws", d.Limit, bandText(d.Governing), quantity.Chance(d.Share))
	t.line("  peak, with shock    %s", bandText(d.Peak))
	t.wrap("  ", "Why: "+d.Why+".")
	t.wrap("  ", flankWords(a))
	if d.IndexText != "" {
		t.wrap("  ", "Demand index "+d.IndexText+".")
	}
}

func (t *text) verdict(a *assess.Advice) {
	t.heading("Advice")
	sign, sentence := recommendation(a, unnamed)
	t.wrap(sign+" ", sentence)
	if len(a.Builds) == 0 {
		return
	}
	if weak := weakWords(nearest(a)); weak != "" {
		t.wrap("  ", "Weak link: "+weak)
	}
	if next := nextWords(a, unnamed); next != "" {
		t.wrap("  ", "Next one up: "+next)
	}
}

// builds lists the builds that buy something: figures in columns, and below
// them in words what is built and what goes first.
func (t *text) builds(a *assess.Advice) {
	t.heading("Builds that buy something, by price")
	lasts := ""
	if a.Distance > 0 {
		lasts = "lasts " + distance(a.Distance)
	}
	t.line("  %7s  %-13s %-*s %s", "price", "carries", len(lasts), lasts, "gives out at, 10 to 90 %")
	hidden := 0
	for i := range a.Builds {
		b := &a.Builds[i]
		if !b.Frontier && i != a.Recommended && i != a.NextUp {
			hidden++
			continue
		}
		mark := " "
		if i == a.Recommended {
			mark = "▸"
		}
		long := ""
		if lasts != "" {
			long = quantity.Chance(b.Lasts.Value)
		}
		t.line("%s %7s  %-13s %-*s %s", mark, price(b.Price), drawing.StateOf(b.Carries.Value, a.Wanted).Sign()+" "+quantity.Chance(b.Carries.Value), len(lasts), long, bandText(b.GiveOut))
		words := b.Label()
		if weak, there := link(b, b.Weak); there {
			words += "; weak link: " + weak.Name
		}
		t.wrap("           ", words)
	}
	t.line("  ▸ recommended; carries: %s %s, %s %s, %s %s", drawing.Fine.Sign(), drawing.Fine, drawing.Look.Sign(), drawing.Look, drawing.Stop.Sign(), drawing.Stop)
	if words := hiddenWords(hidden, len(a.SetAside)); words != "" {
		t.wrap("  ", words)
	}
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
		t.line("  %6s  %s (%s)", quantity.Chance(s.Share), s.Figure, s.Origin)
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
		t.wrap(fmt.Sprintf("%d ", i+1), fmt.Sprintf("%s (price %s). It would narrow the 10 to 90 %% band from %s to about %s.", strings.TrimSuffix(m.How, "."), price(m.Cost), torque(m.Before), torque(m.After)))
	}
}

// together keeps units with their figures where lines are broken.
func together(words string) string {
	var b strings.Builder
	for i, r := range words {
		if r == ' ' && drawing.Unit(words[i+1:]) {
			r = '\u00a0'
		}
		b.WriteRune(r)
	}
	return b.String()
}
