package weldplan

import (
	"fmt"
	"math"

	"axlewright/quantity"
)

func band(b Band, d quantity.Dimension) string { return quantity.FormatRange(b.Low, b.High, d) }

func (p *page) runs(plan *Plan) {
	p.head("runs")
	for i := range plan.Runs {
		r := &plan.Runs[i]
		p.line("  %s  (%s, %s, %s)", r.Run, r.Plate, r.Joint, r.Position)
		p.line("    %s long, leg %s, throat %s, %s, beads of %s: %s", mm(r.Size.Length), mm(r.Size.Leg), mm(r.Size.Throat), counted(r.Size.Passes, "pass", "passes"), mm(r.Size.Piece), r.Size.Why)
		a := r.Amps
		p.line("    begin at %s, band %s (two plates alike: %s; 1 A to the thou: %.0f A, over-reads above 3 mm)", quantity.Format(a.First, quantity.Current), band(a.Band, quantity.Current), band(a.Table, quantity.Current), a.Rule)
		for _, why := range a.Reasons {
			p.wrapped("      ", why)
		}
		if l := a.Learned; l != nil {
			p.wrapped("      from the shop's logs: ", l.Text)
		}
		p.line("      Source: %s", a.Source)
		p.line("    travel %s, %.0f to %.0f V, heat %s", band(r.Arc.Speed, quantity.Speed), r.Arc.Volts.Low, r.Arc.Volts.High, band(r.Arc.Heat, quantity.HeatInput))
		p.line("    from 800 to 500 °C: plate %s, casting side %s (formula of steel)", seconds(r.Arc.Plate), seconds(r.Arc.Wall))
		if r.Start > plan.Method.LeastStart+1 || r.Between > plan.Method.MostStart+1 {
			p.line("    start at %s or more, %s at most between beads", celsius(r.Start), celsius(r.Between))
		}
		for _, t := range r.Toes {
			p.toe(t)
		}
	}
}

func (p *page) toe(t Toe) {
	switch {
	case t.High == 0:
		p.wrapped("    toe in the "+t.Where+": ", t.Note)
	case t.Formula:
		mark := "within"
		if t.Above {
			mark = "▲ may pass"
		}
		p.wrapped("    toe in the "+t.Where+": ", fmt.Sprintf("%.0f HV, %.0f to %.0f; %s the %s. Source: %s.", t.Middle, t.Low, t.High, mark, t.Note, t.Source))
	default:
		p.wrapped("    toe in the "+t.Where+": ", fmt.Sprintf("%.0f to %.0f HV, %s (%s)", t.Low, t.High, t.Note, t.Source))
	}
}

func seconds(c Cooling) string {
	if c.Note != "" {
		return "outside the formula"
	}
	return fmt.Sprintf("%s to %s s", twoDigits(c.Low), twoDigits(c.High))
}

// twoDigits rounds to two digits, so that a guess does not look like a reading.
func twoDigits(v float64) string {
	if v <= 0 {
		return "0"
	}
	unit := math.Pow(10, math.Floor(math.Log10(v))-1)
	if v < 10 {
		return fmt.Sprintf("%.1f", math.Round(v/unit)*unit)
	}
	return fmt.Sprintf("%.0f", math.Round(v/unit)*unit)
}

func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

func (p *page) uses(plan *Plan) {
	t := plan.Total
	p.head("consumables and time")
	p.line("  Filler %s (%.1f m), of which %s is laid.", quantity.Format(t.Filler, quantity.Mass), t.Rod, quantity.Format(t.Laid, quantity.Mass))
	if t.Gas > 0 {
		p.line("  Gas %s.", quantity.Format(t.Gas, quantity.Volume))
	}
	p.line("  Arc %.0f min; hands %.0f min, the arc burning three tenths of the time (common practice); waiting for heat %.0f min.", t.Arc/60, t.Hands/60, plan.Waiting/60)
	if l := plan.Learned; l != nil {
		p.wrapped("  Pace by the shop's logs: ", l.Text)
	}
}

func (p *page) tacks(plan *Plan) {
	p.head("tacks")
	p.line("  %s of 10 to 15 mm, every 40 to 50 mm, opposite sides in turn, one plate after another (common practice).", counted(len(plan.Tacks), "tack", "tacks"))
	p.line("  Gaps and mandrel again when all are set, before the first run. No edge is welded out first.")
	for i, t := range plan.Tacks {
		p.line("  %3d  %-16s %s", i+1, t.Run, placeOf(t.At))
	}
}

func placeOf(at [3]float64) string {
	return Place{At: vecOf(at)}.String()
}
