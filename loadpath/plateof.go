package loadpath

import (
	"axlewright/calc/ring"
)

// PlatePlaces says where the crown wheel's plate is loaded and read.
type PlatePlaces struct {
	MeshRadius float64 // m, mean radius of the wheel
	MeshSpread float64 // rad, half the arc over which the teeth press
	PegRadius  float64 // m; zero where there is no peg
	PegAngle   float64 // rad, from the mesh about the wheel axis, positive about +y
	PadRadius  float64 // m, of the peg's pad
	DialRadius float64 // m, where a dial stands on the back face, behind the mesh; zero stands for the mesh radius
}

// NewPlate works out the compliance of a crown wheel on its flange. This is the
// slow part of preparing an axle (milliseconds): do it once for one shape, and
// scale by the modulus.
func NewPlate(wheel ring.CrownWheelParams, at PlatePlaces) (Plate, error) {
	plate, err := ring.CrownWheel(wheel)
	if err != nil {
		return Plate{}, err
	}
	peg, dial := at.PegRadius, at.DialRadius
	if peg == 0 {
		peg = at.MeshRadius
	}
	if dial == 0 {
		dial = at.MeshRadius
	}
	mesh := ring.Point{Radius: at.MeshRadius, Spread: at.MeshSpread, Direction: ring.Axial}
	points := []ring.Point{
		meshAxial: mesh, meshRadial: mesh, meshTangential: mesh,
		pegAxial:  {Radius: peg, Angle: at.PegAngle, Direction: ring.Axial, Spread: at.PadRadius / peg},
		dialAxial: {Radius: dial, Direction: ring.Axial},
	}
	points[meshRadial].Direction = ring.Radial
	points[meshTangential].Direction = ring.Tangential
	c, err := plate.Compliance(points)
	if err != nil {
		return Plate{}, err
	}
	p := Plate{Modulus: wheel.WheelModulus, DialRadius: dial}
	for i := range p.Compliance {
		for j := range p.Compliance[i] {
			p.Compliance[i][j] = c.At(i, j)
		}
	}
	return p, nil
}
