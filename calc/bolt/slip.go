package bolt

import (
	"math"

	"axlewright/calc/check"
)

// ringArea is the area between two circles.
func ringArea(outside, inside float64) float64 {
	return math.Pi / 4 * (outside*outside - inside*inside)
}

// SlipCapacity returns the side force that a clamped joint carries by friction.
//
//	F_Q = q_F·µ_T·F_K
//
//	clamp     clamp of all bolts together F_K, N
//	friction  friction of the joint face µ_T, -
//	faces     friction faces that share the force q_F, -
//	F_Q       side force at which the joint slips, N
//
// Valid for faces that bear, clean or oiled as µ_T says; no help from dowels.
// Errors: *check.RangeError for a negative clamp, µ outside 0 to 1, or no face.
// Source: VDI 2230-1:2015, 5.4.1 and 5.5.6 (from memory).
func SlipCapacity(clamp, friction float64, faces int) (float64, error) {
	if err := check.All("bolt.SlipCapacity",
		check.NotNegative("clamp", clamp),
		check.Within("friction", friction, 0, 1),
		check.That("faces", float64(faces), faces >= 1, ">= 1"),
	); err != nil {
		return 0, err
	}
	return float64(faces) * friction * clamp, nil
}

// ClampForSlipParams describes what a friction joint must hold.
type ClampForSlipParams struct {
	Force        float64 // N, F_Q: side force
	Torque       float64 // N·m, M_Y: torque about the bolt's axis; optional
	Radius       float64 // m, r_a: friction radius for the torque; optional
	Friction     float64 // -, µ_T: friction of the joint face
	ForceFaces   int     // -, q_F: faces that share the force
	TorqueFaces  int     // -, q_M: faces that share the torque; optional
	SafetyFactor float64 // -, S_G: safety against slip, 1.2 static and 1.8 alternating by custom
}

// ClampForSlip returns the clamp that a friction joint needs.
//
//	F_KQ = S_G·[F_Q/(q_F·µ_T) + M_Y/(q_M·r_a·µ_T)]
//
//	F_KQ  clamp needed, N
//
// Valid for force and torque acting together on the same faces.
// Errors: *check.RangeError for µ outside 0 < µ <= 1, a negative load, no face, or a torque without radius.
// Source: VDI 2230-1:2015, 5.4.1 (from memory).
func ClampForSlip(p ClampForSlipParams) (float64, error) {
	if err := check.All("bolt.ClampForSlip",
		check.NotNegative("Force", p.Force),
		check.NotNegative("Torque", p.Torque),
		check.That("Friction", p.Friction, p.Friction > 0 && p.Friction <= 1, "0 < µ <= 1"),
		check.That("ForceFaces", float64(p.ForceFaces), p.ForceFaces >= 1, ">= 1"),
		check.That("Radius", p.Radius, p.Torque == 0 || p.Radius > 0, "> 0 where there is a torque"),
		check.That("TorqueFaces", float64(p.TorqueFaces), p.Torque == 0 || p.TorqueFaces >= 1, ">= 1 where there is a torque"),
		check.That("SafetyFactor", p.SafetyFactor, p.SafetyFactor >= 1, ">= 1"),
	); err != nil {
		return 0, err
	}
	need := p.Force / (float64(p.ForceFaces) * p.Friction)
	if p.Torque > 0 {
		need += p.Torque / (float64(p.TorqueFaces) * p.Radius * p.Friction)
	}
	return p.SafetyFactor * need, nil
}

// SlipTorqueParams describes a flange held by a circle of bolts, such as a crown wheel on its diff centre.
type SlipTorqueParams struct {
	Bolts    int     // -, n: number of bolts
	Clamp    float64 // N, F_K: clamp of one bolt
	Friction float64 // -, µ_T: friction of the flange face
	Radius   float64 // m, r: radius of the bolt circle
}

// SlipTorque returns the torque at which a flange slips under its circle of bolts.
//
//	T = n·F_K·µ_T·r
//
//	T  torque at which the flange slips, N·m
//
// Valid for an even clamp and friction taken at the bolt circle; no help from dowels or a close register.
// Errors: *check.RangeError for no bolt, a negative clamp, µ outside 0 to 1 or a radius of zero or below.
// Source: equilibrium of the friction joint, VDI 2230-1:2015, 5.4.1 (from memory).
func SlipTorque(p SlipTorqueParams) (float64, error) {
	if err := check.All("bolt.SlipTorque",
		check.That("Bolts", float64(p.Bolts), p.Bolts >= 1, ">= 1"),
		check.NotNegative("Clamp", p.Clamp),
		check.Within("Friction", p.Friction, 0, 1),
		check.Positive("Radius", p.Radius),
	); err != nil {
		return 0, err
	}
	return float64(p.Bolts) * p.Clamp * p.Friction * p.Radius, nil
}
