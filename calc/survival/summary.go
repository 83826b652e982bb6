package survival

import (
	"fmt"
	"math"

	"axlewright/calc/check"
)

// SummaryResult describes readings in the order they were taken.
type SummaryResult struct {
	Mean float64 // -, x̄: mean
	SD   float64 // -, s: standard deviation of the sample
	Lag1 float64 // -, r1: likeness of each reading to the one before; near 0 when nothing drifts
}

// Summary returns the mean and spread of readings, and whether each resembles the one before.
//
//	x̄ = Σ x/n
//	s² = Σ (x − x̄)²/(n − 1)
//	r1 = Σ (x_i − x̄)·(x_(i+1) − x̄)/Σ (x − x̄)²
//
//	values  readings in the order they were taken, -
//
// Valid for two readings or more that are not all alike.
// Errors: *check.RangeError outside that range.
// Source: NIST Statistical Reference Datasets, univariate summary statistics.
func Summary(values []float64) (SummaryResult, error) {
	const fn = "survival.Summary"
	n := float64(len(values))
	if err := check.All(fn, check.That("len(values)", n, n >= 2, ">= 2")); err != nil {
		return SummaryResult{}, err
	}
	rough := 0.0
	for i, v := range values {
		if err := check.All(fn, check.Finite(fmt.Sprintf("values[%d]", i), v)); err != nil {
			return SummaryResult{}, err
		}
		rough += v / n
	}
	rest := 0.0
	for _, v := range values {
		rest += (v - rough) / n
	}
	mean := rough + rest // a second pass takes away what rounding left
	var square, neighbour float64
	for i, v := range values {
		square += (v - mean) * (v - mean)
		if i > 0 {
			neighbour += (v - mean) * (values[i-1] - mean)
		}
	}
	if err := check.All(fn, check.That("spread", square, square > 0, "> 0: the readings are not all alike")); err != nil {
		return SummaryResult{}, err
	}
	return SummaryResult{Mean: mean, SD: math.Sqrt(square / (n - 1)), Lag1: neighbour / square}, nil
}
