package bolt

import (
	"fmt"
	"math"

	"axlewright/calc/check"
)

// StressArea returns the tensile stress area of an ISO metric thread.
//
//	A_s = π/4·((d2 + d3)/2)²
//	d2 = d − 0.649519·P,  d3 = d − 1.226869·P
//
//	d      nominal diameter, m
//	pitch  thread pitch P, m
//	A_s    tensile stress area, m²
//
// Valid for ISO metric threads with 0 < pitch < d/2; Unified threads have a
// deeper root and their own formula, UnifiedStressArea.
// Errors: *check.RangeError outside that range.
// Source: ISO 898-1:2013, 9.1.6 (from memory).
func StressArea(d, pitch float64) (float64, error) {
	if err := checkThread("bolt.StressArea", d, pitch); err != nil {
		return 0, err
	}
	d2 := d - 0.649519*pitch
	d3 := d - 1.226869*pitch
	return math.Pi / 4 * math.Pow((d2+d3)/2, 2), nil
}

// UnifiedStressArea returns the tensile stress area of a UNC or UNF thread.
//
//	A_t = π/4·(d − 0.9743·P)²
//
//	d      nominal diameter, m
//	pitch  thread pitch P = 1/n, m
//	A_t    tensile stress area, m²
//
// Valid for Unified threads with 0 < pitch < d/2 in steel up to about 1240 MPa.
// Errors: *check.RangeError outside that range.
// Source: ASME B1.1-2003, appendix B (from memory).
func UnifiedStressArea(d, pitch float64) (float64, error) {
	if err := checkThread("bolt.UnifiedStressArea", d, pitch); err != nil {
		return 0, err
	}
	return math.Pi / 4 * math.Pow(d-0.9743*pitch, 2), nil
}

// WhitworthAreaRule says which diameter the area of a 55° thread is taken at.
type WhitworthAreaRule string

// The two rules. They differ by about a tenth: a result must say which it used.
const (
	CoreRule WhitworthAreaRule = "core"                   // area at the core diameter: old British tensile practice
	MeanRule WhitworthAreaRule = "mean of pitch and core" // by analogy with ISO 898-1; no British standard prints it
)

// WhitworthArea returns the area in tension of a BSW or BSF thread by the rule given.
//
//	A = π/4·d3²  (core)  or  π/4·((d2 + d3)/2)²  (mean of pitch and core)
//	d2 = d − 0.640327·P,  d3 = d − 1.280654·P
//
//	rule   diameter at which the area is taken, name
//	d      nominal diameter, m
//	pitch  thread pitch P, m
//	A      area in tension, m²
//
// Valid for 55° threads with 0 < pitch < d/2.
// Errors: *check.RangeError outside that range or for an unknown rule.
// Source: BS 84:1956 for the form (constants as in Machinery's Handbook, BSF table); the mean rule is an analogy with ISO 898-1.
func WhitworthArea(rule WhitworthAreaRule, d, pitch float64) (float64, error) {
	if err := checkThread("bolt.WhitworthArea", d, pitch); err != nil {
		return 0, err
	}
	d2 := d - 0.640327*pitch
	d3 := d - 1.280654*pitch
	switch rule {
	case CoreRule:
		return math.Pi / 4 * d3 * d3, nil
	case MeanRule:
		return math.Pi / 4 * math.Pow((d2+d3)/2, 2), nil
	}
	return 0, check.All("bolt.WhitworthArea",
		check.That("rule", 0, false, fmt.Sprintf("%q or %q, not %q", CoreRule, MeanRule, rule)))
}

// checkThread refuses a thread that leaves no core.
func checkThread(fn string, d, pitch float64) error {
	return check.All(fn,
		check.Positive("d", d),
		check.That("pitch", pitch, pitch > 0 && pitch < d/2, "0 < pitch < d/2"),
	)
}
