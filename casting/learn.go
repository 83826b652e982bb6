package casting

import (
	"fmt"
	"math"
	"slices"

	"axlewright/axle"
	"axlewright/quantity"
)

// A Confirmed casting is one of which it is known what it was: the kit sat, the
// laboratory agreed, the owner of the pattern said so.
type Confirmed struct {
	Bench
	Variant  string // empty where it was no variant of the catalogue
	Modified bool
}

// A Lesson is what one reading of a confirmed casting taught.
type Lesson struct {
	Casting  string  `json:"casting"`
	Variant  string  `json:"variant"`
	Feature  string  `json:"feature"`
	Weight   float64 `json:"weight"` // 0..1, chance that the reading was the casting's own
	Sentence string  `json:"sentence"`
}

// Learn returns the catalogue as it stands after more castings were confirmed.
// The old one is not changed. Shares of answers are counted on (Dirichlet),
// means and spreads of sizes taken further (normal-inverse-gamma), each reading
// with the chance that it was read right: a slip of the caliper moves nothing.
//
// Errors: axle.Findings for evidence that the catalogue does not know;
// *UnknownVariant.
// Source: Gelman et al., Bayesian Data Analysis, 3rd ed., 3.3 and 3.4 (from memory).
func (c *Catalogue) Learn(confirmed []Confirmed) (Catalogue, []Lesson, error) {
	next := c.clone()
	var lessons []Lesson
	confirmed = slices.Clone(confirmed)
	for i := range confirmed {
		confirmed[i].Evidence = slices.Clone(confirmed[i].Evidence)
		if found := confirmed[i].resolve(c); len(found) > 0 {
			return Catalogue{}, nil, found
		}
	}
	for _, one := range confirmed {
		if one.Modified {
			next.History.ModifiedFound++
		}
		if one.Variant == "" {
			next.History.NewFound++
			continue
		}
		at := next.variant(one.Variant)
		if at < 0 {
			_, err := c.Variant(one.Variant)
			return Catalogue{}, nil, err
		}
		next.Variants[at].Seen++
		for _, item := range one.Evidence {
			if _, known := next.Variants[at].trait(item.Feature); !known && teaches(next.featureOf(item), &item, one.Modified) {
				next.adopt(at, next.featureOf(item), confirmed)
			}
			if lesson, learnt := next.learn(at, &item, one.Modified); learnt {
				lesson.Casting = one.Casting
				lessons = append(lessons, lesson)
			}
		}
	}
	return next, lessons, nil
}

// clone is a copy that shares nothing that learning changes.
func (c *Catalogue) clone() Catalogue {
	next := *c
	next.Variants = slices.Clone(c.Variants)
	for i := range next.Variants {
		next.Variants[i].Shows = slices.Clone(next.Variants[i].Shows)
		for j := range next.Variants[i].Shows {
			next.Variants[i].Shows[j].Counts = slices.Clone(next.Variants[i].Shows[j].Counts)
		}
	}
	return next
}

// teaches says whether anything can be learnt from an item: not from hearsay,
// from what a repair may have changed, or from a tool much coarser than usual.
func teaches(f *Feature, item *Item, modified bool) bool {
	altered := modified && f.Repair != nil && f.Repair.Altered
	coarse := f.Measured() && item.Spread > 2*f.spread()
	return !item.Unseen && !item.Told && !altered && !coarse && !f.sign(item.Answer)
}

// learn takes one reading into a variant.
func (c *Catalogue) learn(at int, item *Item, modified bool) (Lesson, bool) {
	f := c.featureOf(*item)
	if !teaches(f, item, modified) {
		return Lesson{}, false
	}
	v := &c.Variants[at]
	t, _ := v.trait(f.Name)
	l := t.lore(f)
	r := item.trust(f)
	shown := r * l.shows(f, f.answer(item.Answer), item.Value, item.Spread)
	weight := shown / (shown + (1-r)*f.flat())
	if f.Measured() {
		if t.Size.Castings < tooFewForSlips {
			weight = 1
		}
		t.Size = t.Size.learn(item.Value, weight)
	} else {
		t.count(item.Answer, weight)
	}
	lesson := Lesson{Variant: v.Name, Feature: f.Name, Weight: weight}
	lesson.Sentence = lessonSentence(v, t, f, item, weight)
	return lesson, true
}

func (c *Catalogue) featureOf(item Item) *Feature { return &c.Features[c.feature(item.Feature)] }

// Of a size that nobody knew before, the first readings count in full: too
// little is known to call any of them a slip. The first guess of its mean, the
// middle of the readings at hand, is worth next to nothing.
const (
	tooFewForSlips = 3
	startWorth     = 1e-3
)

// adopt begins a trait that the variant did not have: a mirror casting takes
// over what its other hand shows, another starts from nothing.
func (c *Catalogue) adopt(at int, f *Feature, confirmed []Confirmed) {
	v := &c.Variants[at]
	started := Trait{Feature: f.Name}
	for _, t := range c.traits(v) {
		if t.Feature == f.Name {
			started = t
		}
	}
	if f.Measured() && started.Size.Castings == 0 {
		var readings []float64
		for _, one := range confirmed {
			for i := range one.Evidence {
				if item := &one.Evidence[i]; one.Variant == v.Name && item.Feature == f.Name && teaches(f, item, one.Modified) {
					readings = append(readings, item.Value)
				}
			}
		}
		slices.Sort(readings)
		started.Size = Size{
			Mean: readings[len(readings)/2], SD: c.typicalSpread(f), Instrument: f.spread(),
			Castings: startWorth, SpreadFrom: statedWorth, Origin: axle.Measured,
		}
		if len(readings) > tooFewForSlips {
			started.Size.Castings = tooFewForSlips // the middle of so many is no slip
		}
	}
	v.Shows = append(v.Shows, started)
}

// typicalSpread is the middle of what is known of the spread of a size, one
// standard deviation with instrument; a fortieth of the span where nothing is.
func (c *Catalogue) typicalSpread(f *Feature) float64 {
	var all []float64
	for i := range c.Variants {
		if t, known := c.Variants[i].trait(f.Name); known && t.Size.SD > 0 {
			all = append(all, t.Size.SD)
		}
	}
	if len(all) == 0 {
		return math.Max(f.width()/40, f.spread())
	}
	slices.Sort(all)
	return all[len(all)/2]
}

// learn is the conjugate update of a normal of unknown mean and spread by a
// reading that counts weight.
func (s Size) learn(x, weight float64) Size {
	sum := s.SD * s.SD * s.SpreadFrom
	sum += weight * s.Castings / (s.Castings + weight) * (x - s.Mean) * (x - s.Mean)
	s.Mean += weight / (s.Castings + weight) * (x - s.Mean)
	s.Castings += weight
	s.SpreadFrom += weight
	s.SD = math.Sqrt(sum / s.SpreadFrom)
	s.Text, s.Origin = "", axle.Measured
	return s
}

func (t *Trait) count(answer string, weight float64) {
	for i := range t.Counts {
		if t.Counts[i].Answer == answer {
			t.Counts[i].Castings += weight
			return
		}
	}
	t.Counts = append(t.Counts, Count{answer, weight})
}

func lessonSentence(v *Variant, t *Trait, f *Feature, item *Item, weight float64) string {
	switch {
	case weight < 0.5:
		return fmt.Sprintf("%s: %s does not look like %s; taken for a slip, it counts only %s.", f.Name, item.said(f), v.Name, quantity.Chance(weight))
	case f.Measured():
		return fmt.Sprintf("%s of %s is now %s, on %.0f castings.", f.Name, v.Name, quantity.FormatSpread(t.Size.Mean, 2*t.Size.SD, quantity.Length), t.Size.Castings)
	}
	return fmt.Sprintf("%s of %s: %s once more.", f.Name, v.Name, item.Answer)
}
