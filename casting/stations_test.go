package casting

import (
	"encoding/json"
	"errors"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"axlewright/axle"

	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"
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
	if len(r.History) != 8 || len(r.Placed) != 2 || !r.Fit.Enough {
		t.Fatalf("%d stations, %d placed", len(r.History), len(r.Placed))
	}
	for _, h := range r.History {
		if h.Drifts != (h.Station == 6) {
			t.Errorf("station %d drifts: %v (P %.4g)", h.Station, h.Drifts, h.Trend.P)
		}
	}
	if o := r.History[2].Outliers; len(o) != 1 || o[0].Casting != "F-2120" {
		t.Errorf("out of line at station 3: %+v; the flash line was measured on F-2120", o)
	}
	if h := r.History[2]; h.Next.Scale > h.SD {
		t.Errorf("the casting out of line still widens the forecast: %g of %g", h.Next.Scale, h.SD)
	}
	if h := r.History[5]; h.Next.Mean <= h.Mean+0.0003 {
		t.Errorf("the forecast %g does not follow the drift from %g", h.Next.Mean, h.Mean)
	}
	first, second := r.Placed[0], r.Placed[1]
	if first.Fit != FitsTrimmed || second.Fit != FitsTrimmed {
		t.Errorf("%s %s, %s %s", first.Casting, first.Fit, second.Casting, second.Fit)
	}
	if s := second.Stations[0]; math.Abs(s.Clearance+0.0015) > 1e-9 || s.Do != "take 1.50 mm (59 thou) off left cheek at left rib foot" {
		t.Errorf("station 1: %g m, %q", s.Clearance, s.Do)
	}
	if len(first.Trims) != 3 || first.Trims[0].Edge != "nose band" {
		t.Errorf("trims %+v", first.Trims)
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

func TestClearanceAndFit(t *testing.T) {
	for _, c := range []struct {
		more      Sense
		reading   float64
		clearance float64
		fit       Fit
	}{
		{MoreGap, 0.020, 0.0004, FitsAsCut}, {MoreGap, 0.0206, 0.001, FitsAsCut}, {MoreGap, 0.0207, 0.0011, FitsNot},
		{MoreGap, 0.0196, 0, FitsAsCut}, {MoreGap, 0.0190, -0.0006, FitsTrimmed}, {MoreGap, 0.0181, -0.0015, FitsTrimmed}, {MoreGap, 0.0180, -0.0016, FitsNot},
		{MoreTrim, 0.020, 0.0004, FitsAsCut}, {MoreTrim, 0.0194, 0.001, FitsAsCut}, {MoreTrim, 0.0193, 0.0011, FitsNot},
		{MoreTrim, 0.0204, 0, FitsAsCut}, {MoreTrim, 0.0210, -0.0006, FitsTrimmed}, {MoreTrim, 0.0220, -0.0016, FitsNot},
	} {
		g := one(c.more)
		s := &g.Stations[0]
		if got := s.clearance(c.reading); math.Abs(got-c.clearance) > 1e-12 || g.Kit.fit(got) != c.fit {
			t.Errorf("%s %g: clearance %g %s, expected %g %s", c.more, c.reading, got, g.Kit.fit(got), c.clearance, c.fit)
		}
		if got := s.reading(c.clearance); math.Abs(got-c.reading) > 1e-12 {
			t.Errorf("%s: clearance %g is a reading of %g, expected %g", c.more, c.clearance, got, c.reading)
		}
		low, high := g.span(s, c.reading)
		for _, drawn := range []float64{low + 1e-8, high - 1e-8, low - 1e-8, high + 1e-8} {
			inside := drawn > low && drawn < high
			if fits := g.Kit.fit(s.clearance(c.reading-(drawn-s.DrawnFor.Value))) != FitsNot; fits != inside {
				t.Errorf("%s %g drawn for %g: fits %v, span %g to %g", c.more, c.reading, drawn, fits, low, high)
			}
		}
	}
}

// The chances at a station and the expected trim must be what counting castings gives.
func TestStationFitAgainstCounting(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 8))
	for _, more := range []Sense{MoreGap, MoreTrim} {
		g := one(more)
		s := &g.Stations[0]
		for _, f := range []Forecast{{0.0198, 0.0007, 6}, {0.0205, 0.0004, 30}, {0.0190, 0.001, 4}} {
			want, trim, over := FitChances{}, 0.0, 0.0
			got := g.stationFit(s, f)
			chi := distuv.ChiSquared{K: f.DoF, Src: rand.NewPCG(1, 2)}
			const n = 400000
			for range n {
				c := s.clearance(f.Mean + f.Scale*r.NormFloat64()*math.Sqrt(f.DoF/chi.Rand()))
				want.add(g.Kit.fit(c), 1.0/n)
				trim += math.Max(-c, 0) / n
				if -c > got.OneInTen {
					over += 1.0 / n
				}
			}
			c := got.Chances
			if math.Abs(c.AsCut+c.Trimmed+c.Not-1) > 1e-12 {
				t.Errorf("chances add up to %g", c.AsCut+c.Trimmed+c.Not)
			}
			if math.Abs(c.AsCut-want.AsCut) > 0.004 || math.Abs(c.Trimmed-want.Trimmed) > 0.004 || math.Abs(c.Not-want.Not) > 0.004 {
				t.Errorf("%s %+v: %+v, counted %+v", more, f, c, want)
			}
			if math.Abs(got.ExpectedTrim-trim) > 0.01*trim+1e-6 {
				t.Errorf("%s %+v: expected trim %g, counted %g", more, f, got.ExpectedTrim, trim)
			}
			if got.OneInTen > 0 && math.Abs(over-0.1) > 0.003 {
				t.Errorf("%s %+v: %.1f %% exceed what one in ten should", more, f, 100*over)
			}
		}
	}
}

// Stations that have nothing to do with one another multiply; stations that
// are the same thing do not.
func TestWholeKitKnowsTheLikenessOfStations(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 1))
	build := func(alike bool) *Gauging {
		g := one(MoreGap)
		second := g.Stations[0]
		second.Number = 2
		g.Stations = append(g.Stations, second)
		for i := range 200 {
			a := r.NormFloat64()
			b := r.NormFloat64()
			if alike {
				b = a
			}
			g.History = append(g.History, Measured{Casting: string(rune('A' + i)), Readings: Readings{{Station: 1, Value: 0.02 + 0.0005*a, Times: 1}, {Station: 2, Value: 0.02 + 0.0005*b, Times: 1}}})
		}
		return g
	}
	for _, alike := range []bool{false, true} {
		rep, err := build(alike).Report()
		if err != nil {
			t.Fatal(err)
		}
		p, q := rep.Fit.Stations[0].Chances.AsCut, rep.Fit.Stations[1].Chances.AsCut
		want := p * q
		if alike {
			want = p
		}
		if math.Abs(rep.Fit.Whole.AsCut-want) > 0.02 {
			t.Errorf("alike %v: whole %.3f, stations %.3f and %.3f", alike, rep.Fit.Whole.AsCut, p, q)
		}
		if w := rep.Fit.Whole; math.Abs(w.AsCut+w.Trimmed+w.Not-1) > 1e-9 {
			t.Errorf("chances add up to %g", w.AsCut+w.Trimmed+w.Not)
		}
	}
}

// Of castings to come, nine in ten must fall into the band that is forecast to
// hold nine in ten: for few castings as for many, drifting or not.
func TestForecastsAreCalibrated(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 6))
	for _, c := range []struct {
		castings int
		drift    float64 // in standard deviations a casting
	}{{5, 0}, {8, 0}, {20, 0}, {25, 0.3}, {40, 0.2}} {
		inside, n := 0.0, 0.0
		for range 2500 {
			var readings []float64
			for i := range c.castings + 1 {
				readings = append(readings, 0.02+0.0003*(r.NormFloat64()+c.drift*float64(i)))
			}
			g := one(MoreGap, readings[:c.castings]...)
			h := g.history(&g.Stations[0])
			if c.drift > 0 && !h.Drifts {
				continue // not seen to drift: another matter
			}
			if p := h.Next.below(readings[c.castings]); p > 0.05 && p < 0.95 {
				inside++
			}
			n++
		}
		if n < 1200 {
			t.Errorf("%+v: only %.0f histories", c, n)
		}
		if share := inside / n; math.Abs(share-0.9) > 0.025 {
			t.Errorf("%+v: %.1f %% inside the band of 90 %%", c, 100*share)
		}
	}
}

func TestRedraw(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 3))
	for _, more := range []Sense{MoreGap, MoreTrim} {
		for _, off := range []float64{0, 0.0013, -0.0013} {
			var readings []float64
			for range 25 {
				readings = append(readings, 0.02+off+0.0002*r.NormFloat64())
			}
			g := one(more, readings...)
			rep, err := g.Report()
			if err != nil {
				t.Fatal(err)
			}
			d := rep.Redraw
			if d.After > d.Minutes+1e-9 {
				t.Errorf("%s %g: redrawing costs %g minutes more", more, off, d.After-d.Minutes)
			}
			if off == 0 {
				if d.Now {
					t.Errorf("%s: redraws a kit that sits: %s", more, d.Sentence)
				}
				continue
			}
			if len(d.Stations) != 1 {
				t.Fatalf("%s %g: %s %+v", more, off, d.Sentence, d.Stations)
			}
			if wide := g.Stations[0].clearance(0.02+off) > g.Kit.Gap.Value; wide && !d.Now {
				t.Errorf("%s %g: nothing goes on and it does not redraw: %s", more, off, d.Sentence)
			}
			shift := d.Stations[0].New - d.Stations[0].DrawnFor
			if c := g.Stations[0].clearance(0.02 + off - shift); c < 0.0002 || c > 0.0008 {
				t.Errorf("%s %g: redrawn for a mean gap of %g", more, off, c)
			}
			if d.Whole.AsCut < 0.9 {
				t.Errorf("%s %g: redrawn it goes on as cut with only %.2f", more, off, d.Whole.AsCut)
			}
		}
	}
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

func TestReportNeverBreaks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := drawGauging(t, rapid.IntRange(0, 12).Draw(t, "castings"), rapid.IntRange(1, 4).Draw(t, "stations"))
		for i := range g.History {
			if n := len(g.History[i].Readings); rapid.IntRange(0, 4).Draw(t, "gap") == 0 && n > 1 {
				g.History[i].Readings = g.History[i].Readings[:n-1]
			}
		}
		if n := len(g.History); n > 1 && rapid.Bool().Draw(t, "new") {
			g.New, g.History = g.History[n-1:], g.History[:n-1]
		}
		r, err := g.Report()
		if err != nil {
			t.Fatal(err)
		}
		if _, err := json.Marshal(r); err != nil { // refuses NaN and infinity
			t.Fatal(err)
		}
	})
}

func TestMalformedGaugings(t *testing.T) {
	good, err := os.ReadFile(gaugings + "t31-too-few.yaml")
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "g.yaml")
	for name, c := range map[string]struct{ from, to, says string }{
		"unknown key":        {"variant: T31", "varient: T31", `unknown field "varient"`},
		"no variant":         {"variant: T31\n", "", "whose stations"},
		"gap without unit":   {`gap: "1.0 mm, trade"`, "gap: 1.0", "the unit is missing"},
		"gap too wide":       {`gap: "1.0 mm, trade"`, "gap: 1.0 m", "out of reason"},
		"no trim":            {`, trim: "1.5 mm, trade"`, "", "kit.trim"},
		"wanted too much":    {`trim: "1.5 mm, trade"`, `trim: 1.5 mm, wanted: 90`, "not a share"},
		"station twice":      {"number: 2", "number: 1", "stands twice"},
		"unknown sense":      {"more: gap", "more: fun", "not one of gap, trim"},
		"no edge":            {"edge: left cheek, ", "", "the edge of the plate"},
		"drawn for nothing":  {"drawn_for: 16.0 mm, ", "", "drawn_for"},
		"unknown station":    {"{1: 16.2 mm, 2: 40.1 mm}", "{1: 16.2 mm, 3: 40.1 mm}", "there is no station 3"},
		"station by name":    {"{1: 16.2 mm, 2: 40.1 mm}", "{foot: 16.2 mm}", "not the number of a station"},
		"reading no unit":    {"1: 16.2 mm", "1: 16.2", "the unit is missing"},
		"reading a mass":     {"1: 16.2 mm", "1: 16.2 kg", "got a mass"},
		"reading enormous":   {"1: 16.2 mm", "1: 16.2 km", "more than any nose"},
		"reading in a map":   {"1: 16.2 mm", "1: {a: 16.2 mm}", "expected a reading"},
		"casting twice":      {"F-2111", "F-2101", "give each casting once"},
		"casting without":    {"casting: F-2111, ", "", "without its tag"},
		"date no date":       {"casting: F-2111,", "casting: F-2111, date: yesterday,", "no date"},
		"dates backwards":    {"casting: F-2101,", "casting: F-2101, date: 2024-01-01,", ""},
		"no readings at all": {", readings: {1: 15.8 mm, 2: 40.6 mm}", "", "are missing"},
		"no stations":        {"stations:", "history:", "already defined"},
		"negative effort":    {"stations:", "effort: {trim: -3}\nstations:", "neither minutes nor castings"},
	} {
		text := strings.Replace(string(good), c.from, c.to, 1)
		if name == "dates backwards" {
			text = strings.Replace(text, "casting: F-2111,", "casting: F-2111, date: 2023-01-01,", 1)
			c.says = "put the oldest first"
		}
		if text == string(good) {
			t.Fatalf("%s: %q is not in the file", name, c.from)
		}
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		_, err := LoadGauging(path)
		var found axle.Findings
		if !errors.As(err, &found) || !strings.Contains(err.Error(), c.says) || found[0].File != path {
			t.Errorf("%s: expected %q, got:\n%v", name, c.says, err)
		}
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
