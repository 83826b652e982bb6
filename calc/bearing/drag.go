package bearing

import (
	"math"

	"axlewright/calc/check"
)

// DragParams holds the inputs of [RollingDrag].
type DragParams struct {
	Load         float64 // N, P: load that counts for drag; 2·Y·F_a for a taper pair set by preload alone
	MeanDiameter float64 // m, d_m: mean of bore and outside diameter
	F0           float64 // -, f_0: oil factor; about 6 for taper rollers in an oil bath, half of it for little oil
	F1           float64 // -, f_1: load factor; 0.0004 for taper rollers
	Viscosity    float64 // m²/s, ν: kinematic viscosity at running temperature
	Speed        float64 // rad/s, ω: speed of one ring against the other
}

// DragResult holds the rolling drag of one bearing.
type DragResult struct {
	FromLoad float64 // N·m, M_1: share that grows with load
	FromOil  float64 // N·m, M_0: share of churned oil
	Total    float64 // N·m, M: together
}

// RollingDrag returns the turning torque of one bearing, without the rubbing of
// roller ends on the rib and without seals.
//
//	M = M_0 + M_1
//	M_1 = f_1·P·d_m
//	M_0 = 0.000016·f_0·d_m^3                  ν·n < 2000
//	M_0 = 0.0000001·f_0·(ν·n)^(2/3)·d_m^3     ν·n >= 2000
//
// M_0 stands in N·mm with ν in mm²/s, n in 1/min and d_m in mm.
// Valid for a bearing that turns, at hand speed as in running.
// Errors: *check.RangeError for a negative input or a diameter not above zero.
// Source: Palmgren, Ball and Roller Bearing Engineering, 3rd ed. 1959; Harris,
// Rolling Bearing Analysis, 4th ed. (from memory).
func RollingDrag(p DragParams) (DragResult, error) {
	if err := check.All("bearing.RollingDrag",
		check.NotNegative("Load", p.Load),
		check.Positive("MeanDiameter", p.MeanDiameter),
		check.NotNegative("F0", p.F0),
		check.NotNegative("F1", p.F1),
		check.NotNegative("Viscosity", p.Viscosity),
		check.NotNegative("Speed", p.Speed),
	); err != nil {
		return DragResult{}, err
	}
	m1 := p.F1 * p.Load * p.MeanDiameter
	m0 := oilDrag(p.F0, p.MeanDiameter, p.Viscosity*p.Speed)
	return DragResult{FromLoad: m1, FromOil: m0, Total: m0 + m1}, nil
}

// oilDrag is M_0 in N·m for viscosity times speed in m²/s².
func oilDrag(f0, meanDiameter, viscositySpeed float64) float64 {
	nun := viscositySpeed * 1e6 * 30 / math.Pi // mm²/s · 1/min
	c := 160e-7
	if nun >= 2000 {
		c = 1e-7 * math.Pow(nun, 2./3)
	}
	d := meanDiameter * 1e3
	return c * f0 * d * d * d * 1e-3
}
