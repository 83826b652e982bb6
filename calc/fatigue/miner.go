package fatigue

import (
	"fmt"
	"math"

	"axlewright/calc/check"
)

// MinerBlock is a number of cycles at one load and the life at that load.
type MinerBlock struct {
	Cycles float64 // -, n: cycles done
	Life   float64 // -, N: cycles to failure at that load
}

// MinerSum returns the damage of several blocks of cycles; a part is used up at 1.
//
//	D = Σ n_i/N_i
//
//	blocks  cycles done and life, load by load
//	D       damage, -
//
// Valid for loads whose order does not matter; tests scatter between about 0.3
// and 3.
// Errors: *check.RangeError for no block, cycles below zero or a life not above zero.
// Source: Palmgren (1924) and Miner, Cumulative Damage in Fatigue (1945).
func MinerSum(blocks []MinerBlock) (float64, error) {
	const fn = "fatigue.MinerSum"
	if err := check.All(fn, check.That("len(blocks)", float64(len(blocks)), len(blocks) > 0, ">= 1")); err != nil {
		return 0, err
	}
	damage := 0.0
	for i, b := range blocks {
		if err := check.All(fn,
			check.NotNegative(fmt.Sprintf("blocks[%d].Cycles", i), b.Cycles),
			check.Positive(fmt.Sprintf("blocks[%d].Life", i), b.Life),
		); err != nil {
			return 0, err
		}
		damage += b.Cycles / b.Life
	}
	return damage, nil
}

// LifeRatioParams compare two loads on one stress-life line.
type LifeRatioParams struct {
	LoadRatio float64 // -, new load over old load
	Slope     float64 // -, m: exponent of S^m·N = constant, in terms of that load
}

// LifeRatio returns how many times as long a part lasts when its load is changed.
//
//	N2/N1 = (S2/S1)^(−m)
//
//	N2/N1  new life over old life, -
//
// Valid for one straight line of log load against log life. Mind what the slope
// belongs to: the stress on a tooth flank goes with the root of the torque, so
// that its slope for torque is half its slope for stress.
// Errors: *check.RangeError for values not above zero.
// Source: Basquin, The exponential law of endurance tests (1910).
func LifeRatio(p LifeRatioParams) (float64, error) {
	if err := check.All("fatigue.LifeRatio",
		check.Positive("LoadRatio", p.LoadRatio),
		check.Positive("Slope", p.Slope),
	); err != nil {
		return 0, err
	}
	return math.Pow(p.LoadRatio, -p.Slope), nil
}
