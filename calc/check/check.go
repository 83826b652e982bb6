// Package check states the range in which a formula holds and refuses inputs
// outside it. Formulas never clamp, never return NaN and never guess.
package check

import (
	"fmt"
	"math"
)

// RangeError says that an input lies outside the range in which a formula holds.
type RangeError struct {
	Func  string  // package and function, "bolt.StressArea"
	Param string  // the parameter as the docstring names it
	Value float64 // the value given, coherent SI
	Range string  // the range expected, "0 < pitch < d/2"
}

func (e *RangeError) Error() string {
	return fmt.Sprintf("%s: %s = %g is outside the range %s", e.Func, e.Param, e.Value, e.Range)
}

// Condition is one inequality that an input must meet.
type Condition struct {
	Param string
	Value float64
	Holds bool
	Range string
}

// All returns a *RangeError for the first condition that does not hold, else nil.
func All(fn string, conditions ...Condition) error {
	for _, c := range conditions {
		if !c.Holds {
			return &RangeError{Func: fn, Param: c.Param, Value: c.Value, Range: c.Range}
		}
	}
	return nil
}

// That is a condition of the caller's own wording; it also demands that value is finite.
func That(param string, value float64, holds bool, rng string) Condition {
	return Condition{param, value, holds && finite(value), rng}
}

// Positive demands a finite value above zero.
func Positive(param string, value float64) Condition {
	return Condition{param, value, finite(value) && value > 0, "> 0"}
}

// NotNegative demands a finite value of zero or above.
func NotNegative(param string, value float64) Condition {
	return Condition{param, value, finite(value) && value >= 0, ">= 0"}
}

// Finite demands a value that is neither NaN nor infinite.
func Finite(param string, value float64) Condition {
	return Condition{param, value, finite(value), "finite"}
}

// Within demands low <= value <= high.
func Within(param string, value, low, high float64) Condition {
	holds := value >= low && value <= high // false for NaN
	if holds {
		return Condition{param, value, true, ""}
	}
	return Condition{param, value, false, fmt.Sprintf("%g to %g", low, high)}
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
