package weldplan

import (
	"math"
	"slices"
)

// A Step is one run of an order: which, and whether it is laid from the other end
// than it is drawn.
type Step struct {
	Run      int
	Reversed bool
}

// asDrawn is the order and the directions of the drawing.
func asDrawn(runs int) []Step {
	order := make([]Step, runs)
	for i := range order {
		order[i].Run = i
	}
	return order
}

// A yard tries orders on a model. How far a run moves things depends on the set
// of runs finished before it, not on their order, so stages and moves are kept by set.
type yard struct {
	model    *model
	start    *stage
	stages   map[uint64]*stage
	oldest   []uint64 // of the stages, to be dropped
	keep     int      // stages kept at most
	moves    map[laid][]float64
	finished int // how many stages were worked out
	progress func(done, total int)
}

// laid is one run laid after a set of others.
type laid struct {
	before uint64
	run    int8
	turned bool
}

// mostRuns is what a set of runs in one word allows; a casting has a few dozen.
const mostRuns = 60

func newYard(m *model) (*yard, error) {
	s, err := m.first()
	if err != nil {
		return nil, err
	}
	y := &yard{model: m, start: s, moves: map[laid][]float64{}, stages: map[uint64]*stage{0: s}}
	// Few runs keep every stage; of many, some hundreds of megabytes would be too much.
	y.keep = 1 << 12
	if cells := len(s.cells); cells > 0 {
		y.keep = min(y.keep, max(2*len(m.runs)+8, 8<<20/cells))
	}
	if len(m.runs) <= exactRuns {
		y.keep = 1 << exactRuns
	}
	return y, nil
}

// stage returns the stage when the first runs of an order are finished.
func (y *yard) stage(order []Step, finished int) *stage {
	masks := make([]uint64, finished+1)
	for i := range finished {
		masks[i+1] = masks[i] | 1<<order[i].Run
	}
	from := finished
	for from > 0 && y.stages[masks[from]] == nil {
		from--
	}
	s := y.stages[masks[from]]
	for i := from; i < finished; i++ {
		s = y.model.finish(s, order[i].Run)
		y.finished++
		y.store(masks[i+1], s)
	}
	return s
}

func (y *yard) store(mask uint64, s *stage) {
	if len(y.oldest) >= y.keep {
		drop := y.oldest[0]
		y.oldest = y.oldest[1:]
		delete(y.stages, drop)
	}
	y.stages[mask] = s
	y.oldest = append(y.oldest, mask)
}

// tell reports how far a search with so much effort is.
func (y *yard) tell() {
	if y.progress != nil {
		y.progress(y.finished, bestEffort+worstEffort)
	}
}

// move is what the i-th step of an order moves, each in shares of its limit.
func (y *yard) move(order []Step, i int) []float64 {
	key := laid{run: int8(order[i].Run), turned: order[i].Reversed}
	for _, s := range order[:i] {
		key.before |= 1 << s.Run
	}
	if v, known := y.moves[key]; known {
		return v
	}
	r := y.model.respond(y.stage(order, i), order[i].Run, order[i].Reversed, beadByBead)
	v := make([]float64, len(y.model.moves))
	for j := range v {
		v[j] = r.total(j) / y.model.moves[j].limit
	}
	y.moves[key] = v
	return v
}

// score is how far an order moves things in the end: the root of the sum of
// squares of all movements over their limits.
func (y *yard) score(order []Step) float64 {
	sum := make([]float64, len(y.model.moves))
	for i := range order {
		for j, v := range y.move(order, i) {
			sum[j] += v
		}
	}
	return norm(sum)
}

func norm(v []float64) float64 {
	sum := 0.0
	for _, x := range v {
		sum += x * x
	}
	return math.Sqrt(sum)
}

// responses are what each step moves, by effect, in the order of the steps.
func (y *yard) responses(order []Step, how laying) []response {
	list := make([]response, len(order))
	for i, s := range order {
		list[i] = y.model.respond(y.stage(order, i), s.Run, s.Reversed, how)
	}
	return list
}

// A Found is an order and how well it does.
type Found struct {
	Order  []Step
	Score  float64
	Proved bool    // no order does better, by this model
	Bound  float64 // none can be below this (above, for the worst); 0 where it is not known
	Tried  int     // orders looked at
}

// better says whether a score beats another, looking for the least (sign 1) or
// the greatest (sign −1).
func better(score, than, sign float64) bool { return sign*score < sign*than }

// keepBest replaces f by an order that does better.
func (f *Found) keepBest(order []Step, score, sign float64) {
	f.Tried++
	if f.Order == nil || better(score, f.Score, sign) {
		f.Order, f.Score = slices.Clone(order), score
	}
}
