package weld

import (
	"math"

	"axlewright/calc/check"
)

// ThroatForces are the forces that a metre of equal-legged square fillet passes from
// an upright face to the base it stands on.
type ThroatForces struct {
	Along   float64 // N/m, force along the weld
	Across  float64 // N/m, force on the upright part along the base and square to the weld; positive pulls it away from the bead
	Upright float64 // N/m, force on the upright part square to the base; positive lifts it off
	Throat  float64 // m, a: throat
}

// ThroatStressesResult are the stresses on the throat plane, at 45° to both faces.
type ThroatStressesResult struct {
	Normal      float64 // Pa, σ_⊥: square to the throat, tension positive
	ShearAcross float64 // Pa, τ_⊥: in the throat, square to the weld
	ShearAlong  float64 // Pa, τ_∥: in the throat, along the weld
}

// ThroatStresses resolves the forces on a fillet weld into the stresses on its throat plane.
//
//	σ_⊥ = (F_across + F_upright)/(√2·a)
//	τ_⊥ = (F_across − F_upright)/(√2·a)
//	τ_∥ = F_along/a
//
// Valid for equal legs on square faces; the stresses are taken as even over the throat.
// Errors: *check.RangeError for a throat that is not positive or forces that are not finite.
// Source: EN 1993-1-8:2005, 4.5.3.2(2) to (5), figure 4.5 (from memory); equilibrium of half the weld.
func ThroatStresses(p ThroatForces) (ThroatStressesResult, error) {
	if err := check.All("weld.ThroatStresses",
		check.Finite("Along", p.Along),
		check.Finite("Across", p.Across),
		check.Finite("Upright", p.Upright),
		check.Positive("Throat", p.Throat),
	); err != nil {
		return ThroatStressesResult{}, err
	}
	return ThroatStressesResult{
		Normal:      (p.Across + p.Upright) / (math.Sqrt2 * p.Throat),
		ShearAcross: (p.Across - p.Upright) / (math.Sqrt2 * p.Throat),
		ShearAlong:  p.Along / p.Throat,
	}, nil
}

// DirectionalParams are the stresses on a throat and the strength they are set against.
type DirectionalParams struct {
	Stress   ThroatStressesResult // -, stresses on the throat plane
	Strength FilletStrengthParams // -, strength of the weld
}

// DirectionalResult is the check of a fillet weld by the directional method.
type DirectionalResult struct {
	Equivalent      float64 // Pa, √(σ_⊥² + 3·(τ_⊥² + τ_∥²))
	EquivalentLimit float64 // Pa, f_u/(β_w·γ_M2)
	NormalLimit     float64 // Pa, 0.9·f_u/γ_M2, the limit for σ_⊥
	Use             float64 // -, the greater of the two shares used; the weld holds up to 1
}

// DirectionalCheck sets the stresses on a fillet weld's throat against its strength by the directional method.
//
//	√(σ_⊥² + 3·(τ_⊥² + τ_∥²)) ≤ f_u/(β_w·γ_M2)
//	σ_⊥ ≤ 0.9·f_u/γ_M2
//
// The stress along the weld's own axis is not counted. Valid for steel parts with matching
// filler. A transverse fillet comes out √1.5 stronger than by the simplified method, a
// longitudinal one the same.
// Errors: *check.RangeError for stresses that are not finite or a strength outside its range.
// Source: EN 1993-1-8:2005, 4.5.3.2(6), eq. (4.1) (from memory).
func DirectionalCheck(p DirectionalParams) (DirectionalResult, error) {
	conditions := append([]check.Condition{
		check.Finite("Normal", p.Stress.Normal),
		check.Finite("ShearAcross", p.Stress.ShearAcross),
		check.Finite("ShearAlong", p.Stress.ShearAlong),
	}, p.Strength.conditions()...)
	if err := check.All("weld.DirectionalCheck", conditions...); err != nil {
		return DirectionalResult{}, err
	}
	s := p.Stress
	r := DirectionalResult{
		Equivalent:      math.Sqrt(s.Normal*s.Normal + 3*(s.ShearAcross*s.ShearAcross+s.ShearAlong*s.ShearAlong)),
		EquivalentLimit: p.Strength.Tensile / (p.Strength.Correlation * p.Strength.PartialFactor),
		NormalLimit:     0.9 * p.Strength.Tensile / p.Strength.PartialFactor,
	}
	r.Use = math.Max(r.Equivalent/r.EquivalentLimit, math.Abs(s.Normal)/r.NormalLimit)
	return r, nil
}
