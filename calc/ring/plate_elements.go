package ring

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/mat"
)

// Freedoms at a node of the radial mesh, for one harmonic. The fields are
// W·cos nθ, B·cos nθ and T·sin nθ; turning the wheel by a quarter wave gives
// W·sin nθ, B·sin nθ and −T·cos nθ with the same stiffness. Where mid-planes
// are offset the plate also moves in its plane, by U·cos nθ and V·sin nθ.
const (
	deflection      = 0 // W
	radialSlope     = 1 // B
	tangentialSlope = 2 // T
	radialShift     = 3 // U
	tangentialShift = 4 // V
	flatFreedoms    = 3 // a node, of a plate whose mid-plane is flat
	offsetFreedoms  = 5
	degree          = 4 // of the polynomials in an element
	mostElement     = offsetFreedoms * (degree + 1)
	flatStrains     = 5               // κ_r, κ_θ, κ_rθ, γ_r, γ_θ
	membraneStrains = flatStrains + 3 // and ε_r, ε_θ, ε_rθ of the mid-plane
)

// reference holds the element's node places (Gauss-Lobatto points, which keep
// the polynomials well conditioned) on −1..1.
var reference = [degree + 1]float64{-1, -0.6546536707079771, 0, 0.6546536707079771, 1}

// radialMesh is a chain of elements from the inner to the outer radius.
type radialMesh struct {
	ends    []float64 // element boundaries
	zone    []int     // zone of each element
	perNode int       // freedoms
	offsets []float64 // of the zones
}

// newRadialMesh cuts the zones into elements that are neither longer than a
// tenth of the plate nor span a ratio of radii above 1.35.
func newRadialMesh(zones []PlateZone) radialMesh {
	longest := (zones[len(zones)-1].Outer - zones[0].Inner) / 10
	m := radialMesh{ends: []float64{zones[0].Inner}, perNode: flatFreedoms}
	if offset(zones) {
		m.perNode = offsetFreedoms
	}
	for i, z := range zones {
		m.offsets = append(m.offsets, z.Offset)
		ratio := math.Log(z.Outer / z.Inner)
		n := max(math.Ceil((z.Outer-z.Inner)/longest-1e-9), math.Ceil(ratio/math.Log(1.35)))
		for k := 1.0; k <= n; k++ {
			end := z.Inner + (z.Outer-z.Inner)*k/n
			if ratio > 1 { // geometric steps towards a small hole
				end = z.Inner * math.Exp(ratio*k/n)
			}
			if k == n {
				end = z.Outer
			}
			m.ends = append(m.ends, end)
			m.zone = append(m.zone, i)
		}
	}
	return m
}

func (m radialMesh) nodes() int     { return len(m.zone)*degree + 1 }
func (m radialMesh) inner() float64 { return m.ends[0] }
func (m radialMesh) outer() float64 { return m.ends[len(m.ends)-1] }
func (m radialMesh) freedoms() int  { return m.perNode * m.nodes() }
func (m radialMesh) bandwidth() int { return m.perNode*(degree+1) - 1 } // upper, without the diagonal

// locate returns the element that holds radius r and the values of its
// polynomials there.
func (m radialMesh) locate(r float64) (element int, values [degree + 1]float64) {
	for element < len(m.zone)-1 && r > m.ends[element+1] {
		element++
	}
	x := 2*(r-m.ends[element])/(m.ends[element+1]-m.ends[element]) - 1
	values, _ = shapes(x)
	return element, values
}

// shapes returns the element's polynomials and their slopes at x in −1..1.
func shapes(x float64) (value, slope [degree + 1]float64) {
	for i := range reference {
		value[i] = 1
		for j := range reference {
			if j == i {
				continue
			}
			term := 1 / (reference[i] - reference[j])
			for k := range reference {
				if k != i && k != j {
					term *= (x - reference[k]) / (reference[i] - reference[k])
				}
			}
			slope[i] += term
			value[i] *= (x - reference[j]) / (reference[i] - reference[j])
		}
	}
	return value, slope
}

// stiffnessParts is the stiffness as a polynomial in the harmonic number:
// K_n = K0 + n·K1 + n²·K2, each an upper band stored by rows.
type stiffnessParts struct {
	freedoms, bandwidth int
	part                [3][]float64
}

func (m radialMesh) assemble(zones []PlateZone, nu float64) stiffnessParts {
	parts := stiffnessParts{freedoms: m.freedoms(), bandwidth: m.bandwidth()}
	for i := range parts.part {
		parts.part[i] = make([]float64, parts.freedoms*(parts.bandwidth+1))
	}
	const points = degree + 3 // the 1/r terms are not polynomials
	x, weight := make([]float64, points), make([]float64, points)
	for e, zone := range m.zone {
		quad.Legendre{}.FixedLocations(x, weight, m.ends[e], m.ends[e+1])
		for g, r := range x {
			m.addPoint(&parts, e, r, weight[g]*r, zones[zone], nu)
		}
	}
	return parts
}

// addPoint adds the energy of one integration point. The strains are
// (b0 + n·b1)·u with u the element's freedoms.
func (m radialMesh) addPoint(parts *stiffnessParts, element int, r, weight float64, z PlateZone, nu float64) {
	length := m.ends[element+1] - m.ends[element]
	value, slope := shapes(2*(r-m.ends[element])/length - 1)
	size, strains := m.perNode*(degree+1), flatStrains
	if m.perNode == offsetFreedoms {
		strains = membraneStrains
	}
	var b0, b1 [membraneStrains][mostElement]float64
	for a := range value {
		n, d := value[a], slope[a]*2/length
		// The strain of a plane field (B, T): ∂B/∂r, B/r + ∂T/(r·∂θ), ∂B/(r·∂θ) + ∂T/∂r − T/r.
		plane := func(first, b, t int, factor float64) {
			b0[first][b] = factor * d
			b0[first+1][b], b1[first+1][t] = factor*n/r, factor*n/r
			b1[first+2][b], b0[first+2][t] = -factor*n/r, factor*(d-n/r)
		}
		at := m.perNode * a
		w, b, t := at+deflection, at+radialSlope, at+tangentialSlope
		plane(0, b, t, 1)
		b0[3][w], b0[3][b] = d, -n    // γ_r = W' − B
		b1[4][w], b0[4][t] = -n/r, -n // γ_θ = −nW/r − T
		if strains > flatStrains {
			plane(flatStrains, at+radialShift, at+tangentialShift, 1)
			plane(flatStrains, b, t, -z.Offset)
		}
	}
	stress := func(b *[membraneStrains][mostElement]float64, j int) (s [membraneStrains]float64) {
		plane := func(first int, rigidity float64) {
			s[first] = rigidity * (b[first][j] + nu*b[first+1][j])
			s[first+1] = rigidity * (nu*b[first][j] + b[first+1][j])
			s[first+2] = rigidity * (1 - nu) / 2 * b[first+2][j]
		}
		plane(0, z.Rigidity)
		s[3], s[4] = z.Shear*b[3][j], z.Shear*b[4][j]
		plane(flatStrains, z.Stretch)
		return s
	}
	first := element * degree * m.perNode
	for j := range size {
		s0, s1 := stress(&b0, j), stress(&b1, j)
		for i := range j + 1 {
			at := (first+i)*(parts.bandwidth+1) + j - i
			for k := range strains {
				parts.part[0][at] += weight * b0[k][i] * s0[k]
				parts.part[1][at] += weight * (b0[k][i]*s1[k] + b1[k][i]*s0[k])
				parts.part[2][at] += weight * b1[k][i] * s1[k]
			}
		}
	}
}

// harmonic returns the stiffness of harmonic n with the held freedoms taken
// out of the equations: their rows and columns keep only the diagonal.
func (s stiffnessParts) harmonic(n int, held []int) *mat.SymBandDense {
	x := float64(n)
	data := make([]float64, len(s.part[0]))
	for i := range data {
		data[i] = s.part[0][i] + x*(s.part[1][i]+x*s.part[2][i])
	}
	k := mat.NewSymBandDense(s.freedoms, s.bandwidth, data)
	for _, h := range held {
		for j := max(0, h-s.bandwidth); j < min(s.freedoms, h+s.bandwidth+1); j++ {
			if j != h {
				k.SetSymBand(h, j, 0)
			}
		}
	}
	return k
}
