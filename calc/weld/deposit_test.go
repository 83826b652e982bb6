package weld

import (
	"math"
	"testing"

	"axlewright/internal/published"
)

func TestDepositPublished(t *testing.T) {
	const source = "common practice, no source: 1.2 m of 5 mm fillet, steel of 7850 kg/m³"
	area := must(FilletArea(FilletShape{5 * mm, 5 * mm, 90 * degree}))
	r := must(Deposit(DepositParams{Area: area, Length: 1.2, Density: 7850, Efficiency: 0.95, Diameter: 2.4 * mm, Runs: 1, Speed: 2 * mm}))
	published.Check(t, []published.Row{
		{Name: "volume, cm³", Got: r.Volume * 1e6, Printed: "15", Source: source},
		{Name: "mass, g", Got: r.Mass * 1e3, Printed: "118", Source: source},
	})
	near(t, "arc time", r.ArcTime, 600, 1e-12)
	near(t, "filler", r.FillerMass*0.95, r.Mass, 1e-12)
	near(t, "rod", r.FillerLength*math.Pi/4*2.4*2.4e-6, r.Volume/0.95, 1e-12)
}

func TestDepositRefusalsAndEfficiencies(t *testing.T) {
	good := DepositParams{Area: 1e-5, Length: 1, Density: 7850, Efficiency: 0.9, Diameter: 1 * mm, Runs: 2, Speed: 5 * mm}
	bad := good
	bad.Runs = 0
	_, err := Deposit(bad)
	refused(t, "Runs", err)
	bad = good
	bad.Efficiency = 95
	_, err = Deposit(bad)
	refused(t, "Efficiency", err)
	_, err = FilletArea(FilletShape{5 * mm, 5 * mm, 45 * degree})
	refused(t, "Angle", err)
	_, err = FillerEfficiency("gas")
	refused(t, "process", err)
	for _, p := range processes {
		good.Efficiency = must(FillerEfficiency(p))
		if r := must(Deposit(good)); r.FillerMass < r.Mass {
			t.Errorf("%s: more laid than used", p)
		}
	}
}

func TestFilletSizePublished(t *testing.T) {
	const source = "AWS D1.1, minimum fillet sizes by thickness, metric (from memory)"
	least := func(thickness float64) float64 {
		return must(FilletSize(FilletSizeParams{Thinner: 3 * mm, Thicker: thickness * mm})).LeastLeg / mm
	}
	edge := func(thickness float64) float64 {
		return must(FilletSize(FilletSizeParams{thickness * mm, 20 * mm, true, true})).GreatestLeg / mm
	}
	published.Check(t, []published.Row{
		{Name: "6 mm", Got: least(6), Printed: "3", Source: source},
		{Name: "10 mm", Got: least(10), Printed: "5", Source: source},
		{Name: "16 mm", Got: least(16), Printed: "6", Source: source},
		{Name: "25 mm", Got: least(25), Printed: "8", Source: source},
		{Name: "edge of 5 mm", Got: edge(5), Printed: "5", Source: "AWS D1.1, maximum fillet size along edges (from memory)"},
		{Name: "edge of 10 mm", Got: edge(10), Printed: "8", Source: "AWS D1.1, maximum fillet size along edges (from memory)"},
	})
}

// A 3 mm plate on a 12 mm casting: the chill asks for more than the plate's edge can
// take, unless the process is low in hydrogen.
func TestThinPlateOnThickCasting(t *testing.T) {
	p := FilletSizeParams{Thinner: 3 * mm, Thicker: 12 * mm, AtEdge: true}
	if r := must(FilletSize(p)); !r.Contradicted {
		t.Errorf("wet process: %+v", r)
	}
	p.LowHydrogen = true
	r := must(FilletSize(p))
	if r.Contradicted {
		t.Errorf("low hydrogen: %+v", r)
	}
	near(t, "leg to start with", r.StartingLeg, 3*mm, 1e-12) // 0.7·3 = 2.1 is below the least
	_, err := FilletSize(FilletSizeParams{Thinner: 5 * mm, Thicker: 4 * mm})
	refused(t, "Thicker", err)
}
