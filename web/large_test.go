//go:build unix

package web_test

import (
	"fmt"
	"net/http"
	"os"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"syscall"
	"testing"
	"time"

	"axlewright/shop"
	"axlewright/shop/shoptest"
)

// BenchmarkPagesOfALargeShop asks for pages over HTTP in a shop of 50,000 jobs.
// Each should take less than 100 ms; times-small is the same page in a shop of
// one job, measured in the same run; cpu-ms is what program and browser's side took
// of the processor.
func BenchmarkPagesOfALargeShop(b *testing.B) {
	small, large := openBench(b), openBench(b)
	shortest, longest := shoptest.Large(small.Bench, 0), shoptest.Large(large.Bench, 50_000)
	paths := func(x *bench, job shop.ID) []string {
		at := "/job/" + string(job)
		return []string{"/", "/search?q=t24-31415", "/search?q=31", "/search?q=brack+31415", "/search?q=heather", "/search?q=zebra", "/search?state=enquiry",
			at, at + "/stations", at + "/lash", at + "/record", at + "/certificate", at + "/choose?step=caps&item=bolts&place=1", at + "/choose?step=enquiry&item=customer", at + "/advice", at + "/quote",
			"/stock", "/stock/lots", "/stock/lot/" + string(x.CapBolts.ID), "/cards/customer", "/cards/customer/" + string(x.Customer.ID), "/cards/donor/" + string(x.Donor.ID), "/cards/casting/" + string(x.T24.ID),
			"/handbook", "/setting-up", "/settings", "/settings/people", "/settings/limits", "/returns", "/verify"}
	}
	of := paths(small, shortest)
	for i, path := range paths(large, longest) {
		b.Run(strings.Replace(path, string(longest), "…", 1), func(b *testing.B) {
			began := time.Now()
			const tries = 5
			for range tries {
				if a := small.get(of[i]); a.status != http.StatusOK {
					b.Fatalf("%s: %d", of[i], a.status)
				}
			}
			reference := time.Since(began) / tries
			b.ResetTimer()
			used := processorTime(b)
			for b.Loop() {
				if a := large.get(path); a.status != http.StatusOK {
					b.Fatalf("%s: %d", path, a.status)
				}
			}
			b.ReportMetric((processorTime(b)-used)/float64(b.N), "cpu-ms")
			each := b.Elapsed() / time.Duration(b.N)
			b.ReportMetric(float64(each.Microseconds())/1000, "ms")
			b.ReportMetric(float64(each)/float64(reference), "times-small")
		})
	}
}

// BenchmarkTwentyTabletsOverHTTP is twenty tablets on ten jobs, each of which
// listens for changes, saves a reading as its page does, and then loads the page
// anew, a second after the last one: 1,200 rounds are a minute. No reading that
// was acknowledged may be lost. Of a hundred savings or pages the slowest should
// stay below 100 ms; save-times-flush compares the middle one with writing and
// flushing four kilobytes on the same disk, in the same run.
func BenchmarkTwentyTabletsOverHTTP(b *testing.B) {
	x := openBench(b)
	x.http.Transport = &http.Transport{MaxIdleConnsPerHost: 40}
	var mu sync.Mutex
	acknowledged := map[string]shop.ID{} // place
	var saves, pages []time.Duration
	var open []shop.ID
	job := func(n int64) shop.ID { // ten at a time, new ones after 40 readings each
		mu.Lock()
		defer mu.Unlock()
		at := int(n/400)*10 + int(n%10)
		for len(open) <= at {
			open = append(open, x.Open().ID)
		}
		return open[at]
	}
	for range 20 {
		r, err := x.http.Get(x.url + "/live")
		if err != nil {
			b.Fatal(err)
		}
		b.Cleanup(func() { r.Body.Close() })
	}
	var turn atomic.Int64
	var wg sync.WaitGroup
	b.ResetTimer()
	used := processorTime(b)
	for range 20 {
		wg.Go(func() {
			for n := turn.Add(1); n <= int64(b.N); n = turn.Add(1) {
				time.Sleep(time.Second)
				id, place := job(n), fmt.Sprint("piece ", n)
				at := "/job/" + string(id)
				began := time.Now()
				a := x.script(at+"/set", "step", "stations", "item", "gap", "place", place, "value", "0.5", "unit", "mm", "ticket", place)
				saved := time.Since(began)
				if a.status != http.StatusOK {
					b.Errorf("%d %s", a.status, a.body)
					return
				}
				began = time.Now()
				a = x.get(at + "/stations")
				loaded := time.Since(began)
				if a.status != http.StatusOK {
					b.Errorf("%d %s", a.status, a.body)
				}
				mu.Lock()
				acknowledged[place] = id
				saves, pages = append(saves, saved), append(pages, loaded)
				mu.Unlock()
			}
		})
	}
	wg.Wait()
	b.StopTimer()
	b.ReportMetric((processorTime(b)-used)/float64(b.N), "cpu-ms")
	for place, id := range acknowledged {
		j, err := x.shop.Job(b.Context(), id)
		if err != nil {
			b.Fatal(err)
		}
		if e := j.Standing(shop.Slot{Step: "stations", Item: "gap", Place: place}); e == nil || len(j.Damage) > 0 {
			b.Errorf("reading %s was acknowledged and is lost, damage %v", place, j.Damage)
		}
	}
	slices.Sort(saves)
	slices.Sort(pages)
	of := func(all []time.Duration, percent int) float64 {
		return float64(all[len(all)*percent/100].Microseconds()) / 1000
	}
	b.ReportMetric(of(saves, 99), "save-p99-ms")
	b.ReportMetric(of(saves, 50), "save-p50-ms")
	b.ReportMetric(of(pages, 99), "page-p99-ms")
	b.ReportMetric(of(pages, 50), "page-p50-ms")
	b.ReportMetric(of(saves, 50)/flush(b), "save-times-flush")
	b.ReportMetric(0, "ns/op")
}

// flush is how many milliseconds it takes to write and flush four kilobytes.
func flush(b *testing.B) float64 {
	f, err := os.CreateTemp(b.TempDir(), "flush")
	if err != nil {
		b.Fatal(err)
	}
	defer f.Close()
	var all []time.Duration
	for range 101 {
		began := time.Now()
		if _, err := f.Write(make([]byte, 4096)); err != nil {
			b.Fatal(err)
		}
		if err := f.Sync(); err != nil {
			b.Fatal(err)
		}
		all = append(all, time.Since(began))
	}
	slices.Sort(all)
	return float64(all[50].Microseconds()) / 1000
}

// processorTime is how many milliseconds this program has had of the processor.
func processorTime(b *testing.B) float64 {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		b.Fatal(err)
	}
	return float64(time.Duration(u.Utime.Nano()+u.Stime.Nano()).Microseconds()) / 1000
}
