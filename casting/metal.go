package casting

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"axlewright/calc/material"
	"axlewright/quantity"
)

// A MetalFinding is the answer to "what is it made of, and may it be welded?".
type MetalFinding struct {
	Sentence    string               `json:"sentence"`
	Families    []FamilyChance       `json:"families"` // by tests and shape together, the likeliest first
	ByTests     []FamilyChance       `json:"by_tests,omitempty"`
	Evidence    []MetalWeighed       `json:"evidence,omitempty"`
	Disagrees   string               `json:"disagrees,omitempty"` // metal and shape do not go together
	Weldability material.Weldability `json:"weldability,omitempty"`
	Weld        string               `json:"weld,omitempty"`
	Strengths   []FamilyStrength     `json:"strengths,omitempty"`
	Next        *MetalQuestion       `json:"next,omitempty"`
	Stops       []Stop               `json:"stops,omitempty"`
}

// A FamilyChance is a family of metals and its chance.
type FamilyChance struct {
	Family material.Family `json:"family"`
	Chance float64         `json:"chance"`
}

// A MetalWeighed is what one test of the metal says.
type MetalWeighed struct {
	Test     string          `json:"test"`
	Said     string          `json:"said"`
	For      material.Family `json:"for"`     // the family it suits best
	Against  material.Family `json:"against"` // the one it suits least
	Decibans float64         `json:"decibans"`
	Sentence string          `json:"sentence"`
}

// A MetalQuestion is the test of the metal that would tell most for its trouble.
type MetalQuestion struct {
	Test    string  `json:"test"`
	Ask     string  `json:"ask"`
	Cost    float64 `json:"cost"`
	Bits    float64 `json:"bits"`
	Caution string  `json:"caution,omitempty"`
	Source  string  `json:"source"`
}

// NotGrey says whether the tests made so far rule grey iron out.
func (m *MetalFinding) NotGrey() bool {
	return len(m.ByTests) > 0 && m.byTests(material.GreyIron) < greyRuledOut
}

func (m *MetalFinding) byTests(family material.Family) float64 {
	for _, f := range m.ByTests {
		if f.Family == family {
			return f.Chance
		}
	}
	return 0
}

// AssessMetal tells what a casting is made of from tests alone, without its shape.
//
// Errors: axle.Findings for evidence that is none.
func AssessMetal(e MetalEvidence) (MetalFinding, error) {
	if found := e.resolve(); len(found) > 0 {
		return MetalFinding{}, found
	}
	tests := e.tests()
	return metalFinding(e, tests, byTests(tests), ""), nil
}

// byTests is the chance of each castable family by the tests alone.
func byTests(tests []metalResult) []float64 {
	chance := generalMetals()
	if len(tests) == 0 {
		return chance
	}
	return times(chance, metalChances(tests))
}

func times(chance, like []float64) []float64 {
	logs := make([]float64, len(chance))
	for i := range chance {
		logs[i] = math.Log(chance[i] * like[i])
	}
	return posterior(logs)
}

// metalFinding joins tests and shape.
func (w *bench) metalFinding(e MetalEvidence, tests []metalResult, leader int) MetalFinding {
	like := []float64{1, 1, 1, 1, 1}
	if len(tests) > 0 {
		like = metalChances(tests)
	}
	joint := make([]float64, len(castable))
	add := func(p float64, chance []float64) {
		for i, x := range times(chance, like) {
			joint[i] += p * x
		}
	}
	general := generalMetals()
	for v := range w.variants() {
		if w.weightOf(v) < deadBelow {
			continue
		}
		add(w.p[w.knownAt(v, 0)]+w.p[w.knownAt(v, 1)], w.metal[v])
		sister := make([]float64, len(castable))
		for i := range sister {
			sister[i] = sisterKeeps*w.metal[v][i] + (1-sisterKeeps)*general[i]
		}
		add(w.p[w.sisterAt(v, 0)]+w.p[w.sisterAt(v, 1)], sister)
	}
	add(w.p[w.strangerAt(0)]+w.p[w.strangerAt(1)], general)
	grade := ""
	if leader < w.variants() {
		grade = w.cat.Variants[leader].Metal
	}
	m := metalFinding(e, tests, joint, grade)
	w.disagree(&m, tests, leader)
	return m
}

// disagreeBelow is the chance, by tests alone, below which the metal in a
// variant's record is said to disagree with this casting.
const disagreeBelow = 0.05

func (w *bench) disagree(m *MetalFinding, tests []metalResult, leader int) {
	if leader == w.variants() || len(tests) == 0 {
		return
	}
	v := &w.cat.Variants[leader]
	stated, known := v.family()
	if !known || byTests(tests)[slices.Index(castable, stated)] >= disagreeBelow {
		return
	}
	found := castable[argmax(byTests(tests))]
	m.Disagrees = fmt.Sprintf("The shape says %s, which is cast in %s; the tests say %s. Replacements were cast in other metals: believe the tests.", v.Name, stated, found)
	m.Stops = append(m.Stops, Stop{
		What:     "Do not weld by the variant's usual procedure.",
		Why:      m.Disagrees,
		Overrule: "The person who answers for the welding, in writing, with an analysis of this casting on the record.",
	})
}

// Chances at which the metal is taken to be known, and grey iron to be ruled out.
const (
	metalKnownFrom = 0.9
	greyFrom       = 0.5
	greyRuledOut   = 0.05
)

func metalFinding(e MetalEvidence, tests []metalResult, joint []float64, grade string) MetalFinding {
	m := MetalFinding{Families: ordered(joint), Evidence: weighMetal(tests)}
	alone := byTests(tests)
	if len(tests) > 0 {
		m.ByTests = ordered(alone)
	}
	best := m.Families[0]
	m.Strengths = strengths(m.Families, e.Hardness, grade)
	grey := math.Max(joint[len(joint)-1], alone[len(alone)-1])
	if len(tests) == 0 {
		grey = joint[len(joint)-1]
	}
	settled := len(tests) > 0 && best.Chance >= metalKnownFrom && (grey < greyRuledOut || best.Family == material.GreyIron)
	if f, err := material.FamilyOf(best.Family); err == nil && settled {
		m.Weldability, m.Weld = f.Weldability, f.Weld
	}
	if !settled {
		m.Next = nextMetalTest(tests, alone) // the record of a variant is no proof: ask as if there were none
	}
	m.Sentence = metalSentence(best, joint[len(joint)-1], alone[len(alone)-1], len(tests) > 0)
	m.Stops = metalStops(best, grey, len(tests) > 0)
	return m
}

func metalSentence(best FamilyChance, grey, byTests float64, tested bool) string {
	percent := quantity.Chance(best.Chance)
	switch {
	case !tested:
		return fmt.Sprintf("No test was made on this casting; by its shape it would be %s (%s).", best.Family, percent)
	case best.Family != material.GreyIron && byTests >= greyRuledOut && byTests > grey:
		return fmt.Sprintf("Not settled: with its shape %s leads with %s, but the tests alone give grey iron %s.", best.Family, percent, quantity.Chance(byTests))
	case best.Family != material.GreyIron && grey >= greyRuledOut:
		return fmt.Sprintf("Not settled: %s leads with %s, but grey iron still has %s.", best.Family, percent, quantity.Chance(grey))
	case best.Chance >= metalKnownFrom:
		return fmt.Sprintf("%s (%s).", upper(string(best.Family)), percent)
	}
	return fmt.Sprintf("The metal is not known well enough; %s leads with %s.", best.Family, percent)
}

func upper(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// metalStops are the reasons not to weld, the gravest alone: one stop that is
// read is better than three that are not.
func metalStops(best FamilyChance, grey float64, tested bool) []Stop {
	switch {
	case grey >= greyFrom:
		return []Stop{{
			What:     "Grey iron: do not weld plates to it. Bolted parts only, or another casting.",
			Why:      fmt.Sprintf("Grey iron with %s. It cracks beside the weld, often hours later, and carries no load there.", quantity.Chance(grey)),
			Overrule: "Nobody at the bench. Closing a crack that carries no load: a welding engineer, by a written procedure for this casting.",
		}}
	case !tested:
		return []Stop{{
			What:     "No welding yet: test the metal of this very casting.",
			Why:      "A shape is no proof of metal: replacements were cast in other irons under the same number.",
			Overrule: "The person who answers for the welding, in writing, after a test on this casting.",
		}}
	case grey >= greyRuledOut:
		return []Stop{{
			What:     "No welding yet: it may be grey iron.",
			Why:      fmt.Sprintf("Grey iron is not ruled out (%s).", quantity.Chance(grey)),
			Overrule: "The person who answers for the welding, in writing, after a tab test or an analysis of this casting.",
		}}
	case best.Chance < metalKnownFrom:
		return []Stop{{
			What:     "No welding yet: the metal is not known, and each kind wants its own procedure.",
			Why:      fmt.Sprintf("%s leads with only %s.", upper(string(best.Family)), quantity.Chance(best.Chance)),
			Overrule: "The person who answers for the welding, in writing, with the procedure that was chosen and why.",
		}}
	}
	if f, err := material.FamilyOf(best.Family); err == nil && f.Weldability == material.WeldUnloaded {
		return []Stop{{
			What:     upper(string(best.Family)) + ": weld only where no load passes.",
			Why:      f.Weld,
			Overrule: "A welding engineer, by a written procedure for this casting.",
		}}
	}
	return nil
}

func ordered(chance []float64) []FamilyChance {
	list := make([]FamilyChance, len(chance))
	for i, p := range chance {
		list[i] = FamilyChance{castable[i], p}
	}
	slices.SortStableFunc(list, func(a, b FamilyChance) int { return cmp.Compare(b.Chance, a.Chance) })
	return list
}

// weighMetal says what each test speaks for and against.
func weighMetal(tests []metalResult) []MetalWeighed {
	var list []MetalWeighed
	for _, t := range tests {
		for_, against := 0, 0
		for i := range t.like {
			if t.like[i] > t.like[for_] {
				for_ = i
			}
			if t.like[i] < t.like[against] {
				against = i
			}
		}
		x := MetalWeighed{Test: t.test, Said: t.said, For: castable[for_], Against: castable[against], Decibans: decibans(math.Log(t.like[for_] / t.like[against]))}
		x.Sentence = fmt.Sprintf("%s: %s; suits %s best and %s least, %s between the two (%.0f decibans)", x.Test, x.Said, x.For, x.Against, Strength(x.Decibans), x.Decibans)
		list = append(list, x)
	}
	return list
}
