package loadpath

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"axlewright/calc/check"
)

// The rows and columns of a Casting. Axial and first and second radial axes are
// x, y, z at the pinion's bearings and y, z, x at the side bearings; turns are
// about the radial axes. The peg's foot moves along y, away from the pinion.
const (
	HeadAxial = iota
	HeadRadial1
	HeadRadial2
	HeadTurn1
	HeadTurn2
	TailAxial
	TailRadial1
	TailRadial2
	TailTurn1
	TailTurn2
	NearAxial
	NearRadial1
	NearRadial2
	NearTurn1
	NearTurn2
	FarAxial
	FarRadial1
	FarRadial2
	FarTurn1
	FarTurn2
	PegFoot
	CastingFreedoms
)

// Casting is the compliance of the whole casting at its seats, with cross
// terms, from a finite-element run or a bench.
type Casting struct {
	// Compliance is row by row in m/N, rad/N and rad/(N·m). It must be
	// symmetric and positive. In the caps' direction it holds the seat pressed
	// into the casting; what cap and leg give more when drawn the other way is
	// taken from the side seats. The peg's foot is in it and so is no part of
	// the peg's own stiffness.
	Compliance [CastingFreedoms * CastingFreedoms]float64
}

// SeatsAsCasting is the casting without cross terms that the seats of an axle
// describe, to enter measured ones into. The caps must face along x or z, as
// the matrix has the radial directions there.
func SeatsAsCasting(a *Axle, pegFoot float64) (Casting, error) {
	if err := check.All("loadpath.SeatsAsCasting", check.Positive("pegFoot", pegFoot),
		check.That("CapDirection", a.CapDirection.X, a.CapDirection.X == 0 != (a.CapDirection.Z == 0), "along x or along z"),
	); err != nil {
		return Casting{}, err
	}
	var c Casting
	set := func(row int, stiffness ...float64) {
		for i, k := range stiffness {
			c.Set(row+i, row+i, 1/k)
		}
	}
	for row, s := range map[int]*Seat{HeadAxial: &a.HeadSeat, TailAxial: &a.TailSeat} {
		set(row, s.Axial, s.Radial, s.Radial, s.Tilt, s.Tilt)
	}
	for row, s := range map[int]*SideSeat{NearAxial: &a.NearSeat, FarAxial: &a.FarSeat} {
		alongZ, alongX := s.Across, s.Inward
		if a.CapDirection.X == 0 {
			alongZ, alongX = alongX, alongZ
		}
		set(row, s.Axial, alongZ, alongX, s.Tilt, s.Tilt)
	}
	set(PegFoot, pegFoot)
	return c, nil
}

// Set enters a compliance and its mirror image.
func (c *Casting) Set(row, column int, compliance float64) {
	c.Compliance[row*CastingFreedoms+column] = compliance
	c.Compliance[column*CastingFreedoms+row] = compliance
}

// CastingFromStiffness inverts a stiffness matrix, row by row in N/m, N/rad and
// N·m/rad.
func CastingFromStiffness(stiffness *[CastingFreedoms * CastingFreedoms]float64) (Casting, error) {
	bad := &BadAxle{Field: "Casting", Reason: "has a stiffness that is not symmetric and positive"}
	const n = CastingFreedoms
	// A unit diagonal keeps metres and radians apart.
	var scale [n]float64
	for i := range n {
		if scale[i] = 1 / math.Sqrt(stiffness[i*n+i]); !(scale[i] > 0) {
			return Casting{}, bad
		}
	}
	k := mat.NewSymDense(n, nil)
	for i := range n {
		for j := range n {
			v := stiffness[i*n+j] * scale[i] * scale[j]
			if !(math.Abs(v-stiffness[j*n+i]*scale[i]*scale[j]) <= 1e-6) {
				return Casting{}, bad
			}
			k.SetSym(i, j, v)
		}
	}
	var factor mat.Cholesky
	var inverse mat.SymDense
	if !factor.Factorize(k) {
		return Casting{}, bad
	}
	if err := factor.InverseTo(&inverse); err != nil {
		return Casting{}, bad
	}
	var c Casting
	for i := range n {
		for j := range n {
			c.Compliance[i*n+j] = inverse.At(i, j) * scale[i] * scale[j]
		}
	}
	return c, nil
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
