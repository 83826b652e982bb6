package survival

import (
	"errors"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"

	"pgregory.net/rapid"
)

func TestGammaRatePublished(t *testing.T) {
	const (
		nist = "NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.6, example: gamma prior a = 2, b = 1400, 2 failures in 1909 h (figures from memory)"
		rats = "Gelman et al., Bayesian Data Analysis, 2.6: prior Gamma(3, 5), 3 deaths where 2 were exposed (figures from memory)"
	)
	test := GammaRateParams{PriorCases: 2, PriorExposure: 1400, Cases: 2, Exposure: 1909, Confidence: 0.6}
	eighty, err := GammaRate(test)
	if err != nil {
		t.Fatal(err)
	}
	deaths, err := GammaRate(GammaRateParams{PriorCases: 3, PriorExposure: 5, Cases: 3, Exposure: 2, Confidence: 0.95})
	if err != nil {
		t.Fatal(err)
	}
	published.Check(t, []published.Row{
		{Name: "reciprocal of the mean, h", Got: 1 / eighty.Mean, Printed: "827", Source: nist},
		{Name: "median life, h", Got: 1 / eighty.Median, Printed: "901", Source: nist},
		{Name: "life of which one may be 80 % sure, h", Got: 1 / eighty.High, Printed: "600", Source: nist},
		{Name: "deaths: mean rate", Got: deaths.Mean, Printed: "0.86", Source: rats},
	})
}

// The rate lies within its range; more cases raise it, more exposure lowers it;
// with much seen, what was thought before has no say.
func TestGammaRateLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := GammaRateParams{
			PriorCases: rapid.Float64Range(0.1, 10).Draw(t, "a"), PriorExposure: rapid.Float64Range(0.1, 10).Draw(t, "b"),
			Cases: rapid.IntRange(0, 50).Draw(t, "r"), Exposure: rapid.Float64Range(0, 100).Draw(t, "T"), Confidence: 0.9,
		}
		r, err := GammaRate(p)
		if err != nil {
			t.Fatal(err)
		}
		if !(r.Low < r.Median && r.Median < r.High && r.Median < r.Mean) {
			t.Errorf("%+v: %+v", p, r)
		}
		more, longer := p, p
		more.Cases++
		longer.Exposure += 10
		m, _ := GammaRate(more)
		l, _ := GammaRate(longer)
		if m.Low <= r.Low || m.High <= r.High || l.Median >= r.Median {
			t.Errorf("%+v: %+v, one more %+v, longer %+v", p, r, m, l)
		}
		p.Cases, p.Exposure = 1_000_000, 500_000
		if much, _ := GammaRate(p); much.Low < 1.99 || much.High > 2.01 {
			t.Errorf("a million cases: %+v", much)
		}
	})
}

func TestGammaRateRefuses(t *testing.T) {
	good := GammaRateParams{PriorCases: 1, PriorExposure: 1, Exposure: 1, Confidence: 0.9}
	for name, change := range map[string]func(*GammaRateParams){
		"PriorCases":    func(p *GammaRateParams) { p.PriorCases = 0 },
		"PriorExposure": func(p *GammaRateParams) { p.PriorExposure = -1 },
		"Cases":         func(p *GammaRateParams) { p.Cases = -1 },
		"Exposure":      func(p *GammaRateParams) { p.Exposure = -1 },
		"Confidence":    func(p *GammaRateParams) { p.Confidence = 1 },
	} {
		p := good
		change(&p)
		_, err := GammaRate(p)
		var outside *check.RangeError
		if !errors.As(err, &outside) || outside.Param != name {
			t.Errorf("%s: %v", name, err)
		}
	}
}
