package loadpath

import "axlewright/calc/ring"

// Places on the crown wheel's plate, the rows and columns of Plate.Compliance.
const (
	meshAxial      = iota // force at the mesh along y, deflection there
	meshRadial            // moment of a radial force at the mesh, radial slope there
	meshTangential        // moment of a tangential force, tangential slope there
	meshOutward           // radial force in the plate's plane there, its shift outwards
	meshAround            // tangential force in the plate's plane, its shift round the axis
	pegAxial              // force at the peg along y, deflection there
	dialAxial             // deflection at the dial
	platePlaces
	meshPlaces = pegAxial // those at the mesh
)

// plateLoads are the tooth forces on the plate, at the places of the mesh.
type plateLoads [meshPlaces]float64

// Plate is the compliance of the crown wheel on its flange, seen from the hub.
type Plate struct {
	// Compliance between mesh axial, mesh radial slope, mesh tangential slope,
	// mesh outward and round the wheel in the plate's plane, peg and dial, in
	// m/N, rad/N and rad/(N·m), for the given modulus.
	Compliance [platePlaces][platePlaces]float64
	Modulus    float64 // Pa, Young's modulus the compliance is for
	DialRadius float64 // m, where the dial stands, behind the mesh
}

// Scaled returns the plate at another Young's modulus.
func (p Plate) Scaled(modulus float64) Plate {
	for i := range p.Compliance {
		for j := range p.Compliance[i] {
			p.Compliance[i][j] *= p.Modulus / modulus
		}
	}
	p.Modulus = modulus
	return p
}

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
		meshAxial: mesh, meshRadial: mesh, meshTangential: mesh, meshOutward: mesh, meshAround: mesh,
		pegAxial:  {Radius: peg, Angle: at.PegAngle, Direction: ring.Axial, Spread: at.PadRadius / peg},
		dialAxial: {Radius: dial, Direction: ring.Axial},
	}
	points[meshRadial].Direction = ring.Radial
	points[meshTangential].Direction = ring.Tangential
	points[meshOutward].Direction = ring.Outward
	points[meshAround].Direction = ring.Around
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
