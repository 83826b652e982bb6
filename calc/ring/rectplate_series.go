package ring

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/mat"
)

// series is the set of functions of a plate in one direction, with the
// integrals of their products. The length is cut where the patch begins and
// ends, because the load jumps there. At each cut and end stand two functions,
// a unit deflection and a unit slope (the cubic shapes of a beam); inside each
// piece stand Legendre polynomials integrated twice, which bend it and do not
// move its ends.
type series struct {
	length float64
	cuts   []float64
	degree int
	kept   []int         // functions that the edges allow
	value  *mat.SymDense // ∫ f·g dx
	first  *mat.SymDense // ∫ f'·g' dx
	second *mat.SymDense // ∫ f''·g'' dx
	cross  *mat.Dense    // ∫ f·g'' dx
	spring *mat.SymDense // turning springs of welded ends, k/D·f'·g'
	load   []float64     // mean over the patch
}

func newSeries(length float64, start, end Edge, middle, patch, fixity float64, degree int) series {
	s := series{length: length, degree: degree, cuts: []float64{0}}
	for _, cut := range []float64{middle - patch/2, middle + patch/2} {
		if cut > s.cuts[len(s.cuts)-1]+1e-9*length && cut < length*(1-1e-9) {
			s.cuts = append(s.cuts, cut)
		}
	}
	s.cuts = append(s.cuts, length)
	s.keep(start, end, fixity)
	n := len(s.kept)
	s.value, s.first, s.second, s.spring = mat.NewSymDense(n, nil), mat.NewSymDense(n, nil), mat.NewSymDense(n, nil), mat.NewSymDense(n, nil)
	s.cross, s.load = mat.NewDense(n, n, nil), make([]float64, n)
	for piece := range len(s.cuts) - 1 {
		s.integrate(s.cuts[piece], s.cuts[piece+1], middle, patch)
	}
	if fixity > 0 && fixity < 1 {
		k := 3 / length * fixity / (1 - fixity)
		for i, e := range []Edge{start, end} {
			if e == Welded {
				f := s.at(length * float64(i))
				for a := range n {
					for b := a; b < n; b++ {
						s.spring.SetSym(a, b, s.spring.At(a, b)+k*f[a][1]*f[b][1])
					}
				}
			}
		}
	}
	return s
}

func (s *series) functions() int {
	pieces := len(s.cuts) - 1
	return 2*(pieces+1) + pieces*(s.degree-3)
}

// keep drops the functions that the edges forbid.
func (s *series) keep(start, end Edge, fixity float64) {
	drop := map[int]bool{}
	for i, e := range []Edge{start, end} {
		deflects := 2 * i * (len(s.cuts) - 1)
		if e != Free {
			drop[deflects] = true
		}
		if e == Clamped || e == Welded && fixity == 1 {
			drop[deflects+1] = true
		}
	}
	for i := range s.functions() {
		if !drop[i] {
			s.kept = append(s.kept, i)
		}
	}
}

// integrate adds the products of one piece. An odd number of points, because
// the library's table for 26 points is wrong in v0.17.0.
func (s *series) integrate(low, high, middle, patch float64) {
	points := (s.degree + 1) | 1 // exact: the products are polynomials of twice the degree
	x, w := make([]float64, points), make([]float64, points)
	quad.Legendre{}.FixedLocations(x, w, low, high)
	for q := range x {
		f := s.at(x[q])
		for i := range f {
			if math.Abs(x[q]-middle) < patch/2 {
				s.load[i] += w[q] / patch * f[i][0]
			}
			for j := range f {
				s.cross.Set(i, j, s.cross.At(i, j)+w[q]*f[i][0]*f[j][2])
				if j >= i {
					s.value.SetSym(i, j, s.value.At(i, j)+w[q]*f[i][0]*f[j][0])
					s.first.SetSym(i, j, s.first.At(i, j)+w[q]*f[i][1]*f[j][1])
					s.second.SetSym(i, j, s.second.At(i, j)+w[q]*f[i][2]*f[j][2])
				}
			}
		}
	}
}

// at returns value, first and second derivative of each kept function at x.
func (s *series) at(x float64) [][3]float64 {
	piece := 0
	for piece < len(s.cuts)-2 && x > s.cuts[piece+1] {
		piece++
	}
	half := (s.cuts[piece+1] - s.cuts[piece]) / 2
	t := (x-s.cuts[piece])/half - 1
	all := make([][3]float64, s.functions())
	set := func(i int, value, slope, bend, size float64) {
		all[i] = [3]float64{size * value, size * slope / half, size * bend / (half * half)}
	}
	set(2*piece, (1-t)*(1-t)*(2+t)/4, 3*(t*t-1)/4, 1.5*t, 1)
	set(2*piece+1, (1-t)*(1-t)*(1+t)/4, (3*t*t-2*t-1)/4, (3*t-1)/2, half)
	set(2*piece+2, (1+t)*(1+t)*(2-t)/4, 3*(1-t*t)/4, -1.5*t, 1)
	set(2*piece+3, -(1+t)*(1+t)*(1-t)/4, (3*t*t+2*t-1)/4, (3*t+1)/2, half)
	p := legendre(s.degree, t)
	inside := 2*len(s.cuts) + piece*(s.degree-3)
	for j := 2; j <= s.degree-2; j++ { // bends as P_j
		n := float64(j)
		set(inside+j-2,
			((p[j+2]-p[j])/(2*n+3)-(p[j]-p[j-2])/(2*n-1))/(2*n+1),
			(p[j+1]-p[j-1])/(2*n+1),
			p[j], half) // a size near that of the slopes
	}
	kept := make([][3]float64, len(s.kept))
	for i, k := range s.kept {
		kept[i] = all[k]
	}
	return kept
}

// legendre returns P_0(t) to P_n(t).
func legendre(n int, t float64) []float64 {
	p := make([]float64, n+1)
	p[0], p[1] = 1, t
	for k := 2; k <= n; k++ {
		m := float64(k)
		p[k] = ((2*m-1)*t*p[k-1] - (m-1)*p[k-2]) / m
	}
	return p
}
