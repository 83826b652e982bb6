package ring

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"

	"axlewright/calc/check"
	"axlewright/internal/published"
)

const (
	testModulus = 200e9
	testPoisson = 0.3
)

// uniform returns a plate of one thickness.
func uniform(t testing.TB, inner, outer, h float64, in, out Edge, harmonics int) *Plate {
	t.Helper()
	l := layer{testModulus, h}
	p, err := NewPlate(PlateParams{
		Zones:   []PlateZone{{Inner: inner, Outer: outer, Rigidity: l.rigidity(testPoisson), Shear: l.shear(testPoisson)}},
		Poisson: testPoisson, InnerEdge: in, OuterEdge: out, Harmonics: harmonics,
	})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func compliance(t testing.TB, p *Plate, points ...Point) *mat.SymDense {
	t.Helper()
	c, err := p.Compliance(points)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

var near = published.Near

// A thin plate (a/h = 200) must give the thin plate's published deflection.
func TestPlateAgreesWithTheRingLoadTable(t *testing.T) {
	const a, h = 0.2, 0.001
	var rows []published.Row
	for _, c := range []struct {
		outer   Edge
		number  int
		ratio   float64
		printed string
	}{
		{SimplySupported, 1, 1.5, "0.519"},
		{SimplySupported, 1, 2, "0.672"},
		{SimplySupported, 1, 3, "0.734"},
		{SimplySupported, 1, 5, "0.704"},
		{Clamped, 9, 1.5, "0.0242"},
		{Clamped, 9, 2, "0.0810"},
		{Clamped, 9, 3, "0.172"},
		{Clamped, 9, 5, "0.238"},
	} {
		p := uniform(t, a/c.ratio, a, h, Free, c.outer, 0)
		edge := Point{Radius: a / c.ratio, Direction: Axial, Spread: math.Pi}
		w := compliance(t, p, edge).At(0, 0)
		rows = append(rows, published.Row{
			Name:    fmt.Sprintf("k1, outer edge %s, a/b = %g", c.outer, c.ratio),
			Got:     w * testModulus * h * h * h / (a * a),
			Printed: c.printed,
			Source:  fmt.Sprintf("Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed., table 3, case %d (from memory)", c.number),
			Within:  0.005,
			Why:     "the table is rounded to three figures and some of its entries are a unit out; our plate adds a little shear",
		})
	}
	published.Check(t, rows)
}

// The clamped disc under an eccentric load, with a hole too small to matter.
func TestPlateAgreesWithMichellsClampedDisc(t *testing.T) {
	const a, b, h = 0.1, 0.06, 0.0005
	p := uniform(t, a/200, a, h, Free, Clamped, 60)
	load := Point{Radius: b, Direction: Axial}
	rigidity := layer{testModulus, h}.rigidity(testPoisson)
	for _, at := range []struct{ r, theta float64 }{{0.06, 0}, {0.03, 0.5}, {0.08, 1}, {0.05, math.Pi}, {a / 200, 0}} {
		got := compliance(t, p, load, Point{Radius: at.r, Angle: at.theta, Direction: Axial}).At(0, 1)
		// Michell 1902, in Timoshenko and Woinowsky-Krieger, article 64.
		x, y := at.r/a, b/a
		between := x*x + y*y - 2*x*y*math.Cos(at.theta)
		mirror := 1 + x*x*y*y - 2*x*y*math.Cos(at.theta)
		want := (1 - x*x) * (1 - y*y)
		if between > 1e-15 {
			want += between * math.Log(between/mirror)
		}
		want *= a * a / (16 * math.Pi * rigidity)
		within := 0.002
		if between < 1e-15 {
			within = 0.005 // under a true point the harmonics past the 60th are missed
		}
		near(t, fmt.Sprintf("deflection at r = %g, θ = %g", at.r, at.theta), got, want, within)
	}
}

// Each harmonic alone against the exact thin-plate solution
// w = (A·rⁿ + B·r⁻ⁿ + C·rⁿ⁺² + D·r²⁻ⁿ)·cos nθ (n = 1: D·r·ln r in place of the double root).
func TestEachHarmonicAgreesWithTheExactThinPlate(t *testing.T) {
	const b, a, h, nu = 0.05, 0.11, 0.0003, testPoisson
	p := uniform(t, b, a, h, Clamped, Free, 8).parts[0]
	rigidity := layer{testModulus, h}.rigidity(nu)
	for n := 1; n <= 8; n++ {
		want := exactHarmonic(t, n, b/a, nu) * a * a / rigidity
		loads := mat.NewDense(p.mesh.freedoms(), 1, nil)
		p.mesh.load(loads, 0, Point{Radius: a, Direction: Axial})
		var moved mat.Dense
		if err := p.factors[n].SolveTo(&moved, loads); err != nil {
			t.Fatal(err)
		}
		got := moved.At(p.mesh.perNode*(p.mesh.nodes()-1)+deflection, 0)
		near(t, fmt.Sprintf("harmonic %d", n), got, want, 0.002)
	}
}

// exactHarmonic returns the edge deflection w(1)·D/a² of a plate with a = 1,
// clamped at b and loaded at its free edge with an effective shear cos nθ such
// that ∫V·r dθ over the wave's own shape is one, as p.factors takes it.
func exactHarmonic(t *testing.T, n int, b, nu float64) float64 {
	t.Helper()
	k := float64(n)
	// Each term r^s, or r·ln r for the double root of n = 1, with derivatives 0 to 3.
	term := func(i int, r float64) [4]float64 {
		s := []float64{k, -k, k + 2, 2 - k}[i]
		if n == 1 && i == 3 {
			return [4]float64{r * math.Log(r), math.Log(r) + 1, 1 / r, -1 / (r * r)}
		}
		return [4]float64{math.Pow(r, s), s * math.Pow(r, s-1), s * (s - 1) * math.Pow(r, s-2), s * (s - 1) * (s - 2) * math.Pow(r, s-3)}
	}
	m, rhs := mat.NewDense(4, 4, nil), mat.NewVecDense(4, []float64{0, 0, 0, 1})
	for i := range 4 {
		in, w := term(i, b), term(i, 1)
		m.Set(0, i, in[0])
		m.Set(1, i, in[1])
		// At r = 1: M_r = −(w'' + ν·(w' − n²·w)); V = −d(∇²w)/dr − (1 − ν)·n²·(w − w').
		m.Set(2, i, w[2]+nu*(w[1]-k*k*w[0]))
		laplaceSlope := w[3] + w[2] - w[1] - k*k*(w[1]-2*w[0])
		m.Set(3, i, laplaceSlope+(1-nu)*(-k*k)*(w[1]-w[0]))
	}
	var c mat.VecDense
	if err := c.SolveVec(m, rhs); err != nil {
		t.Fatal(err)
	}
	sum := 0.0
	for i := range 4 {
		sum += c.AtVec(i) * term(i, 1)[0]
	}
	return math.Abs(sum)
}

// In the axisymmetric thick plate shear adds P·ln(a/b)/(2π·S) and nothing else.
func TestShearAddsItsLogarithm(t *testing.T) {
	const b, a, h = 0.05, 0.11, 0.03
	plate := func(shear float64) float64 {
		l := layer{testModulus, h}
		p, err := NewPlate(PlateParams{
			Zones:   []PlateZone{{Inner: b, Outer: a, Rigidity: l.rigidity(testPoisson), Shear: shear}},
			Poisson: testPoisson, InnerEdge: Clamped, OuterEdge: Free, Harmonics: 1,
		})
		if err != nil {
			t.Fatal(err)
		}
		return compliance(t, p, Point{Radius: a, Direction: Axial, Spread: math.Pi}).At(0, 0)
	}
	s := layer{testModulus, h}.shear(testPoisson)
	near(t, "shear part", plate(s)-plate(1e6*s), math.Log(a/b)/(2*math.Pi*s), 1e-5)
}

// A ring that is narrow against its radius is a cantilever strip with a step.
func TestNarrowSteppedRingIsASteppedCantilever(t *testing.T) {
	const radius, l1, l2 = 10.0, 0.02, 0.03
	thick, thin := layer{testModulus, 0.008}, layer{testModulus, 0.005}
	p, err := NewPlate(PlateParams{
		Zones: []PlateZone{
			{radius, radius + l1, thick.rigidity(0), thick.shear(0), 0, 0},
			{radius + l1, radius + l1 + l2, thin.rigidity(0), thin.shear(0), 0, 0},
		},
		Poisson: 0, InnerEdge: Clamped, OuterEdge: Free, Harmonics: 1,
	})
	if err != nil {
		t.Fatal(err)
	}
	got := compliance(t, p, Point{Radius: radius + l1 + l2, Direction: Axial, Spread: math.Pi}).At(0, 0)
	cube := func(x float64) float64 { return x * x * x }
	bend := (cube(l1+l2)-cube(l2))/(3*thick.rigidity(0)) + cube(l2)/(3*thin.rigidity(0))
	shear := l1/thick.shear(0) + l2/thin.shear(0)
	near(t, "tip of the strip", got, (bend+shear)/(2*math.Pi*(radius+l1+l2)), 0.01)
}

// Cutting every zone in three makes the elements three times as fine.
// A narrow ring held at both edges, its halves at different heights, is a beam
// built in at both ends with a step of its axis: it arches. The beam is solved
// here by its own stiffness, 12·EI/L³ and so on, about axes at their heights.
func TestOffsetRingIsAnArchedBeam(t *testing.T) {
	const radius, l1, l2, e1, e2 = 20.0, 0.05, 0.07, 0.004, -0.009
	thick, thin := layer{testModulus, 0.02}, layer{testModulus, 0.012}
	half := func(inner, outer float64, l layer, offset float64) PlateZone {
		return PlateZone{Inner: inner, Outer: outer, Rigidity: l.rigidity(0), Shear: 1e6 * l.shear(0), Offset: offset, Stretch: l.e * l.t}
	}
	ring := func(e1, e2 float64) float64 {
		p, err := NewPlate(PlateParams{
			Zones:     []PlateZone{half(radius, radius+l1, thick, e1), half(radius+l1, radius+l1+l2, thin, e2)},
			InnerEdge: Clamped, OuterEdge: Clamped, Harmonics: 1,
		})
		if err != nil {
			t.Fatal(err)
		}
		all := Point{Radius: radius + l1, Direction: Axial, Spread: math.Pi}
		return compliance(t, p, all).At(0, 0) * 2 * math.Pi * (radius + l1) // under a force for each metre
	}
	beam := func(e1, e2 float64) float64 {
		// Shift u, deflection w and slope β at the step; the axis there shifts by u − e·β.
		k := mat.NewSymDense(3, nil)
		for _, x := range []struct{ ei, ea, l, e, sign float64 }{{thick.rigidity(0), thick.e * thick.t, l1, e1, -1}, {thin.rigidity(0), thin.e * thin.t, l2, e2, 1}} {
			add := func(i, j int, v float64) { k.SetSym(i, j, k.At(i, j)+v) }
			add(0, 0, x.ea/x.l)
			add(0, 2, -x.e*x.ea/x.l)
			add(2, 2, x.e*x.e*x.ea/x.l+4*x.ei/x.l)
			add(1, 1, 12*x.ei/(x.l*x.l*x.l))
			add(1, 2, x.sign*6*x.ei/(x.l*x.l))
		}
		var u mat.VecDense
		if err := u.SolveVec(k, mat.NewVecDense(3, []float64{0, 1, 0})); err != nil {
			t.Fatal(err)
		}
		return u.AtVec(1)
	}
	near(t, "arched", ring(e1, e2), beam(e1, e2), 1e-3)
	near(t, "flat", ring(0, 0), beam(0, 0), 1e-3)
	near(t, "lifted as a whole", ring(e1+0.1, e2+0.1), ring(e1, e2), 1e-6)
	if a, b := beam(e1, e2), beam(0, 0); !(a < 0.98*b) {
		t.Errorf("the arch is no stiffer: %g and %g", a, b)
	}
}

func TestRadialMeshIsFineEnough(t *testing.T) {
	l := layer{testModulus, 0.02}
	plate := func(pieces int) *Plate {
		p := PlateParams{Poisson: testPoisson, InnerEdge: Clamped, OuterEdge: Free}
		const inner, outer = 0.05, 0.111
		for i := range pieces {
			p.Zones = append(p.Zones, PlateZone{
				Inner: inner + (outer-inner)*float64(i)/float64(pieces), Outer: inner + (outer-inner)*float64(i+1)/float64(pieces),
				Rigidity: l.rigidity(testPoisson), Shear: l.shear(testPoisson),
			})
		}
		made, err := NewPlate(p)
		if err != nil {
			t.Fatal(err)
		}
		return made
	}
	mesh, peg := Point{Radius: 0.093, Direction: Axial, Spread: 0.17}, Point{Radius: 0.101, Angle: 0.14, Direction: Axial, Spread: 0.1}
	coarse, fine := compliance(t, plate(1), mesh, peg), compliance(t, plate(30), mesh, peg)
	for i := range 2 {
		for j := range 2 {
			near(t, fmt.Sprintf("compliance %d %d", i, j), coarse.At(i, j), fine.At(i, j), 0.002)
		}
	}
}

func TestPlateRefusesWhatItCannotSolve(t *testing.T) {
	good := PlateParams{Zones: []PlateZone{{0.05, 0.1, 1e5, 1e9, 0, 0}}, Poisson: 0.3, InnerEdge: Clamped, OuterEdge: Free}
	for name, spoil := range map[string]func(*PlateParams){
		"no zones":          func(p *PlateParams) { p.Zones = nil },
		"gap":               func(p *PlateParams) { p.Zones = append(p.Zones, PlateZone{0.12, 0.15, 1e5, 1e9, 0, 0}) },
		"inside out":        func(p *PlateParams) { p.Zones = []PlateZone{{0.1, 0.05, 1e5, 1e9, 0, 0}} },
		"no rigidity":       func(p *PlateParams) { p.Zones = []PlateZone{{0.05, 0.1, 0, 1e9, 0, 0}} },
		"no hole":           func(p *PlateParams) { p.Zones = []PlateZone{{0, 0.1, 1e5, 1e9, 0, 0}} },
		"NaN":               func(p *PlateParams) { p.Poisson = math.NaN() },
		"held nowhere":      func(p *PlateParams) { p.InnerEdge = Free },
		"slides off":        func(p *PlateParams) { p.InnerEdge = Guided },
		"an unknown edge":   func(p *PlateParams) { p.OuterEdge = "glued" },
		"negative harmonic": func(p *PlateParams) { p.Harmonics = -1 },
	} {
		bad := good
		spoil(&bad)
		var r *check.RangeError
		if _, err := NewPlate(bad); !errors.As(err, &r) {
			t.Errorf("%s: got %v, want a range error", name, err)
		}
	}
	p, err := NewPlate(good)
	if err != nil {
		t.Fatal(err)
	}
	for _, q := range []Point{{Radius: 0.2, Direction: Axial}, {Radius: 0.07}, {Radius: 0.09, HalfWidth: 0.02, Direction: Axial}, {Radius: 0.07, Angle: math.Inf(1), Direction: Axial}} {
		var r *check.RangeError
		if _, err := p.Compliance([]Point{q}); !errors.As(err, &r) {
			t.Errorf("%+v: got %v, want a range error", q, err)
		}
	}
}

func drawPoint(t *rapid.T, name string) Point {
	return Point{
		Radius:    rapid.Float64Range(0.06, 0.11).Draw(t, name+" radius"),
		Angle:     rapid.Float64Range(-4, 4).Draw(t, name+" angle"),
		Direction: rapid.SampledFrom([]Direction{Axial, Radial, Tangential}).Draw(t, name+" direction"),
		Spread:    rapid.Float64Range(0, 0.4).Draw(t, name+" spread"),
	}
}

// Work of a load is never negative, whatever the mix of forces and moments.
func TestComplianceIsPositive(t *testing.T) {
	p := uniform(t, 0.05, 0.111, 0.02, Clamped, Free, 12)
	rapid.Check(t, func(t *rapid.T) {
		points := []Point{drawPoint(t, "a"), drawPoint(t, "b"), drawPoint(t, "c")}
		c, err := p.Compliance(points)
		if err != nil {
			t.Fatal(err)
		}
		var eigen mat.EigenSym
		if !eigen.Factorize(c, false) {
			t.Fatal("no eigenvalues")
		}
		values := eigen.Values(nil)
		if values[0] < -1e-12*values[2] {
			t.Errorf("%v: eigenvalues %v", points, values)
		}
	})
}

// Turning load and reading together changes nothing; mirroring them changes
// the sign of what is tangential only.
func TestComplianceDoesNotKnowWhereTheAngleStarts(t *testing.T) {
	p := uniform(t, 0.05, 0.111, 0.02, Clamped, Free, 12)
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawPoint(t, "a"), drawPoint(t, "b")
		turn := rapid.Float64Range(-3, 3).Draw(t, "turn")
		at := func(f func(Point) Point) float64 {
			c, err := p.Compliance([]Point{f(a), f(b)})
			if err != nil {
				t.Fatal(err)
			}
			return c.At(0, 1)
		}
		here := at(func(q Point) Point { return q })
		turned := at(func(q Point) Point { q.Angle += turn; return q })
		mirrored := at(func(q Point) Point { q.Angle = -q.Angle; return q })
		if (a.Direction == Tangential) != (b.Direction == Tangential) {
			mirrored = -mirrored
		}
		size := math.Sqrt(compliance2(t, p, a) * compliance2(t, p, b))
		if math.Abs(here-turned) > 1e-10*size || math.Abs(here-mirrored) > 1e-10*size {
			t.Errorf("here %g, turned %g, mirrored %g", here, turned, mirrored)
		}
	})
}

func compliance2(t *rapid.T, p *Plate, q Point) float64 {
	c, err := p.Compliance([]Point{q})
	if err != nil {
		t.Fatal(err)
	}
	return c.At(0, 0)
}
