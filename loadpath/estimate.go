package loadpath

import (
	"math"

	"axlewright/calc/bearing"
	"axlewright/calc/check"
)

// Estimate is the statically determinate load path of the handbooks, for a
// first guess and to hold the elastic one against. Each pair of bearings
// carries at its pressure centres as a beam on two supports; thrust is shared
// by the rule for pairs without preload, with the thrust that radial load
// induces; seats are rigid for this. How far the wheel goes is one spring:
// axial give of the loaded side bearing and its seat, lean of the wheel on the
// radial give of both, and its plate. The peg works against that spring.
//
// It has no preload, no caps' direction, no bending of shafts, and no tilt of
// bearings: rollers are loaded as in an even half circle, seats report no
// movement and no moment, and change of offset and shaft angle are not
// estimated but left at zero.
type Estimate struct {
	axle Axle
}

var _ Path = (*Estimate)(nil)

// NewEstimate checks an axle for the determinate path.
func NewEstimate(a *Axle) (*Estimate, error) {
	if err := a.Validate(); err != nil {
		return nil, err
	}
	for _, r := range []bearing.Rollers{a.Head, a.Tail, a.Near, a.Far} {
		if _, err := bearing.NewRow(r, 1); err != nil {
			return nil, err
		}
	}
	return &Estimate{axle: *a}, nil
}

// Solve returns the estimated state.
func (e *Estimate) Solve(flank Flank, torque float64) (State, error) {
	a := &e.axle
	if err := check.All("loadpath.Estimate.Solve",
		check.That("flank", 0, flank == Drive || flank == Coast, "drive or coast"),
		check.NotNegative("torque", torque),
	); err != nil {
		return State{}, err
	}
	s := State{Flank: flank, Torque: torque, Estimate: true, Converged: true}
	s.OnWheel = a.Mesh.onWheel(flank).times(torque)
	s.OnPinion = s.OnWheel.times(-1)
	arm := Vector{0, a.Mesh.MeanPoint.Y, a.Mesh.MeanPoint.Z - a.Mesh.PinionAxisZ}
	s.PinionTorque = math.Abs(arm.cross(s.OnPinion).X)

	// Pinion: back to back, pressure centres outside the rollers.
	l := &a.Layout
	headAt, tailAt := l.GearToHead-loadCentre(a.Head), l.GearToHead+l.HeadToTail+loadCentre(a.Tail)
	if err := determinate(pinionShaft, s.OnPinion, arm, headAt, tailAt, pairOf{
		&s.Head, &s.Tail, a.Head, a.Tail, bearing.Indirect,
	}); err != nil {
		return State{}, err
	}
	if s.OnPinion.X >= 0 {
		s.Pinion.Shift.X = axialGive(s.Head.Axial, a.Head, a.HeadSeat.Axial)
	} else {
		s.Pinion.Shift.X = -axialGive(s.Tail.Axial, a.Tail, a.TailSeat.Axial)
	}
	s.Mesh.PinionAxial = s.Pinion.Shift.X

	// The peg takes its load off the wheel's spring.
	free, err := e.wheelAxial(flank, torque)
	if err != nil {
		return State{}, err
	}
	if p := a.Peg; p != nil {
		gap := p.middleGap()
		s.Peg = PegState{Present: true, Gap: gap, Movement: free, FreeMovement: free}
		give := 0.0
		if p.Stiffness > 0 {
			give = 1 / p.Stiffness
		}
		if s.OnWheel.Y > 0 && free > gap {
			s.Peg.Load = (free - gap) / (free/s.OnWheel.Y + give)
			s.Peg.Movement = gap + s.Peg.Load*give
			s.Peg.Friction = p.Friction * s.Peg.Load
			s.Peg.DragTorque = s.Peg.Friction * p.Radius
		}
		near, wide := p.spots()
		if s.Peg.TouchTight, err = e.touch(flank, near, 2*torque); err != nil {
			return State{}, err
		}
		if s.Peg.TouchSlack, err = e.touch(flank, wide, 2*torque); err != nil {
			return State{}, err
		}
	}
	if s.Far, s.Near, err = e.sides(flank, torque, s.Peg.Load); err != nil {
		return State{}, err
	}
	s.Wheel.Shift.Y = free
	if s.Peg.Load > 0 {
		s.Wheel.Shift.Y = s.Peg.Movement
	}
	s.Mesh.WheelAxial, s.Dial = s.Wheel.Shift.Y, s.Wheel.Shift.Y
	return s, nil
}

// sides are the loads of the side bearings: face to face, the pressure centres
// inside the rollers.
func (e *Estimate) sides(flank Flank, torque, pegLoad float64) (far, near SeatLoad, err error) {
	a := &e.axle
	force := a.Mesh.onWheel(flank).times(torque)
	moment := a.Mesh.MeanPoint.cross(force)
	if pegLoad > 0 {
		push := Vector{Y: -pegLoad}
		arm, _ := a.pegArm()
		force, moment = force.plus(push), moment.plus(arm.cross(push))
	}
	farAt, nearAt := -a.Layout.Far+loadCentre(a.Far), a.Layout.Near-loadCentre(a.Near)
	err = determinateMoment(wheelShaft, force, moment, farAt, nearAt, pairOf{&far, &near, a.Far, a.Near, bearing.Direct})
	return far, near, err
}

// wheelAxial is how far the wheel goes without the peg.
func (e *Estimate) wheelAxial(flank Flank, torque float64) (float64, error) {
	a := &e.axle
	far, near, err := e.sides(flank, torque, 0)
	if err != nil {
		return 0, err
	}
	in, to := a.NearSeat.compliances()
	inFar, toFar := a.FarSeat.compliances()
	give := (max(in, to) + 1/a.NearSeat.Across + max(inFar, toFar) + 1/a.FarSeat.Across) / 2
	span := a.Layout.Near + a.Layout.Far
	radius := math.Hypot(a.Mesh.MeanPoint.X, a.Mesh.MeanPoint.Z)
	thrust := a.Mesh.onWheel(flank).Y * torque
	w := thrust * (radius*radius*give/(span*span) + a.Plate.Compliance[meshAxial][meshAxial])
	if thrust >= 0 {
		return w + axialGive(near.Axial, a.Near, a.NearSeat.Axial), nil
	}
	return w - axialGive(far.Axial, a.Far, a.FarSeat.Axial), nil
}

// touch closes in on the torque at which the wheel has come the gap closer.
func (e *Estimate) touch(flank Flank, gap, reach float64) (Touch, error) {
	if gap <= 0 {
		return Touch{0, true}, nil
	}
	if w, err := e.wheelAxial(flank, reach); err != nil || w < gap {
		return Touch{}, err
	}
	low, high := 0.0, reach
	for range 60 {
		mid := (low + high) / 2
		w, err := e.wheelAxial(flank, mid)
		if err != nil {
			return Touch{}, err
		}
		if w < gap {
			low = mid
		} else {
			high = mid
		}
	}
	return Touch{high, true}, nil
}

// axialGive is how far a bearing and its seat give under a thrust on all rollers.
func axialGive(thrust float64, r bearing.Rollers, seat float64) float64 {
	sin := math.Sin(r.CupAngle)
	approach, err := bearing.ApproachUnderLoad(thrust/(float64(r.Count)*sin), r.Length)
	if err != nil {
		return math.Inf(1) // a thrust below zero, which the rule for pairs never gives
	}
	return thrust/seat + approach/sin
}

// pairOf is a pair of bearings, A at the lower end of the shaft's axis.
type pairOf struct {
	a, b     *SeatLoad
	rollersA bearing.Rollers
	rollersB bearing.Rollers
	mounting bearing.Mounting
}

// determinate shares a force at r from the reference point between two
// supports at places along the axis from the same point.
func determinate(m member, force, r Vector, atA, atB float64, p pairOf) error {
	return determinateMoment(m, force, r.cross(force), atA, atB, p)
}

func determinateMoment(m member, force, moment Vector, atA, atB float64, p pairOf) error {
	thrust, f1, f2 := m.local(force)
	_, m1, m2 := m.local(moment)
	span := atB - atA
	b1, b2 := (m2-f1*atA)/span, (-m1-f2*atA)/span
	a1, a2 := f1-b1, f2-b2
	ra, rb := math.Hypot(a1, a2), math.Hypot(b1, b2)
	induced := func(r bearing.Rollers, radial float64) (float64, error) {
		f, err := bearing.LoadFactors(r.CupAngle)
		if err != nil {
			return 0, err
		}
		return bearing.InducedThrust(radial, f.Y, bearing.HalfOverY)
	}
	sa, err := induced(p.rollersA, ra)
	if err != nil {
		return err
	}
	sb, err := induced(p.rollersB, rb)
	if err != nil {
		return err
	}
	// The rule counts a thrust from A towards B; it presses A home when the
	// cones stand back to back.
	pair, err := bearing.PairThrust(bearing.PairParams{Mounting: p.mounting, InducedA: sa, InducedB: sb, Thrust: thrust})
	if err != nil {
		return err
	}
	facing := 1.0
	if p.mounting == bearing.Direct {
		facing = -1
	}
	for _, q := range []struct {
		out              *SeatLoad
		rollers          bearing.Rollers
		facing, axial    float64
		r1, r2, at, span float64
	}{{p.a, p.rollersA, facing, pair.AxialA, a1, a2, atA, span}, {p.b, p.rollersB, -facing, pair.AxialB, b1, b2, atB, span}} {
		q.out.Axial, q.out.Radial = q.axial, math.Hypot(q.r1, q.r2)
		q.out.Force = m.global(q.facing*q.axial, q.r1, q.r2)
		q.out.MaxRoller = 4.08 * q.out.Radial / (float64(q.rollers.Count) * math.Cos(q.rollers.CupAngle))
		q.out.Loaded = (q.rollers.Count + 1) / 2
	}
	return nil
}

func loadCentre(r bearing.Rollers) float64 { return r.PitchDiameter / 2 * math.Tan(r.CupAngle) }
