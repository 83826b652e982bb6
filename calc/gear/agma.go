package gear

import (
	"math"

	"axlewright/calc/check"
)

// AGMAEdition names the edition of the American bevel gear rating standard.
type AGMAEdition string

// AGMA2003B97 is the 1997 edition, for generated straight, zerol and spiral bevel
// teeth; it does not cover hypoid pairs.
const AGMA2003B97 AGMAEdition = "ANSI/AGMA 2003-B97"

const (
	inch        = 0.0254
	footAMinute = 0.3048 / 60
	psi         = 4.4482216152605 / (inch * inch)
)

// StressCycleUse says how sure the long-life end of the bending curve must be.
type StressCycleUse string

const (
	CriticalService StressCycleUse = "critical service"
	GeneralService  StressCycleUse = "general service"
)

// GearTreatment is the material and treatment that the American allowable stresses are for.
type GearTreatment string

const (
	ThroughHardenedGrade1 GearTreatment = "through-hardened grade 1"
	CarburizedGrade1      GearTreatment = "carburized grade 1"
	CarburizedGrade2      GearTreatment = "carburized grade 2"
)

func knownEdition(e AGMAEdition) check.Condition {
	return check.That("Edition", 0, e == AGMA2003B97, string(AGMA2003B97))
}

// DynamicResult is the dynamic factor and what it is made of.
type DynamicResult struct {
	Factor   float64 // -, K_v: dynamic factor
	Exponent float64 // -, B: exponent
	Base     float64 // -, A: base, in the square root of feet per minute
	Fastest  float64 // m/s, v_max: pitch-line velocity up to which the factor holds
}

// BevelDynamicFactor returns the dynamic factor of the American bevel standard.
//
//	K_v = ((A + √v)/A)^B, v in ft/min
//	B = 0.25·(12 − Q_v)^(2/3)
//	A = 50 + 56·(1 − B)
//	v_max = (A + Q_v − 3)²
//
//	velocity  pitch-line velocity at the large end v, m/s
//	quality   transmission accuracy number Q_v, -
//
// Valid for 5 ≤ quality ≤ 11 and 0 ≤ velocity ≤ v_max.
// Errors: *check.RangeError outside that range.
// Source: ANSI/AGMA 2003-B97, as in Shigley, Mechanical Engineering Design, 8th ed., chapter 15.
func BevelDynamicFactor(velocity, quality float64) (DynamicResult, error) {
	const fn = "gear.BevelDynamicFactor"
	if err := check.All(fn, check.Within("quality", quality, 5, 11), check.NotNegative("velocity", velocity)); err != nil {
		return DynamicResult{}, err
	}
	r := DynamicResult{Exponent: 0.25 * math.Pow(12-quality, 2.0/3)}
	r.Base = 50 + 56*(1-r.Exponent)
	r.Fastest = math.Pow(r.Base+quality-3, 2) * footAMinute
	if err := check.All(fn, check.That("velocity", velocity, velocity <= r.Fastest, "up to v_max")); err != nil {
		return DynamicResult{}, err
	}
	r.Factor = math.Pow((r.Base+math.Sqrt(velocity/footAMinute))/r.Base, r.Exponent)
	return r, nil
}

// BevelSizeFactor returns the size factor for bending of the American bevel standard.
//
//	K_s = 0.4867 + 0.2132/P_d up to P_d = 16 in⁻¹, then 0.5
//
//	module  transverse module at the large end, m
//	K_s     size factor for bending, -
//
// Here P_d is the diametral pitch, one inch over the module.
//
// Valid for 0.5 ≤ P_d ≤ 50.
// Errors: *check.RangeError outside that range.
// Source: ANSI/AGMA 2003-B97, as in Shigley, 8th ed., chapter 15.
func BevelSizeFactor(module float64) (float64, error) {
	if err := check.All("gear.BevelSizeFactor", check.Within("module", module, inch/50, inch/0.5)); err != nil {
		return 0, err
	}
	if pitch := inch / module; pitch <= 16 {
		return 0.4867 + 0.2132/pitch, nil
	}
	return 0.5, nil
}

// BevelPittingSizeFactor returns the size factor for pitting of the American bevel standard.
//
//	C_s = 0.125·F + 0.4375 for 0.5 in ≤ F ≤ 4.5 in, 0.5 below, 1 above
//
//	face  face width F, m
//	C_s   size factor for pitting, -
//
// Valid for face > 0.
// Errors: *check.RangeError outside that range.
// Source: ANSI/AGMA 2003-B97, as in Shigley, 8th ed., chapter 15.
func BevelPittingSizeFactor(face float64) (float64, error) {
	if err := check.All("gear.BevelPittingSizeFactor", check.Positive("face", face)); err != nil {
		return 0, err
	}
	return min(1, max(0.5, 0.125*face/inch+0.4375)), nil
}

// BevelLoadDistribution returns the load distribution factor of the American bevel standard.
//
//	K_m = K_mb + 0.0036·F², F in inches
//	K_mb = 1.00 both straddled, 1.10 one overhung, 1.25 both overhung
//
//	face      face width F, m
//	mounting  how the members are held, name
//	K_m       load distribution factor, -
//
// Valid for 0 < face ≤ 0.25 m and properly crowned teeth.
// Errors: *check.RangeError outside that range or for an unknown mounting.
// Source: ANSI/AGMA 2003-B97, as in Shigley, 8th ed., chapter 15.
func BevelLoadDistribution(face float64, mounting Mounting) (float64, error) {
	base := map[Mounting]float64{BothStraddled: 1.00, OneOverhung: 1.10, BothOverhung: 1.25}[mounting]
	if err := check.All("gear.BevelLoadDistribution",
		check.That("face", face, face > 0 && face <= 0.25, "0 < face <= 0.25 m"),
		check.That("mounting", 0, base != 0, "a mounting of the list"),
	); err != nil {
		return 0, err
	}
	return base + 0.0036*math.Pow(face/inch, 2), nil
}
