package loadpath

import (
	"axlewright/calc/bearing"
)

// system is one set of shafts that move together: the pinion, or the wheel, or
// both where the casting couples them.
type system struct {
	structure
	equilibrium
	hasPinion, hasWheel bool
	facing              [maxSeats]float64
	offset              [maxSeatDOF]float64 // preload, cone into cup at assembly

	rest    placement    // assembled, without torque and without the peg
	current placement    // the one being sought
	last    [2]placement // the last one of either flank
	started [2]bool

	lastTorque [2]float64 // N·m
}

// placement is a balanced place of a system.
type placement struct {
	y        [maxUnknown]float64
	load     [maxLoads]float64 // at the loaded points, the peg's included
	react    [maxSeats][perSeat]float64
	contact  [maxSeats]bearing.Contact
	pegLoad  float64
	steps    int
	residual float64
}

// name is for errors.
func (s *system) name() string {
	switch {
	case s.hasPinion && s.hasWheel:
		return "axle"
	case s.hasPinion:
		return "pinion"
	}
	return "wheel"
}

// first is the number of the first unknown of a bearing of the system.
func (s *system) first(seat int) int {
	if s.hasPinion {
		return perSeat * seat
	}
	return perSeat * (seat - far)
}

// loadsAt gives the first column of the loads of a shaft.
func (s *system) loadsAt(m member) int {
	if m == wheelShaft && s.hasPinion {
		return 5
	}
	return 0
}

// prepare builds the structure and settles the axle without torque.
func (s *system) prepare(a *Axle, p *prepared) error {
	s.nd, s.ne = 0, 0
	s.seat = [maxSeatDOF][maxSeatDOF]float64{}
	s.extra = [maxSeatDOF][maxExtra]float64{}
	s.foot = [maxSeatDOF]float64{}
	s.offset = [maxSeatDOF]float64{}
	s.linear = &s.structure
	s.stop = stop{}
	var shafts [2]mounted
	count, footFoot := 0, 0.0
	bearings := 0
	take := func(seat int, preload float64) {
		s.rows[bearings], s.facing[bearings] = &p.rows[seat], facing[seat]
		s.offset[perSeat*bearings] = facing[seat] * preload / 2
		tilt := groundSpring * s.arm * s.arm
		s.ground[bearings] = [perSeat]float64{groundSpring, groundSpring, groundSpring, tilt, tilt}
		bearings++
	}
	if s.hasPinion {
		shafts[count] = mounted{&p.pinion, a.Pinion.SpigotStiffness}
		count++
		s.diagonal(0, &a.HeadSeat)
		s.diagonal(perSeat, &a.TailSeat)
		s.arm = a.Layout.HeadToTail
		take(head, a.PinionPreload)
		take(tail, a.PinionPreload)
	}
	if s.hasWheel {
		shafts[count] = mounted{beam: &p.centre}
		count++
		first := perSeat * bearings
		// Bearing 1 of the wheel's shaft is the far one, at the lower y.
		c1, c2 := a.capAxis()
		s.ne = 2
		s.inward[0], s.toward[0] = s.sided(first, 0, &a.FarSeat, c1, c2)
		s.inward[1], s.toward[1] = s.sided(first+perSeat, 1, &a.NearSeat, c1, c2)
		s.arm = a.Layout.Near + a.Layout.Far
		take(far, a.SidePreload)
		take(near, a.SidePreload)
	}
	if a.Casting != nil {
		var err error
		if footFoot, err = s.cast(a); err != nil {
			return err
		}
	}
	if !s.assemble(shafts[:count], &s.offset, footFoot) {
		return &NotConverged{System: s.name(), Residual: 1}
	}
	return s.settle()
}

// settle finds the axle without torque.
func (s *system) settle() error {
	s.started = [2]bool{}
	s.rest = placement{}
	for b := range s.nd / perSeat {
		s.rest.y[perSeat*b] = s.offset[perSeat*b]
	}
	s.setLoads(&s.rest.load)
	if err := s.find(&s.rest); err != nil {
		return err
	}
	return nil
}

// balance finds the placement under its load, from the last one of the flank.
func (s *system) balance(p *placement, flank Flank, torque float64) error {
	i := flankIndex(flank)
	s.setLoads(&p.load)
	if s.started[i] {
		// All grows nearly with the torque, which saves a step.
		p.y = s.last[i].y
		if ratio := torque / s.lastTorque[i]; ratio > 0.2 && ratio < 5 {
			for j := range s.nu {
				p.y[j] += (ratio - 1) * (p.y[j] - s.rest.y[j])
			}
		}
	} else {
		p.y = s.rest.y
		if s.loose() {
			s.firm(&p.y)
		}
	}
	if s.stop.present && s.stop.jams() {
		if err := s.findRubbing(p); err != nil {
			err.Flank, err.Torque = flank, torque
			return err
		}
		return nil
	}
	err := s.find(p)
	if err != nil && s.started[i] { // once more from rest
		p.y = s.rest.y
		s.firm(&p.y)
		steps := p.steps
		err = s.find(p)
		p.steps += steps
	}
	if err != nil && s.stop.present && s.stop.drag != ([maxUnknown]float64{}) {
		err = s.findRubbing(p)
	}
	if err != nil {
		err.Flank, err.Torque = flank, torque
		return err
	}
	s.last[i], s.started[i], s.lastTorque[i] = *p, true, torque
	return nil
}

// find runs the search from the placement's y.
func (s *system) find(p *placement) *NotConverged {
	p.steps, p.residual = s.solve(&p.y)
	p.react, p.contact, p.pegLoad = s.react, s.contact, s.pegLoad
	if !(p.residual <= acceptable) {
		return &NotConverged{System: s.name(), Residual: p.residual, Iterations: p.steps}
	}
	return nil
}

// loose says that some bearing carries nothing at rest.
func (s *system) loose() bool {
	for b := range s.nd / perSeat {
		if s.facing[b]*s.rest.y[perSeat*b] <= 0 {
			return true
		}
	}
	return false
}

// firm gives a first place for an axle that play leaves without stiffness: one
// step with bearings as stiff as if the load had already pressed them.
func (s *system) firm(y *[maxUnknown]float64) {
	pressed := *y
	for b := range s.nd / perSeat {
		pressed[perSeat*b] = s.facing[b] * 30e-6
	}
	s.evaluate(&pressed)
	hold := s.hessian
	s.evaluate(y)
	s.hessian = hold
	var step [maxUnknown]float64
	if s.newtonStep(&step) {
		for i := range s.nu {
			y[i] += step[i]
		}
	}
}

// The seats in the order of the unknowns: a shaft's bearing 1 is the one at the
// lower end of its axis.
const (
	head = iota
	tail
	far
	near
)

// facing is the way along its shaft's axis in which a cone presses into its cup.
var facing = [maxSeats]float64{head: 1, tail: -1, far: -1, near: 1}

// prepared is what both systems share.
type prepared struct {
	pinion, centre beam
	rows           [maxSeats]bearing.Row
}
