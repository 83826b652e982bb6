package loadpath

import "math"

// findRubbing is find for a pad whose friction leads the search astray: with
// the friction held the energy is convex again, and only one number is left to
// seek, the load whose own friction is the one held.
func (s *system) findRubbing(p *placement) (err *NotConverged) {
	defer func() { s.heldRub = false }()
	s.heldRub = true
	steps := 0
	misfit := func(rub float64) float64 {
		s.rub = rub
		p.y = s.rest.y
		s.firm(&p.y)
		err = s.find(p)
		steps += p.steps
		p.steps = steps
		return p.pegLoad - rub
	}
	low, fLow := 0.0, misfit(0)
	if err != nil || fLow == 0 {
		return err
	}
	high := p.pegLoad
	fHigh := misfit(high)
	for err == nil && fHigh > 0 {
		if high > 1e6*s.scale { // the harder it rubs, the harder it presses: the wheel jams
			return &NotConverged{System: s.name(), Residual: fHigh / high, Iterations: steps}
		}
		low, fLow = high, fHigh
		high *= 2
		fHigh = misfit(high)
	}
	if err != nil {
		return err
	}
	side := 0
	for range 100 {
		rub := (low*fHigh - high*fLow) / (fHigh - fLow)
		f := misfit(rub)
		if err != nil {
			return err
		}
		if math.Abs(f) <= 1e-11*s.scale {
			return nil
		}
		if f > 0 {
			low, fLow = rub, f
			if side == 1 {
				fHigh /= 2
			}
			side = 1
		} else {
			high, fHigh = rub, f
			if side == -1 {
				fLow /= 2
			}
			side = -1
		}
	}
	return &NotConverged{System: s.name(), Residual: 1, Iterations: steps}
}
