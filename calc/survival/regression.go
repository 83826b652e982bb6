package survival

import (
	"fmt"
	"math"

	"axlewright/calc/check"
)

// Point is one reading of y at x.
type Point struct {
	X float64 // -, where it was read
	Y float64 // -, what was read
}

// RegressionResult is a straight line through readings.
type RegressionResult struct {
	Intercept      float64 // -, B0: y at x = 0
	Slope          float64 // -, B1: y for each unit of x
	InterceptError float64 // -, standard error of B0
	SlopeError     float64 // -, standard error of B1
	ResidualSD     float64 // -, s: standard deviation of the readings about the line
	RSquared       float64 // -, R²: share of the variance of y that the line explains
}

// LinearRegression returns the straight line that fits readings best by least squares.
//
//	B1 = Σ (x − x̄)·(y − ȳ)/Σ (x − x̄)²,  B0 = ȳ − B1·x̄
//	s² = Σ (y − B0 − B1·x)²/(n − 2)
//
//	points  readings of y at x
//
// Valid for three readings or more at two or more different x, all the doubt in y.
// Errors: *check.RangeError outside that range.
// Source: NIST/SEMATECH e-Handbook of Statistical Methods, 4.1.4.1.
func LinearRegression(points []Point) (RegressionResult, error) {
	const fn = "survival.LinearRegression"
	n := float64(len(points))
	if err := check.All(fn, check.That("len(points)", n, n >= 3, ">= 3")); err != nil {
		return RegressionResult{}, err
	}
	var meanX, meanY float64
	for i, p := range points {
		if err := check.All(fn,
			check.Finite(fmt.Sprintf("points[%d].X", i), p.X),
			check.Finite(fmt.Sprintf("points[%d].Y", i), p.Y),
		); err != nil {
			return RegressionResult{}, err
		}
		meanX += p.X / n
		meanY += p.Y / n
	}
	var xx, xy, yy float64 // about the means, or digits are lost
	for _, p := range points {
		dx, dy := p.X-meanX, p.Y-meanY
		xx, xy, yy = xx+dx*dx, xy+dx*dy, yy+dy*dy
	}
	if err := check.All(fn,
		check.That("spread of X", xx, xx > 0, "> 0: two different places at least"),
		check.That("spread of Y", yy, yy > 0, "> 0: readings all alike need no line"),
	); err != nil {
		return RegressionResult{}, err
	}
	r := RegressionResult{Slope: xy / xx}
	r.Intercept = meanY - r.Slope*meanX
	residual := 0.0
	for _, p := range points {
		d := (p.Y - meanY) - r.Slope*(p.X-meanX)
		residual += d * d
	}
	r.ResidualSD = math.Sqrt(residual / (n - 2))
	r.RSquared = 1 - residual/yy
	r.SlopeError = r.ResidualSD / math.Sqrt(xx)
	r.InterceptError = r.ResidualSD * math.Sqrt(1/n+meanX*meanX/xx)
	return r, nil
}
