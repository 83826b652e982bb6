package gear

import (
	"math"

	"axlewright/calc/check"
)

// Edition names the edition of ISO 10300 whose virtual cylindrical gears are meant.
type Edition string

const (
	ISO10300of2001 Edition = "ISO 10300:2001" // the whole face width counts
	ISO10300of2014 Edition = "ISO 10300:2014" // method B1: the length of the contact pattern counts
)

// VirtualParams is what the virtual cylindrical gears of a pair follow from.
type VirtualParams struct {
	Cones         PitchCones // pitch cones of the pair
	PinionAddend  float64    // m, h_am1: addendum of the pinion at the mean point
	WheelAddend   float64    // m, h_am2: addendum of the wheel at the mean point
	FaceWidth     float64    // m, b2: face width of the wheel
	PatternShare  float64    // -, b_2,eff/b2: length of the contact pattern under load as a share of the face; optional, 0.85 (0.7 to 1.0)
	PressureAngle float64    // rad, α_e: effective pressure angle of the loaded flank
	Edition       Edition    // name, edition of the standard
}

// VirtualGears are helical gears that mesh as the bevel or hypoid pair does at
// the mean point.
type VirtualGears struct {
	PinionTeeth    float64 // -, z_v1: virtual number of teeth of the pinion
	WheelTeeth     float64 // -, z_v2: virtual number of teeth of the wheel
	PinionDiameter float64 // m, d_v1: reference diameter of the pinion
	WheelDiameter  float64 // m, d_v2: reference diameter of the wheel
	PinionTip      float64 // m, d_va1: tip diameter of the pinion
	WheelTip       float64 // m, d_va2: tip diameter of the wheel
	PinionBase     float64 // m, d_vb1: base diameter of the pinion
	WheelBase      float64 // m, d_vb2: base diameter of the wheel
	Helix          float64 // rad, β_v: helix angle
	BaseHelix      float64 // rad, β_vb: helix angle on the base cylinder
	PressureAngle  float64 // rad, α_vet: effective transverse pressure angle
	BasePitch      float64 // m, p_vet: transverse base pitch
	Path           float64 // m, g_vα: length of the path of contact
	Face           float64 // m, b_v: face width
	ActiveFace     float64 // m, b_v,eff: face width that the contact pattern covers
	Slant          float64 // rad, γ: lean of the zone of action of a hypoid pair; zero for bevel pairs
	ProfileOverlap float64 // -, ε_vα: profile contact ratio
	FaceOverlap    float64 // -, ε_vβ: overlap ratio
	TotalOverlap   float64 // -, ε_vγ: sum of both
}

// VirtualCylindricalGears returns the helical gears that stand in for a bevel or
// hypoid pair in sums of strength.
//
//	d_v = 2·R_m·tan δ
//	β_v = (β1 + β2)/2
//	α_vet = atan(tan α_e/cos β_v)
//	β_vb = asin(sin β_v·cos α_e)
//	d_va = d_v + 2·h_am
//	d_vb = d_v·cos α_vet
//	z_v = d_v·cos β_v/m_mn
//	g_vα = ½·(√(d_va1² − d_vb1²) + √(d_va2² − d_vb2²)) − ½·(d_v1 + d_v2)·sin α_vet
//	p_vet = π·m_mn·cos α_vet/cos β_v
//	ε_vα = g_vα/p_vet
//	ε_vβ = b_v,eff·sin β_v/(π·m_mn)
//	ε_vγ = ε_vα + ε_vβ
//	2001: b_v,eff = b_v = b2
//	2014: b_v,eff = (b_2,eff/cos(ζ/2) − g_vα·cos α_vet·tan(ζ/2))/(1 − tan γ·tan(ζ/2)), b_v = b2·b_v,eff/b_2,eff
//	γ = atan(sin δ2·tan ζ_m) − ζ/2, sin ζ_m = cos δ1·sin ζ
//
// Valid for axes at a right angle, 0.5 ≤ ε_vα < 2, ε_vγ ≥ 1, and for the 2001
// edition bevel pairs without offset only.
// Errors: *check.RangeError outside that range or where the cones do not touch.
// Source: ISO 10300-1:2001 and ISO 10300-1:2014, annex A (both from memory).
func VirtualCylindricalGears(p VirtualParams) (VirtualGears, error) {
	const fn = "gear.VirtualCylindricalGears"
	c := p.Cones
	if err := c.valid(fn); err != nil {
		return VirtualGears{}, err
	}
	share := orElse(p.PatternShare, 0.85)
	if err := check.All(fn,
		check.That("Edition", 0, p.Edition == ISO10300of2014 || p.Edition == ISO10300of2001, "a known edition"),
		check.That("Cones.Offset", c.Offset, c.Offset == 0 || p.Edition == ISO10300of2014, "zero for the 2001 edition"),
		check.Positive("PinionAddend", p.PinionAddend), check.Positive("WheelAddend", p.WheelAddend),
		faceWidth("FaceWidth", p.FaceWidth, c.WheelConeDistance+p.FaceWidth/2),
		check.Within("PatternShare", share, 0.3, 1),
		check.That("PressureAngle", p.PressureAngle, within(p.PressureAngle, 10, 32), "10° to 32°"),
	); err != nil {
		return VirtualGears{}, err
	}
	v := VirtualGears{
		PinionDiameter: 2 * c.PinionConeDistance * math.Tan(c.PinionPitchAngle),
		WheelDiameter:  2 * c.WheelConeDistance * math.Tan(c.WheelPitchAngle),
		Helix:          (c.PinionSpiral + c.WheelSpiral) / 2,
	}
	cosV := math.Cos(v.Helix)
	v.PressureAngle = math.Atan(math.Tan(p.PressureAngle) / cosV)
	v.BaseHelix = math.Asin(math.Sin(v.Helix) * math.Cos(p.PressureAngle))
	v.PinionTeeth, v.WheelTeeth = v.PinionDiameter*cosV/c.NormalModule, v.WheelDiameter*cosV/c.NormalModule
	v.PinionTip, v.WheelTip = v.PinionDiameter+2*p.PinionAddend, v.WheelDiameter+2*p.WheelAddend
	v.PinionBase, v.WheelBase = v.PinionDiameter*math.Cos(v.PressureAngle), v.WheelDiameter*math.Cos(v.PressureAngle)
	v.BasePitch = math.Pi * c.NormalModule * math.Cos(v.PressureAngle) / cosV
	reach := func(tip, base float64) float64 { return math.Sqrt(tip*tip-base*base) / 2 }
	v.Path = reach(v.PinionTip, v.PinionBase) + reach(v.WheelTip, v.WheelBase) -
		(v.PinionDiameter+v.WheelDiameter)/2*math.Sin(v.PressureAngle)
	v.Face, v.ActiveFace = p.FaceWidth, p.FaceWidth
	if p.Edition == ISO10300of2014 {
		half := math.Tan(c.OffsetAngle / 2)
		sinAxial := math.Cos(c.PinionPitchAngle) * math.Sin(c.OffsetAngle)
		v.Slant = math.Atan(math.Sin(c.WheelPitchAngle)*math.Tan(math.Asin(sinAxial))) - c.OffsetAngle/2
		v.ActiveFace = (share*p.FaceWidth/math.Cos(c.OffsetAngle/2) - v.Path*math.Cos(v.PressureAngle)*half) /
			(1 - math.Tan(v.Slant)*half)
		v.Face = v.ActiveFace / share
	}
	v.ProfileOverlap = v.Path / v.BasePitch
	v.FaceOverlap = v.ActiveFace * math.Sin(v.Helix) / (math.Pi * c.NormalModule)
	v.TotalOverlap = v.ProfileOverlap + v.FaceOverlap
	return v, check.All(fn,
		check.Positive("ActiveFace", v.ActiveFace),
		check.That("ProfileOverlap", v.ProfileOverlap, v.ProfileOverlap >= 0.5 && v.ProfileOverlap < 2, "0.5 to below 2"),
		check.That("TotalOverlap", v.TotalOverlap, v.TotalOverlap >= 1, ">= 1, or the teeth lose each other"))
}
