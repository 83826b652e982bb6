package survival

import (
	"math"

	"axlewright/calc/check"
)

// WeibullResult is the Weibull distribution that makes the observations most
// likely.
type WeibullResult struct {
	Shape         float64 // -, β: below 1 early failures, about 1 chance, above 1 wear
	Scale         float64 // -, η: time by which 63 % fail, in the unit of the times
	LogLikelihood float64 // -, ℓ: at the maximum, complete with its constants
	B10           float64 // -, t10: time by which 10 % fail, in the unit of the times
	Failures      int     // -, r: parts that failed
	ShapeVariance float64 // -, variance of β
	ScaleVariance float64 // -, variance of η, in the square of the unit of the times
	Covariance    float64 // -, of β and η, in the unit of the times
}

// WeibullFit returns the Weibull distribution most likely for parts of which some failed and some were still sound.
//
//	Σ t^β·ln t/Σ t^β − 1/β − (1/r)·Σ_failed ln t = 0
//	η = (Σ t^β/r)^(1/β)
//	ℓ = Σ_failed (ln β − β·ln η + (β − 1)·ln t) − Σ (t/η)^β
//	t10 = η·(−ln 0.9)^(1/β)
//	variances from the inverse of −∂²ℓ/∂(β, η)²
//
//	observations  each with its time and whether it failed
//
// Valid for one failure or more before the longest time, parts alike and
// independent, and parts taken out of sight for reasons that have nothing to do
// with their state. With a few failures β is biased upward and the variances
// are rough.
// Errors: *check.RangeError outside that range.
// Source: Nelson, Applied Life Data Analysis (1982), 8.3; Lawless, Statistical
// Models and Methods for Lifetime Data, 2nd ed., 5.2 (from memory).
func WeibullFit(observations []Observation) (WeibullResult, error) {
	const fn = "survival.WeibullFit"
	r, err := lives(fn, observations)
	if err != nil {
		return WeibullResult{}, err
	}
	longest, meanLog := 0.0, 0.0
	for _, o := range observations {
		longest = math.Max(longest, o.Time)
	}
	for _, o := range observations {
		if o.Failed {
			meanLog += math.Log(o.Time/longest) / float64(r)
		}
	}
	if err := check.All(fn, check.That("longest time", longest, meanLog < 0, "above that of some failure")); err != nil {
		return WeibullResult{}, err
	}
	beta := weibullShape(observations, longest, meanLog)
	sum, _, _ := powerSums(observations, longest, beta)
	eta := longest * math.Pow(sum/float64(r), 1/beta)

	failed := float64(r)
	result := WeibullResult{Shape: beta, Scale: eta, Failures: r, B10: eta * math.Pow(-math.Log(0.9), 1/beta)}
	var z, zLog, zLog2 float64 // Σ (t/η)^β with powers of ln(t/η)
	for _, o := range observations {
		l := math.Log(o.Time / eta)
		w := math.Exp(beta * l)
		z, zLog, zLog2 = z+w, zLog+w*l, zLog2+w*l*l
		if o.Failed {
			result.LogLikelihood += math.Log(beta) - beta*math.Log(eta) + (beta-1)*math.Log(o.Time)
		}
	}
	result.LogLikelihood -= z
	// −∂²ℓ at the maximum, where Σ (t/η)^β = r
	bb := failed/(beta*beta) + zLog2
	ee := failed * beta * beta / (eta * eta)
	be := -beta / eta * zLog
	det := bb*ee - be*be
	result.ShapeVariance, result.ScaleVariance, result.Covariance = ee/det, bb/det, -be/det
	return result, nil
}

// weibullShape solves the likelihood equation by Newton's method inside a
// bracket. Its left side rises steadily with β.
func weibullShape(observations []Observation, longest, meanLog float64) float64 {
	equation := func(beta float64) (value, slope float64) {
		s0, s1, s2 := powerSums(observations, longest, beta)
		return s1/s0 - 1/beta - meanLog, s2/s0 - (s1/s0)*(s1/s0) + 1/(beta*beta)
	}
	low, high := 1.0, 1.0
	for value, _ := equation(high); value < 0; value, _ = equation(high) {
		low, high = high, 2*high
	}
	for value, _ := equation(low); value > 0; value, _ = equation(low) {
		low, high = low/2, low
	}
	beta := (low + high) / 2
	for range 200 {
		value, slope := equation(beta)
		if value > 0 {
			high = beta
		} else {
			low = beta
		}
		next := beta - value/slope
		if next <= low || next >= high {
			next = (low + high) / 2
		}
		if math.Abs(next-beta) <= 1e-15*beta {
			return next
		}
		beta = next
	}
	return beta
}

// powerSums returns Σ u^β·(ln u)^k for k = 0, 1, 2 with u = t/longest, which
// keeps large times with large β from overflowing.
func powerSums(observations []Observation, longest, beta float64) (s0, s1, s2 float64) {
	for _, o := range observations {
		l := math.Log(o.Time / longest)
		w := math.Exp(beta * l)
		s0, s1, s2 = s0+w, s1+w*l, s2+w*l*l
	}
	return s0, s1, s2
}
