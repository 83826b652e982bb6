package quantity

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// near allows for the rounding of the expected value alone.
func near(got, want float64) bool { return math.Abs(got-want) <= 1e-14*math.Abs(want) }

func TestParseTakesWhatTheTradeWrites(t *testing.T) {
	const lbf = 0.45359237 * 9.80665
	for _, c := range []struct {
		text string
		dim  Dimension
		want float64
	}{
		{"12 mm", Length, 0.012},
		{"12mm", Length, 0.012},
		{" 12 MM ", Length, 0.012},
		{"0.008 in", Length, 0.0002032},
		{"8 thou", Length, 0.0002032},
		{"7/16 in", Length, 0.0111125},
		{`7/16"`, Length, 0.0111125},
		{"7⁄16 in.", Length, 0.0111125},
		{"1-1/4 in", Length, 0.03175},
		{"1 1/4 in", Length, 0.03175},
		{"1¼ in", Length, 0.03175},
		{"40 µm", Length, 40e-6},
		{"40 um", Length, 40e-6},
		{"800 km", Length, 8e5},
		{"90 Nm", Torque, 90},
		{"90 N·m", Torque, 90},
		{"90 N.m", Torque, 90},
		{"90 N-m", Torque, 90},
		{"90 nm", Torque, 90},
		{"90 newton metres", Torque, 90},
		{"66 lbf ft", Torque, 66 * lbf * 0.3048},
		{"66 lbf·ft", Torque, 66 * lbf * 0.3048},
		{"66 ft-lb", Torque, 66 * lbf * 0.3048},
		{"66 ft–lb", Torque, 66 * lbf * 0.3048},
		{"66 ft.lbs.", Torque, 66 * lbf * 0.3048},
		{"66 ft/lbs", Torque, 66 * lbf * 0.3048},
		{"66 foot-pounds", Torque, 66 * lbf * 0.3048},
		{"66 FT LB", Torque, 66 * lbf * 0.3048},
		{"20 lbf in", Torque, 20 * lbf * 0.0254},
		{"20 in-lb", Torque, 20 * lbf * 0.0254},
		{"20 inch pounds", Torque, 20 * lbf * 0.0254},
		{"2,05 N·m", Torque, 2.05},
		{"2.6 t", Mass, 2600},
		{"1450 kg", Mass, 1450},
		{"210 GPa", Pressure, 210e9},
		{"700 N/mm²", Pressure, 700e6},
		{"30 ksi", Pressure, 30e3 * lbf / (0.0254 * 0.0254)},
		{"-3 °C", Temperature, 270.15},
		{"−3 °C", Temperature, 270.15},
		{"–3 °C", Temperature, 270.15},
		{"100 C", Temperature, 373.15},
		{"80 °C", Temperature, 353.15},
		{"80 K", TemperatureDifference, 80},
		{"60 deg", Angle, math.Pi / 3},
		{"60°", Angle, math.Pi / 3},
		{"1.2'", Angle, 1.2 * math.Pi / 10800},
		{"1.2′", Angle, 1.2 * math.Pi / 10800},
		{"1/4 turn", Angle, math.Pi / 2},
		{"8 %", Number, 0.08},
		{"8%", Share, 0.08},
		{"3.54:1", Number, 3.54},
		{"46/13", Number, 46.0 / 13},
		{"17", Number, 17},
		{"120", Money, 120},
		{"12.50", Money, 12.5},
		{"220 HB", HardnessBrinell, 220},
		{"350 HV10", HardnessVickers, 350},
		{"58 HRC", HardnessRockwellC, 58},
		{"3 km/h", Speed, 3 / 3.6},
		{"120 mm/min", Speed, 0.002},
		{"30 rpm", AngularSpeed, math.Pi},
		{"30 1/min", AngularSpeed, math.Pi},
		{"25 min", Time, 1500},
		{"14.5 h", Time, 52200},
		{"5 ml/100g", HydrogenContent, 5e-5},
		{"5 ml/100 g", HydrogenContent, 5e-5},
		{"1.0 kJ/mm", HeatInput, 1e6},
		{"120 kN/mm", Stiffness, 120e6},
		{"8.3 µm/kN", Compliance, 8.3e-9},
		{"40 kN·m/rad", RotationalStiffness, 40e3},
		{"40 kN m / rad", RotationalStiffness, 40e3},
		{"7.85 g/cm³", Density, 7850},
		{"84.3 mm^2", Area, 84.3e-6},
		{"11.5 µm/(m·K)", Expansion, 11.5e-6},
		{"1.15×10⁻⁵ 1/K", Expansion, 11.5e-6},
		{"0.02 1/mm", Curvature, 20},
		{"2.5 l", Volume, 2.5e-3},
	} {
		q := read(t, c.text, c.dim)
		if !near(q.SI, c.want) {
			t.Errorf("%q as %s = %.17g, want %.17g", c.text, c.dim, q.SI, c.want)
		}
		if q.Text != strings.TrimSpace(c.text) || q.Dim != c.dim || q.Spread != NoSpread || q.Low != q.SI || q.High != q.SI || q.HalfWidth != 0 {
			t.Errorf("%q gives %+v", c.text, q)
		}
	}
}

func TestAWordIsKeptAsTyped(t *testing.T) {
	q := read(t, " ISO 10300-1:2014 ", Name)
	if q.Text != "ISO 10300-1:2014" || q.SI != 0 || q.Exact() != q.Text || q.String() != q.Text {
		t.Errorf("got %+v", q)
	}
	for _, bad := range []string{"", "  ", "a\x00b", "a\nb"} {
		if _, err := Parse(bad, Name); err == nil {
			t.Errorf("%q is taken as a word", bad)
		}
	}
}

// The sentences are part of what a person sees: what was read, what was
// expected, what would be right.
func TestRefusals(t *testing.T) {
	for _, c := range []struct {
		text   string
		dim    Dimension
		reason Reason
		says   string
	}{
		{"2,500 N", Force, AmbiguousText, `"2,500 N": 2,500 may be 2500 or 2.5: write 2500 N or 2.5 N`},
		{"66 lb", Torque, AmbiguousText, `"66 lb": a torque in pounds needs its arm, and inch and foot differ 12 times: write 66 lbf·ft or 66 lbf·in`},
		{"66 lbf", Torque, AmbiguousText, `"66 lbf": a torque in pounds needs its arm, and inch and foot differ 12 times: write 66 lbf·ft or 66 lbf·in`},
		{"90 N·m", Length, WrongDimension, `"90 N·m": expected a length such as 12 mm, got a torque`},
		{"12 mm", Torque, WrongDimension, `"12 mm": expected a torque such as 90 N·m, got a length`},
		{"12 g", Length, WrongDimension, `"12 g": expected a length such as 12 mm, got a mass`},
		{"12 mm", Number, WrongDimension, `"12 mm": expected a plain number such as 3.54, got a length`},
		{"60 deg", Length, WrongDimension, `"60 deg": expected a length such as 12 mm, got an angle`},
		{"350 HV", HardnessBrinell, WrongDimension, `"350 HV": expected a Brinell hardness such as 220 HB, got a Vickers hardness`},
		{"7 kg", Force, WrongDimension, `"7 kg": expected a force, got a mass: write 7 kgf if the pull of 7 kg is meant`},
		{"80 °C", TemperatureDifference, AmbiguousText, `"80 °C": expected a difference of temperature, which is written in K so that nobody takes it for a temperature: write 80 K`},
		{"12", Length, NoUnit, `"12": the unit is missing, expected a length such as 12 mm`},
		{"0", Torque, NoUnit, `"0": the unit is missing, expected a torque such as 90 N·m`},
		{"12 furlongs", Length, UnknownUnit, `"12 furlongs": the unit "furlongs" is not known here, expected a length such as 12 mm`},
		{"", Length, Empty, `"": nothing was typed, expected a length such as 12 mm`},
		{"  ", Mass, Empty, `"": nothing was typed, expected a mass such as 1450 kg`},
		{"NaN mm", Length, NotANumber, `"NaN mm": it does not start with a number; expected a length such as 12 mm`},
		{"Inf", Number, NotANumber, `"Inf": it does not start with a number; expected a plain number such as 3.54`},
		{"1e400 m", Length, OutOfRange, `"1e400 m": the number is out of reach, expected a length such as 12 mm`},
		{"1e-400 m", Length, OutOfRange, `"1e-400 m": the number is out of reach, expected a length such as 12 mm`},
		{"-300 °C", Temperature, OutOfRange, `"-300 °C": this is below absolute zero, −273.15 °C, expected a temperature such as 80 °C`},
		{"12-15 mm", Length, NotANumber, `"12-15 mm": a hyphen is no range: write 12..15 mm`},
		{"0.15-.30 mm", Length, NotANumber, `"0.15-.30 mm": a hyphen is no range: write 0.15..0.30 mm`},
		{"5'6\"", Length, NotANumber, `"5'6\"": after 5 another number follows, expected one number and one unit, a length such as 12 mm`},
		{"0.20 mm (8 thou)", Length, NotANumber, `"0.20 mm (8 thou)": after 0.20 another number follows, expected one number and one unit, a length such as 12 mm`},
		{"5 ft 6 in", Length, NotANumber, `"5 ft 6 in": after 5 another number follows, expected one number and one unit, a length such as 12 mm`},
		{"3 pints", Volume, AmbiguousText, `"3 pints": British and American pints differ by a fifth: write 3 UK pt or 3 US pt`},
		{"2.6 tons", Mass, AmbiguousText, `"2.6 tons": a ton may be metric, British or American: write 2.6 t if it is 1000 kg, or give kg or lb`},
		{"8 mil", Length, AmbiguousText, `"8 mil": mil is a thou to some and a millimetre to others: write 8 thou or 8 mm`},
		{"5", "no such thing", WrongDimension, `"5": the program asked for a dimension that does not exist, "no such thing"`},
	} {
		q, err := Parse(c.text, c.dim)
		var e *ParseError
		if !errors.As(err, &e) {
			t.Errorf("%q as %s is read as %+v", c.text, c.dim, q)
			continue
		}
		if e.Reason != c.reason || e.Error() != c.says {
			t.Errorf("%q as %s:\n got %s: %s\nwant %s: %s", c.text, c.dim, e.Reason, e, c.reason, c.says)
		}
		if q != (Quantity{}) {
			t.Errorf("%q is refused and still gives %+v", c.text, q)
		}
	}
}

func TestALongTextIsCutInTheSentence(t *testing.T) {
	_, err := Parse(strings.Repeat("ж", 5000), Length)
	if err == nil || len([]rune(err.Error())) > 200 {
		t.Errorf("got %v", err)
	}
}
