package ring

import (
	"math"

	"axlewright/calc/check"
)

// RootGive returns how far the end of a leg moves because the casting gives at
// the leg's root; TaperedLeg takes the root as rigid.
//
//	δ_R = F/(E·b)·[16.67/π·(L/h_r)² + 2·(1 − ν)·(L/h_r) + 1.534]
//
//	p    leg; its tip depth is not used
//	δ_R  movement of the force by the give of the root, m
//
// The root stands on a half-plane of its own width: turning by the moment there,
// shift by the force, and both by each other. A casting that is wider than the
// leg gives somewhat less, one with a hollow behind the leg more.
// Valid for legs no shorter than half their depth at the root.
// Errors: *check.RangeError outside that range or where a dimension is not positive.
// Source: O'Donnell, Stresses and deflections in built-in beams, J. Eng. Ind. 85
// (1963), 265-273, in the form used for gear teeth (from memory).
func RootGive(p LegParams) (float64, error) {
	if err := check.All("ring.RootGive",
		check.Positive("Length", p.Length), check.Positive("RootDepth", p.RootDepth), check.Positive("Width", p.Width),
		check.Positive("Modulus", p.Modulus), check.Positive("Force", p.Force),
		check.That("Poisson", p.Poisson, p.Poisson >= 0 && p.Poisson < 0.5, "0 <= ν < 0.5"),
		check.That("Length", p.Length, p.Length >= p.RootDepth/2, "at least half the depth at the root"),
	); err != nil {
		return 0, err
	}
	slender := p.Length / p.RootDepth
	return p.Force / (p.Modulus * p.Width) * (16.67/math.Pi*slender*slender + 2*(1-p.Poisson)*slender + 1.534), nil
}
