package weldplan

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/goccy/go-yaml/ast"
	"gonum.org/v1/gonum/spatial/r3"

	"axlewright/axle"
	"axlewright/quantity"
)

// A Place is a point in the casting's frame: x along the pinion axis and out of
// the nose, y along the crown-wheel axis from the pinion towards the back of the
// crown wheel, z square to both; the origin is where the two axes cross.
type Place struct {
	At    r3.Vec // m
	Given bool
}

// UnmarshalYAML reads [35 mm, -60 mm, 12 mm].
func (p *Place) UnmarshalYAML(node ast.Node) error {
	list, ok := node.(*ast.SequenceNode)
	if !ok || len(list.Values) != 3 {
		return faultAt(node, "expected a place as three lengths x, y and z, such as [35 mm, -60 mm, 12 mm]")
	}
	var at [3]float64
	for i, item := range list.Values {
		var l axle.Length
		if err := l.UnmarshalYAML(item); err != nil {
			return err
		}
		at[i] = l.Value
	}
	p.At, p.Given = r3.Vec{X: at[0], Y: at[1], Z: at[2]}, true
	return nil
}

// String is the place for people: "x 35, y −60, z 12 mm".
func (p Place) String() string { return placeText(p.At) }

func placeText(v r3.Vec) string {
	round := func(m float64) string {
		mm := math.Round(m * 1e3)
		if mm < 0 {
			return fmt.Sprintf("−%.0f", -mm)
		}
		return fmt.Sprintf("%.0f", math.Abs(mm))
	}
	return fmt.Sprintf("x %s, y %s, z %s mm", round(v.X), round(v.Y), round(v.Z))
}

// A Side is a direction along one of the axes: the way a face looks, a bore runs.
type Side string

// The sides.
const (
	PlusX  Side = "+x"
	MinusX Side = "-x"
	PlusY  Side = "+y"
	MinusY Side = "-y"
	PlusZ  Side = "+z"
	MinusZ Side = "-z"
)

var allSides = []Side{PlusX, MinusX, PlusY, MinusY, PlusZ, MinusZ}

// Vec is the unit vector of a side; of no side it is zero.
func (s Side) Vec() r3.Vec {
	switch s {
	case PlusX:
		return r3.Vec{X: 1}
	case MinusX:
		return r3.Vec{X: -1}
	case PlusY:
		return r3.Vec{Y: 1}
	case MinusY:
		return r3.Vec{Y: -1}
	case PlusZ:
		return r3.Vec{Z: 1}
	case MinusZ:
		return r3.Vec{Z: -1}
	}
	return r3.Vec{}
}

// UnmarshalYAML reads a side.
func (s *Side) UnmarshalYAML(node ast.Node) error {
	return readWord(node, s, allSides, "side")
}

// readWord reads one of a list of words.
func readWord[W ~string](node ast.Node, to *W, known []W, what string) error {
	text, ok := oneLine(node)
	if !ok {
		return faultAt(node, "expected a %s: %s", what, listed(known))
	}
	if !slices.Contains(known, W(text)) {
		return faultAt(node, "%q is no %s; expected %s", text, what, listed(known))
	}
	*to = W(text)
	return nil
}

// listed joins words for a sentence: "a, b or c".
func listed[W ~string](words []W) string {
	list := make([]string, len(words))
	for i, w := range words {
		list[i] = string(w)
	}
	if n := len(list); n > 1 {
		return strings.Join(list[:n-1], ", ") + " or " + list[n-1]
	}
	return strings.Join(list, "")
}

// mm is a length for a sentence, in millimetres.
func mm(metres float64) string { return quantity.Format(metres, quantity.Length) }
