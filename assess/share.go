package assess

import (
	"math"
	"slices"
)

// shareOfDoubt estimates which share of the variance of y each figure causes by
// itself: the first-order index Var(E[y|x])/Var(y), from the draws at hand. The
// draws are cut into slices of equal count along x; the variance of the slice
// means is corrected for the scatter within the slices.
//
// Source: Plischke, Borgonovo & Smith, European Journal of Operational Research
// 226 (2013), the class-conditional estimator for given data (from memory).
func shareOfDoubt(x, y []float64) float64 {
	n := len(y)
	slicesOfX := int(math.Max(4, math.Min(20, math.Sqrt(float64(n)/5))))
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int {
		switch {
		case x[a] < x[b]:
			return -1
		case x[a] > x[b]:
			return 1
		}
		return a - b
	})
	mean, total := meanAndSquares(y)
	if total == 0 {
		return 0
	}
	between := 0.0
	for s := range slicesOfX {
		from, to := s*n/slicesOfX, (s+1)*n/slicesOfX
		sum := 0.0
		for _, i := range order[from:to] {
			sum += y[i]
		}
		d := sum/float64(to-from) - mean
		between += float64(to-from) * d * d
	}
	// Analysis of variance: take off what the scatter within slices alone gives.
	within := (total - between) / float64(n-slicesOfX)
	return math.Max(0, (between-float64(slicesOfX-1)*within)/total)
}

func meanAndSquares(y []float64) (mean, squares float64) {
	for _, v := range y {
		mean += v
	}
	mean /= float64(len(y))
	for _, v := range y {
		squares += (v - mean) * (v - mean)
	}
	return mean, squares
}
