package quantity

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestFormatInBothSystems(t *testing.T) {
	for _, c := range []struct {
		si   float64
		dim  Dimension
		want string
	}{
		{0.0002, Length, "0.20 mm (8 thou)"},
		{0.00125, Length, "1.25 mm (49 thou)"},
		{0.00005, Length, "0.05 mm (2 thou)"},
		{0.0000762, Length, "0.076 mm (3 thou)"},
		{0.000017, Length, "0.017 mm (0.7 thou)"},
		{-0.0002, Length, "−0.20 mm (−8 thou)"},
		{0, Length, "0.00 mm (0 thou)"},
		{0.0127, Length, "12.70 mm (0.500 in)"},
		{0.11846, Length, "118.46 mm (4.664 in)"},
		{1.2, Length, "1.200 m (3.94 ft)"},
		{800e3, Length, "800.0 km (497.1 mi)"},
		{27, Torque, "27 N·m (20 lbf·ft)"},
		{2.26, Torque, "2.3 N·m (20 lbf·in)"},
		{0.565, Torque, "0.57 N·m (5 lbf·in)"},
		{3872, Torque, "3,872 N·m (2,856 lbf·ft)"},
		{55100, Force, "55.1 kN (12,400 lbf)"},
		{70.6, Force, "70.6 N (15.9 lbf)"},
		{830e6, Pressure, "830 MPa (120 ksi)"},
		{60e6, Pressure, "60 MPa (8.7 ksi)"},
		{210e9, Pressure, "210 GPa (30.5 Msi)"},
		{207e3, Pressure, "207 kPa (30 psi)"},
		{1450, Mass, "1,450 kg (3,197 lb)"},
		{28.5, Mass, "28.5 kg (62.8 lb)"},
		{0.118, Mass, "118 g (4.2 oz)"},
		{353.15, Temperature, "80 °C (176 °F)"},
		{263.15, Temperature, "−10 °C (14 °F)"},
		{80, TemperatureDifference, "80 K (144 Δ°F)"},
		{math.Pi / 3, Angle, "60°"},
		{20.6 * math.Pi / 180, Angle, "20.6°"},
		{0.05 / 140, Angle, "1.23′"},
		{math.Pi, AngularSpeed, "30 rpm"},
		{3 / 3.6, Speed, "3 km/h (1.9 mph)"},
		{0.002, Speed, "120 mm/min (4.7 in/min)"},
		{1500, Time, "25 min"},
		{52200, Time, "14.5 h"},
		{84.3e-6, Area, "84.3 mm² (0.131 in²)"},
		{2.5e-3, Volume, "2.5 l (2.6 US qt)"},
		{15e-6, Volume, "15 cm³ (0.915 in³)"},
		{120e6, Stiffness, "120 kN/mm (685,000 lbf/in)"},
		{1e6, HeatInput, "1.00 kJ/mm (25 kJ/in)"},
		{5e-5, HydrogenContent, "5.0 ml/100g"},
		{27, Energy, "27 J (20 ft·lbf)"},
		{75e3, Power, "75 kW (101 hp)"},
		{7850, Density, "7.85 g/cm³ (0.284 lb/in³)"},
		{350, HardnessVickers, "350 HV"},
		{0.83, Share, "83 %"},
		{0.0045, Share, "0.45 %"},
		{46.0 / 13, Number, "3.538"},
		{41, Number, "41"},
		{2e6, Number, "2,000,000"},
		{1250, Money, "1,250.00"},
		{1e-12, Length, "1.0×10⁻⁹ mm (4×10⁻⁸ thou)"},
		{math.NaN(), Torque, "not a number N·m (not a number lbf·ft)"},
		{math.Inf(-1), Number, "−∞"},
		{3, Name, ""},
	} {
		if got := Format(c.si, c.dim); got != c.want {
			t.Errorf("Format(%g, %s) = %q, want %q", c.si, c.dim, got, c.want)
		}
	}
}

func TestFormatDigitsShowsNoMoreThanIsKnown(t *testing.T) {
	for _, c := range []struct {
		si     float64
		dim    Dimension
		digits int
		want   string
	}{
		{55100, Force, 2, "55 kN (12,000 lbf)"},
		{3872, Torque, 2, "3,900 N·m (2,900 lbf·ft)"},
		{0.8059, Length, 3, "806 mm (31.7 in)"},
		{0.0002, Length, 1, "0.2 mm (8 thou)"},
		{9.96e3, Force, 2, "10 kN (2,200 lbf)"}, // rounds up to one place more
		{353.15, Temperature, 2, "80 °C (176 °F)"},
		{0.8333, Number, 2, "0.83"},
		{0.8333, Number, 0, "0.8"},
		{0, Length, 2, "0.0 mm (0.0 thou)"},
	} {
		if got := FormatDigits(c.si, c.dim, c.digits); got != c.want {
			t.Errorf("FormatDigits(%g, %s, %d) = %q, want %q", c.si, c.dim, c.digits, got, c.want)
		}
	}
}

func TestSpreadsAndRangesInPrint(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{FormatSpread(55100, 1200, Force), "55.1 ± 1.2 kN (12,400 ± 300 lbf)"},
		{FormatSpread(55100, 3000, Force), "55 ± 3 kN (12,400 ± 700 lbf)"},
		{FormatSpread(353.15, 5, Temperature), "80 ± 5 °C (176 ± 9 °F)"},
		{FormatSpread(0.08, 0.01, Share), "8.0 % ± 1.0 %"},
		{FormatSpread(math.Pi/9, math.Pi/90, Angle), "20° ± 2°"},
		{FormatSpread(0.012, 0, Length), "12.00 mm (0.472 in)"},
		{FormatRange(0.00015, 0.0003, Length), "0.15 to 0.30 mm (6 to 12 thou)"},
		{FormatRange(425, 525, Torque), "425 to 525 N·m (313 to 387 lbf·ft)"},
		{FormatRange(0.04, 0.08, Share), "4 % to 8 %"},
		{Spelled(Format(27, Torque)), "27 N·m (20 lbf·foot)"},
		{Spelled(Format(2.26, Torque)), "2.3 N·m (20 lbf·inch)"},
		{Percent(0.83), "83 %"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

// A reading is shown to the digits that were typed, in whichever system.
func TestAQuantityPrintsAsTyped(t *testing.T) {
	for _, c := range []struct {
		text string
		dim  Dimension
		want string
	}{
		{"8 thou", Length, "0.20 mm (8 thou)"},
		{"7.5 thou", Length, "0.19 mm (7.5 thou)"},
		{"0.20 mm", Length, "0.20 mm (8 thou)"},
		{"0.2 mm", Length, "0.2 mm (8 thou)"},
		{"72.00 mm", Length, "72.00 mm (2.835 in)"},
		{"72 mm", Length, "72 mm (2.83 in)"},
		{"7/16 in", Length, "11.11 mm (0.438 in)"},
		{"2 ft", Length, "609.60 mm (24.000 in)"},
		{"20 lbf in", Torque, "2.3 N·m (20 lbf·in)"},
		{"66 lbf ft", Torque, "89 N·m (66 lbf·ft)"},
		{"30 psi", Pressure, "207 kPa (30 psi)"},
		{"1450 kg", Mass, "1,450 kg (3,197 lb)"},
		{"176 °F", Temperature, "80 °C (176 °F)"},
		{"60 deg", Angle, "60°"},
		{"0.15..0.30 mm", Length, "0.15 to 0.30 mm (6 to 12 thou)"},
		{"1/8..3/16 in", Length, "3.18 to 4.76 mm (0.125 to 0.188 in)"},
		{"12 ± 0.5 mm", Length, "12.0 ± 0.5 mm (0.47 ± 0.02 in)"},
		{"8 %", Share, "8 %"},
		{"350 HV10", HardnessVickers, "350 HV"},
	} {
		if got := read(t, c.text, c.dim).String(); got != c.want {
			t.Errorf("%q prints as %q, want %q", c.text, got, c.want)
		}
	}
	if got := (Quantity{SI: 0.0002, Dim: Length}).String(); got != "0.20 mm (8 thou)" {
		t.Errorf("a computed quantity prints as %q", got)
	}
}

// What people read must be the number it was printed from, in both systems, to
// the digits shown.
func TestFormatTellsTheTruthInBothSystems(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		dim := rapid.SampledFrom(numeric()).Draw(t, "dim")
		si := rapid.OneOf(rapid.Float64Range(1e-4, 1e4), rapid.Float64Range(-1e10, 1e10), rapid.Float64Range(-1e-6, 1e-6)).Draw(t, "si")
		if dim == Temperature {
			si = math.Abs(si) + 1 // rounding may go below absolute zero at zero itself
		}
		printed := Format(si, dim)
		metric, other, two := strings.Cut(printed, " (")
		texts := []string{metric}
		if two {
			texts = append(texts, strings.TrimSuffix(other, ")"))
		}
		for _, text := range texts {
			q, err := Parse(strings.ReplaceAll(text, ",", ""), dim)
			if err != nil {
				t.Fatalf("%g prints as %q, which is refused: %v", si, printed, err)
			}
			if off := math.Abs(q.SI - si); off > math.Max(q.Resolution*0.5000001, 0.00501*math.Abs(si)) {
				t.Fatalf("%g prints as %q, which is %g", si, printed, q.SI)
			}
		}
	})
}

func TestRounding(t *testing.T) {
	for _, c := range []struct {
		x      float64
		places int
		want   string
	}{
		{0.125, 2, "0.13"}, // away from zero, as people round
		{1.005, 2, "1.01"}, // though the float64 lies below
		{-0.125, 2, "−0.13"},
		{-0.001, 2, "0.00"}, // no minus before nothing
		{12387, -2, "12,400"},
		{999.5, 0, "1,000"},
		{1234567.891, 1, "1,234,567.9"},
		{1.0 / 3, 30, "0.333333333333333"}, // digits beyond 15 are noise
		{4.5e-9, 9, "5×10⁻⁹"},
		{9.9996e-9, 11, "1.00×10⁻⁸"},
		{1.5e15, 0, "1.50000000000000×10¹⁵"},
	} {
		if got := fixed(c.x, c.places); got != c.want {
			t.Errorf("fixed(%g, %d) = %q, want %q", c.x, c.places, got, c.want)
		}
	}
}

func TestChanceClaimsNeitherCertaintyNorNothing(t *testing.T) {
	for share, want := range map[float64]string{
		math.NaN(): "?", 0: "under 0.1 %", 0.0009: "under 0.1 %", 0.001: "0.1 %", 0.0096: "1.0 %", 0.01: "1 %", 0.415: "42 %",
		0.99: "99 %", 0.9904: "99.0 %", 0.994: "99.4 %", 0.999: "99.9 %", 0.9994: "over 99.9 %", 1: "over 99.9 %",
	} {
		if got := Chance(share); got != want {
			t.Errorf("Chance(%v) is %q, want %q", share, got, want)
		}
	}
}
