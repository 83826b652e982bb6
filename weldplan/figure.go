package weldplan

import (
	"fmt"
	"slices"
	"strings"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"

	"axlewright/axle"
	"axlewright/quantity"
)

// Figure is a figure of a dimension that only the welder needs. It is written
// as every other figure: "105 A, measured", "5 ml/100g", "60 cm² ± 10 %".
type Figure[D dimensioned] struct{ axle.Number }

// dimensioned is a marker type that names a dimension.
type dimensioned interface{ dimension() quantity.Dimension }

type (
	area     struct{}
	volume   struct{}
	density  struct{}
	current  struct{}
	hydrogen struct{}
)

func (area) dimension() quantity.Dimension     { return quantity.Area }
func (volume) dimension() quantity.Dimension   { return quantity.Volume }
func (density) dimension() quantity.Dimension  { return quantity.Density }
func (current) dimension() quantity.Dimension  { return quantity.Current }
func (hydrogen) dimension() quantity.Dimension { return quantity.HydrogenContent }

// The welder's figures, each in coherent SI.
type (
	Area     = Figure[area]     // m²
	Volume   = Figure[volume]   // m³
	Density  = Figure[density]  // kg/m³
	Current  = Figure[current]  // A
	Hydrogen = Figure[hydrogen] // m³/kg
)

var origins = []axle.Origin{axle.Measured, axle.Maker, axle.Trade, axle.Computed, axle.Assumed}

// UnmarshalYAML reads a figure written on one line.
//
// Errors: *yaml.SyntaxError with the place of what is wrong.
func (f *Figure[D]) UnmarshalYAML(node ast.Node) error {
	var marker D
	text, ok := oneLine(node)
	if !ok {
		return faultAt(node, "expected one figure, such as %s", marker.dimension().Example())
	}
	n, err := readFigure(text, marker.dimension())
	if err != nil {
		return faultAt(node, "%v", err)
	}
	n.Line = node.GetToken().Position.Line
	f.Number = n
	return nil
}

// readFigure reads "105 A ± 5 A, measured".
func readFigure(text string, dim quantity.Dimension) (axle.Number, error) {
	n := axle.Number{Text: text, Origin: axle.Assumed, Kind: string(dim)}
	body := text
	if at := strings.LastIndex(text, ","); at >= 0 {
		if o := axle.Origin(strings.TrimSpace(text[at+1:])); slices.Contains(origins, o) {
			n.Origin, body = o, strings.TrimSpace(text[:at])
		}
	}
	q, err := quantity.Parse(body, dim)
	if err != nil {
		return n, err
	}
	n.Value, n.Low, n.High = q.SI, q.Low, q.High
	switch {
	case q.HalfWidth == 0:
	case q.Spread == quantity.Range:
		n.Shape = axle.Uniform
	default:
		n.Shape = axle.Normal
	}
	return n, nil
}

// oneLine is the text of a value that is one word or line.
func oneLine(node ast.Node) (string, bool) {
	switch node := node.(type) {
	case *ast.StringNode:
		return node.Value, true
	case *ast.LiteralNode:
		return node.Value.Value, true
	case *ast.IntegerNode, *ast.FloatNode, *ast.BoolNode:
		return node.GetToken().Value, true
	}
	return "", false
}

// faultAt is an error at the place of a node.
func faultAt(node ast.Node, format string, args ...any) error {
	return &yaml.SyntaxError{Message: fmt.Sprintf(format, args...), Token: node.GetToken()}
}
