package quantity

import (
	"errors"
	"testing"

	"pgregory.net/rapid"
)

func TestSpreadsAsTyped(t *testing.T) {
	for _, c := range []struct {
		text                string
		dim                 Dimension
		spread              Spread
		si, half, low, high float64
	}{
		{"12 mm ± 0.5 mm", Length, PlusMinus, 0.012, 0.0005, 0.0115, 0.0125},
		{"12 ± 0.5 mm", Length, PlusMinus, 0.012, 0.0005, 0.0115, 0.0125},
		{"(12 ± 0.5) mm", Length, PlusMinus, 0.012, 0.0005, 0.0115, 0.0125},
		{"12mm+/-0.5mm", Length, PlusMinus, 0.012, 0.0005, 0.0115, 0.0125},
		{"12 mm +- 20 thou", Length, PlusMinus, 0.012, 0.000508, 0.011492, 0.012508},
		{"12 mm ± 4 %", Length, PlusMinus, 0.012, 0.00048, 0.01152, 0.01248},
		{"475±50 N·m", Torque, PlusMinus, 475, 50, 425, 525},
		{"-2 mm ± 10 %", Length, PlusMinus, -0.002, 0.0002, -0.0022, -0.0018},
		{"80 °C ± 5 °C", Temperature, PlusMinus, 353.15, 5, 348.15, 358.15},
		{"80 °C ± 5 K", Temperature, PlusMinus, 353.15, 5, 348.15, 358.15},
		{"80 °C ± 9 Δ°F", Temperature, PlusMinus, 353.15, 5, 348.15, 358.15},
		{"176 ± 9 °F", Temperature, PlusMinus, 353.15, 5, 348.15, 358.15},
		{"-3 ± 5 °C", Temperature, PlusMinus, 270.15, 5, 265.15, 275.15},
		{"80 K ± 5 %", TemperatureDifference, PlusMinus, 80, 4, 76, 84},
		{"8 % ± 1 %", Share, PlusMinus, 0.08, 0.01, 0.07, 0.09},
		{"(8 ± 1) %", Number, PlusMinus, 0.08, 0.01, 0.07, 0.09},
		{"0.14 ± 0.02", Number, PlusMinus, 0.14, 0.02, 0.12, 0.16},
		{"60 ± 5 %", Money, PlusMinus, 60, 3, 57, 63},
		{"12 mm ± 0 mm", Length, PlusMinus, 0.012, 0, 0.012, 0.012},
		{"0.15..0.30 mm", Length, Range, 0.000225, 0.000075, 0.00015, 0.0003},
		{"0.15...0.30 mm", Length, Range, 0.000225, 0.000075, 0.00015, 0.0003},
		{"0.15…0.30 mm", Length, Range, 0.000225, 0.000075, 0.00015, 0.0003},
		{"0.15–0.30 mm", Length, Range, 0.000225, 0.000075, 0.00015, 0.0003},
		{"0.15 mm to 0.30 mm", Length, Range, 0.000225, 0.000075, 0.00015, 0.0003},
		{"180..220 HB", HardnessBrinell, Range, 200, 20, 180, 220},
		{"-3..5 °C", Temperature, Range, 274.15, 4, 270.15, 278.15},
		{"–3 – 5 °C", Temperature, Range, 274.15, 4, 270.15, 278.15},
		{"4..8 %", Share, Range, 0.06, 0.02, 0.04, 0.08},
		{"3..3 mm", Length, Range, 0.003, 0, 0.003, 0.003},
	} {
		q := read(t, c.text, c.dim)
		if q.Spread != c.spread || !near(q.SI, c.si) || !almost(q.HalfWidth, c.half) || !almost(q.Low, c.low) || !almost(q.High, c.high) {
			t.Errorf("%q gives %+v, want %+v", c.text, q, c)
		}
	}
}

// almost allows for the rounding of a difference.
func almost(got, want float64) bool {
	d := got - want
	return d <= 1e-12*(1+want) && -d <= 1e-12*(1+want)
}

func TestSpreadsRefused(t *testing.T) {
	for _, c := range []struct {
		text   string
		dim    Dimension
		reason Reason
		says   string
	}{
		{"12 mm ± -0.5 mm", Length, BadSpread, `"12 mm ± -0.5 mm": a spread is not negative: write 12 mm ± 0.5 mm`},
		{"± 4 %", Length, BadSpread, `"± 4 %": a spread needs a value before it, expected 12 mm ± 4 %`},
		{"12 mm ± 0.5", Length, NoUnit, `"12 mm ± 0.5": the spread has no unit: write 12 mm ± 0.5 mm`},
		{"12 ± 0.5", Length, NoUnit, `"12 ± 0.5": the unit is missing, expected a length such as 12 mm`},
		{"12 ± 4 %", Length, NoUnit, `"12 ± 4 %": the unit is missing, expected a length such as 12 mm`},
		{"80 ± 5 Δ°F", Temperature, NoUnit, `"80 ± 5 Δ°F": the unit is missing, expected a temperature such as 80 °C`},
		{"12 mm ± 0.5 N·m", Length, WrongDimension, `"12 mm ± 0.5 N·m": expected a length such as 12 mm, got a torque`},
		{"12 mm ± ", Length, NotANumber, `"12 mm ±": it does not start with a number; expected a length such as 12 mm`},
		{"0.14 ± 15 %", Number, AmbiguousText, `"0.14 ± 15 %": it is open whether the 0.14 is in % too: write 0.14 % ± 15 %, or both without %`},
		{"80 °C ± 4 %", Temperature, BadSpread, `"80 °C ± 4 %": a share of a temperature means nothing: write such as 80 °C ± 5 K`},
		{"-270 °C ± 10 K", Temperature, OutOfRange, `"-270 °C ± 10 K": this is below absolute zero, −273.15 °C, expected a temperature such as 80 °C`},
		{"0.30..0.15 mm", Length, BadSpread, `"0.30..0.15 mm": the lower end of a range comes first: write 0.15 mm..0.30 mm`},
		{"0.15 mm..0.30", Length, NoUnit, `"0.15 mm..0.30": the upper end has no unit: write 0.15..0.30 mm`},
		{"1,500..2,500 N", Force, AmbiguousText, `"1,500..2,500 N": 1,500 may be 1500 or 1.5: write 1500 or 1.5`},
		{"0.15...30 mm", Length, AmbiguousText, `"0.15...30 mm": three dots may hide a decimal point: write 0.15..30 mm or 0.15..0.30 mm`},
		{"10 mm +0.1/-0.2", Length, BadSpread, `"10 mm +0.1/-0.2": write a range, or a spread with two different sides, by its ends, low..high, each a length such as 12 mm`},
		{"10 mm - 12 mm", Length, BadSpread, `"10 mm - 12 mm": write a range, or a spread with two different sides, by its ends, low..high, each a length such as 12 mm`},
		{"(0.14) ± 15 %", Number, AmbiguousText, ""},
		{"1..2..3 mm", Length, NotANumber, ""},
		{"12 mm ± 1 mm ± 2 mm", Length, BadSpread, `"12 mm ± 1 mm ± 2 mm": it has more than one spread, expected 12 mm ± 4 %`},
		{"1e308 ± 1e308 N", Force, OutOfRange, ""},
	} {
		q, err := Parse(c.text, c.dim)
		var e *ParseError
		if !errors.As(err, &e) {
			t.Errorf("%q is read as %+v", c.text, q)
			continue
		}
		if e.Reason != c.reason || c.says != "" && e.Error() != c.says {
			t.Errorf("%q:\n got %s: %s\nwant %s: %s", c.text, e.Reason, e, c.reason, c.says)
		}
	}
}

func TestASpreadHoldsItsValue(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		dim := rapid.SampledFrom(numeric()).Draw(t, "dim")
		low := drawSI(t, dim, "low")
		high := drawSI(t, dim, "high")
		if low > high {
			low, high = high, low
		}
		text := Exact(low, dim) + ".." + Exact(high, dim)
		q, err := Parse(text, dim)
		if err != nil {
			t.Fatalf("%s: %v", text, err)
		}
		if q.Low != low || q.High != high || q.SI < low || q.SI > high {
			t.Fatalf("%s gives %+v", text, q)
		}
	})
}
