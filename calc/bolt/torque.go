package bolt

import (
	"math"

	"axlewright/calc/check"
)

// TorqueParams describes where a tightening torque goes.
type TorqueParams struct {
	Preload        float64 // N, F_M: force in the bolt
	Pitch          float64 // m, P: thread pitch
	PitchDiameter  float64 // m, d_2: pitch diameter
	HeadDiameter   float64 // m, D_Km: mean friction diameter under the head or nut that is turned
	ThreadFriction float64 // -, µ_G: friction in the thread
	HeadFriction   float64 // -, µ_K: friction under the head or nut
}

func (p TorqueParams) check(fn string) error {
	return check.All(fn,
		check.NotNegative("Preload", p.Preload),
		check.Positive("Pitch", p.Pitch),
		check.That("PitchDiameter", p.PitchDiameter, p.PitchDiameter > 2*p.Pitch, "> 2·P"),
		check.That("HeadDiameter", p.HeadDiameter, p.HeadDiameter >= p.PitchDiameter, ">= d2"),
		check.Within("ThreadFriction", p.ThreadFriction, 0, 0.5),
		check.Within("HeadFriction", p.HeadFriction, 0, 0.5),
	)
}

// HeadFrictionDiameter returns the mean diameter at which the friction under a bolt head acts.
//
//	D_Km = (d_W + d_h)/2
//
//	bearing  outside diameter of the bearing face d_W, m
//	hole     diameter of the clearance hole d_h, m
//	D_Km     mean friction diameter, m
//
// Valid for 0 < hole < bearing.
// Errors: *check.RangeError outside that range.
// Source: VDI 2230-1:2015, 5.4.3 (from memory).
func HeadFrictionDiameter(bearing, hole float64) (float64, error) {
	if err := check.All("bolt.HeadFrictionDiameter",
		check.Positive("bearing", bearing),
		check.That("hole", hole, hole > 0 && hole < bearing, "0 < hole < bearing"),
	); err != nil {
		return 0, err
	}
	return (bearing + hole) / 2, nil
}

// TighteningTorque returns the torque that brings a bolt to a preload, from its frictions.
//
//	M_A = F_M·(0.159·P + 0.577·d2·µ_G + D_Km/2·µ_K)
//
//	M_A  torque on the spanner, N·m
//
// Valid for 60° threads, tightened without prevailing torque.
// Errors: *check.RangeError outside 0 <= µ <= 0.5, d2 > 2·P, D_Km >= d2, F_M >= 0.
// Source: VDI 2230-1:2015, 5.4.3 (from memory).
func TighteningTorque(p TorqueParams) (float64, error) {
	if err := p.check("bolt.TighteningTorque"); err != nil {
		return 0, err
	}
	return p.Preload * torqueArm(p), nil
}

// PreloadTorqueParams is a torque on a spanner and where it goes.
type PreloadTorqueParams struct {
	Torque         float64 // N·m, M_A: torque applied
	Pitch          float64 // m, P: thread pitch
	PitchDiameter  float64 // m, d_2: pitch diameter
	HeadDiameter   float64 // m, D_Km: mean friction diameter under the head or nut that is turned
	ThreadFriction float64 // -, µ_G: friction in the thread
	HeadFriction   float64 // -, µ_K: friction under the head or nut
}

// PreloadFromTorque returns the preload that a torque leaves in a bolt, from its frictions.
//
//	F_M = M_A/(0.159·P + 0.577·d2·µ_G + D_Km/2·µ_K)
//
//	F_M  force in the bolt, N
//
// Valid for 60° threads, below yield, tightened without prevailing torque.
// Errors: *check.RangeError outside 0 <= µ <= 0.5, d2 > 2·P, D_Km >= d2, M_A >= 0.
// Source: VDI 2230-1:2015, 5.4.3 (from memory).
func PreloadFromTorque(p PreloadTorqueParams) (float64, error) {
	q := TorqueParams{0, p.Pitch, p.PitchDiameter, p.HeadDiameter, p.ThreadFriction, p.HeadFriction}
	if err := q.check("bolt.PreloadFromTorque"); err != nil {
		return 0, err
	}
	if err := check.All("bolt.PreloadFromTorque", check.NotNegative("Torque", p.Torque)); err != nil {
		return 0, err
	}
	return p.Torque / torqueArm(q), nil
}

// torqueArm is the torque per unit of preload.
func torqueArm(p TorqueParams) float64 {
	return 0.159*p.Pitch + 0.577*p.PitchDiameter*p.ThreadFriction + p.HeadDiameter/2*p.HeadFriction
}

// TorqueSplitParams describes a tightening in any thread form.
type TorqueSplitParams struct {
	Preload        float64 // N, F: force in the bolt
	Pitch          float64 // m, P: thread pitch
	PitchDiameter  float64 // m, d_2: pitch diameter
	FlankAngle     float64 // rad, β: half of the thread angle
	HeadDiameter   float64 // m, D_Km: mean friction diameter under the head or nut that is turned
	ThreadFriction float64 // -, µ_G: friction in the thread
	HeadFriction   float64 // -, µ_K: friction under the head or nut
}

// TorqueSplitResult says where a tightening torque goes.
type TorqueSplitResult struct {
	Stretch float64 // N·m, part that stretches the bolt
	Thread  float64 // N·m, part lost in the thread
	Head    float64 // N·m, part lost under the head
	Total   float64 // N·m, M: torque on the spanner
}

// TorqueSplit returns a tightening torque and the parts of it that stretch the bolt and that friction takes.
//
//	M = F·(P/(2·π) + µ_G·d2/(2·cos β) + µ_K·D_Km/2)
//
// Valid for small lead angles (first order in the lead), any flank angle below 45°.
// Errors: *check.RangeError outside 0 <= µ <= 0.5, d2 > 2·P, D_Km >= d2, 0 <= β < π/4, F >= 0.
// Source: N. Motosh, Development of design charts for bolts preloaded up to the plastic range, J. Eng. Ind. 98 (1976) (from memory).
func TorqueSplit(p TorqueSplitParams) (TorqueSplitResult, error) {
	q := TorqueParams{p.Preload, p.Pitch, p.PitchDiameter, p.HeadDiameter, p.ThreadFriction, p.HeadFriction}
	if err := q.check("bolt.TorqueSplit"); err != nil {
		return TorqueSplitResult{}, err
	}
	if err := check.All("bolt.TorqueSplit",
		check.That("FlankAngle", p.FlankAngle, p.FlankAngle >= 0 && p.FlankAngle < math.Pi/4, "0 <= β < π/4"),
	); err != nil {
		return TorqueSplitResult{}, err
	}
	r := TorqueSplitResult{
		Stretch: p.Preload * p.Pitch / (2 * math.Pi),
		Thread:  p.Preload * p.ThreadFriction * p.PitchDiameter / (2 * math.Cos(p.FlankAngle)),
		Head:    p.Preload * p.HeadFriction * p.HeadDiameter / 2,
	}
	r.Total = r.Stretch + r.Thread + r.Head
	return r, nil
}

// NutFactorTorque returns the torque for a preload by the nut factor.
//
//	T = K·d·F
//
//	factor   nut factor K, -
//	d        nominal diameter, m
//	preload  force in the bolt F, N
//	T        torque on the spanner, N·m
//
// Valid for a nut factor that belongs to this finish, oil and washer: about
// 0.15 oiled and 0.20 dry, each with a spread of a third.
// Errors: *check.RangeError for K <= 0, d <= 0 or a negative preload.
// Source: Shigley's Mechanical Engineering Design, 9th ed., eq. 8-27 (from memory); the figures 0.15 and 0.20 are common practice.
func NutFactorTorque(factor, d, preload float64) (float64, error) {
	if err := check.All("bolt.NutFactorTorque",
		check.Positive("factor", factor), check.Positive("d", d), check.NotNegative("preload", preload),
	); err != nil {
		return 0, err
	}
	return factor * d * preload, nil
}

// NutFactorPreload returns the preload of a torque by the nut factor.
//
//	F = T/(K·d)
//
//	factor  nut factor K, -
//	d       nominal diameter, m
//	torque  torque on the spanner T, N·m
//	F       force in the bolt, N
//
// Valid for a nut factor that belongs to this finish, oil and washer, below yield.
// Errors: *check.RangeError for K <= 0, d <= 0 or a negative torque.
// Source: Shigley's Mechanical Engineering Design, 9th ed., eq. 8-27 (from memory).
func NutFactorPreload(factor, d, torque float64) (float64, error) {
	if err := check.All("bolt.NutFactorPreload",
		check.Positive("factor", factor), check.Positive("d", d), check.NotNegative("torque", torque),
	); err != nil {
		return 0, err
	}
	return torque / (factor * d), nil
}
