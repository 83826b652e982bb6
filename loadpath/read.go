package loadpath

import "math"

// read enters what the placement of the wheel's system says, and of the pinion
// where it is in there. The pad's load joins the others.
func (e *Elastic) read(s *State, sys *system, solution *placement, plate *plateLoads, free float64) {
	p := solution
	if p.pegLoad > 0 {
		p = &sys.current
		*p = *solution
		for l := range sys.nl {
			p.load[l] += p.pegLoad * (sys.stop.on[l] + sys.stop.rub[l])
		}
	}
	if sys.hasPinion {
		e.readPinion(s, sys, p)
	}
	e.readWheel(s, sys, p, plate)
	if e.axle.Peg != nil {
		e.readPeg(s, sys, p, free)
	}
}

// readPinion enters what the pinion's placement says into the state.
func (e *Elastic) readPinion(s *State, sys *system, p *placement) {
	moved := sys.moved(p)
	e.readSeat(&s.Head, sys, p, &moved, head, pinionShaft)
	e.readSeat(&s.Tail, sys, p, &moved, tail, pinionShaft)
	s.Iterations += p.steps
	s.Residual = max(s.Residual, p.residual)
	u := sys.pointMovement(p, sys.loadsAt(pinionShaft))
	turn := pinionShaft.global(0, u[3], u[4])
	arm := Vector{0, e.axle.Mesh.MeanPoint.Y, e.axle.Mesh.MeanPoint.Z - e.axle.Mesh.PinionAxisZ}
	s.Pinion = Motion{pinionShaft.global(u[0], u[1], u[2]).plus(turn.cross(arm)), turn}
	if sys.spigot[0] >= 0 {
		s.Spigot = pinionShaft.global(0, -p.spigot[0], -p.spigot[1])
	}
}

// readWheel enters what the wheel's placement says.
func (e *Elastic) readWheel(s *State, sys *system, p *placement, plate *plateLoads) {
	a := &e.axle
	moved := sys.moved(p)
	e.readSeat(&s.Near, sys, p, &moved, near, wheelShaft)
	e.readSeat(&s.Far, sys, p, &moved, far, wheelShaft)
	if !sys.hasPinion {
		s.Iterations += p.steps
		s.Residual = max(s.Residual, p.residual)
	}
	u := sys.pointMovement(p, sys.loadsAt(wheelShaft))
	shift, turn := wheelShaft.global(u[0], u[1], u[2]), wheelShaft.global(0, u[3], u[4])
	at := func(r Vector) Vector { return shift.plus(turn.cross(r)) }

	// The plate bends on top of that: its slopes carry the teeth, which stand in
	// front of its mid-plane, sideways.
	bent := [platePlaces]float64{}
	for i := range bent {
		for j, load := range plate {
			bent[i] += a.Plate.Compliance[i][j] * load
		}
		bent[i] -= a.Plate.Compliance[i][pegAxial] * p.pegLoad
	}
	out, along := a.meshDirections()
	mean := Vector{a.Mesh.MeanPoint.X, -a.Layout.MeshToHub, a.Mesh.MeanPoint.Z}
	s.Wheel.Shift = at(mean).plus(Vector{Y: bent[meshAxial]}).
		plus(out.times(a.Layout.MeshToPlate*bent[meshRadial] + bent[meshOutward])).
		plus(along.times(a.Layout.MeshToPlate * bent[meshTangential])) // what gives round the axis only turns the wheel
	// A slope outwards turns the plate about the direction round the wheel, a
	// slope along the rim against the direction outwards.
	s.Wheel.Turn = turn.plus(along.times(-bent[meshRadial])).plus(out.times(bent[meshTangential]))

	dial := out.times(a.Plate.DialRadius)
	s.Dial = at(dial).Y + bent[dialAxial]
	s.Mesh = a.meshMovement(&s.Pinion, &s.Wheel)
	s.Axes = a.axisMovement(&s.Pinion, &s.Wheel)
}

// readPeg enters the peg's part. Between the approach and the gap lies what the
// peg itself gives.
func (e *Elastic) readPeg(s *State, sys *system, p *placement, free float64) {
	peg, st := e.axle.Peg, &sys.stop
	approach := st.gap + st.beyond(&p.y, sys.nu) - p.pegLoad*(st.give+st.slip-e.pegCompliance())
	s.Peg = PegState{
		Present: true, Gap: st.gap, Load: p.pegLoad,
		Movement: approach, FreeMovement: free,
		Friction: peg.Friction * p.pegLoad, DragTorque: peg.Friction * p.pegLoad * peg.Radius,
	}
}

// meshMovement is the motion of the members against each other.
func (a *Axle) meshMovement(pinion, wheel *Motion) MeshMovement {
	between := pinion.Shift.minus(wheel.Shift)
	m := MeshMovement{
		WheelAxial:  -between.Y,
		PinionAxial: between.X,
		Offset:      between.Z,
		// The wheel's axis turning towards −x and the pinion's towards −y open
		// the angle between them.
		ShaftAngle: wheel.Turn.Z - pinion.Turn.Z,
	}
	if a.Mesh.PinionAxisZ < 0 {
		m.Offset = -m.Offset
	}
	return m
}

// readSeat enters one bearing.
func (e *Elastic) readSeat(out *SeatLoad, sys *system, p *placement, moved *[maxSeatDOF]float64, seat int, m member) {
	first := sys.first(seat)
	r := &p.react[first/perSeat]
	u := p.y[first : first+perSeat]
	out.Force = m.global(r[0], r[1], r[2])
	out.Moment = m.global(0, r[3], r[4])
	out.Radial = math.Hypot(r[1], r[2])
	out.Facing = facing[seat]
	out.Axial = facing[seat] * r[0]
	out.Tilting = math.Hypot(r[3], r[4])
	out.MaxRoller, out.Loaded = p.contact[first/perSeat].MaxRoller, p.contact[first/perSeat].Loaded
	out.Approach = Approach{Axial: facing[seat] * u[0], Radial1: u[1], Radial2: u[2], Tilt1: u[3], Tilt2: u[4]}
	c := moved[first:]
	out.Movement = Motion{m.global(c[0], c[1], c[2]), m.global(0, c[3], c[4])}
}

// moved is the movement of the cups from the axle at rest.
func (s *system) moved(p *placement) (m [maxSeatDOF]float64) {
	var force [maxSeatDOF]float64
	var give [maxExtra]float64
	for b := range s.nd / perSeat {
		for i := range perSeat {
			force[perSeat*b+i] = p.react[b][i] - s.rest.react[b][i]
		}
	}
	for e := range s.ne {
		give[e] = p.y[s.nd+e] - s.rest.y[s.nd+e]
	}
	return s.cups(&force, &give, p.load[footLoad])
}

// pointMovement is the movement of a loaded point of a shaft from the axle at rest.
func (s *system) pointMovement(p *placement, first int) (u wrench) {
	for i := range u {
		v := 0.0
		for j := range s.nu {
			v += s.f[j][first+i] * (p.y[j] - s.rest.y[j])
		}
		for l := range s.nl {
			v += s.g[first+i][l] * p.load[l]
		}
		u[i] = v
	}
	return u
}
