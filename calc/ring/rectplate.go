package ring

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"axlewright/calc/check"
)

// Welded is an edge that cannot move but turns as far as its weld and what it
// is welded to let it: between simply supported and clamped, by the fixity.
const Welded Edge = "welded"

// PatchPlateParams describes a rectangular plate under an even load on a
// rectangular patch, such as the pad of a peg.
type PatchPlateParams struct {
	Length    float64 // m, a: along x
	Width     float64 // m, b: along y
	Thickness float64 // m, h: thickness
	Modulus   float64 // Pa, E: Young's modulus
	Poisson   float64 // -, ν: Poisson's ratio
	Left      Edge    // name, edge x = 0: free, simply supported, clamped or welded
	Right     Edge    // name, edge x = a: free, simply supported, clamped or welded
	Near      Edge    // name, edge y = 0: free, simply supported, clamped or welded
	Far       Edge    // name, edge y = b: free, simply supported, clamped or welded
	Fixity    float64 // -, f: of the welded edges, 0 as hinged, 1 as clamped; optional
	Force     float64 // N, P: load on the patch
	PatchX    float64 // m, x of the middle of the patch
	PatchY    float64 // m, y of the middle of the patch
	PatchA    float64 // m, u: length of the patch along x
	PatchB    float64 // m, v: width of the patch along y
	Degree    int     // -, degree of the polynomials between the cuts; 0 stands for 8; optional
}

// PatchPlateResult is what the plate does.
type PatchPlateResult struct {
	Deflection float64 // m, δ: mean deflection of the patch
	Stiffness  float64 // N/m, k: force against mean deflection of the patch
	Middle     float64 // m, deflection at the middle of the patch
	Moment     float64 // N, largest bending moment per unit width
	Stress     float64 // Pa, σ: largest bending stress, 6·M/h²
	StressX    float64 // m, x of the largest bending stress
	StressY    float64 // m, y of the largest bending stress
	PadStress  float64 // Pa, bending stress at the middle of the patch
	EdgeMoment float64 // N, largest bending moment per unit length in a clamped or welded edge
}

// PatchPlate returns deflection and stress of a rectangular plate under a
// load on a patch, each edge free, hinged, clamped or held by a weld.
//
//	w = Σ Σ c_ij·X_i(x)·Y_j(y), from the least of U − P·w̄
//	U = D/2·∫∫ [w_xx² + w_yy² + 2·ν·w_xx·w_yy + 2·(1 − ν)·w_xy²] dx dy + Σ k/2·∫w_n² ds
//	k = 3·D/L·f/(1 − f) for a welded edge, L the span at right angles to it
//	D = E·h³/(12·(1 − ν²)),  M_x = −D·(w_xx + ν·w_yy),  M_xy = −D·(1 − ν)·w_xy,  σ = 6·M/h²
//
// The functions are the beam's end shapes and twice-integrated Legendre
// polynomials between the edges of plate and patch: the held edges are met
// exactly and the series converges fast. A plate welded on three sides has one free edge. The fixity is that of
// frames: the weld turns as a spring, f = 1/(1 + 3·D/(k·L)).
//
// Shear is left out: at a tenth of the shorter side thick, a plate moves a
// tenth more than this says (CalculiX), its stress is the same.
//
// Valid for thin plates (h below a fifth of the shorter side) and deflections
// below h/2. Degree 8 gives the deflection within 0.1 %, the stress under a
// patch of a fifth of the side within 0.1 % and the moment at a held edge within
// 2 %. Below a patch as wide as the plate is thick the stress is that of a thick
// plate and lower; where a held edge ends at a free one it has no limit.
// Errors: *check.RangeError for a patch off the plate, an unknown edge, edges
// that leave the plate loose or Degree outside 4 to 20.
// Source: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells,
// 2nd edition, articles 27 and 80 (energy method; from memory); fixity:
// Monforton and Wu, J. Struct. Div. ASCE 89 (1963) (from memory).
func PatchPlate(p PatchPlateParams) (PatchPlateResult, error) {
	if p.Degree == 0 {
		p.Degree = 8
	}
	if err := checkPatchPlate(p); err != nil {
		return PatchPlateResult{}, err
	}
	s, work, err := solvePatchPlate(p)
	if err != nil {
		return PatchPlateResult{}, err
	}
	return s.result(work / p.Force), nil
}

// solvePatchPlate returns the solved series and the work of the load on it.
func solvePatchPlate(p PatchPlateParams) (s solvedPlate, work float64, err error) {
	x := newSeries(p.Length, p.Left, p.Right, p.PatchX, p.PatchA, p.Fixity, p.Degree)
	y := newSeries(p.Width, p.Near, p.Far, p.PatchY, p.PatchB, p.Fixity, p.Degree)
	d := layer{p.Modulus, p.Thickness}.rigidity(p.Poisson)

	nx, ny := len(x.kept), len(y.kept)
	k := mat.NewSymDense(nx*ny, nil)
	load := mat.NewVecDense(nx*ny, nil)
	for i := range nx {
		for j := range ny {
			row := i*ny + j
			load.SetVec(row, p.Force*x.load[i]*y.load[j])
			for m := range nx {
				for n := range ny {
					column := m*ny + n
					if column < row {
						continue
					}
					energy := x.second.At(i, m)*y.value.At(j, n) + x.value.At(i, m)*y.second.At(j, n) +
						p.Poisson*(x.cross.At(m, i)*y.cross.At(j, n)+x.cross.At(i, m)*y.cross.At(n, j)) +
						2*(1-p.Poisson)*x.first.At(i, m)*y.first.At(j, n) +
						x.spring.At(i, m)*y.value.At(j, n) + x.value.At(i, m)*y.spring.At(j, n)
					k.SetSym(row, column, d*energy)
				}
			}
		}
	}
	var solver mat.Cholesky
	if !solver.Factorize(k) {
		return s, 0, &check.RangeError{Func: "ring.PatchPlate", Param: "Left", Value: 0, Range: "edges that hold the plate"}
	}
	var c mat.VecDense
	if err := solver.SolveVecTo(&c, load); err != nil {
		if _, badly := err.(mat.Condition); !badly {
			return s, 0, err
		}
	}
	return solvedPlate{p: p, x: x, y: y, rigidity: d, c: c.RawVector().Data}, mat.Dot(load, &c), nil
}

func checkPatchPlate(p PatchPlateParams) error {
	const fn = "ring.PatchPlate"
	known := func(e Edge) bool { return e == Free || e == SimplySupported || e == Clamped || e == Welded }
	turns := func(e Edge) bool { return e == Free || e == SimplySupported || e == Welded && p.Fixity == 0 }
	// One hinged edge or two that meet nowhere but at a corner leave a hinge.
	held := 0
	for _, e := range []Edge{p.Left, p.Right, p.Near, p.Far} {
		if e != Free {
			held++
		}
		if !turns(e) {
			held++
		}
	}
	inside := func(middle, size, side float64) bool {
		return size > 0 && middle-size/2 >= -1e-12*side && middle+size/2 <= side*(1+1e-12)
	}
	return check.All(fn,
		check.Positive("Length", p.Length),
		check.Positive("Width", p.Width),
		check.That("Thickness", p.Thickness, p.Thickness > 0 && p.Thickness < math.Min(p.Length, p.Width)/2, "0 < h < half the shorter side"),
		check.Positive("Modulus", p.Modulus),
		check.That("Poisson", p.Poisson, p.Poisson >= 0 && p.Poisson < 0.5, "0 <= ν < 0.5"),
		check.That("Left", float64(held), known(p.Left) && known(p.Right) && known(p.Near) && known(p.Far) && held >= 2,
			"free, simply supported, clamped or welded, and enough edges held"),
		check.Within("Fixity", p.Fixity, 0, 1),
		check.Positive("Force", p.Force),
		check.That("PatchX", p.PatchX, inside(p.PatchX, p.PatchA, p.Length), "patch on the plate"),
		check.That("PatchY", p.PatchY, inside(p.PatchY, p.PatchB, p.Width), "patch on the plate"),
		check.Within("Degree", float64(p.Degree), 4, 20),
	)
}

// solvedPlate reads movements and moments out of the solved series.
type solvedPlate struct {
	p        PatchPlateParams
	x, y     series
	rigidity float64
	c        []float64
}

// along is the solved series at one x: for each function of y its
// coefficients in w, w_x and w_xx.
func (s solvedPlate) along(x float64) [][3]float64 {
	count := len(s.y.kept)
	sum := make([][3]float64, count)
	for i, f := range s.x.at(x) {
		for j := range sum {
			for k := range f {
				sum[j][k] += s.c[i*count+j] * f[k]
			}
		}
	}
	return sum
}

// meet returns M_x, M_y and M_xy where x and y meet.
func (s solvedPlate) meet(along, fy [][3]float64) (mx, my, mxy float64) {
	var wxx, wyy, wxy float64
	for j, g := range fy {
		wxx += along[j][2] * g[0]
		wyy += along[j][0] * g[2]
		wxy += along[j][1] * g[1]
	}
	nu := s.p.Poisson
	return -s.rigidity * (wxx + nu*wyy), -s.rigidity * (wyy + nu*wxx), -s.rigidity * (1 - nu) * wxy
}

func (s solvedPlate) moments(x, y float64) (mx, my, mxy float64) {
	return s.meet(s.along(x), s.y.at(y))
}

func (s solvedPlate) deflection(x, y float64) float64 {
	w := 0.0
	along := s.along(x)
	for j, g := range s.y.at(y) {
		w += along[j][0] * g[0]
	}
	return w
}

// result looks for the largest moment at a grid of places and at the middle of
// the patch.
func (s solvedPlate) result(mean float64) PatchPlateResult {
	p := s.p
	r := PatchPlateResult{Deflection: mean, Stiffness: p.Force / mean, Middle: s.deflection(p.PatchX, p.PatchY)}
	section := p.Thickness * p.Thickness / 6
	look := func(x, y, mx, my, mxy float64) {
		m := principal(mx, my, mxy)
		if m > r.Moment {
			r.Moment, r.StressX, r.StressY = m, x, y
		}
		onX := x == 0 && turnsStiffly(p.Left) || x == p.Length && turnsStiffly(p.Right)
		onY := y == 0 && turnsStiffly(p.Near) || y == p.Width && turnsStiffly(p.Far)
		if onX {
			r.EdgeMoment = max(r.EdgeMoment, math.Abs(mx))
		}
		if onY {
			r.EdgeMoment = max(r.EdgeMoment, math.Abs(my))
		}
	}
	const steps = 40
	var across [steps + 1][][3]float64
	for j := range across {
		across[j] = s.y.at(p.Width * float64(j) / steps)
	}
	for i := range steps + 1 {
		x := p.Length * float64(i) / steps
		along := s.along(x)
		for j, fy := range across {
			mx, my, mxy := s.meet(along, fy)
			look(x, p.Width*float64(j)/steps, mx, my, mxy)
		}
	}
	mx, my, mxy := s.moments(p.PatchX, p.PatchY)
	look(p.PatchX, p.PatchY, mx, my, mxy)
	r.Stress, r.PadStress = r.Moment/section, principal(mx, my, mxy)/section
	return r
}

// principal returns the larger principal moment, without sign.
func principal(mx, my, mxy float64) float64 {
	return math.Abs(mx+my)/2 + math.Hypot((mx-my)/2, mxy)
}

func turnsStiffly(e Edge) bool { return e == Clamped || e == Welded }
