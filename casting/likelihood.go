package casting

import "math"

// flat is how an answer or reading is spread when it says nothing: over all
// answers alike, or over all the span.
func (f *Feature) flat() float64 {
	if f.Measured() {
		return 1 / f.width()
	}
	return 1 / float64(len(f.Answers))
}

// unknown is the chance of what a casting shows of which nothing is known:
// any answer that is not the sign of a repair.
func (f *Feature) unknown(answer int) float64 {
	switch {
	case f.Measured():
		return f.flat()
	case f.sign(f.Answers[answer]):
		return 0
	}
	return 1 / f.ordinary()
}

// shows is the chance (a density for sizes) that a casting of the variant, as
// cast, shows the answer or the value, read with a spread of its own.
func (l *lore) shows(f *Feature, answer int, value, spread float64) float64 {
	if f.Measured() {
		if l.sd == 0 {
			return f.flat()
		}
		return l.density(value, l.scale(f, spread))
	}
	if l.share == nil {
		return f.unknown(answer)
	}
	return l.share[answer]
}

// scale is that of the t distribution of the next reading: castings and
// instrument, the usual one replaced by the one that was used.
func (l *lore) scale(f *Feature, spread float64) float64 {
	usual := f.spread()
	if spread == 0 {
		spread = usual
	}
	castings := math.Max(l.sd*l.sd-usual*usual, 0)
	return math.Sqrt((castings + spread*spread) * l.about)
}

// density of Student's t with the variant's mean.
func (l *lore) density(value, scale float64) float64 {
	z := (value - l.mean) / scale
	return math.Exp(l.logC-0.5*(l.dof+1)*math.Log1p(z*z/l.dof)) / scale
}

// A chance of an item under one variant in four cases.
type chances struct{ cast, modified float64 }

// modify is what a repair makes of the chance of an answer: it may show a sign
// of itself, and may have changed the feature.
func (f *Feature) modify(chance, unknown float64, answer int) float64 {
	r := f.Repair
	if r == nil {
		return chance
	}
	if r.Altered {
		chance = (chance + unknown) / 2
	}
	if len(r.Signs) == 0 {
		return chance
	}
	sign := 0.0
	if f.sign(f.Answers[answer]) {
		sign = 1 / float64(len(r.Signs))
	}
	return r.Shown*sign + (1-r.Shown)*chance
}

// likelihood fills out with the log chance of an item under every hypothesis.
//
//	P(item | variant) = r·P(shown | variant) + (1 − r)·flat
//
// r is the trust in the item: with chance 1 − r it was misread or belongs to
// another casting, and then anything is as likely as anything else. A sister
// shows what its variant shows with chance sisterKeeps, else anything.
func (m *Matcher) likelihood(k int, item *Item, out []float64) {
	f := &m.cat.Features[k]
	answer := f.answer(item.Answer)
	r, flat, unknown := item.trust(f), f.flat(), f.unknown(answer)
	read := func(c chances) chances {
		return chances{r*c.cast + (1-r)*flat, r*c.modified + (1-r)*flat}
	}
	stranger := read(chances{unknown, f.modify(unknown, unknown, answer)})
	for v := range m.known[k] {
		shown := m.known[k][v].shows(f, answer, item.Value, item.Spread)
		known := read(chances{shown, f.modify(shown, unknown, answer)})
		out[m.knownAt(v, 0)] = math.Log(known.cast)
		out[m.knownAt(v, 1)] = math.Log(known.modified)
		out[m.sisterAt(v, 0)] = math.Log(sisterKeeps*known.cast + (1-sisterKeeps)*stranger.cast)
		out[m.sisterAt(v, 1)] = math.Log(sisterKeeps*known.modified + (1-sisterKeeps)*stranger.modified)
	}
	out[m.strangerAt(0)] = math.Log(stranger.cast)
	out[m.strangerAt(1)] = math.Log(stranger.modified)
}

// answer is the place of an answer in the feature's list; 0 for a size.
func (f *Feature) answer(text string) int {
	for i, a := range f.Answers {
		if a == text {
			return i
		}
	}
	return 0
}

// metalLikelihood is likelihood for what the metal tests say: like holds the
// chance of their results for each castable family.
func (m *Matcher) metalLikelihood(like []float64, out []float64) {
	mixed := func(chance []float64) float64 {
		sum := 0.0
		for i, p := range chance {
			sum += p * like[i]
		}
		return sum
	}
	stranger := mixed(generalMetals())
	for v, chance := range m.metal {
		known := mixed(chance)
		for s := range 2 {
			out[m.knownAt(v, s)] = math.Log(known)
			out[m.sisterAt(v, s)] = math.Log(sisterKeeps*known + (1-sisterKeeps)*stranger)
		}
	}
	out[m.strangerAt(0)] = math.Log(stranger)
	out[m.strangerAt(1)] = math.Log(stranger)
}

// posterior turns log chances that need not add up to anything into chances
// that add up to one. It never overflows, however much evidence there is.
func posterior(logs []float64) []float64 {
	most := math.Inf(-1)
	for _, l := range logs {
		most = math.Max(most, l)
	}
	p := make([]float64, len(logs))
	sum := 0.0
	for i, l := range logs {
		p[i] = math.Exp(l - most)
		sum += p[i]
	}
	for i := range p {
		p[i] /= sum
	}
	return p
}
