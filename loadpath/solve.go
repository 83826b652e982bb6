package loadpath

import (
	"math"

	"axlewright/calc/check"
)

// Solve returns the state at a torque, with the torques of first touch and the
// movement the wheel would make without the peg.
func (e *Elastic) Solve(flank Flank, torque float64) (State, error) {
	var s State
	if err := e.SolveInto(&s, flank, torque); err != nil {
		return s, err
	}
	if e.axle.Peg == nil {
		return s, nil
	}
	var err error
	s.Peg.TouchTight, s.Peg.TouchSlack, err = e.Touches(flank, 2*torque)
	return s, err
}

// SolveInto is Solve without the torques of first touch and the movement
// without peg. It allocates nothing and starts from the last solution of the
// flank, so that neighbouring torques cost a step or two.
func (e *Elastic) SolveInto(s *State, flank Flank, torque float64) error {
	if err := check.All("loadpath.Elastic.Solve",
		check.That("flank", 0, flank == Drive || flank == Coast, "drive or coast"),
		check.NotNegative("torque", torque),
	); err != nil {
		return err
	}
	*s = State{Flank: flank, Torque: torque}
	e.force(s)
	pinion, wheel, plate := e.meshLoads(flank, torque)
	var load [maxLoads]float64
	if e.axle.Casting == nil {
		copy(load[:], pinion[:])
		p, err := e.pinion.unpegged(&load, flank, torque)
		e.readPinion(s, &e.pinion, p)
		if err != nil {
			return err
		}
		load = [maxLoads]float64{}
	}
	sys := e.wheelSystem()
	e.wheelLoads(&load, &pinion, &wheel)
	p, err := sys.unpegged(&load, flank, torque)
	var free float64
	if st := &e.stops[flankIndex(flank)]; err == nil && st.present {
		sys.stop = *st
		sys.stop.free = e.free(st, p, &plate)
		if free = sys.stop.gap + sys.stop.beyond(&p.y, sys.nu); free > sys.stop.gap {
			p, err = sys.pegged(p, flank, torque)
		}
	}
	e.read(s, sys, p, &plate, free)
	s.Converged = err == nil
	return err
}

// wheelLoads enters the loads of the system that holds the wheel.
func (e *Elastic) wheelLoads(load *[maxLoads]float64, pinion, wheel *wrench) {
	s := e.wheelSystem()
	if s.hasPinion {
		copy(load[:], pinion[:])
	}
	copy(load[s.loadsAt(wheelShaft):], wheel[:])
}

// free is the approach of the back face to the peg at y = 0, without the peg.
func (e *Elastic) free(st *stop, p *placement, plate *plateLoads) float64 {
	v := st.rest
	for l := range st.byLoad {
		v += st.byLoad[l] * p.load[l]
	}
	for i, load := range plate {
		v += e.axle.Plate.Compliance[pegAxial][i] * load
	}
	return v
}

// approach is how far the back face would come towards the peg without it.
func (e *Elastic) approach(flank Flank, torque float64) (float64, error) {
	s := e.wheelSystem()
	pinion, wheel, plate := e.meshLoads(flank, torque)
	var load [maxLoads]float64
	e.wheelLoads(&load, &pinion, &wheel)
	p, err := s.unpegged(&load, flank, torque)
	if err != nil {
		return 0, err
	}
	st := &e.stops[flankIndex(flank)]
	v := e.free(st, p, &plate)
	for i := range s.nu {
		v += st.along[i] * p.y[i]
	}
	return v, nil
}

// force enters the tooth force.
func (e *Elastic) force(s *State) {
	s.OnWheel = e.axle.Mesh.onWheel(s.Flank).times(s.Torque)
	s.OnPinion = s.OnWheel.times(-1)
	arm := Vector{0, e.axle.Mesh.MeanPoint.Y, e.axle.Mesh.MeanPoint.Z - e.axle.Mesh.PinionAxisZ}
	s.PinionTorque = math.Abs(arm.cross(s.OnPinion).X)
}
