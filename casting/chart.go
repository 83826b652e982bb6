package casting

import (
	"fmt"
	"math"
	"sync"

	"axlewright/calc/survival"
)

// A Chart is a control chart of readings in the order in which they came.
type Chart struct {
	Kind   ChartKind    `json:"kind"`
	Centre float64      `json:"centre"`
	Sigma  float64      `json:"sigma"` // from ranges: what the foundry does from one casting to the next
	Points []ChartPoint `json:"points"`
}

// ChartKind is what one point of a chart is.
type ChartKind string

// The kinds of chart.
const (
	IndividualChart ChartKind = "single castings and moving range"
	BatchChart      ChartKind = "means and ranges of batches"
)

// A ChartPoint is one casting or one batch with the limits that hold for it.
type ChartPoint struct {
	Value     float64 `json:"value"`
	Low       float64 `json:"low"`
	High      float64 `json:"high"`
	Range     float64 `json:"range"` // of the batch, or to the casting before
	RangeLow  float64 `json:"range_low"`
	RangeHigh float64 `json:"range_high"`
	Out       bool    `json:"out"`       // beyond the limits
	OutRange  bool    `json:"out_range"` // its range is beyond the limits
	Run       bool    `json:"run"`       // the last of nine or more on one side of the centre
}

// longRun is how many points in a row on one side of the centre say that
// something has changed.
//
// Source: ISO 8258:1991, test 2; Nelson, The Shewhart control chart (1984) (from memory).
const longRun = 9

// Individuals charts single readings: limits three sigma about the mean, sigma
// from the mean moving range of two.
//
//	x̄ ± 3·MR̄/d2(2)
//
// Errors: for fewer than two readings, or one that is not finite.
// Source: ISO 7870-2; NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2.
func Individuals(values []float64) (Chart, error) {
	if len(values) < 2 {
		return Chart{}, fmt.Errorf("a chart needs two readings at least, there are %d", len(values))
	}
	f, err := factors(2)
	if err != nil {
		return Chart{}, err
	}
	c := Chart{Kind: IndividualChart}
	moving := 0.0
	for i, x := range values {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return Chart{}, fmt.Errorf("reading %d is not a number", i+1)
		}
		c.Centre += x / float64(len(values))
		if i > 0 {
			moving += math.Abs(x-values[i-1]) / float64(len(values)-1)
		}
	}
	c.Sigma = moving / f.RangeMean
	for i, x := range values {
		p := ChartPoint{Value: x, Low: c.Centre - 3*c.Sigma, High: c.Centre + 3*c.Sigma}
		if i > 0 {
			p.Range, p.RangeLow, p.RangeHigh = math.Abs(x-values[i-1]), f.RangeLow*moving, f.RangeHigh*moving
		}
		c.Points = append(c.Points, p)
	}
	c.judge()
	return c, nil
}

// Batches charts means and ranges of batches of 2 to 25 readings, which need
// not be alike in size.
//
//	x̿ ± 3·σ/√n,  σ = mean of R/d2(n)
//	D3·d2·σ to D4·d2·σ for the ranges
//
// Errors: for fewer than two batches, a batch of another size, a reading that
// is not finite.
// Source: ISO 7870-2; of batches all alike in size the limits are x̿ ± A2·R̄.
func Batches(batches [][]float64) (Chart, error) {
	if len(batches) < 2 {
		return Chart{}, fmt.Errorf("a chart of batches needs two batches at least, there are %d", len(batches))
	}
	c := Chart{Kind: BatchChart}
	n := 0.0
	for _, b := range batches {
		f, err := factors(len(b))
		if err != nil {
			return Chart{}, err
		}
		low, high := b[0], b[0]
		for _, x := range b {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				return Chart{}, fmt.Errorf("a reading is not a number")
			}
			low, high = math.Min(low, x), math.Max(high, x)
			c.Centre += x
			n++
		}
		c.Sigma += (high - low) / f.RangeMean / float64(len(batches))
		c.Points = append(c.Points, ChartPoint{Range: high - low})
	}
	c.Centre /= n
	for i, b := range batches {
		f, err := factors(len(b))
		if err != nil {
			return Chart{}, err
		}
		p := &c.Points[i]
		for _, x := range b {
			p.Value += x / float64(len(b))
		}
		reach := 3 * c.Sigma / math.Sqrt(float64(len(b)))
		p.Low, p.High = c.Centre-reach, c.Centre+reach
		p.RangeLow, p.RangeHigh = f.RangeLow*f.RangeMean*c.Sigma, f.RangeHigh*f.RangeMean*c.Sigma
	}
	c.judge()
	return c, nil
}

// judge marks what is beyond limits and runs on one side.
func (c *Chart) judge() {
	run, side := 0, 0
	for i := range c.Points {
		p := &c.Points[i]
		slack := 1e-9 * (math.Abs(c.Centre) + c.Sigma) // what rounding leaves of readings all alike
		p.Out = p.Value < p.Low-slack || p.Value > p.High+slack
		p.OutRange = p.Range > p.RangeHigh+slack || p.Range < p.RangeLow-slack
		at := 0
		switch {
		case p.Value > c.Centre+slack:
			at = 1
		case p.Value < c.Centre-slack:
			at = -1
		}
		if at == 0 || at != side {
			run = 0
		}
		if side = at; at != 0 {
			run++
		}
		p.Run = run >= longRun
	}
}

// factors of control charts are integrals: each size is worked out once.
func factors(n int) (survival.ControlChartResult, error) {
	if f, found := worked.Load(n); found {
		return f.(survival.ControlChartResult), nil
	}
	f, err := survival.ControlChart(n)
	if err == nil {
		worked.Store(n, f)
	}
	return f, err
}

var worked sync.Map
