package weldplan

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

// Stiffening a stage run by run must give what a fresh solution of the stiffer
// casting gives.
func TestFinishedStageIsAFreshSolution(t *testing.T) {
	m := modelOf(t, manyRuns(t, 6))
	s, err := m.first()
	if err != nil {
		t.Fatal(err)
	}
	for _, run := range []int{4, 0, 3} {
		s = m.finish(s, run)
	}
	done := map[int]bool{4: true, 0: true, 3: true}
	chol, err := m.stiff(func(r int) float64 {
		if done[r] {
			return 1
		}
		return m.tacked
	})
	if err != nil {
		t.Fatal(err)
	}
	column := func(b []float64) *mat.VecDense {
		var u mat.VecDense
		if err := chol.SolveVecTo(&u, mat.NewVecDense(len(b), b)); err != nil {
			t.Fatal(err)
		}
		return &u
	}
	for place, run := range s.live {
		for h := range halves {
			part := &m.runs[run].half[h]
			for e := range effects {
				u := column(part.load[e])
				for i := range m.moves {
					fresh := mat.Dot(u, mat.NewVecDense(len(m.moves[i].row), m.moves[i].row))
					got := s.row(i)[columns*place+tiesOfRun+effects*h+e]
					if math.Abs(got-fresh) > 1e-6*(math.Abs(fresh)+1e-9) {
						t.Errorf("run %d, half %d, effect %d, %s: %g, fresh %g", run, h, e, m.moves[i].what, got, fresh)
					}
				}
			}
		}
	}
}

// Where the runs stiffen nothing, because the tacks hold as much, the order cannot
// matter, nor the end from which a run is laid.
func TestOrderDoesNotMatterWhereStiffnessDoesNotChange(t *testing.T) {
	m := modelOf(t, manyRuns(t, 7))
	m.tacked = 1
	y, err := newYard(m)
	if err != nil {
		t.Fatal(err)
	}
	want := y.score(asDrawn(7))
	if !(want > 0) {
		t.Fatal("nothing moves")
	}
	rapid.Check(t, func(t *rapid.T) {
		order := drawOrder(t, 7)
		if got := y.score(order); math.Abs(got-want) > 1e-9*want {
			t.Fatalf("order %v moves %g, as drawn %g", order, got, want)
		}
	})
	// and with ordinary tacks it does
	m.tacked = tackShare
	y, _ = newYard(m)
	first, last := y.score(asDrawn(7)), y.score([]Step{{6, false}, {5, false}, {4, false}, {3, false}, {2, false}, {1, false}, {0, false}})
	if math.Abs(first-last) < 1e-6*first {
		t.Error("the order makes no difference at all")
	}
}

func drawOrder(t *rapid.T, runs int) []Step {
	order := asDrawn(runs)
	for i := range order {
		j := rapid.IntRange(i, runs-1).Draw(t, "place")
		order[i], order[j] = order[j], order[i]
		order[i].Reversed = rapid.Bool().Draw(t, "turned")
	}
	return order
}

// The weld metal pulls no harder than it can: with a filler a thousand times
// softer, what a run forces on the casting across itself all but vanishes.
func TestPullAcrossNeverPassesYield(t *testing.T) {
	m := modelOf(t, manyRuns(t, 4))
	for i := range m.runs {
		m.runs[i].shrink.wall, m.runs[i].shrink.kink = 0, 0
		for h := range halves {
			clear(m.runs[i].half[h].load[transverse])
			clear(m.runs[i].half[h].load[longitudinal])
			clear(m.runs[i].half[h].load[angular])
		}
	}
	greatest := func() (most float64) {
		s, err := m.first()
		if err != nil {
			t.Fatal(err)
		}
		for i := range m.runs {
			for _, v := range m.respond(s, i, false, beadByBead).by[transverse] {
				most = math.Max(most, math.Abs(v))
			}
		}
		return most
	}
	hard := greatest()
	for i := range m.runs {
		for h := range halves {
			m.runs[i].half[h].most /= 1000
		}
	}
	if soft := greatest(); !(hard > 0 && soft <= hard*1.001/1000 && soft > 0) {
		t.Errorf("a filler a thousand times softer moves %g m, the hard one %g m", soft, hard)
	}
}
