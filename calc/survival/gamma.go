package survival

import (
	"axlewright/calc/check"

	"gonum.org/v1/gonum/stat/distuv"
)

// GammaRateParams are cases counted over an exposure, and what was thought of
// their rate before.
type GammaRateParams struct {
	PriorCases    float64 // -, a: cases that the thought before is worth
	PriorExposure float64 // -, b: exposure that it is worth: hours, kilometres, or cases expected
	Cases         int     // -, r: cases counted since
	Exposure      float64 // -, T: exposure since, in the unit of b
	Confidence    float64 // -, how sure, both ends together: 0.90
}

// GammaRateResult is the rate as it is thought of afterwards.
type GammaRateResult struct {
	Mean   float64 // -, mean: cases for each unit of exposure
	Median float64 // -, median: as likely above as below
	Low    float64 // -, low: lower end
	High   float64 // -, high: upper end
}

// GammaRate returns how often something happens, from what was thought before and what was counted since.
//
//	mean = (a + r)/(b + T)
//	median, low, high = G(1/2), G(α/2), G(1 − α/2),  α = 1 − confidence
//	G quantile of the gamma distribution of shape a + r and rate b + T
//
// Valid for cases that come by chance at one rate. With few cases the thought
// before has most of the say.
// Errors: *check.RangeError for a thought before that is worth nothing, a
// negative count or exposure, or a confidence outside 0 to 1.
// Source: NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.6; Gelman et al.,
// Bayesian Data Analysis, 3rd ed., 2.6.
func GammaRate(p GammaRateParams) (GammaRateResult, error) {
	if err := check.All("survival.GammaRate",
		check.Positive("PriorCases", p.PriorCases),
		check.Positive("PriorExposure", p.PriorExposure),
		check.NotNegative("Cases", float64(p.Cases)),
		check.NotNegative("Exposure", p.Exposure),
		check.That("Confidence", p.Confidence, p.Confidence > 0 && p.Confidence < 1, "0 < Confidence < 1"),
	); err != nil {
		return GammaRateResult{}, err
	}
	g := distuv.Gamma{Alpha: p.PriorCases + float64(p.Cases), Beta: p.PriorExposure + p.Exposure}
	tail := (1 - p.Confidence) / 2
	return GammaRateResult{Mean: g.Mean(), Median: g.Quantile(0.5), Low: g.Quantile(tail), High: g.Quantile(1 - tail)}, nil
}
