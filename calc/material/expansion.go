package material

import "axlewright/calc/check"

// GrowthParams is a part that warms up.
type GrowthParams struct {
	Length    float64 // m, L: length when cold
	Expansion float64 // 1/K, α: linear expansion
	Rise      float64 // K, ΔT: rise in temperature, negative for cooling
}

// ThermalGrowth returns how much a part grows when it warms up.
//
//	ΔL = α·ΔT·L
//
//	ΔL  growth, m
//
// Valid for even warmth and rises of up to 300 K either way, over which α is taken as constant.
// Errors: *check.RangeError outside that range.
// Source: definition of linear expansion.
func ThermalGrowth(p GrowthParams) (float64, error) {
	if err := check.All("material.ThermalGrowth",
		check.NotNegative("Length", p.Length),
		check.Within("Expansion", p.Expansion, 0, 40e-6),
		check.Within("Rise", p.Rise, -300, 300),
	); err != nil {
		return 0, err
	}
	return p.Expansion * p.Rise * p.Length, nil
}

// ClosingParams are two parts between which a gap changes with warmth.
type ClosingParams struct {
	Length         float64 // m, L: length of the inner part, and of the outer over the same span
	InnerExpansion float64 // 1/K, α_i: linear expansion of the part that fills the gap
	InnerRise      float64 // K, ΔT_i: its rise in temperature
	OuterExpansion float64 // 1/K, α_o: linear expansion of the part around it
	OuterRise      float64 // K, ΔT_o: its rise in temperature
}

// GapClosing returns how much a gap closes when both parts warm up; negative when it opens.
//
//	Δs = L·(α_i·ΔT_i − α_o·ΔT_o)
//
//	Δs  closing of the gap, m
//
// Valid for even warmth of each part and rises of up to 300 K either way.
// Errors: *check.RangeError outside that range.
// Source: definition of linear expansion.
func GapClosing(p ClosingParams) (float64, error) {
	inner, err := ThermalGrowth(GrowthParams{p.Length, p.InnerExpansion, p.InnerRise})
	if err != nil {
		return 0, err
	}
	outer, err := ThermalGrowth(GrowthParams{p.Length, p.OuterExpansion, p.OuterRise})
	if err != nil {
		return 0, err
	}
	return inner - outer, nil
}
