package bolt

import (
	"fmt"

	"axlewright/calc/check"
)

// ShearResistanceParams describes a bolt that a joint pushes sideways.
type ShearResistanceParams struct {
	Class         Class   // name, strength class 4.6 to 10.9
	ThreadInPlane bool    // -, yes where the shear plane cuts the thread
	Area          float64 // m², A: stress area if the plane cuts the thread, else shank area
	Tensile       float64 // Pa, f_ub: tensile strength of the bolt, nominal for the class
	Safety        float64 // -, γ_M2: partial factor, 1.25 recommended
}

// ShearResistance returns the design resistance of a bolt in shear, one plane.
//
//	F_vRd = α_v·f_ub·A/γ_M2
//	α_v = 0.6; 0.5 for 4.8, 5.8, 6.8 and 10.9 where the plane cuts the thread
//
//	F_vRd  design shear resistance of one plane, N
//
// Valid for classes 4.6 to 10.9 (12.9 is outside the standard) in holes of normal clearance.
// Errors: *check.RangeError outside that range, for an area or strength of zero or below, or γ_M2 < 1.
// Source: EN 1993-1-8:2005, table 3.4 (from memory).
func ShearResistance(p ShearResistanceParams) (float64, error) {
	shank, thread := 0.6, 0.0
	switch p.Class {
	case Class4_6, Class5_6, Class8_8:
		thread = 0.6
	case Class4_8, Class5_8, Class6_8, Class10_9:
		thread = 0.5
	}
	if err := check.All("bolt.ShearResistance",
		check.That("Class", 0, thread > 0, fmt.Sprintf("4.6, 4.8, 5.6, 5.8, 6.8, 8.8 or 10.9, not %q", p.Class)),
		check.Positive("Area", p.Area),
		check.Positive("Tensile", p.Tensile),
		check.That("Safety", p.Safety, p.Safety >= 1, ">= 1"),
	); err != nil {
		return 0, err
	}
	alpha := shank
	if p.ThreadInPlane {
		alpha = thread
	}
	return alpha * p.Tensile * p.Area / p.Safety, nil
}

// TensionResistance returns the design resistance of a bolt in tension.
//
//	F_tRd = 0.9·f_ub·A_s/γ_M2
//
//	tensile  tensile strength of the bolt f_ub, Pa
//	area     tensile stress area A_s, m²
//	safety   partial factor γ_M2, 1.25 recommended, -
//	F_tRd    design tension resistance, N
//
// Valid for bolts of classes 4.6 to 10.9 without countersunk heads.
// Errors: *check.RangeError for a strength or area of zero or below, or γ_M2 < 1.
// Source: EN 1993-1-8:2005, table 3.4 (from memory).
func TensionResistance(tensile, area, safety float64) (float64, error) {
	if err := check.All("bolt.TensionResistance",
		check.Positive("tensile", tensile), check.Positive("area", area), check.That("safety", safety, safety >= 1, ">= 1"),
	); err != nil {
		return 0, err
	}
	return 0.9 * tensile * area / safety, nil
}

// ShearTensionParams describes a bolt that is pushed and pulled at once.
type ShearTensionParams struct {
	Shear             float64 // N, F_vEd: shear on the bolt
	Tension           float64 // N, F_tEd: tension from outside, without preload
	ShearResistance   float64 // N, F_vRd: design shear resistance
	TensionResistance float64 // N, F_tRd: design tension resistance
}

// ShearTensionUse returns how much of its resistance a bolt in shear and tension uses; above 1 it fails the check.
//
//	u = F_vEd/F_vRd + F_tEd/(1.4·F_tRd)
//
//	u  use of the resistance, -
//
// Valid for bolts of EN 1993-1-8; tension alone must be checked too.
// Errors: *check.RangeError for a negative force or a resistance of zero or below.
// Source: EN 1993-1-8:2005, table 3.4 (from memory).
func ShearTensionUse(p ShearTensionParams) (float64, error) {
	if err := check.All("bolt.ShearTensionUse",
		check.NotNegative("Shear", p.Shear), check.NotNegative("Tension", p.Tension),
		check.Positive("ShearResistance", p.ShearResistance), check.Positive("TensionResistance", p.TensionResistance),
	); err != nil {
		return 0, err
	}
	return p.Shear/p.ShearResistance + p.Tension/(1.4*p.TensionResistance), nil
}

// UltimateShear returns the force that shears a bolt through, without safety factor.
//
//	F = n·0.6·R_m·A
//
//	tensile  tensile strength of the bolt R_m, Pa
//	area     area of one plane, of the thread where the plane cuts it A, m²
//	planes   shear planes n, -
//	F        force that shears the bolt, N
//
// Valid for steel bolts in a close hole, planes that share evenly.
// Errors: *check.RangeError for a strength or area of zero or below or no plane.
// Source: common practice, τ_B = 0.6·R_m; compare α_v of EN 1993-1-8:2005, table 3.4.
func UltimateShear(tensile, area float64, planes int) (float64, error) {
	if err := check.All("bolt.UltimateShear",
		check.Positive("tensile", tensile), check.Positive("area", area),
		check.That("planes", float64(planes), planes >= 1, ">= 1"),
	); err != nil {
		return 0, err
	}
	return float64(planes) * 0.6 * tensile * area, nil
}
