package loadpath

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"axlewright/calc/bearing"
	"axlewright/calc/shaft"
)

// A second model of the same axle, put together another way: every node of
// shaft and cup is an unknown, the shaft is the finite element of package
// shaft, nothing is condensed, and Newton's steps go through a dense solver.

// secondShaft holds nodes 0..2 of the shaft (five freedoms each) and then the
// cups of bearing 1 and 2.
type secondShaft struct {
	t           *testing.T
	k           *mat.Dense // linear part, 25 × 25
	force       []float64
	bearingNode [2]int
	rollers     [2]bearing.Rollers
	facing      [2]float64
	preload     float64
	span        float64       // between the bearings
	inward      [2][2]float64 // stiffness along the cap by sign; zero where the seat is plain
	axis        [2]float64    // caps' direction in radial 1 and 2
}

func newSecondShaft(t *testing.T, p shaft.BeamParams, stations []float64, bearingNode [2]int) *secondShaft {
	t.Helper()
	s := &secondShaft{t: t, k: mat.NewDense(25, 25, nil), force: make([]float64, 25), bearingNode: bearingNode}
	free, err := shaft.StationStiffness(p, stations)
	if err != nil {
		t.Fatal(err)
	}
	for i := range 15 {
		for j := range 15 {
			s.k.Set(i, j, free.At(i, j))
		}
	}
	return s
}

func (s *secondShaft) seat(cup int, stiffness [5]float64) {
	for i, k := range stiffness {
		at := 15 + 5*cup + i
		s.k.Set(at, at, k)
	}
}

// solve returns the movement of all nodes from unloaded to loaded.
func (s *secondShaft) solve() []float64 {
	full := append([]float64(nil), s.force...)
	clear(s.force)
	rest := s.newton(make([]float64, 25))
	copy(s.force, full)
	u := s.newton(append([]float64(nil), rest...))
	for i := range u {
		u[i] -= rest[i]
	}
	return u
}

func (s *secondShaft) newton(u []float64) []float64 {
	var residual float64
	for range 400 {
		g, k := s.gradient(u)
		residual = mat.Norm(g, 2)
		if residual < 1e-7 {
			return u
		}
		var d mat.VecDense
		if err := d.SolveVec(k, g); err != nil {
			if _, ok := err.(mat.Condition); !ok {
				s.t.Fatal(err)
			}
		}
		// Halve until the force left over falls; creep where it will not.
		alpha := 1.0
		for range 30 {
			trial := make([]float64, len(u))
			for i := range u {
				trial[i] = u[i] - alpha*d.AtVec(i)
			}
			if g, _ := s.gradient(trial); mat.Norm(g, 2) < residual || alpha < 1e-6 {
				copy(u, trial)
				break
			}
			alpha /= 2
		}
	}
	s.t.Fatalf("the second model found no balance: %g N left", residual)
	return nil
}

func (s *secondShaft) gradient(u []float64) (*mat.VecDense, *mat.Dense) {
	g := mat.NewVecDense(25, nil)
	g.MulVec(s.k, mat.NewVecDense(25, u))
	k := mat.DenseCopyOf(s.k)
	for i, f := range s.force {
		g.SetVec(i, g.AtVec(i)-f)
	}
	for b := range 2 {
		inner, outer := 5*s.bearingNode[b], 15+5*b
		d := [5]float64{}
		for i := range d {
			d[i] = u[inner+i] - u[outer+i]
		}
		d[0] += s.facing[b] * s.preload / 2
		r, err := bearing.TaperedReaction(s.rollers[b], s.facing[b], bearing.Displacement{Axial: d[0], Radial1: d[1], Radial2: d[2], Tilt1: d[3], Tilt2: d[4]})
		if err != nil {
			s.t.Fatal(err)
		}
		span := s.span
		ground := [5]float64{groundSpring, groundSpring, groundSpring, groundSpring * span * span, groundSpring * span * span}
		for i, f := range []float64{r.Axial, r.Radial1, r.Radial2, r.Moment1, r.Moment2} {
			f += ground[i] * d[i]
			g.SetVec(inner+i, g.AtVec(inner+i)+f)
			g.SetVec(outer+i, g.AtVec(outer+i)-f)
			for j := range 5 {
				x := r.Stiffness[5*i+j]
				if i == j {
					x += ground[i]
				}
				for _, c := range [][3]float64{{float64(inner), float64(inner), 1}, {float64(outer), float64(outer), 1}, {float64(inner), float64(outer), -1}, {float64(outer), float64(inner), -1}} {
					at, to := int(c[0])+i, int(c[1])+j
					k.Set(at, to, k.At(at, to)+c[2]*x)
				}
			}
		}
		if s.inward[b][0] > 0 {
			along := u[outer+1]*s.axis[0] + u[outer+2]*s.axis[1]
			stiff := s.inward[b][0]
			if along > 0 {
				stiff = s.inward[b][1]
			}
			for i := range 2 {
				g.SetVec(outer+1+i, g.AtVec(outer+1+i)+stiff*along*s.axis[i])
				for j := range 2 {
					k.Set(outer+1+i, outer+1+j, k.At(outer+1+i, outer+1+j)+stiff*s.axis[i]*s.axis[j])
				}
			}
		}
	}
	return g, k
}

func pieces(list []Section, reverse bool) (out []shaft.Section) {
	for _, s := range list {
		p := shaft.Section{Length: s.Length, Outer: s.Outer, Inner: s.Inner, Windows: s.Share}
		if reverse {
			out = append([]shaft.Section{p}, out...)
		} else {
			out = append(out, p)
		}
	}
	return out
}

func near9(a, b, scale float64) bool { return math.Abs(a-b) <= 1e-7*scale }

func TestPinionAgreesWithASecondModel(t *testing.T) {
	for _, play := range []float64{30e-6, -20e-6} {
		a := referenceAxle(t, "A")
		a.PinionPreload = play
		a.Pinion.Neck = []Section{{Length: 0.02, Outer: 0.055}, {Length: 0.016, Outer: 0.044, Inner: 0.01}}
		e, err := Prepare(a)
		if err != nil {
			t.Fatal(err)
		}
		l := a.Layout
		s := newSecondShaft(t, shaft.BeamParams{
			Sections: append(pieces(a.Pinion.Neck, false), pieces(a.Pinion.Shank, false)...), Modulus: a.Pinion.Modulus, Poisson: a.Pinion.Poisson,
		}, []float64{0, l.GearToHead, l.GearToHead + l.HeadToTail}, [2]int{1, 2})
		s.span = l.HeadToTail
		s.rollers, s.facing, s.preload = [2]bearing.Rollers{a.Head, a.Tail}, [2]float64{1, -1}, a.PinionPreload
		for i, q := range []Seat{a.HeadSeat, a.TailSeat} {
			s.seat(i, [5]float64{q.Axial, q.Radial, q.Radial, q.Tilt, q.Tilt})
		}
		for _, flank := range flanks {
			state, err := e.Solve(flank, 3000)
			if err != nil {
				t.Fatal(err)
			}
			load, _, _ := e.meshLoads(flank, 3000)
			copy(s.force, load[:])
			u := s.solve()
			turn := Vector{0, u[3], u[4]}
			arm := Vector{0, a.Mesh.MeanPoint.Y, a.Mesh.MeanPoint.Z - a.Mesh.PinionAxisZ}
			shift := Vector{u[0], u[1], u[2]}.plus(turn.cross(arm))
			if d := shift.minus(state.Pinion.Shift).norm(); d > 1e-7*shift.norm() {
				t.Errorf("%s, %g: mean point moves %v, second model %v", flank, play, state.Pinion.Shift, shift)
			}
			if d := turn.minus(state.Pinion.Turn).norm(); d > 1e-7*turn.norm() {
				t.Errorf("%s, %g: turns %v, second model %v", flank, play, state.Pinion.Turn, turn)
			}
			cup := Vector{u[15], u[16], u[17]}
			if d := cup.minus(state.Head.Movement.Shift).norm(); d > 1e-7*cup.norm() {
				t.Errorf("%s, %g: head cup moves %v, second model %v", flank, play, state.Head.Movement.Shift, cup)
			}
		}
	}
}

func TestWheelAndPegAgreeWithASecondModel(t *testing.T) {
	for _, play := range []float64{60e-6, -40e-6} {
		a := referenceAxle(t, "B")
		a.SidePreload = play
		a.Peg.Friction = 0
		e, err := Prepare(a)
		if err != nil {
			t.Fatal(err)
		}
		l := a.Layout
		c := a.Centre
		s := newSecondShaft(t, shaft.BeamParams{
			Sections: append(pieces(c.ToFar, true), pieces(c.ToNear, false)...), Modulus: c.Modulus, Poisson: c.Poisson,
		}, []float64{0, l.Far + a.hub(), l.Far + l.Near}, [2]int{0, 2})
		s.span = l.Near + l.Far
		s.rollers, s.facing, s.preload = [2]bearing.Rollers{a.Far, a.Near}, [2]float64{-1, 1}, a.SidePreload
		s.axis[0], s.axis[1] = a.capAxis()
		for i, q := range []SideSeat{a.FarSeat, a.NearSeat} {
			// The caps face along x, radial 2.
			s.seat(i, [5]float64{q.Axial, q.Across, 0, q.Tilt, q.Tilt})
			s.inward[i] = [2]float64{q.Inward, 1 / (1/q.Leg + 1/q.Cap)}
		}
		for _, flank := range flanks {
			state, err := e.Solve(flank, 5000)
			if err != nil {
				t.Fatal(err)
			}
			_, load, plate := e.meshLoads(flank, 5000)
			arm, _ := a.pegArm()
			// The peg's load is the one that makes its gap close just so far.
			approach := func(pegLoad float64) (float64, []float64) {
				push := wheelShaft.wrench(Vector{Y: -pegLoad}, arm)
				for i := range push {
					s.force[5+i] = load[i] + push[i]
				}
				u := s.solve()
				shift, turn := wheelShaft.global(u[5], u[6], u[7]), wheelShaft.global(0, u[8], u[9])
				w := shift.plus(turn.cross(arm)).Y - a.Plate.Compliance[pegAxial][pegAxial]*pegLoad
				for i, p := range plate {
					w += a.Plate.Compliance[pegAxial][i] * p
				}
				return w - pegLoad/a.Peg.Stiffness, u
			}
			low, high := 0.0, 0.0
			w, u := approach(0)
			free := w
			if w > a.Peg.Gap {
				for high = 1000; ; high *= 2 {
					if w, _ = approach(high); w < a.Peg.Gap {
						break
					}
				}
				for range 45 {
					mid := (low + high) / 2
					if w, u = approach(mid); w > a.Peg.Gap {
						low = mid
					} else {
						high = mid
					}
				}
			}
			if !near9(state.Peg.FreeMovement, free, 10*free) {
				t.Errorf("%s, %g: free movement %g, second model %g", flank, play, state.Peg.FreeMovement, free)
			}
			if math.Abs(state.Peg.Load-low) > 1e-6*(low+1) {
				t.Errorf("%s, %g: peg carries %g N, second model %g N", flank, play, state.Peg.Load, low)
			}
			cup := wheelShaft.global(u[20], u[21], u[22])
			if d := cup.minus(state.Near.Movement.Shift).norm(); d > 1e-6*cup.norm() {
				t.Errorf("%s, %g: near cup moves %v, second model %v", flank, play, state.Near.Movement.Shift, cup)
			}
		}
	}
}
