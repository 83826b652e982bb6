package nest

import (
	"errors"
	"fmt"
	"math"

	"axlewright/kit/outline"
)

// exactness is what the outlines, offset and turned, may be off by: half a
// micrometre.
const exactness = 0.5e-6 // m

// Check proves a plan with the exact outlines, lines and arcs: every two parts
// keep the gap, every part keeps the edge, every piece asked for lies somewhere
// or is counted as left, pairs are on one sheet, grain and stock are kept.
//
// Errors: everything that is wrong, joined.
func (p Plan) Check() error {
	var found []error
	count := make([]int, len(p.Parts))
	copy(count, p.Left)
	used := map[int]int{}
	for i := range p.Sheets {
		s := &p.Sheets[i]
		used[s.Stock]++
		found = append(found, p.checkSheet(i)...)
		for _, at := range s.Places {
			count[at.Part]++
		}
	}
	for i, n := range count {
		if n != p.Parts[i].Count {
			found = append(found, fmt.Errorf("part %s: %d placed or left of %d", p.Parts[i].Name, n, p.Parts[i].Count))
		}
	}
	for s, n := range used {
		if n > p.Stock[s].Count {
			found = append(found, fmt.Errorf("%d sheets %s used of %d", n, p.Stock[s].Name, p.Stock[s].Count))
		}
	}
	return errors.Join(found...)
}

func (p Plan) checkSheet(i int) (found []error) {
	s := &p.Sheets[i]
	sheet := p.Stock[s.Stock].Outline.Anticlockwise()
	loops := make([]outline.Loop, len(s.Places))
	for k, at := range s.Places {
		loops[k] = p.Outline(at)
	}
	bad := func(format string, args ...any) {
		found = append(found, fmt.Errorf(p.Name(i)+": "+format, args...))
	}
	for k, l := range loops {
		name := p.Parts[s.Places[k].Part].Name
		if !sheet.Contains(l[0].At) || l.Gap(sheet, p.Rules.Edge) < p.Rules.Edge-exactness {
			bad("%s is nearer to the rim than %g mm", name, p.Rules.Edge*1e3)
		}
		if !p.turned(s.Places[k]) {
			bad("%s is turned by %g°, which its grain does not allow", name, s.Places[k].Turn*180/math.Pi)
		}
		for m := range k {
			if l.Overlaps(loops[m], p.Rules.Gap-exactness) {
				bad("%s and %s are nearer than %g mm or overlap", name, p.Parts[s.Places[m].Part].Name, p.Rules.Gap*1e3)
			}
		}
		for _, o := range s.Offcuts {
			if b := l.Bounds(); b.Near(o, -exactness) {
				bad("%s reaches into an offcut", name)
			}
		}
	}
	return found
}

// turned says whether a piece lies as its grain allows.
func (p Plan) turned(at Place) bool {
	part := &p.Parts[at.Part]
	for _, a := range part.angles(p.Rules.Turns) {
		if a == at.Turn {
			return true
		}
	}
	return false
}
