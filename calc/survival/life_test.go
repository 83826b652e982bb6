package survival

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"
)

func TestExponentialFitPublished(t *testing.T) {
	const (
		nelson = "Nelson, Applied Life Data Analysis (1982), 70 diesel generator fans"
		exact  = nelson + ", recomputed without rounding"
		nist   = "NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.5.1, example (figures from memory)"
	)
	fan, err := ExponentialFit(watched(t, fans))
	if err != nil {
		t.Fatal(err)
	}
	limits, err := MeanLifeInterval(MeanLifeIntervalParams{TotalTime: 800, Failures: 2, Confidence: 0.9})
	if err != nil {
		t.Fatal(err)
	}
	published.Check(t, []published.Row{
		{Name: "fans: mean life, h", Got: fan.Mean, Printed: "28700", Source: nelson, Within: 0.001, Why: "printed to three figures"},
		{Name: "fans: mean life, h", Got: fan.Mean, Printed: "28703.3", Source: exact},
		{Name: "2 failures in 800 h: lower end, h", Got: limits.Low, Printed: "127", Source: nist},
		{Name: "2 failures in 800 h: upper end, h", Got: limits.High, Printed: "2251", Source: nist},
		{Name: "the same as a factor of the mean", Got: limits.Low / 400, Printed: "0.3177", Source: nist},
		{Name: "the same as a factor of the mean", Got: limits.High / 400, Printed: "5.6281", Source: nist},
	})
}

// The exponential is the Weibull of shape 1, so it can be no likelier.
func TestExponentialIsNoLikelierThanWeibull(t *testing.T) {
	for _, data := range []string{fans, patients} {
		list := watched(t, data)
		exponential, err := ExponentialFit(list)
		if err != nil {
			t.Fatal(err)
		}
		weibull, _ := WeibullFit(list)
		if exponential.LogLikelihood > weibull.LogLikelihood {
			t.Errorf("exponential %g, weibull %g", exponential.LogLikelihood, weibull.LogLikelihood)
		}
		if got := logLikelihood(list, 1, exponential.Mean); math.Abs(got-exponential.LogLikelihood) > 1e-9 {
			t.Errorf("log-likelihood %g, written out %g", exponential.LogLikelihood, got)
		}
	}
}

func TestKaplanMeierPublished(t *testing.T) {
	const (
		aml    = "R's package survival, data aml, survfit run with R 4.2.2"
		miller = "Miller, Survival Analysis (1981), maintained group of the same data, as printed by survfit (from memory)"
		gehan  = "Freireich et al. (1963), 6-MP group, as in textbooks of survival analysis (from memory)"
	)
	all, err := KaplanMeier(watched(t, "9 13 13+ 18 23 28+ 31 34 45+ 48 161+ 2x5 2x8 12 16+ 23 27 30 33 43 45"))
	if err != nil {
		t.Fatal(err)
	}
	last := len(all.Survival) - 1
	published.Check(t, []published.Row{
		{Name: "first step", Got: all.Survival[0], Printed: "0.913043", Source: aml},
		{Name: "fifth step", Got: all.Survival[4], Printed: "0.695652", Source: aml},
		{Name: "last step", Got: all.Survival[last], Printed: "0.0828157", Source: aml},
	})
	for _, c := range []struct {
		data, source      string
		survival, errors_ []string
	}{
		{"9 13 13+ 18 23 28+ 31 34 45+ 48 161+", miller,
			[]string{"0.909", "0.818", "0.716", "0.614", "0.491", "0.368", "0.184"},
			[]string{"0.0867", "0.1163", "0.1397", "0.1526", "0.1642", "0.1627", "0.1535"}},
		{"3x6 6+ 7 9+ 10 10+ 11+ 13 16 17+ 19+ 20+ 22 23 25+ 32+ 32+ 34+ 35+", gehan,
			[]string{"0.857", "0.807", "0.753", "0.690", "0.627", "0.538", "0.448"},
			[]string{"0.0764", "0.0869", "0.0963", "0.1068", "0.1141", "0.1282", "0.1346"}},
	} {
		r, err := KaplanMeier(watched(t, c.data))
		if err != nil {
			t.Fatal(err)
		}
		if len(r.Survival) != len(c.survival) {
			t.Fatalf("%d steps, want %d", len(r.Survival), len(c.survival))
		}
		var rows []published.Row
		for i := range c.survival {
			rows = append(rows,
				published.Row{Name: "share still sound", Got: r.Survival[i], Printed: c.survival[i], Source: c.source},
				published.Row{Name: "its standard error", Got: r.StdErrors[i], Printed: c.errors_[i], Source: c.source})
		}
		published.Check(t, rows)
	}
}

// With nobody lost from sight the staircase is the plain share, and Greenwood's
// error the binomial one.
func TestKaplanMeierWithoutLossIsTheShareStillSound(t *testing.T) {
	r, err := KaplanMeier(watched(t, "3 1 4 1.5 9 2.6 5 3 5 8"))
	if err != nil {
		t.Fatal(err)
	}
	gone := 0.0
	for i := range r.Times {
		gone += r.Failures[i]
		share := 1 - gone/10
		if math.Abs(r.Survival[i]-share) > 1e-12 {
			t.Errorf("after %g: %g, plainly %g", r.Times[i], r.Survival[i], share)
		}
		if want := math.Sqrt(share * gone / 10 / 10); math.Abs(r.StdErrors[i]-want) > 1e-9 {
			t.Errorf("after %g: error %g, binomial %g", r.Times[i], r.StdErrors[i], want)
		}
	}
	if r.Survival[len(r.Survival)-1] != 0 {
		t.Errorf("all failed, yet %g are sound", r.Survival[len(r.Survival)-1])
	}
}

func TestLivesAreRefusedWithoutAFailure(t *testing.T) {
	var r *check.RangeError
	list := []Observation{{10, false}}
	if _, err := ExponentialFit(list); !errors.As(err, &r) {
		t.Errorf("ExponentialFit: got %v", err)
	}
	if _, err := KaplanMeier(list); !errors.As(err, &r) {
		t.Errorf("KaplanMeier: got %v", err)
	}
	if _, err := MeanLifeInterval(MeanLifeIntervalParams{10, 0, 0.9}); !errors.As(err, &r) {
		t.Errorf("MeanLifeInterval: got %v", err)
	}
}
