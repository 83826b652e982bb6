package traction

import (
	"math"

	"axlewright/calc/check"
)

// Centre names how a differential shares torque between its two sides.
type Centre string

// The kinds of differential.
const (
	Open        Centre = "open"         // both sides alike
	LimitedSlip Centre = "limited-slip" // one side up to the bias ratio times the other
	Locked      Centre = "locked"       // each side what its grip takes
)

func (c Centre) condition(bias float64) []check.Condition {
	known := c == Open || c == LimitedSlip || c == Locked
	return []check.Condition{
		{Param: "Centre", Value: math.NaN(), Holds: known, Range: "open, limited-slip or locked"},
		check.That("BiasRatio", bias, c != LimitedSlip || bias >= 1, ">= 1 for limited slip"),
	}
}

// DifferentialParams are an axle whose wheels stand on different ground.
type DifferentialParams struct {
	Centre       Centre  // name, kind of differential: open, limited-slip or locked
	PoorLoad     float64 // N, W1: force on the ground of the wheel with less grip; 0 for one that hangs
	PoorFriction float64 // -, µ1: of that wheel's ground
	GoodLoad     float64 // N, W2: force on the ground of the other wheel
	GoodFriction float64 // -, µ2: of that wheel's ground
	LoadedRadius float64 // m, r: distance of the hub above the ground
	BiasRatio    float64 // -, B: torque of one side over the other that a limited slip allows; optional
	Preload      float64 // N·m, T_0: torque a limited slip passes across even with one wheel hanging; optional
}

// DifferentialResult is what an axle can carry on different ground.
type DifferentialResult struct {
	Axle      float64 // N·m, T: torque of the whole axle
	PoorShaft float64 // N·m, T1: in the half-shaft of the wheel with less grip
	GoodShaft float64 // N·m, T2: in the other half-shaft
	GoodShare float64 // -, T2/T: share of the torque in that half-shaft; 0 if none is carried
}

// DifferentialTorque returns the torque an axle can carry when its wheels stand on different ground.
//
//	T = T1 + T2,  T1 = µ1·W1·r
//	open:          T2 = T1
//	limited slip:  T2 = min(µ2·W2·r, max(B·T1, T1 + T_0))
//	locked:        T2 = µ2·W2·r
//
// Valid for the wheel named poor having no more grip than the other. With one
// wheel hanging an open axle carries nothing, a locked one everything through
// one shaft.
// Errors: *check.RangeError outside that range or for another kind.
// Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2, for open
// and locked (from memory); limited slip by the definition of the bias ratio,
// common practice, no source.
func DifferentialTorque(p DifferentialParams) (DifferentialResult, error) {
	const fn = "traction.DifferentialTorque"
	if err := check.All(fn, append(p.Centre.condition(p.BiasRatio),
		check.NotNegative("PoorLoad", p.PoorLoad),
		check.NotNegative("PoorFriction", p.PoorFriction),
		check.NotNegative("GoodLoad", p.GoodLoad),
		check.NotNegative("GoodFriction", p.GoodFriction),
		check.Positive("LoadedRadius", p.LoadedRadius),
		check.NotNegative("Preload", p.Preload),
	)...); err != nil {
		return DifferentialResult{}, err
	}
	poor, good := p.PoorFriction*p.PoorLoad*p.LoadedRadius, p.GoodFriction*p.GoodLoad*p.LoadedRadius
	if err := check.All(fn, check.That("PoorLoad", p.PoorLoad, poor <= good, "grip of the poor wheel <= grip of the good one")); err != nil {
		return DifferentialResult{}, err
	}
	r := DifferentialResult{PoorShaft: poor}
	switch p.Centre {
	case Open:
		r.GoodShaft = poor
	case LimitedSlip:
		r.GoodShaft = math.Min(good, math.Max(p.BiasRatio*poor, poor+p.Preload))
	case Locked:
		r.GoodShaft = good
	}
	r.Axle = r.PoorShaft + r.GoodShaft
	if r.Axle > 0 {
		r.GoodShare = r.GoodShaft / r.Axle
	}
	return r, nil
}

// ShareParams ask how much of its torque a differential may send one way.
type ShareParams struct {
	Centre    Centre  // name, kind of differential: open, limited-slip or locked
	Split     float64 // -, s: share of that side by the differential's gears; 0.5 between two wheels
	BiasRatio float64 // -, B: torque of one side over the other that a limited slip allows; optional
}

// LargestShare returns the largest share of a differential's torque that may go to one side: an axle or a half-shaft.
//
//	share = s                       open
//	share = B·s/(B·s + 1 − s)       limited slip
//	share = 1                       locked
//
//	share  largest share of one side, -
//
// Valid for 0 < s < 1. Locked, the other side may be off the ground.
// Errors: *check.RangeError outside that range or for another kind.
// Source: definition of the bias ratio; common practice, no source.
func LargestShare(p ShareParams) (float64, error) {
	if err := check.All("traction.LargestShare", append(p.Centre.condition(p.BiasRatio),
		check.That("Split", p.Split, p.Split > 0 && p.Split < 1, "0 < Split < 1"),
	)...); err != nil {
		return 0, err
	}
	switch p.Centre {
	case Open:
		return p.Split, nil
	case LimitedSlip:
		return p.BiasRatio * p.Split / (p.BiasRatio*p.Split + 1 - p.Split), nil
	}
	return 1, nil
}
