package loadpath

// Places on the crown wheel's plate, the rows and columns of Plate.Compliance.
const (
	meshAxial      = iota // force at the mesh along y, deflection there
	meshRadial            // moment of a radial force at the mesh, radial slope there
	meshTangential        // moment of a tangential force, tangential slope there
	pegAxial              // force at the peg along y, deflection there
	dialAxial             // deflection at the dial
	platePlaces
)

// Plate is the compliance of the crown wheel on its flange, seen from the hub.
type Plate struct {
	// Compliance between mesh axial, mesh radial slope, mesh tangential slope,
	// peg and dial, in m/N, rad/N and rad/(N·m), for the given modulus.
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
