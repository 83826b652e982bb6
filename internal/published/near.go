package published

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
)

// Near fails the test where got and want differ by more than a share of want.
// It is for laws and for values of our own; a print is checked by Check.
func Near(t *testing.T, what string, got, want, relative float64) {
	t.Helper()
	if !(math.Abs(got-want) <= relative*math.Abs(want)) { // negated so that NaN fails
		t.Errorf("%s: got %.9g, want %.9g within %g of it", what, got, want, relative)
	}
}

// Refuses fails the test unless err is a range error on that parameter.
func Refuses(t *testing.T, param string, err error) {
	t.Helper()
	var r *check.RangeError
	if !errors.As(err, &r) || r.Param != param {
		t.Errorf("got %v, want a range error on %s", err, param)
	}
}
