package loadpath

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// A casting's matrix without cross terms says what the seats say.
func TestMatrixWithoutCrossTermsIsTheSeats(t *testing.T) {
	a := referenceAxle(t, "B")
	// The peg's own stiffness is split between itself and its foot.
	b := *a
	peg := *a.Peg
	peg.Stiffness *= 2
	b.Peg = &peg
	c, err := SeatsAsCasting(a, peg.Stiffness)
	if err != nil {
		t.Fatal(err)
	}
	b.Casting = &c
	for _, flank := range flanks {
		s, m := solved(t, a, flank, 5000), solved(t, &b, flank, 5000)
		if d := apart(&s, &m); d > 1e-9*s.Wheel.Shift.norm() || math.Abs(s.Peg.Load-m.Peg.Load) > 1e-6 {
			t.Errorf("%s: %g m apart, peg %g and %g N", flank, d, s.Peg.Load, m.Peg.Load)
		}
	}
}

func TestCastingFromStiffnessIsItsInverse(t *testing.T) {
	a := referenceAxle(t, "B")
	want := randomCasting(a, rand.New(rand.NewPCG(4, 4)))
	const n = CastingFreedoms
	var k mat.Dense
	if err := k.Inverse(mat.NewDense(n, n, want.Compliance[:])); err != nil {
		if _, ok := err.(mat.Condition); !ok { // metres beside radians
			t.Fatal(err)
		}
	}
	got, err := CastingFromStiffness((*[n * n]float64)(k.RawMatrix().Data))
	if err != nil {
		t.Fatal(err)
	}
	for i := range n {
		for j := range n {
			if d := math.Abs(got.Compliance[i*n+j] - want.Compliance[i*n+j]); d > 1e-8*math.Sqrt(want.Compliance[i*n+i]*want.Compliance[j*n+j]) {
				t.Errorf("%d,%d: %g, want %g", i, j, got.Compliance[i*n+j], want.Compliance[i*n+j])
			}
		}
	}
	if _, err := CastingFromStiffness(new([n * n]float64)); err == nil {
		t.Error("a casting without stiffness")
	}
}

// A casting that opens under the side thrust and so swings the pinion ties the
// two systems together; then a peg does move the pinion, the way it must.
func TestCrossTermsLetThePegMoveThePinion(t *testing.T) {
	a := referenceAxle(t, "B")
	c, err := SeatsAsCasting(a, 3e9)
	if err != nil {
		t.Fatal(err)
	}
	c.Set(NearAxial, HeadAxial, 0.3*math.Sqrt(1/(a.NearSeat.Axial*a.HeadSeat.Axial)))
	a.Casting = &c
	without := *a
	without.Peg = nil
	with, bare := solved(t, a, Coast, 6000), solved(t, &without, Coast, 6000)
	if with.Peg.Load == 0 || with.Near.Axial >= bare.Near.Axial {
		t.Fatalf("the peg carries %g N", with.Peg.Load)
	}
	if !(with.Head.Movement.Shift.X < bare.Head.Movement.Shift.X) {
		t.Errorf("the head's cup is carried along to %g m with and %g m without the peg", with.Head.Movement.Shift.X, bare.Head.Movement.Shift.X)
	}
	if u := unbalance(a, &with); u > 1e-9 {
		t.Errorf("%g of the load is left over", u)
	}
}
