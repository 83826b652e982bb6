package contact

import (
	"math"

	"axlewright/calc/check"
)

// PadFaceParams describe a round pad that rubs on a wheel and has settled.
type PadFaceParams struct {
	Heat              float64 // W, Q: heat that friction makes
	Radius            float64 // m, a: radius of the pad
	Speed             float64 // m/s, v: rubbing speed
	PadConductivity   float64 // W/(m·K), k_p: of the pad
	WheelConductivity float64 // W/(m·K), k_w: of the wheel
	WheelDiffusivity  float64 // m²/s, α_w: conductivity over density and specific heat, of the wheel
}

// PadFaceResult is the temperature where the pad rubs.
type PadFaceResult struct {
	Rise     float64 // K, ΔT: mean rise of the rubbing face above both bodies
	PadShare float64 // -, share of the heat that goes into the pad
	Peclet   float64 // -, Pe: v·a/(2·α_w), how fast the wheel passes beside how fast heat spreads
}

// movingDisc is the factor of the mean temperature rise under a uniform round
// source that moves fast: heat flows straight in for as long as a point stays
// under its chord, averaged over the disc.
var movingDisc = 4 / (3 * math.Sqrt(math.Pi)) * math.Pow(2, 1.5) / math.Pi *
	math.Sqrt(math.Pi) * math.Gamma(1.75) / math.Gamma(2.25) / math.Pi

// PadFaceRise returns the settled temperature rise of the face where a pad rubs on a turning wheel.
//
//	ΔT = Q/(1/R_p + 1/R_w)
//	R_p = 8/(3π²·k_p·a)
//	R_w = 0.310/(k_w·a)·√(α_w/(v·a))
//
// Valid for a fast wheel, v·a/(2·α_w) ≥ 5, and pad and wheel large beside the
// contact. An estimate: oil, the bulk warming of the wheel over many turns and
// the heat flow through the screw are left out.
// Errors: *check.RangeError outside that range.
// Source: Jaeger, Moving sources of heat and the temperature at sliding contacts
// (1942), and Stachowiak and Batchelor, Engineering Tribology, flash temperature
// of a circular contact (from memory); the factor 0.310 derived, printed as 0.308.
func PadFaceRise(p PadFaceParams) (PadFaceResult, error) {
	if err := check.All("contact.PadFaceRise",
		check.NotNegative("Heat", p.Heat),
		check.Positive("Radius", p.Radius),
		check.Positive("Speed", p.Speed),
		check.Positive("PadConductivity", p.PadConductivity),
		check.Positive("WheelConductivity", p.WheelConductivity),
		check.Positive("WheelDiffusivity", p.WheelDiffusivity),
	); err != nil {
		return PadFaceResult{}, err
	}
	peclet := p.Speed * p.Radius / (2 * p.WheelDiffusivity)
	if err := check.All("contact.PadFaceRise",
		check.That("Peclet", peclet, peclet >= 5, "v·a/(2·α_w) >= 5: the wheel passes fast"),
	); err != nil {
		return PadFaceResult{}, err
	}
	pad := 8 / (3 * math.Pi * math.Pi * p.PadConductivity * p.Radius)
	wheel := movingDisc / (p.WheelConductivity * p.Radius) * math.Sqrt(p.WheelDiffusivity/(p.Speed*p.Radius))
	return PadFaceResult{
		Rise:     p.Heat / (1/pad + 1/wheel),
		PadShare: wheel / (pad + wheel),
		Peclet:   peclet,
	}, nil
}

// PadHeatingParams describe a pad into which heat flows for a time.
type PadHeatingParams struct {
	Heat         float64 // W, Q: heat that flows into the pad
	Radius       float64 // m, a: radius of the pad
	Conductivity float64 // W/(m·K), k: of the pad
	Diffusivity  float64 // m²/s, α: conductivity over density and specific heat, of the pad
	Duration     float64 // s, t: how long the heat flows
}

// PadHeatingRise returns the temperature rise in the middle of a pad's face after heat has flowed into it for a time.
//
//	ΔT = (2·q·√(α·t)/k)·(1/√π − ierfc(a/(2·√(α·t)))),  q = Q/(π·a²)
//	ierfc(x) = exp(−x²)/√π − x·erfc(x)
//
//	ΔT  temperature rise in the middle of the face, K
//
// Valid for an even heat flow over the face of a pad that is deep beside its
// radius, or a time too short for heat to cross it. From a short pull, where
// heat flows straight in, to a long one, where ΔT = q·a/k.
// Errors: *check.RangeError for values not above zero (heat: below zero).
// Source: Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed., 10.5 (from memory).
func PadHeatingRise(p PadHeatingParams) (float64, error) {
	if err := check.All("contact.PadHeatingRise",
		check.NotNegative("Heat", p.Heat),
		check.Positive("Radius", p.Radius),
		check.Positive("Conductivity", p.Conductivity),
		check.Positive("Diffusivity", p.Diffusivity),
		check.Positive("Duration", p.Duration),
	); err != nil {
		return 0, err
	}
	q := p.Heat / (math.Pi * p.Radius * p.Radius)
	depth := math.Sqrt(p.Diffusivity * p.Duration)
	x := p.Radius / (2 * depth)
	// 1/√π − ierfc(x), grouped so that it keeps its digits for long times (small x)
	gain := -math.Expm1(-x*x)/math.Sqrt(math.Pi) + x*math.Erfc(x)
	return 2 * q * depth / p.Conductivity * gain, nil
}

// BulkHeatingParams describe a part that takes up heat and loses none.
type BulkHeatingParams struct {
	Heat         float64 // W, Q: heat that flows in
	Duration     float64 // s, t: how long it flows
	Mass         float64 // kg, m: mass that warms
	SpecificHeat float64 // J/(kg·K), c: specific heat of that mass
}

// BulkHeatingRise returns how much a part warms through when it loses no heat, the most it can.
//
//	ΔT = Q·t/(m·c)
//
//	ΔT  temperature rise, K
//
// Valid for any time; the longer, the more it overstates.
// Errors: *check.RangeError for a mass or specific heat not above zero, heat or time below zero.
// Source: definition of specific heat.
func BulkHeatingRise(p BulkHeatingParams) (float64, error) {
	if err := check.All("contact.BulkHeatingRise",
		check.NotNegative("Heat", p.Heat),
		check.NotNegative("Duration", p.Duration),
		check.Positive("Mass", p.Mass),
		check.Positive("SpecificHeat", p.SpecificHeat),
	); err != nil {
		return 0, err
	}
	return p.Heat * p.Duration / (p.Mass * p.SpecificHeat), nil
}
