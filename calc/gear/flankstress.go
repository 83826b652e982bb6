package gear

import (
	"math"

	"axlewright/calc/check"
)

// FlankStressParams is what the contact stress on the flanks follows from.
type FlankStressParams struct {
	Cones       PitchCones     // pitch cones of the pair
	Angles      PressureAngles // pressure angles of both flanks
	Virtual     VirtualGears   // virtual cylindrical gears for the loaded flank, 2014 edition
	WheelTorque float64        // N·m, T2: torque carried by the crown wheel
	Flank       Flank          // name, flank of the crown wheel that carries it
	Crowning    float64        // -, e: how the load falls off to the edges of the pattern; optional, 3 (1.5 high crowning to 3 low)
	Young       float64        // Pa, E: Young's modulus of both members; optional, 206·10⁹ (200 to 210·10⁹)
	Load        LoadFactors    // load factors
}

// FlankStressResult is the contact stress and what it is made of.
type FlankStressResult struct {
	Stress     float64 // Pa, σ_H: contact stress
	Normal     float64 // N, F_n: force square to the flank, without load factors
	Curvature  float64 // m, ρ_rel: relative radius of curvature across the line of contact
	Length     float64 // m, l_bm: length of the middle line of contact
	MidZone    float64 // -, Z_MB: mid-zone factor
	Sharing    float64 // -, Z_LS: load sharing factor
	SlideShare float64 // -, v_g,par/v_Σ,vert: sliding along the line of contact against rolling across it
	Hypoid     float64 // -, Z_Hyp: what that sliding leaves of the permissible stress
}

// FlankStress returns the contact stress on the loaded flanks.
//
//	σ_H = √(F_n/(l_bm·ρ_rel))·Z_MB·Z_LS·Z_E·Z_K·√(K_A·K_v·K_Hβ·K_Hα)
//	F_n = T2/(r_m2·cos α_n·cos β2)
//	ρ_rel = ρ_t·cos²β_B, tan β_B = tan β_v·sin α_e
//	1/ρ_t = cos β1·cos β2/cos ζ·(1/(R_m1·tan δ1) + 1/(R_m2·tan δ2))/(cos α_n·(tan α_n ∓ tan α_lim) + tan ζ·tan β_B)
//	Z_MB = tan α_vet/√((√((d_va1/d_vb1)² − 1) − F1·π/z_v1)·(√((d_va2/d_vb2)² − 1) − F2·π/z_v2))
//	F1 = 2 + (ε_vα − 2)·ε_vβ, F2 = 2·ε_vα − 2 + (2 − ε_vα)·ε_vβ, both ε_vα for ε_vβ ≥ 1
//	Z_LS = √(A_m/(A_t + A_m + A_r)), as RootStress
//	Z_E = √(E/(2·π·(1 − ν²))), ν = 0.3
//	Z_K = 0.85, from trials of bevel gears
//	Z_Hyp = 1 − 0.3·(v_g,par/v_Σ,vert − 0.15), from 0.6 to 1
//
// Z_Hyp lowers the permissible stress and is handed on to PermissibleFlankStress.
//
// Valid for ε_vα < 2, an average spiral angle up to 45° and effective pressure
// angles up to 30°; beyond the last two the standard wants the result confirmed
// by experience.
// Errors: *check.RangeError outside that range.
// Source: ISO 10300-2:2014 with ISO 10300-1:2014, annex A, method B1 (from memory).
func FlankStress(p FlankStressParams) (FlankStressResult, error) {
	const fn = "gear.FlankStress"
	c, v := p.Cones, p.Virtual
	load := p.Load.filled()
	crowning, young := orElse(p.Crowning, 3), orElse(p.Young, 206e9)
	generated, effective := p.Angles.GeneratedDrive, p.Angles.EffectiveDrive
	if p.Flank == Coast {
		generated, effective = p.Angles.GeneratedCoast, p.Angles.EffectiveCoast
	}
	if err := c.valid(fn); err != nil {
		return FlankStressResult{}, err
	}
	if err := check.All(fn, append(load.conditions(),
		knownFlank(p.Flank), check.NotNegative("WheelTorque", p.WheelTorque), check.Within("Crowning", crowning, 1, 4),
		check.Positive("Young", young), check.Positive("Virtual.Face", v.Face),
		pressureAngle("Angles", generated), pressureAngle("Angles", effective),
	)...); err != nil {
		return FlankStressResult{}, err
	}
	zone := v.zone()
	r := FlankStressResult{
		Normal:    p.WheelTorque / (c.WheelMeanRadius * math.Cos(generated) * math.Cos(c.WheelSpiral)),
		Curvature: relativeCurvature(c, v.Helix, generated, effective),
		Length:    zone.length(zone.middle),
		MidZone:   midZoneFactor(v),
		Sharing:   math.Sqrt(zone.middleShare(crowning)),
	}
	r.SlideShare = slideShare(c, v.Helix, generated, effective)
	r.Hypoid = min(1, max(0.6, 1-0.3*(r.SlideShare-0.15)))
	if err := check.All(fn, check.That("Virtual", r.MidZone, r.MidZone > 0, "a path of contact within both base circles")); err != nil {
		return FlankStressResult{}, err // NaN where a flank's contact would leave the involute
	}
	const bevel, poisson = 0.85, 0.3
	elasticity := math.Sqrt(young / (2 * math.Pi * (1 - poisson*poisson)))
	r.Stress = math.Sqrt(r.Normal/(r.Length*r.Curvature)) * r.MidZone * r.Sharing * elasticity * bevel *
		math.Sqrt(load.Application*load.Dynamic*load.FaceLoad*load.Transverse)
	return r, nil
}

// relativeCurvature is ρ_rel at the mean point.
func relativeCurvature(c PitchCones, helix, generated, effective float64) float64 {
	tanLine := math.Tan(helix) * math.Sin(effective)
	lead := math.Sin(generated) - math.Cos(generated)*math.Tan(generated-effective) + math.Tan(c.OffsetAngle)*tanLine
	across := math.Cos(c.PinionSpiral) * math.Cos(c.WheelSpiral) / math.Cos(c.OffsetAngle) *
		(1/(c.PinionConeDistance*math.Tan(c.PinionPitchAngle)) + 1/(c.WheelConeDistance*math.Tan(c.WheelPitchAngle)))
	return lead / across / (1 + tanLine*tanLine)
}

// midZoneFactor is Z_MB.
func midZoneFactor(v VirtualGears) float64 {
	a, b := v.ProfileOverlap, min(1, v.FaceOverlap)
	f1, f2 := 2+(a-2)*b, 2*a-2+(2-a)*b
	reach := func(tip, base, f, teeth float64) float64 {
		return math.Sqrt(tip*tip/(base*base)-1) - f*math.Pi/teeth
	}
	return math.Tan(v.PressureAngle) / math.Sqrt(reach(v.PinionTip, v.PinionBase, f1, v.PinionTeeth)*
		reach(v.WheelTip, v.WheelBase, f2, v.WheelTeeth))
}

// slideShare is the sliding along the line of contact over the sum of the
// rolling velocities across it, at the mean point.
func slideShare(c PitchCones, helix, generated, effective float64) float64 {
	line := math.Atan(math.Tan(helix) * math.Sin(effective))
	slide := math.Sin(c.OffsetAngle) / math.Cos(c.WheelSpiral) // per pitch-line velocity of the pinion
	up := 2 * math.Cos(c.PinionSpiral) * math.Sin(generated)
	along := math.Sin(c.PinionSpiral) + math.Cos(c.PinionSpiral)*math.Tan(c.WheelSpiral)
	return math.Abs(slide) * math.Cos(line) / (math.Hypot(up, along) * math.Sin(math.Atan2(up, along)+line))
}
