package setup

import (
	"fmt"
	"math"

	"axlewright/axle"
	"axlewright/calc/bearing"
	"axlewright/calc/check"
	"axlewright/quantity"
)

// A PinionBearing is a taper roller bearing of the pinion, as far as drag and
// squeeze go.
type PinionBearing struct {
	Drag    bearing.PreloadedBearing
	Rollers bearing.Rollers
}

// SpacerChange asks what another spacer would do to the preload.
type SpacerChange struct {
	Spec     Spec
	Bearings Bearings
	Pair     [2]PinionBearing // head and tail
	Drag     Reading          // N·m, of the bearings alone, seal taken off
	Wanted   float64          // N·m; zero aims at the middle of the range
	Seats    float64          // N/m, what the casting and the pinion give, in series with the rollers; zero is rigid
	F0, F1   float64          // factors of oil and load; zero takes 3 and 0.0004
	Friction float64          // of roller ends on the rib, where the shop found its own; zero takes the spread of practice
}

// A SpacerResult is how much thinner a spacer has to be.
type SpacerResult struct {
	Answer
	Force   Spread // N, preload now
	Target  Spread // N, preload wanted
	Thinner Spread // m, the spacer gets thinner; negative is thicker
}

// SpacerFor returns by how much the spacer between the pinion's bearings has to
// change for a wanted drag, with its doubt: drag tells of the preload force
// within a factor of two, and the force of how far the rollers are squeezed.
//
// The method is bearing.PreloadFromTorque and the line contact of
// bearing.ApproachUnderLoad; a spacer thinner by so much squeezes the pair by as
// much.
func SpacerFor(in SpacerChange) (SpacerResult, error) {
	var s sheet
	var r SpacerResult
	s.spec(in.Spec)
	choose(&s, "Bearings", "are the bearings new or used", in.Bearings, NewBearings, UsedBearings)
	s.need("Drag", "drag of the bearings alone", in.Drag, quantity.Torque, 0, 50, "a torque such as 2.3 N·m or 20 lbf·in")
	s.number("Wanted", in.Wanted, quantity.Torque, in.Wanted >= 0 && in.Wanted < 50, "a torque such as 2.3 N·m, or zero for the middle of the range")
	s.number("Seats", in.Seats, quantity.Stiffness, in.Seats >= 0, "a stiffness, or zero for rigid seats")
	for i, b := range in.Pair {
		if b.Rollers.Count < 5 || b.Rollers.Length <= 0 || b.Rollers.CupAngle <= 0 || b.Rollers.CupAngle >= math.Pi/4 {
			s.bad(fmt.Sprintf("Pair[%d].Rollers", i), "is not complete, expected number, length and cup angle of the rollers")
		}
	}
	if err := s.err(); err != nil {
		return SpacerResult{}, err
	}
	if s.waiting(&r.Answer) {
		return r, nil
	}
	limit := in.Spec.Limit(PinionPreload{Bearings: in.Bearings}.item())
	wanted := in.Wanted
	if wanted == 0 {
		if limit.Vague {
			r.settle(NotYet, "Still to come: the kind of axle, or the maker's range, or the drag that is wanted.")
			return r, nil
		}
		wanted = limit.Target()
	}
	if err := r.work(in, wanted); err != nil {
		return SpacerResult{}, asFinding(err)
	}
	r.tell(in, wanted)
	return r, nil
}

// work solves force and squeeze for slippery, likely and dry ribs; one friction
// holds for both torques, so that the doubt of their difference is smaller than
// that of either.
func (r *SpacerResult) work(in SpacerChange, wanted float64) error {
	p := bearing.TurningTorqueParams{
		Bearings: []bearing.PreloadedBearing{in.Pair[0].Drag, in.Pair[1].Drag},
		F0:       orElse(in.F0, 3), F1: orElse(in.F1, 0.0004), Friction: in.Friction,
	}
	frictions := [3]float64{bearing.RibFrictionHigh, bearing.RibFrictionLikely, bearing.RibFrictionLow}
	if in.Friction > 0 {
		frictions = [3]float64{in.Friction, in.Friction, in.Friction}
	}
	still, err := bearing.TurningTorque(p)
	if err != nil {
		return err
	}
	var now, target, thinner [3]float64
	for i, mu := range frictions {
		p.Friction = mu
		if in.Drag.SI > still.Likely {
			f, err := bearing.PreloadFromTorque(p, in.Drag.SI)
			if err != nil {
				return err
			}
			now[i] = f.Likely
		}
		f, err := bearing.PreloadFromTorque(p, wanted)
		if err != nil {
			return err
		}
		target[i] = f.Likely
		a, err := in.squeeze(now[i])
		if err != nil {
			return err
		}
		b, err := in.squeeze(target[i])
		if err != nil {
			return err
		}
		thinner[i] = b - a
	}
	r.Force, r.Target, r.Thinner = ordered(now), ordered(target), ordered(thinner)
	return nil
}

// squeeze is how far the pair is pressed together along the axis by a preload.
func (in SpacerChange) squeeze(force float64) (float64, error) {
	total := 0.0
	for _, b := range in.Pair {
		sin := math.Sin(b.Rollers.CupAngle)
		d, err := bearing.ApproachUnderLoad(force/(float64(b.Rollers.Count)*sin), b.Rollers.Length)
		if err != nil {
			return 0, err
		}
		total += d / sin
	}
	if in.Seats > 0 {
		total += force / in.Seats
	}
	return total, nil
}

func (r *SpacerResult) tell(in SpacerChange, wanted float64) {
	r.measured("", "M_B", "drag of the bearings alone", in.Drag, quantity.Torque)
	r.computed("", "F_now", "preload that it tells of, "+r.Force.shown(quantity.Force), r.Force.Likely, quantity.Force, "turning torque of taper rollers, friction of the rib in doubt")
	r.line("", "M_want", "drag wanted", wanted, quantity.Torque, axle.Assumed, "")
	r.computed("", "F_want", "preload for it, "+r.Target.shown(quantity.Force), r.Target.Likely, quantity.Force, "turning torque of taper rollers")
	r.computed("=", "Δs", "spacer thinner by", r.Thinner.Likely, quantity.Length, "squeeze of the rollers, wanted less now")
	if r.Force.Likely == 0 {
		r.settle(Look, "The pinion turns as if its bearings had no preload, perhaps with float: how much float there is, the torque does not tell.")
		r.say("Measure the float with a dial first; the spacer gets thinner by that and by the figure here.")
	}
	r.done("It is a figure to start from: drag tells of preload within a factor of two.")
	word, size := "thinner", r.Thinner
	if r.Thinner.Likely < 0 {
		word, size = "thicker", r.Thinner.times(-1)
	}
	r.say("Spacer %s by %s.", word, size.shown(quantity.Length))
	r.note("Take the small end of the doubt first and turn the pinion 10 to 20 times before reading again.")
	if in.Seats == 0 {
		r.note("Casting and pinion are taken as rigid; what they give makes the change a little larger.")
	}
}

func ordered(x [3]float64) Spread {
	return Spread{min(x[0], x[1], x[2]), x[1], max(x[0], x[1], x[2])}
}

func orElse(x, otherwise float64) float64 {
	if x == 0 {
		return otherwise
	}
	return x
}

// asFinding tells a refusal of a formula in the words of this package.
func asFinding(err error) error {
	if e, ok := err.(*check.RangeError); ok {
		return axle.Findings{{Field: e.Param, Problem: fmt.Sprintf("%g, expected %s (%s)", e.Value, e.Range, e.Func)}}
	}
	return err
}
