package gear

import (
	"math"

	"axlewright/calc/check"
)

// BevelBendingCycleFactor returns the stress-cycle factor for bending of the
// American bevel standard, for carburized teeth.
//
//	K_L = 2.7 from 10² to 10³
//	K_L = 6.1514·N^−0.1192 to 3·10⁶
//	K_L = 1.6831·N^−0.0323 to 10¹⁰ in critical service, 1.3558·N^−0.0178 in general service
//
//	cycles  load cycles N, -
//	use     critical or general service, name
//	K_L     stress-cycle factor for bending, -
//
// The printed constants leave steps of up to 3 % where the pieces meet.
//
// Valid for 10² ≤ cycles ≤ 10¹⁰.
// Errors: *check.RangeError outside that range.
// Source: ANSI/AGMA 2003-B97, as in Shigley, 8th ed., chapter 15 (from memory).
func BevelBendingCycleFactor(cycles float64, use StressCycleUse) (float64, error) {
	if err := check.All("gear.BevelBendingCycleFactor", check.Within("cycles", cycles, 1e2, 1e10),
		check.That("use", 0, use == CriticalService || use == GeneralService, "critical or general service"),
	); err != nil {
		return 0, err
	}
	switch {
	case cycles < 1e3:
		return 2.7, nil
	case cycles <= 3e6:
		return 6.1514 * math.Pow(cycles, -0.1192), nil
	case use == CriticalService:
		return 1.6831 * math.Pow(cycles, -0.0323), nil
	}
	return 1.3558 * math.Pow(cycles, -0.0178), nil
}

// BevelPittingCycleFactor returns the stress-cycle factor for pitting of the
// American bevel standard, for carburized teeth.
//
//	C_L = 2.0 from 10³ to 10⁴
//	C_L = 3.4822·N^−0.0602 to 10¹⁰
//
//	cycles  load cycles N, -
//	C_L     stress-cycle factor for pitting, -
//
// Valid for 10³ ≤ cycles ≤ 10¹⁰.
// Errors: *check.RangeError outside that range.
// Source: ANSI/AGMA 2003-B97, as in Shigley, 8th ed., chapter 15 (from memory).
func BevelPittingCycleFactor(cycles float64) (float64, error) {
	if err := check.All("gear.BevelPittingCycleFactor", check.Within("cycles", cycles, 1e3, 1e10)); err != nil {
		return 0, err
	}
	if cycles < 1e4 {
		return 2, nil
	}
	return 3.4822 * math.Pow(cycles, -0.0602), nil
}

// BevelReliabilityFactor returns the reliability factor for bending of the
// American bevel standard; for pitting its square root is taken.
//
//	K_R = 0.50 − 0.25·lg(1 − R) for 0.99 ≤ R ≤ 0.999
//	K_R = 0.70 − 0.15·lg(1 − R) for 0.90 ≤ R < 0.99
//	C_R = √K_R
//
//	reliability  share of pairs that last R, -
//	K_R          reliability factor for bending, -
//
// Valid for 0.90 ≤ reliability ≤ 0.999.
// Errors: *check.RangeError outside that range.
// Source: ANSI/AGMA 2003-B97, as in Shigley, 8th ed., chapter 15.
func BevelReliabilityFactor(reliability float64) (float64, error) {
	if err := check.All("gear.BevelReliabilityFactor", check.Within("reliability", reliability, 0.90, 0.999)); err != nil {
		return 0, err
	}
	if reliability >= 0.99 {
		return 0.50 - 0.25*math.Log10(1-reliability), nil
	}
	return 0.70 - 0.15*math.Log10(1-reliability), nil
}

// AllowableResult is a pair of allowable stress numbers.
type AllowableResult struct {
	Bending float64 // Pa, s_at: allowable bending stress number for 10⁷ cycles
	Contact float64 // Pa, s_ac: allowable contact stress number for 10⁷ cycles
}

// BevelAllowableStresses returns the allowable stress numbers of the American bevel standard.
//
//	s_at = 44·H_B + 2100 psi, s_ac = 341·H_B + 23620 psi, through-hardened grade 1
//	s_at = 30000 psi, s_ac = 200000 psi, carburized grade 1
//	s_at = 35000 psi, s_ac = 225000 psi, carburized grade 2
//
//	treatment  material and treatment, name
//	hardness   Brinell hardness H_B, HBW
//
// The hardness counts for through-hardened teeth only.
//
// Valid for 180 ≤ hardness ≤ 400 where through-hardened.
// Errors: *check.RangeError outside that range or for an unknown treatment.
// Source: ANSI/AGMA 2003-B97, as in Shigley, 8th ed., chapter 15 (the carburized figures from memory).
func BevelAllowableStresses(treatment GearTreatment, hardness float64) (AllowableResult, error) {
	const fn = "gear.BevelAllowableStresses"
	switch treatment {
	case CarburizedGrade1:
		return AllowableResult{30000 * psi, 200000 * psi}, nil
	case CarburizedGrade2:
		return AllowableResult{35000 * psi, 225000 * psi}, nil
	case ThroughHardenedGrade1:
		return AllowableResult{(44*hardness + 2100) * psi, (341*hardness + 23620) * psi},
			check.All(fn, check.Within("hardness", hardness, 180, 400))
	}
	return AllowableResult{}, check.All(fn, check.That("treatment", 0, false, "a treatment of the list"))
}
