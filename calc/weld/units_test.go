package weld

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
)

// Units of the sources.
const (
	mm     = 1e-3
	mpa    = 1e6
	inch   = 0.0254
	kip    = 4448.2216152605
	psi    = 6894.757293168
	degree = math.Pi / 180
)

// must stops the test at an error; it carries one value so that rows stay readable.
func must[T any](value T, err error) T {
	if err != nil {
		panic(err)
	}
	return value
}

func refused(t *testing.T, param string, err error) {
	t.Helper()
	var r *check.RangeError
	if !errors.As(err, &r) {
		t.Errorf("got error %v, want a range error on %s", err, param)
	} else if r.Param != param {
		t.Errorf("refused %s, want %s: %v", r.Param, param, err)
	}
}

func near(t *testing.T, what string, got, want, relative float64) {
	t.Helper()
	if !(math.Abs(got-want) <= relative*math.Max(math.Abs(want), math.Abs(got))+1e-300) {
		t.Errorf("%s: got %.12g, want %.12g", what, got, want)
	}
}
