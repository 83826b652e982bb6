package survival

import (
	"cmp"
	"math"
	"slices"
)

// KaplanMeierResult is the staircase of the parts still sound, one entry for
// each time at which something failed.
type KaplanMeierResult struct {
	Times     []float64 // -, t: times of failure, rising
	AtRisk    []float64 // -, n: parts still in sight just before
	Failures  []float64 // -, d: parts that failed then
	Survival  []float64 // -, S: share still sound just after
	StdErrors []float64 // -, standard error of S; 0 once all have failed
}

// KaplanMeier returns the share of parts still sound over time, without assuming any distribution.
//
//	S(t) = Π (1 − d_i/n_i)
//	var S = S²·Σ d_i/(n_i·(n_i − d_i))   (Greenwood)
//
//	observations  each with its time and whether it failed
//
// Valid for one failure or more. A part last seen sound at the time of a
// failure counts as still in sight then.
// Errors: *check.RangeError without a failure or for times not above zero.
// Source: Kaplan and Meier, Nonparametric estimation from incomplete
// observations (1958); Greenwood (1926).
func KaplanMeier(observations []Observation) (KaplanMeierResult, error) {
	if _, err := lives("survival.KaplanMeier", observations); err != nil {
		return KaplanMeierResult{}, err
	}
	sorted := slices.Clone(observations)
	slices.SortFunc(sorted, func(a, b Observation) int { return cmp.Compare(a.Time, b.Time) })
	var r KaplanMeierResult
	survival, greenwood := 1.0, 0.0
	for i := 0; i < len(sorted); {
		time, atRisk, failed := sorted[i].Time, float64(len(sorted)-i), 0.0
		for ; i < len(sorted) && sorted[i].Time == time; i++ {
			if sorted[i].Failed {
				failed++
			}
		}
		if failed == 0 {
			continue
		}
		survival *= 1 - failed/atRisk
		stdError := 0.0
		if failed < atRisk {
			greenwood += failed / (atRisk * (atRisk - failed))
			stdError = survival * math.Sqrt(greenwood)
		}
		r.Times = append(r.Times, time)
		r.AtRisk = append(r.AtRisk, atRisk)
		r.Failures = append(r.Failures, failed)
		r.Survival = append(r.Survival, survival)
		r.StdErrors = append(r.StdErrors, stdError)
	}
	return r, nil
}
