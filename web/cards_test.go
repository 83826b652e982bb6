package web_test

import (
	"net/http"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"axlewright/shop"
)

// A card that cannot be saved says at the field why, and keeps what was typed.
func TestCardKeepsWhatWasTyped(t *testing.T) {
	b := openBench(t)
	for _, c := range []struct {
		says   string
		fields []string
	}{
		{`How much came: "many"`, []string{"lot_kind", "bolts", "title", "cap bolts <M12>", "unit", "pieces", "quantity", "many"}},
		{"Thickness, of shims: A lot of shims needs their thickness", []string{"lot_kind", "shims", "title", "cap bolts <M12>", "unit", "pieces", "quantity", "10"}},
		{"Kit, of plate kits: Say which kit", []string{"lot_kind", "plate kits", "title", "cap bolts <M12>", "unit", "pieces", "quantity", "10"}},
		{"What it is: This cannot be left empty", []string{"lot_kind", "bolts", "title", " ", "unit", "pieces", "quantity", "10", "batch", "cap bolts <M12>"}},
	} {
		a := b.post("/cards/lot/"+string(shop.NewID()), append(c.fields, "revision", "0")...)
		if a.status != http.StatusUnprocessableEntity || !strings.Contains(text(parse(t, a.body)), c.says) {
			t.Errorf("%d, not %q: %s", a.status, c.says, text(parse(t, a.body)))
		}
		if !strings.Contains(a.body, "cap bolts &lt;M12&gt;") {
			t.Errorf("%q: what was typed is gone", c.says)
		}
	}
}

// Using more of a lot than its card says is left is written, for it has
// happened, but is not said to be fine.
func TestMoreThanIsLeft(t *testing.T) {
	b := openBench(t)
	j := b.Open()
	a := b.script("/job/"+string(j.ID)+"/set", "step", "caps", "item", "bolts", "place", "1", "corrects", "0", "card", string(b.CapBolts.ID), "quantity", "41")
	got := text(parse(t, a.body))
	if a.status != http.StatusOK || strings.Contains(got, "fine") || !strings.Contains(got, "look") || !strings.Contains(got, "only 40 pieces were left") {
		t.Errorf("%d %s", a.status, got)
	}
	if got := text(b.page("/stock/lot/" + string(b.CapBolts.ID))); !strings.Contains(got, "-1") && !strings.Contains(got, "−1") {
		t.Errorf("the lot says %s", got)
	}
}

// Find finds lots by batch and words, customers by a part of their name, and
// names however their apostrophes are written.
func TestFindLotsAndParts(t *testing.T) {
	b := openBench(t)
	for _, name := range []string{"Sykeson & Daughter", "Nan O’Hara"} {
		c, err := shop.Save(b.Ctx, b.shop, b.Owner, shop.Customer{Name: name})
		if err != nil {
			t.Fatal(err)
		}
		if _, err := b.shop.OpenJob(b.Ctx, b.Owner, "", b.Set("enquiry", "customer", "", shop.LinkTo(shop.KindCustomer, c.ID))); err != nil {
			t.Fatal(err)
		}
	}
	for asked, want := range map[string][]string{
		"4711": {"cap bolts M12 10.9, lot 4711"}, "cap bolt": {"lot 4711"}, "son": {"Sykeson", "job"}, "ohara": {"Nan O’Hara", "job"}, "O'Hara": {"Nan O’Hara"},
		"hara": {"Nan O’Hara"}, "D-12": {"D-12"}, "scar": {"Bracken of Scar End"},
	} {
		got := text(b.page("/search?q=" + strings.ReplaceAll(asked, " ", "+")))
		for _, w := range want {
			if !strings.Contains(strings.SplitN(got, "Found for", 2)[1], w) {
				t.Errorf("%q does not find %q: %s", asked, w, got)
			}
		}
	}
}

// A stop is shown where it holds somebody up: not at a step that the job does
// not need, and not before there is anything to stop.
func TestStopsInTheListOfSteps(t *testing.T) {
	b := openBench(t)
	mark := func(j *shop.Job, step string) string {
		t.Helper()
		for _, a := range find(b.page("/job/"+string(j.ID)), func(n *html.Node) bool { return attr(n, "href") == "/job/"+string(j.ID)+"/"+step }) {
			if has(a.Parent.Parent, "class") || a.Parent.Data == "li" {
				return text(a)
			}
		}
		t.Fatalf("no step %s", step)
		return ""
	}
	plain, plates := b.Open(), b.Open(shop.WorkPlates)
	if got := mark(plain, "weld"); !strings.Contains(got, "not needed") {
		t.Errorf("without plates: %s", got)
	}
	if got := mark(plates, "weld"); !strings.Contains(got, "not yet") {
		t.Errorf("before the metal is known: %s", got)
	}
	b.Write(plates.ID, "metal", "metal", "", shop.Words(shop.MetalGrey))
	if got := mark(plates, "weld"); !strings.Contains(got, "stop") {
		t.Errorf("on grey iron: %s", got)
	}
}
