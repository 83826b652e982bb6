package gear

import (
	"math"

	"axlewright/calc/check"
)

// RootLifeFactor returns by how much the root of a case-hardened tooth may be
// stressed beyond its endurance limit for a number of load cycles.
//
//	Y_NT = 2.5·(10³/N)^0.1145 from 10³ to 3·10⁶
//	Y_NT = (3·10⁶/N)^0.0200 from there to 10¹⁰
//	Y_NT = 2.5 below 10³, the static overload
//
//	cycles  load cycles N, -
//	Y_NT    life factor of the root, -
//
// The exponents are those through the anchors 2.5, 1.0 and 0.85; the last anchor
// is for common practice, 1.0 for the best.
//
// Valid for case-hardened wrought steel and 1 ≤ cycles ≤ 10¹⁰.
// Errors: *check.RangeError outside that range.
// Source: ISO 6336-3, life factor of case-hardened steel, as ISO 10300-3 uses it (from memory).
func RootLifeFactor(cycles float64) (float64, error) {
	return rootCurve.factor("gear.RootLifeFactor", cycles)
}

// FlankLifeFactor returns by how much a case-hardened flank may be stressed
// beyond its endurance limit for a number of load cycles, no pitting allowed.
//
//	Z_NT = 1.6·(10⁵/N)^0.0756 from 10⁵ to 5·10⁷
//	Z_NT = (5·10⁷/N)^0.0307 from there to 10¹⁰
//	Z_NT = 1.6 below 10⁵, the static overload
//
//	cycles  load cycles N, -
//	Z_NT    life factor of the flank, -
//
// Valid for case-hardened wrought steel and 1 ≤ cycles ≤ 10¹⁰.
// Errors: *check.RangeError outside that range.
// Source: ISO 6336-2, life factor of case-hardened steel, as ISO 10300-2 uses it (from memory).
func FlankLifeFactor(cycles float64) (float64, error) {
	return flankCurve.factor("gear.FlankLifeFactor", cycles)
}

// LifeResult is a number of load cycles.
type LifeResult struct {
	Cycles float64 // -, N: load cycles to the damage
	Beyond bool    // -, whether the life is longer than the curve goes; Cycles is then its end, 10¹⁰
}

// RootLife returns the load cycles that the root of a case-hardened tooth stands
// under a stress, so that damage can be added up by Miner's rule.
//
//	N = 10³·(2.5/k)^8.74 for k from 2.5 to 1, k = σ_F/σ_FP at the endurance limit
//	N = 3·10⁶·k^−49.9 for k from 1 to 0.85
//
//	share  stress over the permissible stress at the endurance limit k, -
//
// Valid for case-hardened wrought steel and 0 < share ≤ 2.5, above which it is a static overload.
// Errors: *check.RangeError outside that range.
// Source: as RootLifeFactor, turned round.
func RootLife(share float64) (LifeResult, error) { return rootCurve.life("gear.RootLife", share) }

// FlankLife returns the load cycles that a case-hardened flank stands under a
// contact stress before it pits.
//
//	N = 10⁵·(1.6/k)^13.2 for k from 1.6 to 1, k = σ_H/σ_HP at the endurance limit
//	N = 5·10⁷·k^−32.6 for k from 1 to 0.85
//
//	share  stress over the permissible stress at the endurance limit k, -
//
// Contact stress grows with the root of the torque, so the slope on torque is half of it.
//
// Valid for case-hardened wrought steel and 0 < share ≤ 1.6, above which it is a static overload.
// Errors: *check.RangeError outside that range.
// Source: as FlankLifeFactor, turned round.
func FlankLife(share float64) (LifeResult, error) { return flankCurve.life("gear.FlankLife", share) }

// lifeCurve is a stress-cycle curve of two straight lines on logarithmic scales.
type lifeCurve struct {
	static, staticCycles float64
	knee                 float64 // cycles at the endurance limit
	end, endCycles       float64
}

var (
	rootCurve  = lifeCurve{2.5, 1e3, 3e6, 0.85, 1e10}
	flankCurve = lifeCurve{1.6, 1e5, 5e7, 0.85, 1e10}
)

// exponents of the factor over cycles, before and behind the knee.
func (c lifeCurve) exponents() (limited, long float64) {
	return math.Log(c.static) / math.Log(c.knee/c.staticCycles), -math.Log(c.end) / math.Log(c.endCycles/c.knee)
}

func (c lifeCurve) factor(fn string, n float64) (float64, error) {
	if err := check.All(fn, check.Within("cycles", n, 1, c.endCycles)); err != nil {
		return 0, err
	}
	limited, long := c.exponents()
	switch {
	case n <= c.staticCycles:
		return c.static, nil
	case n <= c.knee:
		return math.Pow(c.knee/n, limited), nil
	}
	return math.Pow(c.knee/n, long), nil
}

func (c lifeCurve) life(fn string, k float64) (LifeResult, error) {
	if err := check.All(fn, check.That("share", k, k > 0 && k <= c.static, "what is not a static overload")); err != nil {
		return LifeResult{}, err
	}
	limited, long := c.exponents()
	switch {
	case k >= 1:
		return LifeResult{Cycles: c.knee * math.Pow(k, -1/limited)}, nil
	case k > c.end:
		return LifeResult{Cycles: c.knee * math.Pow(k, -1/long)}, nil
	}
	return LifeResult{Cycles: c.endCycles, Beyond: true}, nil
}
