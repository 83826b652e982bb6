package traction

import (
	"fmt"
	"math"

	"axlewright/calc/check"
)

// CyclePoint is one point of a speed record.
type CyclePoint struct {
	Time  float64 // s, t: since the start
	Speed float64 // m/s, v: of the vehicle
}

// CycleResult sums up a speed record.
type CycleResult struct {
	Distance  float64 // m, s: way covered
	Duration  float64 // s, time from first to last point
	MeanSpeed float64 // m/s, distance over duration, standing included
	TopSpeed  float64 // m/s, largest speed
}

// CycleDistance returns the way covered in a speed record, the speed running straight from point to point.
//
//	s = Σ ½·(v_i + v_(i+1))·(t_(i+1) − t_i)
//
//	points  of the record, times rising
//
// Valid for two points or more.
// Errors: *check.RangeError for fewer points, times that do not rise, speeds below zero.
// Source: trapezium rule.
func CycleDistance(points []CyclePoint) (CycleResult, error) {
	const fn = "traction.CycleDistance"
	if err := check.All(fn, check.That("len(points)", float64(len(points)), len(points) >= 2, ">= 2")); err != nil {
		return CycleResult{}, err
	}
	var r CycleResult
	for i, p := range points {
		if err := check.All(fn,
			check.Finite(fmt.Sprintf("points[%d].Time", i), p.Time),
			check.That(fmt.Sprintf("points[%d].Time", i), p.Time, i == 0 || p.Time > points[i-1].Time, "above the one before"),
			check.NotNegative(fmt.Sprintf("points[%d].Speed", i), p.Speed),
		); err != nil {
			return CycleResult{}, err
		}
		r.TopSpeed = math.Max(r.TopSpeed, p.Speed)
		if i > 0 {
			r.Distance += (p.Speed + points[i-1].Speed) / 2 * (p.Time - points[i-1].Time)
		}
	}
	r.Duration = points[len(points)-1].Time - points[0].Time
	r.MeanSpeed = r.Distance / r.Duration
	return r, nil
}
