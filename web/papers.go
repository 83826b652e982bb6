package web

import (
	"slices"
	"strings"

	"github.com/a-h/templ"

	"axlewright/shop"
)

// paperPage shows a paper as a page that prints on A4 in black and white. Any
// paper may be printed before its boxes are full: the rest is for the pencil.
func paperPage(v *visit) error {
	j, err := v.job()
	if err != nil {
		return err
	}
	paper := shop.Paper(v.r.PathValue("paper"))
	steps, ok := paperSteps[paper]
	if !ok {
		return shop.Fault(shop.NotFound, "There is no such paper.")
	}
	b, err := v.bounds(v.ctx(), j)
	if err != nil {
		return err
	}
	p := paperShow{paperTime: paperTime{v.o.Now()}, Job: j, Paper: paper, House: *b.house}
	record := paper == shop.PaperBuildRecord // of what was done: no boxes for what was not, no cautions for what is over
	for _, key := range steps {
		view, ok := j.Step(key)
		if !ok || view.State == shop.StepNotNeeded {
			continue
		}
		for _, f := range view.Fields {
			if f.Applies && !f.Field.Run && !(record && f.Field.Optional) || filled(f) {
				p.Lines = append(p.Lines, v.paperLine(j, b, view.Step, f))
			}
		}
		if !record {
			p.Cautions = append(p.Cautions, view.Step.Cautions...)
		}
	}
	return v.show(paperSheet(v.frame(titleCase(string(paper))).ofJob(j), p))
}

// A paperShow is a paper of a job.
type paperShow struct {
	paperTime
	Job      *shop.Job
	Paper    shop.Paper
	House    shop.House
	Lines    []paperLine
	Cautions []string
}

// steps are the lines, step by step.
func (p paperShow) steps() [][]paperLine {
	var all [][]paperLine
	for _, l := range p.Lines {
		if n := len(all); n > 0 && all[n-1][0].Step == l.Step {
			all[n-1] = append(all[n-1], l)
			continue
		}
		all = append(all, []paperLine{l})
	}
	return all
}

// A paperLine is one field with its boxes.
type paperLine struct {
	Step, Title string
	Cells       []paperCell
	Range, From string
}

// A paperCell is one reading, or an empty box for the pencil.
type paperCell struct {
	Place, Text, Sign string
}

// paperSteps are the steps that each paper is filled from.
var paperSteps = map[shop.Paper][]shop.StepKey{
	shop.PaperEnquiry:        {"enquiry"},
	shop.PaperDonorTag:       {"donor"},
	shop.PaperIdentification: {"identify", "metal"},
	shop.PaperWeldLog:        {"plates", "jig", "weld", "cooled"},
	shop.PaperSetUpSheet:     {"assemble", "shim", "preload", "side", "lash", "pattern", "peg"},
	shop.PaperBuildRecord:    {"donor", "identify", "clean", "metal", "plates", "weld", "cooled", "caps", "bores", "stamp", "handover"},
	shop.PaperReturn:         {"return"},
}

func (v *visit) paperLine(j *shop.Job, b bounds, step shop.Step, f shop.FieldView) paperLine {
	line := paperLine{Step: step.Title, Title: f.Field.Title}
	if f.Field.Kind == shop.FieldFigure {
		x := v.boxOf(j, b, step.Key, f, f.Places[0])
		if x.Limit != nil {
			line.Range, line.From = rangeText(*x.Limit, f.Field.Dim), string(x.Limit.Origin)
		}
	}
	for _, p := range shownPlaces(f) {
		cell := paperCell{Place: p.Slot.Place}
		if p.Entry != nil {
			cell.Text = valueText(p.Entry.Value)
			if p.Entry.Verdict != "" && p.Entry.Verdict != shop.NotYet {
				cell.Sign = p.Entry.Verdict.Sign() + " " + string(p.Entry.Verdict)
			}
		}
		line.Cells = append(line.Cells, cell)
	}
	return line
}

// paperPath is where a paper is: those that are made of readings have a page,
// the others a page of their own kind.
func paperPath(j *shop.Job, p shop.Paper) templ.SafeURL {
	switch p {
	case shop.PaperCertificate:
		return jobPath(j, "/certificate")
	case shop.PaperRecommendation:
		return jobPath(j, "/advice")
	case shop.PaperQuote:
		return jobPath(j, "/quote")
	case shop.PaperCare:
		return jobPath(j, "/care")
	}
	if _, ok := paperSteps[p]; ok {
		return jobPath(j, "/paper/"+string(p))
	}
	return ""
}

// certificatePage shows the newest certificate, or what is missing for one.
func certificatePage(v *visit) error {
	j, err := v.job()
	if err != nil {
		return err
	}
	house, err := shop.Get[shop.House](v.ctx(), v.shop, shop.HouseID)
	if err != nil {
		return err
	}
	c := certificateShow{Job: j, House: house, Key: string(v.shop.PublicKey()), May: v.who.Role.May(shop.ActCertify)}
	for _, st := range standing(j.Stops()) {
		if slices.Contains(st.Steps, "handover") {
			c.Stops = append(c.Stops, st)
		}
	}
	if all := j.Certificates(); len(all) > 0 {
		c.Last = &all[len(all)-1]
		c.Since = j.Head.Seq - c.Last.Seq - 1
	}
	return v.show(certificateSheet(v.frame("Certificate of build").ofJob(j), c))
}

// A certificateShow is a certificate as it is printed.
type certificateShow struct {
	Job   *shop.Job
	House shop.House
	Last  *shop.Certificate
	Since int64 // entries written after it
	Key   string
	Stops []shop.StandingStop
	May   bool
}

// did lists what was done and measured, for the certificate.
func (c certificateShow) did() []paperCell {
	var all []paperCell
	add := func(title, text string) {
		if text != "" && text != "not in the record" {
			all = append(all, paperCell{Place: title, Text: text})
		}
	}
	works := words(c.Job.Works())
	if len(works) == 0 {
		works = []string{"rebuilt as standard"}
	}
	add("Built", strings.Join(works, ", "))
	if l := c.Job.Casting(); l != nil {
		add("Variant", l.Label)
	}
	for _, s := range []shop.Slot{{Step: "donor", Item: "teeth"}, {Step: "clean", Item: "cracks"}, {Step: "cooled", Item: "toes"}, {Step: "bores", Item: "line"}, {Step: "bores", Item: "decision"},
		{Step: "preload", Item: "torque"}, {Step: "side", Item: "spread"}, {Step: "lash", Item: "lash"}, {Step: "pattern", Item: "decision"}, {Step: "peg", Item: "gap"}, {Step: "caps", Item: "torque"}} {
		add(fieldTitle(s), standingText(c.Job, s))
	}
	return all
}

// carePage is the sheet that the customer keeps.
func carePage(v *visit) error {
	j, err := v.job()
	if err != nil {
		return err
	}
	house, err := shop.Get[shop.House](v.ctx(), v.shop, shop.HouseID)
	if err != nil {
		return err
	}
	return v.show(careSheet(v.frame("Care sheet").ofJob(j), j, house))
}

func titleCase(text string) string {
	if text == "" {
		return ""
	}
	return strings.ToUpper(text[:1]) + text[1:]
}
