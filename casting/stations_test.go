package casting

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"axlewright/axle"
)

const gaugings = "../examples/stations/"

func report(t *testing.T, name string) (Gauging, StationReport) {
	t.Helper()
	g, err := LoadGauging(gaugings + name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	r, err := g.Report()
	if err != nil {
		t.Fatal(err)
	}
	return g, r
}

func TestStationsOfAVariant(t *testing.T) {
	g, r := report(t, "t24")
	if len(r.History) != 7 || len(r.Placed) != 2 || !r.Fit.Enough {
		t.Fatalf("%d stations, %d placed", len(r.History), len(r.Placed))
	}
	for _, h := range r.History {
		if h.Drifts != (h.Station == 5) {
			t.Errorf("station %d drifts: %v (P %.4g)", h.Station, h.Drifts, h.Trend.P)
		}
	}
	if o := r.History[2].Outliers; len(o) != 1 || o[0].Casting != "F-2120" {
		t.Errorf("out of line at station 3: %+v; the flash line was measured on F-2120", o)
	}
	if h := r.History[2]; h.Next.Scale > h.SD {
		t.Errorf("the casting out of line still widens the forecast: %g of %g", h.Next.Scale, h.SD)
	}
	if h := r.History[4]; h.Next.Mean >= h.Mean-0.0003 {
		t.Errorf("the forecast %g does not follow the drift from %g", h.Next.Mean, h.Mean)
	}
	first, second := r.Placed[0], r.Placed[1]
	if first.Fit != FitsTrimmed || second.Fit != FitsTrimmed {
		t.Errorf("%s %s, %s %s", first.Casting, first.Fit, second.Casting, second.Fit)
	}
	if s := second.Stations[1]; math.Abs(s.Clearance+0.0015) > 1e-9 || s.Do != "take 1.50 mm (59 thou) off nose side plate at root of the lower rib" {
		t.Errorf("station 2: %g m, %q", s.Clearance, s.Do)
	}
	if len(first.Trims) != 1 || first.Trims[0].Station != 5 || len(second.Trims) != 1 || second.Trims[0].Station != 2 {
		t.Errorf("trims %+v and %+v", first.Trims, second.Trims)
	}
	if !strings.Contains(r.Fit.Doubt, "two kinds") {
		t.Errorf("castings of two cavities are taken for one kind: forecast %+v, counted %+v", r.Fit.Whole, r.Fit.Past)
	}
	plan := r.Patterns
	if !plan.Enough || !plan.Proved || len(plan.Patterns) != 2 || !slices.Contains(plan.LeftOut, "F-2064") {
		t.Errorf("%s left out %v", plan.Sentence, plan.LeftOut)
	}
	if plan.Steps[0].Served+plan.Steps[1].Buys != plan.Steps[1].Served {
		t.Errorf("steps do not add up: %+v", plan.Steps)
	}
	if plan.Unseen > plan.Steps[1].Share || plan.Tried != plan.Castings {
		t.Errorf("of unseen castings %.2f, of those drawn from %.2f", plan.Unseen, plan.Steps[1].Share)
	}
	again, err := g.Report()
	if err != nil {
		t.Fatal(err)
	}
	a, err := json.Marshal(r)
	if err != nil {
		t.Fatal(err)
	}
	b, err := json.Marshal(again)
	if err != nil {
		t.Fatal(err)
	}
	if string(a) != string(b) {
		t.Error("the same file gave two answers")
	}
}

func TestTooFewCastingsSaySo(t *testing.T) {
	_, r := report(t, "t31-too-few")
	if r.Fit.Enough || !strings.Contains(r.Fit.Sentence, "Too few") || !strings.Contains(r.Redraw.Sentence, "Too few") || r.Redraw.Now {
		t.Errorf("%q %q", r.Fit.Sentence, r.Redraw.Sentence)
	}
	if w := r.Placed[0].Stations[0].Words; !strings.Contains(w, "too few") {
		t.Errorf("%q", w)
	}
	if r.Placed[0].Fit != FitsTrimmed {
		t.Error("trims need no history and must still be told")
	}
}

// one is a gauging of one station.
func one(more Sense, readings ...float64) *Gauging {
	g := &Gauging{Variant: "V"}
	g.Kit.Revision = "K"
	g.Kit.Gap.Number = axle.Number{Value: 0.001, Origin: axle.Trade}
	g.Kit.Trim.Number = axle.Number{Value: 0.0015, Origin: axle.Trade}
	s := Station{Number: 1, Name: "boss", Edge: "band", More: more}
	s.DrawnFor.Number = axle.Number{Value: 0.02, Origin: axle.Measured}
	s.DrawnGap.Number = axle.Number{Value: 0.0004, Origin: axle.Measured}
	g.Stations = []Station{s}
	for i, x := range readings {
		g.History = append(g.History, Measured{Casting: "F-" + string(rune('A'+i)), Readings: Readings{{Station: 1, Value: x, Times: 1}}})
	}
	return g
}

func TestUsualWords(t *testing.T) {
	for below, want := range map[float64]string{
		0.5: "as usual", 0.7: "as usual", 0.9: "somewhat larger than usual, larger than 18 in 20", 0.1: "somewhat smaller than usual, smaller than 18 in 20",
		0.98: "larger than 98 in 100", 0.9970: "much larger than usual, larger than 997 in 1000", 0.0001: "smaller than any that belongs",
	} {
		if got := usual(below); !strings.HasPrefix(got, want) {
			t.Errorf("%g is %q, expected %q", below, got, want)
		}
	}
}

// A casting far out must be found and must not widen what is forecast; castings
// that belong must seldom be called out.
func TestOutliers(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 1))
	false_, all := 0, 0
	for range 300 {
		var readings []float64
		for range 20 {
			readings = append(readings, 0.02+0.0003*r.NormFloat64())
		}
		g := one(MoreGap, readings...)
		false_ += len(g.history(&g.Stations[0]).Outliers)
		all += 20
		at := r.IntN(20)
		g.History[at].Readings[0].Value += 0.003
		h := g.history(&g.Stations[0])
		if !slices.ContainsFunc(h.Outliers, func(o Outlier) bool { return o.Casting == g.History[at].Casting }) {
			t.Fatalf("a casting ten spreads out was not found: %+v", h.Outliers)
		}
		if h.Next.Scale > 0.00055 {
			t.Errorf("the forecast is still %g wide", h.Next.Scale)
		}
	}
	if share := float64(false_) / float64(all); share > 0.015 {
		t.Errorf("%.2f %% of castings that belong were called out", 100*share)
	}
}

func TestBatchesAreCharted(t *testing.T) {
	g := one(MoreGap, 0.0200, 0.0201, 0.0203, 0.0199, 0.0200, 0.0202)
	for i := range g.History {
		g.History[i].Batch = []string{"a", "b", "c"}[i/2]
	}
	if h := g.history(&g.Stations[0]); h.Chart.Kind != BatchChart || len(h.Chart.Points) != 3 {
		t.Errorf("%+v", h.Chart)
	}
	g.History[5].Batch = ""
	if h := g.history(&g.Stations[0]); h.Chart.Kind != IndividualChart || len(h.Chart.Points) != 6 {
		t.Errorf("with a casting of no batch: %+v", h.Chart)
	}
}

// The aim for a long history: well below what anybody waits for.
func BenchmarkReport(b *testing.B) {
	g, err := LoadGauging(gaugings + "t24.yaml")
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := g.Report(); err != nil {
			b.Fatal(err)
		}
	}
}

// 200 castings at ten stations, far more than can be proved; a shop's history
// of 30 is part of BenchmarkReport.
func BenchmarkFewestPatterns200(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 1))
	g := one(MoreGap)
	for n := 2; n <= 10; n++ {
		s := g.Stations[0]
		s.Number = n
		g.Stations = append(g.Stations, s)
	}
	for i := range 200 {
		m := Measured{Casting: string(rune(0x4e00 + i))}
		for n := 1; n <= 10; n++ {
			m.Readings = append(m.Readings, StationReading{Station: n, Value: 0.02 + 0.0008*r.NormFloat64()})
		}
		g.History = append(g.History, m)
	}
	for b.Loop() {
		if p := g.patterns(); len(p.Steps) == 0 {
			b.Fatal("no patterns")
		}
	}
}
