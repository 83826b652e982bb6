package document

import (
	"fmt"
	"strings"

	"axlewright/assess"
	"axlewright/document/paper"
	"axlewright/drawing"
)

// Recommendation is advice as one page of A4: the answer, why, the ladder, the
// builds side by side, and what is not known.
func Recommendation(a *assess.Advice) paper.Paper {
	p := recommendationSheet(Source{Advice: a})
	p.Head = paper.Head{Title: "Recommendation", Number: a.Enquiry, NumberOf: "enquiry", Subject: a.Customer + fmt.Sprintf("\ncasting %s, gear set %s, %s axle", a.Casting, a.Gears, a.Mounting.Position)}
	return p
}

func recommendationSheet(s Source) paper.Paper {
	if s.Advice == nil {
		return recommendationForm()
	}
	a := s.Advice
	var p paper.Paper
	sign, answer := recommendation(a, numbered(a))
	p.Add(paper.Answer{Sign: sign, Words: answer})
	from := fromWords(a)
	if s.Of != "" {
		from = strings.TrimSpace(fmt.Sprintf("Advice %s, %s. %s", s.Of, s.Day.Format("2 January 2006, 15:04"), from))
	}
	if from != "" {
		p.Add(paper.Text{Words: from, Small: true})
	}
	var demand [][]string
	for _, r := range demandRows(&a.Demand) {
		demand = append(demand, []string{r.Name, r.Metric, r.Other, r.Range})
	}
	left := []paper.Block{
		paper.Heading{Text: "What the vehicle demands"},
		paper.Table{Small: true, Rows: demand, Columns: []paper.Column{{Title: "both wheels together", Share: 2.5}, {Title: "N·m", Right: true, Bold: true}, {Title: "lbf·ft", Right: true}, {Title: "10–90 %, N·m", Share: 1.6, Right: true}}},
		paper.Text{Words: strings.Join(demandWhy(&a.Demand), " "), Small: true},
	}
	flank := fmt.Sprintf("It pulls forward on the %s side of the crown wheel's teeth. The two sides push the crown wheel off the pinion with different force, and caps, adjusters and peg must hold it. %s", a.Mounting.Forward, flankWords(a))
	right := []paper.Block{paper.Heading{Text: "Why this one"}}
	for _, x := range besideDemand(a) {
		right = append(right, sectionBlocks(x)...)
	}
	right = append(right, paper.Text{Words: flank, Small: true})
	p.Add(paper.Columns{Left: left, Right: right})
	p.Add(paper.Heading{Text: "Where each build gives out"}, paper.Grow{Least: 68, Most: 118, Draw: func(width, height float64) drawing.Drawing { return drawing.LadderSized(a, width, height) }})
	rows, hidden := buildRows(a)
	var builds [][]string
	for _, b := range rows {
		builds = append(builds, []string{fmt.Sprint(b.Number), b.Label, b.Price, b.Carries, b.Lasts, b.Metric, b.Other, b.Range})
	}
	p.Add(paper.Text{Words: ladderNote(a), Small: true},
		paper.Table{Small: true, Rows: builds, Columns: []paper.Column{{Title: "no.", Share: 8}, {Title: "build", Share: 92}, {Title: "price", Share: 12, Right: true},
			{Title: "carries", Share: 17}, {Title: "lasts", Share: 13}, {Title: "out, N·m", Share: 15, Right: true, Bold: true}, {Title: "lbf·ft", Share: 13, Right: true}, {Title: "10–90 %, N·m", Share: 25, Right: true}}})
	if hidden != "" {
		p.Add(paper.Text{Words: hidden, Small: true})
	}
	var below paper.Balanced
	for _, x := range belowLadder(a) {
		below = append(below, sectionBlocks(x)...)
	}
	p.Add(below, paper.Notes{})
	p.Foot = fmt.Sprintf("%d draws, seed %d. Torques at the axle, both wheels together. “10–90 %%” is our doubt, not a tolerance. This is a comparison, not a rating, and no approval for the road.", a.Draws, a.Seed)
	return p
}

// sectionBlocks are a section of an advice as blocks.
func sectionBlocks(x section) []paper.Block {
	if x.runsIn() {
		return []paper.Block{paper.Text{Words: x.Title + " " + x.Items[0].Text, Small: true}}
	}
	lines := []string{}
	for _, i := range x.Items {
		lines = append(lines, strings.TrimSpace(strings.Join([]string{i.Mark, i.Lead, i.Text}, " ")))
	}
	return []paper.Block{paper.Group{paper.Heading{Text: x.Title, Small: true}, paper.Text{Words: strings.Join(lines, "\n"), Small: true}}}
}

// recommendationForm is for an answer given by hand, on the telephone.
func recommendationForm() paper.Paper {
	var p paper.Paper
	p.Add(paper.Boxes{
		{Label: "Front or rear", Options: []string{"rear", "front"}}, {Label: "Diff centre", Options: []string{"open", "limited slip", "locker"}},
		{Label: "Peak torque at the axle", From: "engine or tyre limit, whichever is lower, times shock", Unit: "N·m"}, {Label: "The same", Unit: "lbf·foot"},
		{Label: "What governs it", Options: []string{"engine", "tyres"}}, {Label: "Chance wanted", Unit: "%"},
		{Label: "Weak link as it stands", Wide: true}, {Label: "Recommended", Wide: true}, {Label: "Why not the next one up", Wide: true},
		{Label: "Price", Unit: "from"}, {Label: "Price", Unit: "to"},
		{Label: "What we do not know", Wide: true}, {Label: "What to measure next", Wide: true},
	}, paper.Caution{Words: noClaim}, paper.Sign{"Advised by"}, paper.Notes{})
	p.Foot = "Oil: new after 800 km (500 mi), then every 20,000 km (12,000 mi) and after deep water. Custom of the trade, no source."
	return p
}

// ladderNote tells how the ladder is read.
func ladderNote(a *assess.Advice) string {
	wear, lasts := "", ""
	if a.Distance > 0 {
		wear = ", or (hollow end) wears out before " + distance(a.Distance)
		lasts = " Lasts: the chance that nothing wears out before that."
	}
	return "A rung is the torque at which a link slips, breaks, moves too far" + wear +
		"; its whisker holds 10 to 90 % of the draws. First in 58 %: it goes first in 58 % of them." + lasts
}
