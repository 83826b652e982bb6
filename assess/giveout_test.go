package assess

import (
	"math"
	"testing"
)

func TestGiveOutFindsTheLeastRoot(t *testing.T) {
	const highest, tolerance = 30000, 0.01
	for _, c := range []struct {
		name   string
		excess func(float64) float64
		want   float64
	}{
		{"straight line", func(T float64) float64 { return 3*T - 12345 }, 4115},
		{"cube", func(T float64) float64 { return math.Pow(T/1000, 3) - 100 }, 1000 * math.Cbrt(100)},
		{"kink of a peg that closes", func(T float64) float64 { return math.Max(T-5000, 0)*2 - 3000 }, 6500},
		{"over capacity before any torque", func(float64) float64 { return 1 }, 0},
		{"holds beyond the range", func(T float64) float64 { return T - 40000 }, Beyond},
		{"turns back", func(T float64) float64 { return -(T - 9000) * (T - 14000) }, 9000},
	} {
		got := giveOut(highest, tolerance, c.excess)
		if got != c.want && math.Abs(got-c.want) > 2*tolerance {
			t.Errorf("%s: got %.4f, want %.4f", c.name, got, c.want)
		}
	}
}

func TestGiveOutScalesWithStrength(t *testing.T) {
	at := func(strength float64) float64 {
		return giveOut(30000, 1e-6, func(T float64) float64 { return math.Pow(T, 1.3) - strength })
	}
	if one, two := at(1e5), at(2e5); math.Abs(two/one-math.Pow(2, 1/1.3)) > 1e-6 {
		t.Errorf("twice the strength gives %g times the torque", two/one)
	}
}
