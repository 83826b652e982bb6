package axle

import (
	"fmt"
	"math"
	"reflect"
)

// rangeOf is what a figure can be at all by the tag `range` of its field:
// "any", ">= 0", ">= 1" or "0..1"; without a tag it is above zero.
func rangeOf(tag string) (least, most float64) {
	switch tag {
	case "any":
		return math.Inf(-1), math.Inf(1)
	case ">= 1":
		return 1, math.Inf(1)
	case "0..1":
		return 0, 1
	}
	return 0, math.Inf(1)
}

// checkRange finds a figure that its field cannot have.
func (r *reading) checkRange(v reflect.Value, k key, field string) {
	if v.Kind() == reflect.Pointer {
		if v.IsNil() {
			return
		}
		v = v.Elem()
	}
	n, is := asNumber(v)
	if !is || !n.Given() {
		return
	}
	if problem := n.outside(k.allowed); problem != "" {
		r.about(field, "%s", problem)
	}
}

// asNumber returns the Number inside an Of.
func asNumber(v reflect.Value) (*Number, bool) {
	if v.Kind() != reflect.Struct || v.NumField() != 1 || v.Type().Field(0).Type != numberType {
		return nil, false
	}
	return v.Field(0).Addr().Interface().(*Number), true
}

// outside says in a sentence what a figure has no business to be, or nothing.
// A doubt in percent, or any without sharp ends, is cut off where it would
// leave the range; ends that were typed must stay inside.
func (n *Number) outside(tag string) string {
	least, most := rangeOf(tag)
	low, high := math.Min(n.Low, n.High), math.Max(n.Low, n.High)
	if n.Shape == Lognormal {
		low, high = n.Value, n.Value
	}
	switch {
	case tag == "" && n.Value <= 0:
		return fmt.Sprintf("%q is not above zero, where it must be", n.Text)
	case tag == "" && low <= 0:
		return fmt.Sprintf("%q reaches to zero or below; it must stay above. A doubt in percent always does", n.Text)
	case n.Value < least || n.Value > most:
		return fmt.Sprintf("%q is not %s", n.Text, rangeInWords(tag))
	case low < least || high > most:
		return fmt.Sprintf("the doubt of %q reaches beyond what it can be: %s", n.Text, rangeInWords(tag))
	}
	return ""
}

func rangeInWords(tag string) string {
	switch tag {
	case "0..1":
		return "within 0 and 1"
	case ">= 1":
		return "1 or more"
	}
	return "zero or more"
}
