package document_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"axlewright/demo"
	"axlewright/document"
	"axlewright/drawing/sample"
	"axlewright/shop"
	"axlewright/sqlstore"
)

// kinds are all papers of a job.
var kinds = []shop.Paper{shop.PaperEnquiry, shop.PaperRecommendation, shop.PaperQuote, shop.PaperDonorTag, shop.PaperIdentification, shop.PaperWeldLog,
	shop.PaperSetUpSheet, shop.PaperBuildRecord, shop.PaperRecord, shop.PaperCertificate, shop.PaperCare, shop.PaperReturn}

// house is the shop of the papers.
var house = shop.House{Name: "Fellgate Axle Works", Address: "3 Fellgate Lane, Lower Fell", Phone: "01000 111 222", Terms: "Twelve months on weld and setting-up. Not on gears made by others."}

// demoJobs are the jobs of the invented shop, handed over ones first.
func demoJobs(t *testing.T) (*shop.Shop, []*shop.Job) {
	store, err := sqlstore.Open(t.Context(), sqlstore.Options{Dir: t.TempDir()})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { store.Close() })
	filled, err := demo.Fill(t.Context(), store, time.Date(2026, 11, 25, 12, 0, 0, 0, time.Local), "number: 14")
	if err != nil {
		t.Fatal(err)
	}
	sh, err := shop.Open(t.Context(), store, shop.Options{})
	if err != nil {
		t.Fatal(err)
	}
	var jobs []*shop.Job
	for _, state := range []shop.State{shop.StateOut, shop.StateReady, shop.StateBench, shop.StateBack, shop.StateEnquiry} {
		for _, id := range filled.Jobs[state] {
			j, err := sh.Job(t.Context(), id)
			if err != nil {
				t.Fatal(err)
			}
			jobs = append(jobs, j)
		}
	}
	return sh, jobs
}

// laid is a paper's text, after looking whether all of it lies on its pages.
func laid(t *testing.T, kind shop.Paper, s document.Source) (pages int, text string) {
	t.Helper()
	p, ok := document.JobPaper(kind, s)
	if !ok {
		t.Fatalf("there is no %s", kind)
	}
	return said(t, p)
}

// keep writes a paper where it can be looked at.
func keep(t *testing.T, name string, kind shop.Paper, s document.Source) {
	dir := os.Getenv("AXLEWRIGHT_PAPERS")
	if dir == "" {
		return
	}
	p, _ := document.JobPaper(kind, s)
	var b bytes.Buffer
	if err := p.WritePDF(&b); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(dir, fmt.Sprintf("%s-%s.pdf", strings.ReplaceAll(string(kind), " ", "-"), name))
	if err := os.WriteFile(file, b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
}

func TestEveryPaperFullAndEmpty(t *testing.T) {
	sh, jobs := demoJobs(t)
	day := time.Date(2026, 11, 25, 0, 0, 0, 0, time.Local)
	for _, kind := range kinds {
		pages, text := laid(t, kind, document.Source{House: house})
		if pages != 1 {
			t.Errorf("the empty %s takes %d pages", kind, pages)
		}
		if !strings.Contains(text, house.Name) {
			t.Errorf("the empty %s does not name the shop", kind)
		}
		keep(t, "empty", kind, document.Source{House: house})
		for i, j := range jobs {
			quote := &shop.Quote{Works: j.Works(), Price: 148000, Deposit: 25000, Day: "2026-11-20", Cost: 99000, Margin: 49000}
			s := document.Source{Job: j, House: house, Day: day, Quote: quote, Advice: sample.Advice(), Key: sh.PublicKey(), Prices: true,
				Donor: &shop.Donor{Number: "D-114", Class: "B", Teeth: "46/13", Caps: "both, marked 7", Source: "breaker, Upper Fell", Came: "2026-10-02", Price: 12000, Place: "rack 3"}}
			_, text := laid(t, kind, s)
			number := j.Stamped()
			if number == "" {
				number = "not stamped yet " + j.NumberText()
			}
			if !strings.Contains(text, number) || !strings.Contains(text, "25 November 2026") {
				t.Errorf("the %s of job %s has no number or no day", kind, j.NumberText())
			}
			for _, never := range []string{"990.00", "490.00", "%!"} {
				if strings.Contains(text, never) {
					t.Errorf("the %s of job %s says %q", kind, j.NumberText(), never)
				}
			}
			if i < 6 {
				keep(t, j.NumberText(), kind, s)
			}
		}
	}
}
