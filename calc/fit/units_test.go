package fit

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
)

const (
	mm   = 1e-3
	um   = 1e-6
	inch = 0.0254
	mpa  = 1e6
	gpa  = 1e9
	psi  = 6894.757
)

// must is the value of a formula whose inputs are in range.
func must[T any](value T, err error) T {
	if err != nil {
		panic(err)
	}
	return value
}

// refuses fails unless err is a range error on that parameter.
func refuses(t *testing.T, param string, err error) {
	t.Helper()
	var r *check.RangeError
	if !errors.As(err, &r) || r.Param != param {
		t.Errorf("got %v, want a range error on %s", err, param)
	}
}

func near(got, want, tolerance float64) bool {
	return math.Abs(got-want) <= tolerance*math.Abs(want)
}
