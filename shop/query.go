package shop

import (
	"math"
	"strings"

	"axlewright/quantity"
)

// A Meant is a figure that somebody may have meant in place of the one typed.
// Why goes into the record if it is taken.
type Meant quantity.Slip

// Query returns what may have been meant by a reading outside its range: inch and
// foot mixed up, the point one place out, another unit. A reading is never
// refused for it; one that was confirmed is not queried again.
func Query(e *Entry, units []string) []Meant {
	l := e.Limit
	if l == nil || e.Value.SI == nil || e.Value.Confirmed {
		return nil
	}
	low, high := 0.0, math.Inf(1)
	if l.Low != nil {
		low = *l.Low
	}
	if l.High != nil {
		high = *l.High
	}
	var other, point []Meant
	for _, s := range quantity.Slips(e.Value.Typed, e.Value.Dim, low, high, units) {
		if s.Why == quantity.PointOut {
			point = append(point, Meant(s))
			continue
		}
		other = append(other, Meant(s))
	}
	if e.Value.Dim == quantity.Torque && l.Low != nil && l.High != nil && len(other) == 0 {
		if meant, suspected := quantity.MeantTorque(*e.Value.SI, low, high); suspected {
			text, _, _ := strings.Cut(quantity.FormatDigits(meant, quantity.Torque, 3), " (")
			other = []Meant{{text, meant, quantity.InchForFoot}}
		}
	}
	return append(other, point...)
}
