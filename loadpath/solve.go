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
	if s.Peg.Load > 0 {
		free, err := e.approach(flank, torque)
		if err != nil {
			return s, err
		}
		s.Peg.FreeMovement = free
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
	wheel := e.wheelSystem()
	if e.axle.Casting == nil {
		pinion := e.memo.find(flank, torque)
		if pinion == nil {
			p := &e.pinion.current
			load, _, _ := e.meshLoads(flank, torque)
			p.load = [maxLoads]float64{}
			copy(p.load[:], load[:])
			err := e.pinion.balance(p, flank, torque)
			e.readPinion(s, &e.pinion, p)
			if err != nil {
				return err
			}
			e.memo.keep(flank, torque, p)
		} else {
			e.readPinion(s, &e.pinion, pinion)
		}
	}
	p := &wheel.current
	plate := e.loadWheel(p, flank, torque, true)
	err := wheel.balance(p, flank, torque)
	e.addPegLoads(wheel, p)
	if e.axle.Casting != nil {
		e.readPinion(s, wheel, p)
	}
	e.readWheel(s, wheel, p, &plate)
	s.Converged = err == nil
	return err
}

// loadWheel sets the loads of the wheel's system and its stop.
func (e *Elastic) loadWheel(p *placement, flank Flank, torque float64, withPeg bool) (plate [3]float64) {
	s := e.wheelSystem()
	pinion, wheel, plate := e.meshLoads(flank, torque)
	p.load = [maxLoads]float64{}
	if s.hasPinion {
		copy(p.load[:5], pinion[:])
	}
	copy(p.load[s.loadsAt(wheelShaft):], wheel[:])
	if s.stop.present = withPeg && e.stops[flankIndex(flank)].present; s.stop.present {
		s.stop = e.stops[flankIndex(flank)]
		s.stop.free = e.free(&s.stop, p, &plate)
	}
	return plate
}

// free is the approach of the back face to the peg at y = 0, without the peg.
func (e *Elastic) free(st *stop, p *placement, plate *[3]float64) float64 {
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
	p := &s.current
	plate := e.loadWheel(p, flank, torque, false)
	if err := s.balance(p, flank, torque); err != nil {
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
