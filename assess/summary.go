package assess

import (
	"encoding/json"
	"math"
	"slices"
)

// A Band is what the draws make of one figure: half of them lie below Median,
// a tenth below Low, a tenth above High. Beyond is positive infinity.
type Band struct {
	Median float64
	Low    float64 // 10 %
	High   float64 // 90 %
}

// MarshalJSON writes a limit that was never reached as null: JSON has no
// infinity.
func (b Band) MarshalJSON() ([]byte, error) {
	finite := func(x float64) *float64 {
		if math.IsInf(x, 0) {
			return nil
		}
		return &x
	}
	return json.Marshal(struct {
		Median *float64 `json:"median"`
		Low    *float64 `json:"low"`
		High   *float64 `json:"high"`
	}{finite(b.Median), finite(b.Low), finite(b.High)})
}

// bandOf sorts a copy of the values.
func bandOf(values []float64) Band {
	sorted := slices.Sorted(slices.Values(values))
	return Band{Median: quantile(sorted, 0.5), Low: quantile(sorted, 0.1), High: quantile(sorted, 0.9)}
}

// quantile of sorted values, linear between order statistics (type 7 of
// Hyndman & Fan, The American Statistician 50, 1996). Unlike a library's it
// lets values be infinite: a link that never gave out.
func quantile(sorted []float64, p float64) float64 {
	at := p * float64(len(sorted)-1)
	i := int(at)
	if i+1 >= len(sorted) {
		return sorted[len(sorted)-1]
	}
	a, b, t := sorted[i], sorted[i+1], at-float64(i)
	if t == 0 || a == b {
		return a
	}
	return a*(1-t) + b*t
}

// A Chance is a share of the draws with its sampling error.
type Chance struct {
	Value float64 `json:"value"` // 0..1
	Error float64 `json:"error"` // one standard error of the sampling, not of the model
}

func chanceOf(hits float64, draws int) Chance {
	n := float64(draws)
	p := hits / n
	// Agresti & Coull, The American Statistician 52 (1998): the error of a share
	// of all or nothing is not nothing.
	q := (hits + 2) / (n + 4)
	return Chance{Value: p, Error: math.Sqrt(q * (1 - q) / (n + 4))}
}

// TooClose says whether the draws cannot tell the chance from an even one, or
// the difference is too small to sell by.
func (c Chance) TooClose() bool {
	return math.Abs(c.Value-0.5) < math.Max(2*c.Error, 0.1)
}
