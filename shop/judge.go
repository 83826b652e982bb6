package shop

import "math"

// LimitsFor returns the ranges that stand beside a field of a job: the one that
// a reading is judged against, nil where none holds, and the others. The
// variant's own spec comes first, then the house's, then the bands of the trade.
// Casting and house may be nil.
func LimitsFor(j *Job, step StepKey, f Field, casting *Casting, house *House) (judged *Limit, others []Limit) {
	var all []Limit
	if len(f.Bands) > 0 {
		spec := SetUpSpec(j, casting, house)
		for _, b := range f.Bands {
			all = append(all, b.limits(j, spec)...)
		}
	} else {
		if casting != nil {
			all = append(all, specsFor(casting.Specs, step, f.Key)...)
		}
		if house != nil && len(all) == 0 {
			all = append(all, specsFor(house.Specs, step, f.Key)...)
		}
	}
	var holds, not []Limit
	for _, l := range append(all, f.Limits...) {
		if l.When == nil || oneOf(l.When.Word, j.Value(step, l.When.Field).Words) {
			holds = append(holds, l)
		} else {
			not = append(not, l)
		}
	}
	if len(holds) == 0 {
		return nil, not
	}
	return &holds[0], append(holds[1:], not...)
}

func specsFor(specs []Spec, step StepKey, field string) []Limit {
	var all []Limit
	for _, s := range specs {
		if s.Step == step && s.Field == field {
			all = append(all, s.Limit)
		}
	}
	return all
}

// Judge says what there is to say of a figure against a limit. Outside a range
// that the maker or the shop itself set is a stop; outside a band of the trade
// is worth a look.
func Judge(si float64, l Limit) Verdict {
	// What was typed to two digits must not fall out by the last bit of a float.
	slack := 1e-9 * math.Abs(si)
	inside := (l.Low == nil || si >= *l.Low-slack) && (l.High == nil || si <= *l.High+slack)
	switch {
	case inside && l.Vague:
		return NotYet
	case inside:
		return Fine
	case l.Hard || l.Origin == Maker || l.Origin == Measured:
		return Halt
	}
	return Look
}

// judgeChoice returns the worst verdict of the chosen words.
func judgeChoice(f Field, words []string) Verdict {
	v := NotYet
	for _, o := range f.Options {
		if oneOf(o.Word, words) {
			v = Worst(v, o.Verdict)
		}
	}
	return v
}
