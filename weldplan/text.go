package weldplan

import (
	"fmt"
	"io"
	"strings"

	"axlewright/quantity"
)

// A page writes a plan for people, at the edge: both systems of units, and the
// tag of every figure that is no measurement.
type page struct {
	w   io.Writer
	err error
}

func (p *page) line(format string, args ...any) {
	if p.err == nil {
		_, p.err = fmt.Fprintf(p.w, format+"\n", args...)
	}
}

func (p *page) head(title string) {
	p.line("")
	p.line("%s", strings.ToUpper(title))
}

// wrapped writes a paragraph behind a mark, broken at 96 characters.
func (p *page) wrapped(mark, text string) {
	const width = 96
	indent := strings.Repeat(" ", len([]rune(mark)))
	line := mark
	used := 0
	for _, word := range strings.Fields(text) {
		if used > 0 && len([]rune(line))+1+len([]rune(word)) > width {
			p.line("%s", line)
			line, used = indent, 0
		}
		if used > 0 {
			line += " "
		}
		line += word
		used++
	}
	p.line("%s", line)
}

// Write prints the plan as text.
func (plan *Plan) Write(w io.Writer) error {
	p := &page{w: w}
	p.line("WELD PLAN  %s  %s", plan.Job, plan.Variant)
	if plan.Note != "" {
		p.line("%s", plan.Note)
	}
	p.line("Metal: %s", plan.Metal)
	for i := range plan.Cautions {
		if plan.Cautions[i].Step == "law" {
			p.wrapped("", plan.Cautions[i].Text)
		}
	}
	p.stops(plan)
	if plan.Method != nil && plan.Method.Refused == "" {
		p.method(plan)
		p.heat(plan)
		p.runs(plan)
		p.uses(plan)
		p.tacks(plan)
		p.sequence(plan)
		p.vents(plan)
		p.stresses(plan)
	}
	p.lists(plan)
	return p.err
}

func (p *page) stops(plan *Plan) {
	if len(plan.Stops) == 0 {
		p.line("No stops.")
		return
	}
	p.head("stop: do not strike an arc")
	for _, s := range plan.Stops {
		p.wrapped("  ■ STOP  ", s.What+". "+s.Why)
		p.wrapped("          ", "Clears it: "+s.Clear)
		p.wrapped("          ", "May go on regardless: "+s.Override+".")
	}
}

func (p *page) caution(plan *Plan, step string) {
	for _, c := range plan.Cautions {
		if c.Step == step {
			p.wrapped("  ! ", c.Text)
		}
	}
}

func (p *page) method(plan *Plan) {
	m := plan.Method
	p.head("method")
	if m.Practice != "" {
		p.line("  Practice: %s. Never anything between cold and hot.", strings.ToUpper(string(m.Practice)))
	}
	for _, why := range m.Why {
		p.wrapped("  ", why)
	}
	p.line("  Process: %s: %s", plan.Process, plan.Why)
	p.wrapped("  Filler: ", fmt.Sprintf("%s, %s: %s. Source: %s.", plan.Filler.Class, plan.Filler.Standard, plan.Filler.Why, plan.Filler.Source))
	p.line("  Hydrogen: counted with %s (scale %s)", quantity.Format(plan.Hydrogen, quantity.HydrogenContent), plan.Scale)
	p.wrapped("  ", m.HeatWords())
	p.wrapped("  ", m.After)
	for _, n := range plan.Notes {
		p.wrapped("  Note: ", n)
	}
	p.caution(plan, "welding")
}

// heat prints what the preheat of the runs hangs on.
func (p *page) heat(plan *Plan) {
	for i, text := range plan.PreheatWords() {
		if i == 0 {
			p.head("preheat")
		}
		p.wrapped("  ", text)
	}
}
