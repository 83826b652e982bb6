package weldplan

import "axlewright/axle"

// A Job is everything a weld plan is made from. The kit comes as runs of weld, so
// that a kit cut elsewhere, or by hand, can be planned too.
type Job struct {
	Name      string     `yaml:"job"`
	Note      string     `yaml:"note,omitempty"`
	Casting   Casting    `yaml:"casting"`
	Shop      Shop       `yaml:"shop"`
	Plates    []Plate    `yaml:"plates"`
	Cavities  []Cavity   `yaml:"cavities,omitempty"`
	HeatSinks []HeatSink `yaml:"heat_sinks,omitempty"`
	Loads     []Load     `yaml:"loads,omitempty"`
	Logs      []string   `yaml:"logs,omitempty"` // files with weld logs, beside the job's own
}

// A Casting is the nose casting as it lies on the bench.
type Casting struct {
	Variant  string     `yaml:"variant"`
	Metal    Metal      `yaml:"metal"`
	Analysis *Analysis  `yaml:"analysis,omitempty"`           // of a steel casting, where it is known
	Mass     axle.Mass  `yaml:"mass"`                         // kg
	Skin     Area       `yaml:"skin"`                         // m², all the outside that gives off heat
	Rebored  bool       `yaml:"bored_after,omitempty"`        // the bores are machined after welding
	Held     Place      `yaml:"held_at,omitempty"`            // where loads leave the casting: the mounting flange
	Limbs    []Limb     `yaml:"limbs"`                        // legs, back, nose: the skeleton
	Bores    []Bore     `yaml:"bores"`                        // what must stay in line
	Peg      *PegFace   `yaml:"peg,omitempty"`                // face the peg's screw sits square to
	Limits   *Limits    `yaml:"allowed_moves,omitempty"`      // the shop's own, where it has them
	Measured axle.Ratio `yaml:"moved_over_planned,omitempty"` // what past castings of this variant moved, over what their plans said
}

// A Limb is a straight piece of the casting that bends as a beam. Limbs whose
// ends lie on one another, or on another limb, are one casting.
type Limb struct {
	Name   string      `yaml:"name"`
	From   Place       `yaml:"from"`
	To     Place       `yaml:"to"`
	Width  axle.Length `yaml:"width"`          // m, across the limb, the way `across` points
	Depth  axle.Length `yaml:"depth"`          // m, the other way
	Across Side        `yaml:"across"`         // direction of the width
	Wall   axle.Length `yaml:"wall,omitempty"` // m, of a hollow limb; left out, it is solid
}

// A Role says what a bore carries.
type Role string

// The roles of bores.
const (
	SideBore Role = "side" // a side bearing's
	HeadBore Role = "head" // the pinion's, next to the teeth
	TailBore Role = "tail" // the pinion's, at the flange
)

var roles = []Role{SideBore, HeadBore, TailBore}

// A Bore is a bearing seat.
type Bore struct {
	Name string `yaml:"name"`
	Role Role   `yaml:"role"`
	At   Place  `yaml:"at"` // middle of the seat
	On   string `yaml:"on"` // limb
}

// A PegFace is the face that the peg's boss or plate offers to the crown wheel.
type PegFace struct {
	At     Place  `yaml:"at"`
	Facing Side   `yaml:"facing"` // the way the peg points
	On     string `yaml:"on"`
}

// Limits are how far things may move. Left out, the trade's figures stand.
type Limits struct {
	InLine  axle.Length `yaml:"in_line,omitempty"`  // m, side bores and pinion bores, over the span of the mandrel
	Apart   axle.Length `yaml:"apart,omitempty"`    // m, change of the distance between the side bores
	Square  axle.Length `yaml:"square,omitempty"`   // m, pinion axis to side axis, in 100 mm
	Offset  axle.Length `yaml:"offset,omitempty"`   // m, pinion axis past side axis
	PegFace axle.Length `yaml:"peg_face,omitempty"` // m, towards or from the crown wheel
	PegTilt axle.Length `yaml:"peg_tilt,omitempty"` // m, in 30 mm
}

// A Plate is one piece of the kit with its runs of weld.
type Plate struct {
	Name      string      `yaml:"name"`
	Steel     string      `yaml:"steel"` // a grade of calc/material
	Analysis  *Analysis   `yaml:"analysis,omitempty"`
	Thickness axle.Length `yaml:"thickness"`      // m
	Area      Area        `yaml:"area,omitempty"` // m²; left out, what its runs enclose
	Runs      []Run       `yaml:"runs"`
}

// A JointKind is how a plate meets the casting.
type JointKind string

// The kinds of joint.
const (
	Lap    JointKind = "lap"    // the plate lies on the casting, the bead along its edge
	Tee    JointKind = "tee"    // the plate stands on the casting
	Corner JointKind = "corner" // the plate's edge on the casting's edge
	Butt   JointKind = "butt"   // edge against edge
)

var jointKinds = []JointKind{Lap, Tee, Corner, Butt}

// A Position is how the welder gets at a run.
type Position string

// The positions, as the trade calls them; ISO 6947 letters beside them.
const (
	Flat       Position = "flat"       // PA
	Horizontal Position = "horizontal" // PB
	Vertical   Position = "vertical"   // PF
	Overhead   Position = "overhead"   // PD
)

var positions = []Position{Flat, Horizontal, Vertical, Overhead}

// A Run is one length of weld as drawn, straight or along an arc.
type Run struct {
	Name     string      `yaml:"name"`
	From     Place       `yaml:"from"`
	Through  Place       `yaml:"through,omitempty"` // a point of the arc; left out, the run is straight
	To       Place       `yaml:"to"`
	On       string      `yaml:"on"`             // limb of the casting
	Side     Side        `yaml:"side"`           // the way the casting's face there looks
	Wall     axle.Length `yaml:"wall"`           // m, casting wall there
	Joint    JointKind   `yaml:"joint"`          //
	Bead     Side        `yaml:"bead,omitempty"` // of a tee: the side of the plate the bead lies on
	Leg      axle.Length `yaml:"leg,omitempty"`  // m; left out, the plan chooses it
	Gap      axle.Length `yaml:"gap,omitempty"`  // m, fit gap
	Position Position    `yaml:"position"`
}

// A Cavity is a closed hollow behind a plate.
type Cavity struct {
	Name     string      `yaml:"name"`
	Volume   Volume      `yaml:"volume,omitempty"`
	Area     Area        `yaml:"area,omitempty"`  // m², with depth instead of the volume
	Depth    axle.Length `yaml:"depth,omitempty"` // m, of the filling
	Vent     *Vent       `yaml:"vent,omitempty"`
	Backfill bool        `yaml:"backfill,omitempty"`
	Resin    Density     `yaml:"resin,omitempty"` // density by the data sheet
}

// A Vent lets hot gas out of a cavity: a hole, or a length left unwelded.
type Vent struct {
	Hole     axle.Length `yaml:"hole,omitempty"`     // m, diameter
	Unwelded axle.Length `yaml:"unwelded,omitempty"` // m, length
	AtTop    bool        `yaml:"at_top,omitempty"`
	Run      string      `yaml:"run,omitempty"` // that closes it, where it is left unwelded
}

// A HeatSink is a bar, plate or mandrel that sits tight on the casting.
type HeatSink struct {
	Name string    `yaml:"name"`
	Mass axle.Mass `yaml:"mass"`
	Near []string  `yaml:"near,omitempty"` // runs whose heat it takes at once
}

// A Load is a force that the finished casting carries, from a seat, the peg or a plate.
type Load struct {
	Name   string        `yaml:"name"`
	On     string        `yaml:"on"` // a bore, "peg", or a plate
	Force  [3]axle.Force `yaml:"force"`
	At     Place         `yaml:"at,omitempty"`     // on a plate: where it acts
	Cycles axle.Ratio    `yaml:"cycles,omitempty"` // how often it comes and goes
}
