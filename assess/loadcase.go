package assess

import (
	"fmt"
	"math"

	"axlewright/axle"
	"axlewright/calc/bearing"
	"axlewright/loadpath"
)

// A LoadCase is one equilibrium of one build, every figure at its stated value.
// Movements count from the assembled, preloaded, torque-free axle. All in SI.
type LoadCase struct {
	Build     string     `json:"build"`
	Label     string     `json:"label"` // the build in words
	Flank     axle.Flank `json:"flank"`
	Torque    float64    `json:"torque"` // N·m at the axle
	Converged bool       `json:"converged"`
	Residual  float64    `json:"residual"` // greatest force left over, against the load

	Tooth    ToothForce              `json:"tooth"`
	Mesh     MeshMoved               `json:"mesh"`
	Bearings map[string]BearingState `json:"bearings"` // head, tail, near, far
	Peg      *PegState               `json:"peg"`      // null without a peg
	Gap      *GapAdvice              `json:"gap_window,omitempty"`
	Dial     float64                 `json:"dial"` // m, back face at the dial, away from the pinion
	Links    []LinkState             `json:"links"`
}

// ToothForce is the tooth force on the crown wheel by direction, N.
type ToothForce struct {
	Tangential  float64 `json:"tangential"`
	Radial      float64 `json:"radial_apart"`
	WheelAxial  float64 `json:"wheel_axial_away"`
	PinionAxial float64 `json:"pinion_axial_away"` // on the pinion, out of the nose
}

// MeshMoved is how the members have moved against each other at the mean point.
type MeshMoved struct {
	WheelAxial  float64 `json:"wheel_axial"`  // m, wheel away from the pinion
	PinionAxial float64 `json:"pinion_axial"` // m, pinion out of the nose
	Offset      float64 `json:"offset"`       // m, growing
	ShaftAngle  float64 `json:"shaft_angle"`  // rad, opening
}

// BearingState is what one bearing carries.
type BearingState struct {
	Radial        float64 `json:"radial"`        // N
	Axial         float64 `json:"axial"`         // N, pressing the rollers into the cup
	Moment        float64 `json:"moment"`        // N·m, about the centre of the rollers
	StaticSafety  float64 `json:"static_safety"` // C_0/P_0
	MaxRoller     float64 `json:"max_roller"`    // N
	MaxPressure   float64 `json:"max_pressure"`  // Pa
	Loaded        int     `json:"loaded_rollers"`
	LifeRating    float64 `json:"life_rating"`    // revolutions, L10 of ISO 281 at this load
	LifeReference float64 `json:"life_reference"` // revolutions, of ISO/TS 16281 from the laminae
}

// PegState is what the peg does.
type PegState struct {
	Gap              float64  `json:"gap"`                // m, at the tight spot, as set
	FirstTouchTorque *float64 `json:"first_touch_torque"` // N·m at the tight spot; null where it does not touch up to twice the torque
	FirstTouchSlack  *float64 `json:"first_touch_slack"`  // N·m at the slack spot
	Load             float64  `json:"load"`               // N, in the middle of the run-out
	Movement         float64  `json:"movement"`           // m, of the back face at the peg
	FreeMovement     float64  `json:"free_movement"`      // m, what it would be without the peg
}

// LinkState is one link at this torque.
type LinkState struct {
	Name     string   `json:"name"`
	Demand   float64  `json:"demand"`
	Capacity float64  `json:"capacity"`
	Unit     string   `json:"unit"`
	GiveOut  *float64 `json:"give_out"` // N·m; null where it holds beyond what was looked at
}

// Laminae is the number of slices of a roller for pressures and reference lives.
const Laminae = 31

// SolveLoad solves one build at a torque on a flank.
func SolveLoad(e *axle.Enquiry, c *axle.Catalogue, build axle.Assembly, flank axle.Flank, torque float64) (LoadCase, error) {
	x := LoadCase{Build: buildName(build), Flank: flank, Torque: torque, Bearings: map[string]BearingState{}}
	x.Label = (&study{catalogue: c, builds: []axle.Assembly{build}}).label(0)
	one := []*axle.Assembly{&build}
	plates, err := newWheelPlates(one)
	if err != nil {
		return x, err
	}
	input, err := newPathSolver(one, plates, torque).input(&build, &build, plates[0], nil)
	if err != nil {
		return x, err
	}
	elastic, err := loadpath.Prepare(input)
	if err != nil {
		return x, err
	}
	state, err := elastic.Solve(flank, torque)
	if err != nil {
		return x, err
	}
	x.read(&state, input)
	for _, b := range []struct {
		name    string
		seat    *loadpath.SeatLoad
		bearing *axle.Bearing
	}{
		{"head", &state.Head, &build.Head}, {"tail", &state.Tail, &build.Tail},
		{"near", &state.Near, &build.Side}, {"far", &state.Far, &build.Side},
	} {
		if x.Bearings[b.name], err = bearingState(b.seat, b.bearing); err != nil {
			return x, fmt.Errorf("%s bearing: %w", b.name, err)
		}
	}
	if build.Peg != nil {
		gap, err := PegGap(e, c, build)
		if err != nil {
			return x, fmt.Errorf("gap of the peg: %w", err)
		}
		x.Gap = &gap
	}
	x.Links, err = linkStates(e, c, build, flank, torque)
	return x, err
}

func (x *LoadCase) read(s *loadpath.State, input *loadpath.Axle) {
	mesh := &input.Mesh
	away := math.Hypot(mesh.MeanPoint.X, mesh.MeanPoint.Z)
	outX, outZ := mesh.MeanPoint.X/away, mesh.MeanPoint.Z/away // from the wheel's axis to the mesh
	x.Tooth = ToothForce{
		Tangential:  math.Abs(s.OnWheel.X*outZ - s.OnWheel.Z*outX),
		Radial:      -(s.OnWheel.X*outX + s.OnWheel.Z*outZ),
		WheelAxial:  s.OnWheel.Y,
		PinionAxial: s.OnPinion.X,
	}
	x.Converged, x.Residual, x.Dial = s.Converged, s.Residual, s.Dial
	x.Mesh = MeshMoved(s.Mesh)
	if s.Peg.Present {
		x.Peg = &PegState{
			Gap: input.Peg.Gap, Load: s.Peg.Load, Movement: s.Peg.Movement, FreeMovement: s.Peg.FreeMovement,
			FirstTouchTorque: touchTorque(s.Peg.TouchTight), FirstTouchSlack: touchTorque(s.Peg.TouchSlack),
		}
	}
}

func touchTorque(t loadpath.Touch) *float64 {
	if !t.Touches {
		return nil
	}
	return &t.Torque
}

func bearingState(seat *loadpath.SeatLoad, b *axle.Bearing) (BearingState, error) {
	rating, err := rate(b, nil)
	if err != nil {
		return BearingState{}, err
	}
	out := BearingState{
		Radial: seat.Radial, Axial: seat.Axial, Moment: seat.Tilting, MaxRoller: seat.MaxRoller, Loaded: seat.Loaded,
		StaticSafety: rating.StaticSafety(rating.EquivalentStatic(seat.Radial, seat.Axial)),
		LifeRating:   rating.Life(rating.EquivalentDynamic(seat.Radial, seat.Axial)),
	}
	slices, err := bearing.LaminaLoads(bearing.LaminaParams{
		Rollers: b.RollerSet(), Facing: seat.Facing, Laminae: Laminae,
		Displacement: bearing.Displacement{
			Axial: seat.Facing * seat.Approach.Axial, Radial1: seat.Approach.Radial1, Radial2: seat.Approach.Radial2,
			Tilt1: seat.Approach.Tilt1, Tilt2: seat.Approach.Tilt2,
		},
	})
	if err != nil {
		return out, err
	}
	out.MaxPressure = slices.MaxPressure
	life, err := bearing.ReferenceLife(bearing.ReferenceLifeParams{
		Bearing: bearing.ReferenceParams{Rating: rating.Dynamic, Rollers: b.RollerSet(), Laminae: Laminae, Turning: bearing.Cone},
		Loads:   slices.Loads,
	})
	if err != nil {
		return out, err
	}
	out.LifeReference = life.Life
	return out, nil
}

// linkStates compares demand and capacity of every link at the torque. Links
// that wear are compared under the duty scaled to that torque.
func linkStates(e *axle.Enquiry, c *axle.Catalogue, build axle.Assembly, flank axle.Flank, torque float64) ([]LinkState, error) {
	s := &study{catalogue: c, enquiry: e, builds: []axle.Assembly{build}, doubts: newModelDoubts()}
	u, _, err := s.nominalUnit(&build, torque)
	if err != nil {
		return nil, err
	}
	var list []LinkState
	for i := range links {
		l := &links[i]
		reach, err := l.prepare(u, nil)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", l.name, err)
		}
		if reach == nil {
			continue
		}
		one := LinkState{Name: l.name, Unit: l.unit}
		one.Demand, one.Capacity = reach(flank, torque, nil)
		if t := u.giveOutOn(reach, flank, s.highest); t != Beyond {
			one.GiveOut = &t
		}
		list = append(list, one)
	}
	return list, nil
}
