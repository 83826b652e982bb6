package axle

import (
	"github.com/goccy/go-yaml/ast"

	"axlewright/quantity"
)

// A Tyre is the tyre fitted, or planned: ask for both.
type Tyre struct {
	Size         string // as written on the sidewall, empty where a radius was given
	LoadedRadius Length // m
}

// TyreRadiusShare is the doubt of a loaded radius that was worked out from the
// size: makes and pressures differ. Common practice, no source.
const TyreRadiusShare = 0.02

// UnmarshalYAML reads a size such as 235/85R16, or a loaded radius such as
// 389 mm ± 3 mm, measured.
func (t *Tyre) UnmarshalYAML(node ast.Node) error {
	if _, mapping := pairsOf(node); mapping {
		return t.LoadedRadius.UnmarshalYAML(node)
	}
	text, err := scalarText(node)
	if err != nil {
		return err
	}
	size, err := quantity.ParseTyre(text)
	if err == nil {
		t.Size = text
		n := Number{Value: size.LoadedRadius, Origin: Trade, Text: text, Kind: string(quantity.Length), Line: startOf(node).Position.Line}
		n.spreadShare(TyreRadiusShare)
		t.LoadedRadius.Number = n
		return nil
	}
	if t.LoadedRadius.UnmarshalYAML(node) == nil {
		return nil
	}
	return fault(node, "%v, or its loaded radius such as 389 mm", err)
}

// MarshalYAML writes the size, or the loaded radius as it was typed.
func (t Tyre) MarshalYAML() ([]byte, error) {
	if t.Size != "" {
		return scalarYAML(t.Size)
	}
	return t.LoadedRadius.MarshalYAML()
}
