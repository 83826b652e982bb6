package document

import (
	"fmt"
	"strings"

	"axlewright/assess"
	"axlewright/drawing"
	"axlewright/quantity"
)

// A demandRow is one torque of the vehicle.
type demandRow struct {
	Name, Metric, Other, Range string
	Strong                     bool
}

// A buildRow is one build shown, numbered as on the ladder.
type buildRow struct {
	Number                                             int
	Label, Price, Carries, Lasts, Metric, Other, Range string
	Recommended                                        bool
}

func demandRows(d *assess.Demand) []demandRow {
	row := func(name string, b assess.Band, strong bool) demandRow {
		r := demandRow{Name: name, Strong: strong}
		r.Metric, r.Other, r.Range = columns(b)
		return r
	}
	return []demandRow{
		row("engine could send", d.Engine, false),
		row("tyres can hold", d.Grip, false),
		row(fmt.Sprintf("%s governs (%s of draws)", d.Limit, quantity.Chance(d.Share)), d.Governing, false),
		row("peak, with shock", d.Peak, true),
	}
}

// columns prints a band for columns headed N·m, lbf·ft and 10 to 90 % in N·m.
func columns(b assess.Band) (inMetric, inOther, span string) {
	if !finite(b.Median) {
		return "beyond", "", ""
	}
	bare := strings.NewReplacer(" N·m", "", " lbf·ft", "")
	return bare.Replace(metric(b.Median)), bare.Replace(other(b.Median)), bare.Replace(rangeText(b))
}

func demandWhy(d *assess.Demand) []string {
	var list []string
	if d.Why != "" {
		list = append(list, "Why: "+d.Why+".")
	}
	if d.IndexText != "" {
		list = append(list, "Demand index "+d.IndexText+".")
	}
	return list
}

func buildRows(a *assess.Advice) (rows []buildRow, hidden string) {
	shown := drawing.Shown(a)
	for n, i := range shown {
		b := &a.Builds[i]
		row := buildRow{
			Number: n + 1, Label: drawing.Clean(b.Label()), Recommended: i == a.Recommended,
			Carries: drawing.StateOf(b.Carries.Value, a.Wanted).Sign() + " " + quantity.Chance(b.Carries.Value),
		}
		if a.Distance > 0 {
			row.Lasts = quantity.Chance(b.Lasts.Value)
		}
		row.Price = price(b.Price)
		row.Metric, row.Other, row.Range = columns(b.GiveOut)
		rows = append(rows, row)
	}
	return rows, hiddenWords(len(a.Builds)-len(shown), len(a.SetAside))
}
