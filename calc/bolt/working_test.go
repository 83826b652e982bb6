package bolt

import (
	"math"
	"testing"

	"axlewright/internal/published"

	"pgregory.net/rapid"
)

func TestFatigueLimitPublished(t *testing.T) {
	const source = "derived: 0.85·(150/d + 45) of VDI 2230-1:2015, 5.5.3, by hand; formula from memory"
	published.Check(t, []published.Row{
		{Name: "M8, MPa", Got: must(FatigueLimit(RolledBefore, 8*mm, 0.7)) / mpa, Printed: "54.2", Source: source},
		{Name: "M10, MPa", Got: must(FatigueLimit(RolledBefore, 10*mm, 0.7)) / mpa, Printed: "51", Source: source},
		{Name: "M12, MPa", Got: must(FatigueLimit(RolledBefore, 12*mm, 0.7)) / mpa, Printed: "48.9", Source: source},
		{Name: "M12 rolled after, mean 0.7, MPa", Got: must(FatigueLimit(RolledAfter, 12*mm, 0.7)) / mpa, Printed: "63.5", Source: source},
	})
}

func TestWorkingStressWithoutTwistIsPlainTension(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := WorkingStressParams{
			Preload: rapid.Float64Range(1, 60).Draw(t, "F_M") * kN, Force: rapid.Float64Range(1, 80).Draw(t, "F_S") * kN,
			StressDiameter: 10.36 * mm, PitchDiameter: 10.863 * mm, Pitch: 1.75 * mm,
			ThreadFriction: rapid.Float64Range(0, 0.3).Draw(t, "µ"),
		}
		plain := must(WorkingStress(p))
		if !near(plain.Equivalent, plain.Tension, 1e-12) || plain.Torsion != 0 {
			t.Errorf("without twist: %+v", plain)
		}
		p.TwistLeft = 1
		full := must(WorkingStress(p))
		p.TwistLeft = 0.5
		half := must(WorkingStress(p))
		if !near(full.Torsion, 2*half.Torsion, 1e-12) && full.Torsion != 0 {
			t.Errorf("twist %g and half of it %g", full.Torsion, half.Torsion)
		}
		if full.Equivalent < half.Equivalent || half.Equivalent < plain.Equivalent {
			t.Error("more twist must not lower the equivalent stress")
		}
		// the assembly formula takes the core as plastic: three quarters of the elastic torsion
		assembly := must(AssemblyStress(AssemblyStressParams{p.Preload, p.StressDiameter, p.PitchDiameter, p.Pitch, p.ThreadFriction}))
		if math.Abs(assembly.Torsion-0.75*full.Torsion) > 1e-9*full.Torsion {
			t.Errorf("plastic %g, elastic %g", assembly.Torsion, full.Torsion)
		}
	})
}

func TestStressAmplitude(t *testing.T) {
	published.Check(t, []published.Row{
		{Name: "0 to 4.215 kN on M12, MPa", Got: must(StressAmplitude(StressAmplitudeParams{4.215 * kN, 0, 84.3e-6})) / mpa, Printed: "25.00",
			Source: "derived: 4215/(2·84.3)"},
	})
	_, err := StressAmplitude(StressAmplitudeParams{1, 2, 1})
	refuses(t, "Least", err)
}

func TestWorkingRefuses(t *testing.T) {
	_, err := FatigueLimit(RolledBefore, 3*mm, 0.7)
	refuses(t, "d", err)
	_, err = FatigueLimit("cut", 12*mm, 0.7)
	refuses(t, "rolling", err)
	_, err = FatigueLimit(RolledAfter, 12*mm, 1)
	refuses(t, "meanShare", err)
	_, err = WorkingStress(WorkingStressParams{1, 1, 10 * mm, 11 * mm, 1.75 * mm, 0.1, 2})
	refuses(t, "TwistLeft", err)
}
