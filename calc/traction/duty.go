package traction

import (
	"fmt"
	"math"

	"axlewright/calc/check"
)

// Going is what a vehicle does in a block of a duty; it decides which flank of
// the teeth carries.
type Going string

// The ways of going.
const (
	Forward Going = "forward" // pulling forward
	Overrun Going = "overrun" // forward, wheels driving the engine
	Reverse Going = "reverse" // pulling backward
)

// DutyBlock is one line of a duty.
type DutyBlock struct {
	Name   string  // name, what the vehicle is doing
	Share  float64 // -, of the moving time; a duty's shares add up to 1
	Torque float64 // -, of the axle, as a fraction of the governing torque
	Speed  float64 // m/s, of the vehicle
	Going  Going   // name, forward, overrun or reverse
}

// Duty is how hard and how long an axle is worked. Every duty supplied here is
// an assumption: nobody has published such tables for these axles. A logged
// record of the customer's own vehicle replaces it.
type Duty struct {
	Name         DutyName    // name, use
	Blocks       []DutyBlock // -, what it is made of
	TorqueSpread float64     // -, factor within which the torques of all blocks together are believed to lie, either way, 19 times of 20
	ShareSpread  float64     // -, the same for the share of each block
	Basis        string      // name, where the figures come from
}

// Check says what is wrong with a duty: shares that do not add up to 1, a
// torque past the governing one, an unknown way of going.
//
// Errors: *check.RangeError.
func (d Duty) Check() error {
	const fn = "traction.Duty"
	sum := 0.0
	for i, b := range d.Blocks {
		known := b.Going == Forward || b.Going == Overrun || b.Going == Reverse
		if err := check.All(fn,
			check.Positive(fmt.Sprintf("Blocks[%d].Share", i), b.Share),
			check.Within(fmt.Sprintf("Blocks[%d].Torque", i), b.Torque, 0, 1),
			check.Positive(fmt.Sprintf("Blocks[%d].Speed", i), b.Speed),
			check.Condition{Param: fmt.Sprintf("Blocks[%d].Going", i), Value: math.NaN(), Holds: known, Range: "forward, overrun or reverse"},
		); err != nil {
			return err
		}
		sum += b.Share
	}
	return check.All(fn,
		check.That("sum of Share", sum, math.Abs(sum-1) < 1e-9, "1"),
		check.That("TorqueSpread", d.TorqueSpread, d.TorqueSpread >= 1, ">= 1"),
		check.That("ShareSpread", d.ShareSpread, d.ShareSpread >= 1, ">= 1"),
	)
}

// DistanceShares returns the share of the distance of each block, which is also
// its share of the wheel's turns: bearings and teeth count turns, not hours.
func (d Duty) DistanceShares() []float64 {
	total := 0.0
	shares := make([]float64, len(d.Blocks))
	for i, b := range d.Blocks {
		shares[i] = b.Share * b.Speed
		total += shares[i]
	}
	for i := range shares {
		shares[i] /= total
	}
	return shares
}

// MeanSpeed returns the mean speed while moving, m/s.
func (d Duty) MeanSpeed() float64 {
	mean := 0.0
	for _, b := range d.Blocks {
		mean += b.Share * b.Speed
	}
	return mean
}
