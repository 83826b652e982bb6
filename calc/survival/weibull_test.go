package survival

import (
	"errors"
	"math"
	"strconv"
	"strings"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"

	"pgregory.net/rapid"
)

// watched reads "450 460+ 2x1150": a plus means still sound, a number before x
// how many parts alike.
func watched(t *testing.T, text string) []Observation {
	t.Helper()
	var list []Observation
	for _, word := range strings.Fields(text) {
		times := 1
		if count, rest, found := strings.Cut(word, "x"); found {
			n, err := strconv.Atoi(count)
			if err != nil {
				t.Fatal(err)
			}
			word, times = rest, n
		}
		word, sound := strings.CutSuffix(word, "+")
		v, err := strconv.ParseFloat(word, 64)
		if err != nil {
			t.Fatal(err)
		}
		for range times {
			list = append(list, Observation{Time: v, Failed: !sound})
		}
	}
	return list
}

const (
	// Hours of 70 diesel generator fans, 12 failed.
	fans = `450 460+ 2x1150 1560+ 1600 1660+ 5x1850+ 3x2030+ 2x2070 2080 2200+ 4x3000+ 3100 3200+ 3450 2x3750+
		4x4150+ 4x4300+ 4600 4x4850+ 3x5000+ 6100 3x6100+ 6300+ 2x6450+ 6700+ 7450+ 2x7800+ 2x8100+ 8200+ 3x8500+
		8750 2x8750+ 9400+ 9900+ 3x10100+ 11500+`
	// Days of 26 patients, 12 died.
	patients = `59 115 156 421+ 431 448+ 464 475 477+ 563 638 744+ 769+ 770+ 803+ 855+ 1040+ 1106+ 1129+ 1206+ 1227+
		268 329 353 365 377+`
)

func TestWeibullFitPublished(t *testing.T) {
	const (
		nelson  = "Nelson, Applied Life Data Analysis (1982), 70 diesel generator fans; values by survreg of R 4.2.2, survival 3.5-3"
		ovarian = "ovarian data of R's package survival; values by its survreg, R 4.2.2, survival 3.5-3"
	)
	fan, err := WeibullFit(watched(t, fans))
	if err != nil {
		t.Fatal(err)
	}
	ill, err := WeibullFit(watched(t, patients))
	if err != nil {
		t.Fatal(err)
	}
	published.Check(t, []published.Row{
		{Name: "fans: β", Got: fan.Shape, Printed: "1.05845", Source: nelson},
		{Name: "fans: η, h", Got: fan.Scale, Printed: "26296.8", Source: nelson},
		{Name: "fans: log-likelihood", Got: fan.LogLikelihood, Printed: "-135.153", Source: nelson},
		{Name: "fans: B10, h", Got: fan.B10, Printed: "3137.24", Source: nelson},
		{Name: "fans: failures", Got: float64(fan.Failures), Printed: "12", Source: nelson},
		{Name: "patients: β", Got: ill.Shape, Printed: "1.10806", Source: ovarian},
		{Name: "patients: η, days", Got: ill.Scale, Printed: "1225.42", Source: ovarian},
		{Name: "patients: log-likelihood", Got: ill.LogLikelihood, Printed: "-97.9539", Source: ovarian},
	})
}

// logLikelihood written out afresh from the density and the survival.
func logLikelihood(list []Observation, beta, eta float64) float64 {
	sum := 0.0
	for _, o := range list {
		if o.Failed {
			sum += math.Log(beta / eta * math.Pow(o.Time/eta, beta-1))
		}
		sum -= math.Pow(o.Time/eta, beta)
	}
	return sum
}

func TestWeibullFitStandsOnTheTopOfTheLikelihood(t *testing.T) {
	list := watched(t, fans)
	r, err := WeibullFit(list)
	if err != nil {
		t.Fatal(err)
	}
	if got := logLikelihood(list, r.Shape, r.Scale); math.Abs(got-r.LogLikelihood) > 1e-9 {
		t.Errorf("log-likelihood %g, written out %g", r.LogLikelihood, got)
	}
	for _, step := range [][2]float64{{1.01, 1}, {0.99, 1}, {1, 1.01}, {1, 0.99}, {1.01, 0.99}, {0.99, 1.01}} {
		if logLikelihood(list, r.Shape*step[0], r.Scale*step[1]) >= r.LogLikelihood {
			t.Errorf("a step of %v climbs", step)
		}
	}
	// covariance against second differences of the likelihood
	f := func(b, e float64) float64 { return logLikelihood(list, b, e) }
	hb, he := 1e-3, r.Scale*1e-3
	bb := -(f(r.Shape+hb, r.Scale) - 2*f(r.Shape, r.Scale) + f(r.Shape-hb, r.Scale)) / (hb * hb)
	ee := -(f(r.Shape, r.Scale+he) - 2*f(r.Shape, r.Scale) + f(r.Shape, r.Scale-he)) / (he * he)
	be := -(f(r.Shape+hb, r.Scale+he) - f(r.Shape+hb, r.Scale-he) - f(r.Shape-hb, r.Scale+he) + f(r.Shape-hb, r.Scale-he)) / (4 * hb * he)
	det := bb*ee - be*be
	for name, pair := range map[string][2]float64{
		"variance of β": {r.ShapeVariance, ee / det},
		"variance of η": {r.ScaleVariance, bb / det},
		"covariance":    {r.Covariance, -be / det},
	} {
		if math.Abs(pair[0]/pair[1]-1) > 1e-3 {
			t.Errorf("%s: %g, by differences %g", name, pair[0], pair[1])
		}
	}
}

// Counting in kilometres instead of metres changes η and nothing else.
func TestWeibullFitKnowsNoUnit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 30).Draw(t, "parts")
		list, scaled := make([]Observation, n), make([]Observation, n)
		factor := rapid.Float64Range(1e-6, 1e6).Draw(t, "unit")
		for i := range list {
			list[i] = Observation{rapid.Float64Range(1, 1e4).Draw(t, "time"), rapid.Bool().Draw(t, "failed")}
			scaled[i] = Observation{list[i].Time * factor, list[i].Failed}
		}
		list[0], scaled[0] = Observation{0.5, true}, Observation{0.5 * factor, true}
		a, errA := WeibullFit(list)
		b, errB := WeibullFit(scaled)
		if (errA == nil) != (errB == nil) {
			t.Fatalf("%v but %v", errA, errB)
		}
		if errA == nil && (math.Abs(b.Shape/a.Shape-1) > 1e-7 || math.Abs(b.Scale/a.Scale/factor-1) > 1e-7) {
			t.Errorf("β %g and %g, η %g and %g × %g", a.Shape, b.Shape, a.Scale, b.Scale, factor)
		}
	})
}

// Lives laid out at the quantiles of a Weibull distribution give it back.
func TestWeibullFitFindsADistributionItWasGiven(t *testing.T) {
	for _, shape := range []float64{0.7, 1, 2.5, 6} {
		var list []Observation
		const n = 2000
		for i := range n {
			life, err := WeibullLife(WeibullLifeParams{shape, 1000, (float64(i) + 0.5) / n})
			if err != nil {
				t.Fatal(err)
			}
			list = append(list, Observation{life, true})
		}
		r, err := WeibullFit(list)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(r.Shape/shape-1) > 5e-3 || math.Abs(r.Scale/1000-1) > 2e-3 {
			t.Errorf("put in %g and 1000, got %g and %g", shape, r.Shape, r.Scale)
		}
	}
}

func TestWeibullLifeAndSurvivalAreInverse(t *testing.T) {
	life, err := WeibullLife(WeibullLifeParams{1.7, 4000, 0.1})
	if err != nil {
		t.Fatal(err)
	}
	left, err := WeibullSurvival(WeibullSurvivalParams{1.7, 4000, life})
	if err != nil || math.Abs(left-0.9) > 1e-12 {
		t.Errorf("at B10 %g are sound, %v", left, err)
	}
}

func TestWeibullLifeInterval(t *testing.T) {
	fit, err := WeibullFit(watched(t, fans))
	if err != nil {
		t.Fatal(err)
	}
	ask := LifeIntervalParams{fit.Shape, fit.Scale, fit.ShapeVariance, fit.ScaleVariance, fit.Covariance, 0.1, 0.95}
	wide, err := WeibullLifeInterval(ask)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(wide.Life/fit.B10-1) > 1e-12 {
		t.Errorf("life %g, B10 %g", wide.Life, fit.B10)
	}
	if math.Abs(wide.Low*wide.High/(wide.Life*wide.Life)-1) > 1e-12 {
		t.Errorf("the range is not even on a logarithm: %+v", wide)
	}
	ask.Confidence = 0.5
	narrow, _ := WeibullLifeInterval(ask)
	if narrow.Low <= wide.Low || narrow.High >= wide.High || narrow.Low >= narrow.High {
		t.Errorf("50 %%: %+v, 95 %%: %+v", narrow, wide)
	}
	ask.Covariance = 1e9
	var r *check.RangeError
	if _, err := WeibullLifeInterval(ask); !errors.As(err, &r) {
		t.Errorf("impossible covariance: got %v", err)
	}
}

func TestWeibullFitRefusals(t *testing.T) {
	var r *check.RangeError
	for name, list := range map[string][]Observation{
		"nothing":                    nil,
		"no failure":                 {{100, false}, {200, false}},
		"all failed at the same age": {{100, true}, {100, true}},
		"a time of zero":             {{0, true}, {100, true}},
	} {
		if got, err := WeibullFit(list); !errors.As(err, &r) {
			t.Errorf("%s: got %+v, %v; want a range error", name, got, err)
		}
	}
}
