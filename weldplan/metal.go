package weldplan

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/goccy/go-yaml/ast"

	"axlewright/calc/material"
	"axlewright/quantity"
)

// A Metal is what is known of the casting's metal: a grade, a family, several
// families with their chances, or nothing.
type Metal struct {
	Grade    string   // a grade of calc/material, empty where only the family is known
	Families []Chance // from the likeliest; the chances and Unknown add up to 1
	Unknown  float64  // chance that it is none of them
}

// A Chance is how likely a family is.
type Chance struct {
	Family material.Family `json:"family"`
	Chance float64         `json:"chance"`
}

// castable are the families that noses are cast in, from the most to the least
// forgiving beside a weld.
var castable = []material.Family{
	material.CastSteel, material.DuctileIron, material.WhiteheartIron, material.BlackheartIron, material.GreyIron,
}

// UnmarshalYAML reads a grade, a family, the word unknown, or families with
// their chances:
//
//	metal: EN-GJS-400-15
//	metal: {ductile iron: 0.85, cast steel: 0.12, grey iron: 0.01}
//
// What the chances leave to one is unknown metal.
func (m *Metal) UnmarshalYAML(node ast.Node) error {
	switch node := node.(type) {
	case *ast.MappingNode:
		return m.readChances(node.Values)
	case *ast.MappingValueNode:
		return m.readChances([]*ast.MappingValueNode{node})
	}
	text, ok := oneLine(node)
	if !ok {
		return faultAt(node, "expected a grade, a family, the word unknown, or families with their chances")
	}
	if text == "unknown" {
		*m = Metal{Unknown: 1}
		return nil
	}
	if f := material.Family(text); slices.Contains(castable, f) {
		*m = Metal{Families: []Chance{{f, 1}}}
		return nil
	}
	grade, err := material.Lookup(text)
	if err != nil || !slices.Contains(castable, grade.Family) {
		return faultAt(node, "%q is no metal a nose is cast in; expected a grade such as EN-GJS-400-15, or %s, or unknown", text, listed(castable))
	}
	*m = Metal{Grade: grade.Name, Families: []Chance{{grade.Family, 1}}}
	return nil
}

func (m *Metal) readChances(pairs []*ast.MappingValueNode) error {
	*m = Metal{}
	sum := 0.0
	for _, pair := range pairs {
		key, _ := oneLine(pair.Key)
		text, ok := oneLine(pair.Value)
		if !ok {
			return faultAt(pair.Value, "expected a chance, such as 0.85")
		}
		q, err := quantity.Parse(text, quantity.Share)
		if err != nil || !(q.SI >= 0 && q.SI <= 1) {
			return faultAt(pair.Value, "%q is no chance; expected 0 to 1, such as 0.85", text)
		}
		sum += q.SI
		family := material.Family(key)
		switch {
		case key == "unknown":
			m.Unknown += q.SI
			continue
		case !slices.Contains(castable, family):
			return faultAt(pair.Key, "%q is no family that noses are cast in; expected %s, or unknown", key, listed(castable))
		case slices.ContainsFunc(m.Families, func(c Chance) bool { return c.Family == family }):
			return faultAt(pair.Key, "%s stands twice", key)
		}
		m.Families = append(m.Families, Chance{family, q.SI})
	}
	const rounding = 1e-6
	if sum > 1+rounding {
		return faultAt(pairs[0].Key, "the chances add up to %.4g, more than 1", sum)
	}
	m.Unknown += math.Max(0, 1-sum)
	slices.SortStableFunc(m.Families, func(a, b Chance) int { return -compareFloat(a.Chance, b.Chance) })
	return nil
}

func compareFloat(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// plausible is the chance from which on a family is planned for. Our rule.
const plausible = 0.05

// chance of one family.
func (m Metal) chance(f material.Family) float64 {
	for _, c := range m.Families {
		if c.Family == f {
			return c.Chance
		}
	}
	return 0
}

// plannedFor is the least forgiving family with a chance that counts, grey iron
// left out: grey and unknown iron stop the job before anything is planned. Without
// any it is empty.
func (m Metal) plannedFor() material.Family {
	for _, f := range slices.Backward(castable) {
		if f != material.GreyIron && m.chance(f) >= plausible {
			return f
		}
	}
	return ""
}

// metal is the grade's figures, or those of a middling grade of the family.
func (m Metal) figures() (material.Metal, bool) {
	if m.Grade != "" {
		grade, err := material.Lookup(m.Grade)
		return grade, err == nil
	}
	// Where only the family is known, its weakest usual grade stands for it.
	standIn := map[material.Family]string{
		material.CastSteel: "GE240", material.DuctileIron: "EN-GJS-400-15",
		material.WhiteheartIron: "EN-GJMW-360-12", material.BlackheartIron: "EN-GJMB-350-10",
		material.GreyIron: "EN-GJL-150",
	}
	name, ok := standIn[m.plannedFor()]
	if !ok && len(m.Families) > 0 {
		name, ok = standIn[m.Families[0].Family]
	}
	if !ok {
		return material.Metal{}, false
	}
	grade, err := material.Lookup(name)
	return grade, err == nil
}

// String is the metal in words.
func (m Metal) String() string {
	if m.Grade != "" {
		return fmt.Sprintf("%s (%s)", m.Grade, m.Families[0].Family)
	}
	var parts []string
	for _, c := range m.Families {
		if c.Chance == 1 {
			return string(c.Family)
		}
		parts = append(parts, fmt.Sprintf("%s %s", c.Family, quantity.Chance(c.Chance)))
	}
	if m.Unknown > 0 {
		if len(parts) == 0 {
			return "unknown"
		}
		parts = append(parts, "unknown "+quantity.Chance(m.Unknown))
	}
	return strings.Join(parts, ", ")
}

// iron says whether a family is an iron.
func iron(f material.Family) bool {
	switch f {
	case material.DuctileIron, material.WhiteheartIron, material.BlackheartIron, material.GreyIron:
		return true
	}
	return false
}
