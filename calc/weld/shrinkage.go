package weld

import "axlewright/calc/check"

// ButtShrinkageParams is a butt weld across which plates are drawn together.
type ButtShrinkageParams struct {
	Area      float64 // m², A_w: area of the weld's section
	Thickness float64 // m, t: plate thickness
	Gap       float64 // m, d: root gap
}

// ButtShrinkage returns how much a butt weld draws its plates together.
//
//	ΔS = 0.2·A_w/t + 0.05·d
//
//	ΔS  shrinkage across the weld, m
//
// LOW CONFIDENCE: an order of magnitude, ± 50 %. Valid for free steel plates; use it to
// compare sequences, then measure.
// Errors: *check.RangeError for figures that are not positive (the gap may be zero).
// Source: Spraragen and Ettinger, 1944, quoted by Masubuchi, Analysis of Welded Structures, 1980, ch. 7 (from memory).
func ButtShrinkage(p ButtShrinkageParams) (float64, error) {
	if err := check.All("weld.ButtShrinkage",
		check.Positive("Area", p.Area),
		check.Positive("Thickness", p.Thickness),
		check.NotNegative("Gap", p.Gap),
	); err != nil {
		return 0, err
	}
	return 0.2*p.Area/p.Thickness + 0.05*p.Gap, nil
}

// FilletShrinkageParams is a tee, or a lap, with a fillet on either side.
type FilletShrinkageParams struct {
	Leg       float64 // m, D_f: leg of each fillet
	Thickness float64 // m, t_b: thickness of the base plate; of a lap t, of the plates
}

func (p FilletShrinkageParams) check(fn string) error {
	return check.All(fn,
		check.Positive("Thickness", p.Thickness),
		check.That("Leg", p.Leg, p.Leg > 0 && p.Leg <= p.Thickness*(1+1e-12), "0 < Leg <= Thickness"),
	)
}

// FilletShrinkage returns how much a pair of continuous fillets draws its base plate together.
//
//	S = 1.02 mm·D_f/t_b
//
//	S  shrinkage of the base across the weld, m
//
// LOW CONFIDENCE: an order of magnitude, ± 50 %. Valid for a tee with continuous fillets on
// both sides and D_f <= t_b; use it to compare, then measure.
// Errors: *check.RangeError outside that range.
// Source: Masubuchi, Analysis of Welded Structures, 1980, ch. 7 (from memory, medium confidence).
func FilletShrinkage(p FilletShrinkageParams) (float64, error) {
	if err := p.check("weld.FilletShrinkage"); err != nil {
		return 0, err
	}
	return 1.02e-3 * p.Leg / p.Thickness, nil
}

// LapShrinkage returns how much the fillets of a lap draw its plate over the other.
//
//	S = 1.52 mm·D_f/t
//
//	S  shrinkage across the welds, m
//
// LOW CONFIDENCE: an order of magnitude, ± 50 %. Valid for a lap with continuous fillets on
// both its edges and D_f <= t, t being Thickness; use it to compare, then measure.
// Errors: *check.RangeError outside that range.
// Source: Masubuchi, Analysis of Welded Structures, 1980, ch. 7 (from memory, medium confidence).
func LapShrinkage(p FilletShrinkageParams) (float64, error) {
	if err := p.check("weld.LapShrinkage"); err != nil {
		return 0, err
	}
	return 1.52e-3 * p.Leg / p.Thickness, nil
}

// Shrink names a rule-of-thumb allowance for shrinkage.
type Shrink string

// Rule-of-thumb allowances.
const (
	AcrossFillet Shrink = "across a fillet"
	AcrossButt   Shrink = "across a 60° V butt"
	AlongFillet  Shrink = "along a fillet"
	AlongButt    Shrink = "along a butt"
)

// ShrinkageAllowanceResult is an allowance, as a band.
type ShrinkageAllowanceResult struct {
	Low      float64 // m, least
	High     float64 // m, greatest
	PerMetre bool    // -, for each metre of weld; otherwise for each weld
}

// ShrinkageAllowance returns the shop's rule of thumb for how much a weld shrinks.
//
//	ΔS = 0.8 mm a fillet of leg up to 0.75·t, 1.5 to 3 mm a 60° V butt
//	ΔS = 0.8 mm in 3 m along a fillet, 3 mm in 3 m along a butt
//
//	place  what shrinks, name
//
// LOW CONFIDENCE: an allowance, not a forecast. Valid for steel.
// Errors: *check.RangeError for a place that is not in the table.
// Source: TWI Job Knowledge 33 and 34, distortion (from memory).
func ShrinkageAllowance(place Shrink) (ShrinkageAllowanceResult, error) {
	switch place {
	case AcrossFillet:
		return ShrinkageAllowanceResult{0.8e-3, 0.8e-3, false}, nil
	case AcrossButt:
		return ShrinkageAllowanceResult{1.5e-3, 3e-3, false}, nil
	case AlongFillet:
		return ShrinkageAllowanceResult{0.8e-3 / 3, 0.8e-3 / 3, true}, nil
	case AlongButt:
		return ShrinkageAllowanceResult{3e-3 / 3, 3e-3 / 3, true}, nil
	}
	return ShrinkageAllowanceResult{}, notNamed("weld.ShrinkageAllowance", "place", place,
		[]Shrink{AcrossFillet, AcrossButt, AlongFillet, AlongButt})
}
