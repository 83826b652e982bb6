package fatigue

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

var standardHistory = []float64{-2, 1, -3, 5, -1, 3, -4, 4, -2}

func TestRainflowPublished(t *testing.T) {
	const standard = "ASTM E1049-85, figure 6"
	for _, c := range []struct {
		name    string
		history []float64
		counts  map[float64]string // by range
		source  string
	}{
		{"the standard's example", standardHistory,
			map[float64]string{3: "0.5", 4: "1.5", 6: "0.5", 8: "1.0", 9: "0.5"}, standard},
		{"a small history", []float64{0, 2, 1, 3, 0},
			map[float64]string{1: "1", 3: "1"}, "an example common to open test suites of ASTM E1049-85 counters"},
	} {
		r, err := Rainflow(c.history)
		if err != nil {
			t.Fatal(err)
		}
		counted := map[float64]float64{}
		for _, cycle := range r.Cycles() {
			counted[cycle.Range] += cycle.Count
		}
		if len(counted) != len(c.counts) {
			t.Errorf("%s: counted %v, want ranges %v", c.name, counted, c.counts)
		}
		var rows []published.Row
		for width, printed := range c.counts {
			rows = append(rows, published.Row{Name: c.name, Got: counted[width], Printed: printed, Source: c.source})
		}
		published.Check(t, rows)
	}
}

// The steps of the standard's figure 6: which loop closes when, and its mean.
func TestRainflowClosesTheLoopsOfTheStandardInItsOrder(t *testing.T) {
	r, err := Rainflow(standardHistory)
	if err != nil {
		t.Fatal(err)
	}
	want := []Cycle{{3, -0.5, 0.5}, {4, -1, 0.5}, {4, 1, 1}, {8, 1, 0.5}, {9, 0.5, 0.5}, {8, 0, 0.5}, {6, 1, 0.5}}
	if diff := cmp.Diff(want, r.Cycles()); diff != "" {
		t.Errorf("cycles (-want +got):\n%s", diff)
	}
}

func histories(t *rapid.T) []float64 {
	whole := rapid.SliceOfN(rapid.IntRange(-20, 20), 2, 60).Draw(t, "history")
	history := make([]float64, len(whole))
	for i, v := range whole {
		history[i] = float64(v)
	}
	return history
}

// Every step of the way up or down belongs to one half cycle, so the ranges
// counted twice add up to the length of the whole way.
func TestRainflowCountsEveryStepOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		history := histories(t)
		way, lowest, highest := 0.0, history[0], history[0]
		for i := 1; i < len(history); i++ {
			way += math.Abs(history[i] - history[i-1])
			lowest, highest = math.Min(lowest, history[i]), math.Max(highest, history[i])
		}
		r, err := Rainflow(history)
		if err != nil {
			t.Fatal(err)
		}
		counted, widest := 0.0, 0.0
		for _, c := range r.Cycles() {
			counted += 2 * c.Count * c.Range
			widest = math.Max(widest, c.Range)
		}
		if counted != way {
			t.Errorf("way %g, counted %g", way, counted)
		}
		if widest != highest-lowest {
			t.Errorf("widest cycle %g, record spans %g", widest, highest-lowest)
		}
	})
}

// Samples between the turning points, level stretches and turning the record
// upside down change nothing.
func TestRainflowSeesOnlyTurningPoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		history := histories(t)
		var finer, turned []float64
		for i, v := range history {
			turned = append(turned, -v)
			if i > 0 {
				finer = append(finer, (history[i-1]+v)/2)
			}
			finer = append(finer, v, v)
		}
		a, _ := Rainflow(history)
		b, err := Rainflow(finer)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(a, b); diff != "" {
			t.Errorf("finer record counts otherwise:\n%s", diff)
		}
		c, _ := Rainflow(turned)
		if diff := cmp.Diff(a.Ranges, c.Ranges); diff != "" {
			t.Errorf("upside down:\n%s", diff)
		}
	})
}

func TestRainflowRefusesWhatIsNoRecord(t *testing.T) {
	var r *check.RangeError
	if _, err := Rainflow([]float64{3}); !errors.As(err, &r) {
		t.Errorf("one sample: got %v", err)
	}
	if _, err := Rainflow([]float64{1, 2, math.NaN()}); !errors.As(err, &r) || r.Param != "history[2]" {
		t.Errorf("not a number: got %v, want a range error on history[2]", err)
	}
	level, err := Rainflow([]float64{5, 5, 5})
	if err != nil || len(level.Cycles()) != 0 {
		t.Errorf("a level record: got %+v, %v; want no cycles", level, err)
	}
}
