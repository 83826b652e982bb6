package weldplan

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"axlewright/calc/weld"
	"axlewright/internal/published"
)

func TestAmpsTablePublished(t *testing.T) {
	const source = "handbook table of TIG fillets in carbon steel, read for one product"
	at := func(mm float64) Band { return ampsFor(TIG, mm*1e-3, 3*mm*1e-3, false, false, false, Flat).Table }
	published.Check(t, []published.Row{
		{Name: "1.6 mm, least", Got: at(1.6).Low, Printed: "50", Source: source},
		{Name: "1.6 mm, most", Got: at(1.6).High, Printed: "70", Source: source},
		{Name: "3.2 mm, least", Got: at(3.2).Low, Printed: "90", Source: source},
		{Name: "3.2 mm, most", Got: at(3.2).High, Printed: "120", Source: source},
		{Name: "4.8 mm, least", Got: at(4.8).Low, Printed: "135", Source: source},
		{Name: "4.8 mm, most", Got: at(4.8).High, Printed: "175", Source: source},
		{Name: "6.0 mm, least", Got: at(6).Low, Printed: "170", Source: source},
		{Name: "6.0 mm, most", Got: at(6).High, Printed: "200", Source: source},
		{Name: "1 A to the thou at 3 mm", Got: ampsFor(TIG, 3e-3, 9e-3, false, false, false, Flat).Rule, Printed: "118", Source: "trade rule, by hand: 3/0.0254"},
		{Name: "1 A to the thou at 6 mm", Got: ampsFor(TIG, 6e-3, 18e-3, false, false, false, Flat).Rule, Printed: "236", Source: "trade rule, by hand: 6/0.0254"},
		{Name: "thin casting, most at 3.2 mm", Got: ampsFor(TIG, 3.2e-3, 5e-3, false, false, false, Flat).High, Printed: "108", Source: "trade custom: 10 % less than 120 A"},
		{Name: "thin casting, least at 3.2 mm", Got: ampsFor(TIG, 3.2e-3, 5e-3, false, false, false, Flat).Low, Printed: "67.5", Source: "trade custom: 25 % less than 90 A"},
	})
}

func TestAmpsLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		process := rapid.SampledFrom([]Process{TIG, MAG, Stick}).Draw(t, "process")
		plate := rapid.Float64Range(2e-3, 6e-3).Draw(t, "plate")
		wall := rapid.Float64Range(3e-3, 30e-3).Draw(t, "wall")
		a := ampsFor(process, plate, wall, false, false, false, Flat)
		if !(0 < a.Low && a.Low < a.First && a.First < a.High) {
			t.Fatalf("band %+v", a.Band)
		}
		if a.NoTable || len(a.Reasons) == 0 || a.Source == "" {
			t.Fatalf("%+v", a)
		}
		if thicker := ampsFor(process, plate*1.1, wall*1.1, false, false, false, Flat); thicker.First < a.First {
			t.Fatalf("thicker takes less: %g after %g", thicker.First, a.First)
		}
		if sink := ampsFor(process, plate, wall, false, false, true, Flat); sink.High <= a.High {
			t.Fatal("a heat sink takes no more")
		}
		if up := ampsFor(process, plate, wall, false, false, false, Vertical); up.First >= a.First {
			t.Fatal("vertical takes no less")
		}
	})
	if out := ampsFor(TIG, 12e-3, 20e-3, false, false, false, Flat); !out.NoTable {
		t.Error("12 mm is in no table of TIG")
	}
}

func TestArcPublished(t *testing.T) {
	const iec = "IEC 60974-1, load lines (read in a handbook)"
	published.Check(t, []published.Row{
		{Name: "TIG at 150 A, V", Got: arcVolts(TIG, 150), Printed: "16", Source: iec},
		{Name: "MAG at 200 A, V", Got: arcVolts(MAG, 200), Printed: "24", Source: iec},
		{Name: "stick at 100 A, V", Got: arcVolts(Stick, 100), Printed: "24", Source: iec},
	})
	s := Size{Area: 6e-6, Passes: 1}
	a, err := arcOf(TIG, Band{140, 140, 140}, s, Lap, 3e-3, 12e-3, Band{293.15, 293.15, 293.15})
	if err != nil {
		t.Fatal(err)
	}
	published.Check(t, []published.Row{
		{Name: "heat of TIG at 140 A and 1.7 mm/s, kJ/mm", Got: a.Heat.First / 1e6, Printed: "0.771", Source: "derived: EN 1011-1, 0.6·15.6·140/1.7 by hand"},
	})
	if !(a.Heat.Low < a.Heat.First && a.Heat.First < a.Heat.High) {
		t.Errorf("the doubt of the speed is lost: %+v", a.Heat)
	}
	if !(a.Plate.First > a.Wall.First) {
		t.Error("the thin plate cools faster than the thick wall")
	}
	twice := s
	twice.Area *= 2
	slow, _ := arcOf(TIG, Band{140, 140, 140}, twice, Lap, 3e-3, 12e-3, Band{293.15, 293.15, 293.15})
	near(t, "twice the bead at half the speed", slow.Heat.First, 2*a.Heat.First, 1e-12)
}

func TestSizeOfARun(t *testing.T) {
	l := straight(0, 0, 0.1, 0)
	run := &Run{Joint: Lap, Wall: length(12)}
	s, err := sizeOf(run, 3e-3, l, TIG, 25e-3, true)
	if err != nil {
		t.Fatal(err)
	}
	published.Check(t, []published.Row{
		{Name: "leg on a 3 mm plate, mm", Got: s.Leg * 1e3, Printed: "3", Source: "trade custom: 3 to 4 mm on 3 mm plate; never above the edge"},
		{Name: "throat, mm", Got: s.Throat * 1e3, Printed: "2.12", Source: "geometry: 3/√2"},
		{Name: "beads of 25 mm at most in 100 mm", Got: float64(s.Pieces), Printed: "4", Source: "trade custom: cold practice, 25 mm"},
	})
	if !s.TooThin {
		t.Error("a throat of 2.1 mm is counted by EN 1993-1-8")
	}
	drawn := *run
	drawn.Leg = length(8)
	big, err := sizeOf(&drawn, 8e-3, l, TIG, 50e-3, true)
	if err != nil {
		t.Fatal(err)
	}
	if big.Passes < 3 || big.TooThin {
		t.Errorf("8 mm leg by TIG in %d passes", big.Passes)
	}
	gap := drawn
	gap.Gap = length(1)
	if g, _ := sizeOf(&gap, 8e-3, l, TIG, 50e-3, true); g.Area <= big.Area {
		t.Error("a gap takes no more metal")
	}
	near(t, "beads add up", float64(s.Pieces)*s.Piece, 0.1, 1e-12)
}

func TestToeHardnessHoldsBothFormulas(t *testing.T) {
	steel := sure(percent(0.18, 0.35, 1.30))
	toe := toeOf("plate", "structural steel", steel, true, Cooling{Band: Band{5, 5, 5}}, false)
	p := weld.HardnessParams{Steel: steel.typical, Time: 5}
	duren, err := weld.HardnessDuren(p)
	if err != nil {
		t.Fatal(err)
	}
	yurioka, err := weld.HardnessYurioka(p)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "between the two formulas", toe.Middle, (duren.Hardness+yurioka.Hardness)/2, 1e-12)
	published.Check(t, []published.Row{
		{Name: "two standard deviations, HV", Got: (toe.High - toe.Low) / 2, Printed: "56", Source: "Nicholas and Abson, TWI, 2008: ± 28 HV, one standard deviation"},
	})
	if !toe.Above || toe.Low > hardnessLimit {
		t.Errorf("380 HV lies within %g to %g, Above is %v", toe.Low, toe.High, toe.Above)
	}
	if soft := toeOf("plate", "structural steel", steel, true, Cooling{Band: Band{60, 60, 60}}, false); soft.Above || soft.Middle >= toe.Middle {
		t.Errorf("slow cooling: %+v", soft)
	}
	iron := toeOf("casting", "ductile iron", steelBand{}, false, Cooling{}, false)
	if iron.Formula || iron.Low != 500 || iron.High != 700 {
		t.Errorf("iron: %+v", iron)
	}
	if none := toeOf("plate", "structural steel", steelBand{}, false, Cooling{}, false); none.High != 0 || none.Note == "" {
		t.Errorf("a steel nobody knows: %+v", none)
	}
}

func TestConsumablesPublished(t *testing.T) {
	const source = "common practice, no source: 1.2 m of 5 mm fillet is 118 g of steel"
	s := Size{Area: 12.5e-6, Length: 1.2, Passes: 1, Pieces: 24}
	c, err := consumablesOf(TIG, steelRod, s, 2e-3, 5e-3)
	if err != nil {
		t.Fatal(err)
	}
	published.Check(t, []published.Row{
		{Name: "laid without the crown, g", Got: c.Laid / (1 + overfill) * 1e3, Printed: "118", Source: source},
		{Name: "arc, min", Got: c.Arc / 60, Printed: "10", Source: "by hand: 1.2 m at 2 mm/s"},
		{Name: "gas at 7 l/min, l", Got: c.Gas * 1e3, Printed: "92.4", Source: "by hand: 7·(10 + 24·8/60)"},
		{Name: "gas at 3.2 mm, l/min", Got: gasFlow(TIG, 3.2e-3) / litre, Printed: "6", Source: "handbook: 5 to 7 l/min"},
	})
	near(t, "hands", c.Hands*arcShare, c.Arc, 1e-12)
	if gasFlow(Stick, 3e-3) != 0 {
		t.Error("stick welding takes gas")
	}
	if math.IsNaN(c.Rod) || c.Rod <= 0 {
		t.Errorf("rod %g", c.Rod)
	}
}
