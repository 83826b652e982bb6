package axle

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"sync"

	"github.com/goccy/go-yaml/ast"
)

// A key is one field of a struct as it is written in a file.
type key struct {
	name     string
	index    int
	optional bool
	allowed  string // the tag `range`: what a figure can be
}

// shapeOf lists the keys of a struct type.
func shapeOf(t reflect.Type) []key {
	if known, ok := shapes.Load(t); ok {
		return known.([]key)
	}
	var keys []key
	for i := range t.NumField() {
		f := t.Field(i)
		name, options, _ := strings.Cut(f.Tag.Get("yaml"), ",")
		if !f.IsExported() || name == "-" || name == "" {
			continue
		}
		keys = append(keys, key{name, i, strings.Contains(options, "omitempty"), f.Tag.Get("range")})
	}
	shapes.Store(t, keys)
	return keys
}

var shapes sync.Map // of []key by reflect.Type

// mapping reads keys with their values into a struct.
func (r *reading) mapping(v reflect.Value, node ast.Node, field string) {
	keys := shapeOf(v.Type())
	pairs, ok := pairsOf(node)
	if !ok {
		_, list := node.(*ast.SequenceNode)
		if _, err := scalarText(node); err != nil && !list { // nothing, or an alias
			r.fault(node, field, err)
			return
		}
		r.add(startOf(node), field, "expected keys with values, such as %s", example(keys))
		return
	}
	seen := map[string]int{}
	for _, pair := range pairs {
		name := keyText(pair)
		inner := strings.TrimPrefix(field+"."+name, ".")
		at := slices.IndexFunc(keys, func(k key) bool { return k.name == name })
		switch line, repeated := seen[name]; {
		case at < 0:
			r.add(startOf(pair.Key), inner, "unknown key%s", expectedKey(name, names(keys), pair.Value))
			continue
		case repeated:
			r.add(startOf(pair.Key), inner, "stands twice, first in line %d", line)
			continue
		}
		seen[name] = startOf(pair.Key).Position.Line
		r.note(inner, startOf(pair.Value))
		r.value(v.Field(keys[at].index), pair.Value, inner)
		r.checkRange(v.Field(keys[at].index), keys[at], inner)
	}
	r.missing(v.Type(), node, field, seen)
}

// pairsOf returns the pairs of a mapping.
func pairsOf(node ast.Node) ([]*ast.MappingValueNode, bool) {
	switch node := node.(type) {
	case *ast.MappingNode:
		return node.Values, true
	case *ast.MappingValueNode:
		return []*ast.MappingValueNode{node}, true
	}
	return nil, false
}

// missing finds the keys that a mapping lacks.
func (r *reading) missing(t reflect.Type, node ast.Node, field string, seen map[string]int) {
	var lacks []string
	for _, k := range shapeOf(t) {
		if _, there := seen[k.name]; there || k.optional {
			continue
		}
		inner := strings.TrimPrefix(field+"."+k.name, ".")
		if !r.ask(t.Field(k.index).Type, node, inner) {
			lacks = append(lacks, k.name)
		}
	}
	if len(lacks) > 0 {
		r.add(startOf(node), field, "lacks %s; every figure of a part is needed, an assumed one with its doubt will do", enumerated(lacks))
	}
}

// ask enters one finding for each question of an enquiry that a missing key
// leaves open, and says whether there was any.
func (r *reading) ask(t reflect.Type, node ast.Node, field string) bool {
	if why, asked := asked[field]; asked {
		r.add(startOf(node), field, "is not told yet. %s", why)
		return true
	}
	found := false
	if t.Kind() == reflect.Struct {
		for _, k := range shapeOf(t) {
			if !k.optional && r.ask(t.Field(k.index).Type, node, field+"."+k.name) {
				found = true
			}
		}
	}
	return found
}

func names(keys []key) []string {
	list := make([]string, len(keys))
	for i, k := range keys {
		list[i] = k.name
	}
	return list
}

// example is "name: …" of the first key.
func example(keys []key) string {
	if len(keys) == 0 {
		return "key: value"
	}
	return keys[0].name + ": …"
}

// expectedKey ends a sentence about a key that is not known.
func expectedKey(typed string, known []string, value ast.Node) string {
	if _, empty := value.(*ast.NullNode); empty {
		return fmt.Sprintf(" without a value; inside { } a comma ends a value, so a text or a figure with one stands in quotes: \"…, %s\"", typed)
	}
	if word := nearest(typed, known); word != "" {
		return fmt.Sprintf("; is %q meant?", word)
	}
	return "; expected " + enumerated(known)
}

// enumerated joins words with commas and a last "and".
func enumerated(words []string) string {
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
	return strings.Join(words, "")
}
