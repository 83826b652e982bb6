package fatigue

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"

	"pgregory.net/rapid"
)

// weld is the line of a welded detail in EN 1993-1-9 with the printed factors.
func weld(category float64) SNLine {
	knee := 0.737 * category
	return SNLine{KneeLoad: knee, KneeCycles: 5e6, Slope: 3, SlopeBeyond: 5, CutOff: 0.549 * knee}
}

func TestSNLifePublished(t *testing.T) {
	const source = "EN 1993-1-9:2005, 7.1 and figure 7.1 (from memory)"
	line := weld(71)
	life := func(load float64) float64 {
		r, err := SNLife(line, load)
		if err != nil || r.Endless {
			t.Fatalf("load %g: %+v, %v", load, r, err)
		}
		return r.Cycles
	}
	published.Check(t, []published.Row{
		{Name: "cycles at the category", Got: life(71), Printed: "2.00e6", Source: source},
		{Name: "cycles at the knee", Got: life(0.737 * 71), Printed: "5e6", Source: source},
		{Name: "cycles just above the cut-off", Got: life(line.CutOff * 1.0000001), Printed: "1.0e8", Source: source},
	})
	if r, err := SNLife(line, line.CutOff); err != nil || !r.Endless {
		t.Errorf("at the cut-off: %+v, %v; want endless", r, err)
	}
	flat := SNLine{KneeLoad: 100, KneeCycles: 1e6, Slope: 6}
	if r, err := SNLife(flat, 99.9); err != nil || !r.Endless {
		t.Errorf("below the knee of a line that ends flat: %+v, %v", r, err)
	}
}

func TestSNLineNeverRisesWithLoad(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := weld(rapid.Float64Range(20, 160).Draw(t, "category"))
		low := rapid.Float64Range(1, 400).Draw(t, "load")
		high := low * rapid.Float64Range(1, 3).Draw(t, "times")
		a, _ := SNLife(line, low)
		b, _ := SNLife(line, high)
		if b.Endless && !a.Endless || !a.Endless && b.Cycles > a.Cycles*(1+1e-12) {
			t.Errorf("%g lasts %+v, %g lasts %+v", low, a, high, b)
		}
	})
}

func TestEquivalentLoadPublished(t *testing.T) {
	duty := []DutyLevel{{0.1, 3e3}, {0.2, 2e3}, {0.3, 1e3}, {0.4, 0}}
	got, err := EquivalentLoad(duty, 3)
	if err != nil {
		t.Fatal(err)
	}
	published.Check(t, []published.Row{{Name: "ball bearing on 3, 2, 1 and 0 kN, kN", Got: got / 1e3, Printed: "1.663",
		Source: "Khurmi and Gupta, A Textbook of Machine Design, example 27.5 (result from memory)"}})
}

func duties(t *rapid.T) []DutyLevel {
	n := rapid.IntRange(1, 8).Draw(t, "levels")
	duty, sum := make([]DutyLevel, n), 0.0
	for i := range duty {
		duty[i] = DutyLevel{rapid.Float64Range(0.01, 1).Draw(t, "share"), rapid.Float64Range(1, 5000).Draw(t, "load")}
		sum += duty[i].Share
	}
	for i := range duty {
		duty[i].Share /= sum
	}
	return duty
}

// On one straight line, the equivalent load for the same number of cycles does
// the same damage as the duty; it lies between the mean and the highest load.
func TestEquivalentLoadDoesTheDamageOfTheDuty(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		duty := duties(t)
		slope := rapid.Float64Range(1, 20).Draw(t, "slope")
		line := SNLine{KneeLoad: 1000, KneeCycles: 1e6, Slope: slope, SlopeBeyond: slope}
		equivalent, err := EquivalentLoad(duty, slope)
		if err != nil {
			t.Fatal(err)
		}
		r, err := DutyDamage(DutyDamageParams{Levels: duty, Cycles: 3e5, Line: line})
		if err != nil {
			t.Fatal(err)
		}
		one, _ := SNLife(line, equivalent)
		if math.Abs(r.Damage*one.Cycles/3e5-1) > 1e-9 || math.Abs(r.Cycles/one.Cycles-1) > 1e-9 {
			t.Errorf("duty lasts %g, its equivalent %g", r.Cycles, one.Cycles)
		}
		mean, top := 0.0, 0.0
		for _, l := range duty {
			mean += l.Share * l.Load
			top = math.Max(top, l.Load)
		}
		if equivalent < mean*(1-1e-9) || equivalent > top*(1+1e-9) {
			t.Errorf("equivalent %g, mean %g, top %g", equivalent, mean, top)
		}
	})
}

func TestDutyBelowTheCutOffIsEndless(t *testing.T) {
	r, err := DutyDamage(DutyDamageParams{Levels: []DutyLevel{{1, 10}}, Cycles: 1e9, Line: weld(71)})
	if err != nil || !r.Endless || r.Damage != 0 {
		t.Errorf("got %+v, %v; want endless", r, err)
	}
}

func TestDutyRefusesSharesThatDoNotAddUp(t *testing.T) {
	var r *check.RangeError
	bad := []DutyLevel{{0.5, 10}, {0.4, 20}}
	if _, err := EquivalentLoad(bad, 3); !errors.As(err, &r) || r.Param != "sum of Share" {
		t.Errorf("got %v, want a range error on the sum", err)
	}
	if _, err := DutyDamage(DutyDamageParams{Levels: bad, Cycles: 1, Line: weld(71)}); !errors.As(err, &r) {
		t.Errorf("got %v, want a range error", err)
	}
	if got, err := EquivalentLoad([]DutyLevel{{1, 0}}, 3); err != nil || got != 0 {
		t.Errorf("an idle duty: got %g, %v", got, err)
	}
}

// The record of the standard on a weld: damage counted by hand from the four
// ranges and their counts.
func TestSpectrumDamageIsTheMinerSumOfTheCycles(t *testing.T) {
	counted, err := Rainflow(standardHistory)
	if err != nil {
		t.Fatal(err)
	}
	line := SNLine{KneeLoad: 10, KneeCycles: 1e4, Slope: 3, SlopeBeyond: 3}
	byRange, err := SpectrumDamage(SpectrumDamageParams{counted.Cycles(), line, ByRange})
	if err != nil {
		t.Fatal(err)
	}
	byHand := (0.5*27 + 1.5*64 + 0.5*216 + 1*512 + 0.5*729) / (1e4 * 1000)
	if math.Abs(byRange/byHand-1) > 1e-12 {
		t.Errorf("damage %g, by hand %g", byRange, byHand)
	}
	byAmplitude, _ := SpectrumDamage(SpectrumDamageParams{counted.Cycles(), line, ByAmplitude})
	if math.Abs(byRange/byAmplitude-8) > 1e-9 {
		t.Errorf("by range %g, by amplitude %g, want 2³ apart", byRange, byAmplitude)
	}
	var r *check.RangeError
	if _, err := SpectrumDamage(SpectrumDamageParams{counted.Cycles(), line, "guess"}); !errors.As(err, &r) || r.Param != "Measure" {
		t.Errorf("got %v, want a range error on Measure", err)
	}
}
