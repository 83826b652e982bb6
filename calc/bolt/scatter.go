package bolt

import (
	"fmt"

	"axlewright/calc/check"
)

// Method is a way of tightening a bolt.
type Method string

// The methods, from the least scatter to the most.
const (
	ByUltrasonics     Method = "ultrasonic"       // lengthening measured by sound
	ByYield           Method = "yield"            // spanner that stops at yield
	ByAngle           Method = "angle"            // turned past snug by an angle, into yield
	ByStretch         Method = "stretch"          // lengthening measured with a micrometer
	ByHydraulics      Method = "hydraulic"        // bolt pulled, nut run down
	ByTorqueMeasured  Method = "torque, measured" // torque wrench, torque found on the real joint by stretch
	ByTorqueEstimated Method = "torque"           // torque wrench, friction estimated
	ByPowerDriver     Method = "power driver"     // power driver set by a re-tightening torque
	ByImpact          Method = "impact"           // impact wrench
)

// ScatterResult holds the tightening factor α_A = F_Mmax/F_Mmin of a method.
type ScatterResult struct {
	Low  float64 // -, α_A: tightening factor, careful work, stiff joint, known oil
	High float64 // -, α_A: tightening factor, rough work, soft joint, unknown oil
}

// Low and high α_A by method.
var scatters = map[Method]ScatterResult{
	ByUltrasonics:     {1.05, 1.2},
	ByYield:           {1.2, 1.4},
	ByAngle:           {1.2, 1.4},
	ByStretch:         {1.1, 1.5},
	ByHydraulics:      {1.2, 1.6},
	ByTorqueMeasured:  {1.4, 1.6},
	ByTorqueEstimated: {1.6, 2.0},
	ByPowerDriver:     {1.7, 2.5},
	ByImpact:          {2.5, 4.0},
}

// TighteningScatter returns the tightening factor of a way of tightening, from careful work to rough.
//
//	α_A = table(method)
//
//	method  way of tightening, name
//
// Valid for new bolts of known oil; old threads belong to the high figure or
// beyond. A hand spanner without a torque wrench is not in the guideline.
// Errors: *check.RangeError for an unknown method.
// Source: VDI 2230-1:2003, table A8 (from memory).
func TighteningScatter(method Method) (ScatterResult, error) {
	scatter, known := scatters[method]
	return scatter, check.All("bolt.TighteningScatter",
		check.That("method", 0, known, fmt.Sprintf("one of the methods of the table, not %q", method)))
}

// PreloadSpread returns the half range of the preload about its middle for a tightening factor.
//
//	s = (α_A − 1)/(α_A + 1)
//
//	factor  tightening factor α_A = F_Mmax/F_Mmin, -
//	s       half range as a share of the middle, -
//
// Valid for α_A >= 1.
// Errors: *check.RangeError outside that range.
// Source: VDI 2230-1:2015, 5.4.1: α_A = (1 + s)/(1 − s) (from memory).
func PreloadSpread(factor float64) (float64, error) {
	if err := check.All("bolt.PreloadSpread", check.That("factor", factor, factor >= 1, ">= 1")); err != nil {
		return 0, err
	}
	return (factor - 1) / (factor + 1), nil
}

// LeastPreload returns the least preload that tightening can leave where the greatest is known.
//
//	F_Mmin = F_Mmax/α_A
//
//	greatest  greatest assembly preload F_Mmax, N
//	factor    tightening factor α_A, -
//	F_Mmin    least assembly preload, N
//
// Valid for α_A >= 1, before embedding.
// Errors: *check.RangeError outside that range or for a negative preload.
// Source: VDI 2230-1:2015, 5.4.1 (from memory).
func LeastPreload(greatest, factor float64) (float64, error) {
	if err := check.All("bolt.LeastPreload",
		check.NotNegative("greatest", greatest),
		check.That("factor", factor, factor >= 1, ">= 1"),
	); err != nil {
		return 0, err
	}
	return greatest / factor, nil
}

// NeededPreloadParams describes what a joint asks of its bolt.
type NeededPreloadParams struct {
	Factor       float64 // -, α_A: tightening factor
	Clamp        float64 // N, F_Kerf: clamp that must be left for friction, sealing and against opening
	LoadFactor   float64 // -, Φ: load factor
	Load         float64 // N, F_A: working load along the bolt
	Embedding    float64 // N, F_Z: loss by embedding
	ThermalShift float64 // N, ΔF_Vth: loss by warming, negative for a gain; optional
}

// NeededPreload returns the greatest assembly preload that a bolt must be able to take so that the least one is enough.
//
//	F_Mmax = α_A·(F_Kerf + (1 − Φ)·F_A + F_Z + ΔF_Vth)
//
//	F_Mmax  assembly preload that the bolt must allow, N
//
// Valid for a joint that does not open.
// Errors: *check.RangeError outside α_A >= 1, 0 <= Φ <= 1, or for a negative clamp, load or embedding.
// Source: VDI 2230-1:2015, chapter 4, main dimensioning formula (from memory).
func NeededPreload(p NeededPreloadParams) (float64, error) {
	if err := check.All("bolt.NeededPreload",
		check.That("Factor", p.Factor, p.Factor >= 1, ">= 1"),
		check.NotNegative("Clamp", p.Clamp),
		check.Within("LoadFactor", p.LoadFactor, 0, 1),
		check.NotNegative("Load", p.Load),
		check.NotNegative("Embedding", p.Embedding),
		check.Finite("ThermalShift", p.ThermalShift),
	); err != nil {
		return 0, err
	}
	return p.Factor * (p.Clamp + (1-p.LoadFactor)*p.Load + p.Embedding + p.ThermalShift), nil
}
