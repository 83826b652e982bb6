package bolt

import (
	"testing"

	"axlewright/internal/published"

	"pgregory.net/rapid"
)

func TestAnglePastSnugPublished(t *testing.T) {
	const source = "derived: 360·F·(δ_S + δ_P)/P for 30 kN, 3.1e-6 mm/N, pitch 1.5 mm"
	published.Check(t, []published.Row{
		{Name: "angle past snug, degrees", Got: must(TighteningAngle(30*kN, 3.1e-9, 1.5*mm)) / deg, Printed: "22.32", Source: source},
	})
}

func TestAngleAndStretchGiveThePreloadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		force := rapid.Float64Range(0, 100).Draw(t, "F") * kN
		bolt, members := rapid.Float64Range(0.5, 10).Draw(t, "δS")*1e-9, rapid.Float64Range(0.1, 2).Draw(t, "δP")*1e-9
		pitch := rapid.Float64Range(0.8, 3).Draw(t, "P") * mm
		angle := must(TighteningAngle(force, bolt+members, pitch))
		if back := must(PreloadFromAngle(angle, bolt+members, pitch)); !near(back, force, 1e-12) {
			t.Errorf("from angle %g, want %g", back, force)
		}
		if back := must(PreloadFromStretch(force*bolt, bolt)); !near(back, force, 1e-12) {
			t.Errorf("from stretch %g, want %g", back, force)
		}
		// the nut's travel is shared between stretch and squeeze
		if travel := must(ScrewAdvance(angle, pitch)); !near(travel, force*bolt+force*members, 1e-12) {
			t.Errorf("travel %g", travel)
		}
	})
}

func TestAngleRefuses(t *testing.T) {
	_, err := TighteningAngle(1, 0, 1)
	refuses(t, "resilience", err)
	_, err = PreloadFromAngle(-1, 1, 1)
	refuses(t, "angle", err)
	_, err = PreloadFromStretch(1e-5, 0)
	refuses(t, "resilience", err)
}
