package survival

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"

	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"
)

func TestClopperPearsonPublished(t *testing.T) {
	const source = "exact 95 % limits of a proportion, as in Geigy Scientific Tables and textbooks (from memory)"
	var rows []published.Row
	for _, c := range []struct {
		cases, trials int
		low, high     string
	}{
		{0, 10, "0.0000", "0.3085"},
		{1, 10, "0.0025", "0.4450"},
		{5, 10, "0.1871", "0.8129"},
		{10, 10, "0.6915", "1.0000"},
	} {
		r, err := ClopperPearson(ClopperPearsonParams{c.cases, c.trials, 0.95})
		if err != nil {
			t.Fatal(err)
		}
		rows = append(rows,
			published.Row{Name: "lower end", Got: r.Low, Printed: c.low, Source: source},
			published.Row{Name: "upper end", Got: r.High, Printed: c.high, Source: source})
	}
	published.Check(t, rows)
}

// At each end of the range the count seen is just at the edge of belief: half
// of the doubt lies beyond it.
func TestClopperPearsonEndsLeaveHalfTheDoubt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 60).Draw(t, "trials")
		x := rapid.IntRange(0, n).Draw(t, "cases")
		r, err := ClopperPearson(ClopperPearsonParams{x, n, 0.9})
		if err != nil {
			t.Fatal(err)
		}
		if x < n {
			if got := (distuv.Binomial{N: float64(n), P: r.High}).CDF(float64(x)); math.Abs(got-0.05) > 1e-9 {
				t.Errorf("%d of %d: at %g, P(≤ x) = %g", x, n, r.High, got)
			}
		}
		if x > 0 {
			if got := (distuv.Binomial{N: float64(n), P: r.Low}).CDF(float64(x - 1)); math.Abs(got-0.95) > 1e-9 {
				t.Errorf("%d of %d: at %g, P(< x) = %g", x, n, r.Low, got)
			}
		}
	})
}

func TestControlChartPublished(t *testing.T) {
	const source = "factors for control charts, ISO 7870-2 and ASTM E2587, as reprinted in Walpole et al., Probability and Statistics for Engineers and Scientists, table A.22"
	for n, printed := range map[int][7]string{ // A2 A3 c4 d2 d3 D3 D4
		2:  {"1.880", "2.659", "0.7979", "1.128", "0.853", "0", "3.267"},
		3:  {"1.023", "1.954", "0.8862", "1.693", "0.888", "0", "2.574"},
		4:  {"0.729", "1.628", "0.9213", "2.059", "0.880", "0", "2.282"},
		5:  {"0.577", "1.427", "0.9400", "2.326", "0.864", "0", "2.114"},
		6:  {"0.483", "1.287", "0.9515", "2.534", "0.848", "0", "2.004"},
		7:  {"0.419", "1.182", "0.9594", "2.704", "0.833", "0.076", "1.924"},
		8:  {"0.373", "1.099", "0.9650", "2.847", "0.820", "0.136", "1.864"},
		10: {"0.308", "0.975", "0.9727", "3.078", "0.797", "0.223", "1.777"},
		15: {"0.223", "0.789", "0.9823", "3.472", "0.756", "0.347", "1.653"},
		20: {"0.180", "0.680", "0.9869", "3.735", "0.729", "0.415", "1.585"},
	} {
		r, err := ControlChart(n)
		if err != nil {
			t.Fatal(err)
		}
		var rows []published.Row
		for i, got := range []float64{r.MeanByRange, r.MeanBySD, r.SDMean, r.RangeMean, r.RangeSpread, r.RangeLow, r.RangeHigh} {
			row := published.Row{Name: []string{"A2", "A3", "c4", "d2", "d3", "D3", "D4"}[i], Got: got, Printed: printed[i], Source: source}
			if row.Name == "D4" {
				row.Within, row.Why = 3e-4, "tables differ by a unit: 2.574 here and 2.575 elsewhere for an exact 2.57459"
			}
			rows = append(rows, row)
		}
		published.Check(t, rows)
	}
}

func TestControlChartRecomputed(t *testing.T) {
	const source = "derived: integrals of the range and of the standard deviation of normal samples, an independent evaluation"
	two, _ := ControlChart(2)
	five, err := ControlChart(5)
	if err != nil {
		t.Fatal(err)
	}
	published.Check(t, []published.Row{
		{Name: "n = 2: d2 = 2/√π", Got: two.RangeMean, Printed: "1.1283791671", Source: source},
		{Name: "n = 2: d3 = √(2 − 4/π)", Got: two.RangeSpread, Printed: "0.852502466", Source: source},
		{Name: "n = 2: A2", Got: two.MeanByRange, Printed: "1.87997", Source: source},
		{Name: "n = 2: A3", Got: two.MeanBySD, Printed: "2.65868", Source: source},
		{Name: "n = 2: D4", Got: two.RangeHigh, Printed: "3.26653", Source: source},
		{Name: "n = 5: d2", Got: five.RangeMean, Printed: "2.32593", Source: source},
		{Name: "n = 5: c4", Got: five.SDMean, Printed: "0.939986", Source: source},
		{Name: "n = 5: d3", Got: five.RangeSpread, Printed: "0.864082", Source: source},
		{Name: "n = 5: D4", Got: five.RangeHigh, Printed: "2.1145", Source: source},
	})
	var r *check.RangeError
	if _, err := ControlChart(1); !errors.As(err, &r) || r.Param != "n" {
		t.Errorf("one reading has no range: got %v", err)
	}
}

func TestBayesUpdatePublished(t *testing.T) {
	r, err := BayesUpdate([]Hypothesis{{0.01, 0.8}, {0.99, 0.096}})
	if err != nil {
		t.Fatal(err)
	}
	published.Check(t, []published.Row{
		{Name: "1 % before, 80 % and 9.6 %", Got: r.Posteriors[0], Printed: "0.078",
			Source: "Eddy, Probabilistic reasoning in clinical medicine (1982), the mammography problem (from memory)"},
		{Name: "the same, unrounded", Got: r.Posteriors[0], Printed: "0.0776398", Source: "derived: 0.008/0.10304"},
	})
}

func TestBayesUpdateLaws(t *testing.T) {
	// two pieces of evidence one after the other, or both at once
	first, _ := BayesUpdate([]Hypothesis{{0.5, 0.9}, {0.3, 0.4}, {0.2, 0.1}})
	p := first.Posteriors
	second, err := BayesUpdate([]Hypothesis{{p[0], 0.2}, {p[1], 0.6}, {p[2], 0.7}})
	if err != nil {
		t.Fatal(err)
	}
	both, _ := BayesUpdate([]Hypothesis{{0.5, 0.9 * 0.2}, {0.3, 0.4 * 0.6}, {0.2, 0.1 * 0.7}})
	sum := 0.0
	for i := range both.Posteriors {
		sum += both.Posteriors[i]
		if math.Abs(both.Posteriors[i]-second.Posteriors[i]) > 1e-12 {
			t.Errorf("hypothesis %d: step by step %g, at once %g", i, second.Posteriors[i], both.Posteriors[i])
		}
	}
	if math.Abs(sum-1) > 1e-12 {
		t.Errorf("chances add up to %g", sum)
	}
	var r *check.RangeError
	if _, err := BayesUpdate([]Hypothesis{{0.5, 1}, {0.4, 1}}); !errors.As(err, &r) || r.Param != "sum of Prior" {
		t.Errorf("priors of 0.9: got %v", err)
	}
	if _, err := BayesUpdate([]Hypothesis{{0.5, 0}, {0.5, 0}}); !errors.As(err, &r) || r.Param != "Evidence" {
		t.Errorf("evidence that none explains: got %v", err)
	}
}
