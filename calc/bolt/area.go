package bolt

import (
	"math"

	"axlewright/calc/check"
)

// StressArea returns the tensile stress area of an ISO metric or Unified thread.
//
//	A_s = π/4·((d2 + d3)/2)²
//	d2 = d − 0.649519·P,  d3 = d − 1.226869·P
//
//	d      nominal diameter, m
//	pitch  thread pitch P, m
//	A_s    tensile stress area, m²
//
// Valid for 60° threads with 0 < pitch < d/2.
// Errors: *check.RangeError outside that range.
// Source: ISO 898-1:2013, 9.1.6 (from memory).
func StressArea(d, pitch float64) (float64, error) {
	if err := check.All("bolt.StressArea",
		check.Positive("d", d),
		check.That("pitch", pitch, pitch > 0 && pitch < d/2, "0 < pitch < d/2"),
	); err != nil {
		return 0, err
	}
	d2 := d - 0.649519*pitch
	d3 := d - 1.226869*pitch
	return math.Pi / 4 * math.Pow((d2+d3)/2, 2), nil
}
