package drawing

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestTicksAreRoundAndFew(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(-1e5, 1e5).Draw(t, "low")
		width := math.Pow(10, rapid.Float64Range(-3, 6).Draw(t, "width"))
		most := rapid.IntRange(4, 15).Draw(t, "most")
		list := ticks(low, low+width, most)
		if len(list) > most || len(list) < most/3 {
			t.Fatalf("%d ticks, at most %d asked", len(list), most)
		}
		slack := 1e-6 * width
		for i, v := range list {
			if v < low-slack || v > low+width+slack {
				t.Fatalf("%v lies outside %v to %v", v, low, low+width)
			}
			if i == 0 {
				continue
			}
			step := v - list[i-1]
			first := step / math.Pow(10, math.Floor(math.Log10(step)+1e-6))
			if math.Abs(first-1) > 1e-3 && math.Abs(first-2) > 1e-3 && math.Abs(first-5) > 1e-3 {
				t.Fatalf("a step of %v is not of the series 1, 2, 5", step)
			}
		}
	})
}

func TestTickWords(t *testing.T) {
	for x, want := range map[float64]string{0: "0", math.Copysign(0, -1): "0", 500: "500", 12000: "12,000", -1500: "−1,500", 0.15000000000000002: "0.15", 999999: "999,999"} {
		if got := tickWords(x); got != want {
			t.Errorf("tickWords(%v) = %q, want %q", x, got, want)
		}
	}
}
