package casting

import (
	"cmp"
	"math"
	"slices"
)

// candidates are the largest sets of castings that one pattern can serve. Two
// castings go together if at every station their spans meet; and where all
// pairs of some castings do, all of them do at once, for stretches of a line
// that meet in pairs have a point in common (Helly). So nothing is lost by
// looking only at the largest sets in which all pairs go together. Of many
// castings not all such sets are listed, and complete is false.
func (g *Gauging) candidates(readings [][]float64) (sets []set, complete bool) {
	n := len(readings)
	together := make([]set, n)
	for i := range together {
		together[i] = newSet(n)
	}
	reach := g.reach()
	for i := range n {
		for j := range i {
			if distance(readings[i], readings[j]) <= reach {
				together[i].add(j)
				together[j].add(i)
			}
		}
	}
	if n <= mostExact {
		if sets, complete = cliques(together, mostCliques); complete {
			return sets, true
		}
	}
	return grown(together, readings), false
}

// distance is the furthest that two castings differ at any station.
func distance(a, b []float64) float64 {
	most := 0.0
	for s := range a {
		most = math.Max(most, math.Abs(a[s]-b[s]))
	}
	return most
}

// Castings that sets are grown from, and of which the slower way is tried too.
const (
	mostSeeds  = 300
	mostWidest = 400
)

// grown lists good sets without looking at all: from each of many castings one
// is grown by taking in the nearest that goes with all so far, another by
// taking in the one that leaves the widest choice.
func grown(together []set, readings [][]float64) []set {
	n := len(readings)
	var list []set
	add := func(s set) {
		if !slices.ContainsFunc(list, func(o set) bool { return slices.Equal(o, s) }) {
			list = append(list, s)
		}
	}
	seeds := min(n, mostSeeds)
	for k := range seeds {
		seed := k * n / seeds
		add(nearest(seed, together, readings))
		if n <= mostWidest {
			add(widest(seed, together))
		}
	}
	return list
}

func nearest(seed int, together []set, readings [][]float64) set {
	type other struct {
		i   int
		far float64
	}
	var others []other
	together[seed].each(func(i int) { others = append(others, other{i, distance(readings[seed], readings[i])}) })
	slices.SortStableFunc(others, func(a, b other) int { return cmp.Compare(a.far, b.far) })
	in, may := newSet(len(readings)), together[seed].copy()
	in.add(seed)
	for _, o := range others {
		if may.has(o.i) {
			in.add(o.i)
			may = may.and(together[o.i])
		}
	}
	return in
}

func widest(seed int, together []set) set {
	in, may := newSet(len(together)), together[seed].copy()
	in.add(seed)
	for !may.empty() {
		best, most := -1, -1
		may.each(func(i int) {
			if c := may.common(together[i]); c > most {
				best, most = i, c
			}
		})
		in.add(best)
		may = may.and(together[best])
	}
	return in
}
