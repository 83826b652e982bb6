package weld

import "axlewright/calc/check"

// Scale is a hydrogen scale of EN 1011-2, A the wettest.
type Scale string

// Hydrogen scales.
const (
	ScaleA Scale = "A"
	ScaleB Scale = "B"
	ScaleC Scale = "C"
	ScaleD Scale = "D"
	ScaleE Scale = "E"
)

var scales = []struct {
	scale       Scale
	above, upTo float64 // ml/100 g; A is open upward
}{{ScaleE, 0, 3}, {ScaleD, 3, 5}, {ScaleC, 5, 10}, {ScaleB, 10, 15}, {ScaleA, 15, 0}}

// HydrogenScaleResult is a hydrogen scale and its bounds.
type HydrogenScaleResult struct {
	Scale string  // name, A to E
	Above float64 // m³/kg, hydrogen above this
	UpTo  float64 // m³/kg, and up to this; 0 where the scale is open
}

// HydrogenScale returns the hydrogen scale of a weld metal.
//
//	scale = A above 15, B 10 to 15, C 5 to 10, D 3 to 5, E up to 3 ml/100 g
//
//	hydrogen  diffusible hydrogen of the deposited metal, m³/kg
//
// Valid for hydrogen measured by ISO 3690. 1 ml/100 g is 1e-5 m³/kg. TIG and clean solid wire
// mostly come in D or E, dried basic electrodes in C or D, rutile ones in A.
// Errors: *check.RangeError for a negative content or one above 100 ml/100 g.
// Source: EN 1011-2:2001, hydrogen scales, table C.2 (bounds read, table number from memory).
func HydrogenScale(hydrogen float64) (HydrogenScaleResult, error) {
	if err := check.All("weld.HydrogenScale", check.Within("hydrogen", hydrogen, 0, 100*mlPer100g)); err != nil {
		return HydrogenScaleResult{}, err
	}
	for _, s := range scales[:len(scales)-1] {
		if hydrogen <= s.upTo*mlPer100g*(1+1e-9) {
			return HydrogenScaleResult{string(s.scale), s.above * mlPer100g, s.upTo * mlPer100g}, nil
		}
	}
	return HydrogenScaleResult{Scale: string(ScaleA), Above: 15 * mlPer100g}, nil
}
