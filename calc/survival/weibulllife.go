package survival

import (
	"math"

	"axlewright/calc/check"

	"gonum.org/v1/gonum/stat/distuv"
)

// WeibullLifeParams ask when a share of the parts has failed.
type WeibullLifeParams struct {
	Shape    float64 // -, β: shape
	Scale    float64 // -, η: time by which 63 % fail, in the unit of the times
	Fraction float64 // -, F: share that has failed
}

// WeibullLife returns the time by which a share of the parts has failed.
//
//	t = η·(−ln(1 − F))^(1/β)
//
//	t  time, in the unit of the scale, -
//
// Valid for 0 < F < 1; beyond the shares that were seen to fail it is a guess.
// Errors: *check.RangeError outside that range.
// Source: Weibull, A statistical distribution function of wide applicability (1951).
func WeibullLife(p WeibullLifeParams) (float64, error) {
	if err := check.All("survival.WeibullLife",
		check.Positive("Shape", p.Shape),
		check.Positive("Scale", p.Scale),
		check.That("Fraction", p.Fraction, p.Fraction > 0 && p.Fraction < 1, "0 < Fraction < 1"),
	); err != nil {
		return 0, err
	}
	return p.Scale * math.Pow(-math.Log1p(-p.Fraction), 1/p.Shape), nil
}

// WeibullSurvivalParams ask how many parts are still sound.
type WeibullSurvivalParams struct {
	Shape float64 // -, β: shape
	Scale float64 // -, η: time by which 63 % fail
	Time  float64 // -, t: time, in the unit of the scale
}

// WeibullSurvival returns the share of the parts that is still sound at a time.
//
//	R = exp(−(t/η)^β)
//
//	R  share still sound, -
//
// Valid for times not below zero.
// Errors: *check.RangeError outside that range.
// Source: Weibull, A statistical distribution function of wide applicability (1951).
func WeibullSurvival(p WeibullSurvivalParams) (float64, error) {
	if err := check.All("survival.WeibullSurvival",
		check.Positive("Shape", p.Shape),
		check.Positive("Scale", p.Scale),
		check.NotNegative("Time", p.Time),
	); err != nil {
		return 0, err
	}
	return math.Exp(-math.Pow(p.Time/p.Scale, p.Shape)), nil
}

// LifeIntervalParams ask how well the time is known by which a share has failed.
type LifeIntervalParams struct {
	Shape         float64 // -, β: shape, fitted
	Scale         float64 // -, η: scale, fitted
	ShapeVariance float64 // -, variance of β
	ScaleVariance float64 // -, variance of η
	Covariance    float64 // -, of β and η
	Fraction      float64 // -, F: share that has failed
	Confidence    float64 // -, how sure: 0.95
}

// LifeIntervalResult is a time and the range it lies in.
type LifeIntervalResult struct {
	Life float64 // -, t: time by which the share has failed
	Low  float64 // -, lower end
	High float64 // -, upper end
}

// WeibullLifeInterval returns the time by which a share of the parts has failed, with its range of confidence.
//
//	ln t = ln η + w/β,  w = ln(−ln(1 − F))
//	s² = V_η/η² + w²·V_β/β⁴ − 2·w·C/(η·β²)
//	t·exp(±z·s),  z normal score of the confidence
//
// Valid for ten failures or so and more; with fewer the range is too narrow.
// Errors: *check.RangeError for shares outside 0 to 1 or variances that cannot belong together.
// Source: Nelson, Applied Life Data Analysis (1982), 8.3 (normal approximation on
// the logarithm, from memory).
func WeibullLifeInterval(p LifeIntervalParams) (LifeIntervalResult, error) {
	const fn = "survival.WeibullLifeInterval"
	life, err := WeibullLife(WeibullLifeParams{p.Shape, p.Scale, p.Fraction})
	if err != nil {
		return LifeIntervalResult{}, err
	}
	w := math.Log(-math.Log1p(-p.Fraction))
	variance := p.ScaleVariance/(p.Scale*p.Scale) + w*w*p.ShapeVariance/math.Pow(p.Shape, 4) -
		2*w*p.Covariance/(p.Scale*p.Shape*p.Shape)
	if err := check.All(fn,
		check.NotNegative("ShapeVariance", p.ShapeVariance),
		check.NotNegative("ScaleVariance", p.ScaleVariance),
		check.That("Covariance", p.Covariance, p.Covariance*p.Covariance <= p.ShapeVariance*p.ScaleVariance, "no larger than the root of the variances' product"),
		check.That("Confidence", p.Confidence, p.Confidence > 0 && p.Confidence < 1, "0 < Confidence < 1"),
		check.NotNegative("variance", variance),
	); err != nil {
		return LifeIntervalResult{}, err
	}
	spread := math.Exp(distuv.UnitNormal.Quantile((1+p.Confidence)/2) * math.Sqrt(variance))
	return LifeIntervalResult{Life: life, Low: life / spread, High: life * spread}, nil
}
