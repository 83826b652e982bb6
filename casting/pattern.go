package casting

import (
	"fmt"
	"math"
	"strings"

	"axlewright/quantity"
)

// A PatternPlan is the fewest patterns of a kit that serve the castings
// measured so far, and what each further pattern buys. A pattern is the kit
// drawn for another reading at each station; it serves a casting if at every
// station no more than the allowed trim must come off and no gap is wider than
// is welded across.
type PatternPlan struct {
	Castings int           `json:"castings"` // measured at every station
	LeftOut  []string      `json:"left_out,omitempty"`
	Wanted   float64       `json:"wanted"` // share to be served
	Steps    []PatternStep `json:"steps"`  // one pattern, two, and so on
	Patterns []Pattern     `json:"patterns"`
	Enough   bool          `json:"enough"` // the patterns serve the wanted share
	Proved   bool          `json:"proved"` // fewer cannot, whatever they are drawn for
	Unseen   float64       `json:"unseen"` // share served of castings that the patterns were not drawn from
	Tried    int           `json:"tried"`  // castings that were left out in turn for that; 0 is none
	Sentence string        `json:"sentence"`
}

// A PatternStep is what a number of patterns serves.
type PatternStep struct {
	Patterns int     `json:"patterns"`
	Served   int     `json:"served"`
	Share    float64 `json:"share"`
	Buys     int     `json:"buys"`   // castings more than with one pattern less
	Most     int     `json:"most"`   // no such number of patterns can serve more
	Proved   bool    `json:"proved"` // Served is the most
}

// A Pattern is one drawing of the kit.
type Pattern struct {
	Name     string           `json:"name"`
	Serves   []string         `json:"serves"`
	Stations []PatternStation `json:"stations"`
	MeanTrim float64          `json:"mean_trim"` // m, over its castings and stations
}

// A PatternStation is what a pattern is drawn for at a station: anything
// between Low and High serves its castings, DrawnFor is the middle.
type PatternStation struct {
	Station  int     `json:"station"`
	Name     string  `json:"name"`
	DrawnFor float64 `json:"drawn_for"` // m
	Low      float64 `json:"low"`       // m
	High     float64 `json:"high"`      // m
	Shift    float64 `json:"shift"`     // m, from the kit as drawn
}

// Limits of the exact search. Beyond them the answer is still a good one, and
// a bound says how much better any other could be.
const (
	mostExact    = 120 // castings of which every largest set is listed
	mostCliques  = 3000
	mostWords    = 20_000_000 // of sets that one search may compare
	mostPatterns = 8
	mostTried    = 60 // castings left out in turn
)

// span is what a pattern may be drawn for at a station to serve a casting.
func (g *Gauging) span(s *Station, reading float64) (low, high float64) {
	// with clearance c as drawn, a drawing for a reading larger by d has c − d (gap) or c + d (trim)
	c := s.clearance(reading)
	if s.More == MoreTrim {
		return s.DrawnFor.Value - g.Kit.Trim.Value - c, s.DrawnFor.Value + g.Kit.Gap.Value - c
	}
	return s.DrawnFor.Value + c - g.Kit.Gap.Value, s.DrawnFor.Value + c + g.Kit.Trim.Value
}

// patterns works out the plan for the castings that were measured everywhere.
func (g *Gauging) patterns() PatternPlan {
	plan := PatternPlan{Wanted: g.Kit.Wanted}
	if plan.Wanted == 0 {
		plan.Wanted = usualWanted
	}
	var names []string
	var readings [][]float64
	for _, m := range append(append([]Measured(nil), g.History...), g.New...) {
		row := make([]float64, len(g.Stations))
		whole := true
		for i := range g.Stations {
			x, read := m.Readings.at(g.Stations[i].Number)
			row[i], whole = x, whole && read
		}
		if !whole {
			plan.LeftOut = append(plan.LeftOut, m.Casting)
			continue
		}
		names, readings = append(names, m.Casting), append(readings, row)
	}
	plan.Castings = len(names)
	if len(names) == 0 {
		plan.Sentence = "No casting has been measured at every station yet."
		return plan
	}
	sets, complete := g.candidates(readings)
	need := int(math.Ceil(plan.Wanted*float64(len(names)) - 1e-9))
	var chosen cover
	for k := 1; k <= mostPatterns; k++ {
		c := g.bestPatterns(sets, complete, readings, k)
		step := PatternStep{Patterns: k, Served: c.count, Share: float64(c.count) / float64(len(names)), Buys: c.count, Most: c.most, Proved: c.proved}
		if k > 1 {
			step.Buys -= plan.Steps[k-2].Served
		}
		if step.Buys == 0 {
			break
		}
		plan.Steps = append(plan.Steps, step)
		if !plan.Enough {
			chosen = c
			plan.Enough = c.count >= need
			plan.Proved = plan.Enough && (k == 1 || plan.Steps[k-2].Most < need)
		}
		if c.count == len(names) {
			break
		}
	}
	plan.Patterns = g.draw(sets, chosen, names, readings)
	g.tryUnseen(&plan, readings, len(plan.Patterns))
	plan.Sentence = plan.sentence()
	return plan
}

// reach is how far two castings may differ at a station and still be served by
// one pattern; a nanometre is lost in rounding.
func (g *Gauging) reach() float64 { return g.Kit.Gap.Value + g.Kit.Trim.Value + 1e-9 }

// bestPatterns is bestCover with the bound that each station by itself sets.
func (g *Gauging) bestPatterns(sets []set, complete bool, readings [][]float64, k int) cover {
	c := bestCover(sets, len(readings), k, searchSteps(sets, mostWords))
	if c.proved && complete {
		return c
	}
	if !complete {
		c.most = len(readings)
	}
	for s := range g.Stations {
		column := make([]float64, len(readings))
		for i := range readings {
			column[i] = readings[i][s]
		}
		c.most = min(c.most, mostAlong(column, g.reach(), k))
	}
	c.proved = c.most == c.count
	return c
}

// tryUnseen leaves out each casting in turn, draws as many patterns from the
// others, and counts how often they serve the one left out: what may be
// hoped for of castings to come.
func (g *Gauging) tryUnseen(plan *PatternPlan, readings [][]float64, k int) {
	n := len(readings)
	if n < fewestForForecast || n > mostTried || k == 0 {
		return
	}
	served := 0
	for out := range n {
		rest := append(append([][]float64(nil), readings[:out]...), readings[out+1:]...)
		sets, _ := g.candidates(rest)
		c := bestCover(sets, len(rest), k, searchSteps(sets, mostWords/20))
		for _, p := range g.drawings(sets, c, rest) {
			if _, ok := g.serves(p.Stations, readings[out]); ok {
				served++
				break
			}
		}
	}
	plan.Tried, plan.Unseen = n, float64(served)/float64(n)
}

func (p *PatternPlan) sentence() string {
	var b strings.Builder
	if p.Enough {
		last := p.Steps[len(p.Patterns)-1]
		fmt.Fprintf(&b, "%d of %d castings (%s; wanted %s): %d pattern", last.Served, p.Castings, quantity.Percent(last.Share), quantity.Percent(p.Wanted), len(p.Patterns))
		if len(p.Patterns) != 1 {
			b.WriteString("s")
		}
		if p.Proved {
			b.WriteString("; fewer cannot do it, whatever they are drawn for")
		} else {
			b.WriteString("; whether fewer could is not proved")
		}
	} else {
		fmt.Fprintf(&b, "No %d patterns that were found serve %s of %d castings", len(p.Steps), quantity.Percent(p.Wanted), p.Castings)
	}
	if p.Tried > 0 {
		fmt.Fprintf(&b, ". Of castings they were not drawn from, such patterns serve about %s", quantity.Percent(p.Unseen))
	}
	return b.String() + "."
}
