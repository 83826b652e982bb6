package bearing

import (
	"math"

	"axlewright/calc/check"
)

// Rib friction of taper rollers turned by hand in oil: the ends rub on a thin
// film or none. Common practice, no source; at breakaway 0.2 is met. A reading
// of one's own bearings narrows it: see [RibFriction].
const (
	RibFrictionLow    = 0.04
	RibFrictionLikely = 0.09
	RibFrictionHigh   = 0.15
)

// PreloadedBearing is one bearing of a pair that preload presses together.
type PreloadedBearing struct {
	MeanDiameter float64 // m, d_m: mean of bore and outside diameter
	Y            float64 // -, Y: axial factor above e
	HalfTaper    float64 // rad, φ: half of the angle between cup and cone raceway
	RibHeight    float64 // m, h: height of the roller end's touch on the rib above the cone raceway; about a tenth of the roller diameter
}

// TurningTorqueParams holds the inputs of [TurningTorque].
type TurningTorqueParams struct {
	Bearings []PreloadedBearing // bearings on the shaft that carry the same preload
	Preload  float64            // N, F_a: axial preload
	F0       float64            // -, f_0: oil factor
	F1       float64            // -, f_1: load factor
	Seal     float64            // N·m, M_S: drag of the seal, zero when it is out; optional
	Friction float64            // -, µ: friction of roller ends on the rib; zero for the spread of common practice; optional
}

// TurningTorqueResult holds the torque that turns a preloaded shaft by hand.
type TurningTorqueResult struct {
	Likely  float64 // N·m, M: likely torque
	Low     float64 // N·m, M_low: torque with slippery ribs
	High    float64 // N·m, M_high: torque with dry ribs
	Rolling float64 // N·m, M_1: share of rolling, all bearings
	Oil     float64 // N·m, M_0: share of the oil, all bearings
	Rib     float64 // N·m, M_R: likely share of the ribs, all bearings
}

// TurningTorque returns the torque that turns a shaft on preloaded taper
// rollers steadily by hand.
//
//	M = M_S + Σ (0.000016·f_0·d_m^3 + f_1·2·Y·F_a·d_m + µ·h·F_a/cos φ)
//
// The first term stands in N·mm and mm. The last follows from the power lost
// where the roller ends slide on the rib while the rollers roll truly on both
// raceways: rib force 2·sin φ·F_a/(Z·sin α), roller turning on the cone at
// ω·sin α/sin 2φ. Low and high come from the spread of µ.
// Valid for hand speed, after some turns to seat the rollers; calibrate to the
// bench, new and used bearings apart: run in, drag falls by up to a half.
// Errors: *check.RangeError for an input outside its range or no bearing.
// Source: Palmgren 1959 (from memory); rib term derived, in form the known
// M = µ·e·F_a·cos β of bearing handbooks (from memory).
func TurningTorque(p TurningTorqueParams) (TurningTorqueResult, error) {
	const fn = "bearing.TurningTorque"
	d, err := dragOf(fn, p)
	if err != nil {
		return TurningTorqueResult{}, err
	}
	if err := check.All(fn, check.NotNegative("Preload", p.Preload)); err != nil {
		return TurningTorqueResult{}, err
	}
	at := func(mu float64) float64 { return d.still + (d.rolling+mu*d.rib)*p.Preload }
	return TurningTorqueResult{
		Likely: at(d.likely), Low: at(d.low), High: at(d.high),
		Rolling: d.rolling * p.Preload, Oil: d.still - p.Seal, Rib: d.likely * d.rib * p.Preload,
	}, nil
}

// PreloadResult holds the preload that a turning torque tells of.
type PreloadResult struct {
	Likely float64 // N, F_a: likely axial preload
	Low    float64 // N, F_a,low: axial preload with dry ribs
	High   float64 // N, F_a,high: axial preload with slippery ribs
}

// PreloadFromTorque returns the axial preload that a steady turning torque,
// measured by hand, tells of.
//
//	F_a = (M − M_S − Σ 0.000016·f_0·d_m^3)/Σ (f_1·2·Y·d_m + µ·h/cos φ)
//
//	p       bearings, factors and seal; its preload is not used
//	torque  steady turning torque M, N·m
//
// The first sum stands in N·mm and mm. Low and high come from the spread of µ
// and are a factor of two and more apart: a torque sets bearings alike, it does
// not measure a force.
// Valid for torques not below seal and oil drag together.
// Errors: *check.RangeError outside that range or as TurningTorque.
// Source: TurningTorque solved for the preload.
func PreloadFromTorque(p TurningTorqueParams, torque float64) (PreloadResult, error) {
	const fn = "bearing.PreloadFromTorque"
	d, err := dragOf(fn, p)
	if err != nil {
		return PreloadResult{}, err
	}
	if err := check.All(fn, check.That("torque", torque, torque >= d.still, "not below seal and oil drag")); err != nil {
		return PreloadResult{}, err
	}
	at := func(mu float64) float64 { return (torque - d.still) / (d.rolling + mu*d.rib) }
	return PreloadResult{Likely: at(d.likely), Low: at(d.high), High: at(d.low)}, nil
}

// RibFriction returns the rib friction that a bench reading tells of: a torque
// measured at a preload known from a spring, a press or shim and stiffness.
//
//	µ = [(M − M_S − Σ 0.000016·f_0·d_m^3)/F_a − Σ f_1·2·Y·d_m]/Σ h/cos φ
//
//	p       bearings, factors, seal and the known preload
//	torque  steady turning torque M, N·m
//	µ       friction of roller ends on the rib, -
//
// The first sum stands in N·mm and mm.
// Valid for readings that leave something for the ribs.
// Errors: *check.RangeError outside that range or as TurningTorque.
// Source: TurningTorque solved for µ.
func RibFriction(p TurningTorqueParams, torque float64) (float64, error) {
	const fn = "bearing.RibFriction"
	d, err := dragOf(fn, p)
	if err != nil {
		return 0, err
	}
	if err := check.All(fn,
		check.Positive("Preload", p.Preload),
		check.That("torque", torque, torque >= d.still+d.rolling*p.Preload, "not below seal, oil and rolling drag"),
	); err != nil {
		return 0, err
	}
	return ((torque-d.still)/p.Preload - d.rolling) / d.rib, nil
}

// SpringBalancePull returns the pull that shows on a spring balance hooked to a
// flange or to a string wound round it.
//
//	F = M/r
//
//	torque  turning torque M, N·m
//	radius  lever of the pull r, m
//	F       pull, N
//
// Valid for a pull square to the radius, read while turning steadily.
// Errors: *check.RangeError for a negative torque or a radius not above zero.
// Source: definition of torque.
func SpringBalancePull(torque, radius float64) (float64, error) {
	if err := check.All("bearing.SpringBalancePull",
		check.NotNegative("torque", torque),
		check.Positive("radius", radius),
	); err != nil {
		return 0, err
	}
	return torque / radius, nil
}

// drag holds what turning torque is made of: still at no preload, the others
// per newton of preload, rib also per unit of friction.
type drag struct {
	still, rolling, rib float64
	low, likely, high   float64 // friction
}

func dragOf(fn string, p TurningTorqueParams) (drag, error) {
	if err := check.All(fn,
		check.That("Bearings", float64(len(p.Bearings)), len(p.Bearings) > 0, "one at least"),
		check.NotNegative("F0", p.F0),
		check.Positive("F1", p.F1),
		check.NotNegative("Seal", p.Seal),
		check.Within("Friction", p.Friction, 0, 1),
	); err != nil {
		return drag{}, err
	}
	d := drag{still: p.Seal, low: RibFrictionLow, likely: RibFrictionLikely, high: RibFrictionHigh}
	if p.Friction > 0 {
		d.low, d.likely, d.high = p.Friction, p.Friction, p.Friction
	}
	for _, b := range p.Bearings {
		if err := check.All(fn,
			check.Positive("MeanDiameter", b.MeanDiameter),
			check.Positive("Y", b.Y),
			check.That("HalfTaper", b.HalfTaper, b.HalfTaper > 0 && b.HalfTaper < math.Pi/4, "0 < φ < π/4"),
			check.Positive("RibHeight", b.RibHeight),
		); err != nil {
			return drag{}, err
		}
		d.still += oilDrag(p.F0, b.MeanDiameter, 0)
		d.rolling += p.F1 * 2 * b.Y * b.MeanDiameter
		d.rib += b.RibHeight / math.Cos(b.HalfTaper)
	}
	return d, nil
}
