package document

import (
	"strings"
	"time"

	"axlewright/assess"
	"axlewright/document/paper"
	"axlewright/shop"
)

// A Source is what the papers of a job are made from. What it does not have is
// left open on the paper, for the pencil.
type Source struct {
	Job     *shop.Job // nil prints the whole paper empty
	House   shop.House
	Casting *shop.Casting // the card of its variant
	Donor   *shop.Donor
	Quote   *shop.Quote
	Advice  *assess.Advice
	Of      string // which advice of the job it is, "2"
	Key     shop.PublicKey
	Day     time.Time // it is printed
	Prices  bool      // whoever prints it may see what the shop pays and asks
}

// jobPapers makes each paper of a job. A new one is a line here and a function
// in a file of its own; package paper says how to write it.
var jobPapers = map[shop.Paper]func(Source) paper.Paper{
	shop.PaperEnquiry:        enquirySheet,
	shop.PaperRecommendation: recommendationSheet,
	shop.PaperQuote:          quoteSheet,
	shop.PaperDonorTag:       donorTag,
	shop.PaperIdentification: identificationCard,
	shop.PaperWeldLog:        weldLog,
	shop.PaperSetUpSheet:     setUpSheet,
	shop.PaperBuildRecord:    buildRecord,
	shop.PaperRecord:         wholeRecord,
	shop.PaperCertificate:    certificateSheet,
	shop.PaperCare:           careSheet,
	shop.PaperReturn:         returnForm,
}

// Papers are the papers of a job, in the order of a job's life.
func Papers() []shop.Paper {
	return []shop.Paper{shop.PaperEnquiry, shop.PaperRecommendation, shop.PaperQuote, shop.PaperDonorTag, shop.PaperIdentification, shop.PaperWeldLog,
		shop.PaperSetUpSheet, shop.PaperBuildRecord, shop.PaperCertificate, shop.PaperCare, shop.PaperReturn, shop.PaperRecord}
}

// PaperFile is the name of a paper's file: "set-up-sheet.pdf".
func PaperFile(kind shop.Paper) string { return strings.ReplaceAll(string(kind), " ", "-") + ".pdf" }

// PaperOfFile is the paper of a file's name.
func PaperOfFile(name string) (shop.Paper, bool) {
	for kind := range jobPapers {
		if PaperFile(kind) == name {
			return kind, true
		}
	}
	return "", false
}

// JobPaper makes a paper of a job, and says whether there is such a paper.
func JobPaper(kind shop.Paper, s Source) (paper.Paper, bool) {
	write, ok := jobPapers[kind]
	if !ok {
		return paper.Paper{}, false
	}
	blank := s.Job == nil
	if blank {
		s.Job = shop.Read("", nil, shop.Head{})
		s.Day = time.Time{}
	}
	p := write(s)
	title := p.Title
	if p.Head = s.head(kind, blank); title != "" {
		p.Title = title
	}
	return p, true
}

// head is the same on all papers of a job.
func (s Source) head(kind shop.Paper, blank bool) paper.Head {
	h := paper.Head{Title: capital(string(kind)), Shop: s.House.Name, Day: s.Day}
	for _, part := range []string{s.House.Address, s.House.Phone, s.House.Mail} {
		if part != "" {
			h.Contact += part + "\n"
		}
	}
	if blank {
		return h
	}
	h.Number, h.Subject = s.Job.Stamped(), s.Job.Title()
	if h.Number == "" {
		h.Number, h.NumberOf = s.Job.NumberText(), "job, not stamped yet"
	}
	if c := s.Job.Casting(); c != nil {
		h.Subject += "\nvariant " + c.Label
	}
	return h
}

// blank says whether the paper is printed for no job.
func (s Source) blank() bool { return s.Job.Head.Seq == 0 }

// noClaim is what every paper says that a customer may take for more than it is.
const noClaim = "This claims no strength, is no rating and no approval for the road. Local codes and licensed inspection decide; tell the insurer."
