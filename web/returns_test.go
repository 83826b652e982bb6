package web_test

import (
	"strings"
	"testing"
	"time"

	"golang.org/x/net/html"

	"axlewright/shop"
)

func TestWhatCameBackIsSaidInWords(t *testing.T) {
	b := openBench(t)
	if says := text(b.page("/returns")); !strings.Contains(says, "Nothing has been handed over yet.") {
		t.Errorf("in a new shop: %s", says)
	}
	holds := 0.4
	b.Clock.Move(-6 * 365 * 24 * time.Hour) // to 2020
	for i := range 6 {
		j := b.Open(shop.WorkPeg)
		if _, err := b.Shop.Attach(b.Ctx, b.Adviser, j.ID, shop.Attachment{Kind: shop.EntryAdvice, Step: "enquiry", Name: "advice.json",
			Media: "application/json", Content: []byte("{}"), Words: []string{"strengthen"}, Holds: &holds}); err != nil {
			t.Fatal(err)
		}
		b.Write(j.ID, "handover", "day", "", shop.Day("2021-03-01"))
		if _, err := b.Shop.SetState(b.Ctx, b.Owner, j.ID, shop.StateOut, 0, "the rest was not ordered"); err != nil {
			t.Fatal(err)
		}
		if i < 2 {
			b.Write(j.ID, "return", "evidence", "", shop.Words(shop.Failures[7].Seen))
			b.Write(j.ID, "return", "day", "", shop.Day("2023-03-01"))
		}
	}
	page := b.page("/returns")
	says := text(page)
	for _, want := range []string{"Of 6 units with this build", "2 came back broken; the sums expected 3.6.", "What came back does not contradict the sums",
		"2 × " + shop.Failures[7].Seen, "after 2 years", "67 %"} {
		if !strings.Contains(says, want) {
			t.Errorf("the page lacks %q: %s", want, says)
		}
	}
	// The working leads to the formula, which gives the same figure.
	for _, a := range find(page, func(n *html.Node) bool { return strings.HasPrefix(attr(n, "href"), "/handbook/survival.gamma-rate") }) {
		if says := text(b.page(attr(a, "href"))); !strings.Contains(says, "median = ") {
			t.Errorf("the handbook says %s", says)
		}
	}
}
