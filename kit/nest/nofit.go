package nest

// A noFit is where a shape may not lie beside another that lies at the origin:
// its spans of y for every shift in x, counted in columns from first.
type noFit struct {
	first int
	at    columns
}

// noFitOf finds the region for a shape b beside a. The shapes meet at a shift
// where in some column of both the spans overlap.
func noFitOf(a, b columns) noFit {
	n := noFit{first: -(len(b) - 1), at: make(columns, len(a)+len(b)-1)}
	var list spans
	for k := range n.at {
		shift := n.first + k
		list = list[:0]
		for i := max(0, shift); i < min(len(a), len(b)+shift); i++ {
			for _, s := range a[i] {
				for _, t := range b[i-shift] {
					list = append(list, span{s.low - t.high, s.high - t.low})
				}
			}
		}
		n.at[k] = append(spans(nil), joined(list)...)
	}
	return n
}

// mirrored is the region for a beside b, when n is that for b beside a.
func (n noFit) mirrored() noFit {
	m := noFit{first: -(n.first + len(n.at) - 1), at: make(columns, len(n.at))}
	for k, list := range n.at {
		turned := make(spans, len(list))
		for i, s := range list {
			turned[len(list)-1-i] = span{-s.high, -s.low}
		}
		m.at[len(n.at)-1-k] = turned
	}
	return m
}
