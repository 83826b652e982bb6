package weldplan

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// A rule is a custom of the trade that gives an order.
type rule struct {
	name  string
	order func(*model) []Step
}

// tradeRules are the customs an order is compared with. Common practice, no source.
var tradeRules = []rule{
	{"from the middle outwards", middleOutwards},
	{"alternate sides, middle outwards", alternateSides},
	{"shortest first, then the farthest away", shortestFirst},
}

// roundInOneGo is what the trade warns of.
var roundInOneGo = rule{"one after another as drawn", func(m *model) []Step { return asDrawn(len(m.runs)) }}

func (t *tied) middle() r3.Vec { return t.line.at(0.5) }

// middleOf is the middle of all welding.
func (m *model) middleOf() r3.Vec {
	var sum r3.Vec
	length := 0.0
	for i := range m.runs {
		sum = r3.Add(sum, r3.Scale(m.runs[i].line.length, m.runs[i].middle()))
		length += m.runs[i].line.length
	}
	return r3.Scale(1/length, sum)
}

// outwards is a run laid from its end that is nearer the middle of all welding.
func (m *model) outwards(run int, middle r3.Vec) Step {
	l := m.runs[run].line
	near := func(p r3.Vec) float64 { return r3.Norm(r3.Sub(p, middle)) }
	return Step{run, near(l.to) < near(l.from)-1e-9}
}

// byDistance sorts runs from the middle outwards; ties stay as drawn.
func (m *model) byDistance(runs []int, middle r3.Vec) {
	distance := func(r int) float64 { return r3.Norm(r3.Sub(m.runs[r].middle(), middle)) }
	slices.SortStableFunc(runs, func(a, b int) int {
		if d := distance(a) - distance(b); math.Abs(d) > 1e-9 {
			return compareFloat(d, 0)
		}
		return 0
	})
}

func middleOutwards(m *model) []Step {
	middle := m.middleOf()
	runs := numbers(len(m.runs))
	m.byDistance(runs, middle)
	return m.stepsOf(runs, middle)
}

func numbers(n int) []int {
	list := make([]int, n)
	for i := range list {
		list[i] = i
	}
	return list
}

func (m *model) stepsOf(runs []int, middle r3.Vec) []Step {
	order := make([]Step, len(runs))
	for i, r := range runs {
		order[i] = m.outwards(r, middle)
	}
	return order
}

// alternateSides takes runs from two sides in turn, each side from the middle
// outwards. The sides lie either way along the direction in which the welding
// spreads most.
func alternateSides(m *model) []Step {
	middle := m.middleOf()
	var spread r3.Vec
	for i := range m.runs {
		d := r3.Sub(m.runs[i].middle(), middle)
		spread = r3.Add(spread, r3.Vec{X: d.X * d.X, Y: d.Y * d.Y, Z: d.Z * d.Z})
	}
	axis := r3.Vec{X: 1}
	switch {
	case spread.Y >= spread.X && spread.Y >= spread.Z:
		axis = r3.Vec{Y: 1}
	case spread.Z > spread.X:
		axis = r3.Vec{Z: 1}
	}
	var sides [2][]int
	for i := range m.runs {
		s := 0
		if r3.Dot(r3.Sub(m.runs[i].middle(), middle), axis) < 0 {
			s = 1
		}
		sides[s] = append(sides[s], i)
	}
	for _, s := range sides {
		m.byDistance(s, middle)
	}
	var runs []int
	for i := range max(len(sides[0]), len(sides[1])) {
		for _, s := range sides {
			if i < len(s) {
				runs = append(runs, s[i])
			}
		}
	}
	return m.stepsOf(runs, middle)
}

// shortestFirst begins with the shortest run and goes on with the one farthest
// from the last, the shorter where two are about as far.
func shortestFirst(m *model) []Step {
	middle := m.middleOf()
	left := numbers(len(m.runs))
	slices.SortStableFunc(left, func(a, b int) int { return compareFloat(m.runs[a].line.length, m.runs[b].line.length) })
	runs := []int{left[0]}
	left = left[1:]
	for len(left) > 0 {
		last := m.runs[runs[len(runs)-1]].middle()
		far := 0.0
		for _, r := range left {
			far = math.Max(far, r3.Norm(r3.Sub(m.runs[r].middle(), last)))
		}
		const about = 0.9
		next := slices.IndexFunc(left, func(r int) bool { return r3.Norm(r3.Sub(m.runs[r].middle(), last)) >= about*far })
		runs = append(runs, left[next])
		left = slices.Delete(left, next, next+1)
	}
	return m.stepsOf(runs, middle)
}
