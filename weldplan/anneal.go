package weldplan

import (
	"math"
	"math/rand/v2"
	"slices"
)

// Effort of a search among orders, counted in stages worked out, so that the same
// input gives the same order on any machine.
const (
	bestEffort  = 5000
	worstEffort = 1500
)

// search finds a good (sign 1) or bad (sign −1) order: all orders up to exactRuns
// runs, else by annealing from the best of begin and then trying every small
// change. The result is never worse than any of begin.
func (y *yard) search(begin [][]Step, seed uint64, sign float64) Found {
	if len(y.model.runs) <= exactRuns {
		return y.exact(begin, sign)
	}
	f := Found{}
	for _, order := range begin {
		f.keepBest(order, y.score(order), sign)
	}
	effort := bestEffort
	if sign < 0 {
		effort = worstEffort
	}
	stop := y.finished + effort
	y.anneal(&f, rand.New(rand.NewPCG(seed, uint64(len(y.model.runs)))), stop-effort/3, sign)
	y.polish(&f, stop, sign)
	return f
}

// anneal wanders among orders and takes a worse one the less readily the longer it
// goes on (Kirkpatrick, Gelatt and Vecchi, 1983).
func (y *yard) anneal(f *Found, chance *rand.Rand, stop int, sign float64) {
	order, score := slices.Clone(f.Order), f.Score
	first := y.finished
	const hot, cold = 0.10, 0.002 // of the score
	for y.finished < stop {
		share := float64(y.finished-first) / float64(stop-first)
		heat := score * hot * math.Pow(cold/hot, share)
		y.tell()
		trial := slices.Clone(order)
		y.nudge(trial, chance)
		s := y.score(trial)
		f.keepBest(trial, s, sign)
		if loss := sign * (s - score); loss <= 0 || chance.Float64() < math.Exp(-loss/heat) {
			order, score = trial, s
		}
		if f.Tried > 40*stop { // everything near has been seen
			return
		}
	}
}

// nudge changes an order a little: two neighbours swapped, a run laid from its
// other end, or moved by a few places.
func (y *yard) nudge(order []Step, chance *rand.Rand) {
	n := len(order)
	switch roll := chance.Float64(); {
	case roll < 0.3:
		i := chance.IntN(n)
		order[i].Reversed = !order[i].Reversed
	case roll < 0.85:
		i := chance.IntN(n - 1)
		order[i], order[i+1] = order[i+1], order[i]
	default:
		from := chance.IntN(n)
		to := min(n-1, max(0, from+chance.IntN(9)-4))
		shift(order, from, to)
	}
}

// shift takes a step out and puts it in elsewhere.
func shift(order []Step, from, to int) {
	s := order[from]
	if from < to {
		copy(order[from:to], order[from+1:to+1])
	} else {
		copy(order[to+1:from+1], order[to:from])
	}
	order[to] = s
}

// polish tries every turn and every shift of one run until none helps, or the
// effort is spent.
func (y *yard) polish(f *Found, stop int, sign float64) {
	for improved := true; improved && y.finished < stop; {
		improved = false
		try := func(order []Step) {
			before := f.Score
			f.keepBest(order, y.score(order), sign)
			improved = improved || better(f.Score, before, sign)
		}
		n := len(f.Order)
		for i := range n {
			turned := slices.Clone(f.Order)
			turned[i].Reversed = !turned[i].Reversed
			try(turned)
		}
		for gap := 1; gap < n && y.finished < stop; gap++ {
			y.tell()
			for i := 0; i+gap < n && y.finished < stop; i++ {
				for _, way := range [][2]int{{i, i + gap}, {i + gap, i}} {
					moved := slices.Clone(f.Order)
					shift(moved, way[0], way[1])
					try(moved)
				}
			}
		}
	}
}
