package bearing

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"axlewright/internal/published"
)

func TestLoadZonePublished(t *testing.T) {
	const harris = "Harris, Rolling Bearing Analysis, load distribution integrals of line contact (from memory)"
	const derived = "derived: definition of J_r with n = 1.1 worked a second time outside this code"
	var rows []published.Row
	for _, c := range []struct {
		epsilon          float64
		printed, derived string
	}{
		{0.1, "0.1268", "0.126763"}, {0.2, "0.1737", "0.173637"}, {0.3, "0.2055", "0.20547"},
		{0.5, "0.2453", "0.245304"}, {0.7, "0.2636", "0.263613"}, {0.9, "0.2628", "0.262752"},
		{1.0, "0.2523", "0.252329"}, {2.5, "0.1075", "0.107496"},
	} {
		z, err := LoadZone(LoadZoneParams{Epsilon: c.epsilon, Exponent: 1.1})
		must(t, z, err)
		now, err := LoadZone(LoadZoneParams{Epsilon: c.epsilon, Exponent: LineContactExponent})
		must(t, now, err)
		rows = append(rows,
			published.Row{Name: "J_r, n = 1.1", Got: z.Jr, Printed: c.derived, Source: derived},
			published.Row{Name: "J_r, n = 10/9", Got: now.Jr, Printed: c.printed, Source: harris, Within: 8e-3,
				Why: "the table was made with n = 1.1"})
		if c.epsilon != 0.2 {
			rows = append(rows, published.Row{Name: "J_r, n = 1.1", Got: z.Jr, Printed: c.printed, Source: harris})
		}
	}
	line, err := LoadZone(LoadZoneParams{Epsilon: 0.5, Exponent: 1.1})
	must(t, line, err)
	point, err := LoadZone(LoadZoneParams{Epsilon: 0.5, Exponent: 1.5})
	must(t, point, err)
	const peak = "Palmgren and Harris: hardest pressed element at half the circle (from memory, read again in a bearing handbook)"
	const thrust = "bearing handbook: F_a = 1.260·F_r·tan α for line, 1.216 for point contact at half the circle (read)"
	rows = append(rows,
		published.Row{Name: "1/J_r, line", Got: 1 / line.Jr, Printed: "4.08", Source: peak},
		published.Row{Name: "1/J_r, line", Got: 1 / line.Jr, Printed: "4.07657", Source: derived},
		published.Row{Name: "1/J_r, point", Got: 1 / point.Jr, Printed: "4.37", Source: peak},
		published.Row{Name: "J_a/J_r, line", Got: line.Ja / line.Jr, Printed: "1.260", Source: thrust,
			Within: 1e-3, Why: "the quotient of two table values of four digits"},
		published.Row{Name: "J_a/J_r, point", Got: point.Ja / point.Jr, Printed: "1.216", Source: thrust})
	published.Check(t, rows)
}

// Closed forms: n = 1 and n = 2 integrate by hand where the whole circle is loaded.
func TestLoadZoneAgreesWithClosedForms(t *testing.T) {
	for _, e := range []float64{1, 1.3, 2.5, 40} {
		z := loadZone(e, 1)
		near(t, "J_a, n = 1", z.Ja, 1-1/(2*e), 1e-12)
		near(t, "J_r, n = 1", z.Jr, 1/(4*e), 1e-12)
		z = loadZone(e, 2)
		a, b := 1-1/(2*e), 1/(2*e)
		near(t, "J_a, n = 2", z.Ja, a*a+b*b/2, 1e-12)
		near(t, "J_r, n = 2", z.Jr, a*b, 1e-11)
	}
	for _, e := range []float64{0.1, 0.4, 0.8} { // part of the circle, n = 1
		z := loadZone(e, 1)
		l := z.HalfAngle
		near(t, "J_a, part", z.Ja, ((1-1/(2*e))*l+math.Sin(l)/(2*e))/math.Pi, 1e-10)
		near(t, "J_r, part", z.Jr, ((1-1/(2*e))*math.Sin(l)+(l+math.Sin(l)*math.Cos(l))/(4*e))/math.Pi, 1e-10)
	}
}

func TestLoadShareBalances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := Rollers{Count: rapid.IntRange(10, 30).Draw(t, "Z"), PitchDiameter: 0.06,
			CupAngle: rapid.Float64Range(8, 35).Draw(t, "α") * degree}
		r.Diameter = 0.8 * r.chord()
		r.Length = 1.6 * r.Diameter
		fa := rapid.Float64Range(100, 5e4).Draw(t, "F_a")
		fr := fa / math.Tan(r.CupAngle) * rapid.Float64Range(0, 0.95).Draw(t, "share")
		s, err := LoadShare(LoadShareParams{Rollers: r, Radial: fr, Axial: fa})
		if err != nil {
			t.Fatal(err)
		}
		z := float64(r.Count)
		if got := z * s.MaxLoad * math.Sin(r.CupAngle) * s.Ja; math.Abs(got/fa-1) > 1e-9 {
			t.Fatalf("axial force %g, want %g", got, fa)
		}
		if got := z * s.MaxLoad * math.Cos(r.CupAngle) * s.Jr; math.Abs(got-fr) > 1e-6*fr+1e-8*fa {
			t.Fatalf("radial force %g, want %g", got, fr)
		}
	})
}

// The row of separate rollers in five degrees of freedom, kept parallel, is a
// second road to the load on the hardest pressed roller.
func TestLoadShareAgreesWithSeparateRollers(t *testing.T) {
	r := Rollers{Count: 40, Diameter: 4e-3, Length: 16e-3, PitchDiameter: 67e-3, CupAngle: 15.5 * degree}
	for _, radial := range []float64{0, 10e-6, 25e-6, 60e-6} {
		got, err := TaperedReaction(r, 1, Displacement{Axial: 50e-6, Radial1: radial})
		must(t, got, err)
		s, err := LoadShare(LoadShareParams{Rollers: r, Radial: math.Abs(got.Radial1), Axial: got.Axial})
		must(t, s, err)
		near(t, "Q_max", s.MaxLoad, got.MaxRoller, 2e-3)
	}
}

func TestLoadShareRefusesABearingThatFallsApart(t *testing.T) {
	r := flat
	if _, err := LoadShare(LoadShareParams{Rollers: r, Radial: 1000, Axial: 1000 * math.Tan(r.CupAngle)}); err == nil {
		t.Error("a thrust below F_r·tan α is accepted")
	}
	if _, err := LoadShare(LoadShareParams{Rollers: r, Radial: 1000}); err == nil {
		t.Error("a pure radial load is accepted")
	}
}
