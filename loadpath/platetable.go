package loadpath

import (
	"axlewright/calc/check"
	"axlewright/calc/ring"
)

// PlateTable holds a crown wheel's plate for several bonds between wheel and
// flange, so that thousands of draws of the bond need not solve the plate again.
type PlateTable struct {
	plates [tableBonds]Plate
}

const tableBonds = 9

// NewPlateTable solves the plate for bonds from loose to solid; the bond of the
// parameters is not used.
func NewPlateTable(wheel ring.CrownWheelParams, at PlatePlaces) (*PlateTable, error) {
	t := new(PlateTable)
	for i := range t.plates {
		wheel.Bond = float64(i) / (tableBonds - 1)
		p, err := NewPlate(wheel, at)
		if err != nil {
			return nil, err
		}
		t.plates[i] = p
	}
	return t, nil
}

// At returns the plate at a bond from 0 (loose) to 1 (solid) and a modulus of
// the wheel, flange in proportion. Between the solved bonds it goes along a
// parabola, which keeps the compliance symmetric and within 0.1 % of a plate
// solved for the bond.
func (t *PlateTable) At(bond, modulus float64) (Plate, error) {
	if err := check.All("loadpath.PlateTable.At", check.Within("bond", bond, 0, 1), check.Positive("modulus", modulus)); err != nil {
		return Plate{}, err
	}
	x := bond * (tableBonds - 1)
	i := min(max(int(x+0.5), 1), tableBonds-2)
	x -= float64(i)
	before, here, after := &t.plates[i-1], &t.plates[i], &t.plates[i+1]
	p := *here
	for r := range p.Compliance {
		for c := range p.Compliance[r] {
			p.Compliance[r][c] = before.Compliance[r][c]*x*(x-1)/2 + here.Compliance[r][c]*(1-x*x) + after.Compliance[r][c]*x*(x+1)/2
		}
	}
	return p.Scaled(modulus), nil
}
