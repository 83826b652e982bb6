package casting

import (
	"fmt"
	"math"
	"slices"

	"axlewright/quantity"
)

// aliveFrom is the chance from which a variant still counts as possible.
const aliveFrom = 0.01

// warnings are what a careful fitter would add: rivals that the kit does not
// sit on, twins that differ only in their hand, sides read from the wrong end.
func (w *bench) warnings(leader int) []string {
	if leader == w.variants() {
		return nil
	}
	return append(w.mirrorWarnings(leader), w.kitWarnings(leader)...)
}

// kitWarnings tell where castings that share a number with the leader, or are
// still possible, differ in what the kit sits on.
func (w *bench) kitWarnings(leader int) []string {
	var list []string
	for v := range w.variants() {
		if v == leader || w.id[v] < aliveFrom && !w.sameMark(leader, v) {
			continue
		}
		for k := range w.cat.Features {
			if f := &w.cat.Features[k]; f.Kit {
				if says := w.differ(k, leader, v); says != "" {
					list = append(list, says)
				}
			}
		}
		if len(list) >= mostWarnings {
			return list[:mostWarnings]
		}
	}
	return list
}

const mostWarnings = 6

// sameMark says whether the raised number that was seen goes with both
// variants: they are sold as one part.
func (w *bench) sameMark(a, b int) bool {
	return slices.ContainsFunc(w.items, func(i Item) bool {
		k := w.index[i.Feature]
		f := &w.cat.Features[k]
		if f.Sort != Number {
			return false
		}
		x, y := w.known[k][a].share, w.known[k][b].share
		at := f.answer(i.Answer)
		return x != nil && y != nil && x[at] > 0.5 && y[at] > 0.5
	})
}

// differ says how two variants differ in a feature, or nothing.
func (w *bench) differ(k, a, b int) string {
	f, x, y := &w.cat.Features[k], &w.known[k][a], &w.known[k][b]
	if f.Measured() {
		if x.sd == 0 || y.sd == 0 {
			return ""
		}
		gap := y.mean - x.mean
		if math.Abs(gap) < 2*math.Hypot(x.sd, y.sd) {
			return ""
		}
		more := "more"
		if gap < 0 {
			more = "less"
		}
		return fmt.Sprintf("%s has %s %s in %s than %s: the kit of one does not sit on the other.",
			w.nameOf(b), quantity.Format(math.Abs(gap), quantity.Length), more, f.Name, w.nameOf(a))
	}
	if x.share == nil || y.share == nil || argmax(x.share) == argmax(y.share) {
		return ""
	}
	return fmt.Sprintf("%s has %s (%s) where %s has %s: the kit of one does not sit on the other.",
		w.nameOf(b), f.Answers[argmax(y.share)], f.Name, w.nameOf(a), f.Answers[argmax(x.share)])
}

// mirrorWarnings look at the features that change sides on a mirror casting.
func (w *bench) mirrorWarnings(leader int) []string {
	as, swapped := w.sides(leader)
	name := w.nameOf(leader)
	twin := w.twin(leader)
	switch {
	case swapped > 0 && as == 0:
		return []string{fmt.Sprintf("All that has a side lies the other way round than on %s. Either it was looked at from the other end, or this is its mirror image%s: settle that first.", name, orNew(twin))}
	case as > 0 && swapped > 0:
		return []string{"Some of what has a side lies as on " + name + " and some the other way round: look again from the pinion end."}
	case as == 0 && swapped == 0 && twin != "":
		return []string{fmt.Sprintf("%s and %s are mirror images and alike in all that was looked at: look at something that has a side.", name, twin)}
	}
	return nil
}

func orNew(twin string) string {
	if twin != "" {
		return ", " + twin
	}
	return " and not in the catalogue"
}

// twin is the name of the variant's mirror image, if the catalogue has it.
func (w *bench) twin(v int) string {
	name := w.nameOf(v)
	for i := range w.cat.Variants {
		if o := &w.cat.Variants[i]; o.MirrorOf == name {
			return o.Name
		}
	}
	return w.cat.Variants[v].MirrorOf
}

// sides counts what was seen as the variant has it and the other way round.
func (w *bench) sides(v int) (as, swapped int) {
	for _, item := range w.items {
		k := w.index[item.Feature]
		f := &w.cat.Features[k]
		other := f.mirrored(item.Answer)
		share := w.known[k][v].share
		if other == item.Answer || share == nil {
			continue
		}
		switch {
		case share[f.answer(item.Answer)] > 0.5:
			as++
		case share[f.answer(other)] > 0.5:
			swapped++
		}
	}
	return as, swapped
}
