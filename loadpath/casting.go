package loadpath

// CastingFreedoms is the order of a Casting: five movements at each seat and
// the foot of the peg.
const CastingFreedoms = 21

// Casting is the compliance of the whole casting at its seats, with cross
// terms, from a finite-element run or a bench.
//
// The order is head, tail, near, far, each with its axial, first radial, second
// radial movement and its turn about the first and second radial axis, then the
// peg's foot along y, positive away from the pinion. Axial and radial axes are
// x, y, z for the pinion's bearings and y, z, x for the side bearings.
type Casting struct {
	// Compliance is row by row in m/N, rad/N and rad/(N·m). It must be
	// symmetric and positive. In the caps' direction it holds the seat pressed
	// into the casting; what cap and leg give more when drawn the other way is
	// taken from the side seats.
	Compliance [CastingFreedoms * CastingFreedoms]float64
}
