package casting

import (
	"math"
	"math/rand/v2"
	"testing"

	"axlewright/internal/published"

	"pgregory.net/rapid"
)

func TestIndividualsPublished(t *testing.T) {
	c, err := Individuals([]float64{49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1})
	if err != nil {
		t.Fatal(err)
	}
	const source = "NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2, flow rate of ten batches (from memory)"
	const why = "the handbook divides by 1.128, the integral by 1.12838"
	published.Check(t, []published.Row{
		{Name: "mean", Got: c.Centre, Printed: "50.81", Source: source},
		{Name: "upper limit", Got: c.Points[0].High, Printed: "55.8041", Source: source, Within: 5e-5, Why: why},
		{Name: "lower limit", Got: c.Points[0].Low, Printed: "45.8159", Source: source, Within: 5e-5, Why: why},
		{Name: "mean moving range", Got: c.Sigma * 1.1283791670955126, Printed: "1.8778", Source: source},
		{Name: "upper limit of the moving range over its mean", Got: c.Points[1].RangeHigh / (c.Sigma * 1.1283791670955126), Printed: "3.267",
			Source: "ISO 7870-2, D4 for n = 2 (from memory)"},
	})
	for i, p := range c.Points {
		if p.Out || p.OutRange || p.Run {
			t.Errorf("point %d is marked; the handbook finds the process in control", i+1)
		}
	}
}

func TestBatchesPublished(t *testing.T) {
	const mean, width = 1.5056, 0.32521
	var batches [][]float64
	for range 25 {
		batches = append(batches, []float64{mean - width/2, mean, mean, mean, mean + width/2})
	}
	c, err := Batches(batches)
	if err != nil {
		t.Fatal(err)
	}
	const source = "Montgomery, Introduction to Statistical Quality Control, 6th ed. (2009), example 6.1: grand mean 1.5056, mean range 0.32521 of 25 batches of 5 (from memory)"
	const why = "the book takes A2 and D4 to three decimals"
	published.Check(t, []published.Row{
		{Name: "upper limit of the mean", Got: c.Points[0].High, Printed: "1.69325", Source: source, Within: 1e-4, Why: why},
		{Name: "lower limit of the mean", Got: c.Points[0].Low, Printed: "1.31795", Source: source, Within: 1e-4, Why: why},
		{Name: "upper limit of the range", Got: c.Points[0].RangeHigh, Printed: "0.68749", Source: source, Within: 3e-4, Why: why},
		{Name: "lower limit of the range", Got: c.Points[0].RangeLow, Printed: "0", Source: source},
	})
}

func TestChartLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		values := rapid.SliceOfN(rapid.Float64Range(-1, 1), 2, 40).Draw(t, "values")
		shift, scale := rapid.Float64Range(-5, 5).Draw(t, "shift"), rapid.Float64Range(0.1, 10).Draw(t, "scale")
		a, err := Individuals(values)
		if err != nil {
			t.Fatal(err)
		}
		moved := make([]float64, len(values))
		for i, x := range values {
			moved[i] = shift + scale*x
		}
		b, err := Individuals(moved)
		if err != nil {
			t.Fatal(err)
		}
		for i := range a.Points {
			if math.Abs(b.Points[i].High-(shift+scale*a.Points[i].High)) > 1e-9*(1+math.Abs(shift)+scale) {
				t.Fatalf("limits do not follow a change of zero and unit")
			}
			if a.Points[i].Out != (math.Abs(values[i]-a.Centre) > 3*a.Sigma*(1+1e-12)) && math.Abs(math.Abs(values[i]-a.Centre)-3*a.Sigma) > 1e-8 {
				t.Fatalf("point %d: out %v", i, a.Points[i].Out)
			}
		}
		// batches of two readings in pairs have the moving ranges of those pairs
		if len(values) >= 4 {
			pairs := [][]float64{values[:2], values[2:4]}
			c, err := Batches(pairs)
			if err != nil {
				t.Fatal(err)
			}
			f, err := factors(2)
			if err != nil {
				t.Fatal(err)
			}
			want := (math.Abs(values[0]-values[1]) + math.Abs(values[2]-values[3])) / 2 / f.RangeMean
			if math.Abs(c.Sigma-want) > 1e-12 {
				t.Fatalf("σ of two pairs %g, expected %g", c.Sigma, want)
			}
			if math.Abs(c.Points[0].High-c.Centre-f.MeanByRange*want*f.RangeMean) > 1e-12 {
				t.Fatal("limits are not A2 times the mean range")
			}
		}
	})
}

func TestChartMarksRunsAndRefuses(t *testing.T) {
	values := []float64{1, -1, 1, -1, 1, -1, 1, -1, 1, -1, 0.4, 0.5, 0.4, 0.5, 0.4, 0.5, 0.4, 0.5, 0.4, -9.2}
	c, err := Individuals(values)
	if err != nil {
		t.Fatal(err)
	}
	if c.Centre >= 0.4 || !c.Points[18].Run || c.Points[17].Run {
		t.Errorf("the ninth of a run is %v, the eighth %v (centre %g)", c.Points[18].Run, c.Points[17].Run, c.Centre)
	}
	if !c.Points[19].Out || !c.Points[19].OutRange {
		t.Error("a casting far out is not marked")
	}
	if _, err := Individuals([]float64{1}); err == nil {
		t.Error("charted one reading")
	}
	if _, err := Individuals([]float64{1, math.NaN()}); err == nil {
		t.Error("charted what is no number")
	}
	for _, b := range [][][]float64{{{1, 2}}, {{1, 2}, {3}}, {{1, math.Inf(1)}, {1, 2}}, {{}, {}}} {
		if _, err := Batches(b); err == nil {
			t.Errorf("charted %v", b)
		}
	}
	same, err := Individuals([]float64{0.0123, 0.0123, 0.0123})
	if err != nil || same.Points[1].Out || same.Sigma != 0 {
		t.Errorf("readings all alike: %+v %v", same, err)
	}
}

func TestTrend(t *testing.T) {
	rising := make([]float64, 10)
	for i := range rising {
		rising[i] = 3 + 0.25*float64(i)
	}
	up := TrendOf(rising)
	published.Check(t, []published.Row{
		{Name: "S of ten readings that all rise", Got: up.Score, Printed: "45", Source: "derived: n(n−1)/2"},
		{Name: "z = 44/√125", Got: up.P, Printed: "0.0000830", Source: "derived: 2·Φ(−3.9355), variance of Kendall, Rank Correlation Methods (1975)"},
		{Name: "slope", Got: up.Slope, Printed: "0.25", Source: "derived: a straight line"},
	})
	rapid.Check(t, func(t *rapid.T) {
		values := make([]float64, rapid.IntRange(3, 30).Draw(t, "n"))
		for i := range values {
			values[i] = float64(rapid.IntRange(0, 40).Draw(t, "value")) / 8 // ties among them
		}
		a := TrendOf(values)
		back, cubed := make([]float64, len(values)), make([]float64, len(values))
		for i, x := range values {
			back[len(values)-1-i] = x
			cubed[i] = x * x * x
		}
		if b := TrendOf(back); b.Score != -a.Score || math.Abs(b.P-a.P) > 1e-12 || math.Abs(b.Slope+a.Slope) > 1e-12 {
			t.Fatalf("backwards: %+v and %+v", a, b)
		}
		if b := TrendOf(cubed); b.Score != a.Score || b.P != a.P {
			t.Fatalf("ranks changed by a rising function: %+v and %+v", a, b)
		}
		if !(a.P >= 0 && a.P <= 1) {
			t.Fatalf("P = %g", a.P)
		}
	})
	if p := TrendOf([]float64{1, 1, 1, 1}).P; p != 1 {
		t.Errorf("readings all alike have P = %g", p)
	}
	// where nothing drifts, one series in twenty looks so
	r := rand.New(rand.NewPCG(4, 4))
	cried := 0
	const series = 4000
	for range series {
		values := make([]float64, 15)
		for i := range values {
			values[i] = r.NormFloat64()
		}
		if TrendOf(values).P < 0.05 {
			cried++
		}
	}
	if share := float64(cried) / series; share > 0.06 || share < 0.03 {
		t.Errorf("cried wolf in %.1f %% of series that do not drift; expected about 5", 100*share)
	}
}
