package loadpath

import (
	"slices"

	"axlewright/calc/bearing"
)

// Elastic is an axle made ready for solving: bearings of rollers, shafts as
// stepped beams with shear, the crown wheel as a plate, seats that give, caps
// that give more, and the peg as a stop.
//
// Without cross terms in the casting the pinion and the wheel do not feel each
// other beyond the tooth force, which statics alone gives, and are solved one
// by one. An Elastic must not be used by two goroutines at once; make one each.
type Elastic struct {
	axle     Axle
	peg      Peg
	casting  *Casting
	rollers  [maxSeats]bearing.Rollers
	prepared prepared
	pinion   system
	wheel    system
	whole    system // both, where the casting has cross terms
	prior    bool   // an axle was prepared before and all went well
	stops    [2]stop
	touches  [2]touches
}

var flanks = [2]Flank{Drive, Coast}

func flankIndex(flank Flank) int {
	if flank == Coast {
		return 1
	}
	return 0
}

var _ Path = (*Elastic)(nil)

// Prepare checks an axle and settles it without torque.
func Prepare(a *Axle) (*Elastic, error) {
	e := new(Elastic)
	if err := e.Reset(a); err != nil {
		return nil, err
	}
	return e, nil
}

// Reset prepares another axle in the same memory. What belongs to the pinion
// alone is kept, solutions and all, where the new axle has the same one, and so
// is the wheel's system where only peg or crown wheel's plate differ: a run over
// many builds of one casting settles each once. Neighbouring axles should follow
// each other.
func (e *Elastic) Reset(a *Axle) error {
	if err := a.Validate(); err != nil {
		return err
	}
	samePinion := e.prior && e.samePinion(a)
	sameWheel := e.prior && e.sameWheel(a)
	e.prior = false // until all is well
	e.keep(a)
	e.touches = [2]touches{}
	for seat, r := range [maxSeats]bearing.Rollers{head: a.Head, tail: a.Tail, far: a.Far, near: a.Near} {
		if r == e.rollers[seat] {
			continue
		}
		row, err := bearing.NewRow(r, facing[seat])
		if err != nil {
			return err
		}
		e.prepared.rows[seat], e.rollers[seat] = row, r
	}
	if !sameWheel {
		e.buildCentre()
	}
	if !samePinion {
		e.buildPinion()
	}
	if a.Casting != nil {
		e.whole.hasPinion, e.whole.hasWheel = true, true
		if err := e.whole.prepare(&e.axle, &e.prepared); err != nil {
			return err
		}
	} else {
		if !samePinion {
			e.pinion.hasPinion = true
			if err := e.pinion.prepare(&e.axle, &e.prepared); err != nil {
				return err
			}
		}
		if !sameWheel {
			e.wheel.hasWheel = true
			if err := e.wheel.prepare(&e.axle, &e.prepared); err != nil {
				return err
			}
		}
	}
	// Whatever is kept, the search starts from rest: the same axle gives the same
	// digits whichever was solved before it.
	e.pinion.forget()
	e.wheel.forget()
	e.whole.forget()
	e.placePeg()
	e.prior = true
	return nil
}

// keep copies the axle with all it points to, so that a caller may change his
// own in place and prepare it again.
func (e *Elastic) keep(a *Axle) {
	old := e.axle
	e.axle = *a
	for _, c := range []struct{ to, from *[]Section }{
		{&e.axle.Pinion.Neck, &old.Pinion.Neck}, {&e.axle.Pinion.Shank, &old.Pinion.Shank},
		{&e.axle.Centre.ToNear, &old.Centre.ToNear}, {&e.axle.Centre.ToFar, &old.Centre.ToFar},
	} {
		*c.to = append((*c.from)[:0], *c.to...)
	}
	if a.Peg != nil {
		e.peg = *a.Peg
		e.axle.Peg = &e.peg
	}
	if a.Casting != nil {
		if e.casting == nil {
			e.casting = new(Casting)
		}
		*e.casting = *a.Casting
		e.axle.Casting = e.casting
	}
}

// samePinion says whether everything that the pinion's equilibrium depends on
// is as it was.
func (e *Elastic) samePinion(a *Axle) bool {
	b := &e.axle
	return a.Casting == nil && b.Casting == nil && a.Mesh == b.Mesh &&
		a.Layout.GearToHead == b.Layout.GearToHead && a.Layout.HeadToTail == b.Layout.HeadToTail &&
		a.Head == b.Head && a.Tail == b.Tail && a.HeadSeat == b.HeadSeat && a.TailSeat == b.TailSeat &&
		a.PinionPreload == b.PinionPreload && slices.Equal(a.Pinion.Neck, b.Pinion.Neck) &&
		slices.Equal(a.Pinion.Shank, b.Pinion.Shank) &&
		a.Pinion.Modulus == b.Pinion.Modulus && a.Pinion.Poisson == b.Pinion.Poisson &&
		a.Pinion.SpigotDistance == b.Pinion.SpigotDistance && a.Pinion.SpigotDiameter == b.Pinion.SpigotDiameter &&
		a.Pinion.SpigotStiffness == b.Pinion.SpigotStiffness
}

// sameWheel says the same of the wheel's system, peg and plate apart.
func (e *Elastic) sameWheel(a *Axle) bool {
	b := &e.axle
	return a.Casting == nil && b.Casting == nil && a.Mesh == b.Mesh && a.Layout == b.Layout &&
		a.Near == b.Near && a.Far == b.Far && a.NearSeat == b.NearSeat && a.FarSeat == b.FarSeat &&
		a.CapDirection == b.CapDirection && a.SidePreload == b.SidePreload &&
		slices.Equal(a.Centre.ToNear, b.Centre.ToNear) && slices.Equal(a.Centre.ToFar, b.Centre.ToFar) &&
		a.Centre.Modulus == b.Centre.Modulus && a.Centre.Poisson == b.Centre.Poisson
}

func (e *Elastic) buildPinion() {
	a, b := &e.axle, &e.prepared.pinion
	p := &a.Pinion
	*b = beam{span: a.Layout.HeadToTail, point: -a.Layout.GearToHead}
	if p.SpigotStiffness > 0 {
		b.spigot = b.point - p.SpigotDistance
		b.add(b.spigot, Section{Length: p.SpigotDistance, Outer: p.SpigotDiameter}, p.Modulus, p.Poisson)
	}
	at := b.point
	for _, s := range p.Neck {
		at = b.add(at, s, p.Modulus, p.Poisson)
	}
	at = 0
	for _, s := range p.Shank {
		at = b.add(at, s, p.Modulus, p.Poisson)
	}
	b.prepare()
}

func (e *Elastic) buildCentre() {
	a, b := &e.axle, &e.prepared.centre
	c := &a.Centre
	*b = beam{span: a.Layout.Near + a.Layout.Far, point: a.Layout.Far + a.hub()}
	at := b.point
	for _, s := range c.ToNear {
		at = b.add(at, s, c.Modulus, c.Poisson)
	}
	at = b.point
	for _, s := range c.ToFar { // listed from the hub outwards
		b.add(at-s.Length, s, c.Modulus, c.Poisson)
		at -= s.Length
	}
	b.prepare()
}

// wheelSystem is the system that holds the wheel.
func (e *Elastic) wheelSystem() *system {
	if e.axle.Casting != nil {
		return &e.whole
	}
	return &e.wheel
}

// pinionSystem is the system that holds the pinion.
func (e *Elastic) pinionSystem() *system {
	if e.axle.Casting != nil {
		return &e.whole
	}
	return &e.pinion
}

// meshLoads are the tooth forces of a torque as loads of the two shafts and of
// the wheel's plate.
func (e *Elastic) meshLoads(flank Flank, torque float64) (pinion, wheel wrench, plate plateLoads) {
	a := &e.axle
	force := a.Mesh.onWheel(flank).times(torque)
	point := a.Mesh.MeanPoint
	pinion = pinionShaft.wrench(force.times(-1), Vector{0, point.Y, point.Z - a.Mesh.PinionAxisZ})
	wheel = wheelShaft.wrench(force, Vector{point.X, -a.Layout.MeshToHub, point.Z})
	out, along := a.meshDirections()
	// The mean point lies in front of the plate's mid-plane.
	return pinion, wheel, plateLoads{
		meshAxial:      force.Y,
		meshRadial:     a.Layout.MeshToPlate * force.dot(out),
		meshTangential: a.Layout.MeshToPlate * force.dot(along),
		meshOutward:    force.dot(out),
		meshAround:     force.dot(along),
	}
}

// meshDirections are the unit vectors outwards and round the wheel, positive
// about +y, at the mean point.
func (a *Axle) meshDirections() (out, along Vector) {
	out = Vector{X: a.Mesh.MeanPoint.X, Z: a.Mesh.MeanPoint.Z}
	out = out.times(1 / out.norm())
	return out, Vector{X: out.Z, Z: -out.X}
}
