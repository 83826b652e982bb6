package web

import (
	"bytes"
	"encoding/json"
	"errors"
	"mime"
	"strings"

	"github.com/a-h/templ"

	"axlewright/document"
	"axlewright/document/paper"
	"axlewright/shop"
)

// jobPaper prints a paper of a job as PDF. Any may be printed before its boxes
// are full: what is open is for the pencil.
func jobPaper(v *visit) error {
	kind, ok := document.PaperOfFile(v.r.PathValue("paper"))
	if !ok {
		return shop.Fault(shop.NotFound, "There is no such paper.")
	}
	j, err := v.job()
	if err != nil {
		return err
	}
	s := document.Source{Job: j, Key: v.shop.PublicKey(), Day: v.o.Now(), Prices: v.who.Role.May(shop.ActPrices)}
	b, err := v.bounds(v.ctx(), j)
	if err != nil {
		return err
	}
	s.House, s.Casting = *b.house, b.casting
	switch kind {
	case shop.PaperDonorTag:
		err = v.donorOf(&s)
	case shop.PaperQuote:
		err = v.quoteOf(&s)
	case shop.PaperRecommendation:
		err = v.adviceOf(&s)
	}
	if err != nil {
		return err
	}
	p, _ := document.JobPaper(kind, s)
	return v.sendPaper(p)
}

// emptyPaper prints a paper for no job, all of it for the pencil.
func emptyPaper(v *visit) error {
	kind, ok := document.PaperOfFile(v.r.PathValue("paper"))
	if !ok {
		return shop.Fault(shop.NotFound, "There is no such paper.")
	}
	house, err := shop.Get[shop.House](v.ctx(), v.shop, shop.HouseID)
	if err != nil {
		return err
	}
	p, _ := document.JobPaper(kind, document.Source{House: house, Prices: true})
	return v.sendPaper(p)
}

// keptAdvicePaper prints one advice of a job, as it was given.
func keptAdvicePaper(v *visit) error {
	j, e, p, err := v.keptAdvice()
	if err != nil {
		return err
	}
	house, err := shop.Get[shop.House](v.ctx(), v.shop, shop.HouseID)
	if err != nil {
		return err
	}
	sheet, _ := document.JobPaper(shop.PaperRecommendation, document.Source{Job: j, House: house, Advice: p.Advice, Day: e.At.Local(), Of: e.Place})
	return v.sendPaper(sheet)
}

// sendPaper sends a paper to be looked at, printed or kept.
func (v *visit) sendPaper(p paper.Paper) error {
	var out bytes.Buffer
	if err := p.WritePDF(&out); err != nil {
		return shop.Fault(shop.Internal, "This paper cannot be printed.").Because(err)
	}
	h := v.w.Header()
	h.Set("Content-Type", "application/pdf")
	h.Set("Content-Security-Policy", "default-src 'none'; object-src 'self'; style-src 'unsafe-inline'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'") // for the browser's own viewer
	name := strings.TrimSpace(strings.ReplaceAll(p.Title, " ", "-")+" "+p.Number) + ".pdf"
	h.Set("Content-Disposition", mime.FormatMediaType("inline", map[string]string{"filename": name}))
	_, err := v.w.Write(out.Bytes())
	return err
}

func (v *visit) donorOf(s *document.Source) error {
	link := s.Job.Value("donor", "donor").Link
	if link == nil {
		return nil
	}
	d, err := shop.Get[shop.Donor](v.ctx(), v.shop, link.ID)
	if err == nil {
		s.Donor = &d
	}
	if shop.CodeOf(err) == shop.NotFound {
		return nil
	}
	return err
}

func (v *visit) quoteOf(s *document.Source) error {
	all, err := v.shop.Quotes(v.ctx(), v.who, s.Job)
	if len(all) > 0 {
		s.Quote = &all[len(all)-1]
	}
	return err
}

// adviceOf takes the newest advice that was kept with the job.
func (v *visit) adviceOf(s *document.Source) error {
	all := s.Job.Kept(shop.EntryAdvice)
	if len(all) == 0 || all[len(all)-1].Value.File == nil {
		return nil
	}
	last := all[len(all)-1]
	content, err := v.shop.File(v.ctx(), *last.Value.File)
	if err != nil {
		return err
	}
	var p printedAdvice
	if err := json.Unmarshal(content, &p); err != nil {
		return shop.Fault(shop.Damaged, "This advice cannot be read.").Because(err)
	}
	if p.Advice == nil {
		return shop.Fault(shop.Damaged, "This advice cannot be read.").Because(errors.New("it holds no answer"))
	}
	s.Advice, s.Day, s.Of = p.Advice, last.At.Local(), last.Place
	return nil
}

// paperPath is where a paper of a job is printed.
func paperPath(j *shop.Job, p shop.Paper) templ.SafeURL {
	return jobPath(j, "/paper/"+document.PaperFile(p))
}

// newestOf says which of several answers a job's paper prints: the newest advice.
func newestOf(j *shop.Job, p shop.Paper) string {
	all := j.Kept(shop.EntryAdvice)
	if p != shop.PaperRecommendation || len(all) == 0 {
		return ""
	}
	last := all[len(all)-1]
	return ", advice " + last.Place + " of " + when(last.At)
}

// emptyPath is where a paper is printed for the pencil.
func emptyPath(p shop.Paper) templ.SafeURL {
	return templ.SafeURL("/paper/" + document.PaperFile(p))
}

// certificatePage shows the newest certificate, or what is missing for one.
func certificatePage(v *visit) error {
	j, err := v.job()
	if err != nil {
		return err
	}
	c := certificateShow{Job: j, Key: string(v.shop.PublicKey()), May: v.who.Role.May(shop.ActCertify), Stops: j.OutStops(), Missing: j.NotInRecord()}
	given := j.Kept(shop.EntryCertificate)
	if all := j.Certificates(); len(all) > 0 {
		c.Last, c.Given = &all[len(all)-1], given[len(given)-1]
		c.Since = j.Head.Seq - c.Last.Seq - 1
	}
	return v.show(certificateSheet(v.frame("Certificate of build").ofJob(j), c))
}

// A certificateShow is what there is to say of a unit's certificate.
type certificateShow struct {
	Job   *shop.Job
	Last  *shop.Certificate
	Given *shop.Entry // who gave it, and when
	Since int64       // entries written after it
	Key   string
	Stops []shop.StandingStop
	May   bool

	Missing []string // steps of the build with boxes left empty
}

// titleCase begins a sentence.
func titleCase(text string) string {
	if text == "" {
		return ""
	}
	return strings.ToUpper(text[:1]) + text[1:]
}
