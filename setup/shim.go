package setup

import (
	"math"

	"axlewright/axle"
	"axlewright/quantity"
)

// Push says which way a thicker pinion shim pushes the pinion. It hangs on where
// the shim sits: under the head bearing mostly towards the crown wheel, under
// the flange of a pinion cage away from it.
type Push string

// The two ways.
const (
	TowardsWheel  Push = "towards the crown wheel"
	AwayFromWheel Push = "away from the crown wheel"
)

const comesIn = "the pinion has to come in, towards the crown wheel, by"

const pushQuestion = "does a thicker shim push the pinion towards the crown wheel or away from it"

func (p Push) sign() float64 {
	if p == AwayFromWheel {
		return -1
	}
	return 1
}

// A ShimResult is the shim that a sum asks for.
type ShimResult struct {
	Answer
	Towards float64 // m, how far the pinion moves towards the crown wheel; negative is away
	Change  float64 // m, how much thicker the shim gets
	Shim    float64 // m, its thickness
}

const thinnestShim, thickestShim = 0.0, 10e-3 // m, that anybody would fit

// close ends the sum: a shim of so much is fitted, and the pinion must come so
// much nearer the crown wheel, which why explains. It says false where no shim
// can do that.
func (r *ShimResult) close(fitted Reading, fittedAs, why string, towards float64, push Push) bool {
	r.Towards = towards
	r.Change = push.sign() * towards
	r.Shim = fitted.SI + r.Change
	r.computed("=", "a", why, towards, quantity.Length, "")
	r.measured("", "S_old", fittedAs, fitted, quantity.Length)
	sign, way := "+", "a thicker shim pushes the pinion towards the crown wheel, so its way in is added"
	if push == AwayFromWheel {
		sign, way = "−", "a thicker shim pushes the pinion away from the crown wheel, so its way in is taken off"
	}
	r.line(sign, "a", way, towards, quantity.Length, axle.Computed, "from above")
	r.computed("=", "S", "shim to fit", r.Shim, quantity.Length, "")
	if r.Shim >= thinnestShim && r.Shim <= thickestShim {
		return true
	}
	r.settle(Look, "The sum asks for a shim of %s, which cannot be.", length(r.Shim))
	r.ask("What does plus mean on this pinion, which way does a thicker shim push it, and was a shim in place when it was measured?")
	return false
}

// doubtChange asks again where a shim changes by more than shims do.
func (r *ShimResult) doubtChange(spec Spec) {
	l := spec.Limit(ShimChange)
	if r.only(string(ShimChange), math.Abs(r.Change), l) == Look {
		r.settle(Look, "The shim changes by %s, more than %s (%s).", length(math.Abs(r.Change)), length(l.High), l.From())
		r.ask("Was the right step of the gauge block used, is a baffle counted as shim, is the bearing of another height, has the pinion's face a burr?")
	}
}

// tell says the shim in the fitter's words, beside the old one where there was
// one.
func (r *ShimResult) tell(compared bool) {
	r.done("The sum is within what shims change by.")
	switch {
	case math.Abs(r.Change) < 0.5e-6:
		r.say("Shim %s, as before: the pinion stays where it is.", length(r.Shim))
	case compared:
		r.say("Shim %s: %s %s than before. That moves the pinion %s %s.", length(r.Shim), length(math.Abs(r.Change)), thicker(r.Change), length(math.Abs(r.Towards)), pinionWay(r.Towards))
	default:
		r.say("Shim %s.", length(r.Shim))
	}
	r.note("It is the first shim, not the last word: the pattern decides.")
}

// pinionWay says which way the pinion goes.
func pinionWay(towards float64) string {
	if towards < 0 {
		return "out, away from the crown wheel"
	}
	return "in, towards the crown wheel"
}

// thicker says which way a shim changes.
func thicker(change float64) string {
	if change < 0 {
		return "thinner"
	}
	return "thicker"
}
