package loadpath

import (
	"math"
	"testing"
)

var referenceBuilds = []string{"A", "B", "C", "D", "C-nopeg"}

// What the trade knows of an ordinary rear axle must come out of the sum.
func TestReferenceBuildsBehaveAsTheTradeKnows(t *testing.T) {
	const torque = 6000
	state := map[string]map[Flank]State{}
	for _, id := range referenceBuilds {
		e, err := Prepare(referenceAxle(t, id))
		if err != nil {
			t.Fatal(id, err)
		}
		state[id] = map[Flank]State{}
		for _, flank := range flanks {
			s, err := e.Solve(flank, torque)
			if err != nil {
				t.Fatal(id, flank, err)
			}
			state[id][flank] = s
			t.Logf("%-7s %-5s wheel thrust %5.1f kN, pinion thrust %6.1f kN | µm: wheel %4.0f dial %4.0f pinion %5.0f offset %5.0f, angle %5.2f mrad | peg %5.2f kN, free %4.0f µm, touch %5.0f N·m | kN radial/axial: head %.1f/%.1f tail %.1f/%.1f near %.1f/%.1f far %.1f/%.1f | max roller %.1f %.1f %.1f %.1f kN | %d steps",
				id, flank, s.OnWheel.Y/1e3, s.OnPinion.X/1e3, s.Wheel.Shift.Y*1e6, s.Dial*1e6, s.Mesh.PinionAxial*1e6, s.Mesh.Offset*1e6, s.Mesh.ShaftAngle*1e3,
				s.Peg.Load/1e3, s.Peg.FreeMovement*1e6, s.Peg.TouchTight.Torque,
				s.Head.Radial/1e3, s.Head.Axial/1e3, s.Tail.Radial/1e3, s.Tail.Axial/1e3, s.Near.Radial/1e3, s.Near.Axial/1e3, s.Far.Radial/1e3, s.Far.Axial/1e3,
				s.Head.MaxRoller/1e3, s.Tail.MaxRoller/1e3, s.Near.MaxRoller/1e3, s.Far.MaxRoller/1e3, s.Iterations)
		}
	}
	for id, s := range state {
		drive, coast := s[Drive], s[Coast]
		if ratio := coast.OnWheel.Y / drive.OnWheel.Y; !(ratio > 2 && ratio < 3) {
			t.Errorf("%s: thrust on the wheel, coast over drive: %g", id, ratio)
		}
		if !(drive.OnPinion.X > 0 && drive.Mesh.PinionAxial > 0 && coast.OnPinion.X < 0 && coast.Mesh.PinionAxial < 0) {
			t.Errorf("%s: the drive flank pushes the pinion out of the nose, the coast flank draws it in: %g and %g m", id, drive.Mesh.PinionAxial, coast.Mesh.PinionAxial)
		}
		if !(coast.Wheel.Shift.Y > drive.Wheel.Shift.Y && drive.Wheel.Shift.Y > 0) {
			t.Errorf("%s: the wheel moves %g m on the drive and %g m on the coast flank", id, drive.Wheel.Shift.Y, coast.Wheel.Shift.Y)
		}
		if !(drive.Head.Axial > drive.Tail.Axial && coast.Tail.Axial > coast.Head.Axial) {
			t.Errorf("%s: the head bearing takes the thrust of the drive flank, the tail bearing that of the coast flank", id)
		}
	}
	a, b, c, d, bare := state["A"], state["B"], state["C"], state["D"], state["C-nopeg"]
	// The peg holds the wheel on the coast flank and does nothing on the drive
	// flank; caps do the reverse; neither touches the pinion.
	if !(b[Coast].Wheel.Shift.Y < 0.6*a[Coast].Wheel.Shift.Y) || b[Drive].Peg.Load != 0 || b[Drive].Wheel.Shift != a[Drive].Wheel.Shift {
		t.Errorf("peg: coast %g to %g m, drive load %g N", a[Coast].Wheel.Shift.Y, b[Coast].Wheel.Shift.Y, b[Drive].Peg.Load)
	}
	if b[Coast].Pinion != a[Coast].Pinion {
		t.Error("the peg moves the pinion")
	}
	if !(bare[Drive].Wheel.Shift.norm() < a[Drive].Wheel.Shift.norm()) || bare[Coast].Wheel.Shift.norm() > a[Coast].Wheel.Shift.norm() {
		t.Errorf("caps: drive %v to %v, coast %v to %v", a[Drive].Wheel.Shift, bare[Drive].Wheel.Shift, a[Coast].Wheel.Shift, bare[Coast].Wheel.Shift)
	}
	if !(d[Drive].Mesh.PinionAxial < c[Drive].Mesh.PinionAxial) || d[Coast].Peg.Load != c[Coast].Peg.Load {
		t.Errorf("head bearing: pinion %g to %g m", c[Drive].Mesh.PinionAxial, d[Drive].Mesh.PinionAxial)
	}
	// The wheel has come the gap closer at the torque of first touch.
	e, err := Prepare(referenceAxle(t, "A"))
	if err != nil {
		t.Fatal(err)
	}
	touch := b[Coast].Peg.TouchTight
	if s, err := e.Solve(Coast, touch.Torque); err != nil || !touch.Touches || math.Abs(s.Dial-0.2e-3) > 0.02e-3 {
		t.Errorf("first touch at %g N·m, where the dial beside the peg reads %g m: %v", touch.Torque, s.Dial, err)
	}
}

// Values of our own, to see when they change.
func TestReferenceAxlePinned(t *testing.T) {
	for _, c := range []struct {
		id            string
		flank         Flank
		wheel, pinion float64 // µm
		peg           float64 // kN
		near, head    float64 // kN, radial
	}{
		{"A", Drive, 181.9, 539.6, 0, 58.3, 64.8},
		{"A", Coast, 777.9, -788.6, 0, 43.8, 95.1},
		{"B", Coast, 304.3, -685.2, 27.63, 44.0, 95.1},
		{"C", Drive, 175.4, 529.3, 0, 58.3, 64.8},
		{"D", Drive, 175.4, 491.3, 0, 58.3, 63.2},
	} {
		s := solved(t, referenceAxle(t, c.id), c.flank, 6000)
		for _, v := range [][2]float64{
			{s.Wheel.Shift.Y * 1e6, c.wheel}, {s.Mesh.PinionAxial * 1e6, c.pinion}, {s.Peg.Load / 1e3, c.peg},
			{s.Near.Radial / 1e3, c.near}, {s.Head.Radial / 1e3, c.head},
		} {
			if math.Abs(v[0]-v[1]) > 0.002*math.Abs(v[1]) {
				t.Errorf("%s %s: %g, pinned %g", c.id, c.flank, v[0], v[1])
			}
		}
	}
}
