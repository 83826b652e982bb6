package casting

import (
	"fmt"
	"slices"
	"strings"
)

// A Catalogue is what the shop knows about the variants it meets. It may be
// spread over several files.
type Catalogue struct {
	Note     string    `yaml:"note,omitempty"`
	Decide   Decide    `yaml:"decide,omitempty"`
	History  History   `yaml:"history,omitempty"`
	Tools    []Tool    `yaml:"tools,omitempty"` // beside the usual ones, or at other costs
	Features []Feature `yaml:"features,omitempty"`
	Variants []Variant `yaml:"variants,omitempty"`
}

// Decide is when the shop is sure enough. Zeros take the usual figures.
type Decide struct {
	Sure      float64 `yaml:"sure,omitempty"`        // 0..1, chance at which the work goes on
	WrongCost float64 `yaml:"wrong_costs,omitempty"` // what the wrong kit costs, in measurements with a caliper
}

// The usual figures of Decide, assumed: a kit cut for another variant costs
// one to two hours of fettling, a measurement with a caliper about a minute.
const (
	usualSure      = 0.95
	usualWrongCost = 90
)

func (d Decide) sure() float64 {
	if d.Sure > 0 {
		return d.Sure
	}
	return usualSure
}

func (d Decide) wrongCost() float64 {
	if d.WrongCost > 0 {
		return d.WrongCost
	}
	return usualWrongCost
}

// History counts what castings turned out to be, beside the known variants.
type History struct {
	NewFound      float64 `yaml:"new_found,omitempty"`      // were no variant that was known when they came
	ModifiedFound float64 `yaml:"modified_found,omitempty"` // had been repaired or altered before
}

// Before anything was counted, one casting in twenty is taken to be a new
// variant and one in ten to be modified: assumed, and outweighed by as many
// castings as the beta distributions below are worth.
const (
	newPrior, newPriorOf           = 1.0, 20.0
	modifiedPrior, modifiedPriorOf = 1.0, 10.0
)

// castings is how many castings the catalogue has behind it.
func (c *Catalogue) castings() float64 {
	n := c.History.NewFound
	for i := range c.Variants {
		n += c.Variants[i].Seen
	}
	return n
}

// chanceNew is the chance that the next casting is no known variant.
func (c *Catalogue) chanceNew() float64 {
	return (c.History.NewFound + newPrior) / (c.castings() + newPriorOf)
}

// chanceModified is the chance that the next casting was altered before.
func (c *Catalogue) chanceModified() float64 {
	return (c.History.ModifiedFound + modifiedPrior) / (c.castings() + modifiedPriorOf)
}

// cost of a tool, or false where there is none of that name.
func (c *Catalogue) cost(tool string) (float64, bool) {
	for _, list := range [][]Tool{c.Tools, usualTools} {
		if i := slices.IndexFunc(list, func(t Tool) bool { return t.Name == tool }); i >= 0 {
			return list[i].Cost, true
		}
	}
	return 0, false
}

// feature returns the place of a feature in the list, or -1.
func (c *Catalogue) feature(name string) int {
	return slices.IndexFunc(c.Features, func(f Feature) bool { return f.Name == name })
}

// Variant returns the variant of that name.
//
// Errors: *UnknownVariant, which lists the known ones.
func (c *Catalogue) Variant(name string) (Variant, error) {
	if i := c.variant(name); i >= 0 {
		return c.Variants[i], nil
	}
	known := make([]string, len(c.Variants))
	for i := range c.Variants {
		known[i] = c.Variants[i].Name
	}
	return Variant{}, &UnknownVariant{name, known}
}

func (c *Catalogue) variant(name string) int {
	return slices.IndexFunc(c.Variants, func(v Variant) bool { return v.Name == name })
}

// An UnknownVariant says that a name stands for no variant.
type UnknownVariant struct {
	Name  string
	Known []string
}

func (e *UnknownVariant) Error() string {
	return fmt.Sprintf("there is no variant %q; known are %s", e.Name, strings.Join(e.Known, ", "))
}
