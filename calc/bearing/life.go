package bearing

import (
	"math"

	"axlewright/calc/check"
)

// Element is the kind of rolling element; it sets how steeply life falls with load.
type Element string

const (
	Ball   Element = "ball"   // life falls with the third power of the load
	Roller Element = "roller" // with the power 10/3
)

// million is the number of revolutions that a basic dynamic load rating is for.
const million = 1e6

// exponent returns p, or 0 for an unknown element.
func (e Element) exponent() float64 {
	switch e {
	case Ball:
		return 3
	case Roller:
		return 10. / 3
	}
	return 0
}

// LifeParams holds the inputs of [BasicLife].
type LifeParams struct {
	Rating  float64 // N, C: basic dynamic load rating
	Load    float64 // N, P: dynamic equivalent load
	Element Element // name, ball or roller
}

// BasicLife returns the number of revolutions that nine bearings of ten reach.
//
//	L10 = (C/P)^p · 1 000 000
//	p = 10/3 (roller), 3 (ball)
//
//	L10  basic rating life, in revolutions, -
//
// Valid for 0 < P <= C/2; above, raceways yield and the law no longer holds.
// Errors: *check.RangeError outside that range or for an unknown element.
// Source: ISO 281:2007, basic rating life (from memory).
func BasicLife(p LifeParams) (float64, error) {
	const fn = "bearing.BasicLife"
	if err := check.All(fn,
		check.Positive("Rating", p.Rating),
		check.That("Load", p.Load, p.Load > 0 && p.Load <= p.Rating/2, "0 < P <= C/2"),
	); err != nil {
		return 0, err
	}
	n := p.Element.exponent()
	if n == 0 {
		return 0, unknown(fn, "Element")
	}
	return million * math.Pow(p.Rating/p.Load, n), nil
}

// RequiredRatingParams holds the inputs of [RequiredRating].
type RequiredRatingParams struct {
	Load        float64 // N, P: dynamic equivalent load
	Revolutions float64 // -, L: revolutions that nine bearings of ten are to reach
	Element     Element // name, ball or roller
}

// RequiredRating returns the basic dynamic load rating that a life asks for.
//
//	C = P·(L/1 000 000)^(1/p)
//	p = 10/3 (roller), 3 (ball)
//
//	C  basic dynamic load rating, N
//
// Valid for lives that make the rating 2·P and more.
// Errors: *check.RangeError for a load or life not above zero, an unknown
// element, or a life so short that P would be above C/2.
// Source: ISO 281:2007, basic rating life solved for C (from memory).
func RequiredRating(p RequiredRatingParams) (float64, error) {
	const fn = "bearing.RequiredRating"
	n := p.Element.exponent()
	if n == 0 {
		return 0, unknown(fn, "Element")
	}
	if err := check.All(fn,
		check.Positive("Load", p.Load),
		check.That("Revolutions", p.Revolutions, p.Revolutions >= million*math.Pow(2, n), ">= 2^p million, so that P <= C/2"),
	); err != nil {
		return 0, err
	}
	return p.Load * math.Pow(p.Revolutions/million, 1/n), nil
}

// LifeTime returns the running time of a number of revolutions.
//
//	t = 2π·L/ω
//
//	revolutions  revolutions L, -
//	speed        speed of one ring against the other ω, rad/s
//	t            running time, s
//
// Valid for a steady speed above zero.
// Errors: *check.RangeError for a negative life or a speed not above zero.
// Source: definition of the revolution.
func LifeTime(revolutions, speed float64) (float64, error) {
	if err := check.All("bearing.LifeTime",
		check.NotNegative("revolutions", revolutions),
		check.Positive("speed", speed),
	); err != nil {
		return 0, err
	}
	return 2 * math.Pi * revolutions / speed, nil
}

// Edition is the edition of ISO 281 whose reliability factor is used.
type Edition string

const (
	Edition1990 Edition = "ISO 281:1990" // two-parameter Weibull of slope 1.5
	Edition2007 Edition = "ISO 281:2007" // a life that all bearings reach is added
)

// ReliabilityFactor returns the factor on life for a reliability above 90 %.
//
//	a1 = [ln(1/R)/ln(1/0.9)]^(2/3)                  ISO 281:1990
//	a1 = 0.95·[ln(1/R)/ln(1/0.9)]^(2/3) + 0.05      ISO 281:2007
//
//	reliability  chance that a bearing reaches the life, R, -
//	edition      edition of ISO 281, name
//	a1           life adjustment factor for reliability, -
//
// The standard prints a table; these are the distributions behind it and give
// every row to its last digit.
// Valid for 0.90 <= R <= 0.99 (1990) and 0.90 <= R <= 0.9995 (2007).
// Errors: *check.RangeError outside that range or for an unknown edition.
// Source: ISO 281:1990 and ISO 281:2007, tables of a1; ISO/TR 1281-2 (from memory).
func ReliabilityFactor(reliability float64, edition Edition) (float64, error) {
	const fn = "bearing.ReliabilityFactor"
	highest := 0.9995
	switch edition {
	case Edition2007:
	case Edition1990:
		highest = 0.99
	default:
		return 0, unknown(fn, "edition")
	}
	if err := check.All(fn, check.Within("reliability", reliability, 0.90, highest)); err != nil {
		return 0, err
	}
	a := math.Pow(math.Log(reliability)/math.Log(0.9), 2./3)
	if edition == Edition2007 {
		a = 0.95*a + 0.05
	}
	return a, nil
}
