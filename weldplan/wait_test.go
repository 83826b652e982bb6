package weldplan

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// someRuns are runs in a row, a pitch apart.
func someRuns(n int, pitch float64) (runs []warmRun, order []Step) {
	for i := range n {
		runs = append(runs, warmRun{middle: r3.Vec{X: float64(i) * pitch}, length: 0.05, heat: 25e3, metre: 0.5e6, wall: 15e-3, seconds: 60})
		order = append(order, Step{Run: i})
	}
	return runs, order
}

const degree20 = zeroCelsius + 20

func TestNoRunBeginsTooWarm(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		runs, order := someRuns(rapid.IntRange(2, 12).Draw(t, "runs"), rapid.Float64Range(0.005, 0.1).Draw(t, "pitch"))
		most := zeroCelsius + rapid.Float64Range(50, 200).Draw(t, "most")
		mass := rapid.Float64Range(8, 40).Draw(t, "mass")
		pauses := pausesOf(runs, order, mass, 0.2, degree20, degree20, most)
		for i, p := range pauses {
			if p.Before < longestPause-2 && p.Start > most+1e-6 {
				t.Fatalf("run %d begins at %g K, above %g", i, p.Start, most)
			}
			if p.Start < degree20-1e-9 || p.Body > p.Start+0.1 {
				t.Fatalf("run %d: %+v", i, p)
			}
		}
		hotter := pausesOf(runs, order, mass, 0.2, degree20, degree20, most+20)
		if total(hotter) > total(pauses)+1 {
			t.Fatalf("a warmer limit waits longer: %g s, not %g s", total(hotter), total(pauses))
		}
	})
}

func total(pauses []Pause) (sum float64) {
	for _, p := range pauses {
		sum += p.Before
	}
	return sum
}

func TestHeatStaysInTheCasting(t *testing.T) {
	// Without loss to the air, the body has what was put in.
	runs, order := someRuns(5, 10) // far from one another
	pauses := pausesOf(runs, order, 10, 1e-12, degree20, degree20, zeroCelsius+500)
	near(t, "after four runs", pauses[4].Body-degree20, 4*25e3/(10*specificHeat), 1e-6)
	// A heavier jig takes it down in proportion.
	heavy := pausesOf(runs, order, 20, 1e-12, degree20, degree20, zeroCelsius+500)
	near(t, "twice the mass", heavy[4].Body-degree20, (pauses[4].Body-degree20)/2, 1e-6)
}

func TestFarSideWaitsLess(t *testing.T) {
	close, order := someRuns(6, 0.02)
	far, _ := someRuns(6, 0.2)
	const most = zeroCelsius + 60
	if a, b := total(pausesOf(close, order, 30, 0.3, degree20, degree20, most)), total(pausesOf(far, order, 30, 0.3, degree20, degree20, most)); !(b < a) {
		t.Errorf("far runs wait %g s, near ones %g s", b, a)
	}
	sunk := append([]warmRun(nil), close...)
	for i := range sunk {
		sunk[i].sink = true
	}
	if a, b := total(pausesOf(close, order, 30, 0.3, degree20, degree20, most)), total(pausesOf(sunk, order, 30, 0.3, degree20, degree20, most)); !(b < a) {
		t.Errorf("with a bar close by %g s, without %g s", b, a)
	}
}

func TestWarmedCastingIsWarmAtFirst(t *testing.T) {
	runs, order := someRuns(2, 0.1)
	if p := pausesOf(runs, order, 10, 0.2, degree20, zeroCelsius+120, zeroCelsius+250); p[0].Body != zeroCelsius+120 {
		t.Errorf("begins at %g K", p[0].Body)
	}
}
