package loadpath

import (
	"axlewright/calc/check"
	"axlewright/calc/ring"
)

// PlateTable holds a crown wheel's plate loose on its flange and in one piece
// with it, so that thousands of draws of the bond need not solve it again.
type PlateTable struct{ loose, solid Plate }

// NewPlateTable solves the plate; the bond of the parameters is not used.
func NewPlateTable(wheel ring.CrownWheelParams, at PlatePlaces) (*PlateTable, error) {
	t := new(PlateTable)
	var err error
	wheel.Bond = 0
	if t.loose, err = NewPlate(wheel, at); err != nil {
		return nil, err
	}
	wheel.Bond = 1
	t.solid, err = NewPlate(wheel, at)
	return t, err
}

// At returns the plate at a bond from 0 (loose) to 1 (solid) and a modulus of
// the wheel, flange in proportion.
func (t *PlateTable) At(bond, modulus float64) (Plate, error) {
	if err := check.All("loadpath.PlateTable.At", check.Within("bond", bond, 0, 1), check.Positive("modulus", modulus)); err != nil {
		return Plate{}, err
	}
	p := t.loose
	for r := range p.Compliance {
		for c := range p.Compliance[r] {
			p.Compliance[r][c] += bond * (t.solid.Compliance[r][c] - p.Compliance[r][c])
		}
	}
	return p.Scaled(modulus), nil
}
