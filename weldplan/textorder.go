package weldplan

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"axlewright/quantity"
)

func vecOf(v [3]float64) r3.Vec { return r3.Vec{X: v[0], Y: v[1], Z: v[2]} }

func (p *page) sequence(plan *Plan) {
	s := plan.Sequence
	if s == nil {
		return
	}
	p.head("order")
	for i, step := range s.Steps {
		wait := ""
		if step.Pause != nil {
			wait = fmt.Sprintf("; then about %s there", celsius(step.Pause.Start))
			if step.Pause.Before >= 30 {
				wait = fmt.Sprintf("; wait about %.0f min, until %s there", math.Ceil(step.Pause.Before/60), celsius(step.Pause.Start))
			}
		}
		p.line("  %2d  %-16s from %s to %s, %s backstepped%s", i+1, step.Run, PlaceWords(step.From), PlaceWords(step.To), counted(len(step.Pieces), "bead", "beads"), wait)
	}
	p.line("  Temperatures by gauge or stick before each run; the minutes are an estimate (two sources of heat counted on top of each other, so rather long).")
	p.line("")
	p.movements(s)
	p.line("")
	p.line("  Orders compared, all movements over their limits together:")
	for _, c := range s.Compared {
		p.line("    %-16s  %s", c.Words(), c.Name)
	}
	for _, t := range s.Text {
		p.wrapped("  ", t)
	}
}

// movements prints what moves; what does not is named in one line.
func (p *page) movements(s *Sequence) {
	p.line("  What is expected to move, good to about a half; the limit, as drawn, in the worst order:")
	var still, sources []string
	for _, m := range s.Movements {
		note := func(list *[]string, text string) {
			if !slices.Contains(*list, text) {
				*list = append(*list, text)
			}
		}
		if !m.Seen() {
			note(&still, m.What)
			continue
		}
		note(&sources, m.Source)
		mark := " "
		if m.Over() {
			mark = "▲"
		}
		p.line("  %s %-46s %s; %s; %s; %s", mark, m.What, m.Words(), m.LimitWords(), m.DrawnWords(), m.WorstWords())
	}
	if len(still) > 0 {
		p.wrapped("    Not moved: ", strings.Join(still, "; "))
	}
	p.wrapped("    Limits: ", strings.Join(sources, "; "))
}

// unseen is less than any gauge of the shop shows.
const unseen = 1e-6 // m

// signed is a small movement with its sign.
func signed(m float64) string {
	mark := "+"
	if m < 0 {
		mark = "−"
	}
	return mark + quantity.FormatDigits(math.Abs(m), quantity.Length, 2)
}

func (p *page) vents(plan *Plan) {
	if len(plan.Vents) > 0 {
		p.head("vents")
		p.caution(plan, "vents")
	}
	for _, v := range plan.Vents {
		p.wrapped("  "+v.Cavity+": ", v.Vent+". "+v.Last+" "+v.Why)
		for _, n := range v.Notes {
			p.wrapped("    Note: ", n)
		}
	}
	for _, b := range plan.Backfills {
		p.head("backfill")
		p.wrapped("  "+b.Cavity+": ", b.Words())
		p.wrapped("  ", b.Limit+" Source: "+b.Source+".")
		for _, c := range b.Cautions {
			p.wrapped("  ! ", c)
		}
	}
}

func (p *page) stresses(plan *Plan) {
	if len(plan.Stresses) == 0 {
		return
	}
	p.head("stress from the loads given")
	idle := 0
	for _, s := range plan.Stresses {
		if s.Throat != nil && s.Throat.Use < 0.001 && s.Toe.Use < 0.001 {
			idle++
			continue
		}
		if s.Throat == nil {
			p.wrapped("  ", s.Load+": "+s.Note)
			continue
		}
		p.line("  %s, run %s (%s): weld %s of %s, %s used; casting toe %s of %s (%s), %s used", s.Load, s.Run, s.Model,
			stress(s.Throat.Equivalent), stress(s.Throat.Limit), quantity.Percent(s.Throat.Use),
			stress(math.Abs(s.Toe.Stress)), stress(s.Toe.Strength), quantity.FormatRange(s.Toe.Low, s.Toe.High, quantity.Pressure), quantity.Percent(s.Toe.Use))
		if f := s.Fatigue; f != nil {
			switch {
			case f.Note != "":
				p.wrapped("    fatigue: ", f.Note)
			case f.Endless:
				p.wrapped("    fatigue: ", fmt.Sprintf("below the lasting limit (%s, category %s)", f.Detail, stress(f.Category)))
			default:
				p.wrapped("    fatigue: ", fmt.Sprintf("%.2g cycles, %.2g asked for (%s, category %s, range %s)", f.Life, f.Cycles, f.Detail, stress(f.Category), stress(f.Range)))
			}
		}
	}
	if idle > 0 {
		p.line("  %s that a load does not reach (under a thousandth used) left out.", counted(idle, "case", "cases"))
	}
	p.wrapped("  ", "Weld: "+plan.Stresses[0].sourceOfWeld()+". Toe: "+plan.Stresses[0].sourceOfToe()+". A comparison with standards, not a rating: porosity, prior cracks, shock and weld quality are outside the sums.")
}

func stress(pa float64) string { return quantity.FormatDigits(pa, quantity.Pressure, 2) }

func (s *Stress) sourceOfWeld() string {
	if s.Throat == nil {
		return "not worked out"
	}
	return s.Throat.Source
}

func (s *Stress) sourceOfToe() string {
	if s.Toe == nil {
		return "not worked out"
	}
	return s.Toe.Source
}

func (p *page) lists(plan *Plan) {
	for _, l := range []struct {
		title string
		items []ListItem
		step  string
	}{{"check before", plan.Before, "cleaning"}, {"check after", plan.After, ""}} {
		p.head(l.title)
		p.caution(plan, l.step)
		for _, i := range l.items {
			text := i.Do
			if i.Good != "" {
				text += ": " + i.Good
			}
			p.wrapped("  □ ", text+" ("+i.Source+")")
		}
	}
}
