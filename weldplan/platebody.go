package weldplan

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"
)

// A plateBody is a plate that moves and turns as one piece, stretches evenly in
// its plane and bends evenly: Ritz's method with six movements, three strains and
// three curvatures. It is too stiff for a plate that bends unevenly, and right
// for one that is drawn in along its edges.
type plateBody struct {
	name      string
	centre    r3.Vec
	u, v, n   r3.Vec // unit vectors in its plane, and square to it
	area      float64
	thickness float64
	modulus   float64
	poisson   float64
}

const plateFreedoms = 12 // three movements, three turns, ε_u, ε_v, γ, κ_u, κ_v, κ_uv

// addTo adds the plate's own stiffness:
//
//	U = A·t/2·ε·D·ε + A·t³/24·κ·D·κ,  D = E/(1 − ν²)·[1, ν, 0; ν, 1, 0; 0, 0, (1 − ν)/2]
//
// with κ_uv entering as twice the twist (Timoshenko, Theory of Plates and Shells).
func (p *plateBody) addTo(all *mat.SymDense, first int) {
	d := p.modulus / (1 - p.poisson*p.poisson)
	stretch, bend := p.area*p.thickness*d, p.area*math.Pow(p.thickness, 3)/12*d
	add := func(i, j int, v float64) { all.SetSym(first+i, first+j, all.At(first+i, first+j)+v) }
	for _, part := range []struct {
		at    int
		k     float64
		twist float64
	}{{6, stretch, (1 - p.poisson) / 2}, {9, bend, 2 * (1 - p.poisson)}} {
		add(part.at, part.at, part.k)
		add(part.at+1, part.at+1, part.k)
		add(part.at, part.at+1, p.poisson*part.k)
		add(part.at+2, part.at+2, part.twist*part.k)
	}
}

// move adds to row how much the plate's point at p moves along d.
func (p *plateBody) move(row []float64, at, d r3.Vec) {
	r := r3.Sub(at, p.centre)
	a, b, c := r3.Dot(r, p.u), r3.Dot(r, p.v), r3.Dot(r, p.n)
	du, dv, dn := r3.Dot(d, p.u), r3.Dot(d, p.v), r3.Dot(d, p.n)
	addVec(row, d)
	addVec(row[3:], r3.Cross(r, d))
	row[6] += du * a
	row[7] += dv * b
	row[8] += (du*b + dv*a) / 2
	row[9] += du*c*a - dn*a*a/2
	row[10] += dv*c*b - dn*b*b/2
	row[11] += c*(du*b+dv*a) - dn*a*b
}

// turn adds to row how much it turns about d there.
func (p *plateBody) turn(row []float64, at, d r3.Vec) {
	r := r3.Sub(at, p.centre)
	a, b := r3.Dot(r, p.u), r3.Dot(r, p.v)
	du, dv := r3.Dot(d, p.u), r3.Dot(d, p.v)
	addVec(row[3:], d)
	// w = −(κ_u·a² + κ_v·b² + 2·κ_uv·a·b)/2 turns by ∂w/∂b about u and −∂w/∂a about v.
	row[9] += dv * a
	row[10] += -du * b
	row[11] += -du*a + dv*b
}

// newPlate makes the body of a plate from where its runs lie. The plane is the
// best one through them; where they all lie on one line the face they are welded
// to decides.
func newPlate(p *Plate, lines []line, modulus, poisson float64) plateBody {
	b := plateBody{name: p.Name, thickness: p.Thickness.Value, modulus: modulus, poisson: poisson}
	var points []r3.Vec
	for _, l := range lines {
		for _, s := range []float64{0, 0.25, 0.5, 0.75, 1} {
			points = append(points, l.at(s))
		}
	}
	for _, q := range points {
		b.centre = r3.Add(b.centre, r3.Scale(1/float64(len(points)), q))
	}
	spread := mat.NewSymDense(3, nil)
	for _, q := range points {
		r := r3.Sub(q, b.centre)
		c := [3]float64{r.X, r.Y, r.Z}
		for i := range 3 {
			for j := i; j < 3; j++ {
				spread.SetSym(i, j, spread.At(i, j)+c[i]*c[j])
			}
		}
	}
	var eigen mat.EigenSym
	eigen.Factorize(spread, true)
	values := eigen.Values(nil) // rising
	var vectors mat.Dense
	eigen.VectorsTo(&vectors)
	column := func(j int) r3.Vec {
		return r3.Unit(r3.Vec{X: vectors.At(0, j), Y: vectors.At(1, j), Z: vectors.At(2, j)})
	}
	b.u, b.n = column(2), column(0)
	if values[1] < 1e-6*values[2] { // one straight line
		face := p.Runs[0].Side.Vec()
		face = r3.Sub(face, r3.Scale(r3.Dot(face, b.u), b.u))
		if p.Runs[0].Joint == Tee {
			face = r3.Cross(face, b.u)
		}
		b.n = r3.Unit(face)
	}
	b.v = r3.Cross(b.n, b.u)
	if b.area = p.Area.Value; b.area == 0 {
		b.area = b.enclosed(points)
	}
	return b
}

// enclosed is the area that the runs enclose in the plate's plane, as the box
// round them; of a single line it is the square on it.
func (p *plateBody) enclosed(points []r3.Vec) float64 {
	var low, high [2]float64
	for _, q := range points {
		r := r3.Sub(q, p.centre)
		for i, x := range []float64{r3.Dot(r, p.u), r3.Dot(r, p.v)} {
			low[i], high[i] = math.Min(low[i], x), math.Max(high[i], x)
		}
	}
	long, across := high[0]-low[0], high[1]-low[1]
	if across < 1e-3*long { // one line
		across = long
	}
	return long * across
}
