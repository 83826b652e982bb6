package gear

import (
	"math"

	"axlewright/calc/check"
)

// RootStressParams is what the stress in the tooth roots follows from.
type RootStressParams struct {
	Cones         PitchCones   // pitch cones of the pair
	Depths        MeanDepths   // tooth heights at the mean point
	Virtual       VirtualGears // virtual cylindrical gears for the loaded flank, 2014 edition
	WheelTorque   float64      // N·m, T2: torque carried by the crown wheel
	PressureAngle float64      // rad, α_e: effective pressure angle of the loaded flank
	ToolTipRadius float64      // -, ρ_a0/m_mn: tip radius of the cutter in mean normal modules; optional, 0.25 (0.15 to 0.35)
	Crowning      float64      // -, e: how the load falls off to the edges of the pattern; optional, 3 (1.5 high crowning to 3 low)
	Load          LoadFactors  // load factors
}

// RootStressResult is the stress in the roots and what it is made of.
type RootStressResult struct {
	Pinion       float64 // Pa, σ_F1: stress in the root of the pinion
	Wheel        float64 // Pa, σ_F2: stress in the root of the wheel
	Tangential   float64 // N, F_vmt: tangential force of the virtual gears
	PinionForm   float64 // -, Y_Fa1: form factor of the pinion
	WheelForm    float64 // -, Y_Fa2: form factor of the wheel
	PinionNotch  float64 // -, Y_Sa1: stress correction factor of the pinion
	WheelNotch   float64 // -, Y_Sa2: stress correction factor of the wheel
	ContactRatio float64 // -, Y_ε: contact ratio factor
	Spiral       float64 // -, Y_BS: bevel spiral angle factor
	Sharing      float64 // -, Y_LS: load sharing factor
}

// RootStress returns the stress in the tooth roots of both members.
//
//	σ_F = F_vmt/(b_v·m_mn)·Y_Fa·Y_Sa·Y_ε·Y_BS·Y_LS·K_A·K_v·K_Fβ·K_Fα
//	F_vmt = T2/r_m2·cos β_v/cos β2
//	Y_ε = 0.25 + 0.75/ε_vα − ε_vβ·(0.75/ε_vα − 0.375) for ε_vβ ≤ 1, else 0.625, never below 0.625
//	Y_BS = (a/c)·(l_bb/b_a − 1.05·b)² + 1, b_a = b_v/cos β_v, l_bb = l_bm·cos β_vb/cos β_v
//	a = −0.0182·w² + 0.4736·w − 0.32
//	b = −0.0032·w² + 0.0526·w + 0.712
//	c = −0.0050·w² + 0.0850·w + 0.54, w = b_a/h_m
//	Y_LS = A_m/(A_t + A_m + A_r), A = ¼·π·(1 − |f/f_max|^e)·l_b over three lines of contact
//	K_Fβ = K_Hβ/K_F0, K_Fα = K_Hα
//
// Y_Fa and Y_Sa are those of ToothForm30 for the virtual gears in their normal
// section. Both members are taken as generated. What a shop cannot know has a
// stated default; together they leave σ_F uncertain by about ± 20 %, while the
// ratio between two builds with the same teeth is exact.
//
// Valid for ε_vα < 2, stresses below those of a static overload, an average
// spiral angle up to 45° and effective pressure angles up to 30°; beyond the
// last two the standard wants the result confirmed by experience.
// Errors: *check.RangeError outside the ranges of ToothForm30 and of the load factors.
// Source: ISO 10300-3:2014, method B1 (from memory).
func RootStress(p RootStressParams) (RootStressResult, error) {
	const fn = "gear.RootStress"
	c, v := p.Cones, p.Virtual
	load := p.Load.filled()
	rho, crowning := orElse(p.ToolTipRadius, 0.25), orElse(p.Crowning, 3)
	if err := c.valid(fn); err != nil {
		return RootStressResult{}, err
	}
	if err := check.All(fn, append(load.conditions(),
		check.NotNegative("WheelTorque", p.WheelTorque), check.Within("Crowning", crowning, 1, 4),
		check.Positive("Depths.Whole", p.Depths.Whole), check.Positive("Virtual.Face", v.Face),
	)...); err != nil {
		return RootStressResult{}, err
	}
	m := c.NormalModule
	form := func(teeth, addendum, side float64) (FormResult, error) {
		cosBase := math.Cos(v.BaseHelix)
		return ToothForm30(FormParams{
			NormalTeeth:   teeth / (cosBase * cosBase * math.Cos(v.Helix)),
			PressureAngle: p.PressureAngle, Addendum: addendum / m,
			ToolAddendum:  (p.Depths.Working/2 + p.Depths.Clearance) / m,
			ToolTipRadius: rho, Shift: side * p.Depths.PinionShift, Thickness: side * p.Depths.PinionThickness,
		})
	}
	pinion, err := form(v.PinionTeeth, p.Depths.PinionAddendum, 1)
	if err != nil {
		return RootStressResult{}, err
	}
	wheel, err := form(v.WheelTeeth, p.Depths.WheelAddendum, -1)
	if err != nil {
		return RootStressResult{}, err
	}
	zone := v.zone()
	r := RootStressResult{
		Tangential: p.WheelTorque / c.WheelMeanRadius * math.Cos(v.Helix) / math.Cos(c.WheelSpiral),
		PinionForm: pinion.Form, WheelForm: wheel.Form, PinionNotch: pinion.Notch, WheelNotch: wheel.Notch,
		ContactRatio: contactRatioFactor(v.ProfileOverlap, v.FaceOverlap),
		Spiral:       spiralFactor(v, zone, p.Depths.Whole),
		Sharing:      zone.middleShare(crowning),
	}
	common := r.Tangential / (v.Face * m) * r.ContactRatio * r.Spiral * r.Sharing *
		load.Application * load.Dynamic * load.FaceLoad / load.Lengthwise * load.Transverse
	r.Pinion, r.Wheel = common*pinion.Form*pinion.Notch, common*wheel.Form*wheel.Notch
	return r, nil
}

// contactRatioFactor is Y_ε; its floor is the standard's.
func contactRatioFactor(profile, face float64) float64 {
	part := 0.75 / profile
	return max(0.625, 0.25+part-min(1, face)*(part-0.375))
}

// spiralFactor is Y_BS: the root of a slanting line of contact, stretched along
// the tooth, against the same load spread evenly.
func spiralFactor(v VirtualGears, z zone, depth float64) float64 {
	spread := v.Face / math.Cos(v.Helix)
	line := z.length(z.middle) * math.Cos(v.BaseHelix) / math.Cos(v.Helix)
	w := spread / depth
	a := -0.0182*w*w + 0.4736*w - 0.32
	b := -0.0032*w*w + 0.0526*w + 0.712
	c := -0.0050*w*w + 0.0850*w + 0.54
	return a/c*math.Pow(line/spread-1.05*b, 2) + 1
}
