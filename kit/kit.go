package kit

import (
	"axlewright/axle"
	"axlewright/kit/nest"
)

// A Kit is one revision of a plate kit as its file says it.
type Kit struct {
	Kit       Typed      `yaml:"kit" json:"kit"`         // KIT-T24-A.2
	Casting   string     `yaml:"casting" json:"casting"` // the variant it fits
	Title     string     `yaml:"title" json:"title"`
	Drawn     Typed      `yaml:"drawn" json:"drawn"` // date, 2026-03-02
	Reason    Reason     `yaml:"reason" json:"reason"`
	Limits    Limits     `yaml:"limits,omitempty" json:"limits,omitzero"`
	Sizes     Sizes      `yaml:"sizes,omitempty" json:"sizes,omitempty"`
	Frames    []Frame    `yaml:"frames" json:"frames"`
	Drillings []Drilling `yaml:"drillings,omitempty" json:"drillings,omitempty"`
	Pieces    []Piece    `yaml:"pieces" json:"pieces"`

	sheet *axle.Sheet
}

// A Reason says why a revision exists.
type Reason struct {
	Moved  []string `yaml:"moved,omitempty" json:"moved,omitempty"`   // against the revision before: "station 3 out by 1.5 mm"
	Why    Typed    `yaml:"why" json:"why"`                           // in a sentence
	Builds []string `yaml:"builds,omitempty" json:"builds,omitempty"` // stamped numbers that taught it
}

// Limits of what can be cut. What is left out is common practice.
type Limits struct {
	LeastHole     Typed `yaml:"least_hole,omitempty" json:"least_hole,omitzero"`         // in thicknesses
	LeastLigament Typed `yaml:"least_ligament,omitempty" json:"least_ligament,omitzero"` // in thicknesses
	WeldStrip     Typed `yaml:"weld_strip,omitempty" json:"weld_strip,omitzero"`         // along welded edges, free of marks
	Pilot         Typed `yaml:"pilot_under,omitempty" json:"pilot_under,omitzero"`       // how much less than the drill a guide hole is cut
}

// A Frame is a flat face of the casting that plates are drawn on.
type Frame struct {
	Name     Typed     `yaml:"name" json:"name"`
	Origin   string    `yaml:"origin" json:"origin"` // "axis of the side bearings, on the wall"
	X        string    `yaml:"x" json:"x"`           // which way, in words
	Up       string    `yaml:"up" json:"up"`         // which way y and the etched arrow point
	Stations []Station `yaml:"stations,omitempty" json:"stations,omitempty"`
}

// A Station is a numbered place of the casting where it is measured and where a
// plate meets it.
type Station struct {
	Number int    `yaml:"number" json:"number"`
	Name   string `yaml:"name" json:"name"`
	At     Spot   `yaml:"at" json:"at"`
}

// A Piece is one plate of a kit.
type Piece struct {
	Number    Typed     `yaml:"number" json:"number"`
	Name      string    `yaml:"name" json:"name"`
	Hand      Typed     `yaml:"hand,omitempty" json:"hand,omitzero"`   // pair (drawn left), left, right; empty for neither
	Count     int       `yaml:"count,omitempty" json:"count,omitzero"` // in a kit, of each hand; 1 where left out
	Thickness Typed     `yaml:"thickness" json:"thickness"`
	Steel     Typed     `yaml:"steel" json:"steel"`
	Grain     Typed     `yaml:"grain,omitempty" json:"grain,omitzero"` // along or across its x; any where left out
	Frame     Typed     `yaml:"frame" json:"frame"`
	Outline   []Step    `yaml:"outline" json:"outline"`
	Holes     []Hole    `yaml:"holes,omitempty" json:"holes,omitempty"`
	Slots     []Slot    `yaml:"slots,omitempty" json:"slots,omitempty"`
	Openings  []Opening `yaml:"openings,omitempty" json:"openings,omitempty"`
	Mark      Mark      `yaml:"mark,omitempty" json:"mark,omitzero"`
}

// A Step draws an outline on to its next corner: straight, along an arc with a
// bulge (the tangent of a quarter of the angle it turns through, positive to
// the left), or along an arc about a centre.
type Step struct {
	From    Spot   `yaml:"from,omitempty" json:"from,omitzero"` // in the first step only
	To      Spot   `yaml:"to,omitempty" json:"to,omitzero"`
	Bulge   Typed  `yaml:"bulge,omitempty" json:"bulge,omitzero"`
	Centre  Spot   `yaml:"centre,omitempty" json:"centre,omitzero"`
	Turn    Typed  `yaml:"turn,omitempty" json:"turn,omitzero"`       // left or right about the centre
	Corner  Typed  `yaml:"corner,omitempty" json:"corner,omitzero"`   // radius at the end of the step
	Seam    Typed  `yaml:"seam,omitempty" json:"seam,omitzero"`       // weld, open or vent
	Station int    `yaml:"station,omitempty" json:"station,omitzero"` // that the end of the step follows
	Tabs    []Tab  `yaml:"tabs,omitempty" json:"tabs,omitempty"`
	Vents   []Vent `yaml:"vents,omitempty" json:"vents,omitempty"`
}

// A Tab stands out from a straight edge into a slot of another piece.
type Tab struct {
	At    Typed `yaml:"at" json:"at"` // of its middle, from the start of the edge
	Wide  Typed `yaml:"wide" json:"wide"`
	Depth Typed `yaml:"depth" json:"depth"`
}

// A Vent is a length of a welded edge that stays open until the last.
type Vent struct {
	At   Typed `yaml:"at" json:"at"`
	Wide Typed `yaml:"wide" json:"wide"`
}

// A Hole is round.
type Hole struct {
	Label    Typed `yaml:"label" json:"label"`
	Kind     Typed `yaml:"kind,omitempty" json:"kind,omitzero"` // plain, guide, pin or vent
	At       Spot  `yaml:"at" json:"at"`
	Diameter Typed `yaml:"diameter,omitempty" json:"diameter,omitzero"`
	Drilling Typed `yaml:"drilling,omitempty" json:"drilling,omitzero"` // of a guide hole: which row of drillings
}

// A Slot has round ends, or square ones for a tab.
type Slot struct {
	Label Typed `yaml:"label" json:"label"`
	At    Spot  `yaml:"at" json:"at"`
	Long  Typed `yaml:"long" json:"long"`
	Wide  Typed `yaml:"wide" json:"wide"`
	Turn  Typed `yaml:"turn,omitempty" json:"turn,omitzero"` // degrees anticlockwise
	Tab   Typed `yaml:"tab,omitempty" json:"tab,omitzero"`   // number of the piece whose tabs it takes
}

// An Opening is a hole of any outline, such as a vent window.
type Opening struct {
	Label   Typed  `yaml:"label" json:"label"`
	Outline []Step `yaml:"outline" json:"outline"`
}

// A Mark is where the etched words go; left out, a place is looked for.
type Mark struct {
	At   Spot  `yaml:"at,omitempty" json:"at,omitzero"` // middle of the block
	Size Typed `yaml:"size,omitempty" json:"size,omitzero"`
	Turn Typed `yaml:"turn,omitempty" json:"turn,omitzero"` // degrees
	None bool  `yaml:"none,omitempty" json:"none,omitzero"` // the piece is too small for one
}

// A Drilling is a tapped hole in the casting that is drilled through a plate.
type Drilling struct {
	Name    Typed `yaml:"name" json:"name"`
	Thread  Typed `yaml:"thread" json:"thread"`                      // "M12x1.75", "7/16-20 UNF"
	Class   Typed `yaml:"class" json:"class"`                        // of the bolt: 10.9, or a grade of inch bolts
	Metal   Typed `yaml:"metal" json:"metal"`                        // that is tapped: a grade of calc/material
	Wall    Typed `yaml:"wall" json:"wall"`                          // of that metal at the hole, with its doubt: "22 mm ± 1.5 mm"
	Behind  Typed `yaml:"behind" json:"behind"`                      // what lies behind the wall
	Through bool  `yaml:"through,omitempty" json:"through,omitzero"` // may be drilled right through
	Keep    Typed `yaml:"keep,omitempty" json:"keep,omitzero"`       // wall that must stay under the drill's point
}

// Hand is the side of the casting that a plate belongs to.
type Hand string

// The hands, as they are etched.
const (
	Neither Hand = ""
	Left    Hand = "L"
	Right   Hand = "R"
)

var grains = map[string]nest.Grain{"": nest.Any, "any": nest.Any, "along": nest.Along, "across": nest.Across}
