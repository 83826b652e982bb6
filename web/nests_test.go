package web_test

import (
	"net/http"
	"strings"
	"testing"
	"time"

	"axlewright/shop"
)

// steel puts sheets into stock.
func (b *bench) steel(t testing.TB, s shop.Steel) shop.Steel {
	t.Helper()
	saved, err := shop.Save(t.Context(), b.shop, b.Owner, s)
	if err != nil {
		t.Fatal(err)
	}
	return saved
}

// nested lays kits out and waits for the nest's page: where it is, and what it says.
func (b *bench) nested(t testing.TB, fields ...string) (path, said string) {
	t.Helper()
	a := b.post("/stock/sheets", fields...)
	if a.status != http.StatusSeeOther {
		t.Fatalf("%d %s", a.status, a.body)
	}
	path = a.header.Get("Location")
	for range 600 {
		if body := b.get(path).body; !strings.Contains(body, "being laid out") {
			return path, text(parse(t, body))
		}
		time.Sleep(50 * time.Millisecond)
	}
	t.Fatal("the nest was never laid out")
	return "", ""
}

func TestNestTakesSheetsAndPutsRemnantsBack(t *testing.T) {
	b := openBench(t)
	k, err := b.shop.AddDrawing(t.Context(), b.Owner, example(t, "kits/KIT-T24-B.1.yaml"), "")
	if err != nil {
		t.Fatal(err)
	}
	thin := b.steel(t, shop.Steel{Name: "thin", Grade: "S700MC", Thickness: 3e-3, Long: 2.5, Wide: 1.25, Count: 2, Price: shop.MoneyOf(200), Batch: "B0417"})
	scrap := b.steel(t, shop.Steel{Name: "R-7", Grade: "S700MC", Thickness: 3e-3, Long: 0.3, Wide: 0.25, Count: 1, Remnant: true})
	want := []string{"kit", string(k.ID) + "/1", "sets", "4", "batch", "B0417", "rate_cut", "0.9", "rate_sheet", "15"}
	if _, said := b.nested(t, want...); !strings.Contains(said, "no sheet of S355") {
		t.Errorf("without the thicker steel: %s", said)
	}
	thick := b.steel(t, shop.Steel{Name: "thick", Grade: "S355", Thickness: 5e-3, Long: 1.0, Wide: 0.5, Count: 1, Price: shop.MoneyOf(80)})
	path, said := b.nested(t, want...)
	for _, want := range []string{"4 × KIT-T24-B.1", "S700MC, 3.00 mm", "S355, 5.00 mm", "R-7", "in simple rows", "Could become at most", "Price", "offcut", "DXF R12", "not cut"} {
		if !strings.Contains(said, want) {
			t.Errorf("no %q in %s", want, said)
		}
	}
	if f := b.get(path + "/nest-S355-5mm-thick-1.dxf"); f.status != http.StatusOK || !strings.HasPrefix(f.body, "  0\r\nSECTION") {
		t.Errorf("cut file: %d %.30q", f.status, f.body)
	}
	again, _ := b.nested(t, want...) // a second plan on the same stock
	if a := b.post(path); a.status != http.StatusSeeOther {
		t.Fatalf("cut: %d %s", a.status, a.body)
	}
	steels, _, err := shop.List[shop.Steel](t.Context(), b.shop, shop.CardQuery{Retired: true})
	if err != nil {
		t.Fatal(err)
	}
	at := map[string]shop.Steel{}
	remnants, before := 0, thick.Long*thick.Wide
	for _, s := range steels {
		at[s.Name] = s
		if s.From == "N-0001" {
			remnants++
			if s.Grade == "S355" && (s.Thickness != 5e-3 || !(s.Long*s.Wide < before) || s.Price <= 0 || s.Price >= thick.Price) {
				t.Errorf("remnant %+v", s)
			}
		}
	}
	if now := at[thick.Name]; now.Count != 0 || !now.Retired {
		t.Errorf("the thick sheet is still there: %+v", now)
	}
	if now := at[scrap.Name]; now.Count != 0 || !now.Retired {
		t.Errorf("the remnant was not used first: %+v", now)
	}
	if now := at[thin.Name]; now.Count != 2 { // four small sets go on the remnant
		t.Errorf("a whole sheet was taken: %+v", now)
	}
	if remnants == 0 {
		t.Error("nothing was put back")
	}
	lots, _, err := b.shop.Lots(t.Context(), shop.CardQuery{Group: string(shop.LotKits), Terms: shop.FoldWords("B0417")})
	if err != nil || len(lots) != 1 || lots[0].Free != 4 || lots[0].Lot.Kit != k.ID || lots[0].Lot.Revision != "1" || lots[0].Lot.Cost <= 0 {
		t.Errorf("%+v %v", lots, err)
	}
	if a := b.post(path); a.status != http.StatusConflict {
		t.Errorf("cut twice: %d", a.status)
	}
	if a := b.post(again); a.status != http.StatusConflict || !strings.Contains(a.body, "lay it out again") {
		t.Errorf("from sheets that are gone: %d %s", a.status, a.body)
	}
	if said := text(b.page("/stock/sheets")); !strings.Contains(said, "left over from N-0001") || strings.Contains(said, "thick 1 sheet") {
		t.Errorf("%s", said)
	}
}

func TestNestRefusesInWords(t *testing.T) {
	b := openBench(t)
	for name, fields := range map[string][]string{"nothing": nil, "no count": {"kit", string(b.Kit.ID) + "/3", "sets", "many"}, "a price": {"kit", string(b.Kit.ID) + "/3", "sets", "1", "rate_cut", "dear"}} {
		if a := b.post("/stock/sheets", fields...); a.status != http.StatusUnprocessableEntity {
			t.Errorf("%s: %d", name, a.status)
		}
	}
	if _, said := b.nested(t, "kit", string(b.Kit.ID)+"/3", "sets", "1"); !strings.Contains(said, "no drawing here") {
		t.Errorf("a kit without a drawing: %s", said)
	}
	if a := b.get("/stock/nest/" + string(shop.NewID())); a.status != http.StatusNotFound {
		t.Errorf("no such nest: %d", a.status)
	}
	if _, err := shop.Save(t.Context(), b.shop, b.Owner, shop.Steel{Name: "x", Grade: "cheese", Thickness: 3e-3, Long: 1, Wide: 1, Count: 1}); err == nil {
		t.Error("cheese is in stock")
	}
}
