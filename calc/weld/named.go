package weld

import (
	"fmt"
	"strings"

	"axlewright/calc/check"
)

// nameError says that a name is not in a table; it unwraps to a *check.RangeError
// so that callers treat it like any other input outside the range.
type nameError struct {
	outside *check.RangeError
	given   string
}

func (e *nameError) Error() string {
	return fmt.Sprintf("%s: %s %q is not one of %s", e.outside.Func, e.outside.Param, e.given, e.outside.Range)
}

func (e *nameError) Unwrap() error { return e.outside }

func notNamed[T ~string](fn, param string, given T, known []T) error {
	names := make([]string, len(known))
	for i, k := range known {
		names[i] = string(k)
	}
	return &nameError{&check.RangeError{Func: fn, Param: param, Range: strings.Join(names, ", ")}, string(given)}
}
