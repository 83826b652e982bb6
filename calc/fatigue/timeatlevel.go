package fatigue

import (
	"fmt"
	"math"

	"axlewright/calc/check"
)

// TimeAtLevelParams are a load record and the bands it is sorted into.
type TimeAtLevelParams struct {
	Times  []float64 // s, time of each sample, rising
	Loads  []float64 // -, load of each sample
	Speeds []float64 // rad/s, speed of each sample, for the mean speed in each band; optional
	Edges  []float64 // -, edges of the bands, rising, in the unit of the loads
}

// TimeAtLevelResult is how long a record stays in each band.
type TimeAtLevelResult struct {
	Durations  []float64 // s, time in each band between two edges
	MeanSpeeds []float64 // rad/s, mean size of the speed while in each band; empty without speeds, 0 for an empty band
	Below      float64   // s, time below the first edge
	Above      float64   // s, time above the last edge
}

// TimeAtLevel returns how long a record stays in each band of load, which is what a bearing counts.
//
//	t_i = Σ Δt·(part of the way from one sample to the next that lies in band i)
//
// Valid for samples close enough that the load runs straight between them.
// Errors: *check.RangeError for lists of unequal length, times or edges that do
// not rise, fewer than two samples or edges.
// Source: ASTM E1049-85, 5.1 (level counting) in its form for time; definition.
func TimeAtLevel(p TimeAtLevelParams) (TimeAtLevelResult, error) {
	if err := p.check(); err != nil {
		return TimeAtLevelResult{}, err
	}
	bands := len(p.Edges) - 1
	r := TimeAtLevelResult{Durations: make([]float64, bands)}
	turned := make([]float64, bands)
	for i := 1; i < len(p.Times); i++ {
		step := p.Times[i] - p.Times[i-1]
		from, to := p.Loads[i-1], p.Loads[i]
		start, end := within(from, to, math.Inf(-1), p.Edges[0])
		r.Below += step * (end - start)
		start, end = within(from, to, p.Edges[bands], math.Inf(1))
		r.Above += step * (end - start)
		for b := range bands {
			start, end = within(from, to, p.Edges[b], p.Edges[b+1])
			r.Durations[b] += step * (end - start)
			if len(p.Speeds) > 0 {
				first, last := math.Abs(p.Speeds[i-1]), math.Abs(p.Speeds[i])
				turned[b] += step * (end - start) * (first + (last-first)*(start+end)/2)
			}
		}
	}
	if len(p.Speeds) > 0 {
		r.MeanSpeeds = turned
		for b := range turned {
			if r.Durations[b] > 0 {
				turned[b] /= r.Durations[b]
			}
		}
	}
	return r, nil
}

// within returns the part of the straight way from one load to another that
// lies in a band, as fractions of the way. A level stretch on an edge belongs
// to the band above it.
func within(from, to, low, high float64) (start, end float64) {
	if from == to {
		if from >= low && from < high {
			return 0, 1
		}
		return 0, 0
	}
	a, b := (low-from)/(to-from), (high-from)/(to-from)
	start, end = math.Max(0, math.Min(a, b)), math.Min(1, math.Max(a, b))
	if end <= start {
		return 0, 0
	}
	return start, end
}

func (p TimeAtLevelParams) check() error {
	const fn = "fatigue.TimeAtLevel"
	n := len(p.Times)
	for _, list := range []struct {
		name   string
		values []float64
	}{{"Times", p.Times}, {"Loads", p.Loads}, {"Edges", p.Edges}} {
		if err := record(fn, list.name, list.values); err != nil {
			return err
		}
	}
	if err := check.All(fn,
		check.That("len(Loads)", float64(len(p.Loads)), len(p.Loads) == n, "as many as Times"),
		check.That("len(Speeds)", float64(len(p.Speeds)), len(p.Speeds) == 0 || len(p.Speeds) == n, "none, or as many as Times"),
	); err != nil {
		return err
	}
	if len(p.Speeds) > 0 {
		if err := record(fn, "Speeds", p.Speeds); err != nil {
			return err
		}
	}
	for i := 1; i < n; i++ {
		if err := check.All(fn, check.That(fmt.Sprintf("Times[%d]", i), p.Times[i], p.Times[i] > p.Times[i-1], "above the one before")); err != nil {
			return err
		}
	}
	for i := 1; i < len(p.Edges); i++ {
		if err := check.All(fn, check.That(fmt.Sprintf("Edges[%d]", i), p.Edges[i], p.Edges[i] > p.Edges[i-1], "above the one before")); err != nil {
			return err
		}
	}
	return nil
}
