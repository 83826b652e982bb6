package fit

import (
	"fmt"
	"testing"

	"axlewright/internal/published"
)

type limitRow struct {
	zone         Zone
	size         float64 // mm
	upper, lower string  // µm
}

func checkLimits(t *testing.T, source string, cases []limitRow) {
	t.Helper()
	var rows []published.Row
	for _, c := range cases {
		l := must(Limits(c.zone, c.size*mm))
		rows = append(rows,
			published.Row{Name: fmt.Sprintf("%g %s upper, µm", c.size, c.zone), Got: l.Upper / um, Printed: c.upper, Source: source},
			published.Row{Name: fmt.Sprintf("%g %s lower, µm", c.size, c.zone), Got: l.Lower / um, Printed: c.lower, Source: source})
	}
	published.Check(t, rows)
}

func TestBearingSeatLimitsPublished(t *testing.T) {
	checkLimits(t, "ISO 286-2:2010 (from memory)", []limitRow{
		{"K7", 72, "9", "-21"}, {"m6", 30, "21", "8"}, {"H7", 80, "30", "0"}, {"k6", 45, "18", "2"}, {"N7", 62, "-9", "-39"},
	})
}

func TestHoleLimitsPublished(t *testing.T) {
	checkLimits(t, "ISO 286-2, holes, as reprinted in a mould-base catalogue", []limitRow{
		{"J6", 40, "10", "-6"}, {"J7", 40, "14", "-11"}, {"J8", 40, "24", "-15"},
		{"K6", 40, "3", "-13"}, {"K7", 40, "7", "-18"}, {"K8", 40, "12", "-27"},
		{"M6", 40, "-4", "-20"}, {"M7", 40, "0", "-25"}, {"M8", 40, "5", "-34"},
		{"N6", 40, "-12", "-28"}, {"N7", 40, "-8", "-33"}, {"N8", 40, "-3", "-42"},
		{"R7", 40, "-25", "-50"}, {"JS6", 40, "8", "-8"}, {"JS7", 40, "12.5", "-12.5"},
		{"J7", 72, "18", "-12"}, {"K6", 72, "4", "-15"}, {"K8", 72, "14", "-32"}, {"M7", 72, "0", "-30"},
		{"M8", 72, "5", "-41"}, {"N6", 72, "-14", "-33"}, {"N8", 72, "-4", "-50"},
		{"R7", 60, "-30", "-60"}, {"R7", 72, "-32", "-62"}, {"R7", 90, "-38", "-73"}, {"R7", 110, "-41", "-76"},
		{"K7", 90, "10", "-25"}, {"N7", 90, "-10", "-45"}, {"M7", 90, "0", "-35"}, {"J7", 90, "22", "-13"},
		{"K7", 150, "12", "-28"}, {"N7", 150, "-12", "-52"}, {"R7", 150, "-50", "-90"}, {"R7", 170, "-53", "-93"},
		{"K7", 220, "13", "-33"}, {"N7", 220, "-14", "-60"}, {"J8", 220, "47", "-25"},
		{"K7", 5, "3", "-9"}, {"N7", 8, "-4", "-19"}, {"K7", 15, "6", "-12"}, {"K8", 25, "10", "-23"},
	})
}

func TestShaftLimitsPublished(t *testing.T) {
	checkLimits(t, "ISO 286-2 shafts, as in JIS B 0401:1999 reprinted in a toolmaker's reference pages", []limitRow{
		{"f6", 5, "-10", "-18"}, {"f7", 40, "-25", "-50"}, {"f8", 60, "-30", "-76"}, {"g5", 25, "-7", "-16"}, {"g6", 40, "-9", "-25"},
		{"h5", 60, "0", "-13"}, {"h6", 40, "0", "-16"}, {"h9", 60, "0", "-74"}, {"js6", 40, "8", "-8"},
		{"k5", 40, "13", "2"}, {"k6", 25, "15", "2"}, {"k6", 60, "21", "2"}, {"k5", 60, "15", "2"},
		{"m5", 40, "20", "9"}, {"m6", 40, "25", "9"}, {"m6", 60, "30", "11"},
		{"n6", 25, "28", "15"}, {"n6", 40, "33", "17"}, {"n6", 60, "39", "20"},
		{"p6", 40, "42", "26"}, {"p6", 60, "51", "32"},
		{"r6", 25, "41", "28"}, {"r6", 40, "50", "34"}, {"s6", 25, "48", "35"}, {"s6", 40, "59", "43"}, {"s6", 60, "72", "53"}, {"s6", 72, "78", "59"},
		{"k6", 2, "6", "0"}, {"m6", 2, "8", "2"}, {"s6", 2, "20", "14"},
	})
}

func TestPinHolePublished(t *testing.T) {
	checkLimits(t, "recommended hole H12 of ISO 8752, 3 mm + 0.10 and 8 mm + 0.15, as printed by two spring-pin suppliers", []limitRow{
		{"H12", 3, "100", "0"}, {"H12", 8, "150", "0"},
	})
}

// For the interference classes the ISO rule makes H7/p6 and P7/h6 the same fit.
func TestHoleBasisAndShaftBasisGiveTheSameFit(t *testing.T) {
	for _, letter := range []string{"p", "r", "s"} {
		for _, size := range []float64{10, 25, 40, 70, 110, 160, 240} {
			a := must(Clearance("H7", Zone(letter+"6"), size*mm))
			b := must(Clearance(Zone(string(letter[0]-32)+"7"), "h6", size*mm))
			if !near(a.Loosest, b.Loosest, 1e-9) || !near(a.Tightest, b.Tightest, 1e-9) {
				t.Errorf("%s at %g mm: hole basis %+v, shaft basis %+v", letter, size, a, b)
			}
		}
	}
}

func TestClearanceRange(t *testing.T) {
	for _, c := range []struct{ hole, shaft Zone }{{"H7", "g6"}, {"K7", "h6"}, {"H7", "m6"}, {"N7", "h6"}} {
		f := must(Clearance(c.hole, c.shaft, 72*mm))
		want := 30*um + 19*um // IT7 + IT6
		if !near(f.Loosest-f.Tightest, want, 1e-9) {
			t.Errorf("%s/%s spreads by %g", c.hole, c.shaft, f.Loosest-f.Tightest)
		}
	}
}

func TestTheOneExceptionOfTheStandard(t *testing.T) {
	// M6 above 250 up to 315 mm: ES is −9 µm, where the rule would give −11.
	checkLimits(t, "ISO 286-1:2010, table 3, footnote (from memory)", []limitRow{{"M6", 300, "-9", "-41"}})
}

func TestLimitsRefuse(t *testing.T) {
	for _, zone := range []Zone{"", "7", "K", "K5", "k8", "r8", "x6", "HK7", "J9"} {
		_, err := Limits(zone, 72*mm)
		refuses(t, "zone", err)
	}
	_, err := Limits("r6", 300*mm)
	refuses(t, "d", err)
	_, err = Limits("K7", 2*mm)
	refuses(t, "d", err)
	_, err = Clearance("h6", "H7", 72*mm)
	refuses(t, "hole", err)
	_, err = Clearance("H7", "K7", 72*mm)
	refuses(t, "shaft", err)
}
