package weldplan

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"axlewright/quantity"
)

func band(b Band, d quantity.Dimension) string { return quantity.FormatRange(b.Low, b.High, d) }

// runs prints the runs, those with the same settings together.
func (p *page) runs(plan *Plan) {
	p.head("runs")
	var blocks []string
	names := map[string][]string{}
	for i := range plan.Runs {
		r := &plan.Runs[i]
		var text strings.Builder
		(&page{w: &text}).settings(plan, r)
		if names[text.String()] == nil {
			blocks = append(blocks, text.String())
		}
		names[text.String()] = append(names[text.String()], fmt.Sprintf("%s %s", r.Run, mm(r.Size.Length)))
	}
	for _, block := range blocks {
		p.wrapped("  ", strings.Join(names[block], "; "))
		p.line("%s", strings.TrimSuffix(block, "\n"))
	}
	p.wrapped("  Sources: ", strings.Join(sourcesOf(plan.Runs), "; ")+".")
}

// sourcesOf names where the figures of the runs are from, each once.
func sourcesOf(runs []RunPlan) (list []string) {
	for i := range runs {
		r := &runs[i]
		all := []string{"currents: " + r.Amps.Source, "heat: " + r.Arc.Source}
		for _, t := range r.Toes {
			if t.High > 0 {
				all = append(all, "hardness in the "+t.Where+": "+t.Source)
			}
		}
		for _, s := range all {
			if !slices.Contains(list, s) {
				list = append(list, s)
			}
		}
	}
	return list
}

// settings are how a run is welded, whatever its name and length.
func (p *page) settings(plan *Plan, r *RunPlan) {
	p.line("    %s, %s: leg %s, throat %s, %s; %s", r.Joint, r.Position, mm(r.Size.Leg), mm(r.Size.Throat), counted(r.Size.Passes, "pass", "passes"), r.Size.Why)
	a := r.Amps
	guess := fmt.Sprintf("begin at %s, band %s", quantity.Format(a.Used.First, quantity.Current), band(a.Used, quantity.Current))
	if l := a.Learned; l.Enough {
		p.wrapped("    ", guess+", from the shop's logs: "+l.Text)
		p.wrapped("      ", fmt.Sprintf("without the logs: %s, made of:", band(a.Band, quantity.Current)))
	} else {
		p.wrapped("    ", guess+"; logs: "+l.Text)
	}
	p.wrapped("      ", fmt.Sprintf("two plates alike: %s; 1 A to the thou: %.0f A, over-reads above 3 mm", band(a.Table, quantity.Current), a.Rule))
	for _, why := range a.Reasons {
		p.wrapped("      ", why)
	}
	p.line("    travel %s, %.0f to %.0f V, heat %s", band(r.Arc.Speed, quantity.Speed), r.Arc.Volts.Low, r.Arc.Volts.High, band(r.Arc.Heat, quantity.HeatInput))
	p.line("    from 800 to 500 °C: plate %s, casting side %s (formula of steel)", seconds(r.Arc.Plate), seconds(r.Arc.Wall))
	if r.Start > plan.Method.LeastStart+1 || r.Between > plan.Method.MostStart+1 {
		p.line("    start at %s or more, %s at most between beads", celsius(r.Start), celsius(r.Between))
	}
	for _, t := range r.Toes {
		p.toe(t)
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
		p.wrapped("    toe in the "+t.Where+": ", fmt.Sprintf("%.0f HV, %.0f to %.0f; %s the %s", t.Middle, t.Low, t.High, mark, t.Note))
	default:
		p.wrapped("    toe in the "+t.Where+": ", fmt.Sprintf("%.0f to %.0f HV, %s", t.Low, t.High, t.Note))
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
	p.head("consumables and time")
	for _, text := range plan.UseWords() {
		p.wrapped("  ", text)
	}
}

func (p *page) tacks(plan *Plan) {
	p.head("tacks")
	p.wrapped("  ", plan.TackWords())
	for i, t := range plan.Tacks {
		p.line("  %3d  %-16s %s", i+1, t.Run, PlaceWords(t.At))
	}
}
