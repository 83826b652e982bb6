package casting

import (
	"fmt"
	"math"
	"strconv"

	"github.com/goccy/go-yaml/ast"

	"axlewright/axle"
)

// UnmarshalYAML keeps what stands behind each feature until it is known
// whether that feature is seen or measured:
//
//	ribs: three straight
//	ribs: [three straight, three curved]          # either
//	ribs: {three straight: 38, three curved: 2}   # castings that showed it
//	head bore: 72.00 mm ± 0.03 mm, measured       # ± two standard deviations of the castings
//	head bore: {value: "72.00 mm ± 0.03 mm, measured", castings: 12, spread_from: 16}
func (t *Traits) UnmarshalYAML(node ast.Node) error {
	list, err := pairs(node, "features and what the variant shows, such as ribs: three straight")
	if err != nil {
		return err
	}
	for _, p := range list {
		*t = append(*t, Trait{Feature: p.key, Line: p.line, raw: p.value})
	}
	return nil
}

// resolve understands what was kept, now that its feature is known.
func (t *Trait) resolve(f *Feature) error {
	if t.raw == nil {
		return nil
	}
	node := t.raw
	t.raw = nil
	if f.Measured() {
		return t.resolveSize(node, f)
	}
	return t.resolveCounts(node, f)
}

func (t *Trait) resolveCounts(node ast.Node, f *Feature) error {
	if answer, ok := word(node); ok {
		t.Counts = []Count{{answer, statedWorth}}
		return nil
	}
	if list, ok := node.(*ast.SequenceNode); ok {
		for _, item := range list.Values {
			answer, ok := word(item)
			if !ok {
				return at(item, "expected one of the answers of "+f.Name)
			}
			t.Counts = append(t.Counts, Count{answer, statedWorth / float64(len(list.Values))})
		}
		return nil
	}
	list, err := pairs(node, "an answer, a list of answers, or answers with the number of castings that gave them")
	if err != nil {
		return err
	}
	for _, p := range list {
		n, err := countOf(p.value)
		if err != nil {
			return err
		}
		t.Counts = append(t.Counts, Count{p.key, n})
	}
	return nil
}

func (t *Trait) resolveSize(node ast.Node, f *Feature) error {
	castings, from := float64(statedWorth), 0.0
	if list, err := pairs(node, "a size"); err == nil {
		var value ast.Node
		for _, p := range list {
			var err error
			switch p.key {
			case "value":
				value = p.value
			case "castings":
				castings, err = countOf(p.value)
			case "spread_from":
				from, err = countOf(p.value)
			default:
				err = at(p.value, fmt.Sprintf("unknown key %q of a size; expected value, castings, spread_from", p.key))
			}
			if err != nil {
				return err
			}
		}
		if value == nil {
			return at(node, "a size needs a value, such as {value: 72.00 mm ± 0.03 mm, castings: 12}")
		}
		node = value
	}
	var length axle.Length
	if err := length.UnmarshalYAML(node); err != nil {
		return err
	}
	if length.Shape == axle.Exact && !length.Certain {
		return at(node, "the spread from casting to casting is missing: write such as 72.00 mm ± 0.03 mm, or add the word exact")
	}
	if from == 0 {
		from = castings
	}
	t.Size = Size{
		Mean: length.Value, Instrument: f.spread(), SD: math.Hypot(deviation(length.Number), f.spread()),
		Castings: castings, SpreadFrom: from, Origin: length.Origin, Text: length.Text,
	}
	return nil
}

// deviation is one standard deviation of a figure's doubt.
func deviation(n axle.Number) float64 {
	switch width := math.Abs(n.High - n.Low); n.Shape {
	case axle.Normal, axle.Lognormal:
		return width / 4
	case axle.Uniform:
		return width / math.Sqrt(12)
	case axle.Triangular:
		a, b, c := n.Low, n.High, n.Value
		return math.Sqrt((a*a + b*b + c*c - a*b - a*c - b*c) / 18)
	}
	return 0
}

func countOf(node ast.Node) (float64, error) {
	text, _ := word(node)
	n, err := strconv.ParseFloat(text, 64)
	if err != nil || !(n > 0) || n > 1e9 {
		return 0, at(node, "expected a number of castings above zero")
	}
	return n, nil
}
