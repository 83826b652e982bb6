package casting

import (
	"cmp"
	"slices"
)

// A cover is a choice of sets and how many castings they have together.
type cover struct {
	chosen []int
	count  int
	most   int  // no choice of so many sets can have more
	proved bool // count is the most
}

// bestCover chooses k of the sets that together have the most castings: exactly,
// by branch and bound, or, after limit steps, the best found so far with a
// bound. The bound of a branch is what it has and the k best of what its
// sets would add, which no choice can better, for sets can only overlap.
func bestCover(sets []set, n, k, limit int) cover {
	best := greedyCover(sets, n, k)
	s := coverSearch{sets: sets, k: k, best: best, steps: limit, n: n}
	order := make([]int, len(sets))
	for i := range order {
		order[i] = i
	}
	root := s.bound(newSet(n), order, k)
	s.search(newSet(n), nil, order)
	s.best.proved = s.steps > 0
	s.best.most = s.best.count
	if !s.best.proved {
		s.best.most = min(root, n)
		s.best.proved = s.best.most == s.best.count
	}
	slices.Sort(s.best.chosen)
	return s.best
}

// greedyCover takes the set that adds most, again and again: at least 63 % of
// the best (Nemhauser, Wolsey and Fisher, 1978).
func greedyCover(sets []set, n, k int) cover {
	have := newSet(n)
	var c cover
	for range k {
		at, most := -1, 0
		for i := range sets {
			if gain := sets[i].outside(have); gain > most {
				at, most = i, gain
			}
		}
		if at < 0 {
			break
		}
		have.join(sets[at])
		c.chosen = append(c.chosen, at)
	}
	c.count = have.count()
	return c
}

type coverSearch struct {
	sets  []set
	n, k  int
	best  cover
	steps int // left
}

// bound is the most that the sets still allowed can bring have to.
func (s *coverSearch) bound(have set, allowed []int, left int) int {
	top := make([]int, left) // the greatest gains, falling
	for _, i := range allowed {
		g := s.sets[i].outside(have)
		for at := range top {
			if g > top[at] {
				g, top[at] = top[at], g
			}
		}
	}
	sum := have.count()
	for _, g := range top {
		sum += g
	}
	return min(sum, s.n)
}

// searchSteps is how many steps of a search compare about so many words of sets.
func searchSteps(sets []set, words int) int {
	if len(sets) == 0 {
		return 1
	}
	return max(words/(len(sets)*len(sets[0])), 50)
}

func (s *coverSearch) search(have set, chosen, allowed []int) {
	if s.steps <= 0 || s.best.count == s.n {
		return
	}
	s.steps--
	if c := have.count(); c > s.best.count {
		s.best.count, s.best.chosen = c, slices.Clone(chosen)
	}
	left := s.k - len(chosen)
	if left == 0 || len(allowed) == 0 || s.bound(have, allowed, left) <= s.best.count {
		return
	}
	// branch on the set that adds most: with it, then without it
	type gain struct{ i, adds int }
	var useful []gain
	for _, i := range allowed {
		if a := s.sets[i].outside(have); a > 0 {
			useful = append(useful, gain{i, a})
		}
	}
	slices.SortStableFunc(useful, func(a, b gain) int { return cmp.Compare(b.adds, a.adds) })
	rest := make([]int, len(useful))
	for j, u := range useful {
		rest[j] = u.i
	}
	for j, u := range useful {
		if s.bound(have, rest[j:], left) <= s.best.count || s.steps <= 0 {
			return
		}
		with := have.copy()
		with.join(s.sets[u.i])
		s.search(with, append(slices.Clone(chosen), u.i), rest[j+1:])
	}
}

// mostAlong is the most of n values that k stretches of a length can hold,
// exactly: what one station by itself allows. No set of k patterns can serve
// more castings than any one station allows.
func mostAlong(values []float64, reach float64, k int) int {
	x := slices.Clone(values)
	slices.Sort(x)
	n := len(x)
	best := make([]int, n+1) // with the stretches so far, of the first i values
	for range k {
		next := make([]int, n+1)
		from := 0
		for i := range n {
			for x[i]-x[from] > reach {
				from++
			}
			next[i+1] = max(next[i], best[from]+i-from+1)
		}
		best = next
	}
	return best[n]
}
