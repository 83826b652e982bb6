package axle

import (
	"fmt"
	"math"
	"strings"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"

	"axlewright/quantity"
)

var origins = []Origin{Measured, Maker, Trade, Computed, Assumed}

// UnmarshalYAML reads a figure written in one of two ways:
//
//	width: 26 mm ± 0.5 mm, measured
//	width: {value: 26 mm, spread: 0.5 mm, shape: triangular, origin: measured, note: "…"}
//
// "a ± b" is a doubt of two standard deviations either way; "± 20 %" is the same
// on the logarithm; "a..b" means anything between. The word "exact" in place
// of a doubt says that there is none.
func (q *Of[D]) UnmarshalYAML(node ast.Node) error {
	var marker D
	dim := marker.dimension()
	var n Number
	var err error
	if mapping, ok := node.(*ast.MappingNode); ok {
		n, err = numberFromMapping(mapping, dim)
	} else if value, ok := node.(*ast.MappingValueNode); ok {
		n, err = numberFromMapping(&ast.MappingNode{Values: []*ast.MappingValueNode{value}}, dim)
	} else {
		n, err = parseNumber(scalarText(node), dim)
	}
	if err != nil {
		return &yaml.SyntaxError{Message: err.Error(), Token: node.GetToken()}
	}
	n.Kind = string(dim)
	n.Line = node.GetToken().Position.Line
	q.Number = n
	return nil
}

func scalarText(node ast.Node) string {
	if s, ok := node.(*ast.StringNode); ok {
		return s.Value
	}
	return node.GetToken().Value
}

// parseNumber reads "26 mm ± 0.5 mm, measured".
func parseNumber(text string, dim quantity.Dimension) (Number, error) {
	body, origin, certain := cutWords(text)
	n := Number{Text: text, Origin: origin, Certain: certain}
	q, err := quantity.Parse(body, dim)
	if err != nil {
		return n, err
	}
	n.setQuantity(q)
	if n.Certain && n.Shape != Exact {
		return n, fmt.Errorf("%q says both exact and a doubt; leave one out", text)
	}
	return n, nil
}

// cutWords takes ", measured" and ", exact" off the end.
func cutWords(text string) (body string, origin Origin, certain bool) {
	body, origin = text, Assumed
	for {
		i := strings.LastIndex(body, ",")
		if i < 0 {
			return body, origin, certain
		}
		word := strings.TrimSpace(body[i+1:])
		switch {
		case word == "exact":
			certain = true
		case isOrigin(word):
			origin = Origin(word)
		default:
			return body, origin, certain
		}
		body = strings.TrimSpace(body[:i])
	}
}

func isOrigin(word string) bool {
	for _, o := range origins {
		if word == string(o) {
			return true
		}
	}
	return false
}

// setQuantity takes value and doubt from what was typed.
func (n *Number) setQuantity(q quantity.Quantity) {
	n.Value, n.Low, n.High, n.Shape = q.SI, q.Low, q.High, Exact
	switch {
	case q.HalfWidth == 0:
	case q.Spread == quantity.Range:
		n.Shape = Uniform
	case strings.HasSuffix(strings.TrimSpace(q.Text), "%") && q.SI != 0:
		n.spreadShare(math.Abs(q.HalfWidth / q.SI))
	default:
		n.Shape = Normal
	}
}

// spreadShare gives the figure a doubt of share (0.2 is 20 %) either way, two
// standard deviations of a lognormal: a stiffness is never below nothing.
func (n *Number) spreadShare(share float64) {
	n.Shape = Lognormal
	n.Low, n.High = n.Value/(1+share), n.Value*(1+share)
	if n.Value < 0 {
		n.Low, n.High = n.Value*(1+share), n.Value/(1+share)
	}
}

// numberFromMapping reads {value, spread, shape, origin, note}.
func numberFromMapping(node *ast.MappingNode, dim quantity.Dimension) (Number, error) {
	keys := map[string]string{}
	for _, pair := range node.Values {
		key := pair.Key.GetToken().Value
		switch key {
		case "value", "spread", "shape", "origin", "note":
		default:
			return Number{}, fmt.Errorf("unknown key %q of a figure; expected value, spread, shape, origin, note", key)
		}
		if _, repeated := keys[key]; repeated {
			return Number{}, fmt.Errorf("key %q stands twice", key)
		}
		keys[key] = scalarText(pair.Value)
	}
	text := keys["value"]
	if text == "" {
		return Number{}, fmt.Errorf("a figure needs a value, such as {value: %s}", dim.Example())
	}
	if spread, given := keys["spread"]; given {
		text += " ± " + strings.TrimLeft(spread, "± ")
	}
	n, err := parseNumber(text, dim)
	if err != nil {
		return n, err
	}
	if origin, given := keys["origin"]; given {
		if !isOrigin(origin) {
			return n, fmt.Errorf("origin %q is not one of measured, maker, trade, computed, assumed", origin)
		}
		n.Origin = Origin(origin)
	}
	if shape, given := keys["shape"]; given {
		if err := n.reshape(Shape(shape)); err != nil {
			return n, err
		}
	}
	return n, nil
}

// reshape gives the figure's doubt another form with the same ends.
func (n *Number) reshape(shape Shape) error {
	if n.Low == n.High {
		return fmt.Errorf("shape %q needs a spread", shape)
	}
	switch shape {
	case Normal, Uniform, Triangular:
	case Lognormal:
		if n.Low <= 0 {
			return fmt.Errorf("a lognormal figure must stay above nothing, but its low end is %g in SI", n.Low)
		}
	default:
		return fmt.Errorf("shape %q is not one of normal, lognormal, uniform, triangular", shape)
	}
	n.Shape = shape
	return nil
}
