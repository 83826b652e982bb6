package fatigue

import (
	"fmt"
	"math"

	"axlewright/calc/check"
)

// Cycle is one loop of a load record, or half of one.
type Cycle struct {
	Range float64 // -, highest less lowest load, in the unit of the record
	Mean  float64 // -, middle of highest and lowest load, in the unit of the record
	Count float64 // -, 1 for a whole cycle, 0.5 for half of one
}

// RainflowResult lists the cycles of a record in the order they close, the
// half cycles of the remainder last.
type RainflowResult struct {
	Ranges []float64 // -, range of each cycle, in the unit of the record
	Means  []float64 // -, mean of each cycle, in the unit of the record
	Counts []float64 // -, 1 for a whole cycle, 0.5 for half of one
}

// Cycles returns the same cycles one by one.
func (r RainflowResult) Cycles() []Cycle {
	cycles := make([]Cycle, len(r.Ranges))
	for i := range cycles {
		cycles[i] = Cycle{r.Ranges[i], r.Means[i], r.Counts[i]}
	}
	return cycles
}

// Rainflow returns the cycles of a load record, counted by three points, half cycles for what does not close.
//
//	Y counts when X ≥ Y
//	X  range under way, Y  range before it; Y is half a cycle if it holds the first point, else a whole one
//
//	history  load of the record, sample by sample, -
//
// Valid for a record of two samples or more. Samples on the way between a peak
// and a valley, and level stretches, are passed over.
// Errors: *check.RangeError for a shorter record or a sample that is no number.
// Source: ASTM E1049-85, 5.4.4.
func Rainflow(history []float64) (RainflowResult, error) {
	if err := record("fatigue.Rainflow", "history", history); err != nil {
		return RainflowResult{}, err
	}
	var r RainflowResult
	count := func(from, to, n float64) {
		r.Ranges = append(r.Ranges, math.Abs(to-from))
		r.Means = append(r.Means, (from+to)/2)
		r.Counts = append(r.Counts, n)
	}
	var open []float64 // turning points not yet counted
	for _, point := range turningPoints(history) {
		open = append(open, point)
		for len(open) >= 3 {
			n := len(open)
			x, y := math.Abs(open[n-1]-open[n-2]), math.Abs(open[n-2]-open[n-3])
			if x < y {
				break
			}
			if n == 3 { // y holds the first point
				count(open[0], open[1], 0.5)
				open = open[1:]
				continue
			}
			count(open[n-3], open[n-2], 1)
			open = append(open[:n-3], open[n-1])
		}
	}
	for i := 1; i < len(open); i++ {
		count(open[i-1], open[i], 0.5)
	}
	return r, nil
}

// turningPoints keeps the first and last sample and every reversal.
func turningPoints(history []float64) []float64 {
	points := []float64{history[0]}
	for _, v := range history[1:] {
		n := len(points)
		switch {
		case v == points[n-1]:
		case n >= 2 && (v > points[n-1]) == (points[n-1] > points[n-2]): // still on the way
			points[n-1] = v
		default:
			points = append(points, v)
		}
	}
	return points
}

// record refuses a record that is too short or holds something that is no number.
func record(fn, name string, values []float64) error {
	if err := check.All(fn, check.That("len("+name+")", float64(len(values)), len(values) >= 2, ">= 2")); err != nil {
		return err
	}
	for i, v := range values {
		if err := check.All(fn, check.Finite(fmt.Sprintf("%s[%d]", name, i), v)); err != nil {
			return err
		}
	}
	return nil
}
