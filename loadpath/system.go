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

	rest    placement // assembled, without torque and without the peg
	current placement // the one being sought
	free    [2]before // the last one of either flank without the peg
	pressed [2]before // and on the peg
	memo    memo
}

// placement is a balanced place of a system.
type placement struct {
	y        [maxUnknown]float64
	load     [maxLoads]float64 // at the loaded points, the peg's included
	react    [maxSeats][perSeat]float64
	contact  [maxSeats]bearing.Contact
	pegLoad  float64
	spigot   [2]float64 // N, of a spigot bearing on the shaft
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
	s.memo.clear()
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

// unpegged finds the placement under its load without the peg, from the last
// one of the flank.
func (s *system) unpegged(load *[maxLoads]float64, flank Flank, torque float64) (*placement, error) {
	if p := s.memo.find(flank, torque); p != nil {
		return p, nil
	}
	p, i := &s.current, flankIndex(flank)
	s.stop.present = false
	p.load = *load
	s.setLoads(load)
	p.y = s.rest.y
	if s.free[i].torque > 0 {
		s.free[i].carry(&p.y, torque, &s.rest.y, s.nu)
	} else if s.loose() {
		s.firm(&p.y)
	}
	err := s.find(p)
	if err != nil { // once more, as if pressed home
		steps := p.steps
		p.y = s.rest.y
		s.firm(&p.y)
		err = s.find(p)
		p.steps += steps
	}
	if err != nil {
		err.Flank, err.Torque = flank, torque
		return p, err
	}
	s.free[i] = before{p.y, torque}
	return s.memo.keep(flank, torque, p), nil
}

// pegged goes on from the placement without the peg, which has gone past its gap.
func (s *system) pegged(free *placement, flank Flank, torque float64) (*placement, error) {
	p := &s.current
	*p = *free
	s.setLoads(&p.load)
	if i := flankIndex(flank); s.pressed[i].torque > 0 {
		s.pressed[i].carry(&p.y, torque, &s.rest.y, s.nu)
	}
	rubs := s.stop.drag != ([maxUnknown]float64{})
	var err *NotConverged
	if rubs && s.stop.jams() {
		err = s.findRubbing(p)
	} else if err = s.find(p); err != nil {
		steps := p.steps
		if rubs {
			err = s.findRubbing(p)
		} else {
			p.y = s.rest.y
			s.firm(&p.y)
			err = s.find(p)
		}
		p.steps += steps
	}
	p.steps += free.steps
	if err != nil {
		err.Flank, err.Torque = flank, torque
		return p, err
	}
	s.pressed[flankIndex(flank)] = before{p.y, torque}
	return p, nil
}

// before is where a flank was at another torque.
type before struct {
	y      [maxUnknown]float64
	torque float64 // N·m; zero for never
}

// carry starts a search from there. All grows nearly with the torque, which
// saves a step where the torques are near.
func (b *before) carry(y *[maxUnknown]float64, torque float64, rest *[maxUnknown]float64, nu int) {
	*y = b.y
	if ratio := torque / b.torque; ratio > 0.2 && ratio < 5 {
		for j := range nu {
			y[j] += (ratio - 1) * (y[j] - rest[j])
		}
	}
}

// forget makes the next search start from rest.
func (s *system) forget() { s.free, s.pressed = [2]before{}, [2]before{} }

// find runs the search from the placement's y.
func (s *system) find(p *placement) *NotConverged {
	p.steps, p.residual = s.solve(&p.y)
	p.react, p.contact, p.pegLoad = s.react, s.contact, s.pegLoad
	for i, row := range s.spigot {
		if row >= 0 {
			p.spigot[i] = s.natural[row]
		}
	}
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
