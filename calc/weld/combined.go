package weld

import "axlewright/calc/check"

// CombinedThickness returns the sum of the thicknesses that lead heat away from a joint.
//
//	d_c = Σ d_i
//
//	thicknesses  mean thickness of each part within 75 mm of the weld, m
//	d_c          combined thickness, m
//
// Valid for method A of EN 1011-2 only: two parts in a butt, three where a plate stands
// on a plate that runs on both ways. Method B takes the plate thickness.
// Errors: *check.RangeError for no parts or a thickness that is not positive.
// Source: EN 1011-2:2001, C.2.4 (from memory).
func CombinedThickness(thicknesses []float64) (float64, error) {
	const fn = "weld.CombinedThickness"
	if err := check.All(fn, check.That("thicknesses", float64(len(thicknesses)), len(thicknesses) > 0, "one part at least")); err != nil {
		return 0, err
	}
	sum := 0.0
	for _, d := range thicknesses {
		if err := check.All(fn, check.Positive("thicknesses", d)); err != nil {
			return 0, err
		}
		sum += d
	}
	return sum, nil
}

// ColdLimitParams is a joint to be welded without preheat.
type ColdLimitParams struct {
	CarbonEquivalent float64 // -, CE: IIW carbon equivalent, mass fraction
	Hydrogen         float64 // m³/kg, HD: diffusible hydrogen of the weld metal
	HeatInput        float64 // J/m, Q: heat input, with efficiency
}

// greatest combined thickness in mm by hydrogen scale; columns CE 0.49 at 1 and 2 kJ/mm, CE 0.43 at 1 and 2 kJ/mm.
var coldLimits = map[Scale][4]float64{
	ScaleA: {25, 50, 40, 80},
	ScaleB: {30, 55, 50, 90},
	ScaleC: {35, 65, 60, 100},
	ScaleD: {50, 100, 100, 100},
	ScaleE: {60, 100, 100, 100},
}

// ThicknessWithoutPreheat returns the greatest combined thickness that may be welded without preheat, by the examples of method A.
//
//	d_c = table C.1 by hydrogen scale, CE and Q
//
//	d_c  greatest combined thickness, m
//
// The table has CE 0.43 % and 0.49 %, and 1.0 and 2.0 kJ/mm; the row that is no better
// than the joint is taken, never one in between. Valid for CE up to 0.49 % and 1.0 kJ/mm and more.
// Errors: *check.RangeError outside that range.
// Source: EN 1011-2:2001, table C.1 (read).
func ThicknessWithoutPreheat(p ColdLimitParams) (float64, error) {
	scale, err := HydrogenScale(p.Hydrogen)
	if err != nil {
		return 0, err
	}
	if err := check.All("weld.ThicknessWithoutPreheat",
		check.That("CarbonEquivalent", p.CarbonEquivalent, p.CarbonEquivalent > 0 && p.CarbonEquivalent <= 0.0049*(1+1e-9), "0 to 0.0049"),
		check.That("HeatInput", p.HeatInput, p.HeatInput >= kJperMm*(1-1e-9), ">= 1e6"),
	); err != nil {
		return 0, err
	}
	column := 0
	if p.CarbonEquivalent <= 0.0043*(1+1e-9) {
		column = 2
	}
	if p.HeatInput >= 2*kJperMm*(1-1e-9) {
		column++
	}
	return coldLimits[Scale(scale.Scale)][column] * 1e-3, nil
}
