package web_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"axlewright/shop"
	"axlewright/shop/shoptest"
)

// A casting is placed among those of its variant: what to take off where, how
// usual its readings are, and the chart that says so.
func TestStationsOnTheBench(t *testing.T) {
	b := openBench(t)
	j := b.Open(shop.WorkPlates)
	at := "/job/" + string(j.ID) + "/stations"
	wants(t, text(b.page(at)), "Which variant it is has not been written down yet")
	b.Write(j.ID, "identify", "casting", "", shop.LinkTo(shop.KindCasting, b.T31.ID))
	wants(t, text(b.page(at)), "no file with stations of T31")
	j = b.Write(j.ID, "identify", "casting", "", shop.LinkTo(shop.KindCasting, b.T24.ID))
	wants(t, text(b.page(at)), "The stations are known for KIT-T24-A.1; the newest revision is KIT-T24-A.3: measure against the plate")
	b.Kit.Revisions = slices.Clone(b.Kit.Revisions)
	for i := range b.Kit.Revisions {
		b.Kit.Revisions[i].Closed = true
	}
	if _, err := shop.Save(t.Context(), b.shop, b.Owner, b.Kit); err != nil {
		t.Fatal(err)
	}
	wants(t, text(b.page(at)), "T24, kit KIT-T24-A.1", "as the file of the stations says", "7 · right edge of the peg boss", "28 castings")
	for place, mm := range map[string]float64{"1": 18.2, "2": 147.6, "3": 168.1, "4": 57.9, "5": 67.1, "6": 46.2, "7": 45.9} {
		b.Write(j.ID, "stations", shop.StationItem, place, shoptest.MM(strconv.FormatFloat(mm, 'f', 1, 64)+" mm", mm))
	}
	doc := b.page(at)
	// drawn for 68.0 mm with a gap of 0.5 mm there; a reading smaller by 0.9 mm leaves 0.4 mm to come off
	wants(t, text(doc), "The kit goes on after trimming", "take 0.40 mm", "off nose side plate at top of the leg", "sits with a gap of 0.30 mm", "; as usual", "Grinding: guard on")
	boxOf(t, doc, "stations/station/7")
	charts := find(doc, func(n *html.Node) bool { return n.Data == "svg" })
	if len(charts) != 7 {
		t.Errorf("%d charts, want one a station", len(charts))
	}
	// plates of another revision, whose sizes at the stations nobody knows
	b.Write(j.ID, "plates", "kit", "", shop.Used(b.Kits.ID, 1))
	said := text(b.page(at))
	wants(t, said, "the plates on this job are KIT-T24-A.3: measure against the plate. No trim is given.")
	if strings.Contains(said, "take 0.40 mm") {
		t.Error("a trim is given for plates of another revision")
	}
}

// The variant's own page: forecast, redraw, charts, fewest patterns, as the
// command says them of the same file, with what the shop's jobs measured.
func TestVariantPage(t *testing.T) {
	b := openBench(t)
	at := "/cards/casting/" + string(b.T24.ID) + "/stations"
	wants(t, text(b.page(at)), "Fewest patterns", "28 castings", "on the next casting: as cut", "moulds wear", "Pattern A", "Draw it anew?")
	j := b.Open(shop.WorkPlates)
	b.Write(j.ID, "identify", "casting", "", shop.LinkTo(shop.KindCasting, b.T24.ID))
	b.Write(j.ID, "stations", shop.StationItem, "1", shoptest.MM("18.2 mm", 18.2))
	if got := text(b.page(at)); strings.Contains(got, "29 castings") {
		t.Error("a casting of which nobody is sure stands in the history")
	}
	b.Write(j.ID, "identify", "sure", "", shop.Words(shop.SureYes))
	wants(t, text(b.page(at)), "29 castings")
	leads := func(id shop.ID) int {
		return len(find(b.page("/cards/casting/"+string(id)), func(n *html.Node) bool { return attr(n, "href") == "/cards/casting/"+string(id)+"/stations" }))
	}
	if leads(b.T24.ID) != 1 || leads(b.T31.ID) != 0 {
		t.Error("the card leads to stations that there are not, or not to those that there are")
	}
	if a := b.get("/cards/casting/" + string(b.T31.ID) + "/stations"); a.status != 404 {
		t.Errorf("a variant without stations: %d", a.status)
	}
}
