package weldplan

import (
	"math"
	"math/rand/v2"
	"slices"
)

// The doubt of the shrinkage formulas, as two standard deviations of a factor:
// 1.4 for each kind of shrinkage in all runs alike, 1.35 for each run by itself,
// together the "half" that such formulas are good to.
const (
	kindDoubt   = 1.40
	singleDoubt = 1.35
	doubtDraws  = 2000
)

// A Compared is one order beside another.
type Compared struct {
	Name   string  `json:"name"`
	Score  float64 `json:"score"`  // root of the sum of squares of the moves over their limits
	Low    float64 `json:"low"`    // one draw in ten lies below
	High   float64 `json:"high"`   // one in ten above
	Chance float64 `json:"chance"` // that the chosen order moves things less than this one
	Worst  string  `json:"worst"`  // what moves most against its limit
	Share  float64 `json:"share"`  // and how much, over the limit
}

// A drawing is what one order moves in one way to model the tacks.
type drawing struct {
	order []Step
	moves []response
}

// score is how far an order moves things when the formulas are out by factors.
func (d *drawing) score(m *model, kind [effects]float64, single [][effects]float64, sum []float64) float64 {
	clear(sum)
	for i, step := range d.order {
		for e := range effects {
			f := kind[e] * single[step.Run][e]
			for j, v := range d.moves[i].by[e] {
				sum[j] += f * v / m.moves[j].limit
			}
		}
	}
	return norm(sum)
}

// compare draws the doubt of the formulas and of the tacks, the same for every
// order, and counts how often the first of the orders comes out better.
func compare(yards []*yard, orders []namedOrder, seed uint64) []Compared {
	m := yards[0].model
	drawings := make([][]drawing, len(yards))
	for k, y := range yards {
		for _, o := range orders {
			drawings[k] = append(drawings[k], drawing{o.order, y.responses(o.order, o.how)})
		}
	}
	chance := rand.New(rand.NewPCG(seed, 1993))
	one, all := math.Log(singleDoubt)/2, math.Log(kindDoubt)/2
	scores := make([][]float64, len(orders))
	sum := make([]float64, len(m.moves))
	single := make([][effects]float64, len(m.runs))
	for d := range doubtDraws {
		var kind [effects]float64
		for e := range kind {
			kind[e] = math.Exp(all * chance.NormFloat64())
		}
		for r := range single {
			for e := range single[r] {
				single[r][e] = math.Exp(one * chance.NormFloat64())
			}
		}
		for i := range orders {
			scores[i] = append(scores[i], drawings[d%len(yards)][i].score(m, kind, single, sum))
		}
	}
	list := make([]Compared, len(orders))
	for i, o := range orders {
		list[i] = summed(m, drawings[0][i].moves, scores[0], scores[i])
		list[i].Name, list[i].Score = o.name, scoreOf(m, drawings[0][i].moves)
	}
	return list
}

// summed is one order's draws beside those of the chosen one.
func summed(m *model, moves []response, chosen, own []float64) (c Compared) {
	wins := 0.0
	for d, v := range own {
		switch {
		case chosen[d] < v*(1-1e-9):
			wins++
		case chosen[d] <= v*(1+1e-9): // as good as alike
			wins += 0.5
		}
	}
	c.Chance = wins / float64(len(own))
	sorted := slices.Sorted(slices.Values(own))
	c.Low, c.High = sorted[len(own)/10], sorted[len(own)*9/10]
	for j, mv := range totals(m, moves) {
		if share := math.Abs(mv) / m.moves[j].limit; share > c.Share {
			c.Share, c.Worst = share, m.moves[j].what
		}
	}
	return c
}

type namedOrder struct {
	name  string
	order []Step
	how   laying
}

// scoreOf is how far an order moves things in the end, by what its steps move.
func scoreOf(m *model, moves []response) float64 {
	sum := totals(m, moves)
	for j := range sum {
		sum[j] /= m.moves[j].limit
	}
	return norm(sum)
}

// totals is what all runs together move.
func totals(m *model, moves []response) []float64 {
	sum := make([]float64, len(m.moves))
	for i := range moves {
		for j := range sum {
			sum[j] += moves[i].total(j)
		}
	}
	return sum
}
