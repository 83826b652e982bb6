package nest

import (
	"errors"
	"fmt"
	"math"

	"axlewright/kit/outline"
)

// A Part is a shape to be cut so many times.
type Part struct {
	Name    string       `json:"name"`
	Outline outline.Loop `json:"outline"` // anticlockwise; holes in it do not matter to the nest
	Area    float64      `json:"area"`    // m², of metal, holes taken off; nought takes the outline's
	Count   int          `json:"count"`
	Grain   Grain        `json:"grain"`
	Pair    string       `json:"pair"` // parts of one pair, such as left and right, go on one sheet together; empty for none
}

// Grain says how a part lies to the rolling direction, which is the x direction
// of a sheet.
type Grain string

// The ways to lie. A part's own direction is its x direction.
const (
	Any    Grain = "any"
	Along  Grain = "along"
	Across Grain = "across"
)

// A Stock is a kind of sheet, or one remnant.
type Stock struct {
	Name    string       `json:"name"`
	Outline outline.Loop `json:"outline"` // rolling direction along x
	Count   int          `json:"count"`
	Remnant bool         `json:"remnant"` // used before whole sheets
}

// NewSheets are rectangular sheets of a length along the rolling direction.
func NewSheets(name string, long, wide float64, count int) Stock {
	return Stock{Name: name, Count: count,
		Outline: outline.Rectangle(outline.Box{High: outline.Point{X: long, Y: wide}})}
}

// Rules say how parts may lie.
type Rules struct {
	Gap         float64 `json:"gap"`   // m, between parts
	Edge        float64 `json:"edge"`  // m, from parts to the rim of the sheet
	Turns       int     `json:"turns"` // ways that a part may be turned in a full turn, such as 4
	Tries       int     `json:"tries"` // orders that are tried
	Seed        uint64  `json:"seed"`
	LeastOffcut float64 `json:"least_offcut"` // m, shorter side of a rest that goes back into stock
}

// Usual rules: a gap of a plate's thickness, 10 mm along the rim, quarter turns.
func Usual(thickness float64) Rules {
	return Rules{Gap: math.Max(thickness, 3e-3), Edge: 10e-3, Turns: 4, Tries: 48, Seed: 1, LeastOffcut: 0.2}
}

// Limits of one plan.
const (
	mostParts = 20000
	mostTurns = 72
)

// check refuses what cannot be laid out.
func check(parts []Part, stock []Stock, r Rules) error {
	var found []error
	bad := func(format string, args ...any) { found = append(found, fmt.Errorf(format, args...)) }
	switch {
	case !(r.Gap > 0) || r.Gap > 1:
		bad("a gap of %g m between parts; expected more than nought", r.Gap)
	case !(r.Edge >= 0) || r.Edge > 10:
		bad("an edge of %g m", r.Edge)
	case r.Turns < 1 || r.Turns > mostTurns:
		bad("%d turns; expected 1 to %d", r.Turns, mostTurns)
	case r.Tries < 1:
		bad("%d tries; expected 1 or more", r.Tries)
	}
	total := 0
	for _, p := range parts {
		switch {
		case p.Count < 0:
			bad("part %s: a count of %d", p.Name, p.Count)
		case p.Grain != "" && p.Grain != Any && p.Grain != Along && p.Grain != Across:
			bad("part %s: the grain is %q; expected %q, %q or %q", p.Name, p.Grain, Any, Along, Across)
		}
		if err := p.Outline.Check(); err != nil {
			bad("part %s: %w", p.Name, err)
		} else if p.Outline.Area() < 0 {
			bad("part %s: its outline runs clockwise", p.Name)
		}
		total += max(0, p.Count)
	}
	if total > mostParts {
		bad("%d pieces; the most is %d", total, mostParts)
	}
	for _, s := range stock {
		if s.Count < 0 {
			bad("sheet %s: a count of %d", s.Name, s.Count)
		}
		if err := s.Outline.Check(); err != nil {
			bad("sheet %s: %w", s.Name, err)
			continue
		}
		if b := s.Outline.Bounds(); math.Max(b.Width(), b.Height()) > 50 {
			bad("sheet %s is %.0f m long; the most is 50 m", s.Name, math.Max(b.Width(), b.Height()))
		}
	}
	return errors.Join(found...)
}

// angles are the turns that a part may have, radians.
func (p *Part) angles(turns int) []float64 {
	var list []float64
	switch p.Grain {
	case Along:
		list = []float64{0, math.Pi}
	case Across:
		list = []float64{math.Pi / 2, 3 * math.Pi / 2}
	default:
		for k := range turns {
			list = append(list, 2*math.Pi*float64(k)/float64(turns))
		}
	}
	return list
}

func (p *Part) metal() float64 {
	if p.Area > 0 {
		return p.Area
	}
	return p.Outline.Area()
}
