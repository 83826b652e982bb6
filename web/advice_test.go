package web_test

import (
	"encoding/json"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"golang.org/x/net/html"

	"axlewright/drawing/sample"
	"axlewright/shop"
	"axlewright/web"
)

// What the sums cannot take is said at its field, in words without files and
// lines, and all that was typed is still there.
func TestAdviceFormKeepsWhatWasTyped(t *testing.T) {
	b := openBench(t)
	j := b.Open()
	at := "/job/" + string(j.ID) + "/advice"
	fields := slices.Clone(adviceFields)
	change := func(path, value string) { fields[slices.Index(fields, path)+1] = value }
	change("vehicle.engine", "300 horses <b>")
	change("vehicle.axle_load", "1350")
	change("vehicle.tyre", "")
	a := b.post(at, fields...)
	if a.status != http.StatusUnprocessableEntity {
		t.Fatalf("%d %s", a.status, a.body)
	}
	doc := parse(t, a.body)
	byName := func(name string) *html.Node {
		t.Helper()
		all := find(doc, func(n *html.Node) bool { return attr(n, "name") == name })
		if len(all) == 0 {
			t.Fatalf("no field %s", name)
		}
		return all[0]
	}
	for name, want := range map[string]string{"vehicle.engine": "expected a torque such as 90 N·m", "vehicle.axle_load": "the unit is missing", "vehicle.tyre": "cannot do without"} {
		x := byName(name)
		says := find(doc, func(n *html.Node) bool { return attr(n, "id") == attr(x, "aria-describedby") && attr(n, "id") != "" })
		if attr(x, "aria-invalid") != "true" || len(says) != 1 || !strings.Contains(text(says[0]), want) {
			t.Errorf("%s is not marked with %q", name, want)
		}
	}
	if got := attr(byName("vehicle.engine"), "value"); got != "300 horses <b>" {
		t.Errorf("the engine is now %q", got)
	}
	if x := byName("vehicle.friction"); attr(x, "value") != "0.7 ± 12 %" || has(x, "aria-invalid") {
		t.Error("a figure that was right is gone or marked")
	}
	for _, n := range find(doc, func(n *html.Node) bool { return attr(n, "name") == "use" }) {
		if word := attr(n, "value"); has(n, "checked") != (word == "farm" || word == "towing") {
			t.Errorf("use %s: checked %t", word, has(n, "checked"))
		}
	}
	said := text(doc)
	if !strings.Contains(said, "3 answers want another look") || strings.Contains(said, ".yaml") || strings.Contains(said, "vehicle.engine") {
		t.Errorf("it says %s", said)
	}
	// It is kept with the vehicle as it was typed, and shown again.
	if x, err := shop.Get[shop.Vehicle](b.Ctx, b.shop, b.Vehicle.ID); err != nil || !strings.Contains(x.Enquiry, "300 horses") {
		t.Errorf("kept %q, %v", x.Enquiry, err)
	}
	if got := b.get(at).body; !strings.Contains(got, "300 horses") {
		t.Error("what was typed is gone when the page is opened again")
	}
}

// Without a vehicle one is made, so that what was typed is kept.
func TestEnquiryWithoutVehicle(t *testing.T) {
	b := openBench(t)
	j, err := b.shop.OpenJob(b.Ctx, b.Owner, "")
	if err != nil {
		t.Fatal(err)
	}
	if a := b.post("/job/"+string(j.ID)+"/enquiry", adviceFields...); a.status != http.StatusSeeOther {
		t.Fatalf("%d %s", a.status, a.body)
	}
	now, err := b.shop.Job(b.Ctx, j.ID)
	if err != nil || now.Value("enquiry", "vehicle").Link == nil || now.Value("enquiry", "vehicle").Link.Label != "farm truck" {
		t.Errorf("the vehicle is %+v, %v", now.Value("enquiry", "vehicle"), err)
	}
	if got := b.get("/job/" + string(j.ID) + "/advice").body; !strings.Contains(got, "190 N·m ± 5 %, maker") {
		t.Error("the enquiry is gone")
	}
}

// A shop without a catalogue is told what to do and can begin with the examples.
func TestAdviceWithoutCatalogue(t *testing.T) {
	dir := t.TempDir()
	b := openBench(t, func(o *web.Options) { o.Folder = dir })
	at := "/job/" + string(b.Open().ID) + "/advice"
	if got := text(b.page(at)); !strings.Contains(got, "Begin with the examples") || !strings.Contains(got, "invented") {
		t.Fatalf("it says %s", got)
	}
	if a := b.post("/catalogue/examples"); a.status != http.StatusSeeOther {
		t.Fatalf("%d %s", a.status, a.body)
	}
	if got := text(b.page(at)); !strings.Contains(got, "T24S") {
		t.Errorf("the castings cannot be chosen: %s", got)
	}
	if files, _ := os.ReadDir(filepath.Join(dir, "catalogue")); len(files) < 3 {
		t.Errorf("%d files", len(files))
	}
	if a := b.post("/catalogue/examples"); a.status != http.StatusConflict {
		t.Errorf("a second time: %d", a.status)
	}
}

// A figure put right while the first is still being worked out is the one that
// is answered, and the page says so.
func TestNewestAskingWins(t *testing.T) {
	b := openBench(t)
	j := b.Open()
	at := "/job/" + string(j.ID) + "/advice"
	b.ask(at, "vehicle.axle_load", "1450 kg ± 6 %")
	b.ask(at, "vehicle.axle_load", "1610 kg ± 6 %")
	if got := text(b.page(at)); strings.Contains(got, "being worked out") && !strings.Contains(got, "It was asked anew") {
		t.Errorf("it says %s", got)
	}
	last := ""
	for end := time.Now().Add(4 * time.Minute); time.Now().Before(end) && !strings.Contains(last, "1610 kg"); time.Sleep(200 * time.Millisecond) {
		now, err := b.shop.Job(t.Context(), j.ID)
		if err != nil {
			t.Fatal(err)
		}
		if kept := now.Kept(shop.EntryAdvice); len(kept) > 0 {
			last = b.get(at + "/" + kept[len(kept)-1].Place).body
			if !strings.Contains(text(b.page(at)), "being worked out") {
				break
			}
		}
	}
	if !strings.Contains(last, "1610 kg") {
		t.Errorf("the newest advice is not of the newest asking")
	}
}

// Answers of old are told apart by what they were asked with, each has its own
// print, and the job's paper says which it prints.
func TestKeptAdviceIsToldApart(t *testing.T) {
	b := openBench(t)
	j := b.Open()
	for _, load := range []string{"1450 kg", "2900 kg"} {
		kept, err := json.Marshal(map[string]any{"format": 1, "advice": sample.Advice(),
			"enquiry": "vehicle:\n  engine: 190 N·m\n  axle_load: " + load + "\n  tyre: 235/85R16\n"})
		if err != nil {
			t.Fatal(err)
		}
		if _, err := b.shop.Attach(b.Ctx, b.Owner, j.ID, shop.Attachment{Kind: shop.EntryAdvice, Step: "enquiry", Name: "advice.json", Media: "application/json", Content: kept, Text: "Strengthen"}); err != nil {
			t.Fatal(err)
		}
	}
	at := "/job/" + string(j.ID)
	page := b.get(at + "/advice").body
	for _, want := range []string{"axle load 1450 kg · tyre 235/85R16 · engine torque 190 N·m", "axle load 2900 kg · tyre", at + "/advice/1/recommendation.pdf", at + "/advice/2/recommendation.pdf"} {
		if !strings.Contains(page, want) {
			t.Errorf("no %q on the page", want)
		}
	}
	if got := text(b.page(at)); !strings.Contains(got, "recommendation, advice 2 of today") {
		t.Error("the job does not say which advice its paper prints")
	}
}

// A figure outside what such vehicles have is asked after, and taken once it is
// confirmed; another in its place is asked after again.
func TestUnusualFigureIsConfirmed(t *testing.T) {
	b := openBench(t)
	at := "/job/" + string(b.Open().ID) + "/advice"
	send := func(load, right string) answer {
		fields := slices.Clone(adviceFields)
		fields[slices.Index(fields, "vehicle.axle_load")+1] = load
		return b.post(at, append(fields, "right", right)...)
	}
	a := send("14500 kg", "")
	if got := text(parse(t, a.body)); a.status != http.StatusUnprocessableEntity || !strings.Contains(got, "Is it 1,450 kg") || !strings.Contains(got, "It is right as typed") {
		t.Fatalf("%d %s", a.status, got)
	}
	if a := send("15500 kg", "vehicle.axle_load=14500 kg"); a.status != http.StatusUnprocessableEntity {
		t.Errorf("another figure: %d", a.status)
	}
	if a := send("14500 kg", "vehicle.axle_load=14500 kg"); a.status != http.StatusSeeOther {
		t.Errorf("confirmed: %d %s", a.status, a.body)
	}
}

// The quote says where the newest advice recommends something else, and whose
// price is which.
func TestQuoteBesideAdvice(t *testing.T) {
	b := openBench(t)
	j := b.Open()
	at := "/job/" + string(j.ID) + "/quote"
	if got := text(b.page(at)); strings.Contains(got, "The newest advice") {
		t.Error("there is no advice yet")
	}
	a := sample.Advice()
	a.Builds[a.Recommended].Upgrades = []string{"cap-bolts-20"}
	kept, err := json.Marshal(map[string]any{"format": 1, "advice": a})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := b.shop.Attach(b.Ctx, b.Owner, j.ID, shop.Attachment{Kind: shop.EntryAdvice, Step: "enquiry", Name: "advice.json", Media: "application/json", Content: kept, Text: "Strengthen"}); err != nil {
		t.Fatal(err)
	}
	if got := text(b.page(at + "?asked=1&work=plates")); !strings.Contains(got, "The newest advice recommends better cap bolts") || !strings.Contains(got, "this quote has plates.") || !strings.Contains(got, "is the catalogue’s") {
		t.Errorf("it says %s", got)
	}
	if got := text(b.page(at + "?asked=1&work=better+fixings")); strings.Contains(got, "The newest advice recommends") {
		t.Error("the quote has what is recommended")
	}
}

// ask sends the farm's enquiry with one figure changed, and must be taken.
func (b *bench) ask(at, path, value string) {
	b.t.Helper()
	fields := slices.Clone(adviceFields)
	fields[slices.Index(fields, path)+1] = value
	if a := b.post(at, fields...); a.status != http.StatusSeeOther {
		b.t.Fatalf("%d %s", a.status, a.body)
	}
}

// A job without a customer is not blamed for it: the form has no such field.
func TestAdviceFormAsksForNoCustomer(t *testing.T) {
	b := openBench(t)
	j, err := b.shop.OpenJob(b.Ctx, b.Owner, "")
	if err != nil {
		t.Fatal(err)
	}
	fields := slices.Clone(adviceFields)
	fields[slices.Index(fields, "vehicle.axle_load")+1] = "1450"
	fields[slices.Index(fields, "vehicle.name")+1] = ""
	a := b.post("/job/"+string(j.ID)+"/advice", fields...)
	if said := text(parse(t, a.body)); strings.Contains(said, "customer:") || !strings.Contains(said, "unit is missing") {
		t.Errorf("%d %s", a.status, said)
	}
}
