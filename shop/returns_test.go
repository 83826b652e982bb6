package shop_test

import (
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"axlewright/internal/published"
	"axlewright/shop"
)

// unitsOf are units watched for so long; broken ones first.
func unitsOf(broken, sound []float64) []shop.Unit {
	var all []shop.Unit
	for _, t := range broken {
		all = append(all, shop.Unit{Years: t, Broke: true, Seen: []string{"heel"}})
	}
	for _, t := range sound {
		all = append(all, shop.Unit{Years: t})
	}
	return all
}

func times(n int, t float64) []float64 { return slices.Repeat([]float64{t}, n) }

// Lives that others have published, taken as years on the road.
func TestLivesOfUnitsPublished(t *testing.T) {
	const (
		nelson = "Nelson, Applied Life Data Analysis (1982), 70 diesel generator fans; values by survreg of R 4.2.2, survival 3.5-3"
		aml    = "R's package survival, data aml, survfit run with R 4.2.2"
	)
	fans, err := shop.RecordOf("fans", unitsOf(
		[]float64{450, 1150, 1150, 1600, 2070, 2070, 2080, 3100, 3450, 4600, 6100, 8750},
		slices.Concat([]float64{460, 1560, 1660}, times(5, 1850), times(3, 2030), []float64{2200}, times(4, 3000), []float64{3200}, times(2, 3750),
			times(4, 4150), times(4, 4300), times(4, 4850), times(3, 5000), times(3, 6100), []float64{6300}, times(2, 6450), []float64{6700, 7450},
			times(2, 7800), times(2, 8100), []float64{8200}, times(3, 8500), times(2, 8750), []float64{9400, 9900}, times(3, 10100), []float64{11500})))
	if err != nil {
		t.Fatal(err)
	}
	if fans.Units != 70 || fans.Broke != 12 || fans.Weibull == nil {
		t.Fatalf("%+v", fans)
	}
	leukaemia, err := shop.RecordOf("aml", unitsOf([]float64{9, 13, 18, 23, 31, 34, 48, 5, 5, 8, 8, 12, 23, 27, 30, 33, 43, 45}, []float64{13, 28, 45, 161, 16}))
	if err != nil {
		t.Fatal(err)
	}
	published.Check(t, []published.Row{
		{Name: "fans: shape", Got: fans.Weibull.Shape, Printed: "1.05845", Source: nelson},
		{Name: "fans: scale", Got: fans.Weibull.Scale, Printed: "26296.8", Source: nelson},
		{Name: "after 2: nobody yet", Got: leukaemia.After[1].Share, Printed: "1", Source: aml},
		{Name: "after 5: first step", Got: leukaemia.After[2].Share, Printed: "0.913043", Source: aml},
		{Name: "after 10: third step, 18 of 23", Got: leukaemia.After[3].Share, Printed: "0.782609", Source: aml},
	})
	if !strings.Contains(fans.Shape, "cannot be told") { // 1.06, and as likely below 1
		t.Errorf("the fans: %s", fans.Shape)
	}
}

// What is said of the sums: nothing where there is too little, and never more
// than the counts bear.
func TestWhatComesBackBesideTheSums(t *testing.T) {
	for _, c := range []struct {
		units, broken int
		holds         float64
		want          string
	}{
		{0, 0, 0, "asked for none"},
		{20, 0, 0.95, "Too few to say"},
		{40, 1, 0.97, "Too few to say"},
		{40, 2, 0.9725, "does not contradict"}, // 1.1 expected
		{40, 4, 0.90, "does not contradict"},
		{40, 12, 0.95, "More come back"}, // 2 expected
		{100, 1, 0.90, "Fewer come back"},
	} {
		var units []shop.Unit
		for i := range c.units {
			units = append(units, shop.Unit{Years: 3, Broke: i < c.broken, Holds: &c.holds})
		}
		r, err := shop.RecordOf("plates", append(units, shop.Unit{Years: 2}))
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(r.Says, c.want) || r.Broken != c.broken || math.Abs(r.Expected-float64(c.units)*(1-c.holds)) > 1e-9 {
			t.Errorf("%d of %d, %.2f expected: %q, want %q", r.Broken, r.Asked, r.Expected, r.Says, c.want)
		}
	}
}

// From the records: works, handover, advice before it, and what came back.
func TestReturnsAreGatheredFromTheRecords(t *testing.T) {
	b := bench(t)
	holds := 0.8
	advise := func(j *shop.Job, holds float64) {
		t.Helper()
		_, err := b.Shop.Attach(b.Ctx, b.Adviser, j.ID, shop.Attachment{Kind: shop.EntryAdvice, Step: "enquiry", Name: "advice.json",
			Media: "application/json", Content: []byte("{}"), Words: []string{"strengthen"}, Holds: &holds})
		if err != nil {
			t.Fatal(err)
		}
	}
	hand := func(j *shop.Job, day string) {
		t.Helper()
		b.Write(j.ID, "handover", "day", "", shop.Day(day))
		if _, err := b.Shop.SetState(b.Ctx, b.Owner, j.ID, shop.StateOut, 0, "the rest was not ordered"); err != nil {
			t.Fatal(err)
		}
	}
	var pegs []*shop.Job
	for range 4 {
		j := b.Open(shop.WorkPeg)
		advise(j, 0.1)
		advise(j, holds) // the later one counts
		hand(j, "2026-03-04")
		pegs = append(pegs, j)
	}
	plain := b.Open()
	hand(plain, "2026-03-04")
	b.Open(shop.WorkPeg) // still on the bench
	b.Clock.Move(2 * 365 * 24 * time.Hour)
	seen := shop.Failures[0].Seen
	b.Write(pegs[0].ID, "return", "evidence", "", shop.Words(seen))
	b.Write(pegs[0].ID, "return", "day", "", shop.Day("2027-03-04"))
	advise(pegs[1], 0.2)                                              // after the handover: not what was said then
	b.Write(pegs[1].ID, "return", "complaint", "", shop.Text("hums")) // came back, and was sound

	all, err := b.Shop.Returns(b.Ctx)
	if err != nil {
		t.Fatal(err)
	}
	if len(all) != 2 || all[0].Build != "peg" || all[1].Build != "as standard" || all[1].Units != 1 || all[1].Asked != 0 {
		t.Fatalf("%+v", all)
	}
	peg := all[0]
	if peg.Units != 4 || peg.Broke != 1 || peg.Asked != 4 || peg.Broken != 1 || math.Abs(peg.Expected-4*0.2) > 1e-9 || math.Abs(peg.Years-(1+3*2)) > 0.02 {
		t.Errorf("%+v", peg)
	}
	if len(peg.Seen) != 1 || peg.Seen[0] != (shop.SeenCount{Seen: seen, Times: 1}) || !strings.HasPrefix(peg.Says, "Too few") {
		t.Errorf("%+v %q", peg.Seen, peg.Says)
	}
	if len(peg.After) != 1 || math.Abs(peg.After[0].Share-0.75) > 1e-9 {
		t.Errorf("after a year %+v", peg.After)
	}

	// What happens after it was read once is told too.
	b.Clock.Move(40 * 24 * time.Hour)
	b.Write(pegs[2].ID, "return", "evidence", "", shop.Words(seen))
	withdrawn, err := b.Shop.Job(b.Ctx, pegs[0].ID)
	if err != nil {
		t.Fatal(err)
	}
	gone := b.Set("return", "evidence", "", shop.Value{Withdrawn: true})
	gone.Corrects, gone.Why = withdrawn.Last(gone.Slot).Seq, "it was another unit"
	if _, err := b.Shop.Record(b.Ctx, b.Builder, pegs[0].ID, gone); err != nil {
		t.Fatal(err)
	}
	if all, err = b.Shop.Returns(b.Ctx); err != nil || all[0].Units != 4 || all[0].Broke != 1 || all[0].Years < 7 {
		t.Errorf("a month later %v %+v", err, all)
	}
	hand(b.Open(shop.WorkPeg), "2028-03-01")
	if all, err = b.Shop.Returns(b.Ctx); err != nil || all[0].Units != 5 {
		t.Errorf("one more unit %v %+v", err, all)
	}
}
