package weld

import (
	"math"

	"axlewright/calc/check"
)

// Joint is the form of a joint, for the share of heat that flows each way.
type Joint string

// Joints with shape factors.
const (
	BeadOnPlate  Joint = "bead on plate"
	ButtFill     Joint = "between runs of a butt weld"
	CornerFillet Joint = "single-run fillet on a corner"
	TeeFillet    Joint = "single-run fillet on a tee"
)

var joints = []Joint{BeadOnPlate, ButtFill, CornerFillet, TeeFillet}

// ShapeFactorsResult are the shape factors of a joint.
type ShapeFactorsResult struct {
	TwoLow  float64 // -, F_2 least: for flow in the plane of the plate
	TwoHigh float64 // -, F_2 greatest: the heat splits unevenly
	Three   float64 // -, F_3: for flow in all directions
}

// ShapeFactors returns the factors of a joint's form on the cooling time.
//
//	F_2 = 1 bead, 0.9 butt, 0.67 to 0.9 corner, 0.45 to 0.67 tee
//	F_3 = 1 bead, 0.9 butt, 0.67 corner and tee
//
//	joint  form of the joint, name
//
// Valid for arc welds on steel plate. Where two figures stand the choice hangs on
// heat input and thickness: work out both and keep the worse.
// Errors: *check.RangeError for a joint that is not in the table.
// Source: EN 1011-2:2001, annex D, table D.1 (from memory).
func ShapeFactors(joint Joint) (ShapeFactorsResult, error) {
	switch joint {
	case BeadOnPlate:
		return ShapeFactorsResult{1, 1, 1}, nil
	case ButtFill:
		return ShapeFactorsResult{0.9, 0.9, 0.9}, nil
	case CornerFillet:
		return ShapeFactorsResult{0.67, 0.9, 0.67}, nil
	case TeeFillet:
		return ShapeFactorsResult{0.45, 0.67, 0.67}, nil
	}
	return ShapeFactorsResult{}, notNamed("weld.ShapeFactors", "joint", joint, joints)
}

// CoolingParams is a run on a plate.
type CoolingParams struct {
	HeatInput float64 // J/m, Q: heat input, with efficiency
	Preheat   float64 // K, T_0: temperature of the plate before the run
	Thickness float64 // m, d: plate thickness
	TwoFactor float64 // -, F_2: shape factor for flow in the plane
	Three     float64 // -, F_3: shape factor for flow in all directions
}

// CoolingResult is the time from 800 °C to 500 °C.
type CoolingResult struct {
	Time       float64 // s, t_8/5: by the flow that holds for this thickness
	InPlane    float64 // s, by flow in the plane of the plate (thin)
	AllRound   float64 // s, by flow in all directions (thick)
	Transition float64 // m, d_t: thickness at which both agree
	Thin       bool    // -, the plate is thinner than d_t: the time hangs on its thickness
}

// Kelvin and the units in which the standard is written.
const (
	zeroCelsius = 273.15
	kJperMm     = 1e6 // J/m
)

// CoolingTime returns the time a run takes to cool from 800 °C to 500 °C.
//
//	t_8/5 = (6700 − 5·T_0)·Q·(1/(500 − T_0) − 1/(800 − T_0))·F_3                       thick
//	t_8/5 = (4300 − 4.3·T_0)·1e5·(Q/d)²·(1/(500 − T_0)² − 1/(800 − T_0)²)·F_2           thin
//	d_t = √((4300 − 4.3·T_0)/(6700 − 5·T_0)·1e5·Q·(1/(500 − T_0) + 1/(800 − T_0))·F_2/F_3)
//
// In the standard's letters T_0 is in °C, Q in kJ/mm, d in mm, t in s. Valid for
// unalloyed and low-alloy steel, −20 °C to 400 °C before the run (our bound; the form
// fails at 500 °C). Scatter about a tenth, more for fillets.
// Errors: *check.RangeError outside that range or for factors outside 0.2 to 1.
// Source: EN 1011-2:2001, annex D, eqs (D.1) to (D.6) (from memory).
func CoolingTime(p CoolingParams) (CoolingResult, error) {
	if err := check.All("weld.CoolingTime",
		check.Positive("HeatInput", p.HeatInput),
		check.Within("Preheat", p.Preheat, zeroCelsius-20, zeroCelsius+400),
		check.Positive("Thickness", p.Thickness),
		check.Within("TwoFactor", p.TwoFactor, 0.2, 1),
		check.Within("Three", p.Three, 0.2, 1),
	); err != nil {
		return CoolingResult{}, err
	}
	q, t0, d := p.HeatInput/kJperMm, p.Preheat-zeroCelsius, p.Thickness*1e3
	near, far := 1/(500-t0), 1/(800-t0)
	r := CoolingResult{
		InPlane:  (4300 - 4.3*t0) * 1e5 * q * q / (d * d) * (near*near - far*far) * p.TwoFactor,
		AllRound: (6700 - 5*t0) * q * (near - far) * p.Three,
	}
	dt := math.Sqrt((4300 - 4.3*t0) / (6700 - 5*t0) * 1e5 * q * (near + far) * p.TwoFactor / p.Three)
	r.Transition = dt * 1e-3
	r.Thin = d < dt
	if r.Time = r.AllRound; r.Thin {
		r.Time = r.InPlane
	}
	return r, nil
}

// HeatForCoolingParams asks for the heat input that gives a cooling time.
type HeatForCoolingParams struct {
	Time      float64 // s, t_8/5: cooling time wanted
	Preheat   float64 // K, T_0: temperature of the plate before the run
	Thickness float64 // m, d: plate thickness
	TwoFactor float64 // -, F_2: shape factor for flow in the plane
	Three     float64 // -, F_3: shape factor for flow in all directions
}

// HeatInputForCoolingTime returns the heat input that gives a run a wanted cooling time.
//
//	Q = min(Q_thick, Q_thin)
//	Q_thick = t_8/5/((6700 − 5·T_0)·(1/(500 − T_0) − 1/(800 − T_0))·F_3)
//	Q_thin = d·√(t_8/5/((4300 − 4.3·T_0)·1e5·(1/(500 − T_0)² − 1/(800 − T_0)²)·F_2))
//
//	Q  heat input, with efficiency, J/m
//
// It undoes CoolingTime, whose time at any heat input is the longer of the two.
// Valid for the same range; plate of 700 MPa loses strength beside the weld when it cools slowly.
// Errors: *check.RangeError outside that range.
// Source: EN 1011-2:2001, annex D, eqs (D.1) to (D.6) (from memory), solved for Q.
func HeatInputForCoolingTime(p HeatForCoolingParams) (float64, error) {
	if err := check.All("weld.HeatInputForCoolingTime", check.Positive("Time", p.Time)); err != nil {
		return 0, err
	}
	unit, err := CoolingTime(CoolingParams{kJperMm, p.Preheat, p.Thickness, p.TwoFactor, p.Three})
	if err != nil {
		return 0, err
	}
	thick := p.Time / unit.AllRound
	thin := math.Sqrt(p.Time / unit.InPlane)
	return math.Min(thick, thin) * kJperMm, nil
}
