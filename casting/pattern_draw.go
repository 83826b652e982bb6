package casting

import "math"

// draw turns chosen sets into patterns. A casting that several sets hold goes
// to the one that keeps most margin with it, so that each pattern keeps all the margin
// there is; then every casting to the pattern that wants least trimming.
func (g *Gauging) draw(sets []set, c cover, names []string, readings [][]float64) []Pattern {
	drawn := g.drawings(sets, c, readings)
	trim := make([]float64, len(drawn))
	for i := range readings {
		best, least := -1, math.Inf(1)
		for p := range drawn {
			if t, ok := g.serves(drawn[p].Stations, readings[i]); ok && t < least {
				best, least = p, t
			}
		}
		if best >= 0 {
			drawn[best].Serves = append(drawn[best].Serves, names[i])
			trim[best] += least
		}
	}
	for p := range drawn {
		if n := len(drawn[p].Serves); n > 0 {
			drawn[p].MeanTrim = trim[p] / float64(n*len(g.Stations))
		}
	}
	return drawn
}

func (g *Gauging) drawings(sets []set, c cover, readings [][]float64) []Pattern {
	drawnFor := make([]spans, len(c.chosen))
	for p := range drawnFor {
		drawnFor[p] = g.anySpan()
	}
	var shared []int
	for i := range readings {
		only, n := 0, 0
		for p, at := range c.chosen {
			if sets[at].has(i) {
				only = p
				n++
			}
		}
		switch {
		case n == 1:
			drawnFor[only] = drawnFor[only].with(g, readings[i])
		case n > 1:
			shared = append(shared, i)
		}
	}
	for _, i := range shared {
		best, margin := -1, math.Inf(-1)
		for p, at := range c.chosen {
			if !sets[at].has(i) {
				continue
			}
			if m := drawnFor[p].with(g, readings[i]).margin(); m > margin {
				best, margin = p, m
			}
		}
		drawnFor[best] = drawnFor[best].with(g, readings[i])
	}
	var drawn []Pattern
	for n := range drawnFor {
		if math.IsInf(drawnFor[n].margin(), 1) {
			continue // the others hold all of its castings
		}
		p := Pattern{Name: string(rune('A' + len(drawn)))}
		for i := range g.Stations {
			s := &g.Stations[i]
			low, high := drawnFor[n].low[i], drawnFor[n].high[i]
			middle := (low + high) / 2
			p.Stations = append(p.Stations, PatternStation{s.Number, s.Name, middle, low, high, middle - s.DrawnFor.Value})
		}
		drawn = append(drawn, p)
	}
	return drawn
}

// spans are what a pattern may be drawn for at each station to serve its castings.
type spans struct{ low, high []float64 }

// anySpan is what a pattern without castings may be drawn for: anything.
func (g *Gauging) anySpan() spans {
	x := spans{make([]float64, len(g.Stations)), make([]float64, len(g.Stations))}
	for i := range g.Stations {
		x.low[i], x.high[i] = math.Inf(-1), math.Inf(1)
	}
	return x
}

// with narrows the spans for one more casting.
func (x spans) with(g *Gauging, reading []float64) spans {
	y := spans{make([]float64, len(x.low)), make([]float64, len(x.high))}
	for i := range g.Stations {
		low, high := g.span(&g.Stations[i], reading[i])
		y.low[i], y.high[i] = math.Max(x.low[i], low), math.Min(x.high[i], high)
	}
	return y
}

// margin is the narrowest of the spans.
func (x spans) margin() float64 {
	m := math.Inf(1)
	for i := range x.low {
		m = math.Min(m, x.high[i]-x.low[i])
	}
	return m
}

// serves says whether a drawing serves a casting, and what must come off over
// all stations.
func (g *Gauging) serves(drawn []PatternStation, reading []float64) (trim float64, ok bool) {
	for i := range g.Stations {
		c := g.Stations[i].clearance(reading[i] - drawn[i].Shift)
		if c > g.Kit.Gap.Value+1e-9 || c < -g.Kit.Trim.Value-1e-9 {
			return 0, false
		}
		trim += math.Max(-c, 0)
	}
	return trim, true
}
