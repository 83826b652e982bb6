package bolt

import (
	"testing"

	"axlewright/internal/published"

	"pgregory.net/rapid"
)

func TestClampForSlipHoldsJustThat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		force := rapid.Float64Range(0, 50).Draw(t, "F") * kN
		friction := rapid.Float64Range(0.05, 0.5).Draw(t, "µ")
		faces := rapid.IntRange(1, 3).Draw(t, "faces")
		clamp := must(ClampForSlip(ClampForSlipParams{Force: force, Friction: friction, ForceFaces: faces, SafetyFactor: 1}))
		if got := must(SlipCapacity(clamp, friction, faces)); !near(got, force, 1e-12) {
			t.Errorf("holds %g, wants %g", got, force)
		}
	})
}

func TestCrownWheelBoltsDerived(t *testing.T) {
	const source = "derived: n·F_K·µ·r for ten M10 10.9 at 40 kN, µ 0.15, bolt circle 150 mm"
	torque := must(SlipTorque(SlipTorqueParams{10, 40 * kN, 0.15, 75 * mm}))
	clamp := must(ClampForSlip(ClampForSlipParams{Torque: torque, Radius: 75 * mm, Friction: 0.15, ForceFaces: 1, TorqueFaces: 1, SafetyFactor: 1.2}))
	published.Check(t, []published.Row{
		{Name: "torque at slip, N·m", Got: torque, Printed: "4500", Source: source},
		{Name: "clamp for that torque at 1.2, kN", Got: clamp / kN, Printed: "480", Source: "derived: 1.2·4500/(0.15·0.075)"},
	})
}

func TestSlipRefuses(t *testing.T) {
	_, err := SlipCapacity(1, 0.1, 0)
	refuses(t, "faces", err)
	_, err = ClampForSlip(ClampForSlipParams{Torque: 1, Friction: 0.1, ForceFaces: 1, SafetyFactor: 1})
	refuses(t, "Radius", err)
	_, err = ClampForSlip(ClampForSlipParams{Force: 1, Friction: 0, ForceFaces: 1, SafetyFactor: 1})
	refuses(t, "Friction", err)
	_, err = SlipTorque(SlipTorqueParams{0, 1, 0.1, 1})
	refuses(t, "Bolts", err)
}
