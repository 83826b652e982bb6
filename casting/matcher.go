package casting

import "math"

// A Matcher holds a catalogue worked out for identification. It is made once
// and may be used by many at a time.
//
// What a casting may be (a hypothesis) has two parts. What it is: one of the
// known variants; a new variant that is the sister of a known one and differs
// from it here and there; or a stranger that is like nothing known. And
// whether it is as it was cast, or was modified before.
type Matcher struct {
	cat   *Catalogue
	prior []float64   // log chance of each hypothesis before any evidence
	known [][]lore    // what is known of each feature by variant, [feature][variant]
	metal [][]float64 // chance of each castable family by variant
	index map[string]int
}

// How new variants come about, assumed: a foundry changes a rib or a boss of a
// pattern more often than it starts afresh.
const (
	sisterShare = 0.8  // of new variants that are sisters of a known one
	sisterKeeps = 0.85 // of the features of its sister that such a one keeps
)

// lore is what is known of one feature of one variant.
type lore struct {
	share []float64 // of a seen feature: chance of each answer; nil where nothing is known
	mean  float64   // of a measured one, m
	sd    float64   // m, castings and usual instrument together; zero where nothing is known
	about float64   // 1 + 1/castings: the mean is only known so well
	dof   float64   // castings that the spread rests on
	logC  float64   // log of the constant of the t distribution
}

// NewMatcher works a catalogue out. The catalogue must have passed Check and
// must not be changed while the matcher is used.
func NewMatcher(c *Catalogue) *Matcher {
	m := &Matcher{cat: c, index: map[string]int{}}
	for k := range c.Features {
		m.index[c.Features[k].Name] = k
	}
	m.setPriors()
	m.known = make([][]lore, len(c.Features))
	for k := range c.Features {
		m.known[k] = make([]lore, len(c.Variants))
	}
	for v := range c.Variants {
		m.metal = append(m.metal, metalOf(&c.Variants[v]))
		for _, t := range c.traits(&c.Variants[v]) {
			if k, found := m.index[t.Feature]; found {
				m.known[k][v] = t.lore(&c.Features[k])
			}
		}
	}
	return m
}

// traits are what a variant shows, with what it has from the casting that it
// is the mirror image of.
func (c *Catalogue) traits(v *Variant) Traits {
	all := append(Traits(nil), v.Shows...)
	base := c.variant(v.MirrorOf)
	if v.MirrorOf == "" || base < 0 {
		return all
	}
	for _, t := range c.Variants[base].Shows {
		if _, own := v.trait(t.Feature); own {
			continue
		}
		if k := c.feature(t.Feature); k >= 0 {
			counts := make([]Count, len(t.Counts))
			for i, n := range t.Counts {
				counts[i] = Count{c.Features[k].mirrored(n.Answer), n.Castings}
			}
			t.Counts = counts
		}
		all = append(all, t)
	}
	return all
}

// lore works one trait out. The shares of answers are Dirichlet means: to what
// was counted comes one casting spread over all answers. A size is Student's t:
// the predictive distribution of a normal whose mean and spread rest on so
// many castings.
//
// Source: Gelman et al., Bayesian Data Analysis, 3rd ed., 3.4 and 3.2 (from memory).
func (t *Trait) lore(f *Feature) lore {
	if f.Measured() {
		s := t.Size
		half := s.SpreadFrom / 2
		top, _ := math.Lgamma(half + 0.5)
		bottom, _ := math.Lgamma(half)
		return lore{
			mean: s.Mean, sd: s.SD, about: 1 + 1/s.Castings, dof: s.SpreadFrom,
			logC: top - bottom - 0.5*math.Log(s.SpreadFrom*math.Pi),
		}
	}
	share := make([]float64, len(f.Answers))
	ordinary, total := f.ordinary(), 1.0
	for i, a := range f.Answers {
		if !f.sign(a) {
			share[i] = 1 / ordinary
		}
		for _, n := range t.Counts {
			if n.Answer == a {
				share[i] += n.Castings
				total += n.Castings
			}
		}
	}
	for i := range share {
		share[i] /= total
	}
	return lore{share: share}
}

// ordinary is how many answers are not the sign of a repair.
func (f *Feature) ordinary() float64 {
	n := len(f.Answers)
	if f.Repair != nil {
		n -= len(f.Repair.Signs)
	}
	return float64(n)
}

// Where each hypothesis stands in a list: every variant as cast and modified,
// every sister likewise, the stranger likewise.
func (m *Matcher) variants() int         { return len(m.cat.Variants) }
func (m *Matcher) hypotheses() int       { return 4*m.variants() + 2 }
func (m *Matcher) knownAt(v, s int) int  { return 2*v + s }
func (m *Matcher) sisterAt(v, s int) int { return 2*m.variants() + 2*v + s }
func (m *Matcher) strangerAt(s int) int  { return 4*m.variants() + s }
func (m *Matcher) identityOf(h int) int  { return min(h/2, m.variants()) } // the last is none of these
func (m *Matcher) classOf(h int) int     { return 2*m.identityOf(h) + h%2 }
func (m *Matcher) classes() int          { return 2*m.variants() + 2 }
func (m *Matcher) nameOf(id int) string {
	if id == m.variants() {
		return NoneOfTheseName
	}
	return m.cat.Variants[id].Name
}

// NoneOfTheseName is the name of the class of castings that are no known variant.
const NoneOfTheseName = "none of these"

// setPriors counts what was seen before: Dirichlet means with half a casting
// for a variant that was never confirmed.
func (m *Matcher) setPriors() {
	c := m.cat
	m.prior = make([]float64, m.hypotheses())
	fresh, altered := c.chanceNew(), c.chanceModified()
	total := 0.0
	for v := range c.Variants {
		total += c.Variants[v].Seen + 0.5
	}
	state := [2]float64{1 - altered, altered}
	for s, chance := range state {
		for v := range c.Variants {
			share := (c.Variants[v].Seen + 0.5) / total
			m.prior[m.knownAt(v, s)] = math.Log((1 - fresh) * share * chance)
			m.prior[m.sisterAt(v, s)] = math.Log(fresh * sisterShare * share * chance)
		}
		m.prior[m.strangerAt(s)] = math.Log(fresh * (1 - sisterShare) * chance)
	}
}

// metalOf is the chance of each castable family in castings of a variant. What
// the record says holds for most: replacements were cast in other metal.
func metalOf(v *Variant) []float64 {
	general := generalMetals()
	stated, known := v.family()
	if !known {
		return general
	}
	chance := make([]float64, len(castable))
	for i, f := range castable {
		chance[i] = (1 - metalHolds) * general[i]
		if f == stated {
			chance[i] += metalHolds
		}
	}
	return chance
}

// metalHolds is the share of a variant's castings that are of the metal in its
// record. Assumed.
const metalHolds = 0.93
