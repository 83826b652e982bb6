package axle

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"github.com/goccy/go-yaml/ast"

	"axlewright/quantity"
)

// figureKeys are the keys of a figure that is written as a mapping.
var figureKeys = []string{"value", "spread", "low", "high", "shape", "one_of", "weights", "origin", "note"}

// A figureNode is a figure that is being read from a mapping.
type figureNode struct {
	all   *ast.MappingNode
	keys  map[string]ast.Node
	texts map[string]string // of the keys that are no lists
	dim   quantity.Dimension
}

// numberFromMapping reads a figure whose parts are named.
func numberFromMapping(node *ast.MappingNode, dim quantity.Dimension) (Number, error) {
	f := figureNode{node, map[string]ast.Node{}, map[string]string{}, dim}
	for _, pair := range node.Values {
		key := keyText(pair)
		switch {
		case !slices.Contains(figureKeys, key):
			return Number{}, fault(pair.Key, "unknown key %q of a figure%s", key, expectedKey(key, figureKeys, pair.Value))
		case f.keys[key] != nil:
			return Number{}, fault(pair.Key, "key %q stands twice", key)
		}
		f.keys[key] = pair.Value
		if key == "one_of" || key == "weights" {
			continue
		}
		var err error
		if f.texts[key], err = scalarText(pair.Value); err != nil {
			return Number{}, err
		}
	}
	n, err := f.read()
	if err != nil {
		return n, err
	}
	if origin, given := f.texts["origin"]; given {
		if !isOrigin(origin) {
			return n, fault(f.keys["origin"], "%q is no origin; expected measured, maker, trade, computed or assumed", origin)
		}
		n.Origin = Origin(origin)
	}
	n.Note, n.typed = f.texts["note"], node.String()
	return n, nil
}

func (f *figureNode) read() (Number, error) {
	has := func(key string) bool { return f.keys[key] != nil }
	switch {
	case has("one_of"):
		return f.oneOf()
	case has("weights"):
		return Number{}, fault(f.keys["weights"], "weights go with one_of: a list of the values that may be")
	case has("low") != has("high"):
		return Number{}, fault(f.all, "low and high go together")
	case has("low") && has("spread"):
		return Number{}, fault(f.keys["spread"], "a figure has a spread, or low and high; leave one out")
	case has("low"):
		return f.between()
	case !has("value"):
		return Number{}, fault(f.all, "a figure needs a value, such as {value: %s}", f.dim.Example())
	}
	text := f.texts["value"]
	if has("spread") {
		text += " ± " + strings.TrimLeft(f.texts["spread"], "± ")
	}
	n, err := parseNumber(text, f.dim)
	if err != nil {
		return n, fault(f.keys["value"], "%v", err)
	}
	if has("shape") {
		err = f.reshape(&n)
	}
	return n, err
}

// oneOf reads {one_of: [95 N·m, 120 N·m], weights: [3, 1]}.
func (f *figureNode) oneOf() (Number, error) {
	for _, other := range []string{"value", "spread", "low", "high"} {
		if f.keys[other] != nil {
			return Number{}, fault(f.keys[other], "a figure that is one_of several has no %s", other)
		}
	}
	if shape, given := f.texts["shape"]; given && Shape(shape) != Discrete {
		return Number{}, fault(f.keys["shape"], "a figure that is one_of several is discrete, not %s", shape)
	}
	list, ok := f.keys["one_of"].(*ast.SequenceNode)
	if !ok || len(list.Values) < 2 {
		return Number{}, fault(f.keys["one_of"], "one_of needs a list of two values or more, such as [%s, %s]", f.dim.Example(), f.dim.Example())
	}
	weights, err := f.weights(len(list.Values))
	if err != nil {
		return Number{}, err
	}
	n := Number{Shape: Discrete, Origin: Assumed}
	best, texts := 0.0, []string(nil)
	for i, node := range list.Values {
		q, text, err := f.plain(node)
		if err != nil {
			return n, err
		}
		texts = append(texts, text)
		n.Choices = append(n.Choices, Choice{Value: q, Share: weights[i]})
		if weights[i] > best {
			best, n.Value = weights[i], q
		}
	}
	slices.SortStableFunc(n.Choices, func(a, b Choice) int { return cmp.Compare(a.Value, b.Value) })
	n.Low, n.High = n.Choices[0].Value, n.Choices[len(n.Choices)-1].Value
	n.Text = strings.Join(texts, " or ")
	return n, nil
}

// weights reads how often each of the choices comes up, alike where nothing is
// said, and makes them shares of one.
func (f *figureNode) weights(choices int) ([]float64, error) {
	shares := slices.Repeat([]float64{1 / float64(choices)}, choices)
	node := f.keys["weights"]
	if node == nil {
		return shares, nil
	}
	list, ok := node.(*ast.SequenceNode)
	if !ok || len(list.Values) != choices {
		return nil, fault(node, "weights needs a list of %d numbers, one for each of one_of", choices)
	}
	sum := 0.0
	for i, item := range list.Values {
		text, err := scalarText(item)
		if err != nil {
			return nil, err
		}
		q, err := quantity.Parse(text, quantity.Number)
		if err != nil || q.Spread != quantity.NoSpread || q.SI <= 0 {
			return nil, fault(item, "%q is no weight; expected a number above zero", text)
		}
		shares[i] = q.SI
		sum += q.SI
	}
	if math.Abs(sum-1) < 1e-9 { // shares already; dividing would only move the last digit
		return shares, nil
	}
	for i := range shares {
		shares[i] /= sum
	}
	return shares, nil
}

// plain reads a value that has no doubt of its own.
func (f *figureNode) plain(node ast.Node) (si float64, text string, err error) {
	if text, err = scalarText(node); err != nil {
		return 0, text, err
	}
	q, err := quantity.Parse(text, f.dim)
	switch {
	case err != nil:
		return 0, text, fault(node, "%v", err)
	case q.Spread != quantity.NoSpread:
		return 0, text, fault(node, "%q has a doubt of its own; expected %s", text, f.dim.Example())
	}
	return q.SI, text, nil
}

// between reads {value: 26 mm, low: 25 mm, high: 28 mm}.
func (f *figureNode) between() (Number, error) {
	n := Number{Origin: Assumed, Shape: Triangular}
	lowText, highText := "", ""
	var err error
	if n.Low, lowText, err = f.plain(f.keys["low"]); err != nil {
		return n, err
	}
	if n.High, highText, err = f.plain(f.keys["high"]); err != nil {
		return n, err
	}
	if n.Low > n.High {
		return n, fault(f.keys["low"], "low %s is above high %s; a spread is not negative", lowText, highText)
	}
	n.Value, n.Text = (n.Low+n.High)/2, lowText+" to "+highText
	valued := f.keys["value"] != nil
	if valued {
		text := ""
		if n.Value, text, err = f.plain(f.keys["value"]); err != nil {
			return n, err
		}
		n.Text = text + " (" + n.Text + ")"
	} else {
		n.Shape = Uniform
	}
	if shape, given := f.texts["shape"]; given {
		n.Shape = Shape(shape)
	}
	return n, f.checkEnds(&n, valued)
}

// checkEnds finds a value that does not go with its ends.
func (f *figureNode) checkEnds(n *Number, valued bool) error {
	const close = 1e-6 // of the width: ends are often rounded
	off := func(middle float64) bool { return math.Abs(n.Value-middle) > close*(n.High-n.Low) }
	switch n.Shape {
	case Triangular, Normal, Lognormal:
		if !valued {
			return fault(f.all, "a %s figure needs its value beside low and high", n.Shape)
		}
	}
	switch n.Shape {
	case Triangular:
		if n.Value < n.Low || n.Value > n.High {
			return fault(f.keys["value"], "the value lies outside low and high")
		}
	case Normal, Uniform:
		if off((n.Low + n.High) / 2) {
			return fault(f.all, "a %s figure has its value in the middle of low and high; take shape: triangular for a lopsided one", n.Shape)
		}
	case Lognormal:
		if n.Low*n.High <= 0 {
			return fault(f.all, "a lognormal figure never reaches zero; low and high must be on one side of it")
		}
		if off(math.Copysign(math.Sqrt(n.Low*n.High), n.Value)) {
			return fault(f.all, "a lognormal figure has its value at the square root of low times high; take shape: triangular for another lopsided one")
		}
	default:
		return f.unknownShape(n.Shape)
	}
	return nil
}

func (f *figureNode) unknownShape(shape Shape) error {
	return fault(f.keys["shape"], "%q is no shape of a doubt; expected normal, lognormal, uniform or triangular", string(shape))
}

// reshape gives the figure's doubt another form of the same width.
func (f *figureNode) reshape(n *Number) error {
	shape := Shape(f.texts["shape"])
	if n.Low == n.High {
		return fault(f.keys["shape"], "a shape needs a spread, or low and high")
	}
	if n.Shape == Lognormal { // typed in percent
		half := (n.High/n.Value - 1) * math.Abs(n.Value)
		if n.Value < 0 {
			half = (n.Low/n.Value - 1) * math.Abs(n.Value)
		}
		n.Low, n.High = n.Value-half, n.Value+half
	}
	switch shape {
	case Normal, Uniform, Triangular:
	case Lognormal:
		switch {
		case n.Low*n.High <= 0:
			return fault(f.all, "a lognormal figure never reaches zero, but the low end of this one does")
		case n.Shape == Uniform: // typed as a range
			n.Value = math.Copysign(math.Sqrt(n.Low*n.High), n.Value)
		default:
			n.spreadShare((n.High - n.Low) / 2 / math.Abs(n.Value))
		}
	default:
		return f.unknownShape(shape)
	}
	n.Shape = shape
	return nil
}
