package weldplan

import (
	"fmt"
	"strings"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/token"

	"axlewright/axle"
)

// A sheet is a data file with the places of all its fields, so that what is
// found wrong later can still be shown where it stands.
type sheet struct {
	file   string
	lines  []string
	places map[string]token.Position // by field: "plates[2].runs[1].wall"
	odd    ast.Node                  // an anchor, an alias or a tag: no data file of ours has one
}

func newSheet(file, text string, root ast.Node) *sheet {
	s := &sheet{file: file, lines: strings.Split(text, "\n"), places: map[string]token.Position{}}
	s.walk(root, "")
	return s
}

func (s *sheet) walk(node ast.Node, field string) {
	if tk := firstToken(node); field != "" && tk != nil && tk.Position != nil {
		s.places[field] = *tk.Position
	}
	switch node := node.(type) {
	case *ast.AnchorNode, *ast.AliasNode, *ast.TagNode:
		s.odd = node
	case *ast.MappingNode:
		for _, pair := range node.Values {
			s.pair(pair, field)
		}
	case *ast.MappingValueNode:
		s.pair(node, field)
	case *ast.SequenceNode:
		for i, item := range node.Values {
			s.walk(item, fmt.Sprintf("%s[%d]", field, i))
		}
	}
}

func (s *sheet) pair(pair *ast.MappingValueNode, field string) {
	if _, plain := oneLine(pair.Key); !plain {
		s.odd = pair.Key
	}
	key := pair.Key.GetToken().Value
	s.walk(pair.Value, strings.TrimPrefix(field+"."+key, "."))
}

// firstToken is where a node begins: of a mapping its first key.
func firstToken(node ast.Node) *token.Token {
	switch node := node.(type) {
	case *ast.MappingNode:
		if !node.IsFlowStyle && len(node.Values) > 0 {
			return firstToken(node.Values[0].Key)
		}
	case *ast.MappingValueNode:
		return firstToken(node.Key)
	}
	return node.GetToken()
}

// finding is a finding about a field, or about the nearest thing around it.
func (s *sheet) finding(field, problem string) axle.Finding {
	at := field
	for at != "" {
		if p, known := s.places[at]; known {
			return s.at(p.Line, p.Column, field, problem)
		}
		at = at[:max(0, strings.LastIndexAny(at, ".["))]
	}
	return s.at(1, 1, field, problem)
}

// at is a finding with the line it is about and a caret under the place.
func (s *sheet) at(line, column int, field, problem string) axle.Finding {
	f := axle.Finding{File: s.file, Line: line, Column: column, Field: field, Problem: problem}
	if line >= 1 && line <= len(s.lines) {
		const width = 100 // characters shown
		text := []rune(strings.TrimRight(strings.ReplaceAll(s.lines[line-1], "\t", " "), "\r"))
		caret := min(max(column-1, 0), len(text))
		from := 0
		if len(text) > width {
			from = max(0, caret-width/2)
		}
		number := fmt.Sprintf("%5d | ", line)
		f.Excerpt = number + string(text[from:min(len(text), from+width)]) + "\n" +
			strings.Repeat(" ", len(number)-2) + "| " + strings.Repeat(" ", caret-from) + "^"
	}
	return f
}
