package casting

import "math"

// Readings are told apart to half of the narrowest spread, in at most so many
// steps over the span.
const (
	stepsPerSpread = 2
	mostSteps      = 20000
	reach          = 4     // scales of a distribution that are worked out step by step
	mostWork       = 60000 // steps of all variants together; more are made coarser
)

// expectSize is expect for a measured feature. The span is cut into steps: a
// variant's own readings fill those about its mean, misread ones all alike, so
// that only the steps about the means need be worked out one by one.
func (w *bench) expectSize(k int) (bits, right float64) {
	f := &w.cat.Features[k]
	var alive []int
	narrow, wide := math.Inf(1), 0.0
	for v := range w.variants() {
		if w.weightOf(v) >= deadBelow {
			alive = append(alive, v)
			if l := &w.known[k][v]; l.sd > 0 {
				narrow = math.Min(narrow, l.scale(f, 0))
				wide += 2 * reach * l.scale(f, 0)
			}
		}
	}
	if math.IsInf(narrow, 1) {
		return 0, 0
	}
	step := math.Max(narrow/stepsPerSpread, wide/mostWork)
	n := int(math.Min(math.Ceil(f.width()/step), mostSteps))
	s := sizeSteps{
		n: n, step: f.width() / float64(n), low: f.Span.Low, one: 1 / float64(n),
		extra: make([]float64, n), noneExtra: [2][]float64{make([]float64, n), make([]float64, n)}, best: make([]float64, n),
	}
	for _, v := range alive {
		s.add(w, f, k, v)
	}
	for state := range 2 {
		stranger := w.p[w.strangerAt(state)]
		s.noneFlat[state] += stranger * s.one
		s.noneClass[state] += stranger
	}
	return s.sum()
}

func (w *bench) weightOf(v int) float64 {
	return w.p[w.knownAt(v, 0)] + w.p[w.knownAt(v, 1)] + w.p[w.sisterAt(v, 0)] + w.p[w.sisterAt(v, 1)]
}

// sizeSteps adds up joint chances of what the casting is and where in the span
// its reading falls.
type sizeSteps struct {
	n         int
	step, low float64
	one       float64 // chance of each step for a reading that says nothing

	extra     []float64    // beyond what is the same in every step
	flat      float64      // what is the same in every step, of known variants
	noneExtra [2][]float64 // the same for none of these, by state
	noneFlat  [2]float64
	noneClass [2]float64
	best      []float64 // chance of the likeliest known variant that reaches the step
	most      float64   // of the likeliest that does not
	joint     float64   // sum of j·log j over the known variants
	classes   float64   // sum of p·log p over what the casting may be

	mass []float64
}

// own is the share of readings that are the variant's own, as cast and modified.
func own(f *Feature, l *lore) [2]float64 {
	if l.sd == 0 {
		return [2]float64{}
	}
	a := [2]float64{f.Trust(), f.Trust()}
	if f.Repair != nil && f.Repair.Altered {
		a[1] /= 2
	}
	return a
}

func (s *sizeSteps) add(w *bench, f *Feature, k, v int) {
	l := &w.known[k][v]
	first, covered := s.spread(l, f)
	var peak, flat, sister [2]float64 // of the two states: what rises with the mass, and what does not
	for state, a := range own(f, l) {
		a *= covered // what lies further out counts as anywhere
		p, q := w.p[w.knownAt(v, state)], w.p[w.sisterAt(v, state)]
		peak[state], flat[state], sister[state] = p*a, p*(1-a)*s.one, q*sisterKeeps*a
		s.flat += flat[state]
		s.noneFlat[state] += q * (1 - sisterKeeps*a) * s.one
		s.noneClass[state] += q
		s.classes += xlogx(p)
		s.joint += float64(s.n-len(s.mass)) * xlogx(flat[state])
	}
	s.most = math.Max(s.most, flat[0]+flat[1])
	for i, g := range s.mass {
		b := first + i
		j0, j1 := flat[0]+peak[0]*g, flat[1]+peak[1]*g
		s.joint += xlogx(j0) + xlogx(j1)
		s.best[b] = math.Max(s.best[b], j0+j1)
		s.extra[b] += (peak[0] + peak[1]) * g
		s.noneExtra[0][b] += sister[0] * g
		s.noneExtra[1][b] += sister[1] * g
	}
}

// spread fills mass with the chances of the steps about a variant's mean, which
// add up to one, and returns the first step and the chance that they cover.
func (s *sizeSteps) spread(l *lore, f *Feature) (first int, covered float64) {
	s.mass = s.mass[:0]
	if l.sd == 0 {
		return 0, 0
	}
	scale := l.scale(f, 0)
	first = max(int((l.mean-reach*scale-s.low)/s.step), 0)
	last := min(int((l.mean+reach*scale-s.low)/s.step), s.n-1)
	for b := first; b <= last; b++ {
		g := l.density(s.low+(float64(b)+0.5)*s.step, scale) * s.step
		s.mass = append(s.mass, g)
		covered += g
	}
	for i := range s.mass {
		s.mass[i] /= covered
	}
	return first, math.Min(covered, 1)
}

// sum closes the sums: bits of information and the chance of being right.
func (s *sizeSteps) sum() (bits, right float64) {
	readings := 0.0
	for b := range s.n {
		none := [2]float64{s.noneFlat[0] + s.noneExtra[0][b], s.noneFlat[1] + s.noneExtra[1][b]}
		s.joint += xlogx(none[0]) + xlogx(none[1])
		readings += xlogx(s.flat + s.extra[b] + none[0] + none[1])
		right += max(s.best[b], s.most, none[0]+none[1])
	}
	s.classes += xlogx(s.noneClass[0]) + xlogx(s.noneClass[1])
	return math.Max(s.joint-readings-s.classes, 0) / math.Ln2, right
}
