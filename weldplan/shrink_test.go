package weldplan

import (
	"testing"

	"pgregory.net/rapid"

	"axlewright/calc/weld"
	"axlewright/internal/published"
)

func ordinaryBead() bead {
	return bead{joint: Lap, leg: 4e-3, passes: 1, heat: 0.6e6, plate: 5e-3, wall: 12e-3, yield: 420e6, throat: 2.8e-3, modulus: steelModulus, bound: 1e9}
}

func shrunk(t testing.TB, b bead) shrinkage {
	t.Helper()
	s, err := shrinkageOf(b)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestShrinkagePublished(t *testing.T) {
	const twi = "TWI Job Knowledge 33 and 34, fillet allowance across the weld (from memory)"
	const masubuchi = "derived: Masubuchi, Analysis of Welded Structures, 1980, ch. 7: 1.02 mm for a tee's two fillets, 1.52 mm for a lap's (from memory)"
	tee, lap := ordinaryBead(), ordinaryBead()
	tee.joint = Tee
	tee.plate, tee.leg = 10e-3, 6e-3
	lap.plate, lap.leg = 10e-3, 6e-3
	thin := ordinaryBead()
	thin.leg, thin.plate = 3e-3, 3e-3
	butt := ordinaryBead()
	butt.joint, butt.plate, butt.gap = Butt, 12e-3, 3e-3
	published.Check(t, []published.Row{
		{Name: "pair of tee fillets, 6 on 10: mm", Got: 2 * shrunk(t, tee).across * 1e3, Printed: "0.612", Source: masubuchi},
		{Name: "pair of lap fillets, 6 on 10: mm", Got: 2 * shrunk(t, lap).across * 1e3, Printed: "0.912", Source: masubuchi},
		{Name: "one lap fillet of the plate's thickness: mm", Got: shrunk(t, thin).across * 1e3, Printed: "0.8", Source: twi},
		{Name: "pull of 0.8 kJ/mm: kN", Got: shrunk(t, bead{joint: Lap, leg: 4e-3, passes: 1, heat: 0.8e6, plate: 5e-3, wall: 12e-3, modulus: steelModulus, bound: 1e9}).pull / 1e3, Printed: "160", Source: "derived: White, Leggatt and Dwight, 1980: 0.2·q (formula from memory)"},
		{Name: "butt of 12 mm, gap 3: mm", Got: shrunk(t, butt).across * 1e3, Printed: "2.136", Source: "derived: Spraragen and Ettinger, 0.2·A_w/t + 0.05·d with A_w = 119.14 mm² of a 60° V, by hand"},
	})
	fold := shrunk(t, tee).kink
	tilt, err := weld.FlangeTilt(weld.FlangeTiltParams{Leg: 6e-3, Width: 0.2, Thickness: 12e-3})
	if err != nil {
		t.Fatal(err)
	}
	// Blodgett's edge rises tilt over half the width, on both sides, for two fillets.
	near(t, "fold of one fillet", fold, 2*tilt/0.1/2, 1e-12)
}

func TestShrinkageLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := ordinaryBead()
		b.joint = rapid.SampledFrom([]JointKind{Lap, Tee, Corner}).Draw(t, "joint")
		b.leg = rapid.Float64Range(2e-3, 5e-3).Draw(t, "leg")
		b.passes = rapid.IntRange(1, 4).Draw(t, "passes")
		b.heat = rapid.Float64Range(0.2e6, 2e6).Draw(t, "heat")
		one, err := shrinkageOf(b)
		if err != nil {
			t.Fatal(err)
		}
		more := b
		more.passes++
		if s, err := shrinkageOf(more); err != nil || s.across <= one.across || s.wall <= one.wall || s.kink <= one.kink {
			t.Fatalf("%d passes %+v, one more %+v %v", b.passes, one, s, err)
		}
		bigger := b
		bigger.leg *= 1.1
		if s, err := shrinkageOf(bigger); err != nil || s.across < one.across || s.kink <= one.kink {
			t.Fatalf("a larger leg shrinks less: %+v %+v %v", one, s, err)
		}
		hotter := b
		hotter.heat *= 1.5
		if s, err := shrinkageOf(hotter); err != nil || s.pull < 1.4999*one.pull {
			t.Fatalf("half as much heat again pulls %g, before %g %v", s.pull, one.pull, err)
		}
		slender := b
		slender.bound = 1e3
		if s, _ := shrinkageOf(slender); s.pull != 1e3 {
			t.Fatalf("a slender limb is pulled with %g N", s.pull)
		}
		softer := b
		softer.modulus /= 2
		if s, _ := shrinkageOf(softer); s.pull > one.pull*0.5001 {
			t.Fatalf("half the modulus pulls %g, whole %g", s.pull, one.pull)
		}
	})
}
