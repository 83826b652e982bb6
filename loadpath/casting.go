package loadpath

import "math"

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

// cast puts the casting's matrix in the place of the seats' own stiffness. A
// little of the compliance along either cap is taken out and given to the
// spring that knows the cap from the casting; what is left stays positive.
func (s *system) cast(a *Axle) (footFoot float64, err error) {
	// The order of Casting is head, tail, near, far; ours has far before near.
	place := [CastingFreedoms]int{}
	for i := range CastingFreedoms {
		place[i] = i
		if i/perSeat == far {
			place[i] = i + perSeat
		} else if i/perSeat == near {
			place[i] = i - perSeat
		}
	}
	c := &a.Casting.Compliance
	at := func(i, j int) float64 { return c[place[i]*CastingFreedoms+place[j]] }
	for i := range maxSeatDOF {
		for j := range maxSeatDOF {
			s.structure.seat[i][j] = at(i, j)
		}
		s.foot[i] = at(i, maxSeatDOF)
	}
	c1, c2 := a.capAxis()
	for e, seat := range []*SideSeat{&a.FarSeat, &a.NearSeat} {
		first := perSeat * (far + e)
		give, ok := hidden(c, place[first+1], place[first+2], c1, c2)
		give /= 4
		in, to := seat.compliances()
		if toward := give + to - in; !ok || !(toward > 0) {
			return 0, &BadAxle{Field: "Casting", Reason: "is not symmetric and positive, or stiffer than the leg and cap that hang on it"}
		} else {
			s.inward[e], s.toward[e] = 1/give, 1/toward
		}
		d := [2]float64{c1, c2}
		for i := range 2 {
			for j := range 2 {
				s.structure.seat[first+1+i][first+1+j] -= give * d[i] * d[j]
			}
		}
	}
	return at(maxSeatDOF, maxSeatDOF), nil
}

// hidden is how much compliance along a direction can be taken out of the
// matrix before it stops being positive: 1/(dᵀ·C⁻¹·d).
func hidden(c *[CastingFreedoms * CastingFreedoms]float64, i1, i2 int, c1, c2 float64) (float64, bool) {
	const n = CastingFreedoms
	var l [n][n]float64
	var x [n]float64
	sum := 0.0
	for i := range n {
		for j := range i + 1 {
			v := c[i*n+j]
			if math.Abs(v-c[j*n+i]) > 1e-6*math.Sqrt(c[i*n+i]*c[j*n+j]) {
				return 0, false
			}
			for k := range j {
				v -= l[i][k] * l[j][k]
			}
			if i != j {
				l[i][j] = v / l[j][j]
			} else if v > 1e-12*c[i*n+i] {
				l[i][i] = math.Sqrt(v)
			} else {
				return 0, false
			}
		}
		v := 0.0
		switch i {
		case i1:
			v = c1
		case i2:
			v = c2
		}
		for k := range i {
			v -= l[i][k] * x[k]
		}
		x[i] = v / l[i][i]
		sum += x[i] * x[i]
	}
	return 1 / sum, true
}
