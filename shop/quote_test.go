package shop_test

import (
	"math"
	"testing"

	"axlewright/shop"
)

// Hours at the bench as the trade counts them for three kinds of build (common
// practice, no source): 5.3 with better fixings, 11.8 with peg and plates, 14.5
// with the big bearing too.
func TestHoursOfABuild(t *testing.T) {
	p := shop.StartPrices()
	fixings := []shop.Work{shop.WorkFixings}
	plates := append(fixings, shop.WorkPeg, shop.WorkPlates)
	for _, c := range []struct {
		works []shop.Work
		want  float64 // h, to a tenth
	}{
		{fixings, 5.3}, {plates, 11.8}, {append(plates, shop.WorkBearing), 14.5},
	} {
		q, err := p.Quote(shop.QuoteRequest{Works: c.works})
		if err != nil {
			t.Fatal(err)
		}
		if d := q.Minutes/60 - c.want; math.Abs(d) > 0.0501 { // half of the last digit; 11.75 rounds up
			t.Errorf("%v: %.2f h, want %.1f", c.works, q.Minutes/60, c.want)
		}
	}
}

// Worked by hand: one casting in eight is lost, after three hours at 60 an hour,
// a donor at 90. Of eight begun seven come out, so each carries a seventh of
// 90 + 180 = 270: 38.57.
func TestQuoteByHand(t *testing.T) {
	p := shop.Prices{Rate: shop.MoneyOf(60), Scrap: 0.125, ScrapAfter: 180, Margin: 0.25, RoundTo: shop.MoneyOf(5),
		Minutes:   []shop.MinutesPrice{{Title: "weld", Minutes: 150, For: []shop.Work{shop.WorkPlates}}, {Title: "set", Minutes: 90}, {Title: "telephone", Minutes: 30, Hidden: true}},
		Materials: []shop.MaterialCost{{Title: "bearings", Cost: shop.MoneyOf(120)}, {Title: "kit", Cost: shop.MoneyOf(45), For: []shop.Work{shop.WorkPlates}}}}
	q, err := p.Quote(shop.QuoteRequest{Works: []shop.Work{shop.WorkPlates}, Donor: shop.MoneyOf(90),
		Extras: []shop.QuoteLine{{Title: "skid pan", Minutes: 20, Cost: shop.MoneyOf(35)}}})
	if err != nil {
		t.Fatal(err)
	}
	// Labour 4.5 h = 270; parts 120 + 45 + 90 + 35 + 20 min at 60/h = 310;
	// lost 38.57; cost 618.57; with a quarter margin 824.76, rounded up 825.
	for what, c := range map[string]struct{ got, want shop.Money }{
		"labour": {q.Labour, 270_00}, "parts": {q.Parts, 310_00}, "lost": {q.Scrap, 38_57},
		"cost": {q.Cost, 618_57}, "price": {q.Price, 825_00}, "margin": {q.Margin, 206_43},
	} {
		if c.got != c.want {
			t.Errorf("%s %s, want %s", what, c.got, c.want)
		}
	}
	if q.Minutes != 260 || math.Abs(q.Share-0.2502) > 1e-9 {
		t.Errorf("%v minutes, share %v", q.Minutes, q.Share)
	}
	var lines shop.Money
	for _, l := range q.Lines {
		lines += l.Cost
	}
	if lines != q.Cost {
		t.Errorf("the lines add up to %s, not to %s", lines, q.Cost)
	}
	// A unit without welding carries no lost castings; a price spoken of stays.
	q, err = p.Quote(shop.QuoteRequest{Donor: shop.MoneyOf(90), Price: shop.MoneyOf(300)})
	if err != nil || q.Scrap != 0 || q.Price != 300_00 || q.Margin != 300_00-q.Cost || q.Share >= 0 {
		t.Errorf("%+v %v", q, err)
	}
	for _, bad := range []shop.QuoteRequest{{Donor: -1}, {Works: []shop.Work{"magic"}}, {Extras: []shop.QuoteLine{{Title: "", Cost: 1}}}, {Extras: []shop.QuoteLine{{Title: "x", Minutes: math.NaN()}}}} {
		_, err := p.Quote(bad)
		wantCode(t, err, shop.Invalid)
	}
}

// A quote is kept as it was given, whatever becomes of the prices.
func TestAQuoteStaysAsItWasGiven(t *testing.T) {
	b := bench(t)
	j := b.Open(shop.WorkPeg)
	p, err := b.Shop.Prices(b.Ctx, b.Adviser)
	if err != nil {
		t.Fatal(err)
	}
	q, err := p.Quote(shop.QuoteRequest{Works: j.Works()})
	if err != nil {
		t.Fatal(err)
	}
	for range 2 { // the same ticket twice
		if j, err = b.Shop.KeepQuote(b.Ctx, b.Adviser, j.ID, q, "quote-1"); err != nil {
			t.Fatal(err)
		}
	}
	p.Rate *= 2
	if _, err := shop.Save(b.Ctx, b.Shop, b.Owner, p); err != nil {
		t.Fatal(err)
	}
	kept, err := b.Shop.Quotes(b.Ctx, b.Adviser, j)
	if err != nil || len(kept) != 1 || kept[0].Price != q.Price || len(kept[0].Lines) != len(q.Lines) {
		t.Errorf("kept %+v %v", kept, err)
	}
	_, err = b.Shop.Quotes(b.Ctx, b.Builder, j)
	wantCode(t, err, shop.Forbidden)
}

func TestMoney(t *testing.T) {
	for m, want := range map[shop.Money]string{0: "0.00", 5: "0.05", 1234_50: "1234.50", -5: "−0.05", -1234_56: "−1234.56"} {
		if got := m.String(); got != want {
			t.Errorf("got %s, want %s", got, want)
		}
	}
	for x, want := range map[float64]shop.Money{1.005: 100, 1.235: 124, -1.235: -124, 0.1 + 0.2: 30} {
		if got := shop.MoneyOf(x); got != want {
			t.Errorf("%v is %d hundredths, want %d", x, got, want)
		}
	}
}
