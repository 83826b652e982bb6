package bolt

import (
	"testing"

	"axlewright/internal/published"

	"pgregory.net/rapid"
)

func TestAdjusterPublished(t *testing.T) {
	const custom = "common practice, no source; worked out from pitch and notches"
	const derived = "derived: P/N, and the crown wheel's lash per axial move at 20° pressure and 35° spiral angle"
	sixteen, twentyFour := must(NotchAdvance(1.5*mm, 16)), must(NotchAdvance(1.5*mm, 24))
	unwinding := must(UnwindingTorque(27*kN, 1.5*mm))
	drag := must(CupDragTorque(35*kN, 0.15, 40*mm))
	hand := 20 * lbIn
	published.Check(t, []published.Row{
		{Name: "16 notches, mm a notch", Got: sixteen * 1e3, Printed: "0.094", Source: custom},
		{Name: "16 notches, lash by the 0.7 rule, mm", Got: 0.7 * sixteen * 1e3, Printed: "0.066", Source: custom},
		{Name: "16 notches, lash by 0.855, mm", Got: 0.855 * sixteen * 1e3, Printed: "0.080", Source: custom},
		{Name: "24 notches, mm a notch", Got: twentyFour * 1e3, Printed: "0.0625", Source: derived},
		{Name: "24 notches, lash a notch, mm", Got: 0.858299 * twentyFour * 1e3, Printed: "0.0536437", Source: derived},
		{Name: "24 notches, notches for 0.10 mm of lash", Got: must(NotchesForMove(0.10*mm/0.858299, 1.5*mm, 24)), Printed: "1.86415", Source: derived},
		{Name: "27 kN on 1.5 mm pitch, N·m unwinding", Got: unwinding, Printed: "6.4", Source: custom},
		{Name: "on a pin at 38 mm, N", Got: must(LockForce(unwinding, 38*mm)), Printed: "170", Source: custom},
		{Name: "35 kN × 0.15 × 40 mm, on a pin at 38 mm, kN", Got: must(LockForce(drag, 38*mm)) / kN, Printed: "5.5", Source: custom},
		{Name: "20 lbf·in, N·m", Got: hand, Printed: "2.26", Source: "definition of the pound-force and the inch (NIST SP 811)"},
		{Name: "20 lbf·in at 32 mm, N", Got: must(LockForce(hand, 32*mm)), Printed: "70.6", Source: custom},
		{Name: "20 lbf·in at 32 mm, kgf", Got: must(LockForce(hand, 32*mm)) / 9.80665, Printed: "7.2", Source: custom},
	})
}

func TestAdjusterFrictionLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := AdjusterParams{
			Thrust: rapid.Float64Range(0.1, 60).Draw(t, "F") * kN, Pitch: rapid.Float64Range(1, 3).Draw(t, "P") * mm,
			PitchDiameter: rapid.Float64Range(40, 100).Draw(t, "d2") * mm, FlankAngle: rapid.SampledFrom([]float64{30, 27.5}).Draw(t, "β") * deg,
		}
		free := must(AdjusterTorque(p))
		if want := must(UnwindingTorque(p.Thrust, p.Pitch)); !near(free.Unwinding, want, 1e-12) {
			t.Errorf("without friction %g, want %g", free.Unwinding, want)
		}
		p.Friction = free.Critical
		if at := must(AdjusterTorque(p)).Unwinding; at > 1e-9*free.Unwinding || at < -1e-9*free.Unwinding {
			t.Errorf("at the critical friction %g remains", at)
		}
		p.Friction = 2 * free.Critical
		if must(AdjusterTorque(p)).Unwinding >= 0 {
			t.Error("above the critical friction it must hold itself")
		}
	})
}

func TestAdjusterHoldsItselfUntilShaken(t *testing.T) {
	p := AdjusterParams{27 * kN, 1.5 * mm, 76 * mm, 30 * deg, 0.10}
	r := must(AdjusterTorque(p))
	if r.Unwinding >= 0 || r.Critical > 0.01 {
		t.Errorf("a fine thread of 76 mm with friction 0.10: %+v", r)
	}
}

func TestAdjusterRefuses(t *testing.T) {
	_, err := AdjusterTorque(AdjusterParams{-1, 1.5 * mm, 76 * mm, 30 * deg, 0.1})
	refuses(t, "Thrust", err)
	_, err = AdjusterTorque(AdjusterParams{1, 50 * mm, 76 * mm, 30 * deg, 0.1})
	refuses(t, "Pitch", err)
	_, err = NotchAdvance(1.5*mm, 0)
	refuses(t, "notches", err)
	_, err = NotchesForMove(1, 0, 16)
	refuses(t, "pitch", err)
	_, err = UnwindingTorque(-1, 1.5*mm)
	refuses(t, "thrust", err)
	_, err = CupDragTorque(1, 1.5, 1)
	refuses(t, "friction", err)
	_, err = LockForce(1, 0)
	refuses(t, "radius", err)
}
