package fatigue

import (
	"math"

	"axlewright/calc/check"
)

// SNLine is a stress-life line of one or two slopes with a cut-off. It may be
// drawn in stress or in torque; everything set against it is in the same unit.
type SNLine struct {
	KneeLoad    float64 // -, S_D: load at the knee, in one unit throughout
	KneeCycles  float64 // -, N_D: cycles at the knee
	Slope       float64 // -, m1: S^m·N = constant above the knee
	SlopeBeyond float64 // -, m2: the same below the knee; 0 for a part that lasts for ever there; optional
	CutOff      float64 // -, S_L: load up to which nothing is damaged; 0 for none; optional
}

func (l SNLine) conditions() []check.Condition {
	return []check.Condition{
		check.Positive("KneeLoad", l.KneeLoad),
		check.Positive("KneeCycles", l.KneeCycles),
		check.Positive("Slope", l.Slope),
		check.NotNegative("SlopeBeyond", l.SlopeBeyond),
		check.That("CutOff", l.CutOff, l.CutOff >= 0 && l.CutOff <= l.KneeLoad, "0 <= CutOff <= KneeLoad"),
	}
}

// SNLifeResult is the life at one load.
type SNLifeResult struct {
	Cycles  float64 // -, N: cycles to failure; 0 where endless
	Endless bool    // -, the load does no damage
}

// SNLife returns the life at one load on a stress-life line with knee and cut-off.
//
//	N = N_D·(S_D/S)^m1   for S ≥ S_D
//	N = N_D·(S_D/S)^m2   for S_L < S < S_D
//
//	line  stress-life line
//	load  load S, of which the line is drawn (range or amplitude, stress or torque), -
//
// Valid for the load the line is drawn for, and no higher than static strength,
// which the line does not know.
// Errors: *check.RangeError for a load below zero or a line that makes no sense.
// Source: EN 1993-1-9:2005, 7.1 (from memory) for the form with knee and cut-off.
func SNLife(line SNLine, load float64) (SNLifeResult, error) {
	if err := check.All("fatigue.SNLife", append(line.conditions(), check.NotNegative("load", load))...); err != nil {
		return SNLifeResult{}, err
	}
	return line.life(load), nil
}

func (l SNLine) life(load float64) SNLifeResult {
	slope := l.Slope
	if load < l.KneeLoad {
		slope = l.SlopeBeyond
	}
	if load <= l.CutOff || slope == 0 {
		return SNLifeResult{Endless: true}
	}
	return SNLifeResult{Cycles: l.KneeCycles * math.Pow(l.KneeLoad/load, slope)}
}

// damage is the share of its life that one cycle takes from a part.
func (l SNLine) damage(load float64) float64 {
	life := l.life(load)
	if life.Endless {
		return 0
	}
	return 1 / life.Cycles
}
