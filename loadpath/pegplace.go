package loadpath

import "math"

// placePeg works out the peg as a stop of the system that holds the wheel, for
// either flank: the pad's friction turns with the torque.
func (e *Elastic) placePeg() {
	e.stops = [2]stop{}
	if e.axle.Peg == nil {
		return
	}
	for i, flank := range flanks {
		e.stops[i] = e.stop(flank)
	}
}

func (e *Elastic) stop(flank Flank) (st stop) {
	s, p := e.wheelSystem(), e.axle.Peg
	on, drag := e.pegLoads(s, flank)
	st.give = e.axle.Plate.Compliance[pegAxial][pegAxial] + e.pegCompliance()
	for i := range s.nu {
		for l := range s.nl {
			st.along[i] -= s.f[i][l] * on[l]
			st.drag[i] += s.f[i][l] * drag[l]
		}
	}
	for l := range s.nl {
		for m := range s.nl {
			// on holds the load of the pad, against the approach.
			st.byLoad[m] -= on[l] * s.g[l][m]
			st.give += on[l] * s.g[l][m] * on[m]
			st.slip += on[l] * s.g[l][m] * drag[m]
		}
	}
	for i := range s.nu {
		st.rest -= st.along[i] * s.rest.y[i]
	}
	st.on, st.rub = on, drag
	st.present = true
	st.gap = p.middleGap()
	return st
}

// pegLoads are the loads of one newton on the pad: square to the back face, and
// of its friction.
func (e *Elastic) pegLoads(s *system, flank Flank) (on, drag [maxLoads]float64) {
	a := &e.axle
	p := a.Peg
	arm, round := a.pegArm()
	first := s.loadsAt(wheelShaft)
	push := wheelShaft.wrench(Vector{Y: -1}, arm)
	rub := wheelShaft.wrench(round.times(a.rubbing(flank)*p.Friction), arm)
	for i := range push {
		on[first+i], drag[first+i] = push[i], rub[i]
	}
	if s.nl == maxLoads {
		on[footLoad] = 1
	}
	return on, drag
}

// pegArm is the pad's place from the hub and the direction round the wheel there.
func (a *Axle) pegArm() (arm, round Vector) {
	out, along := a.meshDirections()
	sin, cos := math.Sincos(a.Peg.Angle)
	at := out.times(cos).plus(along.times(sin))
	arm = at.times(a.Peg.Radius)
	arm.Y = a.Layout.MeshToPlate - a.Layout.MeshToHub + a.Peg.BackFaceY
	return arm, Vector{X: at.Z, Z: -at.X}
}

// rubbing is the sign of the pad's friction on the back face along the positive
// direction round the wheel: against the way the wheel turns.
func (a *Axle) rubbing(flank Flank) float64 {
	way := -1.0
	if a.Mesh.MeanPoint.cross(a.Mesh.onWheel(flank)).Y < 0 {
		way = 1
	}
	if a.Peg.AgainstTorque {
		way = -way
	}
	return way
}

// middleGap is the hot gap in the middle of the run-out.
func (p *Peg) middleGap() float64 {
	gap := p.Gap - p.Closing
	switch p.Spot {
	case Tight:
		gap += p.RunOut / 2
	case Slack:
		gap -= p.RunOut / 2
	}
	return gap
}

// spots are the hot gaps at the tightest and the slackest spot; where the spot
// of the measurement is unknown, each is the worse one.
func (p *Peg) spots() (tight, slack float64) {
	reach := p.RunOut / 2
	if p.Spot == Unknown {
		reach = p.RunOut
	}
	middle := p.middleGap()
	return middle - reach, middle + reach
}
