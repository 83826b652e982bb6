package quantity

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestTwelveFold(t *testing.T) {
	for _, c := range []struct {
		a, b float64
		want bool
	}{
		{2.26, 27.1, true},   // 20 lbf·in against 20 lbf·ft
		{27.1, 2.26, true},   // either way
		{10.85, 0.904, true}, // 8 lbf·ft against 8 lbf·in
		{2.3, 25, true},      // with the scatter of two readings
		{2.26, 22.6, true},
		{2.26, 2.6, false},
		{2.26, 15, false},
		{2.26, 60, false},
		{2.26, -27.1, false},
		{0, 27, false},
		{27, 0, false},
		{math.NaN(), 27, false},
		{math.Inf(1), 27, false},
		{math.Inf(1), math.Inf(1), false},
	} {
		if got := TwelveFold(c.a, c.b); got != c.want {
			t.Errorf("TwelveFold(%g, %g) = %v", c.a, c.b, got)
		}
	}
}

func TestTwelveFoldIsSymmetric(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.Float64Range(1e-3, 1e5).Draw(t, "a")
		factor := rapid.Float64Range(0.01, 100).Draw(t, "factor")
		if TwelveFold(a, a*factor) != TwelveFold(a*factor, a) {
			t.Fatal("the order matters")
		}
		if math.Abs(factor-12) < 1 && !TwelveFold(a, a*factor) || factor > 17 && TwelveFold(a, a*factor) || factor > 0.2 && factor < 8 && TwelveFold(a, a*factor) {
			t.Fatalf("a factor of %g", factor)
		}
	})
}

func TestMeantTorque(t *testing.T) {
	// A preload of 20 to 25 lbf·in.
	low, high := 2.26, 2.82
	for _, c := range []struct {
		reading, meant float64
		suspected      bool
	}{
		{2.5, 2.5, false},     // in range
		{30, 2.5, true},       // read in lbf·ft
		{2.5 / 12, 2.5, true}, // the reverse
		{5.5, 5.5, false},     // plainly too much
		{0, 0, false},
		{math.NaN(), 0, false},
	} {
		meant, suspected := MeantTorque(c.reading, low, high)
		if suspected != c.suspected || !math.IsNaN(c.reading) && !near(meant, c.meant) {
			t.Errorf("MeantTorque(%g) = %g, %v; want %g, %v", c.reading, meant, suspected, c.meant, c.suspected)
		}
	}
}
