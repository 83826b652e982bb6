package outline

import "math"

// stitch joins pieces end to start into outlines and drops what does not close.
func stitch(pieces []tagged) []Loop {
	pieces = withoutLooseEnds(withoutTwins(pieces))
	used := make([]bool, len(pieces))
	var loops []Loop
	for start := range pieces {
		if used[start] {
			continue
		}
		chain := []tagged{pieces[start]}
		used[start] = true
		closed := false
		for !closed {
			end := chain[len(chain)-1]
			if len(chain) > 1 || end.Length() > smallest {
				closed = end.To.To(chain[0].From) < 5*smallest
			}
			if closed {
				break
			}
			next := following(pieces, used, end)
			if next < 0 {
				break
			}
			used[next] = true
			chain = append(chain, pieces[next])
		}
		if !closed {
			continue
		}
		if l := joined(chain); len(l) >= 2 && l.Check() == nil {
			loops = append(loops, l)
		}
	}
	return loops
}

// following finds the unused piece that starts where another ends. Where
// several do, the one that turns least to the right keeps outlines apart that
// touch at a corner.
func following(pieces []tagged, used []bool, end tagged) int {
	best, bestTurn := -1, math.Inf(-1)
	for i, p := range pieces {
		if used[i] || end.To.To(p.From) > 5*smallest {
			continue
		}
		u, v := end.Direction(1), p.Direction(0)
		if turn := math.Atan2(u.cross(v), u.dot(v)); turn > bestTurn {
			best, bestTurn = i, turn
		}
	}
	return best
}

// withoutLooseEnds drops pieces that nothing leads to or that lead to nothing:
// hairs past a corner that is nearly straight.
func withoutLooseEnds(pieces []tagged) []tagged {
	for {
		var kept []tagged
		for i, p := range pieces {
			led, leads := false, false
			for j, q := range pieces {
				if i != j || len(pieces) == 1 {
					led = led || q.To.To(p.From) < 5*smallest
					leads = leads || p.To.To(q.From) < 5*smallest
				}
			}
			if led && leads {
				kept = append(kept, p)
			}
		}
		if len(kept) == len(pieces) {
			return kept
		}
		pieces = kept
	}
}

// withoutTwins drops pieces that lie on others.
func withoutTwins(pieces []tagged) []tagged {
	var kept []tagged
	for _, p := range pieces {
		twin := false
		for _, q := range kept {
			if p.From.To(q.From) < smallest && p.To.To(q.To) < smallest && p.At(0.5).To(q.At(0.5)) < smallest {
				twin = true
				break
			}
		}
		if !twin {
			kept = append(kept, p)
		}
	}
	return kept
}

// joined makes an outline of a closed chain; pieces of one line or one circle
// that follow each other become one edge again.
func joined(chain []tagged) Loop {
	for changed := true; changed && len(chain) > 2; {
		changed = false
		for i := range chain {
			j := (i + 1) % len(chain)
			if m, ok := chain[i].merged(chain[j].Edge); ok && chain[i].tag == chain[j].tag {
				chain[i].Edge = m
				chain = append(chain[:j], chain[j+1:]...)
				changed = true
				break
			}
		}
	}
	l := make(Loop, len(chain))
	for i, p := range chain {
		l[i] = Vertex{At: p.From.whole(), Bulge: p.Bulge, Tag: p.tag}
	}
	return l
}

// merged is the one edge that two make that follow each other on one line or
// circle.
func (e Edge) merged(f Edge) (Edge, bool) {
	u, v := e.Direction(1), f.Direction(0)
	if math.Abs(u.cross(v)) > 1e-6 || u.dot(v) < 0 {
		return e, false
	}
	if e.Straight() && f.Straight() {
		m := Edge{e.From, f.To, 0}
		return m, m.Distance(e.To) < 5*Touch
	}
	if e.Straight() || f.Straight() || (e.Bulge > 0) != (f.Bulge > 0) {
		return e, false
	}
	sweep := e.Sweep() + f.Sweep()
	if e.Centre().To(f.Centre()) > 10*smallest || math.Abs(e.Radius()-f.Radius()) > 10*smallest || math.Abs(sweep) > 1.9*math.Pi {
		return e, false
	}
	return Edge{e.From, f.To, math.Tan(sweep / 4)}, true
}
