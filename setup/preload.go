package setup

import (
	"axlewright/axle"
	"axlewright/calc/bearing"
	"axlewright/quantity"
)

// Bearings says whether bearings have run before.
type Bearings string

// The two.
const (
	NewBearings  Bearings = "new"
	UsedBearings Bearings = "used"
)

// AllBearings lists them.
var AllBearings = []Bearings{NewBearings, UsedBearings}

// Seal says whether the pinion seal was in when the torque was read.
type Seal string

// The two.
const (
	SealOut Seal = "out"
	SealIn  Seal = "in"
)

// AllSeals lists them.
var AllSeals = []Seal{SealOut, SealIn}

// TorqueTool says how a turning torque was read.
type TorqueTool string

// The tools.
const (
	TorqueWrench  TorqueTool = "torque wrench"
	SpringBalance TorqueTool = "string and spring balance"
)

// TorqueTools lists them.
var TorqueTools = []TorqueTool{TorqueWrench, SpringBalance}

// Turning says when it was read.
type Turning string

// The two.
const (
	WhileTurning Turning = "while turning steadily"
	BreakingAway Turning = "as it broke away"
)

// PinionPreload asks whether the pinion's bearings are preloaded rightly.
type PinionPreload struct {
	Spec     Spec
	Bearings Bearings
	Seal     Seal
	OwnSeal  Reading // N·m, drag of this seal where it was measured; else the trade's figure
	Tool     TorqueTool
	Torque   Reading // N·m, TorqueWrench
	Pull     Reading // N, SpringBalance
	Radius   Reading // m, from the axis to the string; with a torque wrench optional, for the pull that belongs to it
	When     Turning
}

// A PreloadResult is what a turning torque says.
type PreloadResult struct {
	Answer
	Torque            float64 // N·m, as read
	Drag              Spread  // N·m, of the bearings alone
	Allowed           Limit
	PullLow, PullHigh float64 // N, that belong to the allowed range at Radius, seal as it is; zero without a radius
	Meant             float64 // N·m, the torque if inch and foot were mixed up; zero where that is not suspected
}

// JudgePinionPreload holds the turning torque of the pinion against its range.
func JudgePinionPreload(in PinionPreload) (PreloadResult, error) {
	var s sheet
	var r PreloadResult
	s.spec(in.Spec)
	choose(&s, "Bearings", "are the bearings new or used", in.Bearings, NewBearings, UsedBearings)
	choose(&s, "Seal", "is the seal in or out", in.Seal, SealOut, SealIn)
	s.optional("OwnSeal", in.OwnSeal, quantity.Torque, 0, 5, "the seal's own drag such as 0.4 N·m")
	choose(&s, "Tool", "read with a torque wrench or with string and spring balance", in.Tool, TorqueWrench, SpringBalance)
	const radius = "a radius such as 32 mm"
	switch in.Tool {
	case TorqueWrench:
		s.need("Torque", "turning torque of the pinion", in.Torque, quantity.Torque, 0, 500, "a torque such as 2.3 N·m or 20 lbf·in")
		s.optional("Radius", in.Radius, quantity.Length, 5*mm, 0.3, radius)
	case SpringBalance:
		s.need("Pull", "pull on the spring balance", in.Pull, quantity.Force, 0, 5000, "a pull such as 70 N or 7.2 kgf")
		s.need("Radius", "radius from the axis to the string", in.Radius, quantity.Length, 5*mm, 0.3, radius)
	}
	choose(&s, "When", "was it read while turning steadily or as it broke away", in.When, WhileTurning, BreakingAway)
	if err := s.err(); err != nil {
		return PreloadResult{}, err
	}
	if s.waiting(&r.Answer) {
		return r, nil
	}
	r.read(in)
	seal := r.takeOffSeal(in)
	r.Allowed = in.Spec.Limit(in.item())
	if err := r.pulls(in, seal); err != nil {
		return PreloadResult{}, err
	}
	r.judge(in, seal)
	return r, nil
}

func (in PinionPreload) item() Item {
	if in.Bearings == UsedBearings {
		return PinionUsed
	}
	return PinionNew
}

// read enters the torque as it was read.
func (r *PreloadResult) read(in PinionPreload) {
	r.Torque = in.Torque.SI
	if in.Tool == SpringBalance {
		r.Torque = in.Pull.SI * in.Radius.SI
		r.measured("", "F", "pull on the spring balance", in.Pull, quantity.Force)
		r.measured("×", "r", "from the axis to the string", in.Radius, quantity.Length)
		r.computed("=", "M", "turning torque", r.Torque, quantity.Torque, "pull times radius")
		return
	}
	r.measured("", "M", "turning torque", in.Torque, quantity.Torque)
}

// takeOffSeal leaves the drag of the bearings.
func (r *PreloadResult) takeOffSeal(in PinionPreload) Spread {
	seal := exactly(0)
	switch {
	case in.Seal == SealIn && in.OwnSeal.Taken:
		seal = exactly(in.OwnSeal.SI)
		r.measured("−", "M_S", "drag of this seal", in.OwnSeal, quantity.Torque)
	case in.Seal == SealIn:
		l := in.Spec.Limit(SealDrag)
		seal = Spread{l.Low, l.Target(), l.High}
		r.line("−", "M_S", "drag of the seal, "+l.Range(), seal.Likely, quantity.Torque, axle.Trade, l.From())
	}
	r.Drag = Spread{r.Torque - seal.High, r.Torque - seal.Likely, r.Torque - seal.Low}
	r.computed("=", "M_B", "drag of the bearings alone", r.Drag.Likely, quantity.Torque, "")
	return seal
}

// pulls turns the range round, into what a spring balance should show.
func (r *PreloadResult) pulls(in PinionPreload, seal Spread) error {
	if !in.Radius.Taken || r.Allowed.Vague {
		return nil
	}
	var err error
	if r.PullLow, err = bearing.SpringBalancePull(r.Allowed.Low+seal.Likely, in.Radius.SI); err != nil {
		return err
	}
	if r.PullHigh, err = bearing.SpringBalancePull(r.Allowed.High+seal.Likely, in.Radius.SI); err != nil {
		return err
	}
	r.note("At a radius of %s the balance should show %s to %s.", length(in.Radius.SI), pull(r.PullLow), pull(r.PullHigh))
	return nil
}

func (r *PreloadResult) judge(in PinionPreload, seal Spread) {
	l := r.Allowed
	label := "drag of the " + string(in.Bearings) + " bearings"
	check := l.judge(label, r.Drag.Likely)
	if in.When == BreakingAway {
		r.settle(Look, "It was read as it broke away, which is more than the bearings drag.")
		r.say("Turn the pinion 10 to 20 times, then read again while it turns steadily.")
	}
	lowIn, highIn := l.Holds(r.Drag.Low), l.Holds(r.Drag.High)
	between := r.Drag.Low < l.Low && r.Drag.High > l.High
	if !l.Vague && (lowIn != highIn || between) {
		check.State = Look
		check.Reason = capital(label) + " is " + r.Drag.shown(quantity.Torque) + ": the seal leaves open whether that is within " + l.Range() + " (" + l.From() + ")."
		r.say("Read it again with the seal out, or measure what the seal drags by itself.")
	}
	r.take(check)
	r.askForFoot(in, l, seal)
	if len(r.Ask) == 0 && !l.Vague && lowIn == highIn && !l.Holds(r.Drag.Likely) {
		r.sayChange(r.Drag.Likely < l.Low)
	}
	r.finish()
	r.tellOthers(l)
}

// askForFoot queries a torque that only a mix-up of inch and foot explains.
func (r *PreloadResult) askForFoot(in PinionPreload, l Limit, seal Spread) {
	meant, suspected := quantity.MeantTorque(r.Torque, l.Low+seal.Low, l.High+seal.High)
	if !suspected && !l.Vague && !l.Holds(r.Drag.Likely) {
		suspected = quantity.TwelveFold(r.Torque, l.Target()+seal.Likely)
		meant = r.Torque / 12
		if r.Torque < l.Target() {
			meant = r.Torque * 12
		}
	}
	query := in.Spec.Limit(PinionQuery)
	switch {
	case suspected:
		r.Meant = meant
		other, written := "inches", "feet"
		if meant > r.Torque {
			other, written = written, other
		}
		r.settle(Look, "%s looks like %s read on the wrong scale: inch and foot differ 12 times.", torque(r.Torque), torque(meant))
		r.ask("Was it read in pound-%s and written as pound-%s? Then it is %s.", other, written, torque(meant))
	case r.Torque > query.High && l.High < query.High:
		r.settle(Look, "%s is more than any pinion preload of this kind.", torque(r.Torque))
		r.ask("Is it really %s, and was it read in pound-inches or in pound-feet?", torque(r.Torque))
	}
}

// sayChange says which way the preload has to go.
func (r *PreloadResult) sayChange(more bool) {
	if more {
		r.say("More preload: a thinner spacer or shim between the bearings, or crush the crush tube a little further.")
		return
	}
	r.say("Less preload: a thicker spacer or shim between the bearings. A crush tube is not slackened: fit a new one.")
}
