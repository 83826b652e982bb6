package drawing

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// Labels keep their order, their distance and the column, and no shift of
// neighbouring labels together brings them nearer to their places.
func TestRelaxIsLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		const gap, low, high = 1.0, 10.0, 90.0
		var slots []slot
		for range rapid.IntRange(1, 7).Draw(t, "labels") {
			slots = append(slots, slot{rapid.Float64Range(0, 100).Draw(t, "wish"), rapid.Float64Range(1, 10).Draw(t, "height")})
		}
		slices.SortFunc(slots, func(a, b slot) int { return int(math.Copysign(1, a.wish-b.wish)) })
		at := relax(slots, gap, low, high)
		if !fits(slots, at, gap, low, high) {
			t.Fatalf("%v placed at %v", slots, at)
		}
		cost := offPlace(slots, at)
		for i := range slots {
			for k := i; k < len(slots); k++ {
				for _, step := range []float64{-0.01, 0.01} {
					moved := slices.Clone(at)
					for m := i; m <= k; m++ {
						moved[m] += step
					}
					if fits(slots, moved, gap, low, high) && offPlace(slots, moved) < cost-1e-9 {
						t.Fatalf("%v placed at %v; labels %d to %d would lie better %v away", slots, at, i, k, step)
					}
				}
			}
		}
	})
}

func fits(slots []slot, at []float64, gap, low, high float64) bool {
	const slack = 1e-9
	for i, s := range slots {
		if at[i]-s.height/2 < low-slack || at[i]+s.height/2 > high+slack {
			return false
		}
		if i > 0 && at[i]-s.height/2-(at[i-1]+slots[i-1].height/2) < gap-slack {
			return false
		}
	}
	return true
}

func offPlace(slots []slot, at []float64) float64 {
	sum := 0.0
	for i, s := range slots {
		sum += (at[i] - s.wish) * (at[i] - s.wish)
	}
	return sum
}
