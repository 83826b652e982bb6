package weldplan

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// A section is the cross-section of a limb, a rectangle b along its y and h along
// its z, solid or with a wall all round.
type section struct {
	area, iy, iz, torsion float64 // m², m⁴: iz bends in the plane of x and y
	sy, sz                float64 // m², that carries shear along y and z
	width, depth          float64
}

// rectangle is the section of a limb. The torsion constant of a solid one is
// β·b·h³ with β = 1/3 − 0.21·(h/b)·(1 − h⁴/(12·b⁴)), h the lesser side (Roark's
// Formulas for Stress and Strain, 7th ed., table 10.1, from memory); of a hollow
// one 4·A_m²·t/U for a thin wall (Bredt). Shear is carried by 5/6 of a solid
// rectangle (Timoshenko), and of a hollow one by the walls that stand along it.
func rectangle(b, h, wall float64) section {
	s := section{width: b, depth: h}
	s.area, s.iy, s.iz = b*h, b*h*h*h/12, h*b*b*b/12
	if wall <= 0 || 2*wall >= math.Min(b, h) {
		long, short := math.Max(b, h), math.Min(b, h)
		r := short / long
		s.torsion = (1.0/3 - 0.21*r*(1-r*r*r*r/12)) * long * short * short * short
		s.sy, s.sz = s.area*5/6, s.area*5/6
		return s
	}
	bi, hi := b-2*wall, h-2*wall
	s.area -= bi * hi
	s.iy -= bi * hi * hi * hi / 12
	s.iz -= hi * bi * bi * bi / 12
	bm, hm := b-wall, h-wall
	s.torsion = 4 * bm * bm * hm * hm * wall / (2 * (bm + hm))
	s.sy, s.sz = 2*wall*bm, 2*wall*hm
	return s
}

// A bar is a straight piece of limb between two nodes.
type bar struct {
	a, b    int // nodes
	x, y, z r3.Vec
	length  float64
	section section
	modulus float64
	shear   float64 // modulus of shear
}

// stiffness is Timoshenko's beam with twelve freedoms: movement and turning of
// both ends, in the bar's own axes (Przemieniecki, Theory of Matrix Structural
// Analysis, 1968, 5.6, from memory).
func (b *bar) stiffness() (k [12][12]float64) {
	l, s := b.length, b.section
	put := func(i, j int, v float64) {
		k[i][j] += v
		if i != j {
			k[j][i] += v
		}
	}
	ea, gj := b.modulus*s.area/l, b.shear*s.torsion/l
	put(0, 0, ea)
	put(6, 6, ea)
	put(0, 6, -ea)
	put(3, 3, gj)
	put(9, 9, gj)
	put(3, 9, -gj)
	bend := func(v1, t1, v2, t2 int, ei, shearArea, sign float64) {
		phi := 12 * ei / (b.shear * shearArea * l * l)
		c := ei / (l * l * l * (1 + phi))
		put(v1, v1, 12*c)
		put(v2, v2, 12*c)
		put(v1, v2, -12*c)
		put(v1, t1, sign*6*c*l)
		put(v1, t2, sign*6*c*l)
		put(v2, t1, -sign*6*c*l)
		put(v2, t2, -sign*6*c*l)
		put(t1, t1, (4+phi)*c*l*l)
		put(t2, t2, (4+phi)*c*l*l)
		put(t1, t2, (2-phi)*c*l*l)
	}
	bend(1, 5, 7, 11, b.modulus*s.iz, s.sy, 1)
	bend(2, 4, 8, 10, b.modulus*s.iy, s.sz, -1)
	return k
}

// turned is a stiffness in the casting's axes.
func (b *bar) turned(k [12][12]float64) (g [12][12]float64) {
	t := [3][3]float64{{b.x.X, b.x.Y, b.x.Z}, {b.y.X, b.y.Y, b.y.Z}, {b.z.X, b.z.Y, b.z.Z}}
	for bi := range 4 {
		for bj := range 4 {
			for i := range 3 {
				for j := range 3 {
					sum := 0.0
					for p := range 3 {
						for q := range 3 {
							sum += t[p][i] * k[3*bi+p][3*bj+q] * t[q][j]
						}
					}
					g[3*bi+i][3*bj+j] = sum
				}
			}
		}
	}
	return g
}
