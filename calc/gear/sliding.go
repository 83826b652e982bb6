package gear

import (
	"math"

	"axlewright/calc/check"
)

// Driver says which member puts the power in.
type Driver string

const (
	PinionDrives Driver = "pinion drives" // pulling
	WheelDrives  Driver = "wheel drives"  // overrun
)

// MeshLossParams is what the loss in the mesh follows from.
type MeshLossParams struct {
	Cones         PitchCones   // pitch cones of the pair
	Virtual       VirtualGears // virtual cylindrical gears for the loaded flank
	PressureAngle float64      // rad, α_n: generated pressure angle of the loaded flank
	WheelTorque   float64      // N·m, T2: torque at the crown wheel
	WheelSpeed    float64      // rad/s, ω2: speed of the crown wheel
	Friction      float64      // -, µ: coefficient of tooth friction; 0.03 to 0.08 in hypoid oil, common practice
	Driver        Driver       // name, which member puts the power in
}

// MeshLossResult is the loss in the mesh.
type MeshLossResult struct {
	Efficiency   float64 // -, η: power out over power in, of the mesh alone
	Loss         float64 // W, P_v: power lost in the mesh
	PinionTorque float64 // N·m, T1: torque at the pinion, friction counted
	SlidingAlong float64 // m/s, v_g: sliding along the tooth at the mean point; zero without offset
	SlidingMean  float64 // m/s, v_s: mean sliding over the path of contact
	NormalForce  float64 // N, F_n: force square to the flank
}

// MeshLoss returns the power lost to friction in the mesh of a bevel or hypoid
// pair, and its efficiency.
//
//	P_v = µ·F_n·v_s
//	v_g = ω2·r_m2·sin ζ/cos β1
//	v_s = mean over the path of √(v_g² + (x·(ω_v1 + ω_v2))²)
//	ω_v = ω2·r_m2·cos β2/cos β_v/(d_v/2)
//	F_n = T2/(r_m2·(cos α_n·cos β2 ± µ·(v_g/v_s)·sin β2)), plus where the pinion drives
//	η = T2·ω2/(T2·ω2 + P_v) where the pinion drives, 1 − P_v/(T2·ω2) where the wheel drives
//
// x runs along the path of contact of the virtual gears, from their pitch point.
// With the path short it is the closed form η = (cos α_n + µ·tan β2)/(cos α_n + µ·tan β1).
// Bearings, oil churning and seals are not in it.
//
// Valid for 0 ≤ µ ≤ 0.2, an even load along the path, the same friction in both directions of sliding.
// Errors: *check.RangeError outside that range or where the cones do not touch.
// Source: closed form for crossed teeth as in books on hypoid gears; profile sliding
// as in Niemann and Winter, Maschinenelemente II (both from memory).
func MeshLoss(p MeshLossParams) (MeshLossResult, error) {
	const fn = "gear.MeshLoss"
	c, v := p.Cones, p.Virtual
	if err := c.valid(fn); err != nil {
		return MeshLossResult{}, err
	}
	if err := check.All(fn,
		pressureAngle("PressureAngle", p.PressureAngle), check.Positive("WheelTorque", p.WheelTorque),
		check.Positive("WheelSpeed", p.WheelSpeed), check.Within("Friction", p.Friction, 0, 0.2),
		check.That("Driver", 0, p.Driver == PinionDrives || p.Driver == WheelDrives, "pinion drives or wheel drives"),
		check.Positive("Virtual.Path", v.Path), check.Positive("Virtual.PinionDiameter", v.PinionDiameter), check.Positive("Virtual.WheelDiameter", v.WheelDiameter),
	); err != nil {
		return MeshLossResult{}, err
	}
	pitchLine := p.WheelSpeed * c.WheelMeanRadius
	r := MeshLossResult{SlidingAlong: pitchLine * math.Abs(math.Sin(c.OffsetAngle)) / math.Cos(c.PinionSpiral)}
	turning := pitchLine * math.Cos(c.WheelSpiral) / math.Cos(v.Helix) * (2/v.PinionDiameter + 2/v.WheelDiameter)
	afterPitch := (math.Sqrt(v.PinionTip*v.PinionTip-v.PinionBase*v.PinionBase) - v.PinionDiameter*math.Sin(v.PressureAngle)) / 2
	r.SlidingMean = (slidOver(r.SlidingAlong, turning, afterPitch) + slidOver(r.SlidingAlong, turning, v.Path-afterPitch)) / v.Path
	alongShare := 0.0
	if r.SlidingAlong > 0 {
		alongShare = r.SlidingAlong / r.SlidingMean
	}
	// Friction along the tooth helps the wheel round where the pinion drives, and
	// the other way about, if the pinion's spiral angle is the greater.
	side := math.Copysign(1, c.OffsetAngle)
	if p.Driver == WheelDrives {
		side = -side
	}
	r.NormalForce = p.WheelTorque / (c.WheelMeanRadius * (math.Cos(p.PressureAngle)*math.Cos(c.WheelSpiral) +
		side*p.Friction*alongShare*math.Sin(c.WheelSpiral)))
	r.Loss = p.Friction * r.NormalForce * r.SlidingMean
	power := p.WheelTorque * p.WheelSpeed
	gear := float64(c.PinionTeeth) / float64(c.WheelTeeth)
	if p.Driver == PinionDrives {
		r.Efficiency = power / (power + r.Loss)
		r.PinionTorque = p.WheelTorque * gear / r.Efficiency
		return r, nil
	}
	r.Efficiency = 1 - r.Loss/power
	r.PinionTorque = p.WheelTorque * gear * r.Efficiency
	return r, check.All(fn, check.That("Friction", p.Friction, r.Efficiency > 0, "what lets the wheel drive the pinion"))
}

// slidOver is the integral of √(along² + (turning·x)²) from the pitch point to x = length.
func slidOver(along, turning, length float64) float64 {
	profile := turning * length
	total := math.Hypot(along, profile)
	if along == 0 {
		return profile * math.Abs(length) / 2
	}
	return (length*total + along*along/turning*math.Asinh(profile/along)) / 2
}
