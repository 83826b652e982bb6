package material

import (
	"errors"
	"math"
	"strings"
	"testing"

	"axlewright/internal/published"
)

func must[T any](value T, err error) T {
	if err != nil {
		panic(err)
	}
	return value
}

var refused = published.Refuses

func TestDuctileIronPublished(t *testing.T) {
	const source = "EN 1563:1997, table of properties (read in a copy)"
	const annex = "EN 1563:1997, informative annex (from memory)"
	var rows []published.Row
	add := func(name string, got float64, printed, source string) {
		rows = append(rows, published.Row{Name: name, Got: got, Printed: printed, Source: source})
	}
	for _, c := range []struct{ name, rm, rp, a, shear, e, density string }{
		{"EN-GJS-350-22", "350", "220", "22", "315", "169", "7.1"},
		{"EN-GJS-400-18", "400", "250", "18", "360", "169", "7.1"},
		{"EN-GJS-450-10", "450", "310", "10", "405", "169", "7.1"},
		{"EN-GJS-500-7", "500", "320", "7", "450", "169", "7.1"},
		{"EN-GJS-600-3", "600", "370", "3", "540", "174", "7.2"},
		{"EN-GJS-700-2", "700", "420", "2", "630", "176", "7.2"},
		{"EN-GJS-800-2", "800", "480", "2", "720", "176", "7.2"},
	} {
		m := must(Lookup(c.name))
		add(c.name+" R_m", m.Tensile/1e6, c.rm, source)
		add(c.name+" R_p0.2", m.Yield/1e6, c.rp, source)
		add(c.name+" A, %", m.Elongation*100, c.a, source)
		add(c.name+" shear", m.Shear/1e6, c.shear, source)
		add(c.name+" E, GPa", m.Modulus/1e9, c.e, source)
		add(c.name+" density", m.Density/1e3, c.density, source)
	}
	for name, printed := range map[string]string{"GJS-400-18": "195", "GJS-500-7": "224", "GJS-600-3": "248", "GJS-700-2": "280"} {
		m := must(Lookup(name))
		add(name+" rotating bending", m.BendingFatigue*m.Tensile/1e6, printed, annex)
	}
	published.Check(t, rows)
}

func TestOtherGradesPublished(t *testing.T) {
	var rows []published.Row
	for _, c := range []struct{ name, rm, re, source string }{
		{"S235", "360", "235", "EN 10025-2:2019 (from memory)"},
		{"S275", "410", "275", "EN 10025-2:2019 (from memory)"},
		{"S355", "470", "355", "EN 10025-2:2019 (from memory)"},
		{"S460", "540", "460", "EN 10025-3:2019 (from memory)"},
		{"S700MC", "750", "700", "EN 10149-2:2013 (from memory)"},
		{"42CrMo4", "1000", "750", "EN ISO 683-2, 16 to 40 mm (from memory)"},
		{"C45+QT", "650", "430", "EN ISO 683-1, 16 to 40 mm (from memory)"},
		{"18CrNiMo7-6", "1080", "785", "DIN 17210:1986, core of 30 mm (from memory)"},
		{"GE240", "450", "240", "EN 10293:2015 (from memory)"},
		{"G20Mn5", "500", "300", "EN 10293:2015 (from memory)"},
		{"GJMB-350-10", "350", "200", "EN 1562:2012 (from memory)"},
		{"GJMW-360-12", "360", "190", "EN 1562:2012 (from memory)"},
		{"CuSn12-C", "300", "150", "EN 1982:2017 (from memory)"},
	} {
		m := must(Lookup(c.name))
		rows = append(rows,
			published.Row{Name: c.name + " R_m", Got: m.Tensile / 1e6, Printed: c.rm, Source: c.source},
			published.Row{Name: c.name + " R_e", Got: m.Yield / 1e6, Printed: c.re, Source: c.source})
	}
	// The ends of the moduli, against handbook bands.
	const bands = "common practice, handbook bands of E: grey 100 to 130, malleable 165 to 175, ductile 165 to 172, cast steel 200 to 207 GPa"
	for _, c := range []struct {
		name      string
		low, high float64
	}{{"GJL-250", 100, 130}, {"GJMB-350-10", 165, 175}, {"GJS-400-15", 165, 172}, {"GE240", 200, 207}} {
		m := must(Lookup(c.name))
		if e := m.Modulus / 1e9; e < c.low || e > c.high {
			t.Errorf("%s: E %g GPa outside %g to %g (%s)", c.name, e, c.low, c.high, bands)
		}
	}
	s := must(Lookup("S235"))
	rows = append(rows, published.Row{Name: "shear modulus of steel, GPa", Got: s.ShearModulus() / 1e9, Printed: "81", Source: "EN 1993-1-1:2005, 3.2.6: 81 000 N/mm² approximately (from memory)"})
	published.Check(t, rows)
}

func TestLookupByOtherNamesAndUnknown(t *testing.T) {
	for _, name := range []string{"s355", " S355 J2 ", "St 52-3", "ST52-3", "1.0577"} {
		if m, err := Lookup(name); err != nil || m.Name != "S355" {
			t.Errorf("Lookup(%q) = %s, %v", name, m.Name, err)
		}
	}
	_, err := Lookup("pot metal")
	var u *UnknownError
	if !errors.As(err, &u) || u.Name != "pot metal" {
		t.Fatalf("got %v", err)
	}
	for _, name := range Names() {
		if !strings.Contains(err.Error(), name) {
			t.Errorf("the error does not list %s", name)
		}
	}
	// what a caller does to his copy does not reach the tables
	m := must(Lookup("S355"))
	m.Other[0] = "spoilt"
	if must(Lookup("S355")).Other[0] == "spoilt" {
		t.Error("the table was changed through a copy")
	}
}

func TestEveryGradeIsWhole(t *testing.T) {
	count := 0
	for _, f := range Families() {
		for _, m := range InFamily(f.Family) {
			count++
			fail := func(what string) { t.Errorf("%s: %s: %+v", m.Name, what, m) }
			switch {
			case m.Standard == "" || m.Section == "" || m.FatigueSource == "" || m.YieldKind == "":
				fail("a text is missing")
			case !(m.Tensile > 0 && m.Yield < m.Tensile && m.TensileMean > m.Tensile && m.TensileSD > 0):
				fail("strengths")
			case m.Yield > 0 && !(m.YieldMean > m.Yield && m.YieldMean < m.TensileMean):
				fail("yield")
			case (m.Yield == 0) != (m.YieldKind == "none"):
				fail("kind of yield")
			case !(m.ModulusLow < m.Modulus && m.Modulus < m.ModulusHigh && m.Modulus > 70e9 && m.Modulus < 220e9):
				fail("modulus")
			case !(m.Poisson > 0.2 && m.Poisson < 0.36 && m.Density > 7000 && m.Density < 9000):
				fail("Poisson or density")
			case !(m.Expansion > 10e-6 && m.Expansion < 20e-6):
				fail("expansion")
			case !(m.Shear > 0.5*m.Tensile && m.Shear < 1.2*m.Tensile):
				fail("shear")
			case !(m.BendingFatigue >= m.PullFatigue && m.PullFatigue >= 0.25 && m.BendingFatigue <= 0.52):
				fail("fatigue")
			case m.HardnessLow > m.HardnessHigh || m.SkinLow > m.SkinHigh:
				fail("hardness")
			case (m.Family == CaseHardenedSteel) != (m.SkinLow > 0):
				fail("skin")
			}
		}
	}
	if count != len(Names()) {
		t.Errorf("%d grades by family, %d names", count, len(Names()))
	}
}

// The least value is the 5 % fractile of the spread that is given with it.
func TestSpreadPutsTheLeastValueAtFivePerCent(t *testing.T) {
	for _, name := range Names() {
		m := must(Lookup(name))
		if p := 0.5 * math.Erfc((m.TensileMean-m.Tensile)/(m.TensileSD*math.Sqrt2)); math.Abs(p-0.05) > 1e-9 {
			t.Errorf("%s: %g below the least value", name, p)
		}
	}
	published.Check(t, []published.Row{
		{Name: "yield of S355, coefficient of variation", Got: must(Lookup("S355")).YieldSD / must(Lookup("S355")).YieldMean, Printed: "0.07", Source: "JCSS Probabilistic Model Code, part 3.2, 2001 (read in a reprint)"},
		{Name: "tensile strength of S355", Got: must(Lookup("S355")).TensileSD / must(Lookup("S355")).TensileMean, Printed: "0.04", Source: "JCSS Probabilistic Model Code, part 3.2, 2001 (read in a reprint)"},
	})
}

func TestFamilies(t *testing.T) {
	for _, f := range Families() {
		if !(f.ToeLow <= f.Toe && f.Toe <= f.ToeHigh && f.ToeLow >= 0 && f.ToeHigh <= 1) || f.ToeSource == "" || f.Weld == "" || f.CoVSource == "" {
			t.Errorf("%+v", f)
		}
		if g, err := FamilyOf(f.Family); err != nil || g != f {
			t.Errorf("FamilyOf(%s) = %+v, %v", f.Family, g, err)
		}
		if len(InFamily(f.Family)) == 0 {
			t.Errorf("no grade in %s", f.Family)
		}
	}
	if f := must(FamilyOf(GreyIron)); f.Weldability != DoNotWeld || f.ToeLow != 0 {
		t.Errorf("grey iron gets structural credit: %+v", f)
	}
	if _, err := FamilyOf("pot metal"); err == nil || !strings.Contains(err.Error(), "grey iron") {
		t.Errorf("got %v", err)
	}
}
