package fit

import (
	"math"

	"axlewright/calc/check"
)

// PressParams describes a hub pressed on a shaft or a ring in a housing.
type PressParams struct {
	Interference float64 // m, δ: diametral interference that acts, roughness already off
	Diameter     float64 // m, d: diameter of the joint
	Bore         float64 // m, d_i: bore of the inner part, 0 for a solid shaft
	Outside      float64 // m, d_o: outside diameter of the outer part
	InnerModulus float64 // Pa, E_i: Young's modulus of the inner part
	InnerPoisson float64 // -, ν_i: Poisson's ratio of the inner part
	OuterModulus float64 // Pa, E_o: Young's modulus of the outer part
	OuterPoisson float64 // -, ν_o: Poisson's ratio of the outer part
}

// PressResult is the state of a press fit.
type PressResult struct {
	Pressure    float64 // Pa, p: pressure in the joint
	OuterHoop   float64 // Pa, σ_to: hoop stress at the bore of the outer part, tension
	InnerHoop   float64 // Pa, σ_ti: hoop stress at the joint in the inner part, compression negative
	OuterGrowth float64 // m, growth of the outside diameter of the outer part
	InnerShrink float64 // m, shrinkage of the bore of the inner part, 0 for a solid shaft
	BoreHoop    float64 // Pa, hoop stress at the bore of the inner part, or the centre of a solid shaft, compression negative
}

// PressFit returns the pressure, the hoop stresses and the changes of diameter of a press fit.
//
//	p = δ/{d·[((d_o² + d²)/(d_o² − d²) + ν_o)/E_o + ((d² + d_i²)/(d² − d_i²) − ν_i)/E_i]}
//	σ_to = p·(d_o² + d²)/(d_o² − d²),  σ_ti = −p·(d² + d_i²)/(d² − d_i²)
//	growth of d_o = 2·p·d²·d_o/(E_o·(d_o² − d²)),  shrinkage of d_i = 2·p·d²·d_i/(E_i·(d² − d_i²))
//
// Valid for thick rings of one length, elastic, friction and end effects left out, 0 <= d_i < d < d_o.
// Errors: *check.RangeError outside that range, for a negative interference, a modulus of zero or below, or ν outside 0 to 0.5.
// Source: Lamé; Shigley's Mechanical Engineering Design, 9th ed., eqs. 3-56 to 3-59 and 3-49 (from memory).
func PressFit(p PressParams) (PressResult, error) {
	if err := check.All("fit.PressFit",
		check.NotNegative("Interference", p.Interference),
		check.Positive("Diameter", p.Diameter),
		check.That("Bore", p.Bore, p.Bore >= 0 && p.Bore < p.Diameter, "0 <= d_i < d"),
		check.That("Outside", p.Outside, p.Outside > p.Diameter, "> d"),
		check.Positive("InnerModulus", p.InnerModulus),
		check.Within("InnerPoisson", p.InnerPoisson, 0, 0.5),
		check.Positive("OuterModulus", p.OuterModulus),
		check.Within("OuterPoisson", p.OuterPoisson, 0, 0.5),
	); err != nil {
		return PressResult{}, err
	}
	d2, i2, o2 := p.Diameter*p.Diameter, p.Bore*p.Bore, p.Outside*p.Outside
	outer, inner := (o2+d2)/(o2-d2), (d2+i2)/(d2-i2)
	pressure := p.Interference / (p.Diameter * ((outer+p.OuterPoisson)/p.OuterModulus + (inner-p.InnerPoisson)/p.InnerModulus))
	r := PressResult{
		Pressure:    pressure,
		OuterHoop:   pressure * outer,
		InnerHoop:   -pressure * inner,
		OuterGrowth: 2 * pressure * d2 * p.Outside / (p.OuterModulus * (o2 - d2)),
		InnerShrink: 2 * pressure * d2 * p.Bore / (p.InnerModulus * (d2 - i2)),
		BoreHoop:    -pressure,
	}
	if p.Bore > 0 {
		r.BoreHoop = -2 * pressure * d2 / (d2 - i2)
	}
	return r, nil
}

// EffectiveInterference returns the interference that is left when the peaks of both surfaces have been pressed flat.
//
//	δ = δ_0 − 0.8·(R_zi + R_zo)
//
//	measured  interference as measured over the peaks δ_0, m
//	inner     roughness R_z of the inner part, m
//	outer     roughness R_z of the outer part, m
//	δ         interference that acts, m
//
// Valid for parts pressed cold; below zero the fit is loose.
// Errors: *check.RangeError for a negative roughness.
// Source: DIN 7190-1:2017 (from memory).
func EffectiveInterference(measured, inner, outer float64) (float64, error) {
	if err := check.All("fit.EffectiveInterference",
		check.Finite("measured", measured), check.NotNegative("inner", inner), check.NotNegative("outer", outer),
	); err != nil {
		return 0, err
	}
	return measured - 0.8*(inner+outer), nil
}

// HoldParams describes the face of a press fit.
type HoldParams struct {
	Pressure float64 // Pa, p: pressure in the joint
	Diameter float64 // m, d: diameter of the joint
	Length   float64 // m, l: length of the joint
	Friction float64 // -, f: friction in the joint
}

// HoldResult says what a press fit holds by friction.
type HoldResult struct {
	Force  float64 // N, F: axial force at which it slides
	Torque float64 // N·m, T: torque at which it turns
}

// PressHold returns the axial force and the torque that a press fit holds, each alone.
//
//	F = f·p·π·d·l,  T = F·d/2
//
// Valid for an even pressure along the joint.
// Errors: *check.RangeError for a negative pressure, f outside 0 to 1, or a size of zero or below.
// Source: Shigley's Mechanical Engineering Design, 9th ed., 7-8 (from memory).
func PressHold(p HoldParams) (HoldResult, error) {
	if err := check.All("fit.PressHold",
		check.NotNegative("Pressure", p.Pressure), check.Positive("Diameter", p.Diameter),
		check.Positive("Length", p.Length), check.Within("Friction", p.Friction, 0, 1),
	); err != nil {
		return HoldResult{}, err
	}
	force := p.Friction * p.Pressure * math.Pi * p.Diameter * p.Length
	return HoldResult{force, force * p.Diameter / 2}, nil
}

// ClearanceLossParams describes a rolling bearing on its shaft and in its housing.
type ClearanceLossParams struct {
	InnerGrowth float64 // m, growth of the inner raceway on the shaft
	OuterShrink float64 // m, shrinkage of the outer raceway in the housing
	Warming     float64 // K, inner ring warmer than the outer ring by this much
	Expansion   float64 // 1/K, α: expansion of the ring steel
	Raceway     float64 // m, D: diameter of the outer raceway
}

// ClearanceLoss returns how much radial clearance a bearing loses when it is fitted and warm.
//
//	Δ = Δ_inner + Δ_outer + α·D·ΔT
//
//	Δ  loss of radial (diametral) clearance, m
//
// Valid for rings that stay round; the growths come from PressFit with the ring's mean raceway as its outside or bore.
// Errors: *check.RangeError for a negative growth or shrinkage, or an expansion or raceway of zero or below.
// Source: T. A. Harris, Rolling Bearing Analysis, chapter on interference fitting and clearance (form, from memory).
func ClearanceLoss(p ClearanceLossParams) (float64, error) {
	if err := check.All("fit.ClearanceLoss",
		check.NotNegative("InnerGrowth", p.InnerGrowth), check.NotNegative("OuterShrink", p.OuterShrink),
		check.Finite("Warming", p.Warming), check.Positive("Expansion", p.Expansion), check.Positive("Raceway", p.Raceway),
	); err != nil {
		return 0, err
	}
	return p.InnerGrowth + p.OuterShrink + p.Expansion*p.Raceway*p.Warming, nil
}
