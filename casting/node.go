package casting

import (
	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"
)

// rawNode is a piece of YAML that can only be understood once the features of
// the catalogue are known.
type rawNode = ast.Node

// A pair is one line of a mapping, in the order of the file.
type pair struct {
	key   string
	value ast.Node
	line  int
}

// pairs reads a mapping in its order; expected says what for, in a refusal.
func pairs(node ast.Node, expected string) ([]pair, error) {
	var values []*ast.MappingValueNode
	switch n := node.(type) {
	case *ast.MappingNode:
		values = n.Values
	case *ast.MappingValueNode:
		values = []*ast.MappingValueNode{n}
	case *ast.NullNode:
		return nil, nil
	default:
		return nil, at(node, "expected "+expected)
	}
	list := make([]pair, 0, len(values))
	seen := map[string]bool{}
	for _, v := range values {
		key := keyWord(v.Key)
		if key == "" {
			return nil, at(v, "expected a name before the colon")
		}
		if seen[key] {
			return nil, at(v.Key, "stands twice; names must differ")
		}
		seen[key] = true
		list = append(list, pair{key, v.Value, startLine(v.Key)})
	}
	return list, nil
}

func keyWord(key ast.MapKeyNode) string {
	if s, ok := key.(*ast.StringNode); ok {
		return s.Value
	}
	return key.GetToken().Value
}

// word returns the text of a plain value: a word, or a number as typed.
func word(node ast.Node) (string, bool) {
	switch n := node.(type) {
	case *ast.StringNode:
		return n.Value, true
	case *ast.LiteralNode:
		return n.Value.Value, true
	case *ast.IntegerNode, *ast.FloatNode, *ast.BoolNode:
		return node.GetToken().Value, true
	}
	return "", false
}

// at is an error that shows the place in the file with a caret.
func at(node ast.Node, message string) error {
	return &yaml.SyntaxError{Message: message, Token: node.GetToken()}
}

// startLine is the line on which a node begins; a mapping's own token is the
// colon behind its first key.
func startLine(node ast.Node) int {
	if m, ok := node.(*ast.MappingNode); ok && len(m.Values) > 0 {
		return startLine(m.Values[0].Key)
	}
	if v, ok := node.(*ast.MappingValueNode); ok {
		return startLine(v.Key)
	}
	if t := node.GetToken(); t != nil && t.Position != nil {
		return t.Position.Line
	}
	return 0
}
