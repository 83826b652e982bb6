package weld

import (
	"math"

	"axlewright/internal/published"
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

var refused = published.Refuses

var near = published.Near
