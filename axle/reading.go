package axle

import (
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/token"
)

// A reading goes through data files and fills in what they say. It is strict:
// unknown and repeated keys, wrong kinds of values, wrong units and missing
// keys are findings. It does not stop at the first, and it knows afterwards
// where each field stands.
type reading struct {
	source *source
	places map[string]place // by field: "castings[T24].cap.width"
	found  Findings
	broken bool // a file could not be read at all
}

func newReading() *reading { return &reading{places: map[string]place{}} }

// file reads one file into v. What v holds already stays: lists grow.
func (r *reading) file(path string, v any) {
	text, problem := readText(path)
	if problem != "" {
		r.broken = true
		r.found = append(r.found, Finding{File: path, Problem: problem})
		return
	}
	r.text(path, text, v)
}

// text reads the text of a file into v.
func (r *reading) text(path, text string, v any) {
	r.source = &source{file: path, lines: strings.Split(text, "\n")}
	node, finding := parseText(r.source, text)
	if finding != nil {
		r.broken = true
		r.found = append(r.found, *finding)
		return
	}
	r.value(reflect.ValueOf(v).Elem(), node, "")
}

// add enters a finding at a token.
func (r *reading) add(tk *token.Token, field, format string, args ...any) {
	p := place{source: r.source}
	if tk != nil && tk.Position != nil {
		p.line, p.column = tk.Position.Line, tk.Position.Column
	}
	r.found = append(r.found, p.finding(field, fmt.Sprintf(format, args...)))
}

// about enters a finding about a field that has been read.
func (r *reading) about(field, format string, args ...any) {
	r.found = append(r.found, r.where(field).finding(field, fmt.Sprintf(format, args...)))
}

// where is the place of a field, or of the nearest thing around it.
func (r *reading) where(field string) place {
	for field != "" {
		if p, known := r.places[field]; known {
			return p
		}
		field = field[:max(0, strings.LastIndexAny(field, ".["))]
	}
	return place{source: r.source, line: 1, column: 1}
}

// clean says whether nothing was found yet in a field and all it holds; of the
// empty field, in anything.
func (r *reading) clean(field string) bool {
	if field == "" {
		return len(r.found) == 0
	}
	return !slices.ContainsFunc(r.found, func(f Finding) bool {
		rest, within := strings.CutPrefix(f.Field, field)
		return within && (rest == "" || rest[0] == '.' || rest[0] == '[')
	})
}

// value reads a node into v.
func (r *reading) value(v reflect.Value, node ast.Node, field string) {
	if u, ok := v.Addr().Interface().(yaml.NodeUnmarshaler); ok {
		if err := u.UnmarshalYAML(node); err != nil {
			r.fault(node, field, err)
		}
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		if v.IsNil() {
			v.Set(reflect.New(v.Type().Elem()))
		}
		r.value(v.Elem(), node, field)
	case reflect.Struct:
		r.mapping(v, node, field)
	case reflect.Slice:
		r.list(v, node, field)
	default:
		r.scalar(v, node, field)
	}
}

// fault enters an error that knows its place.
func (r *reading) fault(node ast.Node, field string, err error) {
	tk, message := startOf(node), err.Error()
	var positioned *yaml.SyntaxError
	if errors.As(err, &positioned) {
		tk, message = positioned.Token, positioned.Message
	}
	r.add(tk, field, "%s", message)
}

// scalar reads a word, a count, an amount or a yes or no.
func (r *reading) scalar(v reflect.Value, node ast.Node, field string) {
	text, err := scalarText(node)
	if err != nil {
		r.fault(node, field, err)
		return
	}
	switch v.Kind() {
	case reflect.String:
		if allowed := words[v.Type()]; allowed != nil && !slices.Contains(allowed, text) {
			r.add(startOf(node), field, "%q is not known here; expected %s", text, quoted(allowed))
			return
		}
		if strings.TrimSpace(text) == "" {
			r.add(startOf(node), field, "is empty; write it or leave the key out")
			return
		}
		v.SetString(text)
	case reflect.Int:
		n, err := strconv.Atoi(text)
		if err != nil || n < 0 || n > 1e6 {
			r.add(startOf(node), field, "%q is not a count; expected a whole number such as 12", text)
			return
		}
		v.SetInt(int64(n))
	case reflect.Float64:
		x, err := strconv.ParseFloat(text, 64)
		if err != nil || !(x >= 0 && x <= 1e12) || strings.ContainsAny(text, "xXpP_") {
			r.add(startOf(node), field, "%q is not an amount; expected a plain number, zero or more, without a unit, such as 45 or 0.95", text)
			return
		}
		v.SetFloat(x)
	case reflect.Bool:
		if text != "true" && text != "false" {
			r.add(startOf(node), field, "%q is neither true nor false", text)
			return
		}
		v.SetBool(text == "true")
	default: // a field of a kind that no data has; found by the first test that reads it
		panic("axle: cannot read a " + v.Type().String())
	}
}

// list reads a list and adds it to what v holds.
func (r *reading) list(v reflect.Value, node ast.Node, field string) {
	sequence, ok := node.(*ast.SequenceNode)
	if !ok {
		if _, err := scalarText(node); err != nil {
			r.fault(node, field, err)
			return
		}
		r.add(startOf(node), field, "expected a list, such as [%s]", startOf(node).Value)
		return
	}
	element := v.Type().Elem()
	for _, item := range sequence.Values {
		name, named := nameOf(element, item)
		if !named {
			name = strconv.Itoa(v.Len() + 1)
		}
		inner := field + "[" + name + "]"
		if first, repeated := r.places[inner]; named && repeated {
			r.add(startOf(item), inner, "stands twice, first at %s:%d; names must differ", first.source.file, first.line)
		}
		r.note(inner, startOf(item))
		v.Set(reflect.Append(v, reflect.Zero(element)))
		r.value(v.Index(v.Len()-1), item, inner)
	}
}

// nameOf returns the name that an item of a list goes by, where it has one.
func nameOf(element reflect.Type, item ast.Node) (string, bool) {
	if element.Kind() != reflect.Struct {
		return "", false
	}
	if _, named := element.FieldByName("Name"); !named {
		return "", false
	}
	if mapping, ok := item.(*ast.MappingNode); ok {
		for _, pair := range mapping.Values {
			if keyText(pair) == "name" {
				name, err := scalarText(pair.Value)
				return name, err == nil && name != ""
			}
		}
	}
	return "", false
}

func (r *reading) note(field string, tk *token.Token) {
	if tk != nil && tk.Position != nil {
		r.places[field] = place{r.source, tk.Position.Line, tk.Position.Column}
	}
}
