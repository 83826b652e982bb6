package material

import (
	"math"

	"axlewright/calc/check"
)

// PlateParams compares a plate with one of another steel.
type PlateParams struct {
	Thickness    float64 // m, t: thickness of the plate
	Yield        float64 // Pa, R_e: its yield strength
	Modulus      float64 // Pa, E: its Young's modulus
	OtherYield   float64 // Pa, yield strength of the other steel
	OtherModulus float64 // Pa, Young's modulus of the other steel
}

// EqualPlateResult is how thick the other steel must be.
type EqualPlateResult struct {
	Tension float64 // m, for the same pull at yield
	Bending float64 // m, for the same bending moment at yield
	Stretch float64 // m, for the same stiffness in its plane
	Bend    float64 // m, for the same stiffness in bending
}

// EqualPlate returns the thickness at which a plate of another steel does the same.
//
//	t_tension = t·R_e/R_e'
//	t_bending = t·√(R_e/R_e')
//	t_stretch = t·E/E'
//	t_bend = t·(E/E')^(1/3)
//
// Valid for plates of the same length and width, at first yield, away from welds. Between steels
// the last two are t: strength buys no stiffness.
// Errors: *check.RangeError for figures that are not positive.
// Source: strength of materials; shown so that no plate is sold on its strength alone.
func EqualPlate(p PlateParams) (EqualPlateResult, error) {
	if err := check.All("material.EqualPlate",
		check.Positive("Thickness", p.Thickness),
		check.Positive("Yield", p.Yield),
		check.Positive("Modulus", p.Modulus),
		check.Positive("OtherYield", p.OtherYield),
		check.Positive("OtherModulus", p.OtherModulus),
	); err != nil {
		return EqualPlateResult{}, err
	}
	strength, stiffness := p.Yield/p.OtherYield, p.Modulus/p.OtherModulus
	return EqualPlateResult{
		Tension: p.Thickness * strength,
		Bending: p.Thickness * math.Sqrt(strength),
		Stretch: p.Thickness * stiffness,
		Bend:    p.Thickness * math.Cbrt(stiffness),
	}, nil
}
