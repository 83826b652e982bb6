package weldplan

import (
	"math"
	"strings"
	"testing"

	"axlewright/axle"
	"axlewright/calc/weld"
	"axlewright/internal/published"
)

// sure is a steel without doubt.
func sure(c weld.Composition) steelBand { return steelBand{c, c, c, "test"} }

func sureHeat(q float64) Band { return Band{q, q, q} }

var castSteel = percent(0.25, 0.45, 0.90, 0.15, 0.05, 0, 0.20, 0.10)

func TestPreheatPublished(t *testing.T) {
	const source = "derived: EN 1011-2:2001, C.3 (formula read, figures worked out)"
	at := func(mm, ml, q float64) Preheat {
		p, err := preheatOf(sure(castSteel), length(mm).Number, ml*mlPer100g, sureHeat(q*1e6))
		if err != nil {
			t.Fatal(err)
		}
		return p
	}
	thin, thick := at(12, 3, 0.8), at(30, 10, 1.5)
	published.Check(t, []published.Row{
		{Name: "CET .3625, 12 mm, 3 ml, 0.8 kJ/mm: °C", Got: thin.High - zeroCelsius, Printed: "58.3", Source: source},
		{Name: "CET .3625, 30 mm, 10 ml, 1.5 kJ/mm: °C", Got: thick.High - zeroCelsius, Printed: "155.4", Source: source},
		{Name: "CE, %", Got: 100 * thin.CE, Printed: "0.4600", Source: source},
		{Name: "CET, %", Got: 100 * thin.CET, Printed: "0.3625", Source: source},
		{Name: "P_cm, %", Got: 100 * thin.Pcm, Printed: "0.3292", Source: source},
	})
	if thin.Low != thin.High || thin.Method != "B" || thin.OutsideRange {
		t.Errorf("without doubt: %+v", thin)
	}
}

func TestPreheatSpansItsDoubt(t *testing.T) {
	d := length(20)
	d.Low, d.High = 18e-3, 22e-3
	p, err := preheatOf(usualSteels["GE240"], d.Number, 5*mlPer100g, Band{0.8e6, 1e6, 1.3e6})
	if err != nil {
		t.Fatal(err)
	}
	middle, err := preheatOf(sure(usualSteels["GE240"].typical), length(20).Number, 5*mlPer100g, sureHeat(1e6))
	if err != nil {
		t.Fatal(err)
	}
	if !(p.Low < middle.Low && middle.High < p.High) {
		t.Errorf("%g to %g K round %g", p.Low, p.High, middle.Low)
	}
}

// Below 10 mm the method does not reach: its figure at 10 mm is a bound, and the
// plan says what applies instead.
func TestThinMetalIsBoundedAndSaysSo(t *testing.T) {
	four, err := preheatOf(sure(castSteel), length(4).Number, 5*mlPer100g, sureHeat(1.2e6))
	if err != nil {
		t.Fatal(err)
	}
	ten, _ := preheatOf(sure(castSteel), length(10).Number, 5*mlPer100g, sureHeat(1.2e6))
	if !four.OutsideRange || four.High != ten.High || ten.OutsideRange {
		t.Errorf("4 mm %+v, 10 mm %+v", four, ten)
	}
	for _, word := range []string{"begins at 10 mm", "instead", "Method A allows no preheat"} {
		if !strings.Contains(four.Reason, word) {
			t.Errorf("%q is not in %q", word, four.Reason)
		}
	}
	small, _ := preheatOf(sure(castSteel), length(4).Number, 5*mlPer100g, sureHeat(0.6e6))
	if !strings.Contains(small.Reason, "do not reach") {
		t.Errorf("method A begins at 1 kJ/mm: %q", small.Reason)
	}
}

func TestRichSteelIsBeyondTheMethod(t *testing.T) {
	p, err := preheatOf(usualSteels["G42CrMo4+QT"], length(20).Number, 5*mlPer100g, sureHeat(1e6))
	if err != nil {
		t.Fatal(err)
	}
	if p.Method != "none" || !strings.Contains(p.Reason, "engineer") {
		t.Errorf("0.42 %% carbon: %+v", p)
	}
}

// The usual analyses are ordered and the formulas take them.
func TestUsualSteelsAreSteels(t *testing.T) {
	for name, b := range usualSteels {
		var last float64
		for _, c := range []weld.Composition{b.low, b.typical, b.high} {
			cet, err := weld.CarbonEquivalentCET(c)
			if err != nil {
				t.Errorf("%s: %v", name, err)
			}
			if cet < last {
				t.Errorf("%s: CET falls from %g to %g", name, last, cet)
			}
			last = cet
			if _, err := weld.HardnessDuren(weld.HardnessParams{Steel: c, Time: 10}); err != nil {
				t.Errorf("%s: %v", name, err)
			}
		}
		if b.source == "" {
			t.Errorf("%s: no source", name)
		}
	}
	// The plate grades are in the tables of metals.
	for name := range usualSteels {
		if name != "cast steel" && nameOf(name) != name {
			t.Errorf("%s is called %s in the tables", name, nameOf(name))
		}
	}
}

func TestHydrogenCountedWith(t *testing.T) {
	w := work{job: &Job{}, filler: steelRod}
	published.Check(t, []published.Row{
		{Name: "scale C, ml/100 g", Got: func() float64 { w.job.Shop.Scale = weld.ScaleC; return w.hydrogen() / mlPer100g }(), Printed: "10", Source: "EN 1011-2:2001, hydrogen scales: C is 5 to 10 ml/100 g (read); the top is counted"},
		{Name: "scale E", Got: func() float64 { w.job.Shop.Scale = weld.ScaleE; return w.hydrogen() / mlPer100g }(), Printed: "3", Source: "EN 1011-2:2001, hydrogen scales (read)"},
	})
	w.job.Shop.Hydrogen.Number = axle.Number{Value: 4 * mlPer100g, High: 6 * mlPer100g, Origin: axle.Maker}
	if got := w.hydrogen(); math.Abs(got-6*mlPer100g) > 1e-12 {
		t.Errorf("4 ± 2 ml/100 g: %g", got/mlPer100g)
	}
}
