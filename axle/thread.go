package axle

import (
	"fmt"
	"regexp"
	"strconv"

	"axlewright/calc/bolt"
)

var metricThread = regexp.MustCompile(`^M(\d{1,2}(?:\.\d)?)x(\d(?:\.\d{1,2})?)$`)

// ThreadSize returns the size of a thread by its designation: a standard one,
// or any metric one that names its pitch, such as "M11x1.25".
func ThreadSize(designation string) (bolt.ThreadSizeResult, error) {
	size, err := bolt.StandardThread(bolt.Designation(designation))
	if err == nil {
		return size, nil
	}
	m := metricThread.FindStringSubmatch(designation)
	if m == nil {
		return size, fmt.Errorf("%q is no thread known here; expected such as M12x1.75, 7/16-20 UNF or 3/8 BSF", designation)
	}
	d, _ := strconv.ParseFloat(m[1], 64) // the pattern lets only numbers through
	pitch, _ := strconv.ParseFloat(m[2], 64)
	if d < 5 || d > 24 || pitch < 0.5 || pitch > d/4 {
		return size, fmt.Errorf("%q is no thread of an axle; expected M5 to M24 with a pitch from 0.5 mm to a quarter of the diameter", designation)
	}
	return bolt.ThreadSizeResult{Form: bolt.Metric, Diameter: d * 1e-3, Pitch: pitch * 1e-3, Drill: (d - pitch) * 1e-3}, nil
}

// BoltStrength returns the least strength of a bolt by what is marked on it.
func BoltStrength(grade string, size bolt.ThreadSizeResult) (bolt.StrengthResult, error) {
	if size.Form == bolt.Metric {
		return bolt.ClassStrength(bolt.Class(grade), size.Diameter)
	}
	return bolt.UnifiedStrength(bolt.UnifiedGrade(grade), size.Diameter)
}
