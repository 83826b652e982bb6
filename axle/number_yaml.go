package axle

import (
	"fmt"
	"math"
	"regexp"
	"strings"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"

	"axlewright/quantity"
)

var origins = []Origin{Measured, Maker, Trade, Computed, Assumed}

// UnmarshalYAML reads a figure written on one line or as a mapping:
//
//	width: 26 mm ± 0.5 mm, measured
//	width: {value: 26 mm, spread: 0.5 mm, shape: triangular, origin: measured, note: "…"}
//	width: {value: 26 mm, low: 25 mm, high: 28 mm}
//	torque: {one_of: [95 N·m, 120 N·m], weights: [3, 1], origin: assumed}
//
// "a ± b" is a doubt of two standard deviations either way; "± 20 %" is the same
// on the logarithm; "a..b" means anything between. The word "exact" in place
// of a doubt says that there is none. Without an origin a figure is assumed.
//
// Errors: *yaml.SyntaxError with the place of what is wrong.
func (q *Of[D]) UnmarshalYAML(node ast.Node) error {
	var marker D
	dim := marker.dimension()
	var n Number
	var err error
	switch node := node.(type) {
	case *ast.MappingNode:
		n, err = numberFromMapping(node, dim)
	case *ast.MappingValueNode:
		n, err = numberFromMapping(ast.Mapping(node.GetToken(), false, node), dim)
	default:
		var text string
		if text, err = scalarText(node); err == nil {
			if n, err = parseNumber(text, dim); err != nil {
				err = fault(node, "%v", err)
			}
		}
	}
	if err != nil {
		return err
	}
	n.Kind = string(dim)
	n.Line = startOf(node).Position.Line
	q.Number = n
	return nil
}

// parseNumber reads "26 mm ± 0.5 mm, measured".
func parseNumber(text string, dim quantity.Dimension) (Number, error) {
	body, origin, certain := cutWords(text)
	n := Number{Text: text, Origin: origin, Certain: certain}
	q, relative, err := parseDoubt(body, dim)
	if m := lastWord.FindStringSubmatch(body); err != nil && m != nil {
		return n, fmt.Errorf("%q is no origin; expected measured, maker, trade, computed or assumed after the comma, or exact", m[1])
	}
	if err != nil {
		return n, err
	}
	n.Value, n.Low, n.High = q.SI, q.Low, q.High
	switch {
	case q.HalfWidth == 0:
	case q.Spread == quantity.Range:
		n.Shape = Uniform
	case relative && math.Abs(q.HalfWidth/q.SI) > mostPercent/100.0:
		return n, fmt.Errorf("%q: a doubt of more than %d %% says nothing; expected up to that, or a range such as 2..9 with a unit", text, mostPercent)
	case relative:
		n.spreadShare(math.Abs(q.HalfWidth / q.SI))
	default:
		n.Shape = Normal
	}
	if n.Certain && n.Shape != Exact {
		return n, fmt.Errorf("%q says both exact and a doubt; leave one out", text)
	}
	return n, nil
}

// lastWord is a word after a last comma.
var lastWord = regexp.MustCompile(`, *([\p{L} ]+)$`)

var inPercent = regexp.MustCompile(`^([^%]*?) *(?:±|\+/-|\+-) *([^%]*%) *$`)

// parseDoubt reads a value with its doubt. Of a plain number "± 10 %" means a
// share of it, as of any other figure; only quantity.Share counts in percent.
func parseDoubt(body string, dim quantity.Dimension) (q quantity.Quantity, relative bool, err error) {
	m := inPercent.FindStringSubmatch(body)
	if m == nil || dim != quantity.Number {
		q, err = quantity.Parse(body, dim)
		return q, m != nil && err == nil && q.SI != 0, err
	}
	if q, err = quantity.Parse(m[1], dim); err != nil {
		return q, false, err
	}
	share, err := quantity.Parse(m[2], quantity.Share)
	switch {
	case err != nil:
		return q, false, err
	case share.SI < 0:
		return q, false, fmt.Errorf("%q: a spread is not negative: write %s ± %s", body, m[1], strings.TrimLeft(m[2], "-– "))
	case q.Spread != quantity.NoSpread:
		return q, false, fmt.Errorf("%q: it has more than one spread, expected %s ± 4 %%", body, dim.Example())
	}
	q.Spread, q.HalfWidth = quantity.PlusMinus, math.Abs(q.SI)*share.SI
	q.Low, q.High = q.SI-q.HalfWidth, q.SI+q.HalfWidth
	return q, q.SI != 0, nil
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

// mostPercent is the most doubt in percent: a factor of four either way.
const mostPercent = 300

// spreadShare gives the figure a doubt of share (0.2 is 20 %) either way, two
// standard deviations of a lognormal: a stiffness is never below nothing.
func (n *Number) spreadShare(share float64) {
	n.Shape = Lognormal
	n.Low, n.High = n.Value/(1+share), n.Value*(1+share)
	if n.Value < 0 {
		n.Low, n.High = n.Value*(1+share), n.Value/(1+share)
	}
}

// fault is an error at the place of a node.
func fault(node ast.Node, format string, args ...any) error {
	return &yaml.SyntaxError{Message: fmt.Sprintf(format, args...), Token: startOf(node)}
}
