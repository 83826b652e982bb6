package gear

import "axlewright/calc/check"

// Flank says which flank of the crown wheel carries the load.
type Flank string

const (
	Drive Flank = "drive" // convex flank of the crown wheel on the concave flank of the pinion
	Coast Flank = "coast" // concave flank of the crown wheel on the convex flank of the pinion
)

// Hand is the hand of spiral of the pinion; the crown wheel has the other one.
type Hand string

const (
	LeftHand  Hand = "left"  // seen on its face, a tooth leans anticlockwise on its way outward
	RightHand Hand = "right" // seen on its face, a tooth leans clockwise on its way outward
)

func knownFlank(f Flank) check.Condition {
	return check.That("Flank", 0, f == Drive || f == Coast, "drive or coast")
}

func knownHand(h Hand) check.Condition {
	return check.That("PinionHand", 0, h == LeftHand || h == RightHand, "left or right")
}

// wheelThrustSign is −1 where the load along the tooth relieves the wheel's
// thrust away from its apex (drive) and +1 where it adds to it (coast).
func (f Flank) wheelThrustSign() float64 {
	if f == Drive {
		return -1
	}
	return 1
}
