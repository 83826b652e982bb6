package weld

import (
	"math"

	"axlewright/calc/check"
)

// ThroatRangesResult are the two stress ranges a fillet weld itself is checked for.
type ThroatRangesResult struct {
	Direct float64 // Pa, σ_wf: for root cracking, category 36
	Shear  float64 // Pa, τ_wf: along the weld, category 80 in shear
}

// ThroatRanges returns the stress ranges that count for fatigue of a fillet weld itself.
//
//	σ_wf = √(σ_⊥f² + τ_⊥f²)
//	τ_wf = τ_∥f
//
// Valid for ranges of the throat stresses under load that rises and falls together.
// The toe in the plate is checked besides, with the stress in the plate.
// Errors: *check.RangeError for ranges that are not finite.
// Source: EN 1993-1-9:2005, 5(6), figure 5.1 (from memory).
func ThroatRanges(p ThroatStressesResult) (ThroatRangesResult, error) {
	if err := check.All("weld.ThroatRanges",
		check.Finite("Normal", p.Normal),
		check.Finite("ShearAcross", p.ShearAcross),
		check.Finite("ShearAlong", p.ShearAlong),
	); err != nil {
		return ThroatRangesResult{}, err
	}
	return ThroatRangesResult{math.Hypot(p.Normal, p.ShearAcross), math.Abs(p.ShearAlong)}, nil
}

// CombinedFatigueParams are direct and shear ranges that come together on one detail.
type CombinedFatigueParams struct {
	Direct         float64 // Pa, Δσ_E2: direct range at two million cycles, times its partial factor
	DirectCategory float64 // Pa, Δσ_C/γ_Mf: category over the partial factor
	Shear          float64 // Pa, Δτ_E2: shear range at two million cycles, times its partial factor
	ShearCategory  float64 // Pa, Δτ_C/γ_Mf: category over the partial factor
}

// CombinedFatigueUse returns the share of fatigue strength used by direct and shear ranges together.
//
//	D = (Δσ_E2/(Δσ_C/γ_Mf))³ + (Δτ_E2/(Δτ_C/γ_Mf))⁵
//
//	D  damage of both, failure at 1, -
//
// Valid for ranges already brought to two million cycles.
// Errors: *check.RangeError for negative ranges or categories that are not positive.
// Source: EN 1993-1-9:2005, 8(3), eq. (8.3) (from memory).
func CombinedFatigueUse(p CombinedFatigueParams) (float64, error) {
	if err := check.All("weld.CombinedFatigueUse",
		check.NotNegative("Direct", p.Direct),
		check.Positive("DirectCategory", p.DirectCategory),
		check.NotNegative("Shear", p.Shear),
		check.Positive("ShearCategory", p.ShearCategory),
	); err != nil {
		return 0, err
	}
	return math.Pow(p.Direct/p.DirectCategory, 3) + math.Pow(p.Shear/p.ShearCategory, 5), nil
}

// ThicknessFactor returns the factor on a category for the size of the plate, where the detail table calls for it.
//
//	k_s = (25 mm/t)^0.2
//	k_s = 1 up to 25 mm
//
//	thickness  plate thickness t, m
//	k_s        factor on the detail category, -
//
// Valid for plates up to 200 mm, our bound.
// Errors: *check.RangeError outside that range.
// Source: EN 1993-1-9:2005, table 8.3 (from memory).
func ThicknessFactor(thickness float64) (float64, error) {
	if err := check.All("weld.ThicknessFactor",
		check.That("thickness", thickness, thickness > 0 && thickness <= 0.2, "0 < thickness <= 0.2"),
	); err != nil {
		return 0, err
	}
	if thickness <= 0.025 {
		return 1, nil
	}
	return math.Pow(0.025/thickness, 0.2), nil
}

// ExtremeStresses are the ends of a stress range, tension positive.
type ExtremeStresses struct {
	Highest float64 // Pa, σ_max
	Lowest  float64 // Pa, σ_min
}

// RelievedRange returns the stress range that counts where the part has been stress-relieved: compression counts for six tenths.
//
//	Δσ = |σ_max| + 0.6·|σ_min|     σ_max > 0 > σ_min
//	Δσ = σ_max − σ_min             both tension
//	Δσ = 0.6·(σ_max − σ_min)       both compression
//
//	Δσ  stress range to be counted, Pa
//
// Valid for parts without weld or stress-relieved after welding; as welded, the whole range counts.
// Errors: *check.RangeError unless σ_max >= σ_min.
// Source: EN 1993-1-9:2005, 7.2.1 (from memory).
func RelievedRange(p ExtremeStresses) (float64, error) {
	if err := check.All("weld.RelievedRange",
		check.Finite("Lowest", p.Lowest),
		check.That("Highest", p.Highest, p.Highest >= p.Lowest, "Highest >= Lowest"),
	); err != nil {
		return 0, err
	}
	part := func(s float64) float64 { // what a stress counts for
		if s < 0 {
			return 0.6 * s
		}
		return s
	}
	return part(p.Highest) - part(p.Lowest), nil
}
