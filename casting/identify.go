package casting

import (
	"cmp"
	"math"
	"slices"

	"axlewright/axle"
)

// A bench is one casting's evidence worked out against the catalogue.
type bench struct {
	*Matcher
	items []Item      // those that say something
	like  [][]float64 // log chance of each item under every hypothesis; the metal tests come last
	logs  []float64   // log chance of every hypothesis, prior and evidence together
	p     []float64   // the same as chances that add up to one
	id    []float64   // chance of every variant, and last of none of these
}

// Identify tells what a casting is.
//
// Errors: axle.Findings for evidence that the catalogue does not know.
func (m *Matcher) Identify(b Bench) (Identification, error) {
	b.Evidence = slices.Clone(b.Evidence)
	if found := b.resolve(m.cat); len(found) > 0 {
		return Identification{}, found
	}
	if found := repeated(b.Evidence); len(found) > 0 {
		return Identification{}, found
	}
	tests := b.Metal.tests()
	w := m.weigh(b.Evidence, tests)
	id := Identification{Casting: b.Casting, Unseen: unseenOf(b.Evidence), Missing: m.missing(b.Evidence)}
	leader := argmax(w.id)
	id.Ranked = w.ranked()
	id.New = w.newVariant()
	id.Modified = w.modified()
	about := leader // whom the evidence is told for and against
	if like := m.cat.variant(id.New.Like); leader == m.variants() && like >= 0 {
		about = like
	}
	id.Evidence = w.evidence(about)
	if about < m.variants() {
		id.Contradictions = w.contradictions(about)
	}
	id.Warnings = w.warnings(leader)
	id.Metal = w.metalFinding(b.Metal, tests, leader)
	id.Questions = w.questions(b.Evidence)
	w.judge(&id, leader)
	id.Stops = append(id.Stops, id.Metal.Stops...)
	return id, nil
}

func repeated(e Evidence) axle.Findings {
	for i := range e {
		if slices.ContainsFunc(e[:i], func(o Item) bool { return o.Feature == e[i].Feature }) {
			return axle.Findings{{Line: e[i].Line, Field: "evidence." + e[i].Feature, Problem: "stands twice; write how often it was looked at instead"}}
		}
	}
	return nil
}

func unseenOf(e Evidence) []string {
	var names []string
	for _, item := range e {
		if item.Unseen {
			names = append(names, item.Feature)
		}
	}
	return names
}

// missing lists the features that nobody has looked at.
func (m *Matcher) missing(e Evidence) []string {
	var names []string
	for k := range m.cat.Features {
		if name := m.cat.Features[k].Name; !slices.ContainsFunc(e, func(i Item) bool { return i.Feature == name }) {
			names = append(names, name)
		}
	}
	return names
}

// weigh works out the chance of every hypothesis.
func (m *Matcher) weigh(e Evidence, tests []metalResult) *bench {
	w := &bench{Matcher: m, logs: slices.Clone(m.prior)}
	for i := range e {
		if e[i].Unseen {
			continue
		}
		out := make([]float64, m.hypotheses())
		m.likelihood(m.index[e[i].Feature], &e[i], out)
		w.items, w.like = append(w.items, e[i]), append(w.like, out)
	}
	if len(tests) > 0 {
		out := make([]float64, m.hypotheses())
		m.metalLikelihood(metalChances(tests), out)
		w.like = append(w.like, out)
	}
	for _, out := range w.like {
		for h, l := range out {
			w.logs[h] += l
		}
	}
	w.p = posterior(w.logs)
	w.id = m.identities(w.p)
	return w
}

// identities adds up the chances of hypotheses by variant; none of these is last.
func (m *Matcher) identities(p []float64) []float64 {
	id := make([]float64, m.variants()+1)
	for h, chance := range p {
		id[m.identityOf(h)] += chance
	}
	return id
}

// chanceOfModified is the chance that the casting was altered before.
func (w *bench) chanceOfModified() float64 {
	sum := 0.0
	for h, p := range w.p {
		if h%2 == 1 {
			sum += p
		}
	}
	return sum
}

func argmax(x []float64) int {
	best := 0
	for i := range x {
		if x[i] > x[best] {
			best = i
		}
	}
	return best
}

// A list of candidates shows everything with a chance of rankedFrom, but at
// least three and at most rankedMost.
const (
	rankedFrom = 0.005
	rankedMost = 8
)

func (w *bench) ranked() []Candidate {
	order := make([]int, len(w.id))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(w.id[b], w.id[a]) })
	var list []Candidate
	for n, i := range order {
		if n >= rankedMost || n >= 3 && w.id[i] < rankedFrom {
			break
		}
		c := Candidate{Variant: w.nameOf(i), Chance: w.id[i]}
		if i < w.variants() {
			v := &w.cat.Variants[i]
			c.Kit, c.Seen = v.Kit, v.Seen
			c.Metal, _ = v.family()
		}
		list = append(list, c)
	}
	return list
}

// newVariant says how likely a new variant is, what it would be the sister of,
// and where it would differ.
func (w *bench) newVariant() NewVariantSigns {
	n := NewVariantSigns{Chance: w.id[w.variants()]}
	best, most := -1, w.p[w.strangerAt(0)]+w.p[w.strangerAt(1)]
	for v := range w.variants() {
		if p := w.p[w.sisterAt(v, 0)] + w.p[w.sisterAt(v, 1)]; p > most {
			best, most = v, p
		}
	}
	if best < 0 {
		return n
	}
	n.Like = w.nameOf(best)
	for i, item := range w.items {
		keeps := sisterKeeps * math.Exp(w.like[i][w.knownAt(best, 0)])
		if all := math.Exp(w.like[i][w.sisterAt(best, 0)]); keeps < all/2 {
			n.Differs = append(n.Differs, item.Feature)
		}
	}
	return n
}

// modified says how likely an earlier repair is and what it demands.
func (w *bench) modified() ModifiedSigns {
	s := ModifiedSigns{Chance: w.chanceOfModified()}
	for _, item := range w.items {
		if f := &w.cat.Features[w.index[item.Feature]]; !f.Measured() && f.sign(item.Answer) {
			s.Signs = append(s.Signs, item.Feature+": "+item.Answer)
		}
	}
	if s.Chance < modifiedFrom {
		return s
	}
	s.Demands = append(s.Demands, "Dye penetrant over every old weld, sleeve and cap root before anything else.")
	for _, k := range w.boresToMeasure() {
		s.Demands = append(s.Demands, "Measure with the bore gauge: "+w.cat.Features[k].Name+".")
	}
	s.Demands = append(s.Demands,
		"Cracked into a bore or a cap root: reject. Bore out of size or line: quote for line-boring first.",
		"No standard kit: it is cut for castings as they were cast.")
	return s
}

// modifiedFrom is the chance from which a casting is treated as modified.
const modifiedFrom = 0.5

// boresToMeasure are the bores that a repair may have changed and that are not
// measured yet.
func (w *bench) boresToMeasure() []int {
	var list []int
	for k := range w.cat.Features {
		f := &w.cat.Features[k]
		done := slices.ContainsFunc(w.items, func(i Item) bool { return i.Feature == f.Name })
		if f.Sort == Bore && f.Measured() && !done {
			list = append(list, k)
		}
	}
	return list
}
