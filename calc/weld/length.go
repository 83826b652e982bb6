package weld

import (
	"math"

	"axlewright/calc/check"
)

// LengthParams describes one run of fillet weld that is to carry load.
type LengthParams struct {
	Length   float64 // m, l: overall length of the run
	Throat   float64 // m, a: throat
	FullEnds bool    // -, full size to both ends, for instance returned round the corners; optional
}

// EffectiveLength returns the length of a fillet weld that may be counted as carrying load.
//
//	l_eff = l − 2·a
//	l_eff = l where the weld is full size to its ends
//	l_eff ≥ max(6·a, 30 mm)
//
//	l_eff  effective length, m
//
// Valid for runs at least that long: a shorter one is refused, not set to zero, and
// must be made longer or left out of the sum.
// Errors: *check.RangeError for a run whose effective length is below the least.
// Source: EN 1993-1-8:2005, 4.5.1 (from memory).
func EffectiveLength(p LengthParams) (float64, error) {
	const fn = "weld.EffectiveLength"
	if err := check.All(fn,
		check.Positive("Length", p.Length),
		check.Positive("Throat", p.Throat),
	); err != nil {
		return 0, err
	}
	effective := p.Length
	if !p.FullEnds {
		effective -= 2 * p.Throat
	}
	least := math.Max(6*p.Throat, 0.030)
	if err := check.All(fn, check.That("Length", p.Length, effective >= least*(1-1e-12),
		"effective length of at least 30 mm and 6 throats")); err != nil {
		return 0, err
	}
	return effective, nil
}

// LapParams describes a lap joint loaded along its fillet welds.
type LapParams struct {
	Lap    float64 // m, L_j: length of the lap in the direction of the force
	Throat float64 // m, a: throat
}

// LongLapFactor returns the share of its strength that a long end-loaded lap weld keeps,
// because its ends carry more than its middle.
//
//	β_Lw1 = 1.2 − 0.2·L_j/(150·a)
//	β_Lw1 = 1 up to L_j = 150·a
//
//	β_Lw1  factor on the strength of the weld, -
//
// Valid for laps up to 600 throats, our bound; beyond that the welds' ends rule and
// the length should be shortened.
// Errors: *check.RangeError outside that range.
// Source: EN 1993-1-8:2005, 4.11(3), eq. (4.9) (from memory).
func LongLapFactor(p LapParams) (float64, error) {
	if err := check.All("weld.LongLapFactor",
		check.Positive("Lap", p.Lap),
		check.Positive("Throat", p.Throat),
		check.That("Lap", p.Lap, p.Lap <= 600*p.Throat, "Lap <= 600·Throat"),
	); err != nil {
		return 0, err
	}
	if p.Lap <= 150*p.Throat {
		return 1, nil
	}
	return 1.2 - 0.2*p.Lap/(150*p.Throat), nil
}
