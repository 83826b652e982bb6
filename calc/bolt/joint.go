package bolt

import (
	"axlewright/calc/check"
)

// LoadFactorParams describes a joint as two springs.
type LoadFactorParams struct {
	Bolt         float64 // m/N, δ_S: resilience of the bolt
	Members      float64 // m/N, δ_P: resilience of the clamped parts
	Introduction float64 // -, n: where the load enters the parts: 1 under head and nut, 0 at the joint face
}

// LoadFactor returns the share of a working load that the bolt feels.
//
//	Φ = n·δ_P/(δ_S + δ_P)
//
//	Φ  load factor, -
//
// Valid for loads along the bolt's axis, joint closed.
// Errors: *check.RangeError for a resilience of zero or below, or n outside 0 to 1.
// Source: VDI 2230-1:2015, 5.3.1 and 5.3.2 (from memory).
func LoadFactor(p LoadFactorParams) (float64, error) {
	if err := check.All("bolt.LoadFactor",
		check.Positive("Bolt", p.Bolt),
		check.Positive("Members", p.Members),
		check.Within("Introduction", p.Introduction, 0, 1),
	); err != nil {
		return 0, err
	}
	return p.Introduction * p.Members / (p.Bolt + p.Members), nil
}

// JointLoadParams describes a tightened joint under a working load along the bolt.
type JointLoadParams struct {
	Preload    float64 // N, F_V: preload after embedding
	LoadFactor float64 // -, Φ: load factor
	Load       float64 // N, F_A: working load, positive where it pulls the joint apart
}

func (p JointLoadParams) check(fn string) error {
	return check.All(fn,
		check.NotNegative("Preload", p.Preload),
		check.Within("LoadFactor", p.LoadFactor, 0, 1),
		check.Finite("Load", p.Load),
	)
}

// ResidualClamp returns the clamp left in the joint face under a working load; below zero the joint has opened.
//
//	F_K = F_V − (1 − Φ)·F_A
//
//	F_K  residual clamp, N
//
// Valid for a closed joint. A value below zero is how much of the load the
// joint no longer balances: beyond it the bolt carries all of F_A and the formula ends.
// Errors: *check.RangeError for a negative preload or Φ outside 0 to 1.
// Source: VDI 2230-1:2015, 3.2.1 (from memory).
func ResidualClamp(p JointLoadParams) (float64, error) {
	if err := p.check("bolt.ResidualClamp"); err != nil {
		return 0, err
	}
	return p.Preload - (1-p.LoadFactor)*p.Load, nil
}

// BoltForce returns the force in the bolt of a closed joint under a working load.
//
//	F_S = F_V + Φ·F_A
//
//	F_S  force in the bolt, N
//
// Valid for a closed joint.
// Errors: *check.RangeError for a negative preload, Φ outside 0 to 1, or a load that opens the joint.
// Source: VDI 2230-1:2015, 3.2.1 (from memory).
func BoltForce(p JointLoadParams) (float64, error) {
	const fn = "bolt.BoltForce"
	if err := p.check(fn); err != nil {
		return 0, err
	}
	if err := check.All(fn,
		check.That("Load", p.Load, (1-p.LoadFactor)*p.Load <= p.Preload, "(1 − Φ)·F_A <= F_V, else the joint opens"),
	); err != nil {
		return 0, err
	}
	return p.Preload + p.LoadFactor*p.Load, nil
}

// OpeningLoad returns the working load at which a joint begins to open.
//
//	F_A = F_V/(1 − Φ)
//
//	preload     preload after embedding F_V, N
//	loadFactor  load factor Φ, -
//	F_A         working load that takes all clamp away, N
//
// Valid for loads along the bolt's axis, 0 <= Φ < 1.
// Errors: *check.RangeError outside that range or for a negative preload.
// Source: VDI 2230-1:2015, 3.2.1 (from memory).
func OpeningLoad(preload, loadFactor float64) (float64, error) {
	if err := check.All("bolt.OpeningLoad",
		check.NotNegative("preload", preload),
		check.That("loadFactor", loadFactor, loadFactor >= 0 && loadFactor < 1, "0 <= Φ < 1"),
	); err != nil {
		return 0, err
	}
	return preload / (1 - loadFactor), nil
}

// OverloadParams describes a bolt, its preload and its working load.
type OverloadParams struct {
	Proof      float64 // Pa, S_p: stress under proof load
	StressArea float64 // m², A_t: tensile stress area
	Preload    float64 // N, F_i: preload
	LoadFactor float64 // -, C: load factor
	Load       float64 // N, P: working load
}

// OverloadFactor returns by how much the working load may grow before the bolt reaches its proof stress.
//
//	n_L = (S_p·A_t − F_i)/(C·P)
//
//	n_L  overload factor, -
//
// Valid for a closed joint with a preload below the proof load.
// Errors: *check.RangeError outside F_i <= S_p·A_t, 0 < C <= 1, P > 0.
// Source: Shigley's Mechanical Engineering Design, 9th ed., eq. 8-29 (from memory).
func OverloadFactor(p OverloadParams) (float64, error) {
	if err := check.All("bolt.OverloadFactor",
		check.Positive("Proof", p.Proof),
		check.Positive("StressArea", p.StressArea),
		check.That("Preload", p.Preload, p.Preload >= 0 && p.Preload <= p.Proof*p.StressArea, "0 <= F_i <= S_p·A_t"),
		check.That("LoadFactor", p.LoadFactor, p.LoadFactor > 0 && p.LoadFactor <= 1, "0 < C <= 1"),
		check.Positive("Load", p.Load),
	); err != nil {
		return 0, err
	}
	return (p.Proof*p.StressArea - p.Preload) / (p.LoadFactor * p.Load), nil
}

// HeadPressure returns the pressure under a bolt head.
//
//	p = F_S/(π/4·(d_W² − d_h²))
//
//	force    greatest force in the bolt F_S, N
//	bearing  outside diameter of the bearing face d_W, m
//	hole     diameter of the hole, chamfer included d_h, m
//	p        pressure under the head, Pa
//
// Valid for a face that bears all round.
// Errors: *check.RangeError outside 0 < hole < bearing, or for a negative force.
// Source: VDI 2230-1:2015, 5.5.4 (from memory).
func HeadPressure(force, bearing, hole float64) (float64, error) {
	if err := check.All("bolt.HeadPressure",
		check.NotNegative("force", force),
		check.Positive("bearing", bearing),
		check.That("hole", hole, hole > 0 && hole < bearing, "0 < hole < bearing"),
	); err != nil {
		return 0, err
	}
	return force / ringArea(bearing, hole), nil
}
