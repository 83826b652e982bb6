package setup

import (
	"math"

	"axlewright/axle"
	"axlewright/calc/bolt"
	"axlewright/quantity"
)

// Side is a side of the axle, as somebody sees it who stands where SeenFrom says.
type Side string

// The sides.
const (
	Left  Side = "left"
	Right Side = "right"
)

// Sides lists them.
var Sides = []Side{Left, Right}

func (s Side) other() Side {
	if s == Left {
		return Right
	}
	return Left
}

// Adjusters are the two threaded side nuts and their locks. Tightening the one
// on the crown wheel's side pushes the crown wheel towards the pinion.
type Adjusters struct {
	Pitch     float64 // m, of the thread
	Notches   int     // round one adjuster
	HalfStep  bool    // the lock also holds half way between two notches
	WheelSide Side    // on which side the crown wheel sits
	SeenFrom  string  // from where left and right are meant: "the pinion flange"
}

func (s *sheet) adjusters(a Adjusters) {
	s.number("Adjusters.Pitch", a.Pitch, quantity.Length, a.Pitch >= 0.5*mm && a.Pitch <= 6*mm, "a thread pitch such as 1.5 mm")
	if a.Notches < 4 || a.Notches > 120 {
		s.bad("Adjusters.Notches", "%d, expected the notches round one adjuster such as 16", a.Notches)
	}
	choose(s, "Adjusters.WheelSide", "on which side does the crown wheel sit, left or right", a.WheelSide, Left, Right)
}

// notch is how far one notch moves an adjuster.
func (a Adjusters) notch() float64 {
	d, err := bolt.NotchAdvance(a.Pitch, a.Notches)
	if err != nil {
		return math.NaN() // the sheet has refused such adjusters
	}
	return d
}

// step is the smallest turn that the lock holds, in notches.
func (a Adjusters) step() float64 {
	if a.HalfStep {
		return 0.5
	}
	return 1
}

// seen is " (seen from the pinion flange)".
func (a Adjusters) seen() string {
	if a.SeenFrom == "" {
		return ""
	}
	return " (seen from " + a.SeenFrom + ")"
}

// A NotchResult is what one notch does.
type NotchResult struct {
	Answer
	Move Spread // m, of the crown wheel, both adjusters turned alike
	Lash Spread // m, change of lash
}

// OneNotch returns what one notch of both adjusters does to place and lash of the
// crown wheel.
func OneNotch(a Adjusters, m Mesh) (NotchResult, error) {
	var s sheet
	var r NotchResult
	s.adjusters(a)
	s.mesh(m)
	if err := s.err(); err != nil {
		return NotchResult{}, err
	}
	if s.waiting(&r.Answer) {
		return r, nil
	}
	sens, err := m.Sensitivity()
	if err != nil {
		return NotchResult{}, err
	}
	r.Move = exactly(a.notch())
	r.Lash = sens.Wheel.times(a.notch())
	r.notchLines(a, sens)
	r.done("One notch moves the crown wheel %s and its lash %s.", length(a.notch()), r.Lash.shown(quantity.Length))
	return r, nil
}

// notchLines enters what one notch does.
func (a *Answer) notchLines(adj Adjusters, sens Sensitivity) {
	a.line("", "P", "pitch of the adjuster's thread", adj.Pitch, quantity.Length, axle.Measured, "")
	a.line("÷", "N", "notches round it", float64(adj.Notches), quantity.Number, axle.Measured, "")
	a.computed("=", "Δa", "one notch moves the crown wheel", adj.notch(), quantity.Length, "")
	a.line("×", "j'", "lash per movement", sens.Wheel.Likely, quantity.Number, sens.Origin, sens.Source)
	change := sens.Wheel.times(adj.notch())
	a.computed("=", "Δj", "one notch changes lash, "+change.shown(quantity.Length), change.Likely, quantity.Length, "")
}
