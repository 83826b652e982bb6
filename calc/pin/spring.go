package pin

import (
	"fmt"
	"math"

	"axlewright/calc/check"
)

// Series is a series of slotted spring pins.
type Series string

// The two series of the standards.
const (
	Heavy Series = "heavy" // ISO 8752
	Light Series = "light" // ISO 13337
)

// SpringPinResult holds what a standard promises of a slotted spring pin.
type SpringPinResult struct {
	Wall        float64 // m, s: thickness of the wall
	DoubleShear float64 // N, least force in double shear, slot in line with the force
	SingleShear float64 // N, half of the double shear
}

type springPin struct {
	wall  float64 // mm
	shear float64 // kN, double
}

// By nominal diameter in mm.
var springPins = map[Series]map[float64]springPin{
	Heavy: {
		1: {0.2, 0.7}, 1.5: {0.3, 1.58}, 2: {0.4, 2.82}, 2.5: {0.5, 4.38}, 3: {0.6, 6.32}, 3.5: {0.75, 9.06},
		4: {0.8, 11.24}, 4.5: {1, 15.36}, 5: {1, 17.54}, 6: {1.2, 26.04}, 8: {1.5, 42.76}, 10: {2, 70.16},
		12: {2.5, 104.1}, 14: {3, 144.7}, 16: {3, 171}, 18: {3.5, 222.5}, 20: {4, 280.6},
	},
	Light: {
		2: {0.2, 1.5}, 2.5: {0.25, 2.4}, 3: {0.3, 3.5}, 3.5: {0.35, 4.6}, 4: {0.5, 8}, 4.5: {0.5, 8.8},
		5: {0.5, 10.4}, 6: {0.75, 18}, 8: {0.75, 24}, 10: {1, 40}, 12: {1, 48}, 13: {1.25, 66},
	},
}

// SpringPin returns the wall and the least shear strength of a slotted spring pin.
//
//	F = table(series, d)
//
//	series  heavy or light, name
//	d       nominal diameter, which is that of the hole, m
//
// Valid for new pins of hardened spring steel in hard holes; stainless pins carry about 0.6 of it,
// and a pin driven twice loses 10 to 15 % (common practice, not tabled).
// Errors: *check.RangeError for an unknown series or a diameter that the table does not hold.
// Source: ISO 8752:2009, table 1, and ISO 13337:2009, table 1 (light 4.5 and 13 mm as in DIN 7346).
func SpringPin(series Series, d float64) (SpringPinResult, error) {
	const fn = "pin.SpringPin"
	table, known := springPins[series]
	if err := check.All(fn,
		check.That("series", 0, known, fmt.Sprintf("%q or %q, not %q", Heavy, Light, series)),
		check.Positive("d", d),
	); err != nil {
		return SpringPinResult{}, err
	}
	row, known := table[keyMM(d)]
	if err := check.All(fn, check.That("d", d, known, "a standard diameter of the series")); err != nil {
		return SpringPinResult{}, err
	}
	return SpringPinResult{Wall: row.wall * 1e-3, DoubleShear: row.shear * 1e3, SingleShear: row.shear * 1e3 / 2}, nil
}

// Inner pins that fit into an outer one, by nominal diameter in mm.
var nests = map[float64]float64{3.5: 2, 5: 3, 6: 3.5, 8: 5, 10: 6}

// NestedPins returns the least double shear of two heavy spring pins, one driven into the other.
//
//	F = F_outer + F_inner
//
//	outer  nominal diameter of the outer pin, m
//	inner  nominal diameter of the inner pin, m
//	F      least force in double shear, N
//
// Valid for the pairs 3.5+2, 5+3, 6+3.5, 8+5 and 10+6 mm of ISO 8752, slots 90° to 180° apart, outer pin driven first.
// Errors: *check.RangeError for any other pair.
// Source: sum of ISO 8752:2009, table 1; pairs as in the guides of spring-pin suppliers.
func NestedPins(outer, inner float64) (float64, error) {
	const fn = "pin.NestedPins"
	a, err := SpringPin(Heavy, outer)
	if err != nil {
		return 0, check.All(fn, check.That("outer", outer, false, "a standard diameter of ISO 8752"))
	}
	b, err := SpringPin(Heavy, inner)
	if err != nil {
		return 0, check.All(fn, check.That("inner", inner, false, "a standard diameter of ISO 8752"))
	}
	fits, known := nests[keyMM(outer)]
	if err := check.All(fn,
		check.That("outer", outer, known, "3.5, 5, 6, 8 or 10 mm"),
		check.That("inner", inner, known && fits == keyMM(inner), "the pin that fits into the outer one: 3.5+2, 5+3, 6+3.5, 8+5, 10+6 mm"),
	); err != nil {
		return 0, err
	}
	return a.DoubleShear + b.DoubleShear, nil
}

// TubeShearStress returns the shear stress in a tubular pin from its net section.
//
//	τ = F/(n·π·s·(d − s))
//
//	force   force across the pin F, N
//	planes  shear planes n, -
//	d       outside diameter, m
//	wall    thickness of the wall s, m
//	τ       mean shear stress, Pa
//
// Valid for a closed tube, 0 < s <= d/2; the slot of a spring pin is left out.
// Errors: *check.RangeError outside that range, for a negative force or no plane.
// Source: force by area of the ring.
func TubeShearStress(force float64, planes int, d, wall float64) (float64, error) {
	if err := check.All("pin.TubeShearStress",
		check.NotNegative("force", force),
		check.That("planes", float64(planes), planes >= 1, ">= 1"),
		check.Positive("d", d),
		check.That("wall", wall, wall > 0 && wall <= d/2, "0 < s <= d/2"),
	); err != nil {
		return 0, err
	}
	return force / (float64(planes) * math.Pi * wall * (d - wall)), nil
}

// keyMM is a length in mm to the nearest µm, to find table keys.
func keyMM(length float64) float64 { return math.Round(length*1e6) / 1e3 }
