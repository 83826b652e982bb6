package casting

import (
	"fmt"
	"slices"
	"strings"

	"github.com/goccy/go-yaml/ast"

	"axlewright/axle"
	"axlewright/calc/material"
	"axlewright/quantity"
)

// MetalEvidence is what the tests of the metal said.
type MetalEvidence struct {
	Answers    []MetalAnswer // of tests that are read in words
	Hardness   Hardness
	Laboratory Analysis

	raw []pair
}

// A MetalAnswer is the answer of one test.
type MetalAnswer struct{ Test, Answer string }

// Hardness is a reading on the bare metal; a zero Value is none.
type Hardness struct {
	Value float64        `json:"value"`
	Scale material.Scale `json:"scale"`
}

// Analysis is what a laboratory found, mass fractions; below zero or not given
// where it was not asked for.
type Analysis struct {
	Carbon, Silicon, Magnesium Fraction
}

// A Fraction is a mass fraction that may be absent.
type Fraction struct {
	Value float64
	Given bool
}

// UnmarshalYAML reads
//
//	swarf: curls
//	ring: can't see it
//	hardness: 165 HB
//	laboratory: {carbon: 3.55 %, silicon: 2.40 %, magnesium: 0.040 %}
func (e *MetalEvidence) UnmarshalYAML(node ast.Node) (err error) {
	e.raw, err = pairs(node, "tests of the metal and what they said, such as swarf: curls")
	return err
}

// resolve understands what was written.
func (e *MetalEvidence) resolve() axle.Findings {
	var found axle.Findings
	for _, p := range e.raw {
		if problem := e.read(p); problem != "" {
			found = append(found, axle.Finding{Line: p.line, Field: "metal." + p.key, Problem: problem})
		}
	}
	e.raw = nil
	for _, a := range e.Answers {
		i := metalTest(a.Test)
		if i < 0 || !slices.Contains(MetalTests[i].Answers, a.Answer) {
			found = append(found, axle.Finding{Field: "metal." + a.Test, Problem: fmt.Sprintf("%q is not an answer of a test of the metal", a.Answer)})
		}
	}
	if h := e.Hardness; h.Value != 0 {
		if _, err := brinell(h); err != nil {
			found = append(found, axle.Finding{Field: "metal.hardness", Problem: fmt.Sprintf("%g %s is no hardness of a casting; expected 80 to 400 HBW", h.Value, h.Scale)})
		}
	}
	for _, f := range []Fraction{e.Laboratory.Carbon, e.Laboratory.Silicon, e.Laboratory.Magnesium} {
		if f.Given && !(f.Value >= 0 && f.Value < 0.1) {
			found = append(found, axle.Finding{Field: "metal.laboratory", Problem: quantity.Percent(f.Value) + " is no share of a cast metal; carbon and silicon stay below 5 %"})
		}
	}
	return found
}

func (e *MetalEvidence) read(p pair) string {
	text, plain := word(p.value)
	switch {
	case p.key == "laboratory":
		return e.readAnalysis(p.value)
	case !plain:
		return "expected one answer"
	case isUnseen(text):
		return ""
	case p.key == "hardness":
		return e.readHardness(text)
	}
	i := metalTest(p.key)
	if i < 0 {
		return "is no test of the metal; expected " + metalTestNames()
	}
	if !slices.Contains(MetalTests[i].Answers, text) {
		return fmt.Sprintf("%q is not an answer; expected %s, or can't see it", text, strings.Join(MetalTests[i].Answers, ", "))
	}
	e.Answers = append(e.Answers, MetalAnswer{p.key, text})
	return ""
}

func (e *MetalEvidence) readHardness(text string) string {
	var first error
	for _, as := range []struct {
		dim   quantity.Dimension
		scale material.Scale
	}{{quantity.HardnessBrinell, material.Brinell}, {quantity.HardnessVickers, material.Vickers}, {quantity.HardnessRockwellC, material.RockwellC}} {
		q, err := quantity.Parse(text, as.dim)
		if err == nil {
			e.Hardness = Hardness{q.SI, as.scale}
			return ""
		}
		if first == nil {
			first = err
		}
	}
	return first.Error()
}

func (e *MetalEvidence) readAnalysis(node ast.Node) string {
	list, err := pairs(node, "shares, such as {carbon: 3.55 %, silicon: 2.40 %}")
	if err != nil || len(list) == 0 {
		return "expected shares, such as {carbon: 3.55 %, silicon: 2.40 %, magnesium: 0.040 %}"
	}
	for _, p := range list {
		into := map[string]*Fraction{"carbon": &e.Laboratory.Carbon, "silicon": &e.Laboratory.Silicon, "magnesium": &e.Laboratory.Magnesium}[p.key]
		if into == nil {
			return fmt.Sprintf("%q is not asked of the laboratory; expected carbon, silicon, magnesium", p.key)
		}
		text, _ := word(p.value)
		if !strings.ContainsAny(text, "%‰") {
			return p.key + " needs its unit, such as 3.55 %"
		}
		q, err := quantity.Parse(text, quantity.Share)
		if err != nil {
			return err.Error()
		}
		*into = Fraction{q.SI, true}
	}
	return ""
}

func metalTest(name string) int {
	return slices.IndexFunc(MetalTests, func(t MetalTest) bool { return t.Name == name })
}

func metalTestNames() string {
	var names []string
	for _, t := range MetalTests {
		names = append(names, t.Name)
	}
	return strings.Join(append(names, "hardness", "laboratory"), ", ")
}
