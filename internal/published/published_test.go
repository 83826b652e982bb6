package published

import (
	"math"
	"testing"
)

func TestParseTakesHalfAUnitOfTheLastDigit(t *testing.T) {
	for _, c := range []struct {
		printed     string
		value, half float64
	}{
		{"84.3", 84.3, 0.05},
		{"0.0020", 0.002, 0.00005},
		{"1041", 1041, 0.5},
		{"1.5e3", 1500, 50},
		{"-0.25", -0.25, 0.005},
	} {
		value, half, err := parse(c.printed)
		if err != nil || value != c.value || math.Abs(half-c.half) > 1e-15 {
			t.Errorf("parse(%q) = %g, %g, %v; want %g, %g", c.printed, value, half, err, c.value, c.half)
		}
	}
	if _, _, err := parse("about 5"); err == nil {
		t.Error("parse accepts words")
	}
}
