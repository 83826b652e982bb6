package casting

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"axlewright/quantity"
)

// evidence weighs each item for the leader against everything else that the
// casting might have been, by itself: what it would say if it were all there is.
func (w *bench) evidence(leader int) []Weighed {
	in := func(h int) bool { return w.identityOf(h) == leader }
	before := logOdds(w.prior, in)
	alone := make([]float64, len(w.logs))
	list := make([]Weighed, 0, len(w.items))
	for i, item := range w.items {
		for h := range alone {
			alone[h] = w.prior[h] + w.like[i][h]
		}
		db := decibans(logOdds(alone, in) - before)
		f := &w.cat.Features[w.index[item.Feature]]
		e := Weighed{
			Feature: item.Feature, Said: item.said(f), Trust: item.trust(f), Decibans: db, Strength: Strength(db),
			Disproves: w.disproved(i, leader),
		}
		e.Sentence = w.sentence(e, &item, f, leader)
		list = append(list, e)
	}
	slices.SortStableFunc(list, func(a, b Weighed) int { return cmp.Compare(b.Decibans, a.Decibans) })
	return list
}

// strongly is the weight from which a reading is said to disprove a variant,
// in decibans: the odds fall to a tenth or less.
const strongly = 10

// disproved lists the variants that an item speaks strongly against, beside
// the one it suits best: the likelier ones first, six at most.
func (w *bench) disproved(i, leader int) []string {
	most := math.Inf(-1)
	for v := range w.variants() {
		most = math.Max(most, w.like[i][w.knownAt(v, 0)])
	}
	var out []int
	for v := range w.variants() {
		if v != leader && decibans(most-w.like[i][w.knownAt(v, 0)]) >= strongly {
			out = append(out, v)
		}
	}
	slices.SortStableFunc(out, func(a, b int) int { return cmp.Compare(w.id[b], w.id[a]) })
	const shown = 6
	var names []string
	for _, v := range out[:min(shown, len(out))] {
		names = append(names, w.nameOf(v))
	}
	if more := len(out) - shown; more > 0 {
		names = append(names, fmt.Sprintf("%d more", more))
	}
	return names
}

// believed is the trust from which it need not be said that a reading is not
// worth much.
const believed = 0.6

// sentence says a piece of evidence as a fitter would.
func (w *bench) sentence(e Weighed, item *Item, f *Feature, leader int) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %s", e.Feature, e.Said)
	switch {
	case item.Told:
		b.WriteString(" (heard, not seen: counts half)")
	case item.Looked > 1 && sorts[f.Sort].again:
		fmt.Fprintf(&b, " (looked %d times)", item.Looked)
	}
	if e.Trust < believed && !item.Told {
		fmt.Fprintf(&b, " (believed only %s)", quantity.Chance(e.Trust))
	}
	name := w.nameOf(leader)
	switch {
	case math.Abs(e.Decibans) < 1:
		fmt.Fprintf(&b, "; says nothing for or against %s", name)
	case e.Decibans > 0:
		fmt.Fprintf(&b, "; %s for %s, %.0f decibans", e.Strength, name, e.Decibans)
	default:
		fmt.Fprintf(&b, "; %s against %s, %.0f decibans", e.Strength, name, -e.Decibans)
	}
	if leader < w.variants() {
		if expected := w.expected(leader, f); expected != "" {
			fmt.Fprintf(&b, "; %s shows %s", name, expected)
		}
	}
	return b.String()
}

// expected says what a variant shows of a feature, or nothing where that is
// not known.
func (w *bench) expected(v int, f *Feature) string {
	l := &w.known[w.index[f.Name]][v]
	if f.Measured() {
		if l.sd == 0 {
			return ""
		}
		return quantity.FormatSpread(l.mean, 2*l.scale(f, 0), quantity.Length)
	}
	if l.share == nil {
		return ""
	}
	var words []string
	for i, a := range f.Answers {
		if l.share[i] >= 0.15 {
			words = append(words, a)
		}
	}
	return strings.Join(words, " or ")
}

// heardFrom is the trust below which a reading that does not go with the
// leader is not worth a sentence: paint never is.
const heardFrom = 0.3

// rarely is how much less often than by mere chance a variant must show a thing
// for it to contradict the variant.
const rarely = 0.2

// contradictions are the items that castings of the leader hardly ever show.
func (w *bench) contradictions(leader int) []Contradiction {
	var list []Contradiction
	for i := range w.items {
		item := &w.items[i]
		f := &w.cat.Features[w.index[item.Feature]]
		r := item.trust(f)
		shown := w.known[w.index[item.Feature]][leader].shows(f, f.answer(item.Answer), item.Value, item.Spread)
		misread := (1 - r) * f.flat() / ((1-r)*f.flat() + r*shown)
		if shown > rarely*f.flat() || r < heardFrom || !f.Measured() && f.sign(item.Answer) {
			continue
		}
		c := Contradiction{Feature: item.Feature, Said: item.said(f), Expected: w.expected(leader, f), Misread: misread}
		c.Sentence = fmt.Sprintf("%s: you have %s, but %s shows %s.", f.Name, c.Said, w.nameOf(leader), c.Expected)
		if sorts[f.Sort].again {
			c.Sentence += fmt.Sprintf(" Look again: if it is so, this is not %s, or not %s as it was cast.", w.nameOf(leader), w.nameOf(leader))
		} else {
			c.Sentence += " Such a mark may come from another mould: it does not decide alone."
		}
		list = append(list, c)
	}
	return list
}
