package casting

import "math/bits"

// A set of castings, by place in a list.
type set []uint64

func newSet(n int) set { return make(set, (n+63)/64) }

func (s set) has(i int) bool { return s[i/64]>>(i%64)&1 == 1 }
func (s set) add(i int)      { s[i/64] |= 1 << (i % 64) }
func (s set) remove(i int)   { s[i/64] &^= 1 << (i % 64) }

func (s set) count() int {
	n := 0
	for _, w := range s {
		n += bits.OnesCount64(w)
	}
	return n
}

func (s set) empty() bool {
	for _, w := range s {
		if w != 0 {
			return false
		}
	}
	return true
}

// and returns what both have, common counts it; outside counts what o lacks of s.
func (s set) and(o set) set {
	r := make(set, len(s))
	for i := range s {
		r[i] = s[i] & o[i]
	}
	return r
}

func (s set) common(o set) int {
	n := 0
	for i := range s {
		n += bits.OnesCount64(s[i] & o[i])
	}
	return n
}

func (s set) outside(o set) int {
	n := 0
	for i := range s {
		n += bits.OnesCount64(s[i] &^ o[i])
	}
	return n
}

func (s set) join(o set) {
	for i := range s {
		s[i] |= o[i]
	}
}

func (s set) copy() set { return append(set(nil), s...) }

func (s set) each(visit func(i int)) {
	for w, word := range s {
		for word != 0 {
			visit(w*64 + bits.TrailingZeros64(word))
			word &= word - 1
		}
	}
}

// cliques lists the largest sets of castings any two of which go together: none
// of them can take in another casting. It gives up, with complete false, after
// limit sets.
//
// Source: Bron and Kerbosch, Algorithm 457 (1973), with the pivot of Tomita,
// Tanaka and Takahashi (2006).
func cliques(together []set, limit int) (list []set, complete bool) {
	n := len(together)
	all := newSet(n)
	for i := range n {
		all.add(i)
	}
	complete = true
	var grow func(in, may, not set)
	grow = func(in, may, not set) {
		if !complete {
			return
		}
		if may.empty() {
			if not.empty() && !in.empty() {
				if len(list) >= limit {
					complete = false
					return
				}
				list = append(list, in.copy())
			}
			return
		}
		pivot, most := -1, -1
		for _, from := range []set{may, not} {
			from.each(func(i int) {
				if c := may.common(together[i]); c > most {
					pivot, most = i, c
				}
			})
		}
		try := may.copy()
		together[pivot].each(func(i int) { try.remove(i) })
		try.each(func(i int) {
			in.add(i)
			grow(in, may.and(together[i]), not.and(together[i]))
			in.remove(i)
			may.remove(i)
			not.add(i)
		})
	}
	grow(newSet(n), all, newSet(n))
	return list, complete
}
