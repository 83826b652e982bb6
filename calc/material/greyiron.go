package material

import "axlewright/calc/check"

// GreyIronParams is a Brinell reading on grey iron.
type GreyIronParams struct {
	Hardness float64 // HBW, HB: Brinell hardness
	Relative float64 // -, RH: relative hardness, 0.8 to 1.2 by charge and melt, 1.0 when nothing is known
}

// GreyIronTensile returns the tensile strength that goes with the hardness of grey iron, if its relative hardness is known.
//
//	R_m = (HB/RH − 100)/0.44      196 MPa and more
//	R_m = (HB/RH − 44)/0.724      below
//
//	R_m  tensile strength of the cast bar, Pa
//
// In the formula's letters R_m is in MPa. Valid for grey iron of 100 to 400 MPa. RH is seldom
// known, and 0.8 to 1.2 turns one hardness into strengths two to one: work out both ends.
// Errors: *check.RangeError outside that range.
// Source: EN 1561:1997, informative annex on hardness and strength (from memory).
func GreyIronTensile(p GreyIronParams) (float64, error) {
	const fn = "material.GreyIronTensile"
	if err := check.All(fn,
		check.Positive("Hardness", p.Hardness),
		check.Within("Relative", p.Relative, 0.8, 1.2),
	); err != nil {
		return 0, err
	}
	hb := p.Hardness / p.Relative
	rm := (hb - 100) / 0.44
	if rm < 196 {
		rm = (hb - 44) / 0.724
	}
	if err := check.All(fn, check.That("Hardness", p.Hardness, rm >= 100 && rm <= 400, "strength of 100 to 400 MPa")); err != nil {
		return 0, err
	}
	return rm * 1e6, nil
}
