package bearing

import (
	"math"

	"axlewright/calc/check"
)

// DutyBlock is a stretch of running at one load and speed.
type DutyBlock struct {
	Time   float64 // s, t: running time, or share of the time
	Speed  float64 // rad/s, ω: speed of one ring against the other, either way
	Load   float64 // N, P: dynamic equivalent load
	Factor float64 // -, a: life factor of the block, a1·a_ISO; left at zero it is 1; optional
}

// MeanLoadParams holds the inputs of [MeanLoad].
type MeanLoadParams struct {
	Blocks  []DutyBlock // duty; the life factors of the blocks are not used
	Element Element     // name, ball or roller
}

// MeanLoadResult holds the steady running that stands for a duty.
type MeanLoadResult struct {
	Load  float64 // N, P_m: steady load of the same damage
	Speed float64 // rad/s, ω_m: mean speed
}

// MeanLoad returns the steady load that does the damage of a duty.
//
//	P_m = [Σ P^p·ω·t/Σ ω·t]^(1/p)
//	ω_m = Σ ω·t/Σ t
//	p = 10/3 (roller), 3 (ball)
//
// Valid for the basic life; where the life factors of the blocks differ, sum
// the damage instead.
// Errors: *check.RangeError for a negative time, speed or load, for a duty that
// does not turn or an unknown element.
// Source: Palmgren, Ball and Roller Bearing Engineering, 3rd ed. 1959 (from memory).
func MeanLoad(p MeanLoadParams) (MeanLoadResult, error) {
	const fn = "bearing.MeanLoad"
	n, turned, err := duty(fn, p.Blocks, p.Element)
	if err != nil {
		return MeanLoadResult{}, err
	}
	damage, time := 0., 0.
	for _, b := range p.Blocks {
		damage += math.Pow(b.Load, n) * b.Speed * b.Time
		time += b.Time
	}
	return MeanLoadResult{Load: math.Pow(damage/turned, 1/n), Speed: turned / time}, nil
}

// DutyLifeParams holds the inputs of [DutyLife].
type DutyLifeParams struct {
	Rating  float64     // N, C: basic dynamic load rating
	Blocks  []DutyBlock // duty, repeated until the bearing is worn out
	Element Element     // name, ball or roller
}

// DutyLifeResult holds the life under a duty.
type DutyLifeResult struct {
	Revolutions float64   // -, L: life in revolutions
	Time        float64   // s, t_L: life in running time
	Repeats     float64   // -, B: how often the duty can be run through
	Shares      []float64 // -, d: share of each block in the damage, 1 together
	Heaviest    float64   // -, P/C: heaviest load that turns, over the rating; above 0.5 raceways yield and the life is too long
}

// DutyLife returns the life of a bearing under a duty, damage summed block by block.
//
//	B = 1/Σ N/L,  N = ω·t/2π,  L = a·(C/P)^p · 1 000 000
//	p = 10/3 (roller), 3 (ball)
//
// Valid for loads below C/2; the heaviest is in the result, not refused.
// Errors: *check.RangeError for a rating not above zero, a negative time, speed,
// load or factor, for a duty that does not turn under load or an unknown element.
// Source: linear damage, Palmgren 1924 and Miner 1945; ISO 281:2007 (from memory).
func DutyLife(p DutyLifeParams) (DutyLifeResult, error) {
	const fn = "bearing.DutyLife"
	n, turned, err := duty(fn, p.Blocks, p.Element)
	if err != nil {
		return DutyLifeResult{}, err
	}
	if err := check.All(fn, check.Positive("Rating", p.Rating)); err != nil {
		return DutyLifeResult{}, err
	}
	r := DutyLifeResult{Shares: make([]float64, len(p.Blocks))}
	damage, time := 0., 0.
	for i, b := range p.Blocks {
		if err := check.All(fn, check.NotNegative("Factor", b.Factor)); err != nil {
			return DutyLifeResult{}, err
		}
		a := b.Factor
		if a == 0 {
			a = 1
		}
		revolutions := b.Speed * b.Time / (2 * math.Pi)
		r.Shares[i] = revolutions * math.Pow(b.Load/p.Rating, n) / (a * million)
		if revolutions > 0 {
			r.Heaviest = max(r.Heaviest, b.Load/p.Rating)
		}
		damage += r.Shares[i]
		time += b.Time
	}
	if err := check.All(fn, check.Positive("Blocks", damage)); err != nil {
		return DutyLifeResult{}, err
	}
	for i := range r.Shares {
		r.Shares[i] /= damage
	}
	r.Repeats = 1 / damage
	r.Revolutions = turned / (2 * math.Pi) / damage
	r.Time = time / damage
	return r, nil
}

// duty checks the blocks and returns the life exponent and the angle turned.
func duty(fn string, blocks []DutyBlock, e Element) (n, turned float64, err error) {
	if n = e.exponent(); n == 0 {
		return 0, 0, unknown(fn, "Element")
	}
	for _, b := range blocks {
		if err := check.All(fn,
			check.NotNegative("Time", b.Time),
			check.NotNegative("Speed", b.Speed),
			check.NotNegative("Load", b.Load),
		); err != nil {
			return 0, 0, err
		}
		turned += b.Speed * b.Time
	}
	return n, turned, check.All(fn, check.Positive("Blocks", turned))
}
