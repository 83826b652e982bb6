package loadpath

import "testing"

// Changing an axle in place and preparing it again in the same memory must give
// what a fresh one gives, whatever of the old is kept.
func TestResetForgetsWhatHasChanged(t *testing.T) {
	a := referenceAxle(t, "B")
	e, err := Prepare(a)
	if err != nil {
		t.Fatal(err)
	}
	c := referenceAxle(t, "C")
	changes := []struct {
		name   string
		change func()
	}{
		{"nothing", func() {}},
		{"neck", func() { a.Pinion.Neck[0].Outer = 0.042 }},
		{"far section", func() { a.Centre.ToFar[0].Share = 0.4 }},
		{"gap", func() { a.Peg.Gap = 0.1e-3 }},
		{"peg's place", func() { a.Peg.Angle = 0.1 }},
		{"plate", func() { a.Plate = a.Plate.Scaled(150e9) }},
		{"caps", func() { a.NearSeat, a.FarSeat = c.NearSeat, c.FarSeat }},
		{"head bearing", func() { a.Head.Length = 0.02 }},
		{"side preload", func() { a.SidePreload = -0.02e-3 }},
		{"tail seat", func() { a.TailSeat.Axial *= 0.5 }},
		{"peg away", func() { a.Peg = nil }},
		{"mesh", func() { a.Mesh.Drive, a.Mesh.Coast = a.Mesh.Coast, a.Mesh.Drive }},
	}
	for _, c := range changes {
		c.change()
		if err := e.Reset(a); err != nil {
			t.Fatal(err)
		}
		for _, flank := range flanks {
			got, err := e.Solve(flank, 4500)
			if err != nil {
				t.Fatal(err)
			}
			want := solved(t, a, flank, 4500)
			if d := apart(&got, &want); d > 1e-12 || got.Peg.Load > want.Peg.Load+1e-3 || got.Peg.Load < want.Peg.Load-1e-3 {
				t.Errorf("after changing %s: %g m apart, peg %g and %g N", c.name, d, got.Peg.Load, want.Peg.Load)
			}
		}
	}
}

// The order of builds must not show in the digits, or runs on more cores would
// differ from runs on one.
func TestSameAxleGivesTheSameDigits(t *testing.T) {
	b, c := referenceAxle(t, "B"), referenceAxle(t, "C")
	fresh, used := new(Elastic), new(Elastic)
	if err := used.Reset(b); err != nil {
		t.Fatal(err)
	}
	var want, got State
	for i := range 6 {
		if err := used.SolveInto(&got, flanks[i%2], 500*float64(i)); err != nil {
			t.Fatal(err)
		}
	}
	peg := *b.Peg
	peg.Gap = 0.15e-3
	narrow := *b
	narrow.Peg = &peg
	for _, a := range []*Axle{&narrow, c, b} {
		if err := fresh.Reset(a); err != nil {
			t.Fatal(err)
		}
		if err := used.Reset(a); err != nil {
			t.Fatal(err)
		}
		for _, torque := range []float64{1700, 2900, 6100} {
			for _, flank := range flanks {
				if err := fresh.SolveInto(&want, flank, torque); err != nil {
					t.Fatal(err)
				}
				if err := used.SolveInto(&got, flank, torque); err != nil {
					t.Fatal(err)
				}
				if got != want {
					t.Errorf("%s %g N·m: not the same digits", flank, torque)
				}
			}
		}
	}
}

func TestSolvingAllocatesNothing(t *testing.T) {
	a := referenceAxle(t, "B")
	e, err := Prepare(a)
	if err != nil {
		t.Fatal(err)
	}
	var s State
	i := 0
	if n := testing.AllocsPerRun(100, func() {
		i++
		a.Peg.Gap = 1e-4 + 1e-6*float64(i%7)
		a.SidePreload = 5e-5 + 1e-6*float64(i%3)
		a.HeadSeat.Axial = 1e9 * float64(1+i%3)
		if err := e.Reset(a); err != nil {
			t.Fatal(err)
		}
		for _, flank := range flanks {
			if err := e.SolveInto(&s, flank, 3000+float64(i)); err != nil {
				t.Fatal(err)
			}
		}
	}); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

func TestSweepAgreesWithSolvingOneByOne(t *testing.T) {
	a := referenceAxle(t, "B")
	e, err := Prepare(a)
	if err != nil {
		t.Fatal(err)
	}
	torques := []float64{0, 500, 1000, 2000, 3000, 4500, 6000, 9000}
	for _, flank := range flanks {
		states := make([]State, len(torques))
		if err := e.Sweep(flank, torques, states); err != nil {
			t.Fatal(err)
		}
		for i, torque := range torques {
			want := solved(t, a, flank, torque)
			if d := apart(&states[i], &want); d > 1e-12 {
				t.Errorf("%s %g N·m: %g m apart", flank, torque, d)
			}
			if i > 0 && states[i].Peg.Load < states[i-1].Peg.Load {
				t.Errorf("%s: the peg carries %g N at %g N·m and %g N before", flank, states[i].Peg.Load, torque, states[i-1].Peg.Load)
			}
		}
	}
	if err := e.Sweep(Drive, torques, nil); err == nil {
		t.Error("a sweep without room for its states")
	}
}
