package fit

import (
	"math"

	"axlewright/internal/published"
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

var refuses = published.Refuses

func near(got, want, tolerance float64) bool {
	return math.Abs(got-want) <= tolerance*math.Abs(want)
}
