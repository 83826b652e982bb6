package bearing

import (
	"math"
	"testing"

	"axlewright/internal/published"
)

func TestViscosityPublished(t *testing.T) {
	nu, err := Viscosity(ViscosityParams{At40: 404e-6, At100: 28e-6, Temperature: 333.15})
	check1(t, "SAE 140 gear oil at 60 °C", must(t, nu, err)*1e6, "132.126",
		"public worked example of ASTM D341: 404 and 28 mm²/s at 40 and 100 °C (read)")
}

func TestViscosityPassesThroughItsTwoPoints(t *testing.T) {
	for grade := range oilGrades {
		oil, err := GradeViscosity(grade)
		must(t, oil, err)
		p := ViscosityParams{At40: oil.At40, At100: oil.At100}
		p.Temperature = 313.15
		nu, err := Viscosity(p)
		near(t, string(grade)+" at 40 °C", must(t, nu, err), oil.At40, 1e-9)
		p.Temperature = 373.15
		nu, err = Viscosity(p)
		near(t, string(grade)+" at 100 °C", must(t, nu, err), oil.At100, 1e-9)
		last := math.Inf(1)
		for T := 263.; T < 400; T += 10 {
			p.Temperature = T
			nu, err = Viscosity(p)
			if must(t, nu, err) >= last {
				t.Errorf("%s thickens at %g K", grade, T)
			}
			last = nu
		}
	}
}

// viscosityIndex is ASTM D2270, procedure A for 7.7 to 40 mm²/s at 100 °C, with
// the piecewise parabolas of its tables L and H (from memory).
func viscosityIndex(at40, at100 float64) float64 {
	Y := at100
	parabolas := []struct{ to, a, b, c, d, e, f float64 }{
		{9, 0.41858, 16.1558, -56.040, 0.05794, 10.5156, -28.240},
		{12, 0.88779, 7.5527, -16.600, 0.26665, 6.7015, -10.810},
		{15, 0.76720, 10.7972, -38.180, 0.20073, 8.4658, -22.490},
		{18, 0.97305, 5.3135, -2.200, 0.28889, 5.9741, -4.930},
		{22, 0.97256, 5.2500, -0.980, 0.24504, 7.4160, -16.730},
		{28, 0.91413, 7.4759, -21.820, 0.20323, 9.1267, -34.230},
		{40, 0.87031, 9.7157, -50.770, 0.18411, 10.1015, -46.750},
	}
	for _, p := range parabolas {
		if Y <= p.to {
			L := p.a*Y*Y + p.b*Y + p.c
			H := p.d*Y*Y + p.e*Y + p.f
			return 100 * (L - at40) / (L - H)
		}
	}
	return math.NaN()
}

func TestGradeViscosityPublished(t *testing.T) {
	rows := []published.Row{{
		Name: "viscosity index of 73.30 and 8.86 mm²/s (the check's own check)", Got: viscosityIndex(73.30, 8.86), Printed: "92",
		Source: "ASTM D2270-93, 5.1.4, calculation example (read)",
	}}
	for grade, at40 := range map[OilGrade]string{VG68: "68", VG100: "100", VG150: "150", VG220: "220", VG320: "320", VG460: "460"} {
		oil, err := GradeViscosity(grade)
		must(t, oil, err)
		rows = append(rows,
			published.Row{Name: string(grade), Got: oil.At40 * 1e6, Printed: at40, Source: "ISO 3448, mid-point viscosity at 40 °C (read)"},
			published.Row{Name: string(grade) + " viscosity index", Got: viscosityIndex(oil.At40*1e6, oil.At100*1e6), Printed: "95",
				Source: "ASTM D2270 (read; parabolas of its tables from memory)", Within: 0.01, Why: "viscosities are kept to three figures"})
	}
	published.Check(t, rows)
	for _, c := range []struct {
		grade     OilGrade
		low, high float64
	}{
		{SAE75W90, 13.5, 18.5}, {SAE80W90, 13.5, 18.5}, {SAE90, 13.5, 18.5}, // SAE J306:2005 (read)
		{SAE85W140, 24, 32.5}, {SAE75W140, 24, 32.5},
	} {
		oil, err := GradeViscosity(c.grade)
		must(t, oil, err)
		if v := oil.At100 * 1e6; v < c.low || v >= c.high {
			t.Errorf("%s: %g mm²/s at 100 °C, SAE J306 has %g to %g", c.grade, v, c.low, c.high)
		}
	}
}

func TestReferenceViscosityPublished(t *testing.T) {
	nu, err := ReferenceViscosity(1000*rpm, 0.1)
	must(t, nu, err)
	low, err := ReferenceViscosity(10*rpm, 0.1)
	must(t, low, err)
	published.Check(t, []published.Row{
		{Name: "ν1 at 100 mm and 1000 1/min", Got: nu * 1e6, Printed: "14", Source: "ISO 281:2007, diagram of ν1 (read off, from memory)"},
		{Name: "ν1 at 100 mm and 10 1/min", Got: low * 1e6, Printed: "660", Source: "ISO 281:2007, diagram of ν1 (read off, from memory)",
			Within: 0.03, Why: "read off a logarithmic diagram"},
	})
	// the two branches meet at 1000 1/min within the thickness of the curve
	below, err := ReferenceViscosity(999.999*rpm, 0.1)
	near(t, "ν1 below the branch", must(t, below, err), nu, 0.025)
}

func TestViscosityRatioIsOneAtTheReferenceViscosity(t *testing.T) {
	for _, speed := range []float64{1, 50, 400} {
		nu, err := ReferenceViscosity(speed, 0.06)
		must(t, nu, err)
		k, err := ViscosityRatio(ViscosityRatioParams{Viscosity: nu, Speed: speed, PitchDiameter: 0.06})
		near(t, "κ", must(t, k, err), 1, 1e-12)
	}
	if _, err := ViscosityRatio(ViscosityRatioParams{Viscosity: 1e-4, PitchDiameter: 0.06}); err == nil {
		t.Error("a bearing at rest is given a film")
	}
	if _, err := Viscosity(ViscosityParams{At40: 1e-5, At100: 2e-5, Temperature: 330}); err == nil {
		t.Error("an oil that thickens with heat is accepted")
	}
	if _, err := GradeViscosity("ISO VG 7"); err == nil {
		t.Error("an unknown grade is accepted")
	}
}
