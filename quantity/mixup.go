package quantity

import "math"

// A torque read in inches where feet were meant, or the other way about, is
// wrong by 12. Readings of one thing differ by their own scatter on top, which
// is taken here as a third either way (common practice, no source).
const (
	inchesInFoot = 12
	scatter      = 4.0 / 3
)

// TwelveFold says whether two torques differ by about 12 times, so that lbf·in
// and lbf·ft may have been mixed up and the reading should be queried.
func TwelveFold(a, b float64) bool {
	if a == 0 || b == 0 || math.IsInf(a, 0) || math.IsInf(b, 0) {
		return false
	}
	ratio := a / b
	if ratio > 0 && ratio < 1 {
		ratio = 1 / ratio
	}
	return ratio >= inchesInFoot/scatter && ratio <= inchesInFoot*scatter
}

// MeantTorque looks at a torque outside its allowed range. Where a mix-up of
// inch and foot would explain it, suspected is true and meant is the torque that
// the other reading of the wrench gives.
func MeantTorque(reading, low, high float64) (meant float64, suspected bool) {
	if !(reading < low || reading > high) {
		return reading, false
	}
	for _, other := range []float64{reading / inchesInFoot, reading * inchesInFoot} {
		if other >= low && other <= high {
			return other, true
		}
	}
	return reading, false
}
