package casting

import (
	"math"
	"slices"
)

// A Trend says whether readings rise or fall in the order in which they came.
type Trend struct {
	Slope float64 `json:"slope"` // m a casting, the middle of the slopes between all pairs
	Score float64 `json:"score"` // S: pairs that rise less pairs that fall
	P     float64 `json:"p"`     // chance of such a score or a larger one where nothing drifts
}

// TrendOf tests readings for a trend by their ranks, so that one casting out of
// line can neither make nor hide one.
//
//	S = Σ_(i<j) sign(x_j − x_i)
//	z = (S ∓ 1)/√Var(S),  Var(S) = (n(n−1)(2n+5) − Σ t(t−1)(2t+5))/18
//
// with t readings alike in each tie. P is two-sided by the normal
// approximation, which serves from about eight readings; fewer than three give 1.
//
// Source: Mann (1945) and Kendall, Rank Correlation Methods (1975); the slope
// Sen, Estimates of the regression coefficient based on Kendall's tau (1968).
func TrendOf(values []float64) Trend {
	n := len(values)
	if n < 3 {
		return Trend{P: 1}
	}
	var t Trend
	slopes := make([]float64, 0, n*(n-1)/2)
	for j := range values {
		for i := range j {
			d := values[j] - values[i]
			switch {
			case d > 0:
				t.Score++
			case d < 0:
				t.Score--
			}
			slopes = append(slopes, d/float64(j-i))
		}
	}
	slices.Sort(slopes)
	if m := len(slopes); m%2 == 1 {
		t.Slope = slopes[m/2]
	} else {
		t.Slope = (slopes[m/2-1] + slopes[m/2]) / 2
	}
	size := float64(n)
	variance := size * (size - 1) * (2*size + 5)
	sorted := slices.Clone(values)
	slices.Sort(sorted)
	for i := 0; i < n; {
		j := i
		for j < n && sorted[j] == sorted[i] {
			j++
		}
		ties := float64(j - i)
		variance -= ties * (ties - 1) * (2*ties + 5)
		i = j
	}
	variance /= 18
	if variance <= 0 {
		return Trend{P: 1}
	}
	z := math.Max(math.Abs(t.Score)-1, 0) / math.Sqrt(variance)
	t.P = math.Erfc(z / math.Sqrt2) // two tails of a normal, exact however small
	return t
}
