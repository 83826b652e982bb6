package ring

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/mat"

	"axlewright/calc/check"
)

// Direction names a movement of the plate and the load that does work on it.
type Direction string

const (
	Axial      Direction = "axial"      // deflection w; the load is a force along the wheel's axis
	Radial     Direction = "radial"     // slope β_r = ∂w/∂r; the load is the moment of a radial force
	Tangential Direction = "tangential" // slope β_θ = ∂w/(r·∂θ); the load is the moment of a tangential force
	Outward    Direction = "outward"    // shift u of the neutral plane outwards; the load is a force along it
	Around     Direction = "around"     // shift v of the neutral plane round the axis; the load is a force along it
)

// Point is a place on the plate at which it is loaded or read.
type Point struct {
	Radius    float64   // m, r: distance from the axis
	Angle     float64   // rad, θ: around the axis, positive in the sense of the tangential direction
	Direction Direction // name, axial, radial, tangential, outward or around
	Spread    float64   // rad, half the arc over which the load is spread evenly; 0 for a reading; optional
	HalfWidth float64   // m, half the radial width over which it is spread evenly; optional
}

// Compliance returns the movement at each point for a unit load at each other.
//
//	C = u_i / F_j = Σ 1/(π·ε_n)·cos n(θ_i − θ_j)·[sin(n·s_i)/(n·s_i)]·[sin(n·s_j)/(n·s_j)]·(v_iᵀ·K_n⁻¹·v_j)
//	ε_0 = 2, ε_n = 1 for n > 0; one tangential point turns the cosine into ∓ sine
//
// Entries are m/N, rad/N and m/(N·m), or rad/(N·m), by the directions of the two
// points. The matrix is symmetric (Maxwell) and positive. A tooth force
// outwards F_r and tangential F_t at a distance e from the neutral plane, on the
// side that faces the pinion, is a moment e·F_r in the radial and e·F_t in the
// tangential direction when w is positive away from the pinion, and F_r in the
// outward and F_t in the around direction. A plate whose neutral plane is flat
// is taken as rigid in its plane: its rows outward and around are zero.
//
// Valid for points on the plate. With shear the deflection under a load at a
// true point has no limit (it grows with the logarithm of N): give the points
// that carry load the spread of the tooth contact or of the pad.
// Errors: *check.RangeError for a point off the plate or an unknown direction.
// Source: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells,
// 2nd edition, article 63 (circular plates by Fourier series, from memory).
func (p *Plate) Compliance(points []Point) (*mat.SymDense, error) {
	const fn = "ring.Plate.Compliance"
	if len(points) == 0 {
		return nil, &check.RangeError{Func: fn, Param: "points", Value: 0, Range: "at least one point"}
	}
	inner, outer := p.parts[0].mesh.inner(), p.parts[0].mesh.outer()
	for _, q := range points {
		if err := check.All(fn,
			check.Finite("Angle", q.Angle),
			check.Within("Spread", q.Spread, 0, math.Pi),
			check.NotNegative("HalfWidth", q.HalfWidth),
			check.That("Radius", q.Radius, q.Radius-q.HalfWidth >= inner*(1-1e-12) && q.Radius+q.HalfWidth <= outer*(1+1e-12), "on the plate, with its half width"),
			check.That("Direction", 0, slices.Contains([]Direction{Axial, Radial, Tangential, Outward, Around}, q.Direction), "axial, radial, tangential, outward or around"),
		); err != nil {
			return nil, err
		}
	}
	c := mat.NewSymDense(len(points), nil)
	for i := range p.parts {
		if err := p.parts[i].addCompliance(c, points); err != nil {
			return nil, err
		}
	}
	return c, nil
}

// addCompliance adds the plate's share of the give.
func (p *platePart) addCompliance(c *mat.SymDense, points []Point) error {
	count := len(points)
	loads := mat.NewDense(p.mesh.freedoms(), count, nil)
	for j, q := range points {
		p.mesh.load(loads, j, q)
		for _, row := range p.held {
			loads.Set(row, j, 0)
		}
	}
	var moved, product mat.Dense
	for n := range p.factors {
		if err := p.factors[n].SolveTo(&moved, loads); err != nil {
			if _, badly := err.(mat.Condition); !badly {
				return err
			}
		}
		product.Mul(loads.T(), &moved)
		share := p.share / math.Pi
		if n == 0 {
			share /= 2
		}
		for i := range count {
			ci, si := points[i].wave(n)
			for j := i; j < count; j++ {
				cj, sj := points[j].wave(n)
				c.SetSym(i, j, c.At(i, j)+share*(ci*cj+si*sj)*product.At(i, j))
			}
		}
	}
	return nil
}

// wave returns the factors of the point in the cosine and in the sine family
// of harmonic n, less what the spread takes off.
func (q Point) wave(n int) (cosine, sine float64) {
	x := float64(n)
	spread := 1.0
	if a := x * q.Spread; a > 1e-6 {
		spread = math.Sin(a) / a
	}
	sine, cosine = math.Sincos(x * q.Angle)
	if q.Direction == Tangential || q.Direction == Around {
		return spread * sine, -spread * cosine
	}
	return spread * cosine, spread * sine
}

// load writes a unit load at the point into column j.
func (m radialMesh) load(to *mat.Dense, j int, q Point) {
	// An outward shift of the neutral plane is the shift at height zero less its slope times its height.
	freedom := map[Direction]int{Axial: deflection, Radial: radialSlope, Tangential: tangentialSlope, Outward: radialShift, Around: tangentialShift}[q.Direction]
	lever := map[Direction]int{Outward: radialSlope, Around: tangentialSlope}[q.Direction]
	if freedom >= m.perNode {
		return
	}
	radii, share := []float64{q.Radius}, []float64{1}
	if q.HalfWidth > 0 {
		radii, share = make([]float64, 8), make([]float64, 8)
		quad.Legendre{}.FixedLocations(radii, share, q.Radius-q.HalfWidth, q.Radius+q.HalfWidth)
		for i := range share {
			share[i] /= 2 * q.HalfWidth
		}
	}
	for i, r := range radii {
		element, values := m.locate(r)
		for a, v := range values {
			node := m.perNode * (element*degree + a)
			to.Set(node+freedom, j, to.At(node+freedom, j)+share[i]*v)
			if lever > 0 {
				to.Set(node+lever, j, to.At(node+lever, j)-share[i]*v*m.offsets[m.zone[element]])
			}
		}
	}
}

// Load is a load at one place of the plate.
type Load struct {
	Radius           float64 // m, r: distance from the axis
	Angle            float64 // rad, θ: around the axis
	Spread           float64 // rad, half the arc over which it is spread evenly; optional
	Force            float64 // N, axial force, positive with w
	RadialMoment     float64 // N·m, moment that does work on β_r; optional
	TangentialMoment float64 // N·m, moment that does work on β_θ; optional
}

// Movement is how a place on the plate has moved.
type Movement struct {
	Deflection      float64 // m, w: axial deflection
	RadialSlope     float64 // rad, β_r: slope in the radial plane
	TangentialSlope float64 // rad, β_θ: slope along the circumference
}

// Movement returns how the plate moves at a place under one load.
//
//	w = C_wF·F + C_wr·M_r + C_wt·M_t, and the same for β_r, β_θ
//
//	load    force and moments at their place, N, N·m
//	radius  of the place that is read, m
//	angle   of the place that is read, rad
//
// Valid for places on the plate.
// Errors: *check.RangeError for a place off the plate.
// Source: Compliance.
func (p *Plate) Movement(load Load, radius, angle float64) (Movement, error) {
	var points []Point
	for _, d := range []Direction{Axial, Radial, Tangential} {
		points = append(points, Point{Radius: radius, Angle: angle, Direction: d})
	}
	for _, d := range []Direction{Axial, Radial, Tangential} {
		points = append(points, Point{Radius: load.Radius, Angle: load.Angle, Spread: load.Spread, Direction: d})
	}
	c, err := p.Compliance(points)
	if err != nil {
		return Movement{}, err
	}
	row := func(i int) float64 {
		return c.At(i, 3)*load.Force + c.At(i, 4)*load.RadialMoment + c.At(i, 5)*load.TangentialMoment
	}
	return Movement{Deflection: row(0), RadialSlope: row(1), TangentialSlope: row(2)}, nil
}
