package web

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"slices"

	"axlewright/document"
	"axlewright/document/paper"
	"axlewright/drawing"
	"axlewright/shop"
	"axlewright/weldplan"
)

// A keptPlan is a weld plan as it stands in the record: printed, and never worked
// out again.
type keptPlan struct {
	Kit     string        `json:"kit"` // "KIT-T24-B.1"
	Plan    weldplan.Plan `json:"plan"`
	Picture string        `json:"picture"` // of the order, SVG
	Paper   []byte        `json:"paper"`   // PDF
	From    []string      `json:"from"`
	Assumed []string      `json:"assumed"`
	Seqs    []int64       `json:"entries"` // of the record, that it was made from
}

// A weldPlanShow is the page of a job's weld plan.
type weldPlanShow struct {
	Job     *shop.Job
	Role    shop.Role
	Stops   []shop.StandingStop // at the weld
	Running *running
	Kept    []*shop.Entry
	Entry   *shop.Entry // the plan shown
	Plan    *keptPlan
	Missing string         // why none can be made now
	Kit     shop.KitChoice // whose plates are to be welded; none where it is not known
	Changed bool           // the record says something else by now
	May     bool
}

// weldPlanPage shows the newest weld plan, or the one that is asked for.
func weldPlanPage(v *visit) error {
	j, err := v.job()
	if err != nil {
		return err
	}
	s := weldPlanShow{Job: j, Role: v.who.Role, Running: v.sums.of(weldSum(j.ID)), Kept: j.Kept(shop.EntryPlan), May: v.who.Role.May(shop.ActBuild)}
	if view, ok := j.Step("weld"); ok {
		s.Stops = view.Stops
	}
	ask, err := v.shop.AskWeld(v.ctx(), j)
	if code := shop.CodeOf(err); err != nil && code != shop.NotFound && code != shop.Invalid {
		return err
	} else if err != nil {
		s.Missing, s.Kit = faultOf(err).Says, ask.Kit
	}
	want := v.r.URL.Query().Get("plan")
	for _, e := range s.Kept {
		if want == "" || want == e.Place {
			s.Entry = e
		}
	}
	if s.Entry != nil {
		if s.Plan, err = v.readPlan(s.Entry); err != nil {
			return err
		}
		s.Changed = err == nil && s.Missing == "" && (!slices.Equal(s.Plan.Seqs, ask.FromSeqs) || s.Plan.Kit != ask.Kit.Kit.Name+"."+ask.Kit.Revision.Name)
	}
	return v.show(weldPlanSheet(v.frame("Weld plan").ofJob(j), s))
}

// weldSum is the name under which the plan of a job is worked out.
func weldSum(job shop.ID) shop.ID { return "weld plan of " + job }

// readPlan reads a plan as it was printed.
func (v *visit) readPlan(e *shop.Entry) (*keptPlan, error) {
	var p keptPlan
	content, err := v.shop.File(v.ctx(), *e.Value.File)
	if err != nil {
		return nil, err
	}
	if err := json.Unmarshal(content, &p); err != nil {
		return nil, shop.Fault(shop.Damaged, "This weld plan cannot be read.").Because(err)
	}
	return &p, nil
}

// weldPlanPaper is the newest plan as the sheet that was printed with it, or the
// one that is asked for.
func weldPlanPaper(v *visit) error {
	j, err := v.job()
	if err != nil {
		return err
	}
	want := v.r.URL.Query().Get("plan")
	kept := j.Kept(shop.EntryPlan)
	for i := len(kept) - 1; i >= 0; i-- {
		if want != "" && want != kept[i].Place {
			continue
		}
		p, err := v.readPlan(kept[i])
		if err != nil {
			return err
		}
		return v.showPDF("weld-plan-"+kept[i].Place+".pdf", p.Paper)
	}
	return shop.Fault(shop.NotFound, "This job has no such weld plan.")
}

// newestPlan is the plan that the bench goes by, nil where there is none.
func (v *visit) newestPlan(j *shop.Job) (*keptPlan, error) {
	all := j.Kept(shop.EntryPlan)
	if len(all) == 0 {
		return nil, nil
	}
	return v.readPlan(all[len(all)-1])
}

// askWeldPlan begins the search for an order; the plan is kept when it is done.
func askWeldPlan(v *visit) error {
	if err := v.who.Must(shop.ActBuild); err != nil {
		return err
	}
	j, err := v.job()
	if err != nil {
		return err
	}
	ask, err := v.shop.AskWeld(v.ctx(), j)
	if err != nil {
		return err
	}
	head, err := v.paperHead(j, "Weld plan")
	if err != nil {
		return err
	}
	who, ticket := v.who, string(shop.NewID())
	v.sums.anew(weldSum(j.ID), func(ctx context.Context, progress func(int, int)) error {
		return v.planWeld(ctx, who, j.ID, ask, head, ticket, progress)
	}, func(err error) string {
		if codeOf(err) == shop.Internal && !errors.Is(err, context.Canceled) {
			v.log.Error("weld plan failed", "job", j.ID, "error", err)
			return "The plan failed: " + firstLine(err.Error())
		}
		return faultOf(err).Says
	})
	return v.see(string(jobPath(j, "/weld-plan")))
}

// planWeld works a plan out and keeps it in the record.
func (s *Server) planWeld(ctx context.Context, who shop.Actor, job shop.ID, ask shop.WeldAsk, head paper.Head, ticket string, progress func(int, int)) error {
	past, err := s.shop.WeldEntries(ctx)
	if err != nil {
		return err
	}
	plan, err := weldplan.Make(&ask.Job, past, weldplan.Options{Progress: progress})
	if err != nil {
		return err
	}
	p := keptPlan{Kit: ask.Kit.Kit.Name + "." + ask.Kit.Revision.Name, Plan: plan, From: ask.From, Assumed: ask.Assumed, Seqs: ask.FromSeqs}
	var order drawing.Drawing
	if plan.Sequence != nil {
		p.Picture = svgOf(drawing.WeldOrder(&ask.Job, plan.Sequence, 170))
		order = drawing.WeldOrder(&ask.Job, plan.Sequence, document.WeldOrderWidth)
	}
	var sheet bytes.Buffer
	if err := document.WeldPlan(&plan, order, head, ask.From, ask.Assumed).WritePDF(&sheet); err != nil {
		return err
	}
	p.Paper = sheet.Bytes()
	content, err := json.Marshal(p)
	if err != nil {
		return err
	}
	verdict := "no stops"
	if why := plan.Refused(); why != "" {
		verdict = "no plan: " + plan.Stops[0].What
	} else if !plan.Go {
		verdict = count(len(plan.Stops), "stop", "stops") + " to clear"
	}
	_, err = s.shop.Attach(ctx, who, job, shop.Attachment{Kind: shop.EntryPlan, Step: "weld", Name: "weld-plan.json", Media: "application/json",
		Content: content, Words: []string{verdict}, Text: p.Kit + ", " + plan.Metal + ": " + verdict, Ticket: ticket})
	return err
}
