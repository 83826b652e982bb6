package bolt

import (
	"math"
	"testing"

	"axlewright/internal/published"

	"pgregory.net/rapid"
)

func TestPowerScrewPublished(t *testing.T) {
	const source = "Shigley's Mechanical Engineering Design, 9th ed., ex. 8-1: square thread, d_m 30, lead 8, d_c 40 mm, 6.4 kN, f 0.08 (from memory)"
	p := ScrewParams{6.4 * kN, 8 * mm, 30 * mm, 0, 0.08, 0.08, 40 * mm}
	bare := p
	bare.CollarDiameter = 0
	published.Check(t, []published.Row{
		{Name: "raising, N·m", Got: must(ScrewRaisingTorque(p)), Printed: "26.18", Source: source},
		{Name: "raising, thread alone, N·m", Got: must(ScrewRaisingTorque(bare)), Printed: "15.94", Source: source},
		{Name: "lowering, N·m", Got: must(ScrewLoweringTorque(p)), Printed: "9.77", Source: source},
		{Name: "lowering, thread alone, N·m", Got: must(ScrewLoweringTorque(bare)), Printed: "-0.466", Source: source},
	})
}

func TestPegScrewPublished(t *testing.T) {
	const source = "common practice, no source; worked out from the pitch"
	metric := must(ScrewAdvance(60*deg, 1.5*mm))
	unified := must(ScrewAdvance(90*deg, inch/20))
	rows := []published.Row{
		{Name: "M12x1.5, 60° back, mm", Got: metric * 1e3, Printed: "0.250", Source: source},
		{Name: "less 0.08 mm run-out, mm at the tight spot", Got: must(TightSpotGap(metric, 0.08*mm)) * 1e3, Printed: "0.17", Source: source},
		{Name: "7/16-20, quarter turn, mm", Got: unified * 1e3, Printed: "0.318", Source: source, Within: 0.002, Why: "0.3175 exactly, printed rounded up"},
		{Name: "7/16-20, quarter turn, thou", Got: unified / inch * 1e3, Printed: "12.5", Source: source},
	}
	for _, c := range []struct {
		name, printed string
		pitch         float64 // m
	}{
		{"M12x1.5", "24", 1.5 * mm}, {"M12x1.75", "20.6", 1.75 * mm}, {"M12x1.25", "28.8", 1.25 * mm},
		{"7/16-20", "28.3", inch / 20}, {"M16x1.5", "24", 1.5 * mm},
	} {
		rows = append(rows, published.Row{Name: c.name + " back off for 0.10 mm, degrees",
			Got: must(BackOffAngle(0.1*mm, c.pitch)) / deg, Printed: c.printed, Source: source})
	}
	published.Check(t, rows)
}

func TestBackOffUndoesAdvance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		gap, pitch := rapid.Float64Range(0, 2).Draw(t, "gap")*mm, rapid.Float64Range(0.5, 3).Draw(t, "pitch")*mm
		if back := must(ScrewAdvance(must(BackOffAngle(gap, pitch)), pitch)); math.Abs(back-gap) > 1e-15 {
			t.Errorf("got %g, want %g", back, gap)
		}
	})
}

// Without friction the work of the torque in one turn is the work of the load.
func TestScrewWithoutFrictionKeepsWork(t *testing.T) {
	p := ScrewParams{Force: 10 * kN, Lead: 2 * mm, PitchDiameter: 20 * mm, FlankAngle: 15 * deg}
	if up := must(ScrewRaisingTorque(p)) * 2 * math.Pi; !near(up, p.Force*p.Lead, 1e-12) {
		t.Errorf("raising %g J a turn, load %g J", up, p.Force*p.Lead)
	}
	if down := must(ScrewLoweringTorque(p)) * 2 * math.Pi; !near(down, -p.Force*p.Lead, 1e-12) {
		t.Errorf("lowering %g J a turn, load %g J", down, -p.Force*p.Lead)
	}
}

func TestScrewRefuses(t *testing.T) {
	_, err := ScrewRaisingTorque(ScrewParams{1, 60 * mm, 20 * mm, 0, 1.2, 0, 0})
	refuses(t, "ThreadFriction", err)
	_, err = ScrewLoweringTorque(ScrewParams{1, 2 * mm, 0, 0, 0.1, 0, 0})
	refuses(t, "PitchDiameter", err)
	_, err = TightSpotGap(0.1*mm, 0.2*mm)
	refuses(t, "runOut", err)
	_, err = BackOffAngle(-0.1*mm, 1.5*mm)
	refuses(t, "gap", err)
	_, err = ScrewAdvance(1, 0)
	refuses(t, "pitch", err)
}
