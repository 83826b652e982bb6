package assess

import (
	"math"
	"sort"

	"axlewright/axle"
	"axlewright/loadpath"
)

// A response is what the links need to know of the load path at one torque.
// The pinion's part and the wheel's may come from different solutions: without
// cross terms in the casting neither feels the other beyond the tooth force.
type response [responses]float64

// The figures of a response, all in SI. Those before wheelFigures belong to the
// pinion.
const (
	headRadial = iota // N
	headAxial         // N, pressing the rollers into the cup
	tailRadial
	tailAxial
	pinionForce // N, resultant of the tooth force square to the pinion axis
	pinionX     // m, movement of the pinion at the mean point
	pinionY
	pinionZ
	pinionTurn // rad, about z
	wheelFigures
	nearRadial = iota - 1
	nearAxial
	nearLift   // N, towards the cap; negative presses into the casting
	nearAcross // N, along the cap's joint, magnitude
	farRadial
	farAxial
	farLift
	farAcross
	wheelThrust // N, tooth force on the wheel along its axis, away from the pinion
	wheelX      // m, movement of the wheel at the mean point
	wheelY
	wheelZ
	wheelTurn // rad, about z
	pegLoad   // N
	pegMove   // m, of the back face towards the peg
	dialMove  // m
	responses
)

// readPinion takes the pinion's figures out of a state.
func (r *response) readPinion(s *loadpath.State) {
	r[headRadial], r[headAxial] = s.Head.Radial, s.Head.Axial
	r[tailRadial], r[tailAxial] = s.Tail.Radial, s.Tail.Axial
	r[pinionForce] = math.Hypot(s.OnPinion.Y, s.OnPinion.Z)
	r[pinionX], r[pinionY], r[pinionZ] = s.Pinion.Shift.X, s.Pinion.Shift.Y, s.Pinion.Shift.Z
	r[pinionTurn] = s.Pinion.Turn.Z
}

// readWheel takes the wheel's. cap is the unit vector in which the caps face.
func (r *response) readWheel(s *loadpath.State, cap loadpath.Vector) {
	r[nearRadial], r[nearAxial] = s.Near.Radial, s.Near.Axial
	r[farRadial], r[farAxial] = s.Far.Radial, s.Far.Axial
	r[nearLift], r[nearAcross] = splitAtJoint(s.Near.Force, cap)
	r[farLift], r[farAcross] = splitAtJoint(s.Far.Force, cap)
	r[wheelThrust] = s.OnWheel.Y
	r[wheelX], r[wheelY], r[wheelZ] = s.Wheel.Shift.X, s.Wheel.Shift.Y, s.Wheel.Shift.Z
	r[wheelTurn] = s.Wheel.Turn.Z
	r[pegLoad], r[pegMove], r[dialMove] = s.Peg.Load, s.Peg.Movement, s.Dial
}

// splitAtJoint splits the force of a side bearing on its seat into what lifts
// the cap and what pushes it along its joint.
func splitAtJoint(f, cap loadpath.Vector) (lift, across float64) {
	return f.X*cap.X + f.Z*cap.Z, math.Abs(f.X*cap.Z - f.Z*cap.X)
}

// A curve is the response of one load path on one flank over torque, known at
// a few torques and taken as straight between them. Rollers and seats are so
// nearly straight that this costs well under a percent.
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

// paths is the response of pinion and wheel by flank.
type paths struct{ pinion, wheel [2]*curve }

// at returns one figure of the response.
func (p *paths) at(flank axle.Flank, figure int, torque float64) float64 {
	f := flankIndex(flank)
	if figure < wheelFigures {
		return p.pinion[f].at(figure, torque)
	}
	return p.wheel[f].at(figure, torque)
}

// A movement is one way in which the members move against each other at the
// mesh.
type movement int

// The movements.
const (
	wheelAxial  movement = iota // m, wheel away from the pinion: negative is no harm
	pinionAxial                 // m, magnitude
	offsetMove                  // m, magnitude
	angleMove                   // rad, magnitude
)

// moved returns a movement of the mesh.
func (p *paths) moved(flank axle.Flank, m movement, torque float64) float64 {
	switch m {
	case wheelAxial:
		return p.at(flank, wheelY, torque) - p.at(flank, pinionY, torque)
	case pinionAxial:
		return math.Abs(p.at(flank, pinionX, torque) - p.at(flank, wheelX, torque))
	case offsetMove:
		return math.Abs(p.at(flank, pinionZ, torque) - p.at(flank, wheelZ, torque))
	default:
		return math.Abs(p.at(flank, wheelTurn, torque) - p.at(flank, pinionTurn, torque))
	}
}
