package survival

import (
	"axlewright/calc/check"

	"gonum.org/v1/gonum/mathext"
)

// ClopperPearsonParams are cases counted among trials.
type ClopperPearsonParams struct {
	Cases      int     // -, x: how often it happened
	Trials     int     // -, n: how often it could have
	Confidence float64 // -, how sure, both ends together: 0.95
}

// ClopperPearsonResult is the range a chance lies in.
type ClopperPearsonResult struct {
	Low  float64 // -, lower end of the chance
	High float64 // -, upper end of the chance
}

// ClopperPearson returns the range of a chance from cases counted among trials, exact for small numbers.
//
//	low  = B(α/2; x, n − x + 1), 0 for x = 0
//	high = B(1 − α/2; x + 1, n − x), 1 for x = n
//	B quantile of the beta distribution, α = 1 − confidence
//
// Valid for trials alike and independent. Never too narrow, often too wide.
// Errors: *check.RangeError for cases outside 0 to n, no trial, or a confidence outside 0 to 1.
// Source: Clopper and Pearson, The use of confidence or fiducial limits
// illustrated in the case of the binomial (1934).
func ClopperPearson(p ClopperPearsonParams) (ClopperPearsonResult, error) {
	x, n := float64(p.Cases), float64(p.Trials)
	if err := check.All("survival.ClopperPearson",
		check.That("Trials", n, n >= 1, ">= 1"),
		check.That("Cases", x, x >= 0 && x <= n, "0 to Trials"),
		check.That("Confidence", p.Confidence, p.Confidence > 0 && p.Confidence < 1, "0 < Confidence < 1"),
	); err != nil {
		return ClopperPearsonResult{}, err
	}
	tail := (1 - p.Confidence) / 2
	r := ClopperPearsonResult{Low: 0, High: 1}
	if p.Cases > 0 {
		r.Low = mathext.InvRegIncBeta(x, n-x+1, tail)
	}
	if p.Cases < p.Trials {
		r.High = mathext.InvRegIncBeta(x+1, n-x, 1-tail)
	}
	return r, nil
}
