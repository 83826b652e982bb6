package assess

import (
	"math"
	"testing"
)

func TestBandIsOfOrderStatistics(t *testing.T) {
	var values []float64
	for i := 100; i >= 0; i-- {
		values = append(values, float64(i))
	}
	if got, want := bandOf(values), (Band{Median: 50, Low: 10, High: 90}); got != want {
		t.Errorf("got %+v, want %+v", got, want)
	}
	values[0], values[1], values[2] = Beyond, Beyond, Beyond
	if got := bandOf(values); math.IsNaN(got.Median) || got.High != 90 {
		t.Errorf("with links that never gave out: %+v", got)
	}
}

func TestChanceOfAllIsNotCertain(t *testing.T) {
	if c := chanceOf(100, 100); c.Value != 1 || c.Error < 0.01 {
		t.Errorf("100 of 100: %+v", c)
	}
	if !chanceOf(1040, 2000).TooClose() || chanceOf(1700, 2000).TooClose() {
		t.Error("52 % must be too close to call, 85 % must not")
	}
}
