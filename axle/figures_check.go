package axle

import (
	"fmt"
	"math"
	"reflect"
	"strings"

	"axlewright/quantity"
)

// checkFigures finds figures that are missing or outside what they can be. The
// tag `range` of a field says what it can be: "any", ">= 0" or "0..1"; without
// one a figure must be above zero. A field whose yaml tag says omitempty may
// be left out.
func checkFigures(v any, place string) Findings {
	var found Findings
	walkFigures(reflect.ValueOf(v).Elem(), place, &found)
	return found
}

func walkFigures(v reflect.Value, place string, found *Findings) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			walkFigures(v.Elem(), place, found)
		}
	case reflect.Slice:
		for i := range v.Len() {
			walkFigures(v.Index(i), fmt.Sprintf("%s[%s]", place, itemName(v.Index(i), i)), found)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			field := v.Type().Field(i)
			if !field.IsExported() {
				continue
			}
			key, options, _ := strings.Cut(field.Tag.Get("yaml"), ",")
			inner := strings.TrimPrefix(place+"."+key, ".")
			if n, ok := asNumber(v.Field(i)); ok {
				if problem := n.problem(field.Tag.Get("range"), strings.Contains(options, "omitempty")); problem != "" {
					*found = append(*found, Finding{Line: n.Line, Field: inner, Problem: problem})
				}
				continue
			}
			walkFigures(v.Field(i), inner, found)
		}
	}
}

// asNumber returns the Number inside an Of.
func asNumber(v reflect.Value) (*Number, bool) {
	if v.Kind() != reflect.Struct || v.NumField() != 1 || v.Type().Field(0).Type != numberType {
		return nil, false
	}
	return v.Field(0).Addr().Interface().(*Number), true
}

// problem says in a sentence what is wrong with the figure, or nothing.
func (n *Number) problem(allowed string, optional bool) string {
	if !n.Given() {
		if optional {
			return ""
		}
		return "is missing; every figure of this part is needed, an assumed one with its doubt will do"
	}
	low, high := math.Min(n.Low, n.High), math.Max(n.Low, n.High)
	if n.Shape == Triangular && !(low <= n.Value && n.Value <= high) {
		return fmt.Sprintf("%q lies outside its own doubt", n.Text)
	}
	switch allowed {
	case "any":
		return ""
	case ">= 0":
		if n.Value < 0 || low < 0 {
			return fmt.Sprintf("%q reaches below zero, where it must not be", n.Text)
		}
	case "0..1":
		if low < 0 || high > 1 || n.Value < 0 || n.Value > 1 {
			return fmt.Sprintf("%q is not within 0 and 1", n.Text)
		}
	default:
		if n.Value <= 0 || low <= 0 {
			return fmt.Sprintf("%q reaches to zero or below; it must stay above. A doubt in percent always does", n.Text)
		}
	}
	return ""
}

// say prints a value of a dimension for a sentence.
func say(value float64, dim quantity.Dimension) string { return quantity.Format(value, dim) }
