package quantity

import (
	"math"
	"strings"
)

// A Slip is a reading that somebody may have meant in place of the one typed.
type Slip struct {
	Typed string  // as it would have been typed
	SI    float64 // what it then is
	Why   string  // PointOut, OtherUnit or InchForFoot
}

// Why a slip is asked after.
const (
	PointOut  = "the point one place out"
	OtherUnit = "another unit meant"

	InchForFoot = "inch and foot mixed up"
)

// farOut is how far beyond the only end of a range a reading is before a slip is
// asked after: a run-out of 0.12 mm where 0.10 mm is the most is a reading.
const farOut = 4

// nearBand is how far outside its range a reading may lie, as a share, that the
// point one place out explains: 1.8 mm beside 3 to 7 thou was 0.18 mm.
const nearBand = 0.1

// Slips looks at a reading outside its range and returns what would lie within it
// if the point is one place out, or if the number was meant in another of the
// units that stand beside the box. A low of 0 or an infinite high is no end.
func Slips(typed string, dim Dimension, low, high float64, units []string) []Slip {
	q, err := Parse(typed, dim)
	if err != nil || q.Spread != NoSpread || dim == Temperature || !suspicious(q.SI, low, high) {
		return nil
	}
	number, unit := numberAndUnit(typed)
	var slips []Slip
	add := func(text, why string) {
		meant, err := Parse(text, dim)
		near := 1e-9
		if why == PointOut {
			near = nearBand
		}
		if err == nil && meant.SI >= low*(1-near) && meant.SI <= high*(1+near) {
			slips = append(slips, Slip{text, meant.SI, why})
		}
	}
	for _, places := range []int{-1, 1} {
		if moved, ok := movePoint(number, places); ok {
			add(strings.TrimSpace(moved+" "+unit), PointOut)
		}
	}
	for _, other := range units {
		if other != unit && number != "" {
			why := OtherUnit
			if dim == Torque && strings.HasPrefix(unit, "lb") && strings.HasPrefix(other, "lb") {
				why = InchForFoot
			}
			add(number+" "+other, why)
		}
	}
	return slips
}

// suspicious says whether a reading lies outside its range, and where the range
// has one end only, far outside.
func suspicious(si, low, high float64) bool {
	switch {
	case !(si > 0):
		return false
	case si >= low && si <= high:
		return false
	case low <= 0:
		return si > farOut*high
	case math.IsInf(high, 1):
		return si < low/farOut
	}
	return true
}

// numberAndUnit parts what was typed; a number that is not plain digits with a
// point or comma is "".
func numberAndUnit(typed string) (number, unit string) {
	typed = strings.TrimSpace(typed)
	n := strings.IndexFunc(typed, func(r rune) bool { return !(r >= '0' && r <= '9' || r == '.' || r == ',') })
	if n < 0 {
		n = len(typed)
	}
	number, unit = typed[:n], strings.TrimSpace(typed[n:])
	if strings.Count(number, ".")+strings.Count(number, ",") > 1 || strings.Trim(number, ".,") == "" || strings.ContainsAny(unit, "0123456789/") {
		return "", unit
	}
	return number, unit
}

// movePoint moves the decimal point of a plain number to the right.
func movePoint(number string, places int) (string, bool) {
	if number == "" {
		return "", false
	}
	whole, part, _ := strings.Cut(strings.ReplaceAll(number, ",", "."), ".")
	at := len(whole) + places
	digits := whole + part
	for at <= 0 {
		digits, at = "0"+digits, at+1
	}
	for at > len(digits) {
		digits += "0"
	}
	whole, part = strings.TrimLeft(digits[:at], "0"), digits[at:]
	if whole == "" {
		whole = "0"
	}
	if part == "" {
		return whole, true
	}
	return whole + "." + part, true
}
