package traction

import "axlewright/calc/check"

// TyreParams are the figures on a tyre's wall, 235/85 R16 for one.
type TyreParams struct {
	SectionWidth float64 // m, w: first figure
	AspectRatio  float64 // -, a: second figure over 100, height of the wall over its width
	RimDiameter  float64 // m, d: third figure, 16 for 406.4 mm
}

// TyreDiameter returns the outside diameter of a tyre from the figures on its wall.
//
//	D = d + 2·a·w
//
//	D  outside diameter, new and unloaded, m
//
// Valid for tyres marked with their aspect ratio; older ones (7.50 R16) need a
// table or a tape.
// Errors: *check.RangeError for values not above zero or an aspect ratio above 1.2.
// Source: ISO 4000-1, design dimensions (from memory).
func TyreDiameter(p TyreParams) (float64, error) {
	if err := check.All("traction.TyreDiameter",
		check.Positive("SectionWidth", p.SectionWidth),
		check.That("AspectRatio", p.AspectRatio, p.AspectRatio > 0 && p.AspectRatio <= 1.2, "0 < AspectRatio <= 1.2"),
		check.Positive("RimDiameter", p.RimDiameter),
	); err != nil {
		return 0, err
	}
	return p.RimDiameter + 2*p.AspectRatio*p.SectionWidth, nil
}

// loadedShare is how far a laden tyre's radius sinks.
const loadedShare = 0.965

// LoadedRadius returns the distance of the hub above the ground under load.
//
//	r = 0.965·D/2
//
//	diameter  outside diameter of the tyre D, m
//	r         loaded radius, m
//
// Valid for tyres at the pressure their load asks for.
// Errors: *check.RangeError for a diameter not above zero.
// Source: common practice, no source.
func LoadedRadius(diameter float64) (float64, error) {
	if err := check.All("traction.LoadedRadius", check.Positive("diameter", diameter)); err != nil {
		return 0, err
	}
	return loadedShare * diameter / 2, nil
}
