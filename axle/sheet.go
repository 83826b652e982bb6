package axle

import (
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"
)

// A Sheet is the text of one data file, with the places of its fields, so that
// what is found wrong later can still be shown where it stands.
type Sheet struct {
	source
	places map[string]place // by field: "plates[2].runs[1].wall"
	odd    *place           // an anchor, an alias, a tag or an odd key: no data file of ours has one
}

// ReadSheet reads a YAML file strictly into v: unknown and repeated keys, wrong
// kinds of values and wrong units are refused. Of unknown keys all are told, of
// the others the first.
//
// Errors: Findings with file, line and column.
func ReadSheet(path string, v any) (*Sheet, error) {
	text, problem := readText(path)
	if problem != "" {
		return nil, Findings{{File: path, Problem: problem}}
	}
	return DecodeSheet(path, text, v)
}

// DecodeSheet is ReadSheet for a text; file is its name for findings.
func DecodeSheet(file, text string, v any) (*Sheet, error) {
	s := &Sheet{source: source{file: file, lines: strings.Split(text, "\n")}, places: map[string]place{}}
	if problem := badText([]byte(text)); problem != "" {
		return s, Findings{{File: file, Problem: problem}}
	}
	root, finding := parseText(&s.source, text)
	if finding != nil {
		return s, Findings{*finding}
	}
	s.walk(root, "")
	if s.odd != nil {
		return s, Findings{s.odd.finding("", "anchors (&), aliases (*), tags (!) and odd keys are not used in these files; write the value out")}
	}
	if found := s.unknownKeys(reflect.TypeOf(v), root, ""); len(found) > 0 {
		return s, found
	}
	if err := unmarshal(text, v); err != nil {
		f := FindingOf("", err)
		return s, Findings{s.FindingAt(f.Line, f.Column, "", f.Problem)}
	}
	return s, nil
}

// unknownKeys finds every key that a type does not have. What reads itself is
// left to its own reader.
func (s *Sheet) unknownKeys(t reflect.Type, node ast.Node, field string) (found Findings) {
	if reflect.PointerTo(t).Implements(reflect.TypeFor[yaml.NodeUnmarshaler]()) {
		return nil
	}
	switch t.Kind() {
	case reflect.Pointer:
		return s.unknownKeys(t.Elem(), node, field)
	case reflect.Slice:
		list, _ := node.(*ast.SequenceNode)
		for i := 0; list != nil && i < len(list.Values); i++ {
			found = append(found, s.unknownKeys(t.Elem(), list.Values[i], fmt.Sprintf("%s[%d]", field, i))...)
		}
	case reflect.Struct:
		keys := shapeOf(t)
		pairs, _ := pairsOf(node)
		for _, pair := range pairs {
			name := keyText(pair)
			inner := strings.TrimPrefix(field+"."+name, ".")
			if at := slices.IndexFunc(keys, func(k key) bool { return k.name == name }); at >= 0 {
				found = append(found, s.unknownKeys(t.Field(keys[at].index).Type, pair.Value, inner)...)
			} else {
				found = append(found, s.placeOf(pair.Key).finding(inner, "unknown key"+expectedKey(name, names(keys), pair.Value)))
			}
		}
	}
	return found
}

// unmarshal turns a panic of the YAML library, which some odd files cause, into
// an error.
func unmarshal(text string, v any) (err error) {
	defer func() {
		if recover() != nil {
			err = errors.New("the YAML reader cannot make sense of it; is a tag or a dash left without anything behind it?")
		}
	}()
	return yaml.UnmarshalWithOptions([]byte(strings.TrimPrefix(text, "\ufeff")), v, yaml.Strict())
}

func (s *Sheet) walk(node ast.Node, field string) {
	at := s.placeOf(node)
	if field != "" {
		s.places[field] = at
	}
	switch node := node.(type) {
	case *ast.AnchorNode, *ast.AliasNode, *ast.TagNode:
		s.odd = &at
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

func (s *Sheet) pair(pair *ast.MappingValueNode, field string) {
	if _, err := scalarText(pair.Key); err != nil {
		at := s.placeOf(pair.Key)
		s.odd = &at
	}
	s.walk(pair.Value, strings.TrimPrefix(field+"."+keyText(pair), "."))
}

func (s *Sheet) placeOf(node ast.Node) place {
	p := place{source: &s.source}
	if tk := startOf(node); tk != nil && tk.Position != nil {
		p.line, p.column = tk.Position.Line, tk.Position.Column
	}
	return p
}

// Finding is a finding about a field, or about the nearest thing around it.
func (s *Sheet) Finding(field, problem string) Finding {
	for at := field; at != ""; at = at[:max(0, strings.LastIndexAny(at, ".["))] {
		if p, known := s.places[at]; known {
			return p.finding(field, problem)
		}
	}
	return s.FindingAt(1, 1, field, problem)
}

// FindingAt is a finding at a line and a column, both from 1. A column of zero
// is that of the first word; a line of zero is no place. Data that came from no
// file have no sheet, and their findings no place.
func (s *Sheet) FindingAt(line, column int, field, problem string) Finding {
	if s == nil {
		return Finding{Line: line, Column: column, Field: field, Problem: problem}
	}
	if line >= 1 && line <= len(s.lines) && column == 0 {
		text := s.lines[line-1]
		column = len(text) - len(strings.TrimLeft(text, " \t")) + 1
	}
	return place{source: &s.source, line: line, column: column}.finding(field, problem)
}

// FindingOf is a finding at the line and column of an error of the YAML library.
func FindingOf(field string, err error) Finding {
	f := Finding{Field: field, Problem: err.Error()}
	var y yaml.Error
	if !errors.As(err, &y) || y.GetToken() == nil || y.GetToken().Position == nil {
		return f
	}
	f.Line, f.Column, f.Problem = y.GetToken().Position.Line, y.GetToken().Position.Column, y.GetMessage()
	var unknown *yaml.UnknownFieldError // within a value that reads itself
	var repeated *yaml.DuplicateKeyError
	switch {
	case errors.As(err, &unknown):
		f.Problem = fmt.Sprintf("unknown key %q here", y.GetToken().Value)
	case errors.As(err, &repeated):
		f.Problem = fmt.Sprintf("key %q stands twice", y.GetToken().Value)
	}
	return f
}
