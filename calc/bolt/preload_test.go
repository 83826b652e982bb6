package bolt

import (
	"math"
	"testing"

	"axlewright/internal/published"

	"pgregory.net/rapid"
)

// tightened is the preload and torque at 90 % of yield of a metric hexagon bolt, in kN and N·m.
func tightened(class Class, d, pitch, friction float64) (preload, torque float64) {
	g := must(ThreadGeometry(Metric, d*mm, pitch*mm))
	head := must(HexHead(d * mm))
	preload = must(AssemblyPreload(PreloadParams{
		StressDiameter: (g.PitchDiameter + g.CoreDiameter) / 2, PitchDiameter: g.PitchDiameter, Pitch: pitch * mm,
		ThreadFriction: friction, Yield: must(ClassStrength(class, d*mm)).Yield, Utilisation: 0.9,
	}))
	torque = must(TighteningTorque(TorqueParams{
		Preload: preload, Pitch: pitch * mm, PitchDiameter: g.PitchDiameter,
		HeadDiameter:   must(HeadFrictionDiameter(head.Bearing, head.Hole)),
		ThreadFriction: friction, HeadFriction: friction,
	}))
	return preload / kN, torque
}

func TestAssemblyPreloadAndTorquePublished(t *testing.T) {
	const coarse = "VDI 2230-1:2003, table A1 (from memory)"
	const fine = "VDI 2230:2001, fine-thread table"
	const why = "the table rounds the diameter of the bearing face"
	var rows []published.Row
	for _, c := range []struct {
		name               string
		class              Class
		d, pitch, friction float64
		preload, torque    string
		source             string
	}{
		{"M8 8.8 µ 0.12", Class8_8, 8, 1.25, 0.12, "18.6", "24.6", coarse},
		{"M10 8.8 µ 0.10", Class8_8, 10, 1.5, 0.10, "30.3", "43", coarse},
		{"M10 8.8 µ 0.12", Class8_8, 10, 1.5, 0.12, "29.6", "48", coarse},
		{"M10 8.8 µ 0.14", Class8_8, 10, 1.5, 0.14, "28.8", "53", coarse},
		{"M12 8.8 µ 0.14", Class8_8, 12, 1.75, 0.14, "41.9", "93", coarse},
		{"M10 10.9 µ 0.12", Class10_9, 10, 1.5, 0.12, "43.4", "71", coarse},
		{"M12 10.9 µ 0.12", Class10_9, 12, 1.75, 0.12, "63.2", "123", coarse},
		{"M8x1 8.8 µ 0.12", Class8_8, 8, 1, 0.12, "20.2", "26.1", fine},
		{"M10x1.25 8.8 µ 0.12", Class8_8, 10, 1.25, 0.12, "31.6", "51", fine},
		{"M10x1.25 10.9 µ 0.12", Class10_9, 10, 1.25, 0.12, "46.4", "75", fine},
		{"M12x1.25 8.8 µ 0.14", Class8_8, 12, 1.25, 0.14, "46.8", "101", fine},
	} {
		preload, torque := tightened(c.class, c.d, c.pitch, c.friction)
		rows = append(rows,
			published.Row{Name: c.name + " preload, kN", Got: preload, Printed: c.preload, Source: c.source, Within: 0.005, Why: "stress area rounded in the table"},
			published.Row{Name: c.name + " torque, N·m", Got: torque, Printed: c.torque, Source: c.source, Within: 0.02, Why: why})
	}
	published.Check(t, rows)
}

func drawPreload(t *rapid.T) PreloadParams {
	d := rapid.Float64Range(5, 24).Draw(t, "d") * mm
	g := must(ThreadGeometry(Metric, d, d*rapid.Float64Range(0.06, 0.17).Draw(t, "pitch")))
	return PreloadParams{
		StressDiameter: (g.PitchDiameter + g.CoreDiameter) / 2, PitchDiameter: g.PitchDiameter,
		Pitch:          math.Tan(g.LeadAngle) * math.Pi * g.PitchDiameter,
		ThreadFriction: rapid.Float64Range(0, 0.4).Draw(t, "µ"),
		Yield:          rapid.Float64Range(240, 1100).Draw(t, "yield") * mpa,
		Utilisation:    rapid.Float64Range(0.3, 1).Draw(t, "ν"),
	}
}

func TestAssemblyStressUndoesAssemblyPreload(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPreload(t)
		stress := must(AssemblyStress(AssemblyStressParams{
			must(AssemblyPreload(p)), p.StressDiameter, p.PitchDiameter, p.Pitch, p.ThreadFriction,
		}))
		if want := p.Utilisation * p.Yield; !near(stress.Equivalent, want, 1e-12) {
			t.Errorf("equivalent %g, want %g", stress.Equivalent, want)
		}
	})
}

func TestPreloadFallsWithFriction(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPreload(t)
		slick := must(AssemblyPreload(p))
		p.ThreadFriction += 0.05
		if must(AssemblyPreload(p)) >= slick {
			t.Error("more friction in the thread must leave less preload at the same utilisation")
		}
	})
}

func TestAssemblyPreloadRefuses(t *testing.T) {
	good := PreloadParams{10 * mm, 10.863 * mm, 1.75 * mm, 0.12, 640 * mpa, 0.9}
	for param, p := range map[string]PreloadParams{
		"Utilisation":    {good.StressDiameter, good.PitchDiameter, good.Pitch, 0.12, good.Yield, 1.1},
		"ThreadFriction": {good.StressDiameter, good.PitchDiameter, good.Pitch, 0.6, good.Yield, 0.9},
		"Pitch":          {good.StressDiameter, good.PitchDiameter, 0, 0.12, good.Yield, 0.9},
		"Yield":          {good.StressDiameter, good.PitchDiameter, good.Pitch, 0.12, math.NaN(), 0.9},
	} {
		_, err := AssemblyPreload(p)
		refuses(t, param, err)
	}
}
