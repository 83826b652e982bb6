package assess

import "axlewright/axle"

// moves is the mesh going out of where its teeth were lapped. The
// limits are those of the casting: how far until teeth of this size no longer
// carry where they should.
func moves(m movement) func(*unit, *notes) (limit, error) {
	return func(u *unit, n *notes) (limit, error) {
		limits := &u.axle.Casting.Limits
		allowed, dimension := limits.WheelAxial.Value, "m"
		switch m {
		case pinionAxial:
			allowed = limits.PinionAxial.Value
		case offsetMove:
			allowed = limits.Offset.Value
		case angleMove:
			allowed, dimension = limits.ShaftAngle.Value, "rad"
		}
		n.say("limit", "how far the mesh may move for wheels of this size", allowed, dimension, "the casting's limits in the catalogue")
		return func(flank axle.Flank, torque float64, n *notes) (float64, float64) {
			moved := u.doubts.Movement.Value * u.moved(flank, m, torque)
			n.say("moved", "movement at the mesh", moved, dimension, "load path")
			return moved, allowed
		}, nil
	}
}
