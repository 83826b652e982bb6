package assess

import (
	"cmp"
	"math"
	"slices"
)

// A column is one build's give-out torques on the peak scale, draw by draw.
type column struct {
	torque [][]float64 // by link, draw
	least  []float64   // by draw
	first  []int       // by draw: the link that goes first
	safe   [][]bool    // by link, draw: holds the peak
	holds  []bool      // by draw: every link holds
	coast  []float64   // by link: share of draws in which the coast flank decides
}

func (s *study) column(build int) column {
	n := s.draws.n
	c := column{
		torque: make([][]float64, len(links)), safe: make([][]bool, len(links)), coast: make([]float64, len(links)),
		least: make([]float64, n), first: make([]int, n), holds: make([]bool, n),
	}
	for i := range n {
		c.least[i], c.holds[i] = math.Inf(1), true
	}
	for l := range links {
		c.torque[l], c.safe[l] = make([]float64, n), make([]bool, n)
		outcomes := s.giveOut[l][s.kinds[l].of[build]]
		for i, o := range outcomes {
			t, flank := o.onPeakScale(links[l].kind, s.peaks[i])
			c.torque[l][i] = t
			c.safe[l][i] = t >= s.peaks[i].torque
			c.holds[i] = c.holds[i] && c.safe[l][i]
			if t < c.least[i] {
				c.least[i], c.first[i] = t, l
			}
			if flank == 1 {
				c.coast[l] += 1 / float64(n)
			}
		}
	}
	return c
}

// describe turns a column into a Build. Links that never gave out in any draw
// are left off the ladder.
func (s *study) describe(build int, c column) Build {
	a := &s.builds[build]
	n := s.draws.n
	b := Build{
		Name: buildName(*a), Upgrades: a.Upgrades, Price: a.Price, Minutes: a.Minutes, Welds: a.Welds,
		GiveOut: bandOf(c.least), Carries: chanceOf(float64(count(c.holds)), n),
	}
	for _, name := range a.Upgrades {
		if u, err := s.catalogue.Upgrade(name); err == nil {
			b.Titles = append(b.Titles, u.Title)
		}
	}
	firsts := make([]float64, len(links))
	for _, l := range c.first {
		firsts[l] += 1 / float64(n)
	}
	for l := range links {
		band := bandOf(c.torque[l])
		if math.IsInf(band.Low, 1) && firsts[l] == 0 {
			continue
		}
		r := Rung{
			Name: links[l].name, Part: links[l].part, Kind: links[l].kind, Outside: links[l].outside,
			GiveOut: band, First: firsts[l], Carries: chanceOf(float64(count(c.safe[l])), n),
		}
		if links[l].kind != Wears {
			r.Flank = flanks[0]
			if c.coast[l] > 0.5 {
				r.Flank = flanks[1]
			}
		}
		b.Links = append(b.Links, r)
	}
	slices.SortStableFunc(b.Links, func(x, y Rung) int { return cmp.Compare(x.GiveOut.Median, y.GiveOut.Median) })
	b.Weak, b.RunnerUp = b.byFirst()
	return b
}

// byFirst returns the links that are most and second most often the first to go.
func (b Build) byFirst() (weak, runnerUp int) {
	order := make([]int, len(b.Links))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(x, y int) int { return cmp.Compare(b.Links[y].First, b.Links[x].First) })
	if len(order) < 2 {
		return 0, 0
	}
	return order[0], order[1]
}

func count(flags []bool) int {
	n := 0
	for _, f := range flags {
		if f {
			n++
		}
	}
	return n
}

// dominates says whether build a is no dearer than b and b's links are nowhere
// stronger beyond what drawing can tell.
func dominates(a, b column, priceA, priceB float64) bool {
	if priceA > priceB {
		return false
	}
	for l := range links {
		better := 0
		for i := range a.torque[l] {
			if b.torque[l][i] > a.torque[l][i]*1.001 {
				better++
			}
		}
		if better*200 > len(a.torque[l]) { // in one draw of two hundred
			return false
		}
	}
	return true
}
