package bearing

import (
	"math"

	"axlewright/calc/check"
)

// Cleanliness says in words how clean the oil in the bearing is.
type Cleanliness string

const (
	ExtremelyClean      Cleanliness = "extremely clean"      // laboratory
	HighlyClean         Cleanliness = "highly clean"         // very fine filter
	NormallyClean       Cleanliness = "normally clean"       // fine filter
	SlightlySoiled      Cleanliness = "slightly soiled"      // slight contamination
	TypicallySoiled     Cleanliness = "typically soiled"     // coarse filter, wear of other parts
	SeverelySoiled      Cleanliness = "severely soiled"      // poor seals
	VerySeverelySoiled  Cleanliness = "very severely soiled" // outside the method
	SplashOiledAxle     Cleanliness = "splash-oiled axle"    // wear of the gears in the bath, no filter
	SplashOiledWellKept Cleanliness = "splash-oiled axle, magnet, oil changed early"
)

// ContaminationResult holds a contamination factor with its spread.
type ContaminationResult struct {
	Low    float64 // -, e_C,low: dirtiest of the class
	Likely float64 // -, e_C: middle of the class
	High   float64 // -, e_C,high: cleanest of the class
}

// ContaminationBand returns the band of the contamination factor for a degree of
// cleanliness told in words.
//
//	e_C = table by class, for D_pw < 100 mm and D_pw >= 100 mm
//
//	class          cleanliness in words, name
//	pitchDiameter  diameter of the circle through the roller centres D_pw, m
//
// Valid for hard particles; a band it stays: two axles of one class differ by
// all of it.
// Errors: *check.RangeError for a diameter not above zero or an unknown class.
// Source: ISO 281:2007, table of e_C (from memory); the two classes for axles
// common practice, no source.
func ContaminationBand(class Cleanliness, pitchDiameter float64) (ContaminationResult, error) {
	const fn = "bearing.ContaminationBand"
	if err := check.All(fn, check.Positive("pitchDiameter", pitchDiameter)); err != nil {
		return ContaminationResult{}, err
	}
	band, ok := contaminationBands[class]
	if !ok {
		return ContaminationResult{}, unknown(fn, "class")
	}
	b := band[0]
	if pitchDiameter >= 0.1 {
		b = band[1]
	}
	return ContaminationResult{Low: b[0], Likely: (b[0] + b[1]) / 2, High: b[1]}, nil
}

// contaminationBands: low and high, for small and for large bearings.
var contaminationBands = map[Cleanliness][2][2]float64{
	ExtremelyClean:      {{1, 1}, {1, 1}},
	HighlyClean:         {{0.6, 0.8}, {0.8, 0.9}},
	NormallyClean:       {{0.5, 0.6}, {0.6, 0.8}},
	SlightlySoiled:      {{0.3, 0.5}, {0.4, 0.6}},
	TypicallySoiled:     {{0.1, 0.3}, {0.2, 0.4}},
	SeverelySoiled:      {{0, 0.1}, {0, 0.1}},
	VerySeverelySoiled:  {{0, 0}, {0, 0}},
	SplashOiledAxle:     {{0.1, 0.3}, {0.1, 0.3}},
	SplashOiledWellKept: {{0.2, 0.5}, {0.2, 0.5}},
}

// ParticleCode is the cleanliness code of ISO 4406 (particles of 6 µm and 14 µm).
type ParticleCode string

const (
	Code13 ParticleCode = "-/13/10"
	Code15 ParticleCode = "-/15/12"
	Code17 ParticleCode = "-/17/14"
	Code19 ParticleCode = "-/19/16"
	Code21 ParticleCode = "-/21/18" // oil bath only
)

// Filtering says whether the oil passes a filter before it reaches the bearing.
type Filtering string

const (
	FilteredBefore Filtering = "filtered before the bearing"
	OilBath        Filtering = "oil bath"
)

// ContaminationParams holds the inputs of [ContaminationFactor].
type ContaminationParams struct {
	Kappa         float64      // -, κ: viscosity ratio
	PitchDiameter float64      // m, D_pw: diameter of the circle through the roller centres
	Code          ParticleCode // name, ISO 4406 code of the oil
	Filtering     Filtering    // name, filtered before the bearing, or oil bath
}

// ContaminationFactor returns the contamination factor of an oil whose particles
// have been counted.
//
//	e_C = a·(1 − c/D_pw^(1/3))
//	a = k·κ^0.68·D_pw^0.55, at most 1
//
//	e_C  contamination factor, -
//
// D_pw stands in millimetres. k and c go with the particle code; an oil bath is
// rated dirtier than filtered oil of the same code. For small bearings the
// result lies well below the band told in words.
// Valid for 0.1 <= κ and bearings large enough that e_C is not negative; above
// κ = 4 the film grows no better and 4 is taken, as the standard says.
// Errors: *check.RangeError outside that range or for an unknown name.
// Source: ISO 281:2007, annex A (from memory, not checked against a copy).
func ContaminationFactor(p ContaminationParams) (float64, error) {
	const fn = "bearing.ContaminationFactor"
	var constants map[ParticleCode][2]float64
	switch p.Filtering {
	case FilteredBefore:
		constants = filteredConstants
	case OilBath:
		constants = oilBathConstants
	default:
		return 0, unknown(fn, "Filtering")
	}
	kc, ok := constants[p.Code]
	if !ok {
		return 0, unknown(fn, "Code")
	}
	D := p.PitchDiameter * 1e3 // mm
	k, c := kc[0], kc[1]
	if err := check.All(fn,
		check.That("Kappa", p.Kappa, p.Kappa >= 0.1, ">= 0.1"),
		check.That("PitchDiameter", p.PitchDiameter, D > 0 && c <= math.Cbrt(D), "so large that e_C >= 0"),
	); err != nil {
		return 0, err
	}
	a := min(k*math.Pow(min(p.Kappa, 4), 0.68)*math.Pow(D, 0.55), 1)
	return a * (1 - c/math.Cbrt(D)), nil
}

var filteredConstants = map[ParticleCode][2]float64{
	Code13: {0.0864, 0.5663},
	Code15: {0.0432, 0.9987},
	Code17: {0.0288, 1.6329},
	Code19: {0.0216, 2.3362},
}

var oilBathConstants = map[ParticleCode][2]float64{
	Code13: {0.0864, 0.6796},
	Code15: {0.0288, 1.141},
	Code17: {0.0133, 1.67},
	Code19: {0.00864, 2.5164},
	Code21: {0.00411, 3.8974},
}
