package bearing

import (
	"math"

	"axlewright/calc/check"
)

// FactorsResult holds the load factors of a tapered roller bearing.
type FactorsResult struct {
	E  float64 // -, e: ratio of axial to radial load at which the axial load begins to count
	X  float64 // -, X: radial factor above e
	Y  float64 // -, Y: axial factor above e
	X0 float64 // -, X_0: radial factor of the static load
	Y0 float64 // -, Y_0: axial factor of the static load
	K  float64 // -, K: ratio of radial to thrust rating, as inch-size catalogues give it
}

// LoadFactors returns the load factors of a single-row tapered roller bearing
// from its cup angle.
//
//	e = 1.5·tan α
//	X = 0.4,  Y = 0.4·cot α,  X_0 = 0.5,  Y_0 = 0.22·cot α,  K = 0.389·cot α
//
//	cupAngle  half angle of the cup raceway α, rad
//
// Valid for 0 < α <= 45°.
// Errors: *check.RangeError outside that range.
// Source: ISO 281:2007 and ISO 76:2006, tables of factors (from memory); K from
// Shigley, Mechanical Engineering Design, 9th ed., 11-9 (from memory).
func LoadFactors(cupAngle float64) (FactorsResult, error) {
	if err := check.All("bearing.LoadFactors", cupAngleCondition("cupAngle", cupAngle)); err != nil {
		return FactorsResult{}, err
	}
	tan := math.Tan(cupAngle)
	return FactorsResult{E: 1.5 * tan, X: 0.4, Y: 0.4 / tan, X0: 0.5, Y0: 0.22 / tan, K: 0.389 / tan}, nil
}

// DynamicLoadParams holds the inputs of [EquivalentDynamicLoad].
type DynamicLoadParams struct {
	Radial float64 // N, F_r: radial load
	Axial  float64 // N, F_a: axial load, its own induced thrust and what the pair hands on included
	E      float64 // -, e: limit of the load ratio
	Y      float64 // -, Y: axial factor above e
}

// EquivalentDynamicLoad returns the radial load that costs a tapered roller
// bearing as much life as a radial and an axial load together.
//
//	P = F_r                  where F_a/F_r <= e
//	P = 0.4·F_r + Y·F_a      where F_a/F_r > e
//
//	P  dynamic equivalent radial load, N
//
// Valid for one row. Loads are magnitudes.
// Errors: *check.RangeError for a negative load, or e or Y not above zero.
// Source: ISO 281:2007, table of factors for radial roller bearings (from memory).
func EquivalentDynamicLoad(p DynamicLoadParams) (float64, error) {
	if err := check.All("bearing.EquivalentDynamicLoad",
		check.NotNegative("Radial", p.Radial),
		check.NotNegative("Axial", p.Axial),
		check.Positive("E", p.E),
		check.Positive("Y", p.Y),
	); err != nil {
		return 0, err
	}
	return equivalentDynamic(p.Radial, p.Axial, p.E, p.Y), nil
}

// StaticLoadParams holds the inputs of [EquivalentStaticLoad].
type StaticLoadParams struct {
	Radial float64 // N, F_r: radial load
	Axial  float64 // N, F_a: axial load
	Y0     float64 // -, Y_0: axial factor of the static load
}

// EquivalentStaticLoad returns the radial load that dents a tapered roller
// bearing as deep as a radial and an axial load together.
//
//	P_0 = 0.5·F_r + Y_0·F_a, never less than F_r
//
//	P_0  static equivalent radial load, N
//
// Valid for one row. Loads are magnitudes.
// Errors: *check.RangeError for a negative load or Y_0 not above zero.
// Source: ISO 76:2006, radial roller bearings (from memory).
func EquivalentStaticLoad(p StaticLoadParams) (float64, error) {
	if err := check.All("bearing.EquivalentStaticLoad",
		check.NotNegative("Radial", p.Radial),
		check.NotNegative("Axial", p.Axial),
		check.Positive("Y0", p.Y0),
	); err != nil {
		return 0, err
	}
	return equivalentStatic(p.Radial, p.Axial, p.Y0), nil
}

// StaticSafetyParams holds the inputs of [StaticSafety].
type StaticSafetyParams struct {
	Rating float64 // N, C_0: basic static load rating
	Load   float64 // N, P_0: static equivalent load
}

// StaticSafety returns how many times the static load rating covers the load.
//
//	S_0 = C_0/P_0
//
//	S_0  static safety factor, -
//
// Common practice asks for 1.5 in quiet running and 3 under shock; below 1 the
// raceway is dented and runs rough afterwards, which is how a head bearing
// tells of a single hard knock.
// Valid for loads above zero.
// Errors: *check.RangeError for a rating or load not above zero.
// Source: ISO 76:2006, static safety factor (from memory).
func StaticSafety(p StaticSafetyParams) (float64, error) {
	if err := check.All("bearing.StaticSafety",
		check.Positive("Rating", p.Rating),
		check.Positive("Load", p.Load),
	); err != nil {
		return 0, err
	}
	return p.Rating / p.Load, nil
}

func equivalentDynamic(radial, axial, e, y float64) float64 {
	if axial <= e*radial {
		return radial
	}
	return 0.4*radial + y*axial
}

func equivalentStatic(radial, axial, y0 float64) float64 {
	return max(radial, 0.5*radial+y0*axial)
}
