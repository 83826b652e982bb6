package gear

import "axlewright/calc/check"

// MaterialGrade is the quality of a case-hardened gear steel and of its treatment.
type MaterialGrade string

const (
	GradeML MaterialGrade = "ML" // modest demands
	GradeMQ MaterialGrade = "MQ" // what an experienced maker reaches at moderate cost; take this one
	GradeME MaterialGrade = "ME" // what needs a proof of every step
)

// EnduranceLimits are the limits that a case-hardened gear steel stands for 3·10⁶
// bending and 5·10⁷ rolling cycles in 99 of 100 test gears.
type EnduranceLimits struct {
	Root      float64 // Pa, σ_Flim: nominal stress number of the root
	RootLow   float64 // Pa, lower end of the usual spread of σ_Flim
	RootHigh  float64 // Pa, upper end of the usual spread of σ_Flim
	Flank     float64 // Pa, σ_Hlim: allowable contact stress number
	FlankLow  float64 // Pa, lower end of the usual spread of σ_Hlim
	FlankHigh float64 // Pa, upper end of the usual spread of σ_Hlim
}

// CaseHardenedLimits returns the endurance limits of case-hardened gear steel.
//
//	ML: σ_Flim = 312 MPa, σ_Hlim = 1300 MPa
//	MQ: σ_Flim = 461 MPa, σ_Hlim = 1500 MPa
//	ME: σ_Flim = 525 MPa, σ_Hlim = 1650 MPa
//
//	grade  quality of the material, name
//
// For MQ the root limit is 425, 461 or 500 MPa by the hardness of the core; the
// spread covers that. The spread of the others is ± 8 %, of the flanks ± 7 %
// (common practice).
//
// Valid for case hardness of 58 to 64 HRC on wrought steel.
// Errors: *check.RangeError for an unknown grade.
// Source: ISO 6336-5:2003 (from memory).
func CaseHardenedLimits(grade MaterialGrade) (EnduranceLimits, error) {
	limits := map[MaterialGrade]EnduranceLimits{
		GradeML: {312e6, 287e6, 337e6, 1300e6, 1210e6, 1390e6},
		GradeMQ: {461e6, 425e6, 500e6, 1500e6, 1395e6, 1605e6},
		GradeME: {525e6, 483e6, 567e6, 1650e6, 1535e6, 1765e6},
	}
	l, known := limits[grade]
	return l, check.All("gear.CaseHardenedLimits", check.That("grade", 0, known, "ML, MQ or ME"))
}

// PermissibleRootParams is what the permissible stress of a root follows from.
type PermissibleRootParams struct {
	Limit        float64 // Pa, σ_Flim: nominal stress number of the material
	Cycles       float64 // -, N: load cycles; up to 10³ it is a static overload
	NormalModule float64 // m, m_mn: mean normal module
	Notch        float64 // -, Y_δrelT: relative notch sensitivity; optional, 1.00 (0.95 to 1.00)
	Surface      float64 // -, Y_RrelT: relative surface factor; optional, 1.00 (0.95 to 1.05)
	Reversed     float64 // -, Y_M: mean stress factor; optional, 1.00 for load one way, 0.7 for a tooth fully loaded both ways
}

// PermissibleRootStress returns the stress that the root of a case-hardened tooth stands.
//
//	σ_FP = σ_Flim·Y_ST·Y_NT·Y_δrelT·Y_RrelT·Y_X·Y_M
//	Y_ST = 2
//	Y_NT by RootLifeFactor
//	Y_X = 1 up to 5 mm, 1.05 − 0.01·m_mn/mm to 25 mm, then 0.80
//
//	σ_FP  permissible stress of the root, Pa
//
// No factor of safety is in it. The result is the stress that a linear sum
// compares with: a static overload of two thousand megapascals and more is not
// what the steel feels.
//
// Valid for case-hardened wrought steel, 200 MPa ≤ σ_Flim ≤ 700 MPa.
// Errors: *check.RangeError outside that range or that of RootLifeFactor.
// Source: ISO 10300-3:2014 with ISO 6336-3 (from memory).
func PermissibleRootStress(p PermissibleRootParams) (float64, error) {
	notch, surface, reversed := orElse(p.Notch, 1), orElse(p.Surface, 1), orElse(p.Reversed, 1)
	if err := check.All("gear.PermissibleRootStress",
		check.Within("Limit", p.Limit, 200e6, 700e6), check.Positive("NormalModule", p.NormalModule),
		check.Within("Notch", notch, 0.5, 1.2), check.Within("Surface", surface, 0.5, 1.15), check.Within("Reversed", reversed, 0.5, 1),
	); err != nil {
		return 0, err
	}
	life, err := RootLifeFactor(p.Cycles)
	if err != nil {
		return 0, err
	}
	size := min(1, max(0.8, 1.05-0.01*p.NormalModule/1e-3))
	return p.Limit * 2 * life * notch * surface * size * reversed, nil
}

// PermissibleFlankParams is what the permissible stress of a flank follows from.
type PermissibleFlankParams struct {
	Limit       float64 // Pa, σ_Hlim: allowable contact stress number of the material
	Cycles      float64 // -, N: load cycles; up to 10⁵ it is a static overload
	Hypoid      float64 // -, Z_Hyp: hypoid factor, as FlankStress hands it on
	Lubrication float64 // -, Z_L·Z_v·Z_R: film factors for oil, speed and roughness; optional, 0.92 (0.85 to 1.00) for lapped teeth
}

// PermissibleFlankStress returns the contact stress that a case-hardened flank
// stands without pitting.
//
//	σ_HP = σ_Hlim·Z_NT·Z_LvR·Z_Hyp
//	Z_NT by FlankLifeFactor
//
//	σ_HP  permissible contact stress, Pa
//
// Work hardening and size factor are one for case-hardened pairs. No factor of
// safety is in it.
//
// Valid for case-hardened wrought steel, 800 MPa ≤ σ_Hlim ≤ 2000 MPa, 0.6 ≤ Z_Hyp ≤ 1.
// Errors: *check.RangeError outside that range or that of FlankLifeFactor.
// Source: ISO 10300-2:2014 with ISO 6336-2 (from memory).
func PermissibleFlankStress(p PermissibleFlankParams) (float64, error) {
	film := orElse(p.Lubrication, 0.92)
	if err := check.All("gear.PermissibleFlankStress",
		check.Within("Limit", p.Limit, 800e6, 2000e6), check.Within("Hypoid", p.Hypoid, 0.6, 1),
		check.Within("Lubrication", film, 0.7, 1.2),
	); err != nil {
		return 0, err
	}
	life, err := FlankLifeFactor(p.Cycles)
	if err != nil {
		return 0, err
	}
	return p.Limit * life * film * p.Hypoid, nil
}
