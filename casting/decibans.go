package casting

import "math"

// decibans is the weight of evidence: ten times the decimal logarithm of the
// factor by which it multiplies the odds.
//
// Source: Good, Probability and the Weighing of Evidence (1950), after Turing (from memory).
func decibans(logFactor float64) float64 { return 10 * logFactor / math.Ln10 }

// Strength says in a word how much a weight of evidence means. The steps are
// those of Jeffreys, Theory of Probability (1939), appendix B: half a power of
// ten each; the words are the shop's.
func Strength(db float64) string {
	switch size := math.Abs(db); {
	case size < 1:
		return "says nothing"
	case size < 5:
		return "weak"
	case size < 10:
		return "fair"
	case size < 15:
		return "strong"
	case size < 20:
		return "very strong"
	}
	return "all but settles it"
}

// logOdds of the hypotheses for which in says true against the rest, from log
// chances.
func logOdds(logs []float64, in func(h int) bool) float64 {
	return logSum(logs, in) - logSum(logs, func(h int) bool { return !in(h) })
}

func logSum(logs []float64, in func(h int) bool) float64 {
	most := math.Inf(-1)
	for h, l := range logs {
		if in(h) {
			most = math.Max(most, l)
		}
	}
	if math.IsInf(most, -1) {
		return most
	}
	sum := 0.0
	for h, l := range logs {
		if in(h) {
			sum += math.Exp(l - most)
		}
	}
	return most + math.Log(sum)
}
