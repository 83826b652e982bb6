package bolt

import (
	"math"
	"testing"

	"axlewright/internal/published"

	"pgregory.net/rapid"
)

func TestWhitworthGeometryPublished(t *testing.T) {
	const source = "BS 84 BSF table, as in Machinery's Handbook (from memory)"
	var rows []published.Row
	for _, c := range []struct {
		name            string
		d, n            float64
		effective, core string // in
	}{
		{"5/16 BSF", 5. / 16, 22, "0.2834", "0.2543"},
		{"3/8 BSF", 3. / 8, 20, "0.3430", "0.3110"},
		{"7/16 BSF", 7. / 16, 18, "0.4019", "0.3664"},
		{"1/2 BSF", 1. / 2, 16, "0.4600", "0.4200"},
	} {
		g := must(ThreadGeometry(Whitworth, c.d*inch, inch/c.n))
		rows = append(rows,
			published.Row{Name: c.name + " effective diameter", Got: g.PitchDiameter / inch, Printed: c.effective, Source: source},
			published.Row{Name: c.name + " core diameter", Got: g.CoreDiameter / inch, Printed: c.core, Source: source})
	}
	published.Check(t, rows)
}

func TestMetricGeometryPublished(t *testing.T) {
	const source = "ISO 724:1993 and ISO 68-1, M12 and M12x1.5 (from memory)"
	m12, fine := must(ThreadGeometry(Metric, 12*mm, 1.75*mm)), must(ThreadGeometry(Metric, 12*mm, 1.5*mm))
	published.Check(t, []published.Row{
		{Name: "M12 d2, mm", Got: m12.PitchDiameter * 1e3, Printed: "10.863", Source: source},
		{Name: "M12 D1, mm", Got: m12.HoleMinor * 1e3, Printed: "10.106", Source: source},
		{Name: "M12 d3, mm", Got: m12.CoreDiameter * 1e3, Printed: "9.853", Source: source},
		{Name: "M12x1.5 d2, mm", Got: fine.PitchDiameter * 1e3, Printed: "11.026", Source: source},
		{Name: "M12x1.5 D1, mm", Got: fine.HoleMinor * 1e3, Printed: "10.376", Source: source},
	})
}

func TestGeometryAgreesWithAreas(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.Float64Range(3, 60).Draw(t, "d") * mm
		pitch := d * rapid.Float64Range(0.03, 0.3).Draw(t, "share")
		area := func(g ThreadResult) float64 {
			return math.Pi / 4 * math.Pow((g.PitchDiameter+g.CoreDiameter)/2, 2)
		}
		for form, want := range map[Form]float64{
			Metric:    must(StressArea(d, pitch)),
			Unified:   must(UnifiedStressArea(d, pitch)),
			Whitworth: must(WhitworthArea(MeanRule, d, pitch)),
		} {
			if got := area(must(ThreadGeometry(form, d, pitch))); !near(got, want, 1e-4) {
				t.Errorf("%s: %g from the diameters, %g from the area", form, got, want)
			}
		}
	})
}

func TestThreadShareOfADrillAndOfAWornHole(t *testing.T) {
	share := func(drill float64) float64 {
		return must(ThreadShare(ThreadShareParams{Metric, 12 * mm, 1.75 * mm, drill * mm}))
	}
	full := must(ThreadGeometry(Metric, 12*mm, 1.75*mm)).HoleMinor * 1e3
	if !near(share(full), 1, 1e-12) {
		t.Errorf("the basic hole gives %g, want the full depth", share(full))
	}
	if s := share(10.2); s < 0.94 || s > 0.96 { // (12 − 10.2)/(1.0825·1.75)
		t.Errorf("10.2 mm drill gives %g", s)
	}
	if share(11) >= share(10.5) {
		t.Error("a larger hole must leave less thread")
	}
	_, err := ThreadShare(ThreadShareParams{Metric, 12 * mm, 1.75 * mm, 12 * mm})
	refuses(t, "Drilled", err)
	_, err = ThreadShare(ThreadShareParams{"buttress", 12 * mm, 1.75 * mm, 11 * mm})
	refuses(t, "Form", err)
}
