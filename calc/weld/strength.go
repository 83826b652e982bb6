package weld

import (
	"math"

	"axlewright/calc/check"
)

// SteelGrade is the strength class of the weaker of the joined steels.
type SteelGrade string

// Grades with a correlation factor. The last two are for the rules of EN 1993-1-12.
const (
	S235 SteelGrade = "S235"
	S275 SteelGrade = "S275"
	S355 SteelGrade = "S355"
	S420 SteelGrade = "S420"
	S460 SteelGrade = "S460"
	S690 SteelGrade = "S690"
	S700 SteelGrade = "S700"
)

var steelGrades = []SteelGrade{S235, S275, S355, S420, S460, S690, S700}

// CorrelationFactor returns the factor that ties the strength of a fillet weld to that of the steel it joins.
//
//	β_w = table 4.1 by grade
//
//	grade  strength class of the weaker part, name
//	β_w    correlation factor, -
//
// 0.80 for S235, 0.85 for S275, 0.90 for S355, 1.00 for S420 and S460. From S690
// to S700 it is 1.00 too, and a filler weaker than the plate sets f_u.
// Valid for structural steels and steel castings of the same strength, not for iron.
// Errors: *check.RangeError for a grade without a factor.
// Source: EN 1993-1-8:2005, table 4.1; EN 1993-1-12:2007, 2.8 (from memory).
func CorrelationFactor(grade SteelGrade) (float64, error) {
	switch grade {
	case S235:
		return 0.80, nil
	case S275:
		return 0.85, nil
	case S355:
		return 0.90, nil
	case S420, S460, S690, S700:
		return 1.00, nil
	}
	return 0, notNamed("weld.CorrelationFactor", "grade", grade, steelGrades)
}

// FilletStrengthParams is what the strength of a fillet weld depends on.
type FilletStrengthParams struct {
	Tensile       float64 // Pa, f_u: nominal tensile strength of the weaker part
	Correlation   float64 // -, β_w: correlation factor of the steel
	PartialFactor float64 // -, γ_M2: partial factor, 1.25 in EN 1993-1-8
}

func (p FilletStrengthParams) conditions() []check.Condition {
	return []check.Condition{
		check.Positive("Tensile", p.Tensile),
		check.Within("Correlation", p.Correlation, 0.8, 1),
		check.Within("PartialFactor", p.PartialFactor, 1, 2),
	}
}

// FilletShearStrength returns the design shear strength on the throat by the simplified
// method, whatever the direction of the force.
//
//	f_vwd = f_u/(√3·β_w·γ_M2)
//
//	f_vwd  design shear strength of the weld, Pa
//
// Valid for steel parts with matching filler. In the simplified method the vector sum
// of all forces on the throat is set against it.
// Errors: *check.RangeError for figures outside 0.8 <= β_w <= 1 and 1 <= γ_M2 <= 2.
// Source: EN 1993-1-8:2005, 4.5.3.3, eq. (4.4) (from memory).
func FilletShearStrength(p FilletStrengthParams) (float64, error) {
	if err := check.All("weld.FilletShearStrength", p.conditions()...); err != nil {
		return 0, err
	}
	return p.Tensile / (math.Sqrt(3) * p.Correlation * p.PartialFactor), nil
}

// FilletLineResistance returns the force that a metre of fillet weld carries by the simplified method.
//
//	F_wRd = f_vwd·a
//
//	strength  design shear strength f_vwd of the weld, Pa
//	throat    throat a, m
//	F_wRd     design resistance for each metre of weld, N/m
//
// Valid for throats of 3 mm and more.
// Errors: *check.RangeError outside that range.
// Source: EN 1993-1-8:2005, 4.5.2(2) and 4.5.3.3, eqs (4.2) and (4.3) (from memory).
func FilletLineResistance(strength, throat float64) (float64, error) {
	if err := check.All("weld.FilletLineResistance",
		check.Positive("strength", strength),
		check.That("throat", throat, throat >= 0.003*(1-1e-12), ">= 0.003"),
	); err != nil {
		return 0, err
	}
	return strength * throat, nil
}

// RequiredThroat returns the throat that a force on each metre of weld asks for by the simplified method.
//
//	a = F_w/f_vwd
//
//	force     resultant force F_w on each metre of weld, N/m
//	strength  design shear strength f_vwd of the weld, Pa
//	a         throat, m
//
// Valid for any force; a result below the least throat of 3 mm means that 3 mm is laid.
// Errors: *check.RangeError for a negative force or no strength.
// Source: EN 1993-1-8:2005, 4.5.3.3 (from memory).
func RequiredThroat(force, strength float64) (float64, error) {
	if err := check.All("weld.RequiredThroat",
		check.NotNegative("force", force),
		check.Positive("strength", strength),
	); err != nil {
		return 0, err
	}
	return force / strength, nil
}
