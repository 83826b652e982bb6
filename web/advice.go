package web

import (
	"context"
	"encoding/json"
	"errors"
	"net/http"
	"strings"

	"axlewright/assess"
	"axlewright/axle"
	"axlewright/shop"
)

// An adviceShow is the page on which the sums are asked.
type adviceShow struct {
	Job     *shop.Job
	Ask     enquiryForm
	Running *running
	Kept    []keptAsking
	May     bool
	Missing string // why the sums cannot be asked here
	Empty   bool   // the shop has no catalogue yet
	Begin   bool   // this person may begin one
}

// advicePage shows the enquiry as the sums take it, and what they said before.
func advicePage(v *visit) error {
	j, err := v.job()
	if err != nil {
		return err
	}
	return v.showAdvice(http.StatusOK, j, func(c axle.Catalogue) (enquiryForm, error) { return v.enquiryOf(j, c) })
}

// showAdvice shows the page with a form that is filled as ask says.
func (v *visit) showAdvice(status int, j *shop.Job, ask func(axle.Catalogue) (enquiryForm, error)) error {
	a := adviceShow{Job: j, Running: v.sums.of(j.ID), May: v.who.Role.May(shop.ActSell)}
	var err error
	if a.Kept, err = v.keptAskings(j); err != nil {
		return err
	}
	files := v.catalogue()
	a.Empty, a.Begin = len(files) == 0, v.who.Role.May(shop.ActSettings) && v.o.Folder != ""
	if !a.Empty {
		c, err := axle.LoadCatalogue(files...)
		if err != nil {
			a.Missing = "The shop’s catalogue cannot be read: " + faultOf(err).Says
		} else if a.Ask, err = ask(c); err != nil {
			return err
		}
	}
	return v.showAs(status, adviceSheet(v.frame("Advice").ofJob(j), a))
}

// A keptAsking is advice of a job with what tells it from the others.
type keptAsking struct {
	*shop.Entry
	From string // axle load, tyre and engine torque, as they were asked
}

// keptAskings are the advice kept with a job, oldest first.
func (v *visit) keptAskings(j *shop.Job) ([]keptAsking, error) {
	var all []keptAsking
	for _, e := range j.Kept(shop.EntryAdvice) {
		k := keptAsking{Entry: e}
		if e.Value.File != nil {
			content, err := v.shop.File(v.ctx(), *e.Value.File)
			if err != nil {
				return nil, err
			}
			var p struct {
				Enquiry string `json:"enquiry"`
			}
			if json.Unmarshal(content, &p) != nil { // its own page says that it is damaged
				k.From = "it cannot be read"
			} else {
				k.From = askedWith(p.Enquiry)
			}
		}
		all = append(all, k)
	}
	return all, nil
}

// askedWith is the axle load, tyre and engine torque of an enquiry, as typed.
func askedWith(enquiry string) string {
	values := flatten(enquiry)
	var parts []string
	for _, x := range []struct{ name, path string }{{"axle load", "vehicle.axle_load"}, {"tyre", "vehicle.tyre"}, {"engine torque", "vehicle.engine"}} {
		if text := values[x.path]; text != "" {
			parts = append(parts, x.name+" "+text)
		}
	}
	return strings.Join(parts, " · ")
}

// keepEnquiry keeps the enquiry with the vehicle, as it was typed.
func keepEnquiry(v *visit) error {
	if _, _, _, err := v.readEnquiry(); err != nil {
		return err
	}
	return v.see("/job/" + string(v.jobID()) + "/advice")
}

// askAdvice keeps the enquiry and begins the sums, or says at each field why
// they cannot take it.
func askAdvice(v *visit) error {
	if err := v.who.Must(shop.ActSell); err != nil {
		return err
	}
	asked, j, form, err := v.readEnquiry()
	if err != nil {
		return err
	}
	e, _, err := v.loadEnquiry(asked)
	var found axle.Findings
	if errors.As(err, &found) {
		return v.showAdvice(http.StatusUnprocessableEntity, j, func(c axle.Catalogue) (enquiryForm, error) { return askedAgain(form, c, found), nil })
	}
	if err != nil {
		return err
	}
	if asks := unconfirmed(axle.Unusual(&e), form); len(asks) > 0 {
		return v.showAdvice(http.StatusUnprocessableEntity, j, func(c axle.Catalogue) (enquiryForm, error) { return askedAfter(form, c, asks), nil })
	}
	who, job := v.who, v.jobID()
	ticket := string(shop.NewID())
	v.sums.anew(job, func(ctx context.Context, progress func(int, int)) error {
		answer, err := v.work(ctx, asked, progress)
		if err != nil {
			return err
		}
		return KeepAdvice(ctx, v.shop, who, job, answer, ticket)
	}, func(err error) string {
		if !errors.Is(err, context.Canceled) && codeOf(err) != shop.Invalid {
			v.log.Error("sums failed", "job", job, "error", err)
		}
		if code := codeOf(err); code == shop.Internal {
			return "The sums failed: " + firstLine(err.Error())
		}
		return faultOf(err).Says
	})
	return v.see("/job/" + string(job) + "/advice")
}

// work loads the enquiry as any other file and runs the sums.
func (s *Server) work(ctx context.Context, asked string, progress func(int, int)) (Answer, error) {
	e, c, err := s.loadEnquiry(asked)
	if err != nil {
		return Answer{}, err
	}
	a, err := assess.Advise(ctx, &e, &c, assess.Options{Progress: progress})
	return Answer{Advice: &a, Enquiry: &e, Catalogue: &c, Asked: asked}, err
}

// An Answer is advice and what it was asked with.
type Answer struct {
	Advice    *assess.Advice
	Enquiry   *axle.Enquiry
	Catalogue *axle.Catalogue
	Asked     string // the enquiry as YAML
}

// KeepAdvice prints advice and keeps it with a job, as the advice page does.
func KeepAdvice(ctx context.Context, sh *shop.Shop, by shop.Actor, job shop.ID, a Answer, ticket string) error {
	printed, err := printAdvice(a.Advice, a.Enquiry, a.Catalogue, a.Asked)
	if err != nil {
		return err
	}
	content, err := json.Marshal(printed)
	if err != nil {
		return err
	}
	best := a.Advice.Builds[a.Advice.Best].Carries.Value
	_, err = sh.Attach(ctx, by, job, shop.Attachment{Kind: shop.EntryAdvice, Step: "enquiry", Name: "advice.json",
		Media: "application/json", Content: content, Words: []string{printed.Verdict}, Text: printed.Headline, Holds: &best, Ticket: ticket})
	return err
}

// keptAdvice reads advice as it was printed.
func (v *visit) keptAdvice() (*shop.Job, *shop.Entry, printedAdvice, error) {
	var p printedAdvice
	j, err := v.job()
	if err != nil {
		return nil, nil, p, err
	}
	for _, e := range j.Kept(shop.EntryAdvice) {
		if e.Place != v.r.PathValue("place") || e.Value.File == nil {
			continue
		}
		content, err := v.shop.File(v.ctx(), *e.Value.File)
		if err != nil {
			return nil, nil, p, err
		}
		if err := json.Unmarshal(content, &p); err != nil {
			return nil, nil, p, shop.Fault(shop.Damaged, "This advice cannot be read.").Because(err)
		}
		return j, e, p, nil
	}
	return nil, nil, p, shop.Fault(shop.NotFound, "This job has no such advice.")
}

// keptAdvicePage shows advice as it was given.
func keptAdvicePage(v *visit) error {
	j, e, p, err := v.keptAdvice()
	if err != nil {
		return err
	}
	f := v.frame("Advice " + e.Place).ofJob(j)
	return v.show(keptAdviceSheet(f, j, e, p))
}

func firstLine(text string) string {
	line, _, _ := strings.Cut(text, "\n")
	return line
}
