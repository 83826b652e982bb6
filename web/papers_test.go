package web_test

import (
	"encoding/json"
	"net/http"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"axlewright/document"
	"axlewright/drawing/sample"
	"axlewright/shop"
)

// Every paper of a job and every empty one is a PDF; names that try what can be
// tried get no further than the paper.
func TestEveryPaperIsAPDF(t *testing.T) {
	b := openBench(t)
	j := b.Open(shop.WorkPeg, shop.WorkPlates)
	b.Write(j.ID, "stamp", "number", "", shop.Text("FW-\"0117\"; שלום 😀"))
	b.Write(j.ID, "donor", "donor", "", shop.LinkTo(shop.KindDonor, b.Donor.ID))
	at := "/job/" + string(j.ID)
	doc := b.page(at)
	for _, kind := range document.Papers() {
		for _, path := range []string{at + "/paper/" + document.PaperFile(kind), "/paper/" + document.PaperFile(kind)} {
			a := b.get(path)
			if a.status != http.StatusOK || !strings.HasPrefix(a.body, "%PDF-") || a.header.Get("Content-Type") != "application/pdf" || !strings.HasPrefix(a.header.Get("Content-Disposition"), "inline") {
				t.Errorf("%s: %d %v", path, a.status, a.header)
			}
			if !links(doc, path) {
				t.Errorf("the job's page does not lead to %s", path)
			}
		}
	}
	for _, path := range []string{at + "/paper/nothing.pdf", "/paper/nothing.pdf", "/paper/..%2fquote.pdf", "/job/nobody/paper/quote.pdf"} {
		if a := b.get(path); a.status != http.StatusNotFound {
			t.Errorf("%s: %d", path, a.status)
		}
	}
}

// Advice is printed as it was kept.
func TestKeptAdviceIsPrinted(t *testing.T) {
	b := openBench(t)
	j := b.Open()
	kept, err := json.Marshal(map[string]any{"format": 1, "advice": sample.Advice()})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := b.shop.Attach(b.Ctx, b.Owner, j.ID, shop.Attachment{Kind: shop.EntryAdvice, Step: "enquiry", Name: "advice.json", Media: "application/json", Content: kept}); err != nil {
		t.Fatal(err)
	}
	at := "/job/" + string(j.ID)
	for _, path := range []string{at + "/advice/1/recommendation.pdf", at + "/paper/recommendation.pdf"} {
		first, again := b.get(path), b.get(path)
		if first.status != http.StatusOK || len(first.body) < 30_000 || first.body != again.body {
			t.Errorf("%s: %d, %d bytes", path, first.status, len(first.body))
		}
	}
}

// links says whether a page leads to a path.
func links(doc *html.Node, path string) bool {
	return len(find(doc, func(n *html.Node) bool { return n.Data == "a" && attr(n, "href") == path })) > 0
}
