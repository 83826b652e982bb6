package setup

import (
	"fmt"
	"math"

	"axlewright/axle"
	"axlewright/quantity"
)

// Gears says whether a set has run together before.
type Gears string

// The two.
const (
	NewGears  Gears = "new"
	UsedGears Gears = "used"
)

// AllGears lists them.
var AllGears = []Gears{NewGears, UsedGears}

// AdjustLash asks how to turn the adjusters for a wanted lash.
type AdjustLash struct {
	Spec      Spec
	Adjusters Adjusters
	Mesh      Mesh
	Lash      Reading // m, the mean round the wheel, along the circle at the dial
	Gears     Gears
	AsFound   Reading // m, of used gears: the lash before they were taken apart
	Wanted    float64 // m; zero aims at the middle of the range, for used gears at the lash as found
}

// An AdjustResult is how to turn the adjusters.
type AdjustResult struct {
	Answer
	Target      float64 // m, lash aimed at
	PerNotch    Spread  // m, lash per notch
	WheelIn     float64 // m, movement of the crown wheel towards the pinion
	Left, Right float64 // notches, tighter; negative is slacker. Their sum is zero: side preload is kept
	After       Spread  // m, lash to expect
	HalfNeeded  bool    // no whole notch meets the range, half a notch would
}

// NotchesForLash returns the notches for a wanted lash. Both adjusters turn by
// the same count, one tighter and one slacker, so that the side preload stays.
func NotchesForLash(in AdjustLash) (AdjustResult, error) {
	var s sheet
	var r AdjustResult
	s.spec(in.Spec)
	s.adjusters(in.Adjusters)
	s.mesh(in.Mesh)
	const lash = "a lash such as 0.15 mm"
	s.need("Lash", "lash, the mean round the wheel", in.Lash, quantity.Length, 0, 3*mm, lash)
	choose(&s, "Gears", "are the gears a new set or one that has run", in.Gears, NewGears, UsedGears)
	s.optional("AsFound", in.AsFound, quantity.Length, 0.01*mm, 3*mm, lash)
	s.number("Wanted", in.Wanted, quantity.Length, in.Wanted >= 0 && in.Wanted <= 3*mm, "a lash such as 0.15 mm, or zero for the middle of the range")
	if err := s.err(); err != nil {
		return AdjustResult{}, err
	}
	if s.waiting(&r.Answer) {
		return r, nil
	}
	sens, err := in.Mesh.Sensitivity()
	if err != nil {
		return AdjustResult{}, err
	}
	limit := LashRange(in.Spec, in.Gears, in.AsFound, sens.Wheel.Likely*in.Adjusters.notch())
	if in.Wanted == 0 && limit.Vague {
		r.settle(NotYet, "Still to come: the kind of axle, or the maker's lash, or the lash that is wanted.")
		return r, nil
	}
	r.Target = orElse(in.Wanted, limit.Target())
	r.PerNotch = sens.Wheel.times(in.Adjusters.notch())
	r.measured("", "j", "lash now", in.Lash, quantity.Length)
	r.line("−", "j_want", "lash aimed at", r.Target, quantity.Length, axle.Assumed, limit.Text())
	r.computed("=", "Δj", "lash to take off", in.Lash.SI-r.Target, quantity.Length, "")
	r.notchLines(in.Adjusters, sens)
	r.computed("=", "n", "notches, unrounded", (in.Lash.SI-r.Target)/r.PerNotch.Likely, quantity.Number, "lash to take off over lash per notch")
	r.choose(in, limit)
	r.tell(in, limit)
	return r, nil
}

// UsualNotch is about what one notch of common adjusters changes the lash by, m.
// Common practice, no source.
const UsualNotch = 0.05 * mm

// LashRange is the range for the lash. A set that has run goes back to the lash
// it had, within half of what one notch changes it by or a hundredth.
func LashRange(spec Spec, gears Gears, asFound Reading, notch float64) Limit {
	if gears != UsedGears || !asFound.Taken {
		return spec.Limit(Lash)
	}
	half := max(notch/2, 0.0127*mm)
	return Limit{
		Item: Lash, Low: max(asFound.SI-half, 0.01*mm), High: asFound.SI + half, Tag: Custom,
		For: "a set that has run goes back to the lash it had", Others: []Limit{spec.Limit(Lash)},
	}
}

// choose takes the turn that the lock holds and that comes nearest.
func (r *AdjustResult) choose(in AdjustLash, limit Limit) {
	exact := (in.Lash.SI - r.Target) / r.PerNotch.Likely
	n := r.nearest(in, limit, exact, in.Adjusters.step())
	if !limit.Holds(r.lashAfter(in, n)) && !in.Adjusters.HalfStep {
		r.HalfNeeded = limit.Holds(r.lashAfter(in, r.nearest(in, limit, exact, 0.5)))
	}
	r.WheelIn = n * in.Adjusters.notch()
	r.After = r.PerNotch.times(-n).plus(in.Lash.SI)
	r.Left, r.Right = n, -n
	if in.Adjusters.WheelSide == Right {
		r.Left, r.Right = -n, n
	}
	if n == 0 {
		r.Left, r.Right = 0, 0 // no minus zero
	}
}

// nearest is the number of steps whose lash comes nearest to the target; one
// inside the range goes before one outside. A step that would leave no lash is
// never taken.
func (r *AdjustResult) nearest(in AdjustLash, limit Limit, exact, step float64) float64 {
	low := math.Floor(exact/step) * step
	best := low
	for _, n := range []float64{low, low + step} {
		a, b := r.lashAfter(in, n), r.lashAfter(in, best)
		inA, inB := limit.Holds(a), limit.Holds(b)
		if b <= 0 || a > 0 && inA && !inB || a > 0 && inA == inB && math.Abs(a-r.Target) < math.Abs(b-r.Target)-1e-12 {
			best = n
		}
	}
	return best
}

func (r *AdjustResult) lashAfter(in AdjustLash, n float64) float64 {
	return in.Lash.SI - n*r.PerNotch.Likely
}

func (r *AdjustResult) tell(in AdjustLash, limit Limit) {
	before := r.only("lash now", in.Lash.SI, limit)
	r.only("lash to expect", r.After.Likely, limit)
	after := limit.Holds(r.After.Likely)
	turned := r.WheelIn != 0
	switch {
	case !turned && before == Fine:
		r.settle(Fine, "Lash %s is within %s and no whole turn of the lock brings it nearer to %s.", length(in.Lash.SI), limit.Text(), length(r.Target))
		r.say("Leave the adjusters as they are.")
		return
	case !turned && !r.HalfNeeded:
		r.settle(Look, "Lash %s is not within %s, and no turn that the lock holds brings it nearer.", length(in.Lash.SI), limit.Text())
	case after && !limit.Vague:
		r.settle(Look, "Lash is %s, wanted %s (%s).", length(in.Lash.SI), limit.Range(), limit.From())
	case limit.Vague:
		r.settle(Look, "Lash is %s, aimed at %s; the range for this axle is not known.", length(in.Lash.SI), length(r.Target))
	default:
		r.settle(Look, "Lash is %s and whole notches take it to %s, which is not within %s.", length(in.Lash.SI), length(r.After.Likely), limit.Text())
	}
	if before == Fine {
		r.State, r.Reason = Fine, fmt.Sprintf("Lash %s is within %s; nearer to %s is better.", length(in.Lash.SI), limit.Text(), length(r.Target))
	}
	if r.HalfNeeded {
		r.say("A lock with half steps is needed: one notch changes lash by %s, and the range is %s wide.", r.PerNotch.shown(quantity.Length), length(limit.High-limit.Low))
	}
	if turned {
		r.sayTurn(in.Adjusters)
		r.say("Measure lash again at 4 to 8 points.")
		r.note("From %s to %s, one notch being %s of lash.", length(in.Lash.SI), r.After.shown(quantity.Length), r.PerNotch.shown(quantity.Length))
	}
}

// sayTurn says the turn in the fitter's words.
func (r *AdjustResult) sayTurn(a Adjusters) {
	n := math.Abs(r.Left)
	way, tight := "in, towards the pinion", a.WheelSide
	if r.WheelIn < 0 {
		way, tight = "out, away from the pinion", a.WheelSide.other()
	}
	r.say("Crown wheel %s: %s adjuster %s tighter, %s %s slacker%s.", way, tight, turns(n, "notch", "notches"), tight.other(), number(n), a.seen())
	r.say("Slacken the %s one %s and bring it back 1, then tighten the %s one %s. Last move tightening, of each.", tight.other(), turns(n+1, "notch", "notches"), tight, number(n))
	r.note("Both turn by the same count, so the side preload stays as it is.")
}
