package survival

import (
	"math"

	"axlewright/calc/check"

	"gonum.org/v1/gonum/stat/distuv"
)

// ExponentialResult is the mean life of parts that fail by chance.
type ExponentialResult struct {
	Mean          float64 // -, θ: mean life, in the unit of the times
	LogLikelihood float64 // -, ℓ: at the maximum
	TotalTime     float64 // -, T: all times together, failed or sound
	Failures      int     // -, r: parts that failed
}

// ExponentialFit returns the mean life most likely for parts that fail by chance, neither early nor by wear.
//
//	θ = T/r,  T = Σ t
//	ℓ = −r·ln θ − r
//
//	observations  each with its time and whether it failed
//
// Valid for one failure or more and a chance of failing that does not change
// with age (Weibull shape 1).
// Errors: *check.RangeError without a failure or for times not above zero.
// Source: Nelson, Applied Life Data Analysis (1982), 8.2.
func ExponentialFit(observations []Observation) (ExponentialResult, error) {
	r, err := lives("survival.ExponentialFit", observations)
	if err != nil {
		return ExponentialResult{}, err
	}
	result := ExponentialResult{Failures: r}
	for _, o := range observations {
		result.TotalTime += o.Time
	}
	result.Mean = result.TotalTime / float64(r)
	result.LogLikelihood = -float64(r) * (math.Log(result.Mean) + 1)
	return result, nil
}

// MeanLifeIntervalParams are failures in a watched time.
type MeanLifeIntervalParams struct {
	TotalTime  float64 // -, T: all times together, failed or sound
	Failures   int     // -, r: failures in that time
	Confidence float64 // -, how sure, both ends together: 0.90
}

// MeanLifeIntervalResult is the range a mean life lies in.
type MeanLifeIntervalResult struct {
	Low  float64 // -, θ_L: lower end, in the unit of the time
	High float64 // -, θ_U: upper end, in the unit of the time
}

// MeanLifeInterval returns the range of confidence of the mean life of parts that fail by chance.
//
//	θ_L = 2·T/χ²(1 − α/2; 2r + 2)
//	θ_U = 2·T/χ²(α/2; 2r),  α = 1 − confidence
//
// Valid for a watch that ended at a time, not at a failure, and one failure or
// more.
// Errors: *check.RangeError outside that range.
// Source: NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.5.1.
func MeanLifeInterval(p MeanLifeIntervalParams) (MeanLifeIntervalResult, error) {
	if err := check.All("survival.MeanLifeInterval",
		check.Positive("TotalTime", p.TotalTime),
		check.That("Failures", float64(p.Failures), p.Failures >= 1, ">= 1"),
		check.That("Confidence", p.Confidence, p.Confidence > 0 && p.Confidence < 1, "0 < Confidence < 1"),
	); err != nil {
		return MeanLifeIntervalResult{}, err
	}
	tail := (1 - p.Confidence) / 2
	freedom := 2 * float64(p.Failures)
	return MeanLifeIntervalResult{
		Low:  2 * p.TotalTime / distuv.ChiSquared{K: freedom + 2}.Quantile(1-tail),
		High: 2 * p.TotalTime / distuv.ChiSquared{K: freedom}.Quantile(tail),
	}, nil
}
