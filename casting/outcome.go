package casting

import (
	"cmp"
	"math"
	"slices"

	"axlewright/quantity"
)

// outcomes tells what each answer to a question would mean: its chance, what
// would lead then, and what it would rule out.
func (w *bench) outcomes(k int) []Outcome {
	f := &w.cat.Features[k]
	if f.Measured() {
		return w.sizeOutcomes(k)
	}
	var list []Outcome
	for _, a := range f.Answers {
		o := w.outcome(k, &Item{Feature: f.Name, Answer: a})
		if o.Says = a; o.Chance >= aliveFrom {
			list = append(list, o)
		}
	}
	return list
}

// outcome is what one answer or reading would mean. Its chance is a density
// for a reading.
func (w *bench) outcome(k int, item *Item) Outcome {
	like := make([]float64, w.hypotheses())
	w.likelihood(k, item, like)
	chance := 0.0
	logs := make([]float64, len(like))
	for h, l := range like {
		chance += w.p[h] * math.Exp(l)
		logs[h] = w.logs[h] + l
	}
	after := w.identities(posterior(logs))
	leader := argmax(after)
	o := Outcome{Chance: chance, Leads: w.nameOf(leader), After: after[leader]}
	var gone []int
	for v := range w.variants() {
		if w.id[v] >= aliveFrom && after[v] < aliveFrom && after[v] <= w.id[v]/10 {
			gone = append(gone, v)
		}
	}
	slices.SortStableFunc(gone, func(a, b int) int { return cmp.Compare(w.id[b], w.id[a]) })
	for _, v := range gone {
		o.Disproves = append(o.Disproves, w.nameOf(v))
	}
	return o
}

// mostOutcomes is how many stretches of a size are told; the unlikelier ones
// are left out while many variants are still possible.
const mostOutcomes = 8

// A cluster is a stretch of the span in which the sizes of possible variants
// lie so close that a reading cannot tell them apart.
type cluster struct{ low, high, weight, centre float64 }

func (w *bench) sizeOutcomes(k int) []Outcome {
	f := &w.cat.Features[k]
	var all []cluster
	for v := range w.variants() {
		if l := &w.known[k][v]; l.sd > 0 && w.id[v] >= aliveFrom {
			reach := 2 * l.scale(f, 0)
			all = append(all, cluster{l.mean - reach, l.mean + reach, w.id[v], l.mean * w.id[v]})
		}
	}
	slices.SortFunc(all, func(a, b cluster) int { return cmp.Compare(a.low, b.low) })
	var list []Outcome
	elsewhere := 1.0
	for i := 0; i < len(all); i++ {
		c := all[i]
		for i+1 < len(all) && all[i+1].low <= c.high {
			i++
			c.high = math.Max(c.high, all[i].high)
			c.weight += all[i].weight
			c.centre += all[i].centre
		}
		o := w.outcome(k, &Item{Feature: f.Name, Value: c.centre / c.weight})
		o.Says = quantity.FormatRange(c.low, c.high, quantity.Length)
		o.Chance = c.weight * f.Trust()
		elsewhere -= o.Chance
		list = append(list, o)
	}
	if len(list) > mostOutcomes {
		slices.SortStableFunc(list, func(a, b Outcome) int { return cmp.Compare(b.Chance, a.Chance) })
		list = list[:mostOutcomes]
	}
	if far, found := f.farFrom(all); found {
		o := w.outcome(k, &Item{Feature: f.Name, Value: far})
		o.Says, o.Chance = "anything else", math.Max(elsewhere, 0)
		list = append(list, o)
	}
	return list
}

// farFrom is the place in the span that is furthest from every cluster.
func (f *Feature) farFrom(all []cluster) (float64, bool) {
	at, gap := 0.0, 0.0
	last := f.Span.Low
	for _, c := range append(slices.Clone(all), cluster{low: f.Span.High}) {
		if c.low-last > gap {
			at, gap = (c.low+last)/2, c.low-last
		}
		last = math.Max(last, c.high)
	}
	return at, gap > 0
}
