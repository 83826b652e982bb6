package shop

import (
	"cmp"
	"context"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"sync"
	"time"

	"axlewright/calc/survival"
	"axlewright/quantity"
)

// An Outcome is how a unit has done since it was handed over.
type Outcome struct {
	Out  string   `json:"out"`            // day of the handover
	Back string   `json:"back,omitempty"` // day on which it came back broken
	Seen []string `json:"seen,omitempty"` // what was seen then, in the words of the failure guide

	// Holds is the chance, by the last advice before the handover, that the build
	// which it recommended holds the peak of the enquiry. Nil without advice.
	Holds *float64 `json:"holds,omitempty"`
}

// outcome is nil before the unit was handed over.
func (j *Job) outcome() *Outcome {
	o := &Outcome{Out: j.Value("handover", "day").Day}
	for _, e := range j.History(slotState) {
		if o.Out == "" && State(e.Value.Word()) == StateOut {
			o.Out = e.At.Format(time.DateOnly)
		}
	}
	if o.Out == "" {
		return nil
	}
	for _, e := range j.Kept(EntryAdvice) {
		if e.Value.SI != nil && e.At.Format(time.DateOnly) <= o.Out {
			o.Holds = e.Value.SI
		}
	}
	if seen := j.Standing(Slot{"return", "evidence", ""}); seen != nil {
		o.Seen = seen.Value.Words
		o.Back = cmp.Or(j.Value("return", "day").Day, seen.At.Format(time.DateOnly))
	}
	return o
}

// A Unit is one unit that went out: how long it has been watched, and whether it
// came back broken then.
type Unit struct {
	Years float64
	Broke bool
	Seen  []string
	Holds *float64
}

// unitOf counts from the handover to the day on which the unit came back
// broken, else to the given day.
func unitOf(o Outcome, today time.Time) (Unit, bool) {
	u := Unit{Broke: o.Back != "", Seen: o.Seen, Holds: o.Holds}
	out, err := time.Parse(time.DateOnly, o.Out)
	end := today
	if err == nil && u.Broke {
		end, err = time.Parse(time.DateOnly, o.Back)
	}
	// A unit that broke on its first day has been out for half of one.
	u.Years = max(end.Sub(out).Hours()/24, 0.5) / 365.25
	return u, err == nil && !out.After(end)
}

// A BuildRecord is how the units of one build have done.
type BuildRecord struct {
	Build string // the works, "as standard" where there are none
	Units int
	Years float64 // of all units together
	Broke int
	Seen  []SeenCount // what was seen on them, the most frequent first

	After   []SoundAfter            // share still sound; empty where none broke
	Weibull *survival.WeibullResult // in years; nil below enoughForShape
	Shape   string                  // what the shape says, in words

	Asked    int     // units for which the sums had been asked
	Broken   int     // of those
	Expected float64 // of those, by the sums
	Factor   survival.GammaRateResult
	Says     string // what can be said of the sums
}

// A SeenCount is one line of the failure guide and how often it was seen.
type SeenCount struct {
	Seen  string
	Times int
}

// A SoundAfter is the share of units still sound after so many years.
type SoundAfter struct {
	Years, Share, StdError float64
}

const (
	enoughForShape = 5 // broken units: fewer tell no shape
	enoughToSay    = 3 // broken and expected together: fewer tell nothing of the sums
)

// Returns tells for each build how its units have done and whether that agrees
// with what the sums had said. It covers this shop's own units that were handed
// over. What broke and never came back counts as sound: nobody told us.
func (s *Shop) Returns(ctx context.Context) ([]BuildRecord, error) {
	lines, err := s.linesOut(ctx)
	if err != nil {
		return nil, err
	}
	units := map[string][]Unit{}
	for _, l := range lines {
		if u, ok := unitOf(*l.Outcome, s.now()); ok {
			build := cmp.Or(strings.Join(wordsOf(l.Works), ", "), "as standard")
			units[build] = append(units[build], u)
		}
	}
	var all []BuildRecord
	for build, of := range units {
		r, err := RecordOf(build, of)
		if err != nil {
			return nil, err
		}
		all = append(all, r)
	}
	slices.SortFunc(all, func(a, b BuildRecord) int { return cmp.Or(b.Units-a.Units, cmp.Compare(a.Build, b.Build)) })
	return all, nil
}

// readOutcomes are the lines of the units that went out, as they were read last.
type readOutcomes struct {
	sync.Mutex
	lines  map[ID]Line
	newest time.Time // change that was seen
}

// clocksApart is how far the clocks of programs that share a store may differ.
const clocksApart = 24 * time.Hour

// linesOut returns the lines of this shop's own units that went out. After the
// first time it reads only what has changed since.
func (s *Shop) linesOut(ctx context.Context) ([]Line, error) {
	s.out.Lock()
	defer s.out.Unlock()
	changed := map[ID]Line{}
	newest := s.out.newest
	err := s.store.View(ctx, func(tx Tx) error {
		clear(changed)
		newest = s.out.newest
		q := JobQuery{Limit: 500}
		for {
			page, err := tx.FindJobs(q)
			if err != nil {
				return err
			}
			for _, l := range page.Lines {
				if l.Changed.Before(s.out.newest.Add(-clocksApart)) {
					return nil
				}
				if l.Changed.After(newest) {
					newest = l.Changed
				}
				changed[l.Job] = l
			}
			if q.After = page.Next; q.After == nil {
				return nil
			}
		}
	})
	if err != nil {
		return nil, err
	}
	if s.out.lines == nil {
		s.out.lines = map[ID]Line{}
	}
	s.out.newest = newest
	for id, l := range changed {
		if l.Outcome != nil && l.Origin == s.id {
			s.out.lines[id] = l
		} else {
			delete(s.out.lines, id)
		}
	}
	return slices.Collect(maps.Values(s.out.lines)), nil
}

// RecordOf works out how the units of one build have done.
func RecordOf(build string, units []Unit) (BuildRecord, error) {
	r := BuildRecord{Build: build, Units: len(units)}
	var lives []survival.Observation
	seen := map[string]int{}
	for _, u := range units {
		r.Years += u.Years
		lives = append(lives, survival.Observation{Time: u.Years, Failed: u.Broke})
		if u.Broke {
			r.Broke++
			for _, w := range u.Seen {
				seen[w]++
			}
		}
		if u.Holds == nil {
			continue
		}
		r.Asked++
		r.Expected += 1 - *u.Holds
		if u.Broke {
			r.Broken++
		}
	}
	for w, n := range seen {
		r.Seen = append(r.Seen, SeenCount{w, n})
	}
	slices.SortFunc(r.Seen, func(a, b SeenCount) int { return cmp.Or(b.Times-a.Times, cmp.Compare(a.Seen, b.Seen)) })
	if err := r.lives(lives); err != nil {
		return r, Fault(Internal, "The lives of the units cannot be worked out.").Because(err)
	}
	// The thought before: the sums are right, and worth one case expected.
	var err error
	r.Factor, err = survival.GammaRate(survival.GammaRateParams{PriorCases: 1, PriorExposure: 1, Cases: r.Broken, Exposure: r.Expected, Confidence: 0.90})
	if err != nil {
		return r, Fault(Internal, "What came back cannot be set beside the sums.").Because(err)
	}
	r.Says = r.says()
	return r, nil
}

// lives adds what time says.
func (r *BuildRecord) lives(of []survival.Observation) error {
	if r.Broke == 0 {
		return nil
	}
	km, err := survival.KaplanMeier(of)
	if err != nil {
		return err
	}
	longest := 0.0
	for _, o := range of {
		longest = max(longest, o.Time)
	}
	for _, years := range []float64{1, 2, 5, 10} {
		if years > longest {
			break // nobody has been out so long
		}
		at := SoundAfter{Years: years, Share: 1}
		for i, t := range km.Times {
			if t <= years {
				at.Share, at.StdError = km.Survival[i], km.StdErrors[i]
			}
		}
		r.After = append(r.After, at)
	}
	if r.Broke < enoughForShape {
		return nil
	}
	w, err := survival.WeibullFit(of)
	if err != nil {
		return nil // all of one age: they tell no shape
	}
	r.Weibull = &w
	const ninety = 1.645 // of the normal distribution
	switch doubt := ninety * math.Sqrt(w.ShapeVariance); {
	case w.Shape+doubt < 1:
		r.Shape = "They break early: look at the work."
	case w.Shape-doubt > 1:
		r.Shape = "They wear out."
	default:
		r.Shape = "Early, by chance or by wear: it cannot be told yet."
	}
	return nil
}

// says is what can be said of the sums, and no more.
func (r *BuildRecord) says() string {
	f := r.Factor
	times := fmt.Sprintf("%s times what they expect, %s to %s", figure(f.Median), figure(f.Low), figure(f.High))
	switch {
	case r.Asked == 0:
		return "The sums were asked for none of them."
	case float64(r.Broken)+r.Expected < enoughToSay:
		return "Too few to say whether the sums are right."
	case f.Low > 1:
		return "More come back than the sums expect: " + times + "."
	case f.High < 1:
		return "Fewer come back than the sums expect: " + times + "."
	}
	return "What came back does not contradict the sums: " + times + "."
}

func figure(x float64) string { return quantity.FormatDigits(x, quantity.Number, 2) }
