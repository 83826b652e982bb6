package weldplan

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func yardOf(t testing.TB, j *Job) *yard {
	t.Helper()
	y, err := newYard(modelOf(t, j))
	if err != nil {
		t.Fatal(err)
	}
	return y
}

// everyOrder visits all orders and directions.
func everyOrder(runs int, visit func([]Step)) {
	order := make([]Step, 0, runs)
	var used [exactRuns]bool
	var place func()
	place = func() {
		if len(order) == runs {
			visit(order)
			return
		}
		for r := range runs {
			if used[r] {
				continue
			}
			used[r] = true
			for _, turned := range []bool{false, true} {
				order = append(order, Step{r, turned})
				place()
				order = order[:len(order)-1]
			}
			used[r] = false
		}
	}
	place()
}

func TestExactSearchFindsWhatCountingFinds(t *testing.T) {
	const runs = 5
	y := yardOf(t, manyRuns(t, runs))
	least, most, count := math.Inf(1), 0.0, 0
	everyOrder(runs, func(order []Step) {
		s := y.score(order)
		least, most = math.Min(least, s), math.Max(most, s)
		count++
	})
	if count != 120*32 {
		t.Fatalf("%d orders", count)
	}
	begin := [][]Step{asDrawn(runs)}
	best, worst := y.exact(begin, 1), y.exact(begin, -1)
	near(t, "best", best.Score, least, 2*alike)
	near(t, "worst", worst.Score, most, 2*alike)
	near(t, "score of the best order", y.score(best.Order), best.Score, 1e-12)
	if !best.Proved || !worst.Proved {
		t.Error("five runs are not proved")
	}
	if least > 0.999*most {
		t.Errorf("least %g and most %g: this job tests nothing", least, most)
	}
}

// Annealing on a job small enough to know the truth.
func TestAnnealingComesCloseToTheTruth(t *testing.T) {
	y := yardOf(t, manyRuns(t, 8))
	begin := [][]Step{asDrawn(8)}
	truth := y.exact(begin, 1)
	blind := Found{}
	blind.keepBest(begin[0], y.score(begin[0]), 1)
	// All moves are known by now, so the search runs without working out stages:
	// it is bounded by its number of trials.
	y.finished = 0
	y.polish(&blind, 1, 1)
	if blind.Score < truth.Score*(1-2*alike) {
		t.Errorf("the search found %g, below the proved best %g", blind.Score, truth.Score)
	}
	if blind.Score > truth.Score*1.03 {
		t.Errorf("the search found %g, the best is %g", blind.Score, truth.Score)
	}
}

func TestChosenOrderIsNeverWorseThanTheTradesAndTheseNeverWorseThanTheWorst(t *testing.T) {
	for _, runs := range []int{2, 3, 7, 10, 13} {
		y := yardOf(t, manyRuns(t, runs))
		var begin [][]Step
		for _, r := range append(append([]rule(nil), tradeRules...), roundInOneGo) {
			order := r.order(y.model)
			if !complete(order, runs) {
				t.Errorf("%d runs, %s: %v", runs, r.name, order)
			}
			begin = append(begin, order)
		}
		best, worst := y.search(begin, 3, 1), y.search(begin, 3, -1)
		if !complete(best.Order, runs) || !complete(worst.Order, runs) {
			t.Errorf("%d runs: an order lacks runs", runs)
		}
		for i, order := range begin {
			s := y.score(order)
			if best.Score > s*(1+1e-12) {
				t.Errorf("%d runs: chosen %g, rule %d %g", runs, best.Score, i, s)
			}
			if s > worst.Score*(1+1e-12) {
				t.Errorf("%d runs: rule %d %g, worst %g", runs, i, s, worst.Score)
			}
		}
		if best.Proved && best.Bound > best.Score*(1+1e-12) {
			t.Errorf("bound %g above the best %g", best.Bound, best.Score)
		}
	}
}

func complete(order []Step, runs int) bool {
	seen := make([]bool, runs)
	for _, s := range order {
		seen[s.Run] = true
	}
	for _, s := range seen {
		if !s {
			return false
		}
	}
	return len(order) == runs
}

func TestSameSeedSameOrder(t *testing.T) {
	begin := func(y *yard) [][]Step { return [][]Step{asDrawn(len(y.model.runs))} }
	a, b := yardOf(t, manyRuns(t, 12)), yardOf(t, manyRuns(t, 12))
	one, two := a.search(begin(a), 11, 1), b.search(begin(b), 11, 1)
	if one.Score != two.Score || one.Tried != two.Tried {
		t.Errorf("two searches with one seed: %+v and %+v", one, two)
	}
	for i := range one.Order {
		if one.Order[i] != two.Order[i] {
			t.Errorf("step %d differs", i)
		}
	}
}

func TestShiftTakesOutAndPutsIn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		order := drawOrder(t, 9)
		before := append([]Step(nil), order...)
		from, to := rapid.IntRange(0, 8).Draw(t, "from"), rapid.IntRange(0, 8).Draw(t, "to")
		shift(order, from, to)
		if order[to] != before[from] || !complete(order, 9) {
			t.Fatalf("%v became %v", before, order)
		}
		shift(order, to, from)
		for i := range order {
			if order[i] != before[i] {
				t.Fatal("there and back is not the same")
			}
		}
	})
}

// symmetric is the T24 with its two cheeks and two corners only: what is on the
// left is on the right.
func symmetric(t *testing.T) (*Job, map[string]int) {
	t.Helper()
	j, _, err := LoadJob("../examples/weld/t24-cheeks.yaml")
	if err != nil {
		t.Fatal(err)
	}
	j.Plates, j.Cavities, j.Loads, j.HeatSinks, j.Casting.Peg = j.Plates[:4], nil, nil, nil, nil
	number := map[string]int{}
	for _, p := range j.Plates {
		for _, r := range p.Runs {
			number[r.Name] = len(number)
		}
	}
	return &j, number
}

// squareness is the movement that a mirror image turns round.
func squareness(t *testing.T, m *model, moves []float64) float64 {
	t.Helper()
	for i := range m.moves {
		if m.moves[i].what == "pinion square to side bores, in 100 mm" {
			return moves[i]
		}
	}
	t.Fatal("squareness is not watched")
	return 0
}

func TestMirroredRunsCancel(t *testing.T) {
	j, number := symmetric(t)
	m := modelOf(t, j)
	order := func(names ...string) (steps []Step) {
		for _, n := range names {
			steps = append(steps, Step{Run: number[n]})
		}
		return steps
	}
	left := []string{"LC top", "LC bottom", "LC end", "LK leg", "LK bridge"}
	right := []string{"RC top", "RC bottom", "RC end", "RK leg", "RK bridge"}
	var inTurn []string
	for i := range left {
		inTurn = append(inTurn, left[i], right[i])
	}
	oneSideFirst := append(append([]string(nil), left...), right...)

	// With a stiffness that does not change they cancel to rounding.
	m.tacked = 1
	y, err := newYard(m)
	if err != nil {
		t.Fatal(err)
	}
	half := math.Abs(squareness(t, m, totals(m, y.responses(order(inTurn...), beadByBead)[:1])))
	if both := math.Abs(squareness(t, m, totals(m, y.responses(order(inTurn...), beadByBead)))); both > 1e-6*half {
		t.Errorf("mirrored runs leave %g m of the %g m that one moves", both, half)
	}
	// As the casting stiffens, going from side to side leaves less than one side first.
	m.tacked = tackShare
	if y, err = newYard(m); err != nil {
		t.Fatal(err)
	}
	turn := math.Abs(squareness(t, m, totals(m, y.responses(order(inTurn...), beadByBead))))
	first := math.Abs(squareness(t, m, totals(m, y.responses(order(oneSideFirst...), beadByBead))))
	if turn > 0.5*half || turn > first {
		t.Errorf("in turn leaves %g m, one side first %g m, a single run moves %g m", turn, first, half)
	}
}

// The mirror image of an order does the mirror image.
func TestMirroredOrderMirrorsTheMovement(t *testing.T) {
	j, number := symmetric(t)
	m := modelOf(t, j)
	y, err := newYard(m)
	if err != nil {
		t.Fatal(err)
	}
	mirror := map[int]int{}
	for name, n := range number {
		if name[0] == 'L' {
			mirror[n] = number["R"+name[1:]]
			mirror[number["R"+name[1:]]] = n
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		order := drawOrder(t, len(number))
		image := make([]Step, len(order))
		for i, s := range order {
			image[i] = Step{mirror[s.Run], s.Reversed}
		}
		a, b := y.score(order), y.score(image)
		if math.Abs(a-b) > 1e-6*a {
			t.Fatalf("order moves %g, its mirror image %g", a, b)
		}
	})
}

// A run laid as one bead is stiff in both halves when either shrinks; laid bead by
// bead the first half shrinks while the second is only tacked. With the halves
// stiff from the start there is no difference, and direction tells nothing then.
func TestOneBeadIsBothHalvesAtOnce(t *testing.T) {
	m := modelOf(t, manyRuns(t, 4))
	y, err := newYard(m)
	if err != nil {
		t.Fatal(err)
	}
	apart := 0.0
	for r := range m.runs {
		there, back := m.respond(y.start, r, false, wholeBead), m.respond(y.start, r, true, wholeBead)
		bead := m.respond(y.start, r, false, beadByBead)
		for i := range m.moves {
			near(t, m.moves[i].what, there.total(i), back.total(i), 1e-9*m.moves[i].limit+1e-9*math.Abs(there.total(i)))
			apart = math.Max(apart, math.Abs(there.total(i)-bead.total(i))/m.moves[i].limit)
		}
	}
	if apart < 1e-3 {
		t.Errorf("beads in turn and one bead differ by %g of a limit: this job tests nothing", apart)
	}
	stiff := *m
	stiff.tacked = 1 // welded before it is welded: nothing changes while it cools
	for r := range stiff.runs {
		y, err := newYard(&stiff)
		if err != nil {
			t.Fatal(err)
		}
		one, bead := stiff.respond(y.start, r, false, wholeBead), stiff.respond(y.start, r, false, beadByBead)
		for i := range m.moves {
			near(t, m.moves[i].what, one.total(i), bead.total(i), 1e-12*(1+math.Abs(one.total(i)))+1e-12)
		}
	}
}
