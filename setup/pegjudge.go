package setup

import (
	"math"

	"axlewright/quantity"
)

// judge says how the peg stands: before it is set, before it is locked, after.
func (r *PegResult) judge(in PegSetting, locked []float64) {
	if !in.SidePreload {
		r.settle(Look, "Side preload was not final: setting it later moves the crown wheel against the peg.")
		r.say("Set side preload first, then the peg.")
	}
	if in.Window.Shut {
		r.settle(Look, "No gap pleases everything: %s.", in.Window.Reason)
	}
	gap := r.Gap
	if !in.Angle.Taken {
		gap = r.Aim
	}
	if gap > 0 && r.check("run-out as a share of the gap", in.RunOut.SI/gap, in.Spec.Limit(PegRunOut)) == Look {
		r.say("Bring down the run-out first: index the crown wheel on its seat.")
	}
	switch {
	case len(locked) > 0:
		r.judgeLocked(in, locked)
	case !in.Angle.Taken:
		r.settle(NotYet, "Still to come: the peg nipped up and turned back.")
		r.sayAim(in)
	default:
		r.judgeUnlocked(in)
	}
	r.finish()
	trade := in.Spec.Limit(PegGap)
	if in.Window.known() {
		r.note("The load path of this build asks for %s at the tight spot.", in.Window.limit(in.Spec).Text())
		r.note("The trade sets %s.", trade.Text())
	}
	r.tellOthers(trade)
	if r.State != Stop {
		return
	}
	r.note("[C] A peg that always touches burns: at 100 mm and 800 turns a minute it rubs at 8.4 m/s, several times what oiled bronze stands for long.")
}

// spots holds the gaps at both spots against what is allowed: the window of the
// load path where there is one, the custom of the trade beside it.
func (r *PegResult) spots(in PegSetting, when string) State {
	tight, slack := in.Spec.Limit(PegTight), in.Spec.Limit(PegSlack)
	if !in.Window.known() {
		return Worst(r.check("gap at the tight spot"+when, r.Tight, tight), r.check("gap at the slack spot"+when, r.Slack, slack))
	}
	state := r.check("gap at the tight spot"+when, r.Tight, in.Window.limit(in.Spec))
	if r.only("gap at the tight spot, by custom", r.Tight, tight) == Look || r.only("gap at the slack spot, by custom", r.Slack, slack) == Look {
		r.note("The custom of the trade is another: %s at the tight spot and not over %s at the slack spot.", tight.Text(), length(slack.High))
	}
	return state
}

func (r *PegResult) sayAim(in PegSetting) {
	if in.Spot != TightSpot {
		r.say("Turn the crown wheel right round to find the tight spot of its back face.")
	}
	r.say("Nip the peg up to touch at the %s, then turn it back %s (%s of a hexagon): gap %s.",
		in.Spot, shown(r.AimAngle, quantity.Angle), turns(math.Round(r.Flats*10)/10, "flat", "flats"), length(r.Aim))
	r.sayLock(in)
}

func (r *PegResult) sayLock(in PegSetting) {
	r.say("Hold the screw, tighten the lock nut to %s, and read the gap at four places.", in.Spec.Limit(PegLockTorque).Range())
}

// judgeUnlocked: what the sum says, before the lock nut moves the screw.
func (r *PegResult) judgeUnlocked(in PegSetting) {
	if in.Touches() {
		r.settle(Stop, "With a gap of %s and a run-out of %s the crown wheel would touch the peg unloaded.", length(r.Gap), length(in.RunOut.SI))
		r.sayAim(in)
		return
	}
	state := r.spots(in, "")
	if !in.Window.known() {
		state = Worst(state, r.check("gap as set", r.Gap, in.Spec.Limit(PegGap)))
	}
	if state != Fine {
		r.sayAim(in)
		return
	}
	move := in.Spec.Limit(PegLockMove)
	r.settle(NotYet, "Still to come: the gap after locking, which moves the peg by %s (%s).", move.Range(), move.From())
	if r.Tight <= move.High {
		r.settle(Look, "Locking may take all of the %s left at the tight spot.", length(r.Tight))
	}
	r.sayLock(in)
}

// judgeLocked: readings after locking are the truth.
func (r *PegResult) judgeLocked(in PegSetting, locked []float64) {
	computed := r.Tight
	r.Tight, r.Slack, _, _ = extremes(locked)
	r.computed("", "g_min", "least gap of "+turns(float64(len(locked)), "reading", "readings")+" after locking", r.Tight, quantity.Length, "read")
	r.computed("", "g_max", "most gap after locking", r.Slack, quantity.Length, "read")
	if in.Touches() {
		r.settle(Stop, "After locking the crown wheel touches the peg unloaded: it would burn.")
		r.say("Back the peg off before the wheel turns again.")
		return
	}
	r.spots(in, ", locked")
	if len(locked) < 4 {
		r.settle(NotYet, "Still to come: the gap at four places.")
	}
	if in.Angle.Taken {
		moved := r.Tight - computed
		r.computed("", "Δg", "the lock nut moved the gap by", moved, quantity.Length, "read less computed")
		if l := in.Spec.Limit(PegLockMove); math.Abs(moved) > l.High {
			r.settle(Look, "Locking moved the gap by %s, more than %s (%s): the screw turned with the nut, or the run-out is another.", length(math.Abs(moved)), length(l.High), l.From())
		}
	}
	if r.State == Look {
		r.sayAim(in)
	}
}
