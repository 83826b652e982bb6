package web_test

import (
	"net/http"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"axlewright/handbook"
	"axlewright/shop"
)

// Every page by its structure: one heading, names for what can be filled, no
// id twice, labels and descriptions that point at something.
func TestPagesByStructure(t *testing.T) {
	b := openBench(t)
	j := b.Open(shop.WorkPeg, shop.WorkPlates)
	at := "/job/" + string(j.ID)
	kits := "/kits/" + string(b.Kit.ID) + "/3"
	paths := []string{"/", "/search", at, at + "/kit", at + "/weld-plan", at + "/weld-log?run=top", "/welding", "/stock/kits", "/stock/sheets", "/cards/steel/new", kits, at + "/record", at + "/certificate", at + "/quote", at + "/advice", at + "/paper/set-up%20sheet", "/setting-up", "/stock", "/stock/lots",
		"/cards/kit/" + string(b.Kit.ID), "/handbook", "/settings", "/settings/people", "/settings/prices", "/settings/limits", "/returns", "/verify"}
	for _, s := range shop.Steps() {
		paths = append(paths, at+"/"+string(s.Key))
	}
	paths = append(paths, b.castingPages(j)...)
	for _, path := range paths {
		doc := b.page(path)
		if n := len(find(doc, func(n *html.Node) bool { return n.Data == "h1" })); n != 1 {
			t.Errorf("%s: %d first headings", path, n)
		}
		ids := map[string]bool{}
		for _, n := range find(doc, func(n *html.Node) bool { return has(n, "id") }) {
			if ids[attr(n, "id")] {
				t.Errorf("%s: id %q twice", path, attr(n, "id"))
			}
			ids[attr(n, "id")] = true
		}
		labelled := map[string]bool{}
		for _, n := range find(doc, func(n *html.Node) bool { return n.Data == "label" && has(n, "for") }) {
			labelled[attr(n, "for")] = true
			if !ids[attr(n, "for")] {
				t.Errorf("%s: a label for nothing: %s", path, text(n))
			}
		}
		for _, n := range find(doc, func(n *html.Node) bool { return has(n, "aria-describedby") }) {
			if !ids[attr(n, "aria-describedby")] {
				t.Errorf("%s: described by nothing: %v", path, n.Attr)
			}
		}
		for _, n := range find(doc, func(n *html.Node) bool {
			return (n.Data == "input" || n.Data == "select" || n.Data == "textarea") && attr(n, "type") != "hidden" && !has(n, "hidden")
		}) {
			inLabel := false
			for p := n.Parent; p != nil; p = p.Parent {
				inLabel = inLabel || p.Data == "label"
			}
			if !inLabel && !labelled[attr(n, "id")] && attr(n, "aria-label") == "" {
				t.Errorf("%s: no name: %v", path, n.Attr)
			}
		}
	}
}

// Each step shows its cautions where it is done, not in a footer.
func TestCautionsStandAtTheirStep(t *testing.T) {
	b := openBench(t)
	j := b.Open(shop.WorkPlates, shop.WorkPeg)
	for _, s := range shop.Steps() {
		said := text(b.page("/job/" + string(j.ID) + "/" + string(s.Key)))
		for _, c := range s.Cautions {
			if !strings.Contains(said, strings.Join(strings.Fields(c), " ")) {
				t.Errorf("%s does not say: %s", s.Title, c)
			}
		}
	}
}

// A stop names its reason and who may override it, and gives way to a reason.
func TestStopAndOverride(t *testing.T) {
	b := openBench(t)
	j := b.Open(shop.WorkPlates)
	at := "/job/" + string(j.ID)
	halts := func() []*html.Node {
		return find(b.page(at+"/weld"), func(n *html.Node) bool { return attr(n, "class") == "halt" })
	}
	all := halts()
	if len(all) != 1 || !strings.Contains(text(all[0]), "grey iron or not known") || !strings.Contains(text(all[0]), "May be overridden by: owner or builder") {
		t.Fatalf("%d stops", len(all))
	}
	if a := b.post(at+"/override", "stop", "iron", "why", "", "next", at+"/weld"); a.status != http.StatusUnprocessableEntity {
		t.Errorf("without a reason: %d", a.status)
	}
	if a := b.post(at+"/override", "stop", "iron", "why", "tab bent, drillings at the laboratory", "next", at+"/weld"); a.status != http.StatusSeeOther {
		t.Errorf("with one: %d", a.status)
	}
	if len(halts()) != 0 || !strings.Contains(text(b.page(at+"/weld")), "tab bent, drillings at the laboratory") {
		t.Error("the override is not shown")
	}
}

// "Which units have this bolt lot?", and back.
func TestLotsThereAndBack(t *testing.T) {
	b := openBench(t)
	j := b.Open()
	b.Write(j.ID, "caps", "bolts", "1", shop.Used(b.CapBolts.ID, 8))
	b.Write(j.ID, "stamp", "number", "", shop.Text("FW-0117"))
	lot := b.page("/stock/lot/" + string(b.CapBolts.ID))
	if got := text(lot); !strings.Contains(got, "FW-0117") || !strings.Contains(got, "32 pieces") {
		t.Errorf("the lot says %s", got)
	}
	links := find(b.page("/job/"+string(j.ID)), func(n *html.Node) bool { return attr(n, "href") == "/stock/lot/"+string(b.CapBolts.ID) })
	if len(links) == 0 {
		t.Error("the job does not lead back to the lot")
	}
	if a := b.get("/search?q=fw+O117"); a.status != http.StatusSeeOther || a.header.Get("Location") != "/job/"+string(j.ID) {
		t.Errorf("found by its number: %d %s", a.status, a.header.Get("Location"))
	}
}

// Every formula of the handbook is a form; one of them against its standard:
// the stress area of M12 is 84.3 mm² (ISO 898-1:2013, table 4, from memory).
func TestHandbookPages(t *testing.T) {
	b := openBench(t)
	list := b.get("/handbook").body
	for _, f := range handbook.All() {
		if !strings.Contains(list, `"/handbook/`+f.Name+`"`) {
			t.Errorf("%s is not listed", f.Name)
		}
	}
	for i, f := range handbook.All() {
		if i%17 != 0 {
			continue // each is made the same way
		}
		doc := b.page("/handbook/" + f.Name)
		for _, in := range f.Inputs {
			if len(find(doc, func(n *html.Node) bool { return n.Data == "input" && attr(n, "name") == in.Key })) != 1 {
				t.Errorf("%s does not ask for %s", f.Name, in.Key)
			}
		}
		if !strings.Contains(text(doc), strings.Join(strings.Fields(f.Source), " ")) {
			t.Errorf("%s does not name its source", f.Name)
		}
	}
	if got := text(b.page("/handbook/bolt.stress-area?d=12+mm&pitch=1.75+mm")); !strings.Contains(got, "84.3 mm²") || !strings.Contains(got, "typed “12 mm”") && !strings.Contains(got, "12 mm") {
		t.Errorf("M12: %s", got)
	}
	if got := text(b.page("/handbook/bolt.stress-area?d=12+mm&pitch=99+mm")); !strings.Contains(got, "✕") || strings.Contains(got, "A_s =  ") {
		t.Errorf("a pitch larger than the bolt: %s", got)
	}
}

// From the marks +2 and −3 thou the pinion comes in by 5 thou, and with it a
// shim of 1.25 mm grows to 1.377 mm: 5 × 0.0254 = 0.127, worked by hand.
func TestSettingUpPages(t *testing.T) {
	b := openBench(t)
	got := text(b.page("/setting-up/marks?asked=1&push=towards+the+crown+wheel&old=1.25&old.unit=mm&old_mark=2&new_mark=-3&mark_unit=thou&mark_plus=plus+sits+further+from+the+crown+wheel"))
	for _, want := range []string{"Shim 1.38 mm (54 thou)", "0.13 mm (5 thou) thicker", "in, towards the crown wheel"} {
		if !strings.Contains(got, want) {
			t.Errorf("it does not say %q: %s", want, got)
		}
	}
	// A question opened from a job has the job's readings in it already.
	j := b.Open()
	b.script("/job/"+string(j.ID)+"/set", "step", "lash", "item", "lash", "place", "3", "corrects", "0", "value", "6", "unit", "thou")
	doc := b.page("/setting-up/lash?job=" + string(j.ID))
	in := find(doc, func(n *html.Node) bool { return n.Data == "input" && attr(n, "name") == "lash3" })
	if len(in) != 1 || attr(in[0], "value") != "6" {
		t.Errorf("lash 3 is not taken over: %v", in)
	}
	// The pack comes from the shelf: 1.00, 1.05 and 1.10 mm are there.
	if got := text(b.page("/setting-up/pack?asked=1&wanted=2.05&wanted.unit=mm")); !strings.Contains(got, "1.00 mm") || !strings.Contains(got, "1.05 mm") {
		t.Errorf("the pack: %s", got)
	}
	if got := text(b.page("/setting-up/peg?asked=1&pitch=tight")); !strings.Contains(got, "✕ Pitch of the peg’s thread") {
		t.Errorf("what cannot be read: %s", got)
	}
}

// A certificate is verified by its page; one letter altered is found.
func TestVerifyPage(t *testing.T) {
	b := openBench(t)
	j := b.Open()
	b.Write(j.ID, "stamp", "number", "", shop.Text("FW-0117"))
	c, err := b.Shop.Certify(b.Ctx, b.Owner, j.ID)
	if err != nil {
		t.Fatal(err)
	}
	if got := text(parse(t, b.post("/verify", "text", c.Text()).body)); !strings.Contains(got, "signed by this shop") || !strings.Contains(got, "the record is whole") || strings.Contains(got, "not signed") {
		t.Errorf("a true one: %s", got)
	}
	altered := strings.Replace(c.Text(), "FW-0117", "FW-0118", 1)
	if got := text(parse(t, b.post("/verify", "text", altered).body)); !strings.Contains(got, "not signed by this shop") {
		t.Errorf("another number on it: %s", got)
	}
	if a := b.post("/verify", "text", "hello"); a.status != http.StatusUnprocessableEntity {
		t.Errorf("something else: %d", a.status)
	}
	png := b.get("/job/" + string(j.ID) + "/certificate/code.png")
	if png.status != http.StatusOK || !strings.HasPrefix(png.body, "\x89PNG") {
		t.Errorf("square code: %d", png.status)
	}
}

// Two people change one card: the second is told, and nothing is lost.
func TestCardsChangedByTwo(t *testing.T) {
	b := openBench(t)
	at := "/cards/customer/" + string(b.Customer.ID)
	rev := func() string {
		for _, n := range find(b.page(at), func(n *html.Node) bool { return attr(n, "name") == "revision" }) {
			return attr(n, "value")
		}
		t.Fatal("no revision in the form")
		return ""
	}
	seen := rev()
	if a := b.post(at, "revision", seen, "name", "Bracken of Scar End", "phone", "01632 960118"); a.status != http.StatusSeeOther {
		t.Fatalf("the first: %d %s", a.status, a.body)
	}
	if a := b.post(at, "revision", seen, "name", "Bracken & Son"); a.status != http.StatusConflict {
		t.Errorf("the second: %d", a.status)
	}
	if got, err := shop.Get[shop.Customer](b.Ctx, b.shop, b.Customer.ID); err != nil || got.Phone != "01632 960118" || got.Name != "Bracken of Scar End" {
		t.Errorf("kept %+v %v", got, err)
	}
	if a := b.post("/cards/lot/newlot1", "revision", "0", "lot_kind", "shims", "title", "T24 pinion shim", "quantity", "12", "unit", "pieces", "thickness", "49 thou"); a.status != http.StatusSeeOther {
		t.Fatalf("a lot: %d %s", a.status, text(parse(t, a.body)))
	}
	lot, err := b.shop.Lot(b.Ctx, "newlot1")
	if err != nil || lot.Lot.Thickness == nil || *lot.Lot.Thickness < 1.2445e-3 || *lot.Lot.Thickness > 1.2447e-3 { // 49 × 0.0254 mm
		t.Errorf("kept %+v %v", lot, err)
	}
}

// A limit of the shop's own stands in place of the trade's, with its page.
func TestOwnLimits(t *testing.T) {
	b := openBench(t)
	house, err := shop.Get[shop.House](b.Ctx, b.shop, shop.HouseID)
	if err != nil {
		t.Fatal(err)
	}
	fields := []string{"card", string(shop.HouseID), "revision", itoa(house.Revision), "field", "lash/lash", "low", "5 thou", "high", "9 thou", "origin", "maker"}
	if a := b.post("/settings/limits", fields...); a.status != http.StatusUnprocessableEntity {
		t.Errorf("without the page it stands on: %d", a.status)
	}
	if a := b.post("/settings/limits", append(fields, "source", "manual, page 54-12")...); a.status != http.StatusSeeOther {
		t.Fatalf("with it: %d %s", a.status, text(parse(t, a.body)))
	}
	j := b.Open()
	a := b.script("/job/"+string(j.ID)+"/set", "step", "lash", "item", "lash", "place", "1", "corrects", "0", "value", "0.30 mm")
	if got := text(parse(t, a.body)); !strings.Contains(got, "0.13 to 0.23 mm (5 to 9 thou) maker") || !strings.Contains(got, "✕ stop") {
		t.Errorf("the box says %s", got)
	}
}
