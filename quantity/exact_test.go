package quantity

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// numeric returns the dimensions that carry a number.
func numeric() []Dimension {
	var dims []Dimension
	for _, d := range All() {
		if d != Name {
			dims = append(dims, d)
		}
	}
	return dims
}

// drawSI draws any finite number: often of a size that a workshop meets,
// sometimes from the ends of what a float64 holds.
func drawSI(t *rapid.T, dim Dimension, label string) float64 {
	x := rapid.OneOf(
		rapid.Float64Range(-1e3, 1e3),
		rapid.Float64Range(-1e12, 1e12),
		rapid.Float64Range(-1e-3, 1e-3),
		rapid.Float64Range(-math.MaxFloat64, math.MaxFloat64),
		rapid.SampledFrom([]float64{0, math.SmallestNonzeroFloat64, math.MaxFloat64, -math.MaxFloat64, 2.2250738585072014e-308}),
	).Draw(t, label)
	if dim == Temperature {
		return math.Abs(x)
	}
	return x
}

func TestExactReadsBackTheSameNumber(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		dim := rapid.SampledFrom(numeric()).Draw(t, "dim")
		si := drawSI(t, dim, "si")
		text := Exact(si, dim)
		q, err := Parse(text, dim)
		if err != nil || q.SI != si {
			t.Fatalf("%g as %s is stored as %q and read as %g, %v", si, dim, text, q.SI, err)
		}
		if strings.ContainsAny(text, ",") {
			t.Fatalf("%q has separators", text)
		}
	})
}

func TestExactIsShort(t *testing.T) {
	for _, c := range []struct {
		si   float64
		dim  Dimension
		want string
	}{
		{0.0002032, Length, "0.2032 mm"},
		{0.0002, Length, "0.2 mm"},
		{0.012, Length, "12 mm"},
		{1.2, Length, "1.2 m"},
		{90, Torque, "90 N·m"},
		{55100, Force, "55.1 kN"},
		{70.6, Force, "70.6 N"},
		{210e9, Pressure, "210 GPa"},
		{830e6, Pressure, "830 MPa"},
		{353.15, Temperature, "80 °C"},
		{270.15, Temperature, "-3 °C"},
		{1e-20, Temperature, "1e-20 K"}, // in °C it would need 23 digits
		{80, TemperatureDifference, "80 K"},
		{math.Pi / 3, Angle, "60°"},
		{0.08, Number, "0.08"},
		{0.08, Share, "8 %"},
		{5e-5, HydrogenContent, "5 ml/100g"},
		{math.Copysign(0, -1), Length, "0 mm"},
		{math.NaN(), Length, ""},
		{math.Inf(1), Length, ""},
		{1, Name, ""},
	} {
		if got := Exact(c.si, c.dim); got != c.want {
			t.Errorf("Exact(%g, %s) = %q, want %q", c.si, c.dim, got, c.want)
		}
	}
}

func TestASpreadIsStoredWhole(t *testing.T) {
	for text, want := range map[string]string{
		"12 ± 0.5 mm":    "12 mm ± 0.5 mm",
		"12 mm ± 4 %":    "12 mm ± 0.48 mm",
		"0.15..0.30 mm":  "0.15 mm..0.3 mm",
		"1.2 m ± 5 mm":   "1.2 m ± 5 mm",
		"1-1/4 in":       "31.75 mm",
		"0 mm ± 10 thou": "0 mm ± 0.254 mm",
	} {
		if got := read(t, text, Length).Exact(); got != want {
			t.Errorf("%q is stored as %q, want %q", text, got, want)
		}
	}
	if got := read(t, "80 ± 5 °C", Temperature).Exact(); got != "80 °C ± 5 K" {
		t.Errorf("got %q", got)
	}
}
