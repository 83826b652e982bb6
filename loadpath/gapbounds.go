package loadpath

import (
	"math"

	"axlewright/calc/contact"
)

// atGap solves the axle with the peg at a hot gap in the middle of the run-out
// and so much of its own compliance (m/N).
func (e *Elastic) atGap(s *State, d *Demand, gap, compliance float64) error {
	st := &e.stops[flankIndex(d.Flank)]
	kept := *st
	defer func() { *st = kept }()
	own := 0.0
	if e.axle.Peg.Stiffness > 0 {
		own = 1 / e.axle.Peg.Stiffness
	}
	st.gap = gap
	st.give += compliance - own
	return e.SolveInto(s, d.Flank, d.Torque)
}

// pegCompliance is the peg's own.
func (e *Elastic) pegCompliance() float64 {
	if e.axle.Peg.Stiffness > 0 {
		return 1 / e.axle.Peg.Stiffness
	}
	return 0
}

// farOff is a gap that no wheel crosses.
const farOff = 1e3

// freeUse is a demand without the peg.
func (e *Elastic) freeUse(d *Demand) (PegUse, error) {
	var s State
	if err := e.atGap(&s, d, farOff, e.pegCompliance()); err != nil {
		return PegUse{}, err
	}
	return PegUse{FreeMovement: s.Wheel.Shift.Y, Approach: s.Peg.Movement, Thrust: s.OnWheel.Y}, nil
}

// use is a demand with the peg at a cold gap at the tight spot.
func (e *Elastic) use(p *GapParams, d *Demand, gap float64) (PegUse, error) {
	u, err := e.freeUse(d)
	if err != nil {
		return u, err
	}
	peg := e.axle.Peg
	var s State
	if err := e.atGap(&s, d, gap-peg.Closing, e.pegCompliance()); err != nil {
		return u, err
	}
	u.Load, u.Touches = s.Peg.Load, s.Peg.Load > 0
	speed, err := contact.RubbingSpeed(peg.Radius, d.Speed)
	if err != nil {
		return u, err
	}
	if u.Heat, err = contact.RubbingHeat(peg.Friction, u.Load, speed); err != nil {
		return u, err
	}
	if p.PadDiameter > 0 {
		if u.Pressure, err = contact.PadPressure(u.Load, p.PadDiameter); err != nil {
			return u, err
		}
		if u.PV, err = contact.PressureVelocity(u.Pressure, speed); err != nil {
			return u, err
		}
	}
	if err := e.atGap(&s, d, gap+peg.RunOut, e.pegCompliance()); err != nil {
		return u, err
	}
	u.Movement = s.Wheel.Shift.Y
	return u, nil
}

// loadLimit is the load at which one thing about the peg gives out.
type loadLimit struct {
	kind  BoundKind
	force float64
}

func (p *GapParams) loadLimits(peg *Peg, d *Demand) (list []loadLimit) {
	if p.Capacity > 0 {
		list = append(list, loadLimit{ByCapacity, p.Capacity})
	}
	area := math.Pi / 4 * p.PadDiameter * p.PadDiameter
	speed := peg.Radius * math.Abs(d.Speed)
	if p.PadPressure > 0 {
		list = append(list, loadLimit{ByPressure, p.PadPressure * area})
	}
	if d.Lasts && p.PadSteady > 0 {
		list = append(list, loadLimit{ByPressure, p.PadSteady * area})
	}
	if d.Lasts && p.PadPV > 0 && speed > 0 {
		list = append(list, loadLimit{ByPV, p.PadPV * area / speed})
	}
	if d.PadHeat > 0 && speed > 0 && peg.Friction > 0 {
		list = append(list, loadLimit{ByHeat, d.PadHeat / (peg.Friction * speed)})
	}
	return list
}

// leastGapForLoad is the hot gap at the tight spot from which on the load stays
// within the limit; zero or less where it always does. The load falls as the
// gap grows and is gone where the wheel does not come.
func (e *Elastic) leastGapForLoad(d *Demand, limit, approach float64) (float64, error) {
	if approach <= 0 {
		return 0, nil
	}
	return fall(0, approach, func(gap float64) (float64, error) {
		var s State
		err := e.atGap(&s, d, gap, e.pegCompliance())
		return s.Peg.Load/limit - 1, err
	})
}

// mostGapForMovement is the gap at the slack spot up to which the wheel stays
// within its limit. It may be negative, which no fitter may set, but which says
// how much is lacking; where not even a peg screwed in as far as the wheel
// would come can hold it, it is just that far.
func (e *Elastic) mostGapForMovement(d *Demand, approach float64) (float64, error) {
	reach := math.Abs(approach)
	return fall(-2*reach, reach, func(gap float64) (float64, error) {
		var s State
		err := e.atGap(&s, d, gap, e.pegCompliance())
		return 1 - s.Wheel.Shift.Y/d.Movement, err
	})
}

// fall finds where a function that falls from low to high crosses zero: low
// where it is not above zero there, high where it is not below zero there.
func fall(low, high float64, f func(float64) (float64, error)) (float64, error) {
	atLow, err := f(low)
	if err != nil || atLow <= 0 {
		return low, err
	}
	atHigh, err := f(high)
	if err != nil || atHigh >= 0 {
		return high, err
	}
	width := high - low
	side := 0
	for range 80 {
		x := (low*atHigh - high*atLow) / (atHigh - atLow)
		v, err := f(x)
		if err != nil {
			return x, err
		}
		if math.Abs(v) < 1e-9 || high-low < 1e-9*width {
			return x, nil
		}
		if v > 0 {
			low, atLow = x, v
			if side == 1 {
				atHigh /= 2
			}
			side = 1
		} else {
			high, atHigh = x, v
			if side == -1 {
				atLow /= 2
			}
			side = -1
		}
	}
	return (low + high) / 2, nil
}
