package quantity

import (
	"strconv"
	"strings"
	"testing"

	"axlewright/internal/published"
)

// read parses a text that must be right.
func read(t *testing.T, text string, dim Dimension) Quantity {
	t.Helper()
	q, err := Parse(text, dim)
	if err != nil {
		t.Fatalf("Parse(%q, %s): %v", text, dim, err)
	}
	return q
}

func TestConversionFactorsPublished(t *testing.T) {
	const (
		both   = "NIST SP 811:2008, B.8; same figure in ASTM E380-82"
		memory = "NIST SP 811:2008, B.8 (from memory)"
	)
	var rows []published.Row
	for _, c := range []struct {
		text    string
		dim     Dimension
		printed string // SI
		source  string
	}{
		{"1 in", Length, "2.540000e-02", both},
		{"1 thou", Length, "2.540000e-05", both},
		{"1 ft", Length, "3.048000e-01", both},
		{"1 mi", Length, "1.609344e+03", memory},
		{"1 in²", Area, "6.451600e-04", both},
		{"1 ft²", Area, "9.290304e-02", both},
		{"1 in³", Volume, "1.638706e-05", both},
		{"1 US pt", Volume, "4.731765e-04", both},
		{"1 US qt", Volume, "9.463529e-04", both},
		{"1 US gal", Volume, "3.785412e-03", both},
		{"1 UK gal", Volume, "4.546090e-03", memory},
		{"1 in^4", SecondMoment, "4.162314e-07", memory},
		{"1 deg", Angle, "1.745329e-02", both},
		{"1'", Angle, "2.908882e-04", both},
		{`1"`, Angle, "4.848137e-06", both},
		{"1 rpm", AngularSpeed, "1.047198e-01", memory},
		{"1 km/h", Speed, "2.777778e-01", both},
		{"1 mph", Speed, "4.470400e-01", both},
		{"1 ft/min", Speed, "5.080000e-03", both},
		{"1 g", Acceleration, "9.806650e+00", both},
		{"1 lb", Mass, "4.535924e-01", both},
		{"1 oz", Mass, "2.834952e-02", both},
		{"1 lb/in³", Density, "2.767990e+04", both},
		{"1 lb/ft³", Density, "1.601846e+01", both},
		{"1 lbf", Force, "4.448222e+00", both},
		{"1 kip", Force, "4.448222e+03", both},
		{"1 kgf", Force, "9.806650e+00", both},
		{"1 lbf·in", Torque, "1.129848e-01", both},
		{"1 lbf·ft", Torque, "1.355818e+00", both},
		{"1 kgf·m", Torque, "9.806650e+00", both},
		{"1 ft·lbf", Energy, "1.355818e+00", both},
		{"1 hp", Power, "7.456999e+02", both},
		{"1 PS", Power, "7.354988e+02", memory},
		{"1 psi", Pressure, "6.894757e+03", both},
		{"1 ksi", Pressure, "6.894757e+06", both},
		{"1 kgf/mm²", Pressure, "9.806650e+06", memory},
		{"1 lbf/in", Stiffness, "1.751268e+02", memory},
		{"1 cSt", KinematicViscosity, "1.000000e-06", both},
		{"1 day", Time, "8.640000e+04", memory},
	} {
		rows = append(rows, published.Row{Name: c.text, Got: read(t, c.text, c.dim).SI, Printed: c.printed, Source: c.source})
	}
	published.Check(t, rows)
}

func TestTemperatureScalesPublished(t *testing.T) {
	const source = "ISO 80000-5:2019 and NIST SP 811:2008, B.8 (from memory): fixed points of the scales"
	var rows []published.Row
	for _, c := range []struct {
		text    string
		dim     Dimension
		printed string // K
	}{
		{"0 °C", Temperature, "273.15"},
		{"100 °C", Temperature, "373.15"},
		{"32 °F", Temperature, "273.15"},
		{"212 °F", Temperature, "373.15"},
		{"-40 °F", Temperature, "233.15"},
		{"0 K", Temperature, "0"},
		{"80 K", TemperatureDifference, "80"},
		{"144 Δ°F", TemperatureDifference, "80"},
	} {
		rows = append(rows, published.Row{Name: c.text, Got: read(t, c.text, c.dim).SI, Printed: c.printed,
			Source: source, Within: 1e-15, Why: "the scales are exact"})
	}
	rows[5].Within, rows[5].Why = 0, ""
	published.Check(t, rows)
}

// Pairs that workshop manuals print in both systems: each is read in the one
// system and must round to the print in the other.
func TestPairsPrintedInWorkshopManuals(t *testing.T) {
	const (
		a   = "TM 9-2320-289-34, p. 6-102, backlash"
		b   = "TM 9-2320-289-34, p. 6-22, carrier set with shims"
		c   = "TM 5-3805-260-24, p. 3-243, carrier set with adjusters"
		d   = "TM 10-3930-643-34, p. 16-30, thrust screw"
		e   = "TM 10-3930-660-34, p. 8-18, pinion nut, converted outside this code"
		own = "derived: definition of the foot and of the pound-force; a ceiling printed in a workshop manual"
	)
	convert := func(text, unit string, dim Dimension) float64 {
		return shownIn{symbol: unit}.count(read(t, text, dim).SI, dim)
	}
	published.Check(t, []published.Row{
		{Name: "0.003 in", Got: convert("0.003 in", "mm", Length), Printed: "0.076", Source: a},
		{Name: "0.012 in", Got: convert("0.012 in", "mm", Length), Printed: "0.305", Source: a},
		{Name: "0.005 in", Got: convert("0.005 in", "mm", Length), Printed: "0.127", Source: a},
		{Name: "8 thou", Got: convert("8 thou", "mm", Length), Printed: "0.203", Source: a},
		{Name: "0.005 in", Got: convert("0.005 in", "mm", Length), Printed: "0.13", Source: b},
		{Name: "0.008 in", Got: convert("0.008 in", "mm", Length), Printed: "0.20", Source: b},
		{Name: "40 lb·ft", Got: convert("40 lb·ft", "N·m", Torque), Printed: "54", Source: b},
		{Name: "50 lb-ft", Got: convert("50 lb-ft", "N·m", Torque), Printed: "68", Source: b},
		{Name: "475 N·m", Got: convert("475 N·m", "lbf·ft", Torque), Printed: "350", Source: c},
		{Name: "2 lb in", Got: convert("2 lb in", "N·m", Torque), Printed: "0.2", Source: c},
		{Name: "4 lb in", Got: convert("4 lb in", "N·m", Torque), Printed: "0.5", Source: c},
		{Name: "0.20 mm", Got: convert("0.20 mm", "in", Length), Printed: "0.008", Source: c},
		{Name: "0.42 mm", Got: convert("0.42 mm", "in", Length), Printed: "0.017", Source: c},
		{Name: "0.010 in", Got: convert("0.010 in", "mm", Length), Printed: "0.254", Source: d},
		{Name: "0.015 in", Got: convert("0.015 in", "mm", Length), Printed: "0.381", Source: d},
		{Name: "300 lb·ft", Got: convert("300 lb·ft", "N·m", Torque), Printed: "406.745", Source: e},
		{Name: "400 lb·ft", Got: convert("400 lb·ft", "N·m", Torque), Printed: "542.327", Source: e},
		{Name: "8 lbf·ft in lbf·in", Got: convert("8 lbf·ft", "lbf·in", Torque), Printed: "96", Source: own},
		{Name: "8 lbf·ft", Got: convert("8 lbf·ft", "N·m", Torque), Printed: "10.85", Source: own},
		{Name: "20 lbf·in", Got: convert("20 lbf·in", "N·m", Torque), Printed: "2.26", Source: own},
		{Name: "20 lbf·in at 32 mm", Got: read(t, "20 lbf·in", Torque).SI / read(t, "32 mm", Length).SI, Printed: "70.6", Source: own},
		{Name: "the same in kgf", Got: convert("20 lbf·in", "kgf·m", Torque) / 0.032, Printed: "7.2", Source: own},
		// Old British bolt grades by their tensile strength in the long ton.
		{Name: "45 tonf/in²", Got: convert("45 tonf/in2", "MPa", Pressure), Printed: "695", Source: "British bolt grade R (from memory)"},
		{Name: "55 tsi", Got: convert("55 tsi", "MPa", Pressure), Printed: "849", Source: "British bolt grade T (from memory)"},
		{Name: "65 tsi", Got: convert("65 tsi", "MPa", Pressure), Printed: "1004", Source: "British bolt grade V (from memory)"},
	})
}

func TestEveryDimensionIsComplete(t *testing.T) {
	for _, dim := range All() {
		if dim.Unit() == "" {
			t.Errorf("%s has no SI unit", dim)
		}
		if q, err := Parse(dim.Example(), dim); err != nil {
			t.Errorf("the example %q of %s is refused: %v", dim.Example(), dim, err)
		} else if dim != Name && q.SI == 0 {
			t.Errorf("the example %q of %s is nothing", dim.Example(), dim)
		}
		if dim == Name {
			continue
		}
		if len(bands[dim]) == 0 {
			t.Errorf("%s is not printed in any unit", dim)
		}
		if si := dim.Unit(); !kindOf[dim].plain {
			if q, err := Parse("1 "+si, dim); err != nil || q.SI != 1 {
				t.Errorf("1 %s as %s gives %v, %v", si, dim, q.SI, err)
			}
		}
		for _, b := range bands[dim] {
			for _, s := range []shownIn{b.metric, b.other} {
				if s.symbol != "" && index.find(dim, s.symbol) == nil {
					t.Errorf("%s is printed in %q, which is not in the table", dim, s.symbol)
				}
			}
		}
	}
}

func TestNoSpellingMeansTwoUnits(t *testing.T) {
	seen := map[string]string{}
	for _, table := range [][]unit{units, loadUnits} {
		for i := range table {
			u := &table[i]
			if kindOf[u.dim].dim == "" {
				t.Errorf("%s belongs to no dimension", u.symbol)
			}
			if u.factor.Sign() <= 0 {
				t.Errorf("%s has the factor %s", u.symbol, u.factor)
			}
			for _, key := range u.keys() {
				if key != unitKey(key) {
					t.Errorf("%s lists %q, which nobody can type: it is read as %q", u.symbol, key, unitKey(key))
				}
				id := string(u.dim) + ": " + key
				if other, taken := seen[id]; taken {
					t.Errorf("%s is both %s and %s", strconv.Quote(id), other, u.symbol)
				}
				seen[id] = u.symbol
			}
		}
	}
}

func TestWarningsAreReached(t *testing.T) {
	for _, w := range warnings {
		dims := w.dims
		if dims == nil {
			dims = []Dimension{Mass, Force, Torque}
		}
		for _, dim := range dims {
			for _, spelling := range strings.Fields(w.spelt) {
				_, err := Parse("12 "+spelling, dim)
				if err == nil {
					t.Errorf("12 %s is taken as %s in spite of the warning", spelling, dim)
				} else if !strings.Contains(err.Error(), "12") || strings.Contains(err.Error(), "#") {
					t.Errorf("12 %s: %v", spelling, err)
				}
			}
		}
	}
}
