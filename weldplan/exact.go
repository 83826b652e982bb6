package weldplan

import (
	"math"
	"math/bits"
)

// exactRuns is up to how many runs every order is looked at.
const exactRuns = 10

// nodesLooked is how many branches an exact search follows before it gives the
// best it has, with the bound it has proved.
const nodesLooked = 3_000_000

// alike is by how much less two scores must differ to be one: a search that has
// proved its best has proved it to this share.
const alike = 1e-6

// A lattice holds what every run moves after every set of others, both ways laid,
// and the least and greatest that the rest can still add to each movement.

type lattice struct {
	runs, moves int
	sign        float64
	cells       []float64 // by set, run, direction, movement
	low, high   []float64 // by set, movement
	best        *Found
	looked      int
	open        float64 // best bound among branches left unlooked at
	sum         [][]float64
	order       []Step
}

func (l *lattice) cell(set, run, turned int) []float64 {
	i := ((set*l.runs+run)*2 + turned) * l.moves
	return l.cells[i : i+l.moves]
}

// exact finds the best (sign 1) or the worst (sign −1) order and directions by
// branch and bound. begin holds orders to start from; they are never lost.
func (y *yard) exact(begin [][]Step, sign float64) Found {
	n, moves := len(y.model.runs), len(y.model.moves)
	l := &lattice{runs: n, moves: moves, sign: sign, best: &Found{}, open: math.Inf(int(sign)), order: make([]Step, n)}
	for _, order := range begin {
		l.best.keepBest(order, y.score(order), sign)
	}
	l.fill(y)
	for range n + 1 {
		l.sum = append(l.sum, make([]float64, moves))
	}
	l.branch(0, 0)

	l.best.Proved = l.looked < nodesLooked
	l.best.Bound = l.best.Score
	if !l.best.Proved && better(l.open, l.best.Bound, sign) {
		l.best.Bound = l.open
	}
	return *l.best
}

// fill works out all moves and, from the full set back, the bounds.
func (l *lattice) fill(y *yard) {
	sets := 1 << l.runs
	l.cells = make([]float64, sets*l.runs*2*l.moves)
	l.low, l.high = make([]float64, sets*l.moves), make([]float64, sets*l.moves)
	for set := range sets {
		order := make([]Step, 0, l.runs)
		for r := range l.runs {
			if set>>r&1 == 1 {
				order = append(order, Step{Run: r})
			}
		}
		done := len(order)
		for r := range l.runs {
			if set>>r&1 == 1 {
				continue
			}
			for turned := range 2 {
				copy(l.cell(set, r, turned), y.move(append(order[:done:done], Step{r, turned == 1}), done))
			}
		}
	}
	for set := sets - 2; set >= 0; set-- {
		low, high := l.low[set*l.moves:(set+1)*l.moves], l.high[set*l.moves:(set+1)*l.moves]
		for j := range low {
			low[j], high[j] = math.Inf(1), math.Inf(-1)
		}
		for r := range l.runs {
			if set>>r&1 == 1 {
				continue
			}
			after := (set | 1<<r) * l.moves
			for turned := range 2 {
				for j, v := range l.cell(set, r, turned) {
					low[j] = math.Min(low[j], v+l.low[after+j])
					high[j] = math.Max(high[j], v+l.high[after+j])
				}
			}
		}
	}
}

// bound is the best that any order can reach from a set with a sum.
func (l *lattice) bound(set int, sum []float64) float64 {
	total := 0.0
	for j, v := range sum {
		low, high := v+l.low[set*l.moves+j], v+l.high[set*l.moves+j]
		d := 0.0
		switch {
		case l.sign < 0:
			d = math.Max(math.Abs(low), math.Abs(high))
		case low > 0:
			d = low
		case high < 0:
			d = -high
		}
		total += d * d
	}
	return math.Sqrt(total)
}

func (l *lattice) branch(set, depth int) {
	sum := l.sum[depth]
	if depth == l.runs {
		l.best.keepBest(l.order, norm(sum), l.sign)
		return
	}
	bound := l.bound(set, sum)
	if !better(bound, l.best.Score*(1-l.sign*alike), l.sign) {
		return
	}
	if l.looked >= nodesLooked {
		if better(bound, l.open, l.sign) {
			l.open = bound
		}
		return
	}
	// The promising branches first: what they find cuts off the others.
	type child struct {
		step  Step
		bound float64
	}
	var children [2 * exactRuns]child
	count := 0
	next := l.sum[depth+1]
	for rest := ^uint(set) & (1<<l.runs - 1); rest != 0; rest &= rest - 1 {
		r := bits.TrailingZeros(rest)
		for turned := range 2 {
			for j, v := range l.cell(set, r, turned) {
				next[j] = sum[j] + v
			}
			c := child{Step{r, turned == 1}, l.bound(set|1<<r, next)}
			at := count
			for at > 0 && better(c.bound, children[at-1].bound, l.sign) {
				children[at] = children[at-1]
				at--
			}
			children[at] = c
			count++
		}
	}
	for _, c := range children[:count] {
		l.looked++
		if !better(c.bound, l.best.Score*(1-l.sign*alike), l.sign) {
			return
		}
		turned := 0
		if c.step.Reversed {
			turned = 1
		}
		for j, v := range l.cell(set, c.step.Run, turned) {
			next[j] = sum[j] + v
		}
		l.order[depth] = c.step
		l.branch(set|1<<c.step.Run, depth+1)
	}
}
