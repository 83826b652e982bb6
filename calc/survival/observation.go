package survival

import (
	"fmt"

	"axlewright/calc/check"
)

// Observation is how long one part was watched, and whether it failed then or
// was still sound.
type Observation struct {
	Time   float64 // -, t: hours, kilometres or turns, in one unit throughout
	Failed bool    // -, yes: failed at that time; no: still sound when last seen
}

// lives refuses a list of observations from which no life can be told, and
// counts the failures.
func lives(fn string, observations []Observation) (failures int, err error) {
	for i, o := range observations {
		if err := check.All(fn, check.Positive(fmt.Sprintf("observations[%d].Time", i), o.Time)); err != nil {
			return 0, err
		}
		if o.Failed {
			failures++
		}
	}
	return failures, check.All(fn, check.That("failures", float64(failures), failures > 0, ">= 1: without a failure the life is unknown"))
}
