package check

import (
	"errors"
	"math"
	"testing"
)

func TestAllNamesTheFirstConditionThatFails(t *testing.T) {
	err := All("bolt.StressArea", Positive("d", 0.012), Positive("pitch", -1), Positive("q", -2))
	var r *RangeError
	if !errors.As(err, &r) {
		t.Fatalf("got %v, want a *RangeError", err)
	}
	if r.Param != "pitch" || r.Value != -1 || r.Func != "bolt.StressArea" {
		t.Errorf("got %+v", r)
	}
	if got, want := err.Error(), "bolt.StressArea: pitch = -1 is outside the range > 0"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestConditionsRefuseNaNAndInfinity(t *testing.T) {
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		for name, c := range map[string]Condition{
			"Positive":    Positive("x", bad),
			"NotNegative": NotNegative("x", bad),
			"Finite":      Finite("x", bad),
			"Within":      Within("x", bad, -1, 1),
			"That":        That("x", bad, true, "any"),
		} {
			if c.Holds {
				t.Errorf("%s accepts %g", name, bad)
			}
		}
	}
}
