package survival

import (
	"math"

	"axlewright/calc/check"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"
)

// ControlChartResult holds the factors of control charts for one group size.
type ControlChartResult struct {
	RangeMean   float64 // -, d2: mean range over σ
	RangeSpread float64 // -, d3: standard deviation of the range over σ
	SDMean      float64 // -, c4: mean standard deviation over σ
	MeanByRange float64 // -, A2: limits of the mean from the mean range
	MeanBySD    float64 // -, A3: limits of the mean from the mean standard deviation
	RangeLow    float64 // -, D3: lower limit of the range over its mean, 0 for small groups
	RangeHigh   float64 // -, D4: upper limit of the range over its mean
}

// ControlChart returns the factors of control charts for groups of a size, from the integrals that define them.
//
//	d2 = ∫ (1 − (1 − Φ(x))^n − Φ(x)^n) dx
//	d3² = 2·∫∫_(x<y) (1 − Φ(y)^n − (1 − Φ(x))^n + (Φ(y) − Φ(x))^n) dx dy − d2²
//	c4 = √(2/(n − 1))·Γ(n/2)/Γ((n − 1)/2)
//	A2 = 3/(d2·√n),  A3 = 3/(c4·√n)
//	D3 = max(0, 1 − 3·d3/d2),  D4 = 1 + 3·d3/d2
//
//	n  readings in a group, -
//
// Valid for normal readings and groups of 2 to 25.
// Errors: *check.RangeError outside that range.
// Source: Tippett, On the extreme individuals and the range of samples (1925);
// factors as in ISO 7870-2 and ASTM E2587 (from memory).
func ControlChart(n int) (ControlChartResult, error) {
	if err := check.All("survival.ControlChart", check.Within("n", float64(n), 2, 25)); err != nil {
		return ControlChartResult{}, err
	}
	size := float64(n)
	phi := distuv.UnitNormal.CDF
	d2 := quad.Fixed(func(x float64) float64 {
		return 1 - math.Pow(1-phi(x), size) - math.Pow(phi(x), size)
	}, -reach, reach, 100, nil, 0)
	square := 2 * quad.Fixed(func(x float64) float64 {
		return quad.Fixed(func(y float64) float64 {
			return 1 - math.Pow(phi(y), size) - math.Pow(1-phi(x), size) + math.Pow(phi(y)-phi(x), size)
		}, x, reach, 60, nil, 0)
	}, -reach, reach, 100, nil, 0)
	d3 := math.Sqrt(square - d2*d2)
	c4 := math.Sqrt(2/(size-1)) * math.Exp(lgamma(size/2)-lgamma((size-1)/2))
	return ControlChartResult{
		RangeMean:   d2,
		RangeSpread: d3,
		SDMean:      c4,
		MeanByRange: 3 / (d2 * math.Sqrt(size)),
		MeanBySD:    3 / (c4 * math.Sqrt(size)),
		RangeLow:    math.Max(0, 1-3*d3/d2), // the definition: a range is never below zero
		RangeHigh:   1 + 3*d3/d2,
	}, nil
}

// reach is where a standard normal has no weight left in double precision.
const reach = 8.5

func lgamma(x float64) float64 {
	l, _ := math.Lgamma(x)
	return l
}
