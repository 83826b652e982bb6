package contact

import (
	"math"

	"axlewright/calc/check"

	"gonum.org/v1/gonum/mathext"
)

// CurvatureParams are the principal curvatures of two bodies at their point of
// contact; hollow ones are negative.
type CurvatureParams struct {
	First1  float64 // 1/m, 1/R1: curvature of the first body in its first principal plane
	First2  float64 // 1/m, 1/R1′: curvature of the first body in its second principal plane
	Second1 float64 // 1/m, 1/R2: curvature of the second body in its first principal plane
	Second2 float64 // 1/m, 1/R2′: curvature of the second body in its second principal plane
	Angle   float64 // rad, α: angle between the first principal planes of the two bodies
}

// CurvatureResult describes the gap between two bodies, h = A·x² + B·y².
type CurvatureResult struct {
	Small float64 // 1/m, A: along the long axis of the contact
	Large float64 // 1/m, B: along the short axis of the contact
}

// RelativeCurvature returns the two coefficients of the gap between curved bodies that touch at a point.
//
//	A + B = ½·(1/R1 + 1/R1′ + 1/R2 + 1/R2′)
//	B − A = ½·√((1/R1 − 1/R1′)² + (1/R2 − 1/R2′)² + 2·(1/R1 − 1/R1′)·(1/R2 − 1/R2′)·cos 2α)
//
// Valid for a pair that touches at one point only (A > 0).
// Errors: *check.RangeError outside that range.
// Source: Boresi and Schmidt, Advanced Mechanics of Materials, 6th ed., 17.3;
// Johnson, Contact Mechanics (1985), 4.1.
func RelativeCurvature(p CurvatureParams) (CurvatureResult, error) {
	sum := (p.First1 + p.First2 + p.Second1 + p.Second2) / 2
	first, second := p.First1-p.First2, p.Second1-p.Second2
	under := first*first + second*second + 2*first*second*math.Cos(2*p.Angle)
	difference := math.Sqrt(math.Max(0, under)) / 2 // rounding may leave −1e-18 for equal and opposite bodies
	result := CurvatureResult{Small: (sum - difference) / 2, Large: (sum + difference) / 2}
	if err := check.All("contact.RelativeCurvature",
		check.Finite("First1", p.First1),
		check.Finite("First2", p.First2),
		check.Finite("Second1", p.Second1),
		check.Finite("Second2", p.Second2),
		check.Finite("Angle", p.Angle),
		check.That("A", result.Small, result.Small > 0, "> 0: the bodies touch at one point only"),
	); err != nil {
		return CurvatureResult{}, err
	}
	return result, nil
}

// EllipseParams describe two curved bodies pressed together at a point.
type EllipseParams struct {
	Force          float64 // N, F: normal force
	SmallCurvature float64 // 1/m, A: of the gap A·x² + B·y², along the long axis
	LargeCurvature float64 // 1/m, B: of the gap A·x² + B·y², along the short axis
	Modulus        float64 // Pa, E*: contact modulus of the pair
}

// EllipseResult is the state of an elliptical contact.
type EllipseResult struct {
	LongSemiAxis  float64 // m, a: half the length of the ellipse that touches
	ShortSemiAxis float64 // m, b: half its width
	PeakPressure  float64 // Pa, p0: pressure in the middle of the ellipse
	Approach      float64 // m, δ: approach of distant points of the two bodies
	AxisRatio     float64 // -, k: b/a
}

// maxElongation is the largest B/A for which the shape is sought: beyond it the
// contact is a line.
const maxElongation = 1e6

// EllipticalContact returns the ellipse, pressure and approach where two curved bodies touch at a point.
//
//	B/A = (E(e)/k² − K(e))/(K(e) − E(e)),  k = b/a = √(1 − e²)
//	a = (3·F·E(e)/(2π·k²·(A + B)·E*))^(1/3)
//	p0 = 3·F/(2π·a·b)
//	δ = 3·F·K(e)/(2π·a·E*)
//
// Valid for no friction, a small beside the radii, and 1 ≤ B/A ≤ 10⁶. K and E
// are the complete elliptic integrals, evaluated exactly, not from a chart.
// Errors: *check.RangeError outside that range.
// Source: Johnson, Contact Mechanics (1985), 4.2(b) (from memory); Boresi and
// Schmidt, Advanced Mechanics of Materials, 6th ed., 17.4.
func EllipticalContact(p EllipseParams) (EllipseResult, error) {
	A, B := p.SmallCurvature, p.LargeCurvature
	if err := check.All("contact.EllipticalContact",
		check.Positive("Force", p.Force),
		check.Positive("SmallCurvature", A),
		check.That("LargeCurvature", B, B >= A && B <= maxElongation*A, "1 to 1e6 times SmallCurvature"),
		check.Positive("Modulus", p.Modulus),
	); err != nil {
		return EllipseResult{}, err
	}
	k := axisRatio(B / A)
	m := 1 - k*k
	a := math.Cbrt(3 * p.Force * mathext.CompleteE(m) / (2 * math.Pi * k * k * (A + B) * p.Modulus))
	return EllipseResult{
		LongSemiAxis:  a,
		ShortSemiAxis: k * a,
		PeakPressure:  3 * p.Force / (2 * math.Pi * a * k * a),
		Approach:      3 * p.Force * mathext.CompleteK(m) / (2 * math.Pi * a * p.Modulus),
		AxisRatio:     k,
	}, nil
}

// axisRatio finds k = b/a from B/A by halving on its logarithm. B/A falls
// steadily from infinity to 1 as k rises to 1.
func axisRatio(elongation float64) float64 {
	low, high := math.Log(1e-6), 0.0
	for high-low > 1e-15 {
		middle := (low + high) / 2
		if middle == low || middle == high {
			break
		}
		if elongationOf(math.Exp(middle)) > elongation {
			low = middle
		} else {
			high = middle
		}
	}
	return math.Exp((low + high) / 2)
}

// elongationOf is B/A for k = b/a, written with the integrals B = (E − k²K)/m
// and D = (K − E)/m because E/k² − K and K − E lose all digits near a circle.
func elongationOf(k float64) float64 {
	m := 1 - k*k
	return mathext.CompleteB(m) / (k * k * mathext.CompleteD(m))
}
