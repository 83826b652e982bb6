package bolt

import (
	"fmt"
	"math"

	"axlewright/calc/check"
)

// ShearAreaParams describes the threads of a bolt and of its hole over their engagement.
type ShearAreaParams struct {
	Form       Form    // name, form of thread
	Pitch      float64 // m, P: thread pitch
	Engagement float64 // m, m_eff: length of full thread engaged
	BoltMajor  float64 // m, d: major diameter of the bolt, least or basic
	BoltPitch  float64 // m, d_2: pitch diameter of the bolt, least or basic
	HolePitch  float64 // m, D_2: pitch diameter of the hole, greatest or basic
	HoleMinor  float64 // m, D_1: minor diameter of the hole, greatest or basic
}

// ShearAreaResult holds the areas along which the threads would strip.
type ShearAreaResult struct {
	Bolt float64 // m², A_SGS: area of the bolt's thread, at the hole's minor diameter
	Hole float64 // m², A_SGM: area of the hole's thread, at the bolt's major diameter
}

// ShearArea returns the areas along which the threads of a bolt and of its hole would strip.
//
//	A_SGM = π·d·(m_eff/P)·[P/2 + (d − D_2)·tan β]
//	A_SGS = π·D_1·(m_eff/P)·[P/2 + (d_2 − D_1)·tan β]
//
// Valid for basic sizes or for limits of size (least bolt, greatest hole), D_1 < d_2 and D_2 < d; a worn or
// oversize hole is one with a greater D_1. β is 30° or, for 55° threads, 27.5°.
// Errors: *check.RangeError outside that range, for sizes of zero or below, or an unknown form.
// Source: VDI 2230-1:2015, 5.5.5, and FED-STD-H28/2B, appendix B (the same areas; from memory); 55° by the same geometry.
func ShearArea(p ShearAreaParams) (ShearAreaResult, error) {
	size, known := formSizes[p.Form]
	if err := check.All("bolt.ShearArea",
		knownForm("Form", p.Form, known),
		check.Positive("Pitch", p.Pitch),
		check.NotNegative("Engagement", p.Engagement),
		check.Positive("HoleMinor", p.HoleMinor),
		check.That("BoltPitch", p.BoltPitch, p.BoltPitch > p.HoleMinor, "> D_1"),
		check.That("BoltMajor", p.BoltMajor, p.BoltMajor > p.BoltPitch, "> d_2"),
		check.That("HolePitch", p.HolePitch, p.HolePitch > p.HoleMinor && p.HolePitch < p.BoltMajor, "D_1 < D_2 < d"),
	); err != nil {
		return ShearAreaResult{}, err
	}
	turns, tan := p.Engagement/p.Pitch, math.Tan(size.flank)
	return ShearAreaResult{
		Hole: math.Pi * p.BoltMajor * turns * (p.Pitch/2 + (p.BoltMajor-p.HolePitch)*tan),
		Bolt: math.Pi * p.HoleMinor * turns * (p.Pitch/2 + (p.BoltPitch-p.HoleMinor)*tan),
	}, nil
}

// StrengthRatioParams compares the two threads of a joint.
type StrengthRatioParams struct {
	HoleArea    float64 // m², A_SGM: shear area of the hole's thread
	HoleTensile float64 // Pa, R_mM: tensile strength of the tapped metal
	BoltArea    float64 // m², A_SGS: shear area of the bolt's thread
	BoltTensile float64 // Pa, R_mS: tensile strength of the bolt
}

// StrengthRatio returns the strength of the hole's thread as a ratio to that of the bolt's.
//
//	R_S = A_SGM·R_mM/(A_SGS·R_mS)
//
//	R_S  strength ratio; below 1 the hole strips first, -
//
// Valid for metals of one kind of shear behaviour; iron by steel only roughly.
// Errors: *check.RangeError for values of zero or below.
// Source: VDI 2230-1:2015, 5.5.5 (from memory).
func StrengthRatio(p StrengthRatioParams) (float64, error) {
	if err := check.All("bolt.StrengthRatio",
		check.Positive("HoleArea", p.HoleArea), check.Positive("HoleTensile", p.HoleTensile),
		check.Positive("BoltArea", p.BoltArea), check.Positive("BoltTensile", p.BoltTensile),
	); err != nil {
		return 0, err
	}
	return p.HoleArea * p.HoleTensile / (p.BoltArea * p.BoltTensile), nil
}

// BendingResult holds how much thread bending takes from the shear strength of each thread.
type BendingResult struct {
	Bolt float64 // -, C_2: factor on the bolt's thread
	Hole float64 // -, C_3: factor on the hole's thread
}

// ThreadBending returns the share of its shear strength that each thread keeps when it bends.
//
//	C_3 = 0.728 + 1.769·R_S − 2.896·R_S² + 1.296·R_S³ for 0.4 < R_S < 1,  0.897 for R_S >= 1
//	C_2 = 5.594 − 13.682·R_S + 14.107·R_S² − 6.057·R_S³ + 0.9353·R_S⁴ for 1 < R_S < 2.2,  0.897 for R_S <= 1
//
//	ratio  strength ratio R_S, -
//
// Valid for 0.4 < R_S < 2.2 and 60° threads.
// Errors: *check.RangeError outside that range.
// Source: E. M. Alexander, SAE paper 770420 (1977), as in VDI 2230-1:2015, 5.5.5 (from memory).
func ThreadBending(ratio float64) (BendingResult, error) {
	if err := check.All("bolt.ThreadBending",
		check.That("ratio", ratio, ratio > 0.4 && ratio < 2.2, "0.4 < R_S < 2.2"),
	); err != nil {
		return BendingResult{}, err
	}
	r := BendingResult{Bolt: 0.897, Hole: 0.897}
	if ratio < 1 {
		r.Hole = 0.728 + ratio*(1.769+ratio*(-2.896+ratio*1.296))
	}
	if ratio > 1 {
		r.Bolt = 5.594 + ratio*(-13.682+ratio*(14.107+ratio*(-6.057+ratio*0.9353)))
	}
	return r, nil
}

// NutDilation returns the share of its shear strength that a thread keeps when a thin nut or boss widens.
//
//	C_1 = 3.8·(s/d) − (s/d)² − 2.61 for 1.4 <= s/d < 1.9,  1 from 1.9
//
//	width  outside width of nut or boss s, m
//	d      nominal diameter, m
//	C_1    factor on both threads, -
//
// Valid for s/d >= 1.4: at least 0.2·d of metal round the thread.
// Errors: *check.RangeError outside that range.
// Source: E. M. Alexander, SAE paper 770420 (1977), as in VDI 2230-1:2015, 5.5.5 (from memory).
func NutDilation(width, d float64) (float64, error) {
	ratio := width / d
	if err := check.All("bolt.NutDilation",
		check.Positive("d", d),
		check.That("width", width, ratio >= 1.4, ">= 1.4·d"),
	); err != nil {
		return 0, err
	}
	if ratio >= 1.9 {
		return 1, nil
	}
	return 3.8*ratio - ratio*ratio - 2.61, nil
}

// StrippingForce returns the force that strips a thread.
//
//	F = C·τ_B·A_SG
//
//	area      shear area of that thread A_SG, m²
//	shear     shear strength of its metal τ_B, Pa
//	keep      share kept after thread bending and widening C = C_1·C_2 or C_1·C_3, -
//	F         stripping force, N
//
// Valid for full, clean threads; 1 for keep leaves both effects out.
// Errors: *check.RangeError for a negative area, a strength of zero or below, or keep outside 0 < C <= 1.
// Source: VDI 2230-1:2015, 5.5.5 (from memory).
func StrippingForce(area, shear, keep float64) (float64, error) {
	if err := check.All("bolt.StrippingForce",
		check.NotNegative("area", area), check.Positive("shear", shear),
		check.That("keep", keep, keep > 0 && keep <= 1, "0 < C <= 1"),
	); err != nil {
		return 0, err
	}
	return keep * shear * area, nil
}

// TappedMetal is the metal of a tapped hole.
type TappedMetal string

// The metals of a drive-axle casting and its bosses.
const (
	TappedGreyIron TappedMetal = "grey iron"
	TappedDuctile  TappedMetal = "ductile iron"
	TappedSteel    TappedMetal = "steel"
)

// ShearRatioResult holds shear strength as a share of tensile strength.
type ShearRatioResult struct {
	Cautious  float64 // -, τ_B/R_m: ratio behind the trade's engagement figures
	Guideline float64 // -, τ_B/R_m: ratio of new castings in the guideline
}

var shearRatios = map[TappedMetal]ShearRatioResult{
	TappedGreyIron: {0.9, 1.4}, TappedDuctile: {0.6, 0.9}, TappedSteel: {0.6, 0.6},
}

// ShearRatio returns the shear strength of a tapped metal as a share of its tensile strength.
//
//	τ_B/R_m = table(metal)
//
//	metal  metal of the tapped hole, name
//
// Valid for sound metal; use the cautious ratio for old castings.
// Errors: *check.RangeError for an unknown metal.
// Source: guideline figures VDI 2230-1:2003, tables 6 and A9 (from memory, medium confidence); cautious figures are common practice, no source.
func ShearRatio(metal TappedMetal) (ShearRatioResult, error) {
	r, known := shearRatios[metal]
	return r, check.All("bolt.ShearRatio",
		check.That("metal", 0, known, fmt.Sprintf("%q, %q or %q, not %q", TappedGreyIron, TappedDuctile, TappedSteel, metal)))
}
