package setup

import (
	"math"

	"axlewright/axle"
	"axlewright/quantity"
)

// patternRule takes one pattern through the rules in their order.
type patternRule struct {
	in   Pattern
	r    *PatternResult
	sens Sensitivity
}

func (p patternRule) read() {
	d, c := p.in.Drive, p.in.Coast
	high, low := heightAt[d.Height], heightAt[c.Height]
	switch {
	case d.Shape == PatchyShape || d.Shape == Wandering || c.Shape == PatchyShape || c.Shape == Wandering:
		p.runOut()
	case p.in.Gears == UsedGears:
		p.restore()
	case p.lashFirst():
	case c.taken() && high*low < 0 && (high == 2 || high == -2 || low == 2 || low == -2):
		p.bores("One flank is high and the other low: neither depth nor lash does that.")
	case high != 0 || c.taken() && low != 0:
		if high == 0 {
			high = low
		}
		p.depth(high, "The mark is %s: the pinion is too %s.")
	default:
		p.length(alongAt[d.Along], alongAt[c.Along])
	}
}

// runOut: a mark that changes round the wheel says nothing of depth or lash.
func (p patternRule) runOut() {
	p.r.Correction = LookAtRunOut
	p.r.settle(Look, "The mark is patchy or wanders round the wheel: run-out, a burr or a bent wheel, not depth or lash.")
	p.r.say("Leave shim and adjusters alone. Measure run-out of the back face and of the seat, look for burrs, then paint again.")
}

// restore: the wear of a used set is its pattern.
func (p patternRule) restore() {
	p.r.Correction = RestoreOld
	l := LashRange(p.in.Spec, UsedGears, p.in.AsFoundLash, UsualNotch)
	p.r.note("[T] On gears that have run, the wear is the true pattern: do not chase a new one.")
	if p.in.Drive.OffEdge || p.in.Coast.OffEdge {
		p.r.settle(Look, "The mark runs off the edge of the tooth, which a set that has run should not show either.")
		p.r.say("Compare with the wear on the teeth; put the pinion back to its old place before anything else.")
		return
	}
	if !p.in.Lash.Taken || !p.in.AsFoundLash.Taken {
		p.r.settle(Look, "The set has run: what counts is that lash and place are as found, and one of the two lashes is not recorded.")
		p.r.say("Put back the old shim and the old lash.")
		return
	}
	if p.r.check("lash", p.in.Lash.SI, l) == Look {
		p.r.say("Bring lash back to %s, as it was found.", length(p.in.AsFoundLash.SI))
		return
	}
	p.r.settle(Fine, "The set has run and its lash is as found.")
}

// lashFirst: a pattern read with the lash out of its range misleads.
func (p patternRule) lashFirst() bool {
	l := p.in.Spec.Limit(Lash)
	if !p.in.Lash.Taken || l.Vague || l.Holds(p.in.Lash.SI) {
		return false
	}
	p.r.Correction = SetLash
	p.r.check("lash", p.in.Lash.SI, l)
	p.r.say("Bring lash into %s first, then paint again: a pattern read outside it misleads.", l.Range())
	return true
}

// depth moves the pinion; high is 1 or 2 for a mark towards or at the tip,
// negative for the root.
func (p patternRule) depth(high int, reason string) {
	step := p.in.Spec.Limit(DepthStep)
	size, word, place := step.Low, "far out", "high, towards the tip"
	if high == 2 || high == -2 {
		size = step.High
	}
	in := 1.0
	if high < 0 {
		in, word, place = -1, "deep", "low, towards the root"
	}
	p.r.settle(Look, reason, place, word)
	p.movePinion(in*size, step)
}

func (p patternRule) movePinion(in float64, step Limit) {
	r := p.r
	r.Correction, r.PinionIn = MovePinion, in
	r.LashChange = -in * p.sens.Pinion.Likely
	r.KeepLash = in * p.sens.wheelForPinion() // the pinion in asks for the wheel out
	r.line("", "a", "pinion in, towards the crown wheel, by one step of the trade", in, quantity.Length, axle.Trade, step.From())
	r.line("×", "j'", "lash per movement of the pinion", -p.sens.Pinion.Likely, quantity.Number, p.sens.Origin, p.sens.Source)
	r.computed("=", "Δj", "lash changes by itself by", r.LashChange, quantity.Length, "")
	r.computed("", "b", "crown wheel in, towards the pinion, that would undo it", r.KeepLash, quantity.Length, p.sens.Source)
	way := pinionWay(in)
	if p.in.ThickerPushes != "" {
		r.Shim = in * p.in.ThickerPushes.sign()
		r.say("Pinion %s: shim %s %s.", way, length(math.Abs(r.Shim)), thicker(r.Shim))
	} else {
		r.say("Pinion %s by %s.", way, length(math.Abs(in)))
		r.ask("Does a thicker shim push the pinion towards the crown wheel or away from it?")
	}
	p.sayKeep()
}

// sayKeep says what the adjusters have to do so that the lash stays.
func (p patternRule) sayKeep() {
	r := p.r
	out := "out, away from the pinion"
	if r.KeepLash > 0 {
		out = "in, towards the pinion"
	}
	if p.in.Adjusters != (Adjusters{}) {
		step := p.in.Adjusters.step()
		if n := math.Round(math.Abs(r.KeepLash)/(p.in.Adjusters.notch()*step)) * step; n > 0 {
			r.say("To keep the lash, crown wheel %s, both adjusters %s.", out, turns(n, "notch", "notches"))
			return
		}
		r.say("Leave the adjusters: lash changes by %s only, less than a notch makes up for.", length(math.Abs(r.LashChange)))
		return
	}
	r.say("Lash changes by %s with it: to keep it, crown wheel %s by %s. Measure lash again.", length(math.Abs(r.LashChange)), out, length(math.Abs(r.KeepLash)))
}

// length corrects the place along the tooth, which comes after the height.
func (p patternRule) length(d, c int) {
	off := p.in.Drive.OffEdge || p.in.Coast.OffEdge
	crossed := p.in.Coast.taken() && d*c < 0 && (d == 2 || d == -2 || c == 2 || c == -2)
	switch {
	case crossed && p.in.Depth == TaperedDepth:
		p.crossedTapered(d)
	case crossed && p.in.Depth == ParallelDepth:
		// Here lash moves the two flanks apart.
		p.moveWheel(d > c, "The marks cross: drive towards the %s, coast towards the %s. On teeth of parallel depth lash does that.", endName(d), endName(c))
	case crossed:
		p.r.Correction = AskDepth
		p.r.settle(Look, "The marks cross, drive towards the %s and coast towards the %s, and what that means hangs on how the teeth are cut.", endName(d), endName(c))
		p.r.ask("Is a tooth of the crown wheel as tall at the toe as at the heel (parallel depth), or lower at the toe (tapered)?")
	case p.in.Depth == ParallelDepth && p.in.Coast.taken() && d*c == 4:
		p.bores("Both flanks are marked at the %s. On teeth of parallel depth neither lash nor depth moves both the same way.", endName(d))
	case d >= 1 || d == 0 && c == 2:
		reason := "The mark is towards the heel."
		if max(d, c) == 2 {
			reason = "The mark is right at the heel."
		}
		p.moveWheel(true, "%s", reason)
	case d == -2 || d == 0 && c == -2:
		p.moveWheel(false, "The mark is right at the toe.")
	case off:
		p.r.settle(Look, "The mark runs off the edge of the tooth although it sits in the middle: it is too large, or the load was.")
		p.r.say("Paint again under a light load.")
	default:
		p.fine()
	}
}

// crossedTapered: published charts put it down to depth, some manuals reject the
// set: both are said.
func (p patternRule) crossedTapered(d int) {
	word, in := "far out", 1.0
	if d < 0 {
		word, in = "deep", -1
	}
	step := p.in.Spec.Limit(DepthStep)
	p.r.settle(Look, "The marks cross, drive towards the %s and coast towards the %s: the pinion is too %s; it is depth, not lash.", endName(d), endName(-d), word)
	p.movePinion(in*step.Low, step)
	p.r.note("[?] The trade disagrees: charts for tapered teeth correct the depth, some manuals reject a set with crossed marks. If two steps do not bring the marks together, check bores and axes, then reject the set.")
}

// moveWheel changes lash, as far as its range lets it.
func (p patternRule) moveWheel(in bool, reason string, args ...any) {
	r := p.r
	r.settle(Look, reason, args...)
	l := p.in.Spec.Limit(Lash)
	sign := -1.0 // growth of lash
	way := "in, towards the pinion"
	if !in {
		sign, way = 1, "out, away from the pinion"
	}
	const step = 0.04 * mm // of lash: about half a notch of common adjusters
	change := step
	if p.in.Lash.Taken && !l.Vague {
		room := l.High - p.in.Lash.SI
		if in {
			room = p.in.Lash.SI - l.Low
		}
		if room < 0.01*mm {
			p.noRoom(in, l)
			return
		}
		change = min(step, room)
	}
	r.Correction = MoveWheel
	r.LashChange = sign * change
	r.WheelIn = -r.LashChange / p.sens.Wheel.Likely
	r.line("", "Δj", "change of lash, one step and not beyond its range", r.LashChange, quantity.Length, axle.Trade, "[T] custom of the trade, no source")
	r.line("÷", "j'", "lash per movement of the crown wheel", p.sens.Wheel.Likely, quantity.Number, p.sens.Origin, p.sens.Source)
	r.computed("=", "b", "crown wheel in, towards the pinion, by", r.WheelIn, quantity.Length, "")
	r.say("Crown wheel %s by about %s: lash %s by %s.", way, length(math.Abs(r.WheelIn)), lashWord(sign), length(change))
	if !p.in.Lash.Taken {
		r.say("Measure lash first: it must stay in %s.", l.Text())
	}
	if p.in.Depth == UnknownDepth || p.in.Depth == "" {
		r.note("On teeth of parallel depth lash moves the marks of the two flanks apart: see whether the tooth is as tall at the toe as at the heel.")
	}
}

// noRoom: the lash is at the end of its range, which goes before the pattern.
func (p patternRule) noRoom(in bool, l Limit) {
	r := p.r
	r.Correction = CheckBores
	more := "less"
	if !in {
		more = "more"
	}
	r.settle(Look, "Pattern and lash disagree: the pattern asks for %s lash, and lash %s is already at the end of %s.", more, length(p.in.Lash.SI), l.Text())
	r.say("The range of the lash goes first: leave the adjusters. Check shim sum, bores and that the set belongs together.")
	way := "in"
	if in {
		way = "out"
	}
	ratio := p.sens.Wheel.Likely / p.sens.Pinion.Likely
	r.note("Some manuals move the wheel and then the pinion %s to win the lash back; for each 0.05 mm of the wheel that takes %s of shim.", way, length(0.05*mm*ratio))
}

func (p patternRule) bores(reason string, args ...any) {
	p.r.Correction = CheckBores
	p.r.settle(Look, reason, args...)
	p.r.say("Check bores and axes: side bores in line, pinion square and at its offset. Check that pinion and crown wheel are one set.")
}

func (p patternRule) fine() {
	p.r.Correction = NoCorrection
	reason := "Both flanks are marked where they should be."
	if !p.in.Coast.taken() {
		p.r.settle(NotYet, "The drive flank is marked where it should be. Still to come: the pattern on the coast flank.")
		return
	}
	if p.in.Drive.Shape == NarrowBand || p.in.Coast.Shape == NarrowBand {
		reason = "A narrow band with both ends fading is right for a light load."
	}
	p.r.settle(Fine, "%s", reason)
	p.r.say("Leave shim and adjusters. Photograph both flanks with the load written beside.")
}

func endName(along int) string {
	if along < 0 {
		return "toe"
	}
	return "heel"
}

func lashWord(sign float64) string {
	if sign < 0 {
		return "falls"
	}
	return "grows"
}
