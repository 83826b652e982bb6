package bearing

import (
	"math"

	"axlewright/calc/check"
)

// FailureForm says how the share of failures enters the Weibull life.
type FailureForm string

const (
	Logarithm     FailureForm = "ln(1/R)" // the distribution as it is
	FailedPortion FailureForm = "1 − R"   // its approximation for R of 0.9 and above
)

// CatalogueRatingParams holds the inputs of [CatalogueRating].
type CatalogueRatingParams struct {
	Load        float64     // N, F: dynamic equivalent load
	Application float64     // -, a_f: factor on the load for its unsteadiness
	LifeRatio   float64     // -, x_D: wanted life over the life that the catalogue rating is for
	Reliability float64     // -, R: chance that the bearing reaches the wanted life
	Guaranteed  float64     // -, x_0: life that all bearings reach, over the rating life
	Scale       float64     // -, θ: life that 36.8 % of bearings reach, over the rating life
	Shape       float64     // -, b: Weibull slope
	Form        FailureForm // name, how the share of failures enters
	Element     Element     // name, ball or roller
}

// CatalogueRating returns the catalogue rating that a load, a life and a
// reliability ask for.
//
//	C = a_f·F·{x_D/[x_0 + (θ − x_0)·ln(1/R)^(1/b)]}^(1/a)
//	a = 10/3 (roller), 3 (ball); the approximate form has 1 − R for ln(1/R)
//
//	C  catalogue rating for the catalogue's own rating life, N
//
// Valid for 0 < R < 1 (approximate form: R >= 0.9), x_0 < θ. The rating is for
// the catalogue's life, which is 90 million revolutions in some and 1 million
// in others: compare like with like.
// Errors: *check.RangeError outside that range or for an unknown name.
// Source: Shigley, Mechanical Engineering Design, 9th ed., eqs. 11-9, 11-10 and
// table 11-6 (from memory).
func CatalogueRating(p CatalogueRatingParams) (float64, error) {
	const fn = "bearing.CatalogueRating"
	a, err := weibullExponent(fn, p.Element, p.Guaranteed, p.Scale, p.Shape)
	if err != nil {
		return 0, err
	}
	if err := check.All(fn,
		check.Positive("Load", p.Load),
		check.Positive("Application", p.Application),
		check.Positive("LifeRatio", p.LifeRatio),
		check.That("Reliability", p.Reliability, p.Reliability > 0 && p.Reliability < 1, "0 < R < 1"),
	); err != nil {
		return 0, err
	}
	failed := 0.
	switch p.Form {
	case Logarithm:
		failed = -math.Log(p.Reliability)
	case FailedPortion:
		if err := check.All(fn, check.That("Reliability", p.Reliability, p.Reliability >= 0.9, ">= 0.9 for the approximate form")); err != nil {
			return 0, err
		}
		failed = 1 - p.Reliability
	default:
		return 0, unknown(fn, "Form")
	}
	x := p.Guaranteed + (p.Scale-p.Guaranteed)*math.Pow(failed, 1/p.Shape)
	return p.Application * p.Load * math.Pow(p.LifeRatio/x, 1/a), nil
}

// ReliabilityParams holds the inputs of [Reliability].
type ReliabilityParams struct {
	Load       float64 // N, F: dynamic equivalent load, application factor included
	Rating     float64 // N, C: catalogue rating of the bearing chosen
	LifeRatio  float64 // -, x_D: wanted life over the life that the catalogue rating is for
	Guaranteed float64 // -, x_0: life that all bearings reach, over the rating life
	Scale      float64 // -, θ: life that 36.8 % of bearings reach, over the rating life
	Shape      float64 // -, b: Weibull slope
	Element    Element // name, ball or roller
}

// Reliability returns the chance that a bearing of known rating reaches a
// wanted life.
//
//	R = exp(−{[x_D·(F/C)^a − x_0]/(θ − x_0)}^b), and 1 below the guaranteed life
//	a = 10/3 (roller), 3 (ball)
//
//	R  chance that the bearing reaches the life, -
//
// Valid for x_0 < θ.
// Errors: *check.RangeError for inputs not above zero, x_0 not below θ or an
// unknown element.
// Source: Shigley, Mechanical Engineering Design, 9th ed., eq. 11-21; the form
// as printed in the solutions to its problems 11-1 to 11-3.
func Reliability(p ReliabilityParams) (float64, error) {
	const fn = "bearing.Reliability"
	a, err := weibullExponent(fn, p.Element, p.Guaranteed, p.Scale, p.Shape)
	if err != nil {
		return 0, err
	}
	if err := check.All(fn,
		check.Positive("Load", p.Load),
		check.Positive("Rating", p.Rating),
		check.Positive("LifeRatio", p.LifeRatio),
	); err != nil {
		return 0, err
	}
	x := p.LifeRatio * math.Pow(p.Load/p.Rating, a)
	if x <= p.Guaranteed {
		return 1, nil
	}
	return math.Exp(-math.Pow((x-p.Guaranteed)/(p.Scale-p.Guaranteed), p.Shape)), nil
}

// weibullExponent checks what both directions share and returns the exponent.
func weibullExponent(fn string, e Element, guaranteed, scale, shape float64) (float64, error) {
	if err := check.All(fn,
		check.NotNegative("Guaranteed", guaranteed),
		check.That("Scale", scale, scale > guaranteed, "> Guaranteed"),
		check.Positive("Shape", shape),
	); err != nil {
		return 0, err
	}
	a := e.exponent()
	if a == 0 {
		return 0, unknown(fn, "Element")
	}
	return a, nil
}
