package document

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"axlewright/document/paper"
	"axlewright/drawing"
	"axlewright/weldplan"
)

// WeldOrderWidth is how wide the picture of the order is on the sheet, mm.
const WeldOrderWidth = 98.0

// WeldPlan is a weld plan as one sheet for the bench: how, the order with its
// picture, what may move, vents, and the check lists to tick off. order is the
// picture, empty where no order was sought; from and assumed are what the plan was
// made from.
func WeldPlan(plan *weldplan.Plan, order drawing.Drawing, head paper.Head, from, assumed []string) paper.Paper {
	p := paper.Paper{Head: head, Foot: drawing.WeldOrderSays + "\nIt approves nothing: local codes and a licensed welding engineer come first. Movements are good to about a half."}
	p.Title = "Weld plan"
	for _, s := range plan.Stops {
		p.Add(paper.Caution{Words: "✕ STOP: " + s.What + ". " + s.Why + " Clears it: " + s.Clear + " May go on regardless: " + s.Override + "."})
	}
	sources := paper.Text{Words: planSources(from, assumed), Small: true}
	facts := paper.Text{Words: planFacts(plan), Small: true}
	if plan.Refused() != "" || plan.Method == nil {
		p.Add(facts, sources)
	} else {
		sums := paper.Text{Words: planSums(plan), Small: true}
		uses := paper.Text{Words: strings.Join(plan.UseWords(), " "), Small: true}
		if len(order.Layers) > 0 {
			p.Add(paper.Columns{Left: []paper.Block{paper.Picture{Drawing: order}, uses, sources}, Right: []paper.Block{facts, sums}, Share: 0.54})
		} else {
			p.Add(facts, sums, uses, sources)
		}
		p.Add(orderTable(plan))
	}
	p.Add(paper.Caution{Words: cautionWords(plan)}, paper.Columns{
		Left:  []paper.Block{paper.Heading{Text: "Check before"}, tickList(plan.Before)},
		Right: []paper.Block{paper.Heading{Text: "Check after"}, tickList(plan.After)}, Share: 0.54,
	}, paper.Sign{"Checked and welded by"})
	return p
}

// planFacts are metal, practice, process, filler and heat.
func planFacts(plan *weldplan.Plan) string {
	text := fmt.Sprintf("Casting %s, %s.", plan.Variant, plan.Metal)
	if plan.Note != "" {
		text += " " + plan.Note + "."
	}
	if m := plan.Method; m != nil && plan.Refused() == "" {
		if m.Practice != "" {
			text += fmt.Sprintf(" Practice: %s, never between cold and hot.", m.Practice)
		}
		text += fmt.Sprintf(" %s, filler %s (%s). %s %s", plan.Process, plan.Filler.Class, plan.Filler.Standard, m.HeatWords(), m.After)
		if t := plan.PreheatShort(); t != "" {
			text += " " + t
		}
	}
	return text
}

// planSources are what the plan was made from.
func planSources(from, assumed []string) string {
	text := ""
	for _, t := range assumed {
		text += "△ Assumed: " + t + ". "
	}
	if len(from) > 0 {
		text += "From the record: "
		for i, t := range from {
			if i > 0 {
				text += "; "
			}
			text += t
		}
		text += "."
	}
	return text
}

// orderTable is the order, a row a run.
func orderTable(plan *weldplan.Plan) paper.Table {
	t := paper.Table{Small: true, Columns: []paper.Column{{Share: 0.55}, {Title: "run", Share: 1.6, Bold: true}, {Title: "plate", Share: plateShare(plan)}, {Title: "joint", Share: 1.8}, {Title: "leg", Share: 2.1},
		{Title: "beads, backstepped", Share: 2.6}, {Title: "begin at, band", Share: 2.2}, {Title: "first wait, until", Share: 2.4}}}
	for _, r := range plan.OrderRows() {
		t.Rows = append(t.Rows, []string{fmt.Sprint(r.Turn), r.Run, r.Plate, r.Joint, r.Leg, r.BeadsShort, r.AmpsShort, r.WaitShort})
	}
	return t
}

// plateShare gives plates that are called by words the room that marks do not need.
func plateShare(plan *weldplan.Plan) float64 {
	longest := 0
	for i := range plan.Runs {
		longest = max(longest, len(plan.Runs[i].Plate))
	}
	return math.Max(0.75, 0.13*float64(min(longest, 12)))
}

// planSums are tacks, what may move, vents and filling.
func planSums(plan *weldplan.Plan) string {
	text := "Tacks: " + plan.TackWords()
	if plan.Sequence != nil {
		text += "\n" + plan.Sequence.Text[0]
		if over := overLimit(plan.Sequence.Movements); len(over) > 0 {
			text += " △ May pass their limits: " + strings.Join(over, "; ") + "."
		}
	}
	for _, v := range plan.Vents {
		text += fmt.Sprintf("\nVent %s: %s. %s", v.Cavity, v.Vent, v.Last)
	}
	for i := range plan.Backfills {
		b := &plan.Backfills[i]
		text += fmt.Sprintf("\nFill %s: %s Filler, sealer and damper, never structure.", b.Cavity, b.Words())
	}
	return text
}

// overLimit are the movements that may pass their limits, the farthest over first;
// beyond a few only how many more there are.
func overLimit(moves []weldplan.Movement) []string {
	const most = 2
	over := slices.DeleteFunc(slices.Clone(moves), func(m weldplan.Movement) bool { return !m.Over() })
	slices.SortStableFunc(over, func(a, b weldplan.Movement) int {
		return cmp.Compare(math.Abs(b.Moves)/b.Limit, math.Abs(a.Moves)/a.Limit)
	})
	var all []string
	for i := range over {
		if i == most {
			return append(all, fmt.Sprintf("and %d more", len(over)-most))
		}
		all = append(all, fmt.Sprintf("%s %s (allowed %s)", over[i].What, over[i].Words(), over[i].LimitWords()))
	}
	return all
}

// cautionWords are the cautions of cleaning and welding in one frame.
func cautionWords(plan *weldplan.Plan) string {
	var all []string
	for _, c := range plan.Cautions {
		if c.Step == "welding" || c.Step == "cleaning" {
			all = append(all, c.Text)
		}
	}
	return strings.Join(all, " ")
}

func tickList(items []weldplan.ListItem) paper.Text {
	var all []string
	for _, x := range items {
		words := "□ " + x.Do
		if x.Good != "" {
			words += ": " + x.Good
		}
		all = append(all, words)
	}
	return paper.Text{Words: strings.Join(all, "\n"), Small: true}
}

// A LoggedRun is one run in a weld log: what is empty is for the pencil.
type LoggedRun struct {
	Turn, Run, Planned                      string
	Amps, Volts, Minutes, Lot, Between, Who string
}

// WeldLog is what was really used, run by run; empty cells are for the pencil.
func WeldLog(runs []LoggedRun, head paper.Head, cautions []string) paper.Paper {
	p := paper.Paper{Head: head, Foot: "What was used, not what should be. The next plan of this shop learns from it."}
	p.Title = "Weld log"
	for _, c := range cautions {
		p.Add(paper.Caution{Words: c})
	}
	t := paper.Table{Columns: []paper.Column{{Title: "", Share: 0.55}, {Title: "run", Share: 1.3}, {Title: "planned", Share: 2.8}, {Title: "amps", Right: true}, {Title: "volts", Right: true},
		{Title: "minutes", Right: true}, {Title: "filler lot", Share: 1.8}, {Title: "between runs", Share: 1.3, Right: true}, {Title: "who", Share: 0.9}}, Blank: 3}
	for _, r := range runs {
		t.Rows = append(t.Rows, []string{r.Turn, r.Run, r.Planned, r.Amps, r.Volts, r.Minutes, r.Lot, r.Between, r.Who})
	}
	p.Add(t, paper.Sign{"Welded by"}, paper.Notes{})
	return p
}
