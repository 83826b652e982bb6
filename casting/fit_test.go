package casting

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
)

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
		if rep.Fit.Doubt != "" {
			t.Errorf("castings of one kind are doubted: %+v and %+v", rep.Fit.Whole, rep.Fit.Past)
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
