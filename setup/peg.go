package setup

import (
	"fmt"
	"math"
	"slices"

	"axlewright/axle"
	"axlewright/calc/bolt"
	"axlewright/quantity"
)

// A Window is the range of gaps in which the peg does its work and does not rub,
// as the load path of this build gives it: cold, at the tight spot. The zero
// Window was not worked out, and the custom of the trade takes its place.
type Window struct {
	Low, High float64 // m; a High of zero is no upper end
	Aim       float64 // m; zero is the middle
	Shut      bool    // no gap pleases everything: Low is then what road and pad ask for
	Reason    string  // what sets its ends, in words
}

func (w Window) known() bool { return w.Low > 0 || w.High > 0 || w.Shut }

// limit is the window as a range.
func (w Window) limit(spec Spec) Limit {
	l := Limit{Item: PegTight, Low: w.Low, High: w.High, Tag: WorkedOut, For: w.Reason}
	if w.Aim > 0 {
		l.AimLow, l.AimHigh = w.Aim, w.Aim
	}
	if w.High == 0 || w.Shut {
		l.High = max(w.Low, spec.Limit(PegSlack).High)
		l.For += "; its upper end is the custom of the trade"
	}
	return l
}

// target is the gap at the tight spot to aim for.
func (w Window) target() float64 {
	switch {
	case w.Aim > 0:
		return w.Aim
	case w.Shut || w.High == 0:
		return w.Low
	}
	return (w.Low + w.High) / 2
}

// Spot says where the back face stood when the peg was nipped up to touch.
type Spot string

// The spots.
const (
	TightSpot   Spot = "tight spot" // found by turning the wheel right round
	SlackSpot   Spot = "slack spot"
	UnknownSpot Spot = "anywhere"
)

// Spots lists them.
var Spots = []Spot{TightSpot, SlackSpot, UnknownSpot}

// PegSetting asks whether a peg is set rightly, or how far to turn it back.
type PegSetting struct {
	Spec        Spec
	Window      Window
	Pitch       float64 // m, of the peg's thread
	Angle       Reading // rad, turned back from touch; left out, the answer says how far
	RunOut      Reading // m, full reading of the back face
	Spot        Spot
	SidePreload bool      // side preload was final when the peg was set
	Locked      []Reading // m, gap at four places or more round the wheel, read after the lock nut was tightened
	Touching    bool      // somewhere in a turn the wheel touches the peg
}

// Touches says whether the crown wheel touches the peg unloaded: it was seen to,
// or a gap read after locking is none, or, before one was read, the sum leaves
// none at the tight spot.
func (in PegSetting) Touches() bool {
	read := in.lockedGaps()
	if in.Touching || len(read) > 0 && slices.Min(read) <= 0 {
		return true
	}
	if len(read) > 0 || !in.Angle.Taken || !in.RunOut.Taken || in.Spot == "" {
		return false
	}
	tight, _ := in.offsets()
	return in.Angle.SI/(2*math.Pi)*in.Pitch+tight <= 0
}

// lockedGaps are the gaps that were read after locking.
func (in PegSetting) lockedGaps() []float64 {
	var gaps []float64
	for _, g := range in.Locked {
		if g.Taken {
			gaps = append(gaps, g.SI)
		}
	}
	return gaps
}

// A PegResult is how the peg stands.
type PegResult struct {
	Answer
	Gap          float64 // m, where it was nipped up
	Tight, Slack float64 // m, at the tight and the slack spot: computed, or as read once it is locked
	Aim          float64 // m, gap to set where the peg is nipped up
	AimAngle     float64 // rad, to turn back for it
	Flats        float64 // of a hexagon, the same
}

const hexFlat = math.Pi / 3

// SetPeg holds the gap of a peg against its window, at the tight and at the
// slack spot.
//
// The gap by pitch and angle is geometry; that the lock nut moves the screw by
// 0.03 to 0.08 mm is a custom of the trade, so nothing is fine before it has been
// measured again.
func SetPeg(in PegSetting) (PegResult, error) {
	var s sheet
	var r PegResult
	s.spec(in.Spec)
	s.number("Pitch", in.Pitch, quantity.Length, in.Pitch >= 0.5*mm && in.Pitch <= 4*mm, "the pitch of the peg's thread such as 1.5 mm")
	s.optional("Angle", in.Angle, quantity.Angle, 0, 4*math.Pi, "the angle turned back such as 60 deg")
	s.need("RunOut", "run-out of the back face", in.RunOut, quantity.Length, 0, 3*mm, "a full reading such as 0.08 mm")
	choose(&s, "Spot", "was the peg nipped up at the tight spot, at the slack spot or anywhere", in.Spot, TightSpot, SlackSpot, UnknownSpot)
	s.number("Window.Low", in.Window.Low, quantity.Length, in.Window.Low >= 0 && in.Window.Low < 5*mm, "the lower end of the window, zero or more")
	s.number("Window.High", in.Window.High, quantity.Length, in.Window.Shut || in.Window.High == 0 || in.Window.High >= in.Window.Low, "an upper end that is not below the lower, or zero for none")
	for i, g := range in.Locked {
		s.optional(fmt.Sprintf("Locked[%d]", i), g, quantity.Length, 0, 5*mm, "a gap such as 0.20 mm, 0 where it touches")
	}
	if err := s.err(); err != nil {
		return PegResult{}, err
	}
	if in.Touching {
		r.settle(Stop, "The crown wheel touches the peg unloaded: it would burn.")
		r.say("Back the peg off before the wheel turns again.")
	}
	if s.waiting(&r.Answer) {
		return r, nil
	}
	if err := r.aim(in); err != nil {
		return PegResult{}, asFinding(err)
	}
	if in.Angle.Taken {
		if err := r.set(in); err != nil {
			return PegResult{}, asFinding(err)
		}
	}
	r.judge(in, in.lockedGaps())
	return r, nil
}

// offsets are what the tight and the slack spot have against the place where
// the peg was nipped up.
func (in PegSetting) offsets() (tight, slack float64) {
	switch in.Spot {
	case TightSpot:
		return 0, in.RunOut.SI
	case SlackSpot:
		return -in.RunOut.SI, 0
	}
	return -in.RunOut.SI, in.RunOut.SI
}

// aim finds the gap to set: by the window at the tight spot, else by the custom
// of the trade where it is nipped up, but leaving the tight spot its least.
func (r *PegResult) aim(in PegSetting) error {
	tight, _ := in.offsets()
	if in.Window.known() {
		r.Aim = in.Window.target() - tight
	} else {
		r.Aim = max(in.Spec.Limit(PegGap).Target(), in.Spec.Limit(PegTight).Low-tight)
	}
	var err error
	r.AimAngle, err = bolt.BackOffAngle(r.Aim, in.Pitch)
	r.Flats = r.AimAngle / hexFlat
	return err
}

// set works out the gap from the angle turned back.
func (r *PegResult) set(in PegSetting) error {
	gap, err := bolt.ScrewAdvance(in.Angle.SI, in.Pitch)
	if err != nil {
		return err
	}
	tight, slack := in.offsets()
	r.Gap, r.Tight, r.Slack = gap, gap+tight, gap+slack
	r.line("", "P", "pitch of the peg's thread", in.Pitch, quantity.Length, axle.Measured, "")
	r.measured("×", "φ/360°", "turned back from touch", in.Angle, quantity.Angle)
	r.computed("=", "g", "gap where it was nipped up, the "+string(in.Spot), gap, quantity.Length, "pitch times angle over a turn")
	r.measured("−", "t", "run-out of the back face", in.RunOut, quantity.Length)
	r.computed("=", "g_min", "gap at the tight spot", r.Tight, quantity.Length, "")
	r.computed("", "g_max", "gap at the slack spot", r.Slack, quantity.Length, "")
	if in.Spot == TightSpot { // the run-out only opens the gap
		r.Sum[3].Sign, r.Sum[3].Meaning = "", "run-out, which opens the gap from here on"
		r.Sum[4].Sign = ""
	}
	return nil
}
