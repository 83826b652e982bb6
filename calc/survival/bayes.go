package survival

import (
	"fmt"
	"math"

	"axlewright/calc/check"
)

// Hypothesis is one of several explanations of which just one is true.
type Hypothesis struct {
	Prior      float64 // -, P(H): chance before the evidence; all add up to 1
	Likelihood float64 // -, P(E|H): chance of the evidence if this one is true
}

// BayesResult is what the evidence makes of the explanations.
type BayesResult struct {
	Posteriors []float64 // -, P(H|E): chance after the evidence, in the order given
	Evidence   float64   // -, P(E): chance of the evidence before it was seen
}

// BayesUpdate returns the chances of several explanations after a piece of evidence.
//
//	P(H_i|E) = P(E|H_i)·P(H_i)/P(E)
//	P(E) = Σ P(E|H_j)·P(H_j)
//
//	hypotheses  explanations, of which just one is true
//
// Valid for explanations that exclude one another and leave out none, and
// evidence that is possible under at least one.
// Errors: *check.RangeError for chances outside 0 to 1, priors that do not add up to 1, or evidence that none explains.
// Source: Bayes (1763).
func BayesUpdate(hypotheses []Hypothesis) (BayesResult, error) {
	const fn = "survival.BayesUpdate"
	var r BayesResult
	sum := 0.0
	for i, h := range hypotheses {
		if err := check.All(fn,
			check.Within(fmt.Sprintf("hypotheses[%d].Prior", i), h.Prior, 0, 1),
			check.Within(fmt.Sprintf("hypotheses[%d].Likelihood", i), h.Likelihood, 0, 1),
		); err != nil {
			return BayesResult{}, err
		}
		sum += h.Prior
		r.Evidence += h.Prior * h.Likelihood
	}
	if err := check.All(fn,
		check.That("sum of Prior", sum, math.Abs(sum-1) < 1e-6, "1"),
		check.Positive("Evidence", r.Evidence),
	); err != nil {
		return BayesResult{}, err
	}
	for _, h := range hypotheses {
		r.Posteriors = append(r.Posteriors, h.Prior*h.Likelihood/r.Evidence)
	}
	return r, nil
}
