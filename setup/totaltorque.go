package setup

import "axlewright/quantity"

// TotalTorque asks whether the side bearings add what they should.
type TotalTorque struct {
	Spec   Spec
	Pinion Reading // N·m, turning torque of the pinion alone
	Total  Reading // N·m, the same with the crown wheel in
}

// JudgeTotalTorque holds the rise of turning torque that crown wheel and side
// bearings make against its range.
func JudgeTotalTorque(in TotalTorque) (Answer, error) {
	var s sheet
	var a Answer
	s.spec(in.Spec)
	const example = "a torque such as 2.3 N·m or 20 lbf·in"
	s.need("Pinion", "turning torque of the pinion alone", in.Pinion, quantity.Torque, 0, 500, example)
	s.need("Total", "turning torque with the crown wheel in", in.Total, quantity.Torque, 0, 500, example)
	if err := s.err(); err != nil {
		return Answer{}, err
	}
	if s.waiting(&a) {
		return a, nil
	}
	rise := in.Total.SI - in.Pinion.SI
	a.measured("", "M_tot", "with the crown wheel in", in.Total, quantity.Torque)
	a.measured("−", "M", "pinion alone", in.Pinion, quantity.Torque)
	a.computed("=", "ΔM", "rise", rise, quantity.Torque, "")
	l := in.Spec.Limit(TotalRise)
	if rise < 0 {
		a.settle(Look, "The total is below the pinion alone: one of the two was read otherwise.")
		a.ask("Was the seal in for one reading and out for the other?")
		return a, nil
	}
	if quantity.TwelveFold(in.Total.SI, in.Pinion.SI) && !l.Holds(rise) {
		a.ask("The two differ about 12 times: was one read in pound-inches and the other in pound-feet?")
	}
	if a.check("rise", rise, l) == Look && len(a.Ask) == 0 {
		if rise < l.Low {
			a.say("More side preload: both adjusters tighter by the same count.")
		} else {
			a.say("Less side preload: both adjusters slacker, then the last move tightening.")
		}
	}
	a.finish()
	a.tellOthers(l)
	return a, nil
}
