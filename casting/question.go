package casting

import (
	"cmp"
	"math"
	"slices"
)

// Questions that are told, and the least that one must be expected to tell.
const (
	mostQuestions = 6
	leastBits     = 0.005
)

// questions ranks what has not been looked at yet by the information it is
// expected to give for its trouble. Each tells what its answers would mean.
//
// Source: Lindley, On a measure of the information provided by an experiment (1956).
func (w *bench) questions(asked Evidence) []Question {
	type ranked struct {
		k     int
		q     Question
		value float64
	}
	var all []ranked
	right := slices.Max(w.id)
	for k := range w.cat.Features {
		f := &w.cat.Features[k]
		if slices.ContainsFunc(asked, func(i Item) bool { return i.Feature == f.Name }) {
			continue
		}
		bits, after := w.expect(k)
		if bits < leastBits {
			continue
		}
		cost, _ := w.cat.cost(f.Tool())
		q := Question{
			Feature: f.Name, Ask: f.Ask, Tool: f.Tool(), Cost: cost, Bits: bits,
			Gain: math.Max(after-right, 0), Sketch: f.Sketch, Caution: f.Caution,
		}
		q.Worth = q.Gain*w.cat.Decide.wrongCost() > cost+moment
		all = append(all, ranked{k, q, bits / (cost + moment)})
	}
	slices.SortStableFunc(all, func(a, b ranked) int {
		if a.q.Worth != b.q.Worth {
			if a.q.Worth {
				return -1
			}
			return 1
		}
		return cmp.Compare(b.value, a.value)
	})
	var list []Question
	for _, r := range all[:min(len(all), mostQuestions)] {
		r.q.Outcomes = w.outcomes(r.k)
		list = append(list, r.q)
	}
	return list
}

// expect returns the information in bits that a feature is expected to give
// about what the casting is and whether it was modified, and the chance of
// being right after it.
func (w *bench) expect(k int) (bits, right float64) {
	if w.cat.Features[k].Measured() {
		return w.expectSize(k)
	}
	return w.expectAnswer(k)
}

// deadBelow is the chance below which a hypothesis is left out of what is
// expected: a thousand of them together cannot move it.
const deadBelow = 1e-7

func (w *bench) expectAnswer(k int) (bits, right float64) {
	f := &w.cat.Features[k]
	r, flat := f.Trust(), f.flat()
	none := make([][2]float64, len(f.Answers)) // of none of these, by answer and state
	total := make([]float64, len(f.Answers))
	best := make([]float64, len(f.Answers))
	sum := 0.0 // of j·log j over joint chances j
	var classNone [2]float64
	var p [2]float64
	add := func(v int) {
		for a := range f.Answers {
			unknown := f.unknown(a)
			shown := w.known[k][v].shows(f, a, 0, 0)
			known := [2]float64{r*shown + (1-r)*flat, r*f.modify(shown, unknown, a) + (1-r)*flat}
			free := [2]float64{r*unknown + (1-r)*flat, r*f.modify(unknown, unknown, a) + (1-r)*flat}
			identity := 0.0
			for s := range 2 {
				j := w.p[w.knownAt(v, s)] * known[s]
				sum += xlogx(j)
				identity += j
				n := w.p[w.sisterAt(v, s)] * (sisterKeeps*known[s] + (1-sisterKeeps)*free[s])
				none[a][s] += n
				total[a] += j + n
			}
			best[a] = math.Max(best[a], identity)
		}
	}
	classes := 0.0
	for v := range w.variants() {
		p = [2]float64{w.p[w.knownAt(v, 0)], w.p[w.knownAt(v, 1)]}
		sister := [2]float64{w.p[w.sisterAt(v, 0)], w.p[w.sisterAt(v, 1)]}
		if p[0]+p[1]+sister[0]+sister[1] < deadBelow {
			continue
		}
		add(v)
		classes += xlogx(p[0]) + xlogx(p[1])
		classNone[0] += sister[0]
		classNone[1] += sister[1]
	}
	for s := range 2 {
		stranger := w.p[w.strangerAt(s)]
		classNone[s] += stranger
		classes += xlogx(classNone[s])
		for a := range f.Answers {
			unknown := f.unknown(a)
			shown := unknown
			if s == 1 {
				shown = f.modify(unknown, unknown, a)
			}
			j := stranger * (r*shown + (1-r)*flat)
			none[a][s] += j
			total[a] += j
		}
	}
	answers := 0.0
	for a := range f.Answers {
		sum += xlogx(none[a][0]) + xlogx(none[a][1])
		answers += xlogx(total[a])
		right += math.Max(best[a], none[a][0]+none[a][1])
	}
	return math.Max(sum-answers-classes, 0) / math.Ln2, right
}

func xlogx(x float64) float64 {
	if x <= 0 {
		return 0
	}
	return x * math.Log(x)
}
