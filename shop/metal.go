package shop

import (
	"slices"

	"axlewright/calc/material"
	"axlewright/casting"
)

// MetalEvidence is what the tests of the metal said, as the record has it.
func (j *Job) MetalEvidence() casting.MetalEvidence {
	var e casting.MetalEvidence
	for _, t := range casting.MetalTests {
		// A word of another time that is no answer any more says nothing.
		if w := j.Value("metal", t.Name).Word(); slices.Contains(t.Answers, w) {
			e.Answers = append(e.Answers, casting.MetalAnswer{Test: t.Name, Answer: w})
		}
	}
	if h := j.Value("metal", "hardness").SI; h != nil {
		e.Hardness = casting.Hardness{Value: *h, Scale: material.Brinell}
	}
	share := func(item string) casting.Fraction {
		if x := j.Value("metal", item).SI; x != nil {
			return casting.Fraction{Value: *x, Given: true}
		}
		return casting.Fraction{}
	}
	e.Laboratory = casting.Analysis{Carbon: share("carbon"), Silicon: share("silicon"), Magnesium: share("magnesium")}
	return e
}

// metalTests are the entries that MetalEvidence is made of.
func (j *Job) metalTests() []*Entry {
	var all []*Entry
	for _, e := range j.All("metal", "") {
		if e.Kind == EntrySet && e.Item != "metal" {
			all = append(all, e)
		}
	}
	return all
}

// maybeGrey says whether tests were made and do not rule grey iron out.
// Evidence that cannot be is no proof that it is none.
func (j *Job) maybeGrey() bool {
	tests := j.metalTests()
	if len(tests) == 0 {
		return false
	}
	found, err := casting.AssessMetal(j.MetalEvidence())
	return err != nil || !found.NotGrey()
}

// DecisionFor is the word of the step's decision that a family of metals is
// called by.
func DecisionFor(family material.Family) string {
	switch family {
	case material.CastSteel:
		return MetalSteel
	case material.DuctileIron:
		return MetalDuctile
	case material.WhiteheartIron, material.BlackheartIron:
		return MetalMalleable
	case material.GreyIron:
		return MetalGrey
	}
	return MetalUnknown
}
