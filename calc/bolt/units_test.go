package bolt

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
)

// Units of the prints, in SI.
const (
	mm   = 1e-3
	kN   = 1e3
	mpa  = 1e6
	gpa  = 1e9
	lbf  = 4.4482216
	lbIn = 0.11298483
	lbFt = 1.3558179
	kpsi = 6.894757e6
	deg  = math.Pi / 180
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
	return math.Abs(got-want) <= tolerance*math.Max(math.Abs(want), 1e-300)
}
