package weld

import (
	"math"

	"axlewright/calc/check"
)

// FilletSizeParams are two parts to be joined by a fillet.
type FilletSizeParams struct {
	Thinner     float64 // m, thickness of the thinner part
	Thicker     float64 // m, thickness of the thicker part
	LowHydrogen bool    // -, low-hydrogen process or worked-out preheat: the thinner part then sets the least leg
	AtEdge      bool    // -, the fillet lies against the edge of the thinner part (a lap); optional
}

// FilletSizeResult are the bounds and a starting point for a fillet's size.
type FilletSizeResult struct {
	LeastLeg     float64 // m, against too quick a chill by the thicker part
	LeastThroat  float64 // m, 3 mm: least throat that may be counted as carrying load
	GreatestLeg  float64 // m, along an edge, so that the edge is not melted away; else the thinner part
	StartingLeg  float64 // m, 0.7 of the thinner part brought within the bounds, common practice for fillets on both sides
	Contradicted bool    // -, the least leg is above the greatest: another joint or preheat is needed
}

// FilletSize returns the least, the greatest and a usual leg for a fillet between two parts.
//
//	z_min = 3 mm up to 6 mm, 5 mm up to 12 mm, 6 mm up to 20 mm, 8 mm above
//	z_max = t at an edge thinner than 6 mm, t − 2 mm above
//	z = 0.7·t, common practice
//
// Valid for steel; the least leg is for one run. More weld than the thinner part can use only distorts.
// Errors: *check.RangeError for thicknesses that are not positive or in the wrong order.
// Source: AWS D1.1, minimum and maximum fillet sizes, metric (from memory); EN 1993-1-8:2005, 4.5.2(2) (from memory); 0.7·t common practice, no source.
func FilletSize(p FilletSizeParams) (FilletSizeResult, error) {
	if err := check.All("weld.FilletSize",
		check.Positive("Thinner", p.Thinner),
		check.That("Thicker", p.Thicker, p.Thicker >= p.Thinner, "Thicker >= Thinner"),
	); err != nil {
		return FilletSizeResult{}, err
	}
	chill := p.Thicker
	if p.LowHydrogen {
		chill = p.Thinner
	}
	const mm, slack = 1e-3, 1 + 1e-9
	r := FilletSizeResult{LeastThroat: 3 * mm, GreatestLeg: p.Thinner, StartingLeg: 0.7 * p.Thinner}
	switch {
	case chill <= 6*mm*slack:
		r.LeastLeg = 3 * mm
	case chill <= 12*mm*slack:
		r.LeastLeg = 5 * mm
	case chill <= 20*mm*slack:
		r.LeastLeg = 6 * mm
	default:
		r.LeastLeg = 8 * mm
	}
	if p.AtEdge && p.Thinner >= 6*mm/slack {
		r.GreatestLeg = p.Thinner - 2*mm
	}
	r.StartingLeg = math.Min(math.Max(r.StartingLeg, r.LeastLeg), math.Max(r.GreatestLeg, r.LeastLeg))
	r.Contradicted = r.LeastLeg > r.GreatestLeg*slack
	return r, nil
}
