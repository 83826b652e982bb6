package bearing

import (
	"math"

	"axlewright/calc/check"
)

// OilGrade is the viscosity grade on the can.
type OilGrade string

const (
	VG68      OilGrade = "ISO VG 68"
	VG100     OilGrade = "ISO VG 100"
	VG150     OilGrade = "ISO VG 150"
	VG220     OilGrade = "ISO VG 220"
	VG320     OilGrade = "ISO VG 320"
	VG460     OilGrade = "ISO VG 460"
	SAE75W90  OilGrade = "SAE 75W-90"
	SAE80W90  OilGrade = "SAE 80W-90"
	SAE90     OilGrade = "SAE 90"
	SAE85W140 OilGrade = "SAE 85W-140"
	SAE75W140 OilGrade = "SAE 75W-140"
)

// OilResult holds what a viscosity grade says about the oil.
type OilResult struct {
	At40   float64 // m²/s, ν_40: kinematic viscosity at 313.15 K (40 °C)
	At100  float64 // m²/s, ν_100: kinematic viscosity at 373.15 K (100 °C)
	Spread float64 // -, ±: share by which an oil of the grade may differ
}

// GradeViscosity returns the usual viscosity of an oil of a grade at the two
// temperatures at which oils are graded.
//
//	ν_40, ν_100 = table
//
//	grade  viscosity grade, name
//
// Valid for fresh oil. ISO grades are set at 40 °C, their value at 100 °C is
// that of a plain mineral oil (viscosity index 95 by ASTM D2270). SAE gear
// grades are set at 100 °C as a band; the values are usual ones within it and
// the can's data sheet goes before them.
// Errors: *check.RangeError for an unknown grade.
// Source: ISO 3448 for the ISO grades; SAE J306:2005 for the bands (SAE 90 is
// 13.5 to 18.5 mm²/s at 100 °C); the values within them common practice, no source.
func GradeViscosity(grade OilGrade) (OilResult, error) {
	g, ok := oilGrades[grade]
	if !ok {
		return OilResult{}, unknown("bearing.GradeViscosity", "grade")
	}
	const mm2 = 1e-6
	return OilResult{At40: g.at40 * mm2, At100: g.at100 * mm2, Spread: g.spread}, nil
}

// oilGrades in mm²/s.
var oilGrades = map[OilGrade]struct{ at40, at100, spread float64 }{
	VG68:      {68, 8.5, 0.10},
	VG100:     {100, 11.1, 0.10},
	VG150:     {150, 14.5, 0.10},
	VG220:     {220, 18.7, 0.10},
	VG320:     {320, 23.9, 0.10},
	VG460:     {460, 30.3, 0.10},
	SAE75W90:  {105, 15.3, 0.16},
	SAE80W90:  {142, 14.5, 0.16},
	SAE90:     {190, 17.0, 0.16},
	SAE85W140: {374, 26.5, 0.15},
	SAE75W140: {175, 25.0, 0.15},
}

// ViscosityParams holds the inputs of [Viscosity].
type ViscosityParams struct {
	At40        float64 // m²/s, ν_40: kinematic viscosity at 313.15 K (40 °C)
	At100       float64 // m²/s, ν_100: kinematic viscosity at 373.15 K (100 °C)
	Temperature float64 // K, T: temperature of the oil at the raceway
}

// Viscosity returns the kinematic viscosity of an oil at its running temperature.
//
//	ν = 10^(10^(A − B·lg T)) − 0.7      with ν in mm²/s and T in kelvin
//	B = [lg lg(ν_40 + 0.7) − lg lg(ν_100 + 0.7)]/lg(373.15/313.15)
//	A = lg lg(ν_40 + 0.7) + B·lg 313.15
//
//	ν  kinematic viscosity, m²/s
//
// Valid for ν above 2 mm²/s and 253.15 K <= T <= 423.15 K (−20 °C to 150 °C).
// Errors: *check.RangeError outside that range, or where the oil is not thinner
// at 100 °C than at 40 °C.
// Source: ASTM D341 (Ubbelohde and Walther; from memory).
func Viscosity(p ViscosityParams) (float64, error) {
	const fn = "bearing.Viscosity"
	const mm2 = 1e-6
	if err := check.All(fn,
		check.That("At100", p.At100, p.At100 > 2*mm2, "> 2 mm²/s"),
		check.That("At40", p.At40, p.At40 > p.At100, "> At100"),
		check.Within("Temperature", p.Temperature, 253.15, 423.15),
	); err != nil {
		return 0, err
	}
	w := func(nu float64) float64 { return math.Log10(math.Log10(nu/mm2 + 0.7)) }
	T1, T2 := math.Log10(313.15), math.Log10(373.15)
	B := (w(p.At40) - w(p.At100)) / (T2 - T1)
	A := w(p.At40) + B*T1
	nu := math.Pow(10, math.Pow(10, A-B*math.Log10(p.Temperature))) - 0.7
	if err := check.All(fn, check.That("Temperature", p.Temperature, nu > 2, "so low that ν stays above 2 mm²/s")); err != nil {
		return 0, err
	}
	return nu * mm2, nil
}

// ReferenceViscosity returns the viscosity at which the oil film just parts the
// raceways.
//
//	ν1 = 45 000·n^(−0.83)·D_pw^(−0.5)     n < 1000 1/min
//	ν1 = 4500·n^(−0.5)·D_pw^(−0.5)        n >= 1000 1/min
//
//	speed          speed of one ring against the other ω, rad/s
//	pitchDiameter  diameter of the circle through the roller centres D_pw, m
//	ν1             reference kinematic viscosity, m²/s
//
// The formulas stand in mm²/s, 1/min and mm.
// Valid for a speed above zero.
// Errors: *check.RangeError for a speed or diameter not above zero.
// Source: ISO 281:2007, viscosity ratio (from memory).
func ReferenceViscosity(speed, pitchDiameter float64) (float64, error) {
	if err := check.All("bearing.ReferenceViscosity",
		check.Positive("speed", speed),
		check.Positive("pitchDiameter", pitchDiameter),
	); err != nil {
		return 0, err
	}
	return referenceViscosity(speed, pitchDiameter), nil
}

// ViscosityRatioParams holds the inputs of [ViscosityRatio].
type ViscosityRatioParams struct {
	Viscosity     float64 // m²/s, ν: kinematic viscosity at running temperature
	Speed         float64 // rad/s, ω: speed of one ring against the other
	PitchDiameter float64 // m, D_pw: diameter of the circle through the roller centres
}

// ViscosityRatio returns how the oil's viscosity compares with the one needed.
//
//	κ = ν/ν1
//
//	κ  viscosity ratio, -
//
// Valid for a speed above zero.
// Errors: *check.RangeError for an input not above zero.
// Source: ISO 281:2007, viscosity ratio (from memory).
func ViscosityRatio(p ViscosityRatioParams) (float64, error) {
	const fn = "bearing.ViscosityRatio"
	if err := check.All(fn,
		check.Positive("Viscosity", p.Viscosity),
		check.Positive("Speed", p.Speed),
		check.Positive("PitchDiameter", p.PitchDiameter),
	); err != nil {
		return 0, err
	}
	return p.Viscosity / referenceViscosity(p.Speed, p.PitchDiameter), nil
}

func referenceViscosity(speed, pitchDiameter float64) float64 {
	n := speed * 30 / math.Pi // 1/min
	D := pitchDiameter * 1e3  // mm
	if n < 1000 {
		return 45000 * math.Pow(n, -0.83) / math.Sqrt(D) * 1e-6
	}
	return 4500 / math.Sqrt(n*D) * 1e-6
}
