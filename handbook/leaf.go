package handbook

import (
	"fmt"
	"reflect"
	"strings"

	"axlewright/quantity"
)

// A leaf is one number, word or list inside the parameters or results of a
// formula, with the way to it.
type leaf struct {
	Symbol
	arg       int   // index of the parameter or result
	path      []int // field indexes inside it
	typ       reflect.Type
	dimension quantity.Dimension
	words     []string // that a word may be, where its type lists them
	item      []leaf   // for a list of records: the leaves of one record
}

func (lib library) inputLeaves(doc docstring, t reflect.Type) ([]leaf, error) {
	structs := 0
	for i := range t.NumIn() {
		if t.In(i).Kind() == reflect.Struct {
			structs++
		}
	}
	var leaves []leaf
	for i := range t.NumIn() {
		in, name := t.In(i), doc.params[i]
		if in.Kind() == reflect.Struct {
			prefix := ""
			if structs > 1 {
				prefix = name + "."
			}
			inner, err := lib.fieldLeaves(in, prefix, nil)
			if err != nil {
				return nil, err
			}
			for j := range inner {
				inner[j].arg = i
			}
			leaves = append(leaves, inner...)
			continue
		}
		s, ok := doc.symbols[name]
		if !ok {
			return nil, fmt.Errorf("parameter %s is not described", name)
		}
		l, err := lib.newLeaf(Symbol{Key: name, Sign: s.sign, Meaning: s.meaning, Unit: s.unit, Optional: s.optional}, in)
		if err != nil {
			return nil, err
		}
		l.arg = i
		leaves = append(leaves, l)
	}
	return leaves, nil
}

// resultLeaves describes the first result; a second one must be an error.
func (lib library) resultLeaves(doc docstring, t reflect.Type) ([]leaf, error) {
	if t.NumOut() == 0 {
		return nil, fmt.Errorf("returns nothing")
	}
	if t.NumOut() > 2 || t.NumOut() == 2 && t.Out(1) != reflect.TypeFor[error]() {
		return nil, fmt.Errorf("returns more than one result and an error")
	}
	out := t.Out(0)
	if out.Kind() == reflect.Struct {
		return lib.fieldLeaves(out, "", nil)
	}
	if len(doc.lines) == 0 {
		return nil, fmt.Errorf("has no formula line")
	}
	sign, _, _ := strings.Cut(strings.TrimSpace(doc.lines[0]), " ")
	s, ok := doc.symbols[sign]
	if !ok {
		return nil, fmt.Errorf("result symbol %q of the first formula line is not described", sign)
	}
	l, err := lib.newLeaf(Symbol{Key: sign, Sign: sign, Meaning: s.meaning, Unit: s.unit}, out)
	return []leaf{l}, err
}

func (lib library) fieldLeaves(t reflect.Type, prefix string, path []int) ([]leaf, error) {
	var leaves []leaf
	for i := range t.NumField() {
		field := t.Field(i)
		if !field.IsExported() {
			continue
		}
		way := append(append([]int(nil), path...), i)
		if field.Type.Kind() == reflect.Struct {
			inner := prefix + kebab(field.Name) + "."
			if field.Anonymous {
				inner = prefix
			}
			nested, err := lib.fieldLeaves(field.Type, inner, way)
			if err != nil {
				return nil, err
			}
			leaves = append(leaves, nested...)
			continue
		}
		s, ok := lib.fields[typeName(t)+"."+field.Name]
		isList := field.Type.Kind() == reflect.Slice && field.Type.Elem().Kind() == reflect.Struct
		if !ok || s.unit == "" && !isList { // records carry their units field by field
			return nil, fmt.Errorf("field %s.%s lacks a comment \"unit, meaning\"", typeName(t), field.Name)
		}
		l, err := lib.newLeaf(Symbol{Key: prefix + kebab(field.Name), Sign: s.sign, Meaning: s.meaning, Unit: s.unit, Optional: s.optional}, field.Type)
		if err != nil {
			return nil, err
		}
		l.path = way
		leaves = append(leaves, l)
	}
	return leaves, nil
}

func (lib library) newLeaf(s Symbol, t reflect.Type) (leaf, error) {
	l := leaf{Symbol: s, typ: t}
	switch kind := t.Kind(); {
	case kind == reflect.Slice && t.Elem().Kind() == reflect.Struct:
		item, err := lib.fieldLeaves(t.Elem(), "", nil)
		if err != nil {
			return l, err
		}
		l.item = item
		return l, nil
	case kind == reflect.Slice || kind == reflect.Array:
		t = t.Elem()
	}
	switch t.Kind() {
	case reflect.Float64, reflect.Int, reflect.Bool, reflect.String:
	default:
		return l, fmt.Errorf("%s is of kind %s, which the handbook cannot read", s.Key, l.typ)
	}
	l.words = lib.words[typeName(t)]
	if s.Unit == "" {
		return l, fmt.Errorf("%s has no unit", s.Key)
	}
	var known bool
	if l.dimension, known = quantity.ByMeaning(s.Unit, s.Meaning); !known {
		return l, fmt.Errorf("%s: unit %q is not one that quantity knows", s.Key, s.Unit)
	}
	return l, nil
}

// typeName is "bolt.JointParams".
func typeName(t reflect.Type) string {
	return t.String()
}
