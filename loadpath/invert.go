package loadpath

import "math"

// invert replaces a symmetric positive matrix by its inverse.
func invert(a *[maxNatural][maxNatural]float64, n int) bool {
	// Scaling to a unit diagonal keeps metres and radians apart.
	var scale [maxNatural]float64
	for i := range n {
		if !(a[i][i] > 0) || math.IsInf(a[i][i], 0) {
			return false
		}
		scale[i] = 1 / math.Sqrt(a[i][i])
	}
	var l [maxNatural][maxNatural]float64
	for i := range n {
		for j := range i + 1 {
			v := a[i][j] * scale[i] * scale[j]
			for k := range j {
				v -= l[i][k] * l[j][k]
			}
			if i != j {
				l[i][j] = v / l[j][j]
				continue
			}
			if !(v > 0) {
				return false
			}
			l[i][i] = math.Sqrt(v)
		}
	}
	for c := range n {
		var x [maxNatural]float64
		for i := c; i < n; i++ {
			v := 0.0
			if i == c {
				v = 1
			}
			for k := c; k < i; k++ {
				v -= l[i][k] * x[k]
			}
			x[i] = v / l[i][i]
		}
		for i := n - 1; i >= 0; i-- {
			for k := i + 1; k < n; k++ {
				x[i] -= l[k][i] * x[k]
			}
			x[i] /= l[i][i]
		}
		for i := range n {
			a[i][c] = x[i] * scale[i] * scale[c]
		}
	}
	return true
}
