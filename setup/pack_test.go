package setup

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestNearestPack(t *testing.T) {
	stock := []Shim{{"A", 1.00 * mm, 1}, {"B", 0.254 * mm, 3}, {"C", 0.127 * mm, 2}, {"D", 0.0762 * mm, 2}}
	r := must[PackResult](t)(NearestPack(PackChoice{Spec: light, Wanted: 1.3302 * mm, Stock: stock, ThickerPushes: TowardsWheel}))
	if !near(r.Left, 0, 1e-9) || len(r.Pack) != 3 { // 1.00 + 0.254 + 0.0762
		t.Errorf("left %g mm with %v", r.Left/mm, r.Pack)
	}
	wantState(t, r.Answer, Fine, "exact", "1 × 1.00 mm (39 thou) (A)")

	r = must[PackResult](t)(NearestPack(PackChoice{Spec: light, Wanted: 1.355 * mm, Stock: stock, ThickerPushes: TowardsWheel}))
	wantState(t, r.Answer, Look, "too thin", "too far out", "nothing nearer is in stock") // 1.3302 or 1.381
	r = must[PackResult](t)(NearestPack(PackChoice{Spec: light, Wanted: 1.40 * mm, Stock: stock, ThickerPushes: TowardsWheel}))
	wantState(t, r.Answer, Fine, "too thick", "too far in")
	r = must[PackResult](t)(NearestPack(PackChoice{Spec: light, Wanted: 1.40 * mm, Stock: stock, ThickerPushes: AwayFromWheel}))
	wantState(t, r.Answer, Fine, "too thick", "too far out")
}

func TestPackOfAnEmptyShelf(t *testing.T) {
	r := must[PackResult](t)(NearestPack(PackChoice{Spec: light, Wanted: 1.40 * mm}))
	wantState(t, r.Answer, Look, "no shim in stock")
	r = must[PackResult](t)(NearestPack(PackChoice{Spec: light, Wanted: 0.005 * mm, Stock: []Shim{{"", 0.1 * mm, 5}}}))
	wantState(t, r.Answer, Fine, "No shim.")
}

// Every pack that could be taken, tried one by one.
func TestPackIsTheNearestOfAll(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		stock := make([]Shim, rapid.IntRange(1, 4).Draw(rt, "kinds"))
		for i := range stock {
			stock[i] = Shim{Thickness: float64(rapid.IntRange(100, 12000).Draw(rt, "thickness")) * shimUnit, Count: rapid.IntRange(0, 3).Draw(rt, "count")}
		}
		most := rapid.IntRange(1, 5).Draw(rt, "most")
		wanted := float64(rapid.IntRange(0, 30000).Draw(rt, "wanted")) * shimUnit
		r := must[PackResult](t)(NearestPack(PackChoice{Spec: light, Wanted: wanted, Stock: stock, Most: most}))
		best, fewest := math.Inf(1), 0
		var try func(k, pieces int, sum float64)
		try = func(k, pieces int, sum float64) {
			if k == len(stock) {
				off := math.Abs(sum - wanted)
				if off < best-1e-10 || off < best+1e-10 && pieces < fewest {
					best, fewest = off, pieces
				}
				return
			}
			for n := 0; n <= stock[k].Count && pieces+n <= most; n++ {
				try(k+1, pieces+n, sum+float64(n)*stock[k].Thickness)
			}
		}
		try(0, 0, 0)
		pieces := 0
		for _, s := range r.Pack {
			pieces += s.Count
			for _, have := range stock {
				if have.Thickness == s.Thickness && s.Count > have.Count && len(stock) == 1 {
					rt.Errorf("takes %d of %d", s.Count, have.Count)
				}
			}
		}
		if !near(math.Abs(r.Left), best, 1e-10) || pieces != fewest {
			rt.Errorf("leaves %g with %d pieces, best is %g with %d", r.Left, pieces, best, fewest)
		}
		if !near(r.Thick+r.Left, wanted, 1e-12) {
			rt.Errorf("pack %g and rest %g do not make %g", r.Thick, r.Left, wanted)
		}
	})
}

func BenchmarkNearestPackOfAFullShelf(b *testing.B) {
	var stock []Shim
	for i := range 40 {
		stock = append(stock, Shim{Thickness: float64(i+4) * 25.4e-6, Count: 5})
	}
	for b.Loop() {
		if _, err := NearestPack(PackChoice{Wanted: 1.4712 * mm, Stock: stock}); err != nil {
			b.Fatal(err)
		}
	}
}
