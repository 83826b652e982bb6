package assess

import (
	"math"
	"sort"

	"axlewright/loadpath"
)

// A response is what the links need to know of the load path at one torque.
type response [responses]float64

// The figures of a response, all in SI.
const (
	headRadial = iota // N
	headAxial         // N, pressing the rollers into the cup
	headRoller        // N, the hardest pressed roller
	tailRadial
	tailAxial
	tailRoller
	nearRadial
	nearAxial
	nearRoller
	nearLift   // N, towards the cap; negative presses into the casting
	nearAcross // N, along the cap's joint, magnitude
	nearThrust // N, on the adjuster along the wheel axis, outwards
	farRadial
	farAxial
	farRoller
	farLift
	farAcross
	farThrust
	wheelAxial  // m, away from the pinion
	pinionAxial // m, magnitude
	offsetMove  // m, magnitude
	angleMove   // rad, magnitude
	toothAcross // N, resultant of the tooth force square to the wheel axis
	wheelThrust // N, tooth force on the wheel along its axis, away from the pinion
	pinionForce // N, resultant of the tooth force square to the pinion axis
	pegLoad     // N
	pegMove     // m, of the back face towards the peg
	freeMove    // m, the same without the peg
	dialMove    // m
	responses
)

// respond takes the figures out of a state. cap is the unit vector in which
// the caps face.
func respond(s *loadpath.State, cap loadpath.Vector) response {
	var r response
	r[headRadial], r[headAxial], r[headRoller] = s.Head.Radial, s.Head.Axial, s.Head.MaxRoller
	r[tailRadial], r[tailAxial], r[tailRoller] = s.Tail.Radial, s.Tail.Axial, s.Tail.MaxRoller
	r[nearRadial], r[nearAxial], r[nearRoller] = s.Near.Radial, s.Near.Axial, s.Near.MaxRoller
	r[farRadial], r[farAxial], r[farRoller] = s.Far.Radial, s.Far.Axial, s.Far.MaxRoller
	r[nearLift], r[nearAcross] = splitJoint(s.Near.Force, cap)
	r[farLift], r[farAcross] = splitJoint(s.Far.Force, cap)
	r[nearThrust], r[farThrust] = s.Near.Axial, s.Far.Axial
	r[wheelAxial] = s.Mesh.WheelAxial
	r[pinionAxial] = math.Abs(s.Mesh.PinionAxial)
	r[offsetMove] = math.Abs(s.Mesh.Offset)
	r[angleMove] = math.Abs(s.Mesh.ShaftAngle)
	r[toothAcross] = math.Hypot(s.OnWheel.X, s.OnWheel.Z)
	r[wheelThrust] = s.OnWheel.Y
	r[pinionForce] = math.Hypot(s.OnPinion.Y, s.OnPinion.Z)
	r[pegLoad], r[pegMove], r[freeMove] = s.Peg.Load, s.Peg.Movement, s.Peg.FreeMovement
	r[dialMove] = s.Dial
	return r
}

// splitJoint splits the force of a side bearing on its seat into what lifts the cap
// and what pushes it along its joint.
func splitJoint(f, cap loadpath.Vector) (lift, across float64) {
	lift = f.X*cap.X + f.Z*cap.Z
	return lift, math.Abs(f.X*cap.Z - f.Z*cap.X)
}

// A curve is the response of one load path on one flank over torque, known at
// a few torques and taken as straight between them. Rollers and seats are so
// nearly straight that this costs well under a percent; the kink where a peg
// touches is a knot of its own.
type curve struct {
	torques []float64 // N·m, rising from zero
	rows    []response
}

// at returns one figure at a torque. Beyond the last knot the last slope goes on.
func (c *curve) at(figure int, torque float64) float64 {
	i := sort.SearchFloat64s(c.torques, torque)
	i = min(max(i, 1), len(c.torques)-1)
	t0, t1 := c.torques[i-1], c.torques[i]
	y0, y1 := c.rows[i-1][figure], c.rows[i][figure]
	return y0 + (y1-y0)*(torque-t0)/(t1-t0)
}
