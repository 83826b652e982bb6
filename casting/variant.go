package casting

import (
	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"

	"axlewright/axle"
	"axlewright/calc/material"
)

// A Variant is one kind of casting: what is the same in all that came from one
// foundry's one set of moulds.
type Variant struct {
	Name     string  `yaml:"name"`
	Maker    string  `yaml:"maker,omitempty"`
	Note     string  `yaml:"note,omitempty"`
	Seen     float64 `yaml:"seen,omitempty"`      // castings confirmed as this variant
	Metal    string  `yaml:"metal,omitempty"`     // a grade or a family of calc/material
	Kit      string  `yaml:"kit,omitempty"`       // plate kit and revision that fits
	MirrorOf string  `yaml:"mirror_of,omitempty"` // another variant, of which it is the mirror image
	Shows    Traits  `yaml:"shows,omitempty"`
	File     string  `yaml:"-"`
	Line     int     `yaml:"-"`
}

// UnmarshalYAML keeps the line for findings.
func (v *Variant) UnmarshalYAML(node ast.Node) error {
	type plain Variant
	var p plain
	if err := yaml.NodeToValue(node, &p, yaml.Strict()); err != nil {
		return err
	}
	*v = Variant(p)
	v.Line = startLine(node)
	return nil
}

// Traits are what a variant shows, in the order of the file.
type Traits []Trait

// A Trait is what a variant shows of one feature: of a seen one the answers
// that its castings gave, of a measured one a size.
type Trait struct {
	Feature string
	Counts  []Count
	Size    Size
	Line    int

	raw rawNode // until the features are known
}

// A Count is an answer and how many castings gave it.
type Count struct {
	Answer   string
	Castings float64
}

// A Size is what is known of a dimension of a variant: readings are spread
// about Mean with standard deviation SD, of which Instrument (one standard
// deviation) is the instrument's.
type Size struct {
	Mean       float64 // m
	SD         float64 // m
	Instrument float64 // m
	Castings   float64 // that the mean rests on
	SpreadFrom float64 // castings that the spread rests on
	Origin     axle.Origin
	Text       string // as typed
}

// statedWorth is how many castings a figure is worth that somebody stated
// without saying how many it rests on. Assumed.
const statedWorth = 5

// trait returns what the variant shows of a feature.
func (v *Variant) trait(feature string) (*Trait, bool) {
	for i := range v.Shows {
		if v.Shows[i].Feature == feature {
			return &v.Shows[i], true
		}
	}
	return nil, false
}

// family is the family of the variant's metal, if that is known.
func (v *Variant) family() (material.Family, bool) {
	if v.Metal == "" {
		return "", false
	}
	if f, err := material.FamilyOf(material.Family(v.Metal)); err == nil {
		return f.Family, true
	}
	m, err := material.Lookup(v.Metal)
	return m.Family, err == nil
}
