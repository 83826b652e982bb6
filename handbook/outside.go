package handbook

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"axlewright/calc/check"
	"axlewright/quantity"
)

// An outsideError is an input outside the range of its formula, told by the
// keys and in the units that people type; it unwraps to the *check.RangeError.
type outsideError struct {
	text  string
	cause error
}

func (e *outsideError) Error() string { return e.text }
func (e *outsideError) Unwrap() error { return e.cause }

// outside retells what a formula said of an input in the names of its own code
// and in SI. A fault that another formula found on the way is told in that
// formula's keys, under both names.
func (f Formula) outside(err error, typed map[string]string) error {
	var r *check.RangeError
	if !errors.As(err, &r) {
		return err
	}
	finder, name := f, f.Name
	if i := slices.IndexFunc(load(), func(other Formula) bool { return other.Func == r.Func }); i >= 0 && r.Func != f.Func {
		finder, name, typed = load()[i], f.Name+", in "+load()[i].Name, nil
	}
	key, l := finder.named(r.Param)
	expected := finder.rangeInWords(r, l)
	if l != nil && len(l.words) > 0 {
		expected = listed(l.words)
	}
	if given := l.given(r.Value, typed[key]); given != "" {
		key += " is " + given
	}
	return &outsideError{fmt.Sprintf("%s: %s, expected %s", name, key, expected), err}
}

// given is an input as it was typed, or as near to that as its value tells.
func (l *leaf) given(value float64, typed string) string {
	switch {
	case l != nil && l.typ.Kind() == reflect.String:
		if typed == "" {
			return ""
		}
		return strconv.Quote(typed)
	case typed != "":
		return typed
	case math.IsNaN(value):
		return ""
	case l != nil && l.measured():
		return quantity.Exact(value, l.dimension)
	}
	return strconv.FormatFloat(value, 'g', 12, 64)
}

// measured says whether a number is written with a unit.
func (l *leaf) measured() bool { return l.typ.Kind() != reflect.Int && l.Unit != "-" && l.Unit != "" }

// indexed is one item of a list as the formulas name it, counted from nought.
var indexed = regexp.MustCompile(`^(\w+)\[(\d+)\](?:\.(\w+))?$`)

// named finds the key of an input that a formula names in its own way, and the
// input itself where it is one number.
func (f Formula) named(param string) (key string, l *leaf) {
	field, item := param, ""
	if m := indexed.FindStringSubmatch(param); m != nil {
		n, _ := strconv.Atoi(m[2])
		field, item = m[1], fmt.Sprintf("[%d]", n+1)
		key = kebab(field) + item
		if m[3] != "" {
			key += "." + kebab(m[3])
		}
		for i := range f.inputs {
			list := &f.inputs[i]
			if list.Key != kebab(field) {
				continue
			}
			for k := range list.item {
				if list.item[k].Key == kebab(m[3]) {
					return key, &list.item[k]
				}
			}
			return key, &leaf{Symbol: list.Symbol, typ: reflect.TypeFor[float64](), dimension: list.dimension}
		}
		return key, nil
	}
	if inner, found := strings.CutPrefix(param, "len("); found {
		return "length of " + kebab(strings.TrimSuffix(inner, ")")), nil
	}
	if of, list, found := strings.Cut(param, " of "); found {
		return of + " of " + kebab(list), nil
	}
	parts := strings.Split(param, ".")
	for i := range parts {
		parts[i] = kebab(parts[i])
	}
	key = strings.Join(parts, ".")
	for i := range f.inputs {
		if k := f.inputs[i].Key; k == key || k == param {
			return k, &f.inputs[i]
		}
	}
	for i := range f.inputs { // a field of a group, named without it
		if strings.HasSuffix(f.inputs[i].Key, "."+key) {
			return f.inputs[i].Key, &f.inputs[i]
		}
	}
	return key, nil
}

var (
	fieldName = regexp.MustCompile(`\b[A-Z][A-Za-z]+[0-9]*\b`)
	siNumber  = regexp.MustCompile(`-?\d[\d.]*(?:e[+-]?\d+)?`)
	// plainRange holds nothing but bounds in SI round the name of the input.
	plainRange = regexp.MustCompile(`^(?:(?:<=?|>=?|to|-?\d[\d.]*(?:e[+-]?\d+)?)\s*)+$`)
)

// rangeInWords writes a range with keys for the names of fields and with units.
func (f Formula) rangeInWords(r *check.RangeError, l *leaf) string {
	text, _, _ := strings.Cut(r.Range, ", not \"")
	words := fieldName.ReplaceAllStringFunc(text, func(name string) string {
		for i := range f.inputs {
			if k := f.inputs[i].Key; k == kebab(name) || strings.HasSuffix(k, "."+kebab(name)) {
				return k
			}
		}
		return name
	})
	if l == nil || !l.measured() || !plainRange.MatchString(strings.Replace(r.Range, r.Param, "", 1)) {
		return words
	}
	return siNumber.ReplaceAllStringFunc(words, func(number string) string {
		x, err := strconv.ParseFloat(number, 64)
		if err != nil || x == 0 {
			return number
		}
		return quantity.Exact(x, l.dimension)
	})
}
