package contact

import "axlewright/calc/check"

// ModulusParams are the elastic constants of two bodies that touch.
type ModulusParams struct {
	Modulus1 float64 // Pa, E1: Young's modulus of the first body
	Modulus2 float64 // Pa, E2: Young's modulus of the second body
	Poisson1 float64 // -, ν1: Poisson's ratio of the first body
	Poisson2 float64 // -, ν2: Poisson's ratio of the second body
}

// ContactModulus returns the modulus with which two elastic bodies meet.
//
//	E* = 1/((1 − ν1²)/E1 + (1 − ν2²)/E2)
//
//	E*  contact modulus, Pa
//
// Valid for isotropic bodies, E > 0 and 0 ≤ ν ≤ 0.5.
// Errors: *check.RangeError outside that range.
// Source: Johnson, Contact Mechanics (1985), 4.2 (from memory).
func ContactModulus(p ModulusParams) (float64, error) {
	if err := check.All("contact.ContactModulus",
		check.Positive("Modulus1", p.Modulus1),
		check.Positive("Modulus2", p.Modulus2),
		check.Within("Poisson1", p.Poisson1, 0, 0.5),
		check.Within("Poisson2", p.Poisson2, 0, 0.5),
	); err != nil {
		return 0, err
	}
	return 1 / ((1-p.Poisson1*p.Poisson1)/p.Modulus1 + (1-p.Poisson2*p.Poisson2)/p.Modulus2), nil
}
