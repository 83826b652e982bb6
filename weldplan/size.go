package weldplan

import (
	"math"

	"axlewright/calc/weld"
)

// A Size is how much weld a run gets.
type Size struct {
	Leg     float64 `json:"leg"`    // m; of a butt the plate's thickness
	Throat  float64 `json:"throat"` // m, design
	Area    float64 `json:"area"`   // m², drawn section
	Passes  int     `json:"passes"`
	Pieces  int     `json:"pieces"` // beads laid one after another with a pause between, in each pass
	Piece   float64 `json:"piece"`  // m, length of each
	Length  float64 `json:"length"` // m
	Why     string  `json:"why"`
	TooThin bool    `json:"too_thin,omitempty"` // the throat is below what EN 1993-1-8 lets carry load
}

// passLimit is the greatest leg laid in one pass. Common practice, no source.
var passLimit = map[Process]float64{TIG: 4.5e-3, MAG: 6.5e-3, Stick: 5.5e-3}

// leastStructuralThroat of a fillet that may be counted (EN 1993-1-8:2005, 4.5.2(2)).
const leastStructuralThroat = 3e-3 // m

// sizeOf settles a run's size: the leg the drawing asks for, or the usual one.
func sizeOf(r *Run, plate float64, l line, process Process, longest float64, lowHydrogen bool) (Size, error) {
	s := Size{Length: l.length}
	if r.Joint == Butt {
		s.Leg, s.Throat, s.Area = plate, plate, buttArea(plate, r.Gap.Value)
		s.Why = "butt through the plate's thickness"
	} else {
		thin, thick := math.Min(plate, r.Wall.Value), math.Max(plate, r.Wall.Value)
		bounds, err := weld.FilletSize(weld.FilletSizeParams{Thinner: thin, Thicker: thick, LowHydrogen: lowHydrogen, AtEdge: r.Joint == Lap || r.Joint == Corner})
		if err != nil {
			return s, err
		}
		s.Leg, s.Why = bounds.StartingLeg, "0.7 of the thinner part, within the least and the greatest leg (common practice; AWS D1.1 from memory)"
		if bounds.Contradicted {
			s.Leg, s.Why = bounds.GreatestLeg, "as much as the plate's edge allows; the heavier part asks for more, so the joint needs preheat or a low-hydrogen process"
		}
		if r.Leg.Given() {
			s.Leg, s.Why = r.Leg.Value, "as drawn"
		}
		// Legs are laid to the nearest half millimetre.
		if !r.Leg.Given() {
			s.Leg = math.Max(1e-3, math.Round(s.Leg*2e3)/2e3)
		}
		shape := weld.FilletShape{LegA: s.Leg, LegB: s.Leg, Angle: math.Pi / 2}
		if s.Throat, err = weld.Throat(shape); err != nil {
			return s, err
		}
		if s.Area, err = weld.FilletArea(shape); err != nil {
			return s, err
		}
		// A gap is bridged: the fillet must be that much larger to keep its throat.
		s.Area += r.Gap.Value * (s.Leg + r.Gap.Value/2)
	}
	s.TooThin = s.Throat < leastStructuralThroat*(1-1e-9)
	limit := passLimit[process]
	s.Passes = max(1, int(math.Ceil(s.Area/(limit*limit/2)-1e-9)))
	s.Pieces = max(1, int(math.Ceil(l.length/longest-1e-9)))
	s.Piece = l.length / float64(s.Pieces)
	return s, nil
}
