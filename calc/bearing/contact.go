package bearing

import (
	"math"

	"axlewright/calc/check"
)

// ApproachUnderLoad returns how far cup and cone close on one steel roller, both
// contacts together: the inverse of RollerLoad.
//
//	δ = [Q/(35 948·L_we^(8/9))]^(9/10)
//
//	load    roller load Q, N
//	length  effective roller length L_we, m
//	δ       approach of cup and cone at the roller, m
//
// Q, L and δ stand in N and mm.
// Valid for steel rollers.
// Errors: *check.RangeError for a negative load or a length not above zero.
// Source: ISO/TS 16281:2008, roller bearings, solved for δ (from memory).
func ApproachUnderLoad(load, length float64) (float64, error) {
	if err := check.All("bearing.ApproachUnderLoad",
		check.NotNegative("load", load),
		check.Positive("length", length),
	); err != nil {
		return 0, err
	}
	return math.Pow(load/rollerConstant(length), 1/laminaExponent), nil
}

// Raceway is one of the two raceways of a bearing.
type Raceway string

const (
	Cone Raceway = "cone" // inner ring
	Cup  Raceway = "cup"  // outer ring
)

// PressureParams holds the inputs of [ContactPressure].
type PressureParams struct {
	Rollers Rollers // roller set of the row
	Load    float64 // N, Q: load of one roller, evenly along it
	Raceway Raceway // name, cone or cup
}

// ContactPressure returns the highest pressure between one roller and its
// raceway, the load evenly along the roller.
//
//	p_max = √{Q·E'·ρ/(π·L_we)}
//	ρ = (2/D_we)/(1 − γ) cone, (2/D_we)/(1 + γ) cup
//	E' = E/[2·(1 − ν²)],  E = 206 GPa,  ν = 0.3
//
//	p_max  pressure in the middle of the contact, Pa
//
// The cone is pressed harder, being curved the other way.
// Valid for steel on steel and straight contact; the ends of a roller that
// tilts are pressed harder.
// Errors: *check.RangeError for a negative load, rollers that cannot exist or an
// unknown raceway.
// Source: Hertz line contact (Johnson, Contact Mechanics, 1985, ch. 4; from
// memory); curvature sums of ISO/TR 1281-1 (from memory).
func ContactPressure(p PressureParams) (float64, error) {
	const fn = "bearing.ContactPressure"
	r := p.Rollers
	if err := r.check(fn); err != nil {
		return 0, err
	}
	if err := check.All(fn, check.NotNegative("Load", p.Load)); err != nil {
		return 0, err
	}
	side := 1.
	switch p.Raceway {
	case Cone:
		side = -1
	case Cup:
	default:
		return 0, unknown(fn, "Raceway")
	}
	const E, nu = 206e9, 0.3
	rho := 2 / r.Diameter / (1 + side*r.gamma())
	return math.Sqrt(p.Load * E / (2 * (1 - nu*nu)) * rho / (math.Pi * r.Length)), nil
}
