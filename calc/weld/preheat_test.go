package weld

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"
	"pgregory.net/rapid"
)

// percent turns an analysis in per cent into mass fractions.
func percent(c Composition) Composition {
	for _, f := range []*float64{&c.Carbon, &c.Silicon, &c.Manganese, &c.Chromium, &c.Molybdenum, &c.Vanadium, &c.Nickel, &c.Copper, &c.Niobium, &c.Boron} {
		*f /= 100
	}
	return c
}

// castSteel is a weldable cast steel.
var castSteel = percent(Composition{Carbon: 0.25, Silicon: 0.45, Manganese: 0.90, Chromium: 0.15, Molybdenum: 0.05, Nickel: 0.20, Copper: 0.10})

func TestCarbonEquivalentsPublished(t *testing.T) {
	const derived = "derived: EN 1011-2:2001 and Ito and Bessyo, formulas"
	plate := percent(Composition{Carbon: 0.18, Manganese: 1.20, Chromium: 0.20, Molybdenum: 0.10, Nickel: 0.15, Copper: 0.20})
	published.Check(t, []published.Row{
		{Name: "CE(IIW) of C .18 Mn 1.20 Cr .20 Mo .10 Ni .15 Cu .20, %", Got: 100 * must(CarbonEquivalentIIW(plate)), Printed: "0.46", Source: "EN 1011-2:2001, C.2.1; figure of a worked example whose title is not recorded"},
		{Name: "CE(IIW) of a cast steel, %", Got: 100 * must(CarbonEquivalentIIW(castSteel)), Printed: "0.4600", Source: derived},
		{Name: "CET of a cast steel, %", Got: 100 * must(CarbonEquivalentCET(castSteel)), Printed: "0.3625", Source: derived},
		{Name: "P_cm of a cast steel, %", Got: 100 * must(CarbonEquivalentPcm(castSteel)), Printed: "0.3292", Source: derived},
	})
	_, err := CarbonEquivalentCET(Composition{Carbon: 0.18, Manganese: 1.2}) // per cent typed as fraction
	refused(t, "Carbon", err)
	_, err = CarbonEquivalentIIW(Composition{Manganese: 0.012})
	refused(t, "Carbon", err)
	near(t, "weld metal governs", must(GoverningCET(GoverningParams{0.0030, 0.0029})), 0.0032, 1e-12)
	near(t, "parent governs", must(GoverningCET(GoverningParams{0.0036, 0.0029})), 0.0036, 1e-12)
}

func TestPreheatPublished(t *testing.T) {
	const source = "derived: EN 1011-2:2001, C.3 (formula read, figures worked out)"
	at := func(cet, d, hd, q float64) PreheatResult {
		return must(Preheat(PreheatParams{cet / 100, d * mm, hd * mlPer100g, q * kJperMm}))
	}
	celsius := func(r PreheatResult) float64 { return r.Temperature - zeroCelsius }
	r := at(0.34, 20, 5, 1)
	published.Check(t, []published.Row{
		{Name: "CET .34, 20 mm, 5 ml, 1 kJ/mm: °C", Got: celsius(r), Printed: "86.5", Source: source},
		{Name: "CET .3625, 12 mm, 3 ml, .8 kJ/mm: °C", Got: celsius(at(0.3625, 12, 3, 0.8)), Printed: "58.3", Source: source},
		{Name: "CET .3625, 30 mm, 10 ml, 1.5 kJ/mm: °C", Got: celsius(at(0.3625, 30, 10, 1.5)), Printed: "155.4", Source: source},
		{Name: "share of the steel, K", Got: r.FromSteel, Printed: "105.0", Source: source},
		{Name: "share of the thickness, K", Got: r.FromThickness, Printed: "-27.4", Source: source},
		{Name: "share of the hydrogen, K", Got: r.FromHydrogen, Printed: "8.90", Source: source},
		{Name: "share of the heat input, K", Got: r.FromHeatInput + 1, Printed: "1.00", Source: source},
	})
}

func TestPreheatIsTheSumOfItsSharesAndMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := PreheatParams{
			rapid.Float64Range(0.0021, 0.0049).Draw(t, "cet"), rapid.Float64Range(11, 85).Draw(t, "d") * mm,
			rapid.Float64Range(1.1, 19).Draw(t, "hd") * mlPer100g, rapid.Float64Range(0.6, 3.8).Draw(t, "q") * kJperMm,
		}
		r := must(Preheat(p))
		sum := r.FromSteel + r.FromThickness + r.FromHydrogen + r.FromHeatInput
		if math.Abs(sum-(r.Temperature-zeroCelsius)) > 1e-9 {
			t.Fatalf("shares sum to %g, preheat %g", sum, r.Temperature-zeroCelsius)
		}
		for name, f := range map[string]func(*PreheatParams){
			"CET":       func(q *PreheatParams) { q.CET *= 1.01 },
			"thickness": func(q *PreheatParams) { q.Thickness *= 1.05 },
			"hydrogen":  func(q *PreheatParams) { q.Hydrogen *= 1.05 },
			"less heat": func(q *PreheatParams) { q.HeatInput *= 0.95 },
		} {
			q := p
			f(&q)
			if must(Preheat(q)).Temperature <= r.Temperature {
				t.Fatalf("%s does not raise the preheat", name)
			}
		}
	})
}

func TestPreheatRefusesWhatTheStandardDoesNotCover(t *testing.T) {
	good := PreheatParams{0.0034, 20 * mm, 5 * mlPer100g, kJperMm}
	for param, p := range map[string]PreheatParams{
		"CET":       {0.34, good.Thickness, good.Hydrogen, good.HeatInput},
		"Thickness": {good.CET, 3 * mm, good.Hydrogen, good.HeatInput}, // thin plate
		"Hydrogen":  {good.CET, good.Thickness, 25 * mlPer100g, good.HeatInput},
		"HeatInput": {good.CET, good.Thickness, good.Hydrogen, 0.4 * kJperMm},
	} {
		_, err := Preheat(p)
		refused(t, param, err)
	}
}

func TestHydrogenScalesPublished(t *testing.T) {
	// EN 1011-2:2001, hydrogen scales: A >15, B 10 to 15, C 5 to 10, D 3 to 5, E up to 3 ml/100 g
	for _, c := range []struct {
		hd   float64
		want Scale
	}{{0, ScaleE}, {3, ScaleE}, {3.1, ScaleD}, {5, ScaleD}, {5.1, ScaleC}, {10, ScaleC}, {10.1, ScaleB}, {15, ScaleB}, {15.1, ScaleA}, {40, ScaleA}} {
		r := must(HydrogenScale(c.hd * mlPer100g))
		if r.Scale != string(c.want) {
			t.Errorf("%g ml/100 g: scale %s, want %s", c.hd, r.Scale, c.want)
		}
		if hd := c.hd * mlPer100g; hd < r.Above || (r.UpTo > 0 && hd > r.UpTo*(1+1e-9)) {
			t.Errorf("%g ml/100 g outside the bounds of its scale %+v", c.hd, r)
		}
	}
	_, err := HydrogenScale(5) // ml/100 g given for m³/kg
	refused(t, "hydrogen", err)
}

func TestThicknessWithoutPreheatPublished(t *testing.T) {
	const source = "EN 1011-2:2001, table C.1 (read)"
	var rows []published.Row
	for _, c := range []struct {
		hd, ce, q float64
		printed   string
	}{
		{20, 0.49, 1, "25"}, {12, 0.49, 1, "30"}, {8, 0.49, 1, "35"}, {4, 0.49, 1, "50"}, {2, 0.49, 1, "60"},
		{20, 0.49, 2, "50"}, {12, 0.49, 2, "55"}, {8, 0.49, 2, "65"}, {4, 0.49, 2, "100"},
		{20, 0.43, 1, "40"}, {12, 0.43, 1, "50"}, {8, 0.43, 1, "60"}, {4, 0.43, 1, "100"},
		{20, 0.43, 2, "80"}, {12, 0.43, 2, "90"}, {8, 0.43, 2, "100"},
		{8, 0.45, 1.9, "35"}, // no better than the row for 0.49 % and 1.0 kJ/mm
	} {
		got := must(ThicknessWithoutPreheat(ColdLimitParams{c.ce / 100, c.hd * mlPer100g, c.q * kJperMm}))
		rows = append(rows, published.Row{Name: "greatest combined thickness, mm", Got: got / mm, Printed: c.printed, Source: source})
	}
	published.Check(t, rows)
	_, err := ThicknessWithoutPreheat(ColdLimitParams{0.0050, 5e-5, 1e6})
	refused(t, "CarbonEquivalent", err)
	_, err = ThicknessWithoutPreheat(ColdLimitParams{0.0040, 5e-5, 0.9e6})
	refused(t, "HeatInput", err)
	near(t, "tee of 5 on 12", must(CombinedThickness([]float64{5 * mm, 12 * mm, 12 * mm})), 29*mm, 1e-12)
	_, err = CombinedThickness(nil)
	var r *check.RangeError
	if !errors.As(err, &r) {
		t.Errorf("no parts: %v", err)
	}
}
