package setup

import (
	"math"

	"axlewright/axle"
	"axlewright/quantity"
)

// LineUp asks what it does to turn both adjusters on to where their locks fit:
// to the next notch tighter, never back.
type LineUp struct {
	Spec        Spec
	Adjusters   Adjusters
	Mesh        Mesh
	Left, Right Reading // notches still to go, tightening, until the lock fits: 0 to 1
	Spread      Reading // m, spread of the caps now; optional
	Lash        Reading // m, lash now; optional
}

// A LineUpResult is what lining up does.
type LineUpResult struct {
	Answer
	Squeeze float64 // m, by which the adjusters come nearer to each other
	WheelIn float64 // m, towards the pinion; half of the difference, the two sides being taken as equally stiff
	Lash    Spread  // m, change of lash
}

// NextNotchTighter returns what the last fraction of a notch does on each side.
//
// To tighten on to the next slot and never to slacken to find one is published
// for one axle. That the wheel takes half of the difference is worked out for
// two sides of equal stiffness.
func NextNotchTighter(in LineUp) (LineUpResult, error) {
	var s sheet
	var r LineUpResult
	s.spec(in.Spec)
	s.adjusters(in.Adjusters)
	s.mesh(in.Mesh)
	const part = "a part of a notch from 0 to 1, such as 0.4"
	s.need("Left", "how much of a notch the left adjuster lacks", in.Left, quantity.Number, 0, 1, part)
	s.need("Right", "how much of a notch the right adjuster lacks", in.Right, quantity.Number, 0, 1, part)
	s.optional("Spread", in.Spread, quantity.Length, 0, 2*mm, "a spread such as 0.25 mm")
	s.optional("Lash", in.Lash, quantity.Length, 0, 3*mm, "a lash such as 0.15 mm")
	if err := s.err(); err != nil {
		return LineUpResult{}, err
	}
	if s.waiting(&r.Answer) {
		return r, nil
	}
	sens, err := in.Mesh.Sensitivity()
	if err != nil {
		return LineUpResult{}, err
	}
	left, right := in.Left.SI, in.Right.SI
	if in.Adjusters.HalfStep { // the lock fits half a notch earlier
		left, right = math.Mod(left, 0.5), math.Mod(right, 0.5)
	}
	wheel, far := left, right
	if in.Adjusters.WheelSide == Right {
		wheel, far = right, left
	}
	notch := in.Adjusters.notch()
	r.Squeeze = (left + right) * notch
	r.WheelIn = (wheel - far) / 2 * notch
	r.Lash = sens.Wheel.times(-r.WheelIn)
	r.line("", "Δa", "one notch", notch, quantity.Length, axle.Computed, "pitch over notches")
	r.line("×", "n_L + n_R", "left and right together, notches", left+right, quantity.Number, axle.Measured, "")
	r.computed("=", "q", "the adjusters close by", r.Squeeze, quantity.Length, "")
	r.computed("", "a", "crown wheel in, towards the pinion, by", r.WheelIn, quantity.Length, "half of the difference")
	r.computed("", "Δj", "change of lash", r.Lash.Likely, quantity.Length, sens.Source)
	r.tell(in, left, right)
	return r, nil
}

func (r *LineUpResult) tell(in LineUp, left, right float64) {
	if left == 0 && right == 0 {
		r.done("Both locks fit as the adjusters stand.")
		return
	}
	for _, side := range []struct {
		side Side
		n    float64
	}{{Left, left}, {Right, right}} {
		if side.n > 0 {
			r.say("%s adjuster %.1f of a notch tighter, to its next slot. Never slacken to find a slot.", capital(string(side.side)), side.n)
		}
	}
	limit := in.Spec.Limit(SideSpread)
	if in.Spread.Taken {
		// The caps spread by less than the adjusters close: bearings give too.
		most := in.Spread.SI + r.Squeeze
		if !limit.Holds(most) && most > limit.High {
			r.only("spread of the caps at most", most, limit)
			r.settle(Look, "Lining up closes the adjusters by %s and may spread the caps to %s, over %s.", length(r.Squeeze), length(most), limit.Text())
			r.say("If it feels too tight, a lock with half steps is the cure, not slackening.")
		}
	}
	if in.Lash.Taken {
		lash := in.Spec.Limit(Lash)
		after := in.Lash.SI + r.Lash.Likely
		if r.only("lash to expect", after, lash) == Look && !lash.Vague {
			r.settle(Look, "Lining up takes lash to %s, which is not within %s.", length(after), lash.Text())
		}
	}
	r.done("Lining up adds %s of squeeze and changes lash by %s.", length(r.Squeeze), r.Lash.shown(quantity.Length))
	r.note("Measure lash again when both locks are in.")
}
