package traction

import (
	"math"

	"axlewright/calc/check"
)

// gravity is the standard acceleration of free fall, m/s².
const gravity = 9.80665

// GripLimitedTorque returns the torque at both wheels of an axle at which the tyres let go.
//
//	T = µ·W·r
//
//	friction      of tyre on ground µ, -
//	axleLoad      force of both wheels on the ground W, N
//	loadedRadius  distance of the hub above the ground r, m
//	T             torque of the whole axle, N·m
//
// Valid for both wheels on the same ground; otherwise see DifferentialTorque.
// Errors: *check.RangeError for friction or load below zero or a radius not above zero.
// Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2 (from memory).
func GripLimitedTorque(friction, axleLoad, loadedRadius float64) (float64, error) {
	if err := check.All("traction.GripLimitedTorque",
		check.NotNegative("friction", friction),
		check.NotNegative("axleLoad", axleLoad),
		check.Positive("loadedRadius", loadedRadius),
	); err != nil {
		return 0, err
	}
	return friction * axleLoad * loadedRadius, nil
}

// AxleLoadParams are a vehicle on a slope, with a trailer or without.
type AxleLoadParams struct {
	Weight        float64 // N, W: weight of the vehicle, laden
	Wheelbase     float64 // m, L: distance of the axles
	FrontToCentre float64 // m, a: from the front axle back to the centre of mass
	Height        float64 // m, h: height of the centre of mass
	Grade         float64 // -, tan θ: rise over run, uphill positive
	Acceleration  float64 // m/s², a_x: forward positive; optional
	Drawbar       float64 // N, R_x: pull of a trailer, backward positive; optional
	NoseWeight    float64 // N, R_z: trailer's weight on the hitch; optional
	HitchHeight   float64 // m, h_h: height of the hitch; optional
	HitchOverhang float64 // m, d_h: from the rear axle back to the hitch; optional
}

// AxleLoadResult is how the weight rests on the axles.
type AxleLoadResult struct {
	Front float64 // N, W_f: force of the front wheels on the ground
	Rear  float64 // N, W_r: force of the rear wheels on the ground
}

// AxleLoads returns how a vehicle's weight rests on its axles on a slope, gathering speed, with a trailer.
//
//	W_f = (W·(L − a)·cos θ − W·h·sin θ − (W/g)·a_x·h − R_x·h_h − R_z·d_h)/L
//	W_r = (W·a·cos θ + W·h·sin θ + (W/g)·a_x·h + R_x·h_h + R_z·(d_h + L))/L
//
// Valid for a rigid vehicle with all wheels on the ground, air drag left out.
// Errors: *check.RangeError outside that range; Front or Rear below zero means the vehicle tips.
// Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), eq. 1-6 and 1-7 (from memory).
func AxleLoads(p AxleLoadParams) (AxleLoadResult, error) {
	const fn = "traction.AxleLoads"
	if err := check.All(fn, append(geometry(p.Weight, p.Wheelbase, p.FrontToCentre, p.Height, p.Grade),
		check.Finite("Acceleration", p.Acceleration),
		check.Finite("Drawbar", p.Drawbar),
		check.Finite("NoseWeight", p.NoseWeight),
		check.NotNegative("HitchHeight", p.HitchHeight),
		check.NotNegative("HitchOverhang", p.HitchOverhang),
	)...); err != nil {
		return AxleLoadResult{}, err
	}
	theta := math.Atan(p.Grade)
	tilt := p.Weight*p.Height*math.Sin(theta) + p.Weight/gravity*p.Acceleration*p.Height + p.Drawbar*p.HitchHeight
	r := AxleLoadResult{
		Front: (p.Weight*(p.Wheelbase-p.FrontToCentre)*math.Cos(theta) - tilt - p.NoseWeight*p.HitchOverhang) / p.Wheelbase,
		Rear:  (p.Weight*p.FrontToCentre*math.Cos(theta) + tilt + p.NoseWeight*(p.HitchOverhang+p.Wheelbase)) / p.Wheelbase,
	}
	if err := check.All(fn, check.NotNegative("Front", r.Front), check.NotNegative("Rear", r.Rear)); err != nil {
		return AxleLoadResult{}, err
	}
	return r, nil
}

func geometry(weight, wheelbase, frontToCentre, height, grade float64) []check.Condition {
	return []check.Condition{
		check.Positive("Weight", weight),
		check.Positive("Wheelbase", wheelbase),
		check.That("FrontToCentre", frontToCentre, frontToCentre > 0 && frontToCentre < wheelbase, "0 < FrontToCentre < Wheelbase"),
		check.NotNegative("Height", height),
		check.Finite("Grade", grade),
	}
}

// Drive names the axles that drive.
type Drive string

// The drives.
const (
	RearDrive  Drive = "rear"
	FrontDrive Drive = "front"
	BothDrive  Drive = "both" // each axle takes what its own grip gives
)

// GripParams are a vehicle pulling as hard as its tyres let it.
type GripParams struct {
	Drive         Drive   // name, axles that drive: rear, front or both
	Reverse       bool    // -, pulls backward
	Friction      float64 // -, µ: of tyre on ground
	Weight        float64 // N, W: weight of the vehicle, laden
	Wheelbase     float64 // m, L: distance of the axles
	FrontToCentre float64 // m, a: from the front axle back to the centre of mass
	Height        float64 // m, h: height of the centre of mass
	Grade         float64 // -, tan θ: rise over run, front end up positive
	LoadedRadius  float64 // m, r: distance of the hub above the ground
}

// GripResult is what each axle can do at the limit of grip.
type GripResult struct {
	FrontLoad   float64 // N, W_f: force of the front wheels on the ground
	RearLoad    float64 // N, W_r: force of the rear wheels on the ground
	FrontTorque float64 // N·m, T_f: torque of the front axle, 0 if it does not drive
	RearTorque  float64 // N·m, T_r: torque of the rear axle, 0 if it does not drive
	Force       float64 // N, F: pull of all driven wheels together
}

// PullingGrip returns what the tyres let each axle do while the pull itself shifts weight from one axle to the other.
//
//	rear:   F = µ·W·cos θ·a/(L − µ·h)
//	front:  F = µ·W·cos θ·(L − a)/(L + µ·h)
//	both:   F = µ·W·cos θ
//	W_r = (W·cos θ·a + F·h)/L,  W_f = W·cos θ − W_r,  T = µ·W_axle·r
//	backward: h counts with the other sign
//
// Valid for a rigid vehicle on even ground that turns its whole pull into
// climbing or gathering speed; rolling resistance, air and trailer left out.
// Errors: *check.RangeError outside that range; FrontLoad or RearLoad below zero means the vehicle tips.
// Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2; Wong,
// Theory of Ground Vehicles, 3.1 (both from memory).
func PullingGrip(p GripParams) (GripResult, error) {
	const fn = "traction.PullingGrip"
	known := p.Drive == RearDrive || p.Drive == FrontDrive || p.Drive == BothDrive
	if err := check.All(fn, append(geometry(p.Weight, p.Wheelbase, p.FrontToCentre, p.Height, p.Grade),
		check.Condition{Param: "Drive", Value: math.NaN(), Holds: known, Range: "rear, front or both"},
		check.NotNegative("Friction", p.Friction),
		check.Positive("LoadedRadius", p.LoadedRadius),
	)...); err != nil {
		return GripResult{}, err
	}
	h := p.Height
	if p.Reverse {
		h = -h
	}
	if err := check.All(fn,
		check.That("Friction", p.Friction, p.Friction*math.Abs(h) < p.Wheelbase, "Friction·Height < Wheelbase"),
	); err != nil {
		return GripResult{}, err
	}
	pressed := p.Weight * math.Cos(math.Atan(p.Grade))
	var r GripResult
	switch p.Drive {
	case RearDrive:
		r.Force = p.Friction * pressed * p.FrontToCentre / (p.Wheelbase - p.Friction*h)
	case FrontDrive:
		r.Force = p.Friction * pressed * (p.Wheelbase - p.FrontToCentre) / (p.Wheelbase + p.Friction*h)
	default:
		r.Force = p.Friction * pressed
	}
	r.RearLoad = (pressed*p.FrontToCentre + r.Force*h) / p.Wheelbase
	r.FrontLoad = pressed - r.RearLoad
	if err := check.All(fn, check.NotNegative("FrontLoad", r.FrontLoad), check.NotNegative("RearLoad", r.RearLoad)); err != nil {
		return GripResult{}, err
	}
	if p.Drive != RearDrive {
		r.FrontTorque = p.Friction * r.FrontLoad * p.LoadedRadius
	}
	if p.Drive != FrontDrive {
		r.RearTorque = p.Friction * r.RearLoad * p.LoadedRadius
	}
	return r, nil
}
