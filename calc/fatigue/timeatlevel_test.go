package fatigue

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"

	"pgregory.net/rapid"
)

// A load that climbs evenly from 0 to 100 in 10 s stays a second in each band
// of ten, and holds there what it holds.
func TestTimeAtLevelOfARamp(t *testing.T) {
	r, err := TimeAtLevel(TimeAtLevelParams{
		Times:  []float64{0, 10, 15},
		Loads:  []float64{0, 100, 100},
		Speeds: []float64{0, -20, -20},
		Edges:  []float64{10, 20, 60, 100},
	})
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []float64{1, 4, 4} {
		if math.Abs(r.Durations[i]-want) > 1e-12 {
			t.Errorf("band %d: %g s, want %g", i, r.Durations[i], want)
		}
	}
	for i, want := range []float64{3, 8, 16} {
		if math.Abs(r.MeanSpeeds[i]-want) > 1e-12 {
			t.Errorf("band %d: %g rad/s, want %g", i, r.MeanSpeeds[i], want)
		}
	}
	if math.Abs(r.Below-1) > 1e-12 || math.Abs(r.Above-5) > 1e-12 {
		t.Errorf("below %g s, above %g s; want 1 and 5", r.Below, r.Above)
	}
}

func TestTimeAtLevelLosesNoTime(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 40).Draw(t, "samples")
		p := TimeAtLevelParams{Edges: []float64{-5, -1, 0, 2, 2.5, 9}}
		clock, turned := 0.0, 0.0
		for i := range n {
			p.Times = append(p.Times, clock)
			p.Loads = append(p.Loads, float64(rapid.IntRange(-12, 12).Draw(t, "load")))
			p.Speeds = append(p.Speeds, float64(rapid.IntRange(0, 30).Draw(t, "speed")))
			if i > 0 {
				turned += (p.Times[i] - p.Times[i-1]) * (p.Speeds[i] + p.Speeds[i-1]) / 2
			}
			clock += rapid.Float64Range(0.1, 3).Draw(t, "step")
		}
		r, err := TimeAtLevel(p)
		if err != nil {
			t.Fatal(err)
		}
		sum := r.Below + r.Above
		for _, d := range r.Durations {
			sum += d
		}
		if total := p.Times[n-1]; math.Abs(sum-total) > 1e-9 {
			t.Errorf("record lasts %g s, bands hold %g s", total, sum)
		}
		// one band for all: its mean speed is that of the whole record
		p.Edges = []float64{-13, 13}
		r, _ = TimeAtLevel(p)
		if math.Abs(r.MeanSpeeds[0]*r.Durations[0]-turned) > 1e-9 {
			t.Errorf("turned %g rad, band says %g", turned, r.MeanSpeeds[0]*r.Durations[0])
		}
	})
}

func TestTimeAtLevelRefusals(t *testing.T) {
	good := TimeAtLevelParams{Times: []float64{0, 1}, Loads: []float64{1, 2}, Edges: []float64{0, 5}}
	for param, p := range map[string]TimeAtLevelParams{
		"Times[1]":    {Times: []float64{1, 1}, Loads: good.Loads, Edges: good.Edges},
		"Edges[1]":    {Times: good.Times, Loads: good.Loads, Edges: []float64{5, 0}},
		"len(Loads)":  {Times: []float64{0, 1, 2}, Loads: good.Loads, Edges: good.Edges},
		"len(Speeds)": {Times: good.Times, Loads: good.Loads, Edges: good.Edges, Speeds: []float64{1}},
		"len(Edges)":  {Times: good.Times, Loads: good.Loads, Edges: []float64{5}},
	} {
		var r *check.RangeError
		if _, err := TimeAtLevel(p); !errors.As(err, &r) || r.Param != param {
			t.Errorf("got %v, want a range error on %s", err, param)
		}
	}
	if _, err := TimeAtLevel(good); err != nil {
		t.Errorf("the good one: %v", err)
	}
}
