package assess

import (
	"cmp"
	"math"
	"slices"
)

// A linkColumn is one variant of one link on the peak scale.
type linkColumn struct {
	torque  []float64 // N·m, by draw
	safe    []bool    // by draw: holds the peak
	band    Band
	carries Chance
	coast   float64   // share of draws in which the coast flank decides
	life    []float64 // km, by draw: of a link that wears under the duty as it is
}

// A column is one build on the peak scale. What breaks or moves at once and
// what wears over the distance are kept apart: they answer two questions.
type column struct {
	links []*linkColumn // by link; builds share them
	least []float64     // N·m, by draw: of the links that break or move
	first []int         // by draw: the one of them that goes first
	holds []bool        // by draw: all of them hold the peak
	life  []float64     // km, by draw: of the link that wears out first
	worn  []int         // by draw: that link
}

// linkColumns puts every variant of every link on the peak scale.
func (s *study) linkColumns() [][]*linkColumn {
	all := make([][]*linkColumn, len(links))
	for l := range links {
		for v := range s.kinds[l].reps {
			all[l] = append(all[l], s.linkColumn(links[l].kind, s.giveOut[l][v]))
		}
	}
	return all
}

func (s *study) linkColumn(kind Kind, outcomes []outcome) *linkColumn {
	c := &linkColumn{torque: make([]float64, len(outcomes)), safe: make([]bool, len(outcomes))}
	if kind == Wears {
		c.life = make([]float64, len(outcomes))
		for i, o := range outcomes {
			c.life[i] = o[1] / metresAKilometre
		}
	}
	onCoast, safe := 0, 0
	for i, o := range outcomes {
		t, flank := o.onPeakScale(kind, s.peaks[i])
		c.torque[i], c.safe[i] = t, t >= s.peaks[i].torque
		if c.safe[i] {
			safe++
		}
		if flank == 1 {
			onCoast++
		}
	}
	c.band = bandOf(c.torque)
	c.carries = chanceOf(float64(safe), len(outcomes))
	c.coast = float64(onCoast) / float64(len(outcomes))
	return c
}

// column stacks a build's links.
func (s *study) column(build int) column {
	n := s.draws.n
	c := column{
		least: make([]float64, n), first: make([]int, n), holds: make([]bool, n),
		life: make([]float64, n), worn: make([]int, n),
	}
	for i := range n {
		c.least[i], c.holds[i], c.life[i] = math.Inf(1), true, math.Inf(1)
	}
	for l := range links {
		one := s.columns[l][s.kinds[l].of[build]]
		c.links = append(c.links, one)
		if links[l].kind == Wears {
			for i, km := range one.life {
				if km < c.life[i] {
					c.life[i], c.worn[i] = km, l
				}
			}
			continue
		}
		for i, t := range one.torque {
			c.holds[i] = c.holds[i] && one.safe[i]
			if t < c.least[i] {
				c.least[i], c.first[i] = t, l
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
		Name: buildName(*a), Upgrades: a.Upgrades, Titles: s.titles(build), Price: a.Price, Minutes: a.Minutes, Welds: a.Welds,
		GiveOut: bandOf(c.least), Carries: chanceOf(float64(count(c.holds)), n), Life: bandOf(c.life),
	}
	lasts := 0
	for _, km := range c.life {
		if km >= s.duty.Life.Value {
			lasts++
		}
	}
	b.Lasts = chanceOf(float64(lasts), n)
	firsts := make([]float64, len(links))
	for i := range n {
		firsts[c.first[i]] += 1 / float64(n)
		if !math.IsInf(c.life[i], 1) {
			firsts[c.worn[i]] += 1 / float64(n)
		}
	}
	for l, one := range c.links {
		if math.IsInf(one.band.Low, 1) && firsts[l] == 0 {
			continue
		}
		r := Rung{
			Name: links[l].name, Part: links[l].part, Kind: links[l].kind, Outside: links[l].outside,
			GiveOut: one.band, First: firsts[l], Carries: one.carries,
		}
		if links[l].kind == Wears {
			life := bandOf(one.life)
			r.Life = &life
		}
		if links[l].kind != Wears {
			r.Flank = flanks[0]
			if one.coast > 0.5 {
				r.Flank = flanks[1]
			}
		}
		b.Links = append(b.Links, r)
	}
	slices.SortStableFunc(b.Links, func(x, y Rung) int { return cmp.Compare(x.GiveOut.Median, y.GiveOut.Median) })
	b.Weak, b.RunnerUp, b.WearsFirst = b.byFirst()
	return b
}

// titles names the upgrades of a build for people.
func (s *study) titles(build int) []string {
	var titles []string
	for _, name := range s.builds[build].Upgrades {
		if u, err := s.catalogue.Upgrade(name); err == nil {
			titles = append(titles, u.Title)
		}
	}
	return titles
}

// label names a build for people.
func (s *study) label(build int) string { return Build{Titles: s.titles(build)}.Label() }

// byFirst returns the links that are most and second most often the first to
// break or move, and the one that is most often the first to wear out.
func (b Build) byFirst() (weak, runnerUp, wearsFirst int) {
	weak, runnerUp, wearsFirst = -1, -1, -1
	for i, r := range b.Links {
		switch {
		case r.Kind == Wears:
			if wearsFirst < 0 || r.First > b.Links[wearsFirst].First {
				wearsFirst = i
			}
		case weak < 0 || r.First > b.Links[weak].First:
			weak, runnerUp = i, weak
		case runnerUp < 0 || r.First > b.Links[runnerUp].First:
			runnerUp = i
		}
	}
	return weak, runnerUp, wearsFirst
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

// A dominance finds builds that are nowhere stronger than a cheaper one.
type dominance struct {
	stronger [][][]bool // by link, variant a, variant b: b is stronger than a in some draws
}

// newDominance compares the variants of each link once; builds are then
// compared by looking up.
func newDominance(columns [][]*linkColumn) dominance {
	d := dominance{make([][][]bool, len(columns))}
	for l, variants := range columns {
		d.stronger[l] = make([][]bool, len(variants))
		for a := range variants {
			d.stronger[l][a] = make([]bool, len(variants))
			for b := range variants {
				d.stronger[l][a][b] = a != b && stronger(variants[b].torque, variants[a].torque)
			}
		}
	}
	return d
}

// stronger says whether x is above y by more than a thousandth in more than
// one draw of two hundred.
func stronger(x, y []float64) bool {
	better := 0
	for i := range x {
		if x[i] > y[i]*1.001 {
			better++
		}
	}
	return better*200 > len(x)
}

// covers says whether build b has no link stronger than build a.
func (d dominance) covers(s *study, a, b int) bool {
	for l := range d.stronger {
		if d.stronger[l][s.kinds[l].of[a]][s.kinds[l].of[b]] {
			return false
		}
	}
	return true
}
