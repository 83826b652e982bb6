package gear

import (
	"math"

	"axlewright/calc/check"
)

// MeshShift is a small movement of the two members, each from where it stands.
type MeshShift struct {
	WheelAway       float64 // m, movement of the crown wheel along its axis, away from the pinion
	PinionAway      float64 // m, movement of the pinion along its axis, out of the nose
	OffsetGrowth    float64 // m, movement of the pinion that makes a positive offset larger; without offset towards the side on which it would lie
	AngleOpening    float64 // rad, growth of the angle between the pinion's shank and the back of the wheel's axis, about the crossing point
	WheelTowardMesh float64 // m, movement of the crown wheel square to its axis, towards the mesh along the pinion's axis
}

// LashChangeParams is what a change of lash follows from.
type LashChangeParams struct {
	Cones              PitchCones // pitch cones of the pair
	DrivePressureAngle float64    // rad, α_nD: generated pressure angle of the drive flank
	CoastPressureAngle float64    // rad, α_nC: generated pressure angle of the coast flank
	Shift              MeshShift  // how the members move
}

// LashChangeResult is the change of lash, positive where it grows.
type LashChangeResult struct {
	Transverse   float64 // m, Δj_t: along the mean circle of the wheel, in its plane of turning
	NormalDrive  float64 // m, Δj_n: square to the drive flank at the mean point
	NormalCoast  float64 // m, square to the coast flank at the mean point
	WheelTurning float64 // rad, as an angle of the wheel with the pinion held
	PinionTurn   float64 // rad, as an angle of the pinion with the wheel held
	Parting      float64 // m, u_n: how far the two members part square to the pitch plane
}

// LashChange returns the change of backlash from small movements of the members,
// from the directions of the two flanks in space.
//
//	Δj_t = u_n·(tan α_nD + tan α_nC)/cos β2
//	u_n = Δa·sin δ2 + Δp·sin δ1 + Δe·n_e + Δκ·(y·n_x + x·sin δ2) − Δr·n_x
//	Δj_n = Δj_t·cos β2·cos α_n
//	Δa wheel away, Δp pinion away, Δe offset growth, Δκ opening of the shaft angle, Δr wheel towards the mesh
//
// u_n is the parting of the members square to the pitch plane; movement within
// that plane turns or shifts the teeth and leaves the lash alone. n_x and n_e
// are the components of the pitch plane's normal along the pinion axis and along
// the offset, n_x = sin δ1 and n_e = cos δ2·cos δ1·sin ζ; x and y place the mean point.
// Without offset Δe leaves the lash alone and the spiral angle matters only
// through cos β2.
//
// Valid for movements up to a fiftieth of the wheel's mean radius and 0.02 rad, rigid teeth.
// Errors: *check.RangeError outside that range or where the cones do not touch.
// Source: derived from the flank normals at the mean point; for wheel and pinion
// moved along their axes it is the common Δj = 2·Δa·tan α·sin δ/cos β.
func LashChange(p LashChangeParams) (LashChangeResult, error) {
	const fn = "gear.LashChange"
	if err := p.Cones.valid(fn); err != nil {
		return LashChangeResult{}, err
	}
	small := p.Cones.WheelMeanRadius / 50
	s := p.Shift
	if err := check.All(fn,
		pressureAngle("DrivePressureAngle", p.DrivePressureAngle), pressureAngle("CoastPressureAngle", p.CoastPressureAngle),
		check.Within("Shift.WheelAway", s.WheelAway, -small, small), check.Within("Shift.PinionAway", s.PinionAway, -small, small),
		check.Within("Shift.OffsetGrowth", s.OffsetGrowth, -small, small), check.Within("Shift.AngleOpening", s.AngleOpening, -0.02, 0.02),
		check.Within("Shift.WheelTowardMesh", s.WheelTowardMesh, -small, small),
	); err != nil {
		return LashChangeResult{}, err
	}
	f := p.Cones.frame(RightHand) // the hand mirrors the pair and leaves the lash alone
	// The wheel's movement at the mean point, seen from the pinion.
	u := vector{s.WheelTowardMesh - s.PinionAway, s.WheelAway, -s.OffsetGrowth}.
		plus(vector{Z: s.AngleOpening}.cross(f.mean))
	parting := -u.dot(f.normal)
	cosB := math.Cos(p.Cones.WheelSpiral)
	j := parting * (math.Tan(p.DrivePressureAngle) + math.Tan(p.CoastPressureAngle)) / cosB
	return LashChangeResult{
		Transverse:   j,
		NormalDrive:  j * cosB * math.Cos(p.DrivePressureAngle),
		NormalCoast:  j * cosB * math.Cos(p.CoastPressureAngle),
		WheelTurning: j / p.Cones.WheelMeanRadius,
		PinionTurn:   j / p.Cones.WheelMeanRadius * float64(p.Cones.WheelTeeth) / float64(p.Cones.PinionTeeth),
		Parting:      parting,
	}, nil
}

// WheelShiftParams is what a wanted change of lash is reached by.
type WheelShiftParams struct {
	Cones              PitchCones // pitch cones of the pair
	DrivePressureAngle float64    // rad, α_nD: generated pressure angle of the drive flank
	CoastPressureAngle float64    // rad, α_nC: generated pressure angle of the coast flank
	LashGrowth         float64    // m, wanted growth of the lash along the circle at Radius; negative for less lash
	Radius             float64    // m, radius from the wheel's axis at which the lash is read, the heel as a rule
}

// WheelShiftForLash returns how far the crown wheel must move away from the
// pinion for a wanted growth of lash; a negative result means towards it.
//
//	Δa = Δj·(r_m2/r)·cos β2/(sin δ2·(tan α_nD + tan α_nC))
//
//	Δa  movement of the crown wheel away from the pinion, m
//
// Lash is a turning of the wheel, so it reads larger at a larger radius.
//
// Valid for movements up to a fiftieth of the wheel's mean radius, rigid teeth.
// Errors: *check.RangeError as LashChange, and for a radius not above zero.
// Source: as LashChange, turned round.
func WheelShiftForLash(p WheelShiftParams) (float64, error) {
	if err := check.All("gear.WheelShiftForLash", check.Positive("Radius", p.Radius), check.Finite("LashGrowth", p.LashGrowth)); err != nil {
		return 0, err
	}
	step := p.Cones.WheelMeanRadius / 1000
	unit, err := LashChange(LashChangeParams{Cones: p.Cones, DrivePressureAngle: p.DrivePressureAngle,
		CoastPressureAngle: p.CoastPressureAngle, Shift: MeshShift{WheelAway: step}})
	if err != nil {
		return 0, err
	}
	shift := p.LashGrowth * p.Cones.WheelMeanRadius / p.Radius / unit.Transverse * step
	return shift, check.All("gear.WheelShiftForLash",
		check.That("LashGrowth", p.LashGrowth, math.Abs(shift) <= p.Cones.WheelMeanRadius/50, "what a movement of a fiftieth of the radius gives"))
}
