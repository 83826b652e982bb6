package bolt

import (
	"math"

	"axlewright/internal/published"
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

var refuses = published.Refuses

func near(got, want, tolerance float64) bool {
	return math.Abs(got-want) <= tolerance*math.Max(math.Abs(want), 1e-300)
}
