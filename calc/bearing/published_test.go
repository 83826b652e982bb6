package bearing

import (
	"math"
	"testing"

	"axlewright/internal/published"
)

const (
	degree = math.Pi / 180
	rpm    = math.Pi / 30
	hour   = 3600.
)

// must stops a test on an input that should have been accepted.
func must[T any](t *testing.T, v T, err error) T {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	return v
}

var near = published.Near

// check1 is the table of one source with one row.
func check1(t *testing.T, name string, got float64, printed, source string) {
	t.Helper()
	published.Check(t, []published.Row{{Name: name, Got: got, Printed: printed, Source: source}})
}
