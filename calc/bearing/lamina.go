package bearing

import (
	"math"

	"axlewright/calc/check"
)

// laminaExponent is the exponent of load over approach for line contact.
const laminaExponent = 10.0 / 9

// RollerApproach returns how far a steel roller and one raceway approach under load.
//
//	δ = 3.84e−5·Q^0.9/L^0.8
//	Q in N, L and δ in mm
//
//	load    on the roller Q, N
//	length  of contact L, m
//	δ       approach of roller and one raceway, m
//
// Valid for steel rollers with crowned ends on steel raceways, load >= 0. The
// other raceway gives as much again.
// Errors: *check.RangeError outside that range.
// Source: Palmgren, Grundlagen der Wälzlagertechnik, 3rd edition (1964), as
// quoted by Harris, Rolling Bearing Analysis (from memory).
func RollerApproach(load, length float64) (float64, error) {
	if err := check.All("bearing.RollerApproach",
		check.NotNegative("load", load),
		check.Positive("length", length),
	); err != nil {
		return 0, err
	}
	return 3.84e-5 * math.Pow(load, 0.9) / math.Pow(length*1e3, 0.8) * 1e-3, nil
}

// RollerLoad returns the load that presses a steel roller by a given approach
// of its two raceways.
//
//	Q = c_L·δ^(10/9)
//	c_L = 35948·L_we^(8/9)
//	Q in N, L_we and δ in mm
//
//	approach  of the raceways beyond touch δ, m
//	length    effective roller length L_we, m
//	Q         roller load, N
//
// Valid for steel, both contacts together, even approach along the roller.
// Errors: *check.RangeError outside approach >= 0, length > 0.
// Source: ISO/TS 16281:2008, clause on the load-deflection of roller bearings (from memory).
func RollerLoad(approach, length float64) (float64, error) {
	if err := check.All("bearing.RollerLoad",
		check.NotNegative("approach", approach),
		check.Positive("length", length),
	); err != nil {
		return 0, err
	}
	return rollerConstant(length) * math.Pow(approach, laminaExponent), nil
}

// rollerConstant is c_L in N/m^(10/9): with both lengths in metres instead of
// millimetres the constant grows by 1000^(8/9 + 10/9), a million.
func rollerConstant(length float64) float64 {
	return 35948e6 * math.Pow(length, 8.0/9)
}
