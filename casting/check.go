package casting

import (
	"fmt"
	"slices"
	"strings"

	"axlewright/axle"
	"axlewright/calc/material"
	"axlewright/quantity"
)

// Limits of a catalogue: more is a mistake, not a workshop.
const (
	mostFeatures = 500
	mostVariants = 20000
	mostAnswers  = 200
)

// Check finds everything wrong with a catalogue.
func (c *Catalogue) Check() axle.Findings {
	var found axle.Findings
	add := func(file string, line int, field, format string, args ...any) {
		found = append(found, axle.Finding{File: file, Line: line, Field: field, Problem: fmt.Sprintf(format, args...)})
	}
	c.checkDecide(add)
	for i, f := range c.Features {
		if c.feature(f.Name) < i && f.Name != "" {
			add(f.File, f.Line, "features["+f.Name+"]", "stands twice; names must differ")
		}
		c.checkFeature(&c.Features[i], add)
	}
	names := map[string]bool{}
	for i := range c.Variants {
		v := &c.Variants[i]
		switch {
		case v.Name == "":
			add(v.File, v.Line, fmt.Sprintf("variants[%d]", i+1), "has no name")
		case names[v.Name]:
			add(v.File, v.Line, "variants["+v.Name+"]", "stands twice; names must differ")
		}
		names[v.Name] = true
		c.checkVariant(v, add)
	}
	if len(c.Features) == 0 {
		add("", 0, "features", "are missing: a catalogue says what can be looked at and measured")
	}
	if len(c.Variants) == 0 {
		add("", 0, "variants", "are missing: a catalogue says which castings there are")
	}
	if len(c.Features) > mostFeatures || len(c.Variants) > mostVariants {
		add("", 0, "", "holds %d features and %d variants; no more than %d and %d are taken", len(c.Features), len(c.Variants), mostFeatures, mostVariants)
	}
	return found
}

type adder func(file string, line int, field, format string, args ...any)

func (c *Catalogue) checkDecide(add adder) {
	if s := c.Decide.Sure; s != 0 && !(s > 0.5 && s < 1) {
		add("", 0, "decide.sure", "%g is not a chance above a half and below one, such as 0.95", s)
	}
	if !(c.Decide.WrongCost >= 0 && c.Decide.WrongCost < 1e6) {
		add("", 0, "decide.wrong_costs", "%g is no cost; expected such as 90", c.Decide.WrongCost)
	}
	if h := c.History; !(h.NewFound >= 0 && h.ModifiedFound >= 0 && h.NewFound < 1e9 && h.ModifiedFound < 1e9) {
		add("", 0, "history", "counts castings and must not be below zero")
	} else if h.ModifiedFound > c.castings() && c.castings() > 0 {
		add("", 0, "history.modified_found", "%g castings were modified, of %g that were seen at all", h.ModifiedFound, c.castings())
	}
	for _, t := range c.Tools {
		if t.Name == "" || !(t.Cost >= 0 && t.Cost < 1e6) {
			add("", 0, "tools", "a tool needs a name and a cost from zero up, such as {name: caliper, cost: 1}")
		}
	}
}

func (c *Catalogue) checkFeature(f *Feature, add adder) {
	field := "features[" + f.Name + "]"
	bad := func(part, format string, args ...any) { add(f.File, f.Line, field+part, format, args...) }
	if strings.TrimSpace(f.Name) == "" {
		bad("", "has no name")
	}
	if _, known := sorts[f.Sort]; !known {
		bad(".sort", "%q is not one of %s", f.Sort, listSorts())
	}
	if f.Ask == "" {
		bad(".ask", "is missing: the question that the fitter reads")
	}
	if f.Reliability < 0 || f.Reliability >= 1 || f.Reliability != f.Reliability {
		bad(".reliability", "%g is not from 0 to below 1; nothing is wholly reliable", f.Reliability)
	}
	if _, known := c.cost(f.Tool()); !known {
		bad(".with", "%q is no tool of the catalogue; add it to tools with its cost", f.With)
	}
	if f.Measured() {
		checkMeasured(f, bad)
	} else {
		checkSeen(f, bad)
	}
	if r := f.Repair; r != nil {
		if len(r.Signs) > 0 != (r.Shown > 0) || r.Shown < 0 || r.Shown >= 1 {
			bad(".repair", "needs both the signs of a repair and the share of repaired castings that show one, such as {signs: [welded], shown: 0.7}")
		}
		for _, s := range r.Signs {
			if !slices.Contains(f.Answers, s) {
				bad(".repair.signs", "%q is not one of the answers", s)
			}
		}
		if len(f.Answers) > 0 && len(r.Signs) >= len(f.Answers) {
			bad(".repair.signs", "leave at least one answer for a casting that was never repaired")
		}
	}
}

func checkMeasured(f *Feature, bad func(part, format string, args ...any)) {
	if !f.Span.Given() && !f.Instrument.Given() {
		bad("", "needs either answers (something seen) or span and instrument (something measured)")
		return
	}
	if !f.Span.Given() || f.Span.Shape != axle.Uniform || !(f.Span.High > f.Span.Low) {
		bad(".span", "is missing or no range: all that any casting of the trade could read, such as 60..90 mm")
	}
	if !f.Instrument.Given() || !(f.Instrument.Value > 0) {
		bad(".instrument", "is missing: two standard deviations of one reading, such as 0.02 mm")
	} else if f.Span.Given() && f.Instrument.Value > f.width()/10 {
		bad(".instrument", "%s is too coarse for a span of %s", f.Instrument.Text, f.Span.Text)
	}
	if len(f.Swap) > 0 {
		bad(".swap", "a size is the same on a mirror casting; leave swap out")
	}
}

func checkSeen(f *Feature, bad func(part, format string, args ...any)) {
	if f.Span.Given() || f.Instrument.Given() {
		bad("", "has answers (something seen) and a span or instrument (something measured); leave one out")
	}
	if len(f.Answers) < 2 || len(f.Answers) > mostAnswers {
		bad(".answers", "has %d answers; expected 2 to %d", len(f.Answers), mostAnswers)
	}
	for i, a := range f.Answers {
		switch {
		case strings.TrimSpace(a) == "":
			bad(".answers", "answer %d is empty", i+1)
		case isUnseen(a):
			bad(".answers", "%q is always possible; leave it out", a)
		case slices.Index(f.Answers, a) < i:
			bad(".answers", "%q stands twice", a)
		}
	}
	for _, s := range f.Swap {
		if s.One == s.Other || !slices.Contains(f.Answers, s.One) || !slices.Contains(f.Answers, s.Other) {
			bad(".swap", "%q and %q are not two of the answers", s.One, s.Other)
		}
	}
}

func (c *Catalogue) checkVariant(v *Variant, add adder) {
	field := "variants[" + v.Name + "]"
	if !(v.Seen >= 0 && v.Seen < 1e9) {
		add(v.File, v.Line, field+".seen", "%g castings cannot have been seen", v.Seen)
	}
	if _, known := v.family(); v.Metal != "" && !known {
		add(v.File, v.Line, field+".metal", "%q is neither a grade nor a family of metals; expected such as EN-GJS-400-15 or ductile iron", v.Metal)
	} else if f, _ := v.family(); v.Metal != "" && !slices.Contains(castable, f) {
		add(v.File, v.Line, field+".metal", "%s is not cast into noses; expected %s", f, listFamilies())
	}
	if v.MirrorOf != "" {
		if base := c.variant(v.MirrorOf); base < 0 || v.MirrorOf == v.Name {
			add(v.File, v.Line, field+".mirror_of", "there is no other variant %q", v.MirrorOf)
		} else if c.Variants[base].MirrorOf != "" {
			add(v.File, v.Line, field+".mirror_of", "%s is itself a mirror; name %s", v.MirrorOf, c.Variants[base].MirrorOf)
		}
	}
	for _, t := range v.Shows {
		k := c.feature(t.Feature)
		if k < 0 {
			add(v.File, t.Line, field+".shows."+t.Feature, "is no feature of the catalogue")
			continue
		}
		if problem := t.problem(&c.Features[k]); problem != "" {
			add(v.File, t.Line, field+".shows."+t.Feature, "%s", problem)
		}
	}
}

// problem says in a sentence what is wrong with a trait, or nothing.
func (t *Trait) problem(f *Feature) string {
	if f.Measured() {
		s := t.Size
		switch {
		case !(s.Mean > f.Span.Low && s.Mean < f.Span.High):
			return fmt.Sprintf("%s is outside the span %s of the feature", quantity.Format(s.Mean, quantity.Length), f.Span.Text)
		case !(s.SD > 0) || s.SD > f.width()/4:
			return fmt.Sprintf("a spread of %s says nothing in a span of %s", quantity.Format(2*s.SD, quantity.Length), f.Span.Text)
		case !(s.Castings > 0 && s.SpreadFrom > 0):
			return "the mean and the spread must rest on something: castings above zero"
		}
		return ""
	}
	if len(t.Counts) == 0 {
		return "needs at least one answer"
	}
	for i, n := range t.Counts {
		switch {
		case !slices.Contains(f.Answers, n.Answer):
			return fmt.Sprintf("%q is not an answer; expected %s", n.Answer, strings.Join(f.Answers, ", "))
		case f.sign(n.Answer):
			return fmt.Sprintf("%q is the sign of a repair, not of a variant", n.Answer)
		case !(n.Castings > 0):
			return fmt.Sprintf("%q was given by %g castings; expected more than none", n.Answer, n.Castings)
		case slices.IndexFunc(t.Counts, func(o Count) bool { return o.Answer == n.Answer }) < i:
			return fmt.Sprintf("%q stands twice", n.Answer)
		}
	}
	return ""
}

func listSorts() string {
	names := make([]string, 0, len(sorts))
	for s := range sorts {
		names = append(names, string(s))
	}
	slices.Sort(names)
	return strings.Join(names, ", ")
}

func listFamilies() string {
	names := make([]string, len(castable))
	for i, f := range castable {
		names[i] = string(f)
	}
	return strings.Join(names, ", ")
}

// castable are the families that noses are cast in, from the most to the least
// forgiving beside a weld.
var castable = []material.Family{
	material.CastSteel, material.DuctileIron, material.WhiteheartIron, material.BlackheartIron, material.GreyIron,
}
