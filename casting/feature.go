package casting

import (
	"slices"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"

	"axlewright/axle"
)

// A Feature is one thing about a casting that can be looked at or measured. A
// seen feature lists its Answers; a measured one its Span and Instrument.
type Feature struct {
	Name        string       `yaml:"name"`
	Sort        Sort         `yaml:"sort"`
	Ask         string       `yaml:"ask"`                   // the question as the fitter reads it
	Answers     []string     `yaml:"answers,omitempty"`     // of a seen feature, at least two
	Span        axle.Length  `yaml:"span,omitempty"`        // of a measured one: what any casting of the trade could read
	Instrument  axle.Length  `yaml:"instrument,omitempty"`  // two standard deviations of one reading
	With        string       `yaml:"with,omitempty"`        // the tool, where it is not the sort's usual one
	Reliability float64      `yaml:"reliability,omitempty"` // 0..1, where it is not the sort's usual one
	Swap        []Swap       `yaml:"swap,omitempty"`        // answers that change places on a mirror casting
	Repair      *RepairSigns `yaml:"repair,omitempty"`      // what an earlier repair does to it
	Kit         bool         `yaml:"kit,omitempty"`         // a plate kit sits on it
	Sketch      string       `yaml:"sketch,omitempty"`      // key of the line drawing that shows it
	Caution     string       `yaml:"caution,omitempty"`     // shown at the step, two lines at most
	File        string       `yaml:"-"`
	Line        int          `yaml:"-"`
}

// A Swap is a pair of answers that change places on a mirror casting.
type Swap struct {
	One   string `yaml:"one"`
	Other string `yaml:"other"`
}

// RepairSigns says how a repair shows in a feature.
type RepairSigns struct {
	Signs   []string `yaml:"signs,omitempty"`   // answers that only a repair gives
	Shown   float64  `yaml:"shown,omitempty"`   // 0..1, share of repaired castings that show one
	Altered bool     `yaml:"altered,omitempty"` // a repair may have changed it: bored, sleeved, ground
}

// UnmarshalYAML keeps the line for findings.
func (f *Feature) UnmarshalYAML(node ast.Node) error {
	type plain Feature
	var p plain
	if err := yaml.NodeToValue(node, &p, yaml.Strict()); err != nil {
		return err
	}
	*f = Feature(p)
	f.Line = startLine(node)
	return nil
}

// Measured says whether the feature is measured; the others are seen.
func (f *Feature) Measured() bool { return len(f.Answers) == 0 }

// Trust is how far a reading of the feature is believed: the chance that it
// was read right and belongs to this casting.
func (f *Feature) Trust() float64 {
	if f.Reliability > 0 {
		return f.Reliability
	}
	return sorts[f.Sort].trust
}

// Tool is what the feature is looked at or measured with.
func (f *Feature) Tool() string {
	switch tool := sorts[f.Sort].tool; {
	case f.With != "":
		return f.With
	case f.Measured() && tool == "look": // a size is not told by looking
		return "caliper"
	default:
		return tool
	}
}

// mirrored returns the answer that a mirror casting shows in place of one.
func (f *Feature) mirrored(answer string) string {
	for _, s := range f.Swap {
		switch answer {
		case s.One:
			return s.Other
		case s.Other:
			return s.One
		}
	}
	return answer
}

// sign says whether an answer is one that only a repair gives.
func (f *Feature) sign(answer string) bool {
	return f.Repair != nil && slices.Contains(f.Repair.Signs, answer)
}

// spread is one standard deviation of a reading by the feature's usual instrument.
func (f *Feature) spread() float64 { return f.Instrument.Value / 2 }

// width is the length of what any casting could read.
func (f *Feature) width() float64 { return f.Span.High - f.Span.Low }
