package bearing

import (
	"math"

	"axlewright/calc/check"
)

// FatigueLoadLimit returns the load below which clean, well oiled raceways do
// not tire.
//
//	C_u = C_0/8.2                          D_pw <= 100 mm
//	C_u = C_0/8.2·(100/D_pw)^0.3           D_pw > 100 mm
//
//	staticRating   basic static load rating C_0, N
//	pitchDiameter  diameter of the circle through the roller centres D_pw, m
//	C_u            fatigue load limit, N
//
// It stands for a contact pressure of about 1500 MPa at the hardest pressed roller.
// Valid for roller bearings of present-day steel.
// Errors: *check.RangeError for a rating or diameter not above zero.
// Source: ISO 281:2007, annex B, simplified method (from memory).
func FatigueLoadLimit(staticRating, pitchDiameter float64) (float64, error) {
	if err := check.All("bearing.FatigueLoadLimit",
		check.Positive("staticRating", staticRating),
		check.Positive("pitchDiameter", pitchDiameter),
	); err != nil {
		return 0, err
	}
	return fatigueLoadLimit(staticRating, pitchDiameter), nil
}

// SystemFactorParams holds the inputs of [SystemFactor].
type SystemFactorParams struct {
	Kappa         float64 // -, κ: viscosity ratio
	Contamination float64 // -, e_C: contamination factor
	FatigueLimit  float64 // N, C_u: fatigue load limit
	Load          float64 // N, P: dynamic equivalent load
	EPAdditive    bool    // -, oil with a proven extreme-pressure additive, as axle oils of service GL-5 are sold
}

// SystemFactor returns the life modification factor for oil film, dirt and
// fatigue limit of radial roller bearings.
//
//	a_ISO = 0.1·[1 − (x1 − x2/κ^y)·(e_C·C_u/P)^0.4]^(−9.185), at most 50
//	x1, x2, y = 1.5859, 1.3993, 0.054381  (0.1 <= κ < 0.4)
//	x1, x2, y = 1.5859, 1.2348, 0.19087   (0.4 <= κ < 1)
//	x1, x2, y = 1.5859, 1.2348, 0.071739  (1 <= κ <= 4)
//
//	a_ISO  life modification factor, -
//
// Above κ = 4 the standard takes 4. With a proven extreme-pressure additive, κ
// below 1 and e_C of 0.2 and more it allows κ = 1, with a_ISO up to 3 and never
// less than without.
// Valid for κ >= 0.1 and 0 <= e_C <= 1.
// Errors: *check.RangeError outside that range.
// Source: ISO 281:2007, 9.3.3, eqs. 34 to 36 (from memory).
func SystemFactor(p SystemFactorParams) (float64, error) {
	if err := check.All("bearing.SystemFactor",
		check.That("Kappa", p.Kappa, p.Kappa >= 0.1, ">= 0.1"),
		check.Within("Contamination", p.Contamination, 0, 1),
		check.Positive("FatigueLimit", p.FatigueLimit),
		check.Positive("Load", p.Load),
	); err != nil {
		return 0, err
	}
	ratio := p.Contamination * p.FatigueLimit / p.Load
	a := systemFactor(p.Kappa, ratio)
	if p.EPAdditive && p.Kappa < 1 && p.Contamination >= 0.2 {
		a = max(a, min(systemFactor(1, ratio), 3))
	}
	return a, nil
}

// ModifiedLifeParams holds the inputs of [ModifiedLife].
type ModifiedLifeParams struct {
	Rating            float64 // N, C: basic dynamic load rating
	Load              float64 // N, P: dynamic equivalent load
	ReliabilityFactor float64 // -, a1: life adjustment factor for reliability
	SystemFactor      float64 // -, a_ISO: life modification factor for film, dirt and fatigue limit
}

// ModifiedLife returns the life of a roller bearing corrected for reliability,
// oil film and dirt.
//
//	L_nm = a1·a_ISO·(C/P)^(10/3) · 1 000 000
//
//	L_nm  modified rating life, in revolutions, -
//
// Valid for 0 < P <= C/2.
// Errors: *check.RangeError outside that range or for a factor not above zero.
// Source: ISO 281:2007, modified rating life (from memory).
func ModifiedLife(p ModifiedLifeParams) (float64, error) {
	const fn = "bearing.ModifiedLife"
	if err := check.All(fn,
		check.Positive("Rating", p.Rating),
		check.That("Load", p.Load, p.Load > 0 && p.Load <= p.Rating/2, "0 < P <= C/2"),
		check.Positive("ReliabilityFactor", p.ReliabilityFactor),
		check.Positive("SystemFactor", p.SystemFactor),
	); err != nil {
		return 0, err
	}
	return p.ReliabilityFactor * p.SystemFactor * million * math.Pow(p.Rating/p.Load, 10./3), nil
}

func fatigueLoadLimit(staticRating, pitchDiameter float64) float64 {
	cu := staticRating / 8.2
	if pitchDiameter > 0.1 {
		cu *= math.Pow(0.1/pitchDiameter, 0.3)
	}
	return cu
}

// systemFactor is a_ISO for ratio = e_C·C_u/P. Below κ = 0.1, where the standard
// stops, it stays at the 0.1 that its formula reaches there.
func systemFactor(kappa, ratio float64) float64 {
	const x1 = 1.5859
	var x2, y float64
	switch {
	case kappa < 0.1:
		return 0.1
	case kappa < 0.4:
		x2, y = 1.3993, 0.054381
	case kappa < 1:
		x2, y = 1.2348, 0.19087
	default:
		x2, y = 1.2348, 0.071739
	}
	base := 1 - (x1-x2/math.Pow(min(kappa, 4), y))*math.Pow(ratio, 0.4)
	if base <= 0 { // the formula has passed its pole: no fatigue is expected
		return 50
	}
	return min(0.1*math.Pow(base, -9.185), 50)
}
