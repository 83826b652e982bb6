package loadpath

import "math"

// segment is a length of shaft with one stiffness, along the local axis from
// bearing 1.
type segment struct {
	from, to          float64 // m
	axial, bend, shar float64 // N, N·m², N: E·A, E·I, κ·G·A
}

// Load cases of a shaft on two supports that hold it sideways only: a moment at
// either support, force and moment at the loaded point, and the force of a
// spigot bearing.
const (
	atFirst = iota
	atSecond
	pointForce
	pointMoment
	atSpigot
	beamCases
)

// beam is a shaft on two bearings, alike in both planes.
type beam struct {
	span   float64 // bearing 1 to bearing 2
	point  float64 // bearing 1 to the loaded point, either way
	spigot float64 // bearing 1 to the spigot bearing

	segments [maxSegments]segment
	count    int

	bending [beamCases][beamCases]float64 // movement by case per load by case
	stretch [2][2]float64                 // pull between the bearings; axial force at the point, held at bearing 1
}

const maxSegments = 24

// add appends a section and returns where it ends.
func (b *beam) add(from float64, s Section, modulus, poisson float64) float64 {
	share := s.Share
	if share == 0 {
		share = 1
	}
	area := math.Pi / 4 * (s.Outer*s.Outer - s.Inner*s.Inner)
	second := math.Pi / 64 * (math.Pow(s.Outer, 4) - math.Pow(s.Inner, 4))
	b.segments[b.count] = segment{
		from: from, to: from + s.Length,
		axial: modulus * area, // windows leave rods that pull well and bend badly
		bend:  share * modulus * second,
		shar:  share * shearCoefficient(s.Inner/s.Outer, poisson) * modulus / (2 * (1 + poisson)) * area,
	}
	b.count++
	return from + s.Length
}

// shearCoefficient is κ of a round tube with m the ratio of its diameters.
// Cowper, J. Appl. Mech. 33 (1966), 335-340.
func shearCoefficient(m, nu float64) float64 {
	q := (1 + m*m) * (1 + m*m)
	return 6 * (1 + nu) * q / ((7+6*nu)*q + (20+12*nu)*m*m)
}

// prepare works out the compliances by unit loads. Moments run straight between
// the places where something acts, and these are ends of segments.
func (b *beam) prepare() {
	b.bending, b.stretch = [beamCases][beamCases]float64{}, [2][2]float64{}
	for i := range b.count {
		s := &b.segments[i]
		h := s.to - s.from
		mid := (s.from + s.to) / 2
		var start, end, shear [beamCases]float64
		for c := range beamCases {
			shear[c] = b.shear(c, mid)
			m := b.moment(c, mid)
			start[c], end[c] = m+shear[c]*h/2, m-shear[c]*h/2
		}
		for c := range beamCases {
			for d := range c + 1 {
				f := h/(6*s.bend)*(2*start[c]*start[d]+start[c]*end[d]+end[c]*start[d]+2*end[c]*end[d]) +
					h/s.shar*shear[c]*shear[d]
				b.bending[c][d] += f
				if c != d {
					b.bending[d][c] += f
				}
			}
		}
		pull := within(mid, 0, b.span)
		point := within(mid, min(b.point, 0), max(b.point, 0))
		b.stretch[0][0] += pull * h / s.axial
		b.stretch[1][1] += point * h / s.axial
		b.stretch[0][1] += pull * point * h / s.axial
	}
	b.stretch[1][0] = b.stretch[0][1]
}

func within(x, low, high float64) float64 {
	if x > low && x < high {
		return 1
	}
	return 0
}

// place is where a case acts.
func (b *beam) place(c int) float64 {
	switch c {
	case atFirst:
		return 0
	case atSecond:
		return b.span
	case atSpigot:
		return b.spigot
	}
	return b.point
}

// reactions are the forces of the supports on the shaft for a unit of a case.
func (b *beam) reactions(c int) (first, second float64) {
	if c == pointForce || c == atSpigot {
		second = -b.place(c) / b.span
		return -1 - second, second
	}
	return 1 / b.span, -1 / b.span
}

// shear is the sum of the forces to the right of x.
func (b *beam) shear(c int, x float64) float64 {
	first, second := b.reactions(c)
	v := first*within(0, x, math.Inf(1)) + second*within(b.span, x, math.Inf(1))
	if (c == pointForce || c == atSpigot) && b.place(c) > x {
		v++
	}
	return v
}

// moment is that of everything to the right of x, positive where it turns the
// axis towards the direction of the force.
func (b *beam) moment(c int, x float64) float64 {
	first, second := b.reactions(c)
	m := -first*x*within(0, x, math.Inf(1)) + second*(b.span-x)*within(b.span, x, math.Inf(1))
	if at := b.place(c); at > x {
		if c == pointForce || c == atSpigot {
			return m + at - x
		}
		return m + 1
	}
	return m
}
