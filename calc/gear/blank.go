package gear

import (
	"math"

	"axlewright/calc/check"
)

// ToothForm says whether teeth run straight to the apex or in a spiral.
type ToothForm string

const (
	StraightTeeth ToothForm = "straight" // straight bevel
	SpiralTeeth   ToothForm = "spiral"   // spiral bevel of about 35°
)

// BlankParams is what a bevel blank follows from.
type BlankParams struct {
	PinionTeeth int       // -, z1: number of teeth of the pinion
	WheelTeeth  int       // -, z2: number of teeth of the wheel
	OuterModule float64   // m, m_et: transverse module at the large end
	FaceWidth   float64   // m, b: face width along the pitch cone
	Form        ToothForm // name, straight or spiral teeth
}

// MemberBlank is the blank of one member at its large end.
type MemberBlank struct {
	PitchAngle      float64 // rad, δ: pitch cone angle
	FaceAngle       float64 // rad, δ_a: tip cone angle
	RootAngle       float64 // rad, δ_f: root cone angle
	PitchDiameter   float64 // m, d_e: pitch diameter at the large end
	OutsideDiameter float64 // m, d_ae: diameter over the tips at the large end
	InsideDiameter  float64 // m, d_ai: diameter over the tips at the small end
	Addendum        float64 // m, h_ae: addendum at the large end
	Dedendum        float64 // m, h_fe: dedendum at the large end
	AddendumAngle   float64 // rad, θ_a: tip cone angle less pitch cone angle
	DedendumAngle   float64 // rad, θ_f: pitch cone angle less root cone angle
	ApexToCrown     float64 // m, t_xo: along the axis from the crossing point to the outer tip edge
	FaceAlongAxis   float64 // m, X_b: length of the tip cone along the axis
	MeanDiameter    float64 // m, d_m: pitch diameter at mid face
	MeanAddendum    float64 // m, h_am: addendum at mid face
	MeanDedendum    float64 // m, h_fm: dedendum at mid face
}

// BlankResult is a pair of bevel blanks.
type BlankResult struct {
	Pinion            MemberBlank // blank of the pinion
	Wheel             MemberBlank // blank of the wheel
	OuterConeDistance float64     // m, R_e: along the pitch cone to the large end
	MeanConeDistance  float64     // m, R_m: along the pitch cone to mid face
	WorkingDepth      float64     // m, h_we: working depth at the large end
	WholeDepth        float64     // m, h_e: whole depth at the large end
	MeanModule        float64     // m, m_mt: transverse module at mid face
}

// BevelBlanks returns the blanks of a bevel pair of tapered depth, the clearance
// the same along the tooth.
//
//	δ1 = atan(z1/z2)
//	δ2 = π/2 − δ1
//	R_e = m_et·z2/(2·sin δ2)
//	h_ae2 = m_et·(A + B/u²), h_ae1 = h_we − h_ae2, h_fe = h_e − h_ae
//	θ_f = atan(h_fe/R_e), θ_a1 = θ_f2, θ_a2 = θ_f1
//	δ_a = δ + θ_a
//	δ_f = δ − θ_f
//	d_ae = d_e + 2·h_ae·cos δ
//	t_xo = R_e·cos δ − h_ae·sin δ
//	X_b = b·cos δ_a/cos θ_a
//	d_ai = d_ae − 2·b·sin δ_a/cos θ_a
//	straight: h_we = 2.000·m_et, h_e = 2.188·m_et + 0.05 mm, A = 0.540, B = 0.460
//	spiral:   h_we = 1.700·m_et, h_e = 1.888·m_et, A = 0.460, B = 0.390
//
// A spiral pinion of 6 to 11 teeth takes shallower teeth and a fixed wheel
// addendum from a table, so that it is not undercut.
//
// Valid for axes at a right angle, spiral teeth of about 35° with at least 6
// pinion teeth, straight teeth with at least 12, and a face width up to 0.35 of
// the outer cone distance.
// Errors: *check.RangeError outside that range.
// Source: tapered-depth bevel proportions of an open technical reference on
// gears (from memory); the cones as ISO 23509:2016.
func BevelBlanks(p BlankParams) (BlankResult, error) {
	const fn = "gear.BevelBlanks"
	least := 12
	if p.Form == SpiralTeeth {
		least = 6
	}
	if err := check.All(fn,
		check.That("Form", 0, p.Form == StraightTeeth || p.Form == SpiralTeeth, "straight or spiral"),
		check.That("PinionTeeth", float64(p.PinionTeeth), p.PinionTeeth >= least, ">= 12 straight, >= 6 spiral"),
		wheelTeeth("WheelTeeth", p.PinionTeeth, p.WheelTeeth),
		check.Positive("OuterModule", p.OuterModule),
	); err != nil {
		return BlankResult{}, err
	}
	z1, z2, m := float64(p.PinionTeeth), float64(p.WheelTeeth), p.OuterModule
	delta1 := math.Atan2(z1, z2)
	delta2 := math.Pi/2 - delta1
	re := m * z2 / (2 * math.Sin(delta2))
	if err := check.All(fn, faceWidth("FaceWidth", p.FaceWidth, re)); err != nil {
		return BlankResult{}, err
	}
	hw, h, ha2 := outerDepths(p.Form, p.PinionTeeth, z2/z1)
	hw, h, ha2 = hw*m, h*m, ha2*m
	if p.Form == StraightTeeth {
		h += 0.05e-3
	}
	ha1 := hw - ha2
	hf1, hf2 := h-ha1, h-ha2
	theta1, theta2 := math.Atan(hf1/re), math.Atan(hf2/re)
	return BlankResult{
		Pinion:            memberBlank(delta1, re, p.FaceWidth, m*z1, ha1, hf1, theta2, theta1),
		Wheel:             memberBlank(delta2, re, p.FaceWidth, m*z2, ha2, hf2, theta1, theta2),
		OuterConeDistance: re, MeanConeDistance: re - p.FaceWidth/2,
		WorkingDepth: hw, WholeDepth: h,
		MeanModule: m * (re - p.FaceWidth/2) / re,
	}, nil
}

func memberBlank(delta, re, b, d, ha, hf, thetaA, thetaF float64) MemberBlank {
	faceAngle := delta + thetaA
	outside := d + 2*ha*math.Cos(delta)
	return MemberBlank{
		PitchAngle: delta, FaceAngle: faceAngle, RootAngle: delta - thetaF,
		PitchDiameter: d, OutsideDiameter: outside,
		InsideDiameter: outside - 2*b*math.Sin(faceAngle)/math.Cos(thetaA),
		Addendum:       ha, Dedendum: hf, AddendumAngle: thetaA, DedendumAngle: thetaF,
		ApexToCrown:   re*math.Cos(delta) - ha*math.Sin(delta),
		FaceAlongAxis: b * math.Cos(faceAngle) / math.Cos(thetaA),
		MeanDiameter:  d - b*math.Sin(delta),
		MeanAddendum:  ha - b/2*math.Tan(thetaA),
		MeanDedendum:  hf - b/2*math.Tan(thetaF),
	}
}

// fewTeeth are the working depth, whole depth and wheel addendum, per module,
// of spiral pinions with 6 to 11 teeth.
var fewTeeth = [...][3]float64{
	{1.500, 1.666, 0.215},
	{1.560, 1.733, 0.270},
	{1.610, 1.788, 0.325},
	{1.650, 1.832, 0.380},
	{1.680, 1.865, 0.435},
	{1.695, 1.882, 0.490},
}

// outerDepths are the working depth, whole depth and wheel addendum per module.
func outerDepths(form ToothForm, z1 int, u float64) (working, whole, wheelAddendum float64) {
	if form == StraightTeeth {
		return 2.000, 2.188, 0.540 + 0.460/(u*u)
	}
	if z1 < 12 {
		row := fewTeeth[z1-6]
		return row[0], row[1], row[2]
	}
	return 1.700, 1.888, 0.460 + 0.390/(u*u)
}

// faceWidth refuses a face that no cutter leaves a proper toe on; 0.3 of the
// outer cone distance is usual.
func faceWidth(name string, b, re float64) check.Condition {
	return check.That(name, b, b > 0 && b <= 0.35*re, "0 < b <= 0.35 of the outer cone distance")
}
