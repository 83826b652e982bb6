package loadpath

import "math"

// touches keeps the torques of first touch of one flank.
type touches struct {
	done         bool
	reach        float64
	tight, slack Touch
}

// Touches returns the torques at which the tightest and the slackest spot of
// the back face first meet the peg, looking up to the torque reach.
func (e *Elastic) Touches(flank Flank, reach float64) (tight, slack Touch, err error) {
	if e.axle.Peg == nil {
		return Touch{}, Touch{}, &BadAxle{Field: "Peg", Reason: "is not there"}
	}
	c := &e.touches[flankIndex(flank)]
	if c.done && (reach <= c.reach || c.tight.Touches && c.slack.Touches) {
		return c.within(reach)
	}
	near, wide := e.axle.Peg.spots()
	*c = touches{done: true, reach: reach}
	if c.tight, err = e.FirstTouch(flank, near, reach); err != nil {
		return tight, slack, err
	}
	if c.slack = c.tight; wide != near {
		if c.slack, err = e.FirstTouch(flank, wide, reach); err != nil {
			return tight, slack, err
		}
	}
	return c.within(reach)
}

// within hides touches beyond the reach asked for, so that what was found
// before does not change the answer.
func (c *touches) within(reach float64) (tight, slack Touch, err error) {
	tight, slack = c.tight, c.slack
	if tight.Torque > reach {
		tight = Touch{}
	}
	if slack.Torque > reach {
		slack = Touch{}
	}
	return tight, slack, nil
}

// FirstTouch returns the torque at which the back face, without the peg, has
// come the gap closer to where the peg stands.
func (e *Elastic) FirstTouch(flank Flank, gap, reach float64) (Touch, error) {
	if gap <= 0 {
		return Touch{Torque: 0, Touches: true}, nil
	}
	atReach, err := e.approach(flank, reach)
	if err != nil || atReach < gap {
		return Touch{}, err
	}
	// Movement grows with torque, near to straight: false position, with the
	// kept end's value halved so that both ends close in.
	low, high := 0.0, reach
	fLow, fHigh := -gap, atReach-gap
	side := 0
	for range 60 {
		t := (low*fHigh - high*fLow) / (fHigh - fLow)
		f, err := e.approach(flank, t)
		if err != nil {
			return Touch{}, err
		}
		f -= gap
		if math.Abs(f) <= 1e-9*gap || high-low <= 1e-12*reach {
			return Touch{Torque: t, Touches: true}, nil
		}
		if f > 0 {
			high, fHigh = t, f
			if side == 1 {
				fLow /= 2
			}
			side = 1
		} else {
			low, fLow = t, f
			if side == -1 {
				fHigh /= 2
			}
			side = -1
		}
	}
	return Touch{Torque: (low + high) / 2, Touches: true}, nil
}
