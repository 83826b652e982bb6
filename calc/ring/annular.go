package ring

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"axlewright/calc/check"
)

// AnnularPlateParams describes a thin annular plate under a load that is the
// same all the way round.
type AnnularPlateParams struct {
	InnerRadius float64 // m, b: inner radius
	OuterRadius float64 // m, a: outer radius
	Thickness   float64 // m, h: thickness
	Modulus     float64 // Pa, E: Young's modulus
	Poisson     float64 // -, ν: Poisson's ratio
	InnerEdge   Edge    // name, how the inner edge is held: free, simply supported, clamped or guided
	OuterEdge   Edge    // name, how the outer edge is held: free, simply supported, clamped or guided
	RingLoad    float64 // N, P: total load spread round a circle; optional
	RingRadius  float64 // m, r_0: radius of that circle; needed with RingLoad; optional
	Pressure    float64 // Pa, q: pressure on the whole plate; optional
}

// AnnularPlateResult is what the plate does.
type AnnularPlateResult struct {
	InnerDeflection float64 // m, deflection at the inner edge
	OuterDeflection float64 // m, deflection at the outer edge
	LoadDeflection  float64 // m, deflection under the ring load
	MaxDeflection   float64 // m, w_max: largest deflection, without sign
	InnerSlope      float64 // rad, slope dw/dr at the inner edge
	OuterSlope      float64 // rad, slope dw/dr at the outer edge
	InnerMoment     float64 // N, radial bending moment per unit width at the inner edge
	OuterMoment     float64 // N, radial bending moment per unit width at the outer edge
	MaxStress       float64 // Pa, σ_max: largest bending stress, radial or round the circumference
	MaxStressRadius float64 // m, radius of the largest bending stress
}

// AnnularPlate returns the exact bending of a thin annular plate, edges held
// in any of twelve ways.
//
//	w = A + B·r² + C·ln r + F·r²·ln r + q·r⁴/(64·D) + w_P
//	w_P = P/(8·π·D)·[(r² + r_0²)·ln(r/r_0) − r² + r_0²] for r > r_0
//	M_r = −D·(w'' + ν·w'/r),  M_t = −D·(w'/r + ν·w''),  Q = −D·d(∇²w)/dr
//	D = E·h³/(12·(1 − ν²)),  σ = 6·M/h²
//
// A, B, C, F follow from two conditions at each edge: free M_r = 0, Q = 0;
// simply supported w = 0, M_r = 0; clamped w = 0, w' = 0; guided w' = 0, Q = 0.
// Deflections are positive with the load.
//
// Valid for thin plates (h below about a fifth of a − b) and deflections below
// h/2, and at least one edge simply supported or clamped.
// Errors: *check.RangeError where the plate is not held, the ring load lies
// off the plate, or a dimension is not positive.
// Source: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells,
// 2nd edition, articles 17 and 18, table 3 (from memory).
func AnnularPlate(p AnnularPlateParams) (AnnularPlateResult, error) {
	if err := checkAnnular(p); err != nil {
		return AnnularPlateResult{}, err
	}
	b := newAnnularBending(p)
	in, out := b.at(p.InnerRadius), b.at(p.OuterRadius)
	r := AnnularPlateResult{
		InnerDeflection: in.w, OuterDeflection: out.w,
		InnerSlope: in.slope, OuterSlope: out.slope,
		InnerMoment: in.radial, OuterMoment: out.radial,
	}
	if p.RingLoad != 0 {
		r.LoadDeflection = b.at(p.RingRadius).w
	}
	// The largest values stand at an edge, at the ring load, or smoothly between.
	radii := []float64{p.InnerRadius, p.OuterRadius}
	if p.RingLoad != 0 {
		radii = append(radii, p.RingRadius)
	}
	const steps = 500
	for i := 1; i < steps; i++ {
		radii = append(radii, p.InnerRadius+(p.OuterRadius-p.InnerRadius)*float64(i)/steps)
	}
	for _, radius := range radii {
		s := b.at(radius)
		r.MaxDeflection = max(r.MaxDeflection, math.Abs(s.w))
		if stress := 6 * max(math.Abs(s.radial), math.Abs(s.around)) / (p.Thickness * p.Thickness); stress > r.MaxStress {
			r.MaxStress, r.MaxStressRadius = stress, radius
		}
	}
	return r, nil
}

func checkAnnular(p AnnularPlateParams) error {
	holds := func(e Edge) bool { return e == Clamped || e == SimplySupported }
	return check.All("ring.AnnularPlate",
		check.Positive("InnerRadius", p.InnerRadius),
		check.That("OuterRadius", p.OuterRadius, p.OuterRadius > p.InnerRadius, "> InnerRadius"),
		check.Positive("Thickness", p.Thickness),
		check.Positive("Modulus", p.Modulus),
		check.That("Poisson", p.Poisson, p.Poisson >= 0 && p.Poisson < 0.5, "0 <= ν < 0.5"),
		check.That("InnerEdge", 0, knownEdge(p.InnerEdge), "free, simply supported, clamped or guided"),
		check.That("OuterEdge", 0, knownEdge(p.OuterEdge) && (holds(p.InnerEdge) || holds(p.OuterEdge)),
			"free, simply supported, clamped or guided, one edge simply supported or clamped"),
		check.Finite("RingLoad", p.RingLoad),
		check.That("RingRadius", p.RingRadius,
			p.RingLoad == 0 || p.RingRadius >= p.InnerRadius && p.RingRadius <= p.OuterRadius, "on the plate"),
		check.Finite("Pressure", p.Pressure),
	)
}

// annularBending is the solved plate. Radii are divided by the outer radius,
// so that the four equations are of one size.
type annularBending struct {
	p        AnnularPlateParams
	rigidity float64
	constant [4]float64 // A, B, C, F for w in metres of r/a
}

type annularState struct{ w, slope, radial, around float64 }

// derivatives holds w and its first three derivatives by r/a.
type derivatives [4]float64

func homogeneous(i int, x float64) derivatives {
	l := math.Log(x)
	return [4]derivatives{
		{1, 0, 0, 0},
		{x * x, 2 * x, 2, 0},
		{l, 1 / x, -1 / (x * x), 2 / (x * x * x)},
		{x * x * l, x * (2*l + 1), 2*l + 3, 2 / x},
	}[i]
}

func (b annularBending) particular(x float64) derivatives {
	a := b.p.OuterRadius
	q := b.p.Pressure * math.Pow(a, 4) / (64 * b.rigidity)
	d := derivatives{q * math.Pow(x, 4), 4 * q * x * x * x, 12 * q * x * x, 24 * q * x}
	// At the inner edge the ring load acts on the plate, not beyond it.
	if c := b.p.RingRadius / a; b.p.RingLoad != 0 && x > c {
		k := b.p.RingLoad * a * a / (8 * math.Pi * b.rigidity)
		l := math.Log(x / c)
		d[0] += k * ((x*x+c*c)*l - x*x + c*c)
		d[1] += k * (2*x*l - x + c*c/x)
		d[2] += k * (2*l + 1 - c*c/(x*x))
		d[3] += k * (2/x + 2*c*c/(x*x*x))
	}
	return d
}

func newAnnularBending(p AnnularPlateParams) annularBending {
	b := annularBending{p: p, rigidity: layer{p.Modulus, p.Thickness}.rigidity(p.Poisson)}
	m, rhs := mat.NewDense(4, 4, nil), mat.NewVecDense(4, nil)
	for edge, x := range []float64{p.InnerRadius / p.OuterRadius, 1} {
		kind := []Edge{p.InnerEdge, p.OuterEdge}[edge]
		for row := range 2 {
			for i := range 4 {
				m.Set(2*edge+row, i, condition(kind, row, homogeneous(i, x), x, p.Poisson))
			}
			rhs.SetVec(2*edge+row, -condition(kind, row, b.particular(x), x, p.Poisson))
		}
	}
	// A ring load on a free or guided outer edge is a jump in shear that the
	// particular part, zero up to there, does not yet hold.
	if p.RingLoad != 0 && p.RingRadius == p.OuterRadius && (p.OuterEdge == Free || p.OuterEdge == Guided) {
		rhs.SetVec(3, rhs.AtVec(3)-p.RingLoad*p.OuterRadius*p.OuterRadius/(8*math.Pi*b.rigidity)*4)
	}
	var c mat.VecDense
	_ = c.SolveVec(m, rhs) // the edges hold the plate, so the equations have one solution
	for i := range b.constant {
		b.constant[i] = c.AtVec(i)
	}
	return b
}

// condition returns the left side of the first or second condition of an edge.
func condition(e Edge, row int, d derivatives, x, nu float64) float64 {
	w, slope, moment := d[0], d[1], d[2]+nu*d[1]/x
	shear := d[3] + d[2]/x - d[1]/(x*x)
	switch e {
	case Clamped:
		return [2]float64{w, slope}[row]
	case SimplySupported:
		return [2]float64{w, moment}[row]
	case Guided:
		return [2]float64{slope, shear}[row]
	default:
		return [2]float64{moment, shear}[row]
	}
}

func (b annularBending) at(r float64) annularState {
	a := b.p.OuterRadius
	x := r / a
	d := b.particular(x)
	for i, c := range b.constant {
		for k, v := range homogeneous(i, x) {
			d[k] += c * v
		}
	}
	nu := b.p.Poisson
	return annularState{
		w:      d[0],
		slope:  d[1] / a,
		radial: -b.rigidity / (a * a) * (d[2] + nu*d[1]/x),
		around: -b.rigidity / (a * a) * (d[1]/x + nu*d[2]),
	}
}
