package weldplan

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"

	"axlewright/internal/published"
)

// tip builds one cantilever along x and returns what its end does under a unit
// force along d, and how far it turns about d under a unit moment.
func tip(t *testing.T, width, depth, wall float64, d r3.Vec) (moves, turns float64) {
	t.Helper()
	limb := Limb{Name: "limb", From: at(0, 0, 0), To: at(500, 0, 0), Width: length(width), Depth: length(depth), Across: PlusY}
	if wall > 0 {
		limb.Wall = length(wall)
	}
	k := skeleton{limbs: []limbBody{newLimb(&limb, 206e9, 0.3)}}
	k.limbs[0].markAt(0.2) // a node on the way changes nothing
	if err := k.build(at(0, 0, 0).At); err != nil {
		t.Fatal(err)
	}
	var c mat.Cholesky
	if !c.Factorize(k.stiffness()) {
		t.Fatal("not stiff")
	}
	g := k.grip("limb", at(500, 0, 0).At)
	solve := func(row []float64) float64 {
		var u mat.VecDense
		if err := c.SolveVecTo(&u, mat.NewVecDense(k.dofs, row)); err != nil {
			t.Fatal(err)
		}
		return mat.Dot(&u, mat.NewVecDense(k.dofs, row))
	}
	force, moment := make([]float64, k.dofs), make([]float64, k.dofs)
	k.move(force, g, d)
	k.turn(moment, g, d)
	return solve(force), solve(moment)
}

func TestCantileverAgreesWithTimoshenkosBeam(t *testing.T) {
	const e, g, l, b, h = 206e9, 206e9 / 2.6, 0.5, 0.060, 0.030
	area := b * h
	iy, iz := b*h*h*h/12, h*b*b*b/12
	stretch, twist := tip(t, 60, 30, 0, r3.Vec{X: 1})
	near(t, "stretch", stretch, l/(e*area), 1e-9)
	bendZ, turnZ := tip(t, 60, 30, 0, r3.Vec{Z: 1})
	near(t, "bending flatwise", bendZ, l*l*l/(3*e*iy)+l/(g*area*5/6), 1e-9)
	bendY, turnY := tip(t, 60, 30, 0, r3.Vec{Y: 1})
	near(t, "bending edgewise", bendY, l*l*l/(3*e*iz)+l/(g*area*5/6), 1e-9)
	near(t, "turning about y", turnY, l/(e*iy), 1e-9)
	near(t, "turning about z", turnZ, l/(e*iz), 1e-9)
	published.Check(t, []published.Row{
		{Name: "torsion constant of a rectangle 2:1 over long·short³", Got: l / (g * twist) / (b * h * h * h), Printed: "0.229", Source: "Timoshenko, Strength of Materials, part 2, table of β for rectangular bars (from memory)"},
		{Name: "square", Got: rectangle(1, 1, 0).torsion, Printed: "0.141", Source: "Timoshenko, Strength of Materials, part 2, table of β for rectangular bars (from memory)"},
		{Name: "10:1", Got: rectangle(10, 1, 0).torsion / 10, Printed: "0.312", Source: "Timoshenko, Strength of Materials, part 2, table of β for rectangular bars (from memory)"},
	})
}

func TestHollowSectionIsWhatIsLeft(t *testing.T) {
	whole, hollow := rectangle(0.09, 0.06, 0), rectangle(0.09, 0.06, 0.008)
	hole := rectangle(0.074, 0.044, 0)
	near(t, "area", hollow.area, whole.area-hole.area, 1e-12)
	near(t, "second moment", hollow.iz, whole.iz-hole.iz, 1e-12)
	if !(hollow.torsion < whole.torsion && hollow.torsion > hole.torsion) {
		t.Errorf("torsion constant %g of a box in %g", hollow.torsion, whole.torsion)
	}
	near(t, "a wall of half the depth is solid", rectangle(0.09, 0.06, 0.030).area, whole.area, 1e-12)
}

// Moving and turning the casting as one piece takes no force, nor does it a plate.
func TestNothingResistsMovingAsOnePiece(t *testing.T) {
	j := manyRuns(t, 5)
	m := modelOf(t, j)
	k := &m.skeleton
	k.held = len(k.nodes) // hold nothing
	k.dofs = 6*len(k.nodes) + plateFreedoms*len(k.plates)
	dof := func(n int) int { return 6 * n }
	all := k.freeStiffness()
	shift, about := r3.Vec{X: 0.3, Y: -0.2, Z: 0.5}, r3.Vec{X: 1, Y: 2, Z: -0.5}
	u := make([]float64, k.dofs)
	for n, p := range k.nodes {
		addVec(u[dof(n):], r3.Add(shift, r3.Cross(about, p)))
		addVec(u[dof(n)+3:], about)
	}
	for i := range k.plates {
		first := 6*len(k.nodes) + plateFreedoms*i
		addVec(u[first:], r3.Add(shift, r3.Cross(about, k.plates[i].centre)))
		addVec(u[first+3:], about)
	}
	var force mat.VecDense
	force.MulVec(all, mat.NewVecDense(k.dofs, u))
	for i := range k.dofs {
		if f := force.AtVec(i); math.Abs(f) > 1e-6*all.At(i, i) {
			t.Fatalf("freedom %d is held with %g N of a stiffness %g", i, f, all.At(i, i))
		}
	}
}

// freeStiffness is the stiffness with no node held.
func (k *skeleton) freeStiffness() *mat.SymDense {
	all := mat.NewSymDense(k.dofs, nil)
	for i := range k.bars {
		b := &k.bars[i]
		g := b.turned(b.stiffness())
		at := func(i int) int {
			if i < 6 {
				return 6*b.a + i
			}
			return 6*b.b + i - 6
		}
		for i := range 12 {
			for j := range 12 {
				if at(j) >= at(i) {
					all.SetSym(at(i), at(j), all.At(at(i), at(j))+g[i][j])
				}
			}
		}
	}
	for i := range k.plates {
		k.plates[i].addTo(all, 6*len(k.nodes)+plateFreedoms*i)
	}
	return all
}

func TestLimbInTheAirIsFound(t *testing.T) {
	limb := func(name string, from, to Place) limbBody {
		return newLimb(&Limb{Name: name, From: from, To: to, Width: length(40), Depth: length(30), Across: PlusZ}, 170e9, 0.27)
	}
	k := skeleton{limbs: []limbBody{
		limb("bridge", at(45, -75, 0), at(45, 75, 0)),
		limb("nose", at(45, 0, 0), at(170, 0, 0)), // touches the bridge between its ends
		limb("left leg", at(40, -75, 0), at(0, -75, 0)),
	}}
	k.join()
	err := k.build(at(0, 0, 0).At)
	if err == nil || !strings.Contains(err.Error(), "left leg") {
		t.Errorf("a leg 5 mm off the bridge: %v", err)
	}
}

// modelOf settles a job and makes its model.
func modelOf(t testing.TB, j *Job) *model {
	t.Helper()
	w := work{job: j, family: j.Casting.Metal.plannedFor()}
	var p Plan
	w.settle(&p)
	if err := w.runs(&p); err != nil {
		t.Fatal(err)
	}
	m, err := newModel(j, w.laid, tackShare)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// solveFor returns what the force itself moves through.
func solveFor(t *testing.T, c *mat.Cholesky, row []float64) float64 {
	t.Helper()
	var u mat.VecDense
	if err := c.SolveVecTo(&u, mat.NewVecDense(len(row), row)); err != nil {
		t.Fatal(err)
	}
	force := 0.0
	for _, v := range row {
		force = math.Max(force, math.Abs(v))
	}
	return mat.Dot(&u, mat.NewVecDense(len(row), row)) / force
}
