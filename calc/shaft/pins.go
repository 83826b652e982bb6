package shaft

import (
	"math"

	"axlewright/calc/check"
)

// CentrePinParams describes the pins of a diff centre, which pass the crown
// wheel's torque from the case to the bevel pinions.
type CentrePinParams struct {
	Torque       float64 // N·m, T: torque of the crown wheel
	Diameter     float64 // m, d: diameter of a pin
	Ends         int     // -, n: pin ends held in the case, 2 for a two-pin centre's one through pin, 4 for a four-pin centre
	Radius       float64 // m, r: distance from the wheel's axis at which the pin leaves the case
	Unevenness   float64 // -, K: load of the most loaded end over the mean; 1 for two ends, more for four
	Wall         float64 // m, w: length of pin borne in the case wall
	ShearLimit   float64 // Pa, shear strength the pin is held to
	BearingYield float64 // Pa, pressure on the case wall that it is held to; optional
}

// CentrePinResult is the load and the limit of the most loaded pin end.
type CentrePinResult struct {
	Force         float64 // N, F: force on the most loaded end
	Stress        float64 // Pa, τ: mean shear stress
	Pressure      float64 // Pa, p: bearing pressure in the case wall
	ShearTorque   float64 // N·m, crown-wheel torque at the shear strength
	BearingTorque float64 // N·m, crown-wheel torque at the bearing pressure; zero where none is given
}

// CentrePins returns shear, bearing pressure and limiting torque of the pins
// of a diff centre.
//
//	F = K·T/(n·r)
//	τ = 4·F/(π·d²),  p = F/(d·w)
//	T at the limit = n·r/K·π·d²/4·τ_limit, or n·r/K·d·w·p_limit
//
// Every end passes its share into the case in single shear. Two ends share by
// statics; four share by luck of making, which the unevenness stands for.
//
// Valid for pins without a flat in the shear plane.
// Errors: *check.RangeError for other than 2, 3 or 4 ends, K below 1 or a
// dimension that is not positive.
// Source: Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th
// edition, section 8-12 (pin in shear, projected area); the unevenness of four
// pins is common practice, no source.
func CentrePins(p CentrePinParams) (CentrePinResult, error) {
	if err := check.All("shaft.CentrePins",
		check.NotNegative("Torque", p.Torque),
		check.Positive("Diameter", p.Diameter),
		check.Within("Ends", float64(p.Ends), 2, 4),
		check.Positive("Radius", p.Radius),
		check.That("Unevenness", p.Unevenness, p.Unevenness >= 1, ">= 1"),
		check.Positive("Wall", p.Wall),
		check.Positive("ShearLimit", p.ShearLimit),
		check.NotNegative("BearingYield", p.BearingYield),
	); err != nil {
		return CentrePinResult{}, err
	}
	lever := float64(p.Ends) * p.Radius / p.Unevenness
	area := math.Pi / 4 * p.Diameter * p.Diameter
	force := p.Torque / lever
	return CentrePinResult{
		Force: force, Stress: force / area, Pressure: force / (p.Diameter * p.Wall),
		ShearTorque:   lever * area * p.ShearLimit,
		BearingTorque: lever * p.Diameter * p.Wall * p.BearingYield,
	}, nil
}

// CrossJointParams describes a propshaft joint: a cross with four trunnions in
// needle bearings.
type CrossJointParams struct {
	Arm        float64 // m, R: distance from the joint's centre to the middle of a needle bearing
	Root       float64 // m, s: distance from the middle of the needle bearing to the root of the trunnion
	Diameter   float64 // m, d: diameter of the trunnion
	Bore       float64 // m, d_o: oil hole of the trunnion; optional
	Angle      float64 // rad, β: angle of the joint
	Yield      float64 // Pa, R_e: yield strength of the trunnion
	StaticLoad float64 // N, C_0: static load rating of one needle bearing
}

// CrossJointResult is the torque at which each part gives out.
type CrossJointResult struct {
	Bending float64 // N·m, torque at which a trunnion yields in bending at its root
	Shear   float64 // N·m, torque at which a trunnion yields in shear
	Bearing float64 // N·m, torque at which a needle bearing dents
	Least   float64 // N·m, the least of the three
}

// CrossJointTorque returns the torque a propshaft joint stands at slow speed.
//
//	T = F·2·R·cos β for a force F on each trunnion
//	F_bending = R_e·π·(d⁴ − d_o⁴)/(32·d·s),  F_bearing = C_0
//	F_shear = R_e/√3·3/4·A·(d² + d_o²)/(d² + d·d_o + d_o²),  A = π/4·(d² − d_o²)
//
// Each shaft's torque is a pair of forces on two trunnions. The joint's angle
// raises the force where the cross leans, at the worst by 1/cos β.
//
// Valid for 0 <= β < 45°, trunnions longer than a quarter of their diameter;
// the fillet at the root raises the stress for fatigue, not for yield. The
// yokes, the tube and the flange are not looked at.
// Errors: *check.RangeError outside that range.
// Source: Schmelz, Seherr-Thoss and Aucktor, Universal Joints and Driveshafts,
// 2nd edition, section 4.2 (from memory); shear of a round section and
// of a tube: Gere, Mechanics of Materials, 5th edition, section 5.9.
func CrossJointTorque(p CrossJointParams) (CrossJointResult, error) {
	if err := check.All("shaft.CrossJointTorque",
		check.Positive("Diameter", p.Diameter),
		check.That("Arm", p.Arm, p.Arm > p.Diameter/2, "> d/2"),
		check.That("Root", p.Root, p.Root >= p.Diameter/4 && p.Root < p.Arm, "d/4 <= s < R"),
		check.That("Bore", p.Bore, p.Bore >= 0 && p.Bore < p.Diameter, "0 <= d_o < d"),
		check.That("Angle", p.Angle, p.Angle >= 0 && p.Angle < math.Pi/4, "0 <= β < π/4"),
		check.Positive("Yield", p.Yield),
		check.Positive("StaticLoad", p.StaticLoad),
	); err != nil {
		return CrossJointResult{}, err
	}
	d, hole := p.Diameter, p.Bore
	lever := 2 * p.Arm * math.Cos(p.Angle)
	bend := p.Yield * math.Pi * (math.Pow(d, 4) - math.Pow(hole, 4)) / (32 * d * p.Root)
	shear := p.Yield / math.Sqrt(3) * 3 / 4 * math.Pi * (d*d - hole*hole) / 4 * (d*d + hole*hole) / (d*d + d*hole + hole*hole)
	r := CrossJointResult{Bending: bend * lever, Shear: shear * lever, Bearing: p.StaticLoad * lever}
	r.Least = min(r.Bending, r.Shear, r.Bearing)
	return r, nil
}
