package weldplan

import (
	"github.com/goccy/go-yaml/ast"

	"axlewright/axle"
	"axlewright/calc/weld"
)

// A Shop is how things stand at the bench before the first arc.
type Shop struct {
	Process  Process          `yaml:"process"`            // or choose
	Practice Practice         `yaml:"practice,omitempty"` // for irons: cold, hot or choose
	Hydrogen Hydrogen         `yaml:"hydrogen,omitempty"` // diffusible, of the filler
	Scale    weld.Scale       `yaml:"hydrogen_scale,omitempty"`
	Preheat  axle.Temperature `yaml:"preheat,omitempty"` // a wish
	Oven     axle.Temperature `yaml:"oven,omitempty"`    // hottest that the whole casting can be soaked at
	Air      axle.Temperature `yaml:"air"`               // and the casting's, when it has stood there
	Damp     bool             `yaml:"damp,omitempty"`    // dew on the metal, rain, a draught of it
	Cleaned  Cleaning         `yaml:"cleaned_with"`
	Baked    bool             `yaml:"baked,omitempty"`
	Bearings bool             `yaml:"bearings_in,omitempty"`
	Resin    bool             `yaml:"resin_inside,omitempty"`
	Torch    bool             `yaml:"torch_on_one_corner,omitempty"` // how the preheat would be done
}

// A Process is a welding process or the word choose.
type Process string

// The processes a shop of this kind has.
const (
	ChooseProcess Process = "choose"
	TIG           Process = Process(weld.TIG)
	MAG           Process = Process(weld.MAG)
	Stick         Process = Process(weld.StickWelding)
)

var processes = []Process{ChooseProcess, TIG, MAG, Stick}

// UnmarshalYAML reads a process.
func (p *Process) UnmarshalYAML(node ast.Node) error {
	return readWord(node, p, processes, "process")
}

// A Practice is a way to weld iron.
type Practice string

// The practices. There is none in between.
const (
	ChoosePractice Practice = "choose"
	Cold           Practice = "cold" // short runs, hand-warm, peened
	Hot            Practice = "hot"  // the whole casting evenly heated, slow cool
)

var practices = []Practice{ChoosePractice, Cold, Hot}

// UnmarshalYAML reads a practice.
func (p *Practice) UnmarshalYAML(node ast.Node) error {
	return readWord(node, p, practices, "practice")
}

// A Cleaning is what the casting was last cleaned with.
type Cleaning string

// The cleanings.
const (
	Aqueous     Cleaning = "aqueous"
	Acetone     Cleaning = "acetone or alcohol"
	Chlorinated Cleaning = "chlorinated solvent"
	NotKnown    Cleaning = "unknown"
)

var cleanings = []Cleaning{Aqueous, Acetone, Chlorinated, NotKnown}

// UnmarshalYAML reads what was used.
func (c *Cleaning) UnmarshalYAML(node ast.Node) error {
	return readWord(node, c, cleanings, "cleaning")
}

// UnmarshalYAML reads a role.
func (r *Role) UnmarshalYAML(node ast.Node) error { return readWord(node, r, roles, "role") }

// UnmarshalYAML reads a kind of joint.
func (k *JointKind) UnmarshalYAML(node ast.Node) error {
	return readWord(node, k, jointKinds, "joint")
}

// UnmarshalYAML reads a position.
func (p *Position) UnmarshalYAML(node ast.Node) error {
	return readWord(node, p, positions, "position")
}
