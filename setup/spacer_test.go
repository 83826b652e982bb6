package setup

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"axlewright/calc/bearing"
)

func pinionPair() [2]PinionBearing {
	b := PinionBearing{
		Drag:    bearing.PreloadedBearing{MeanDiameter: 60 * mm, Y: 1.6, HalfTaper: 3 * degree, RibHeight: 1 * mm},
		Rollers: bearing.Rollers{Count: 18, Diameter: 10 * mm, Length: 16 * mm, PitchDiameter: 60 * mm, CupAngle: 15 * degree},
	}
	return [2]PinionBearing{b, b}
}

func TestSpacerThinnerForMoreDrag(t *testing.T) {
	in := SpacerChange{Spec: light, Bearings: NewBearings, Pair: pinionPair(), Drag: Read(1.2)}
	r := must[SpacerResult](t)(SpacerFor(in))
	wantState(t, r.Answer, Fine, "Spacer thinner by about", "within a factor of two")
	if !(0 < r.Thinner.Low && r.Thinner.Low < r.Thinner.Likely && r.Thinner.Likely < r.Thinner.High) {
		t.Errorf("thinner by %v", r.Thinner)
	}
	in.Drag = Read(4)
	if r := must[SpacerResult](t)(SpacerFor(in)); !r.Has("Spacer thicker by about") || r.Thinner.Likely >= 0 {
		t.Errorf("too much drag: %v\n%s", r.Thinner, told(r.Answer))
	}
	in.Drag = Read(0.01)
	wantState(t, must[SpacerResult](t)(SpacerFor(in)).Answer, Look, "Measure the float")
	in.Spec = Spec{}
	wantState(t, must[SpacerResult](t)(SpacerFor(in)).Answer, NotYet, "kind of axle")
}

// What the spacer squeezes brings the drag that was wanted: back through the
// drag of the bearings, at the friction of the middle.
func TestSpacerBringsTheDrag(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		now, wanted := rapid.Float64Range(0.5, 4).Draw(rt, "now"), rapid.Float64Range(0.5, 4).Draw(rt, "wanted")
		in := SpacerChange{Spec: light, Bearings: NewBearings, Pair: pinionPair(), Drag: Read(now), Wanted: wanted, Seats: rapid.Float64Range(1e8, 1e9).Draw(rt, "seats")}
		r := must[SpacerResult](t)(SpacerFor(in))
		back := must[bearing.TurningTorqueResult](t)(bearing.TurningTorque(bearing.TurningTorqueParams{
			Bearings: []bearing.PreloadedBearing{in.Pair[0].Drag, in.Pair[1].Drag}, F0: 3, F1: 0.0004, Preload: r.Target.Likely}))
		if !near(back.Likely, wanted, 1e-9) {
			rt.Errorf("preload %g gives %g N·m, wanted %g", r.Target.Likely, back.Likely, wanted)
		}
		// Stiffness by hand: rollers of a pair in series with the seats, softer than the seats alone.
		if force := r.Target.Likely - r.Force.Likely; math.Abs(force) > 1 && r.Thinner.Likely/force < 1/in.Seats {
			rt.Errorf("%g m for %g N is stiffer than the seats", r.Thinner.Likely, force)
		}
		rigid := in
		rigid.Seats = 0
		if q := must[SpacerResult](t)(SpacerFor(rigid)); math.Abs(q.Thinner.Likely) > math.Abs(r.Thinner.Likely)+1e-15 {
			rt.Errorf("rigid seats need more: %g against %g", q.Thinner.Likely, r.Thinner.Likely)
		}
		in.Drag, in.Wanted = Read(wanted), now
		if q := must[SpacerResult](t)(SpacerFor(in)); !near(q.Thinner.Likely, -r.Thinner.Likely, 1e-12) {
			rt.Errorf("there %g and back %g", r.Thinner.Likely, q.Thinner.Likely)
		}
	})
}

// By hand, one bearing of 18 rollers of 16 mm at 15°, 4 kN along the axis:
// Q = 4000/(18·sin 15°) = 858.6 N; c = 35948·16^(8/9) = 422,665;
// δ = (858.6/422,665)^0.9 = 0.003776 mm; along the axis 0.003776/sin 15° = 0.01459 mm.
func TestSqueezeByHand(t *testing.T) {
	got := must[float64](t)(SpacerChange{Pair: pinionPair()}.squeeze(4000))
	if !near(got, 2*0.01459*mm, 0.0001*mm) {
		t.Errorf("squeeze %g mm, by hand 0.0292", got/mm)
	}
}
