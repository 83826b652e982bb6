package fatigue

import (
	"math"

	"axlewright/calc/check"
)

// BasquinParams are two points of a stress-life line.
type BasquinParams struct {
	Cycles1   float64 // -, N1: cycles of the first point, such as 10³
	Strength1 float64 // Pa, S1: strength at the first point, such as f·S_ut
	Cycles2   float64 // -, N2: cycles of the second point, such as 10⁶
	Strength2 float64 // Pa, S2: strength at the second point, such as S_e
}

// BasquinLine is a straight line of log strength against log cycles, S = a·N^b.
type BasquinLine struct {
	Coefficient float64 // Pa, a: strength at one cycle
	Exponent    float64 // -, b: below zero
}

// BasquinThrough returns the stress-life line through two points.
//
//	S = a·N^b
//	b = lg(S1/S2)/lg(N1/N2),  a = S1/N1^b
//
// For N1 = 10³ and N2 = 10⁶ this is a = S1²/S2, b = −⅓·lg(S1/S2).
//
// Valid for N2 > N1 and S2 < S1.
// Errors: *check.RangeError outside that range.
// Source: Shigley's Mechanical Engineering Design, 8th ed., 6-8, eq. 6-14 and
// 6-15 (from memory).
func BasquinThrough(p BasquinParams) (BasquinLine, error) {
	if err := check.All("fatigue.BasquinThrough",
		check.Positive("Cycles1", p.Cycles1),
		check.That("Cycles2", p.Cycles2, p.Cycles2 > p.Cycles1, "> Cycles1"),
		check.Positive("Strength2", p.Strength2),
		check.That("Strength1", p.Strength1, p.Strength1 > p.Strength2, "> Strength2"),
	); err != nil {
		return BasquinLine{}, err
	}
	b := math.Log(p.Strength1/p.Strength2) / math.Log(p.Cycles1/p.Cycles2)
	return BasquinLine{Coefficient: p.Strength1 / math.Pow(p.Cycles1, b), Exponent: b}, nil
}

func (l BasquinLine) conditions() []check.Condition {
	return []check.Condition{
		check.Positive("Coefficient", l.Coefficient),
		check.That("Exponent", l.Exponent, l.Exponent < 0, "< 0"),
	}
}

// BasquinStrength returns the stress amplitude that a part stands for a number of cycles.
//
//	S = a·N^b
//
//	line    line through two points
//	cycles  cycles to failure N, -
//	S       reversed stress amplitude, Pa
//
// Valid for lives between the two points the line was drawn through.
// Errors: *check.RangeError for cycles not above zero or a line that does not fall.
// Source: Shigley's Mechanical Engineering Design, 8th ed., eq. 6-13 (from memory).
func BasquinStrength(line BasquinLine, cycles float64) (float64, error) {
	if err := check.All("fatigue.BasquinStrength", append(line.conditions(), check.Positive("cycles", cycles))...); err != nil {
		return 0, err
	}
	return line.Coefficient * math.Pow(cycles, line.Exponent), nil
}

// BasquinLife returns the cycles a part stands at a stress amplitude.
//
//	N = (S/a)^(1/b)
//
//	line       line through two points
//	amplitude  reversed stress amplitude S, Pa
//	N          cycles to failure, -
//
// Valid for lives between the two points the line was drawn through.
// Errors: *check.RangeError for an amplitude not above zero or a line that does not fall.
// Source: Shigley's Mechanical Engineering Design, 8th ed., eq. 6-16 (from memory).
func BasquinLife(line BasquinLine, amplitude float64) (float64, error) {
	if err := check.All("fatigue.BasquinLife", append(line.conditions(), check.Positive("amplitude", amplitude))...); err != nil {
		return 0, err
	}
	return math.Pow(amplitude/line.Coefficient, 1/line.Exponent), nil
}
