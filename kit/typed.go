package kit

import (
	"encoding/json"
	"fmt"
	"strings"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"
)

// Typed is a word, a number or an expression as it stands in a file, and where.
type Typed struct {
	Text         string
	Line, Column int // from 1; nought where it came from no file
}

// UnmarshalYAML keeps the text as typed and its place.
func (t *Typed) UnmarshalYAML(node ast.Node) error {
	text, ok := scalar(node)
	if !ok {
		return refuse(node, "expected a word, a number or an expression")
	}
	at := node.GetToken().Position
	*t = Typed{strings.Join(strings.Fields(text), " "), at.Line, at.Column}
	return nil
}

// MarshalJSON writes the text alone, so that a seal does not depend on places.
func (t Typed) MarshalJSON() ([]byte, error) { return json.Marshal(t.Text) }

// UnmarshalJSON reads it back, without a place.
func (t *Typed) UnmarshalJSON(text []byte) error {
	*t = Typed{}
	return json.Unmarshal(text, &t.Text)
}

// Given says whether anything was typed.
func (t Typed) Given() bool { return t.Text != "" }

func scalar(node ast.Node) (string, bool) {
	switch n := node.(type) {
	case *ast.StringNode:
		return n.Value, true
	case *ast.IntegerNode, *ast.FloatNode, *ast.BoolNode:
		return node.GetToken().Value, true
	}
	return "", false
}

// refuse is an error at the place of a node.
func refuse(node ast.Node, format string, args ...any) error {
	return &yaml.SyntaxError{Message: fmt.Sprintf(format, args...), Token: node.GetToken()}
}

// A Spot is a place in a drawing: [x, y], or the word start for where the
// outline began.
type Spot struct {
	X, Y         Typed
	Start        bool
	Line, Column int
}

// UnmarshalYAML reads [x, y] or start.
func (s *Spot) UnmarshalYAML(node ast.Node) error {
	at := node.GetToken().Position
	s.Line, s.Column = at.Line, at.Column
	if text, ok := scalar(node); ok && text == "start" {
		s.Start = true
		return nil
	}
	list, ok := node.(*ast.SequenceNode)
	if !ok || len(list.Values) != 2 {
		return refuse(node, "expected a place such as [120, 45.5], or start")
	}
	if err := s.X.UnmarshalYAML(list.Values[0]); err != nil {
		return err
	}
	return s.Y.UnmarshalYAML(list.Values[1])
}

// MarshalJSON writes what was typed.
func (s Spot) MarshalJSON() ([]byte, error) {
	if s.Start {
		return json.Marshal("start")
	}
	return json.Marshal([2]Typed{s.X, s.Y})
}

// UnmarshalJSON reads it back, without a place in a file.
func (s *Spot) UnmarshalJSON(text []byte) error {
	*s = Spot{Start: string(text) == `"start"`}
	if s.Start {
		return nil
	}
	var both [2]Typed
	err := json.Unmarshal(text, &both)
	s.X, s.Y = both[0], both[1]
	return err
}

// given says whether a place was typed.
func (s Spot) given() bool { return s.Start || s.X.Given() }

func (s Spot) typed() Typed { return Typed{"", s.Line, s.Column} }

// Sizes are named expressions in the order of the file; a later one may use an
// earlier one.
type Sizes []Size

// A Size is one of them.
type Size struct{ Name, Is Typed }

// UnmarshalYAML reads a mapping in its order.
func (s *Sizes) UnmarshalYAML(node ast.Node) error {
	var pairs []*ast.MappingValueNode
	switch n := node.(type) {
	case *ast.MappingNode:
		pairs = n.Values
	case *ast.MappingValueNode:
		pairs = []*ast.MappingValueNode{n}
	default:
		return refuse(node, "expected sizes such as long: 120 mm")
	}
	for _, pair := range pairs {
		key, ok := pair.Key.(ast.Node)
		var one Size
		if !ok {
			return refuse(node, "expected a name")
		}
		if err := one.Name.UnmarshalYAML(key); err != nil {
			return err
		}
		if err := one.Is.UnmarshalYAML(pair.Value); err != nil {
			return err
		}
		*s = append(*s, one)
	}
	return nil
}
