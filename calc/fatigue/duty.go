package fatigue

import (
	"fmt"
	"math"

	"axlewright/calc/check"
)

// DutyLevel is one load of a duty and how much of the duty it takes.
type DutyLevel struct {
	Share float64 // -, ν: share of the cycles; all shares add up to 1
	Load  float64 // -, S: load, in one unit throughout
}

// levels refuses a duty whose shares do not add up.
func levels(fn string, duty []DutyLevel) error {
	sum := 0.0
	for i, l := range duty {
		if err := check.All(fn,
			check.NotNegative(fmt.Sprintf("Levels[%d].Share", i), l.Share),
			check.NotNegative(fmt.Sprintf("Levels[%d].Load", i), l.Load),
		); err != nil {
			return err
		}
		sum += l.Share
	}
	return check.All(fn, check.That("sum of Share", sum, math.Abs(sum-1) < 1e-6, "1"))
}

// EquivalentLoad returns the one steady load that does as much damage as a duty.
//
//	S_eq = (Σ ν_i·S_i^p)^(1/p)
//
//	duty      loads with their shares of the cycles
//	exponent  slope of the stress-life line in terms of the load p, -
//	S_eq      equivalent load, -
//
// Valid for one slope over the whole duty; p belongs to the way of failing:
// 10/3 for roller bearings by load, the slope of the tooth root or flank for
// gears, always in terms of the load given.
// Errors: *check.RangeError for shares that do not add up to 1, values below zero or an exponent not above zero.
// Source: ISO 6336-6:2006, 4 (equivalent torque, from memory), and Palmgren–Miner.
func EquivalentLoad(duty []DutyLevel, exponent float64) (float64, error) {
	const fn = "fatigue.EquivalentLoad"
	if err := check.All(fn, check.Positive("exponent", exponent)); err != nil {
		return 0, err
	}
	if err := levels(fn, duty); err != nil {
		return 0, err
	}
	top := 0.0
	for _, l := range duty {
		top = math.Max(top, l.Load)
	}
	if top == 0 {
		return 0, nil
	}
	sum := 0.0
	for _, l := range duty {
		sum += l.Share * math.Pow(l.Load/top, exponent) // scaled, or a steep slope overflows
	}
	return top * math.Pow(sum, 1/exponent), nil
}

// DutyDamageParams are a duty and the part that bears it.
type DutyDamageParams struct {
	Levels []DutyLevel // -, loads with their shares of the cycles
	Cycles float64     // -, n: cycles of the whole duty
	Line   SNLine      // stress-life line of the part, in the unit of the loads
}

// DutyDamageResult is what a duty does to a part.
type DutyDamageResult struct {
	Damage  float64 // -, D: used up at 1
	Cycles  float64 // -, N: cycles of this duty until used up; 0 where endless
	Endless bool    // -, no load of the duty does damage
}

// DutyDamage returns the damage that a duty does to a part, and how long the part lasts under it.
//
//	D = n·Σ ν_i/N(S_i)
//	N = n/D
//
// Valid for loads whose order does not matter (Miner).
// Errors: *check.RangeError for shares that do not add up to 1, values below zero or a line that makes no sense.
// Source: Palmgren (1924) and Miner, Cumulative Damage in Fatigue (1945).
func DutyDamage(p DutyDamageParams) (DutyDamageResult, error) {
	const fn = "fatigue.DutyDamage"
	if err := check.All(fn, append(p.Line.conditions(), check.NotNegative("Cycles", p.Cycles))...); err != nil {
		return DutyDamageResult{}, err
	}
	if err := levels(fn, p.Levels); err != nil {
		return DutyDamageResult{}, err
	}
	perCycle := 0.0
	for _, l := range p.Levels {
		perCycle += l.Share * p.Line.damage(l.Load)
	}
	if perCycle == 0 {
		return DutyDamageResult{Endless: true}, nil
	}
	return DutyDamageResult{Damage: p.Cycles * perCycle, Cycles: 1 / perCycle}, nil
}

// Measure says what a stress-life line is drawn against.
type Measure string

// The measures.
const (
	ByRange     Measure = "range"     // highest less lowest, as for welds
	ByAmplitude Measure = "amplitude" // half of that, as for machined parts
)

// SpectrumDamageParams are counted cycles and the part that bore them.
type SpectrumDamageParams struct {
	Cycles  []Cycle // -, counted cycles
	Line    SNLine  // stress-life line of the part, in the unit of the cycles
	Measure Measure // name, what the line is drawn against: range or amplitude
}

// SpectrumDamage returns the damage that counted cycles did to a part; means are passed over.
//
//	D = Σ count_i/N(S_i),  S_i = range or range/2
//
//	D  damage, used up at 1, -
//
// Valid for parts whose means count for nothing (welds), or were worked into the ranges
// before (ReversedAmplitude).
// Errors: *check.RangeError for values below zero, another measure or a line that makes no sense.
// Source: Palmgren (1924) and Miner, Cumulative Damage in Fatigue (1945); ASTM E1049-85.
func SpectrumDamage(p SpectrumDamageParams) (float64, error) {
	const fn = "fatigue.SpectrumDamage"
	share := map[Measure]float64{ByRange: 1, ByAmplitude: 0.5}[p.Measure]
	if err := check.All(fn, append(p.Line.conditions(),
		check.Condition{Param: "Measure", Value: math.NaN(), Holds: share > 0, Range: "range or amplitude"})...); err != nil {
		return 0, err
	}
	damage := 0.0
	for i, c := range p.Cycles {
		if err := check.All(fn,
			check.NotNegative(fmt.Sprintf("Cycles[%d].Range", i), c.Range),
			check.NotNegative(fmt.Sprintf("Cycles[%d].Count", i), c.Count),
		); err != nil {
			return 0, err
		}
		damage += c.Count * p.Line.damage(share*c.Range)
	}
	return damage, nil
}
