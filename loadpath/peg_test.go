package loadpath

import (
	"math"
	"testing"

	"axlewright/calc/bolt"
	"axlewright/internal/published"
)

func TestGapOverATurnOfTheWheel(t *testing.T) {
	const gap, runOut, closing = 0.25e-3, 0.08e-3, 0.02e-3
	for _, c := range []struct {
		spot                Spot
		tight, middle, wide float64 // µm, cold
	}{
		{Middle, 210, 250, 290},
		{Tight, 250, 290, 330},
		{Slack, 170, 210, 250},
		{Unknown, 170, 250, 330}, // the worse one either way
	} {
		p := Peg{Gap: gap, RunOut: runOut, Spot: c.spot}
		tight, wide := p.spots()
		for _, v := range [][2]float64{{tight, c.tight}, {p.middleGap(), c.middle}, {wide, c.wide}} {
			if math.Abs(v[0]*1e6-v[1]) > 1e-9 {
				t.Errorf("measured at %q: %g µm, want %g µm", c.spot, v[0]*1e6, v[1])
			}
		}
		p.Closing = closing
		if hot, _ := p.spots(); math.Abs(tight-hot-closing) > 1e-15 {
			t.Errorf("heat closes the gap by %g m", tight-hot)
		}
	}
	p := Peg{Gap: gap, RunOut: runOut, Spot: Slack}
	tight, _ := p.spots()
	same, err := bolt.TightSpotGap(gap, runOut)
	if err != nil {
		t.Fatal(err)
	}
	published.Check(t, []published.Row{
		{Name: "0.25 mm set, 0.08 mm of run-out, mm left", Got: tight * 1e3, Printed: "0.17", Source: "common practice, no source"},
		{Name: "the same by the formula of the screw, mm", Got: same * 1e3, Printed: "0.17", Source: "common practice, no source"},
	})
}

// The torque of first touch is where the load on the peg begins, at either spot.
func TestFirstTouchIsWhereTheLoadBegins(t *testing.T) {
	a := referenceAxle(t, "B")
	a.Peg.RunOut = 0.1e-3
	s := solved(t, a, Coast, 3000)
	for spot, touch := range map[float64]Touch{-0.05e-3: s.Peg.TouchTight, 0.05e-3: s.Peg.TouchSlack} {
		b := *a
		peg := *a.Peg
		peg.Gap += spot
		b.Peg = &peg
		before, after := solved(t, &b, Coast, 0.9999*touch.Torque), solved(t, &b, Coast, 1.0001*touch.Torque)
		if !touch.Touches || before.Peg.Load != 0 || after.Peg.Load <= 0 {
			t.Errorf("touch at %g N·m: just before %g N, just after %g N", touch.Torque, before.Peg.Load, after.Peg.Load)
		}
	}
	if s.Peg.TouchTight.Torque >= s.Peg.TouchSlack.Torque {
		t.Errorf("the slack spot touches first: %+v", s.Peg)
	}
	// Out of reach is said, not guessed.
	a.Peg.Gap = 5e-3
	if s = solved(t, a, Coast, 1000); s.Peg.TouchTight.Touches {
		t.Errorf("a peg 5 mm off touches at %g N·m", s.Peg.TouchTight.Torque)
	}
	// A peg screwed in past touch presses without torque.
	a.Peg.Gap, a.Peg.RunOut = -0.02e-3, 0
	if s = solved(t, a, Coast, 0); s.Peg.Load <= 0 || s.Peg.TouchTight != (Touch{0, true}) {
		t.Errorf("screwed in by 0.02 mm: %+v", s.Peg)
	}
}

// Friction of the pad turns with the wheel: it drags, and drags the other way
// when the wheel turns against the teeth.
func TestPadDragsAgainstTheTurning(t *testing.T) {
	a := referenceAxle(t, "B")
	a.Peg.Friction = 0
	smooth := solved(t, a, Coast, 5000)
	a.Peg.Friction = 0.12
	driven := solved(t, a, Coast, 5000)
	a.Peg.AgainstTorque = true
	overrun := solved(t, a, Coast, 5000)
	for _, s := range []State{driven, overrun} {
		if want := 0.12 * s.Peg.Load * a.Peg.Radius; math.Abs(s.Peg.DragTorque-want) > 1e-9*want {
			t.Errorf("drag torque %g, want %g N·m", s.Peg.DragTorque, want)
		}
	}
	// The pad's force on the wheel is the difference of the side bearings' sums.
	sum := func(s *State) Vector { return s.Near.Force.plus(s.Far.Force) }
	along := sum(&driven).minus(sum(&smooth))
	other := sum(&overrun).minus(sum(&smooth))
	along.Y, other.Y = 0, 0
	if math.Abs(along.norm()-driven.Peg.Friction) > 1e-6*driven.Peg.Friction || math.Abs(other.norm()-overrun.Peg.Friction) > 1e-6*overrun.Peg.Friction {
		t.Errorf("friction %g and %g N, side bearings feel %g and %g N", driven.Peg.Friction, overrun.Peg.Friction, along.norm(), other.norm())
	}
	if along.dot(other) >= 0 {
		t.Errorf("both ways of turning drag alike: %v and %v", along, other)
	}
	// Driven by the teeth, the wheel turns with their torque and the pad drags
	// against it.
	arm, _ := a.pegArm()
	if turn := arm.cross(along).Y * a.Mesh.MeanPoint.cross(a.Mesh.Coast).Y; turn >= 0 {
		t.Errorf("the pad helps the teeth: %g", turn)
	}
}
