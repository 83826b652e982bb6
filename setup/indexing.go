package setup

import (
	"cmp"
	"math/cmplx"
	"slices"

	"axlewright/quantity"
)

// advise finds the bolt hole at which wheel and seat make up for each other.
// now is the wheel's wave as it sits, hole the angle from one hole to the next.
func (r *RunOutResult) advise(spec Spec, holes int, allowed []int, seat, now complex128, hole float64) {
	for k := range holes {
		if k != 0 && len(allowed) > 0 && !slices.Contains(allowed, k) {
			continue
		}
		full := 2 * cmplx.Abs(seat+now*cmplx.Rect(1, float64(k)*hole))
		r.AtHoles = append(r.AtHoles, HoleRunOut{Turned: k, Full: full})
	}
	least := slices.MinFunc(r.AtHoles, func(a, b HoleRunOut) int { return cmp.Compare(a.Full, b.Full) }).Full
	shorter := func(h HoleRunOut) int { return min(h.Turned, holes-h.Turned) } // on or back
	const alike = 0.1e-6                                                       // m, no dial tells them apart
	r.Best = r.AtHoles[0]
	for _, h := range r.AtHoles[1:] { // of those as good as the best, the one nearest to where the wheel sits
		if good, best := h.Full <= least+alike, r.Best.Full <= least+alike; good && (!best || shorter(h) < shorter(r.Best)) {
			r.Best = h
		}
	}
	// A few places miss the highest and the lowest: the wave between them counts.
	r.Total = max(r.Total, r.AtHoles[0].Full)
	limit := spec.Limit(WheelRunOut)
	r.computed("", "t_best", "once a turn with the wheel "+turns(float64(r.Best.Turned), "hole", "holes")+" on", r.Best.Full, quantity.Length, "seat and wheel as waves, added")
	left := r.Twice.FullReading()
	r.Bent = left > limit.High/2
	r.tell(limit, holes, left)
}

func (r *RunOutResult) tell(limit Limit, holes int, left float64) {
	state := r.check("run-out of the back face", r.Total, limit)
	if r.Bent {
		r.settle(Look, "%s of it comes twice a turn: the wheel is bent or pulled out of flat.", length(left))
		r.say("Take the wheel off: look for burrs on seat and wheel, at the bolts and their order of tightening. Turning it cannot cure this.")
	}
	switch {
	case r.Best.Turned == 0 && state == Fine:
		r.say("Leave the wheel where it is on its bolt holes.")
	case r.Best.Turned == 0:
		r.say("No other bolt hole is better: clean and dress the seat and the wheel, then measure again.")
	case state == Fine && limit.Aimed(r.Total):
		r.say("Leave the wheel where it is on its bolt holes.")
		r.note("%s on, run-out once a turn would be about %s.", capital(turns(float64(r.Best.Turned), "bolt hole", "bolt holes")), length(r.Best.Full))
	case r.Best.Full > 0.8*r.AtHoles[0].Full:
		r.say("No other bolt hole is much better: clean and dress the seat and the wheel, then measure again.")
	default:
		r.sayIndex(limit, holes, left)
	}
	r.finish()
	larger, share := "the seat, which stays with the diff centre", r.Seat
	if r.Wheel.Amplitude > r.Seat.Amplitude {
		larger, share = "the crown wheel itself", r.Wheel
	}
	r.note("The larger part is %s: %s.", larger, length(share.FullReading()))
	r.tellOthers(limit)
}

// sayIndex says how to turn the wheel. What turning does not cure comes on top,
// at worst.
func (r *RunOutResult) sayIndex(limit Limit, holes int, left float64) {
	back := holes - r.Best.Turned
	turn := turns(float64(r.Best.Turned), "bolt hole", "bolt holes") + " on, the way the places are counted"
	if back < r.Best.Turned {
		turn = turns(float64(back), "bolt hole", "bolt holes") + " back, against the way the places are counted"
	}
	r.say("Turn the crown wheel %s: run-out once a turn falls from %s to about %s.", turn, length(r.AtHoles[0].Full), length(r.Best.Full))
	r.say("Clean seat and wheel, tighten crosswise, and measure again.")
	if !r.Bent && !limit.Holds(r.Best.Full+left) {
		r.say("That is still over %s: dress the seat as well.", limit.Range())
	}
}
