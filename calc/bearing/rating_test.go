package bearing

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"axlewright/internal/published"
)

func TestRatingFactorPublished(t *testing.T) {
	const source = "ISO 281:2007, table of f_c for radial roller bearings (from memory)"
	var rows []published.Row
	for _, c := range []struct {
		gamma   float64
		printed string
	}{
		{0.01, "52.1"}, {0.02, "60.8"}, {0.03, "66.5"}, {0.04, "70.7"}, {0.05, "74.1"},
		{0.06, "76.9"}, {0.07, "79.2"}, {0.08, "81.2"}, {0.09, "82.8"}, {0.10, "84.2"},
		{0.12, "86.4"}, {0.14, "87.7"}, {0.16, "88.5"}, {0.18, "88.8"}, {0.20, "88.7"},
		{0.22, "88.2"}, {0.24, "87.5"}, {0.26, "86.4"}, {0.28, "85.2"}, {0.30, "83.8"},
	} {
		closed, err := RatingFactor(c.gamma, ClosedForm)
		rows = append(rows, published.Row{Name: "f_c, closed form", Got: must(t, closed, err), Printed: c.printed, Source: source})
		table, err := RatingFactor(c.gamma, Tabulated)
		rows = append(rows, published.Row{Name: "f_c, table", Got: must(t, table, err), Printed: c.printed, Source: source})
	}
	published.Check(t, rows)
}

// The closed form follows from the lines of contact and the table from the
// closed form: two independent roads for every γ between the rows.
func TestTableAndClosedFormAgreeBetweenRows(t *testing.T) {
	for gamma := 0.01; gamma <= 0.30; gamma += 0.0013 {
		closed, err := RatingFactor(gamma, ClosedForm)
		must(t, closed, err)
		table, err := RatingFactor(gamma, Tabulated)
		must(t, table, err)
		within := 0.004
		if gamma < 0.02 { // straight lines cut the bend of the first interval
			within = 0.02
		}
		near(t, "f_c", table, closed, within)
	}
}

var (
	steep = Rollers{Count: 15, Diameter: 11.8e-3, Length: 24e-3, PitchDiameter: 67e-3, CupAngle: 28.8 * degree}
	flat  = Rollers{Count: 17, Diameter: 8.5e-3, Length: 16e-3, PitchDiameter: 49e-3, CupAngle: 14.04 * degree}
)

func params(r Rollers, m FactorMethod) RatingParams {
	return RatingParams{Rollers: r, Rows: 1, MaterialFactor: TaperRollerMaterialFactor, Method: m}
}

func TestRatingsFromGeometryPublished(t *testing.T) {
	const source = "derived: ISO 281:2007 and ISO 76:2006 formulas (from memory) worked a second time outside this code"
	var rows []published.Row
	for _, c := range []struct {
		name                       string
		r                          Rollers
		gamma, fc, dynamic, static string
	}{
		{"49 mm pitch, 14.04°", flat, "0.168287", "88.7124", "68.6707", "82.0809"},
		{"67 mm pitch, 28.8°", steep, "0.154335", "88.3654", "112.181", "138.513"},
	} {
		fc, err := RatingFactor(c.r.gamma(), ClosedForm)
		must(t, fc, err)
		dynamic, err := DynamicRating(params(c.r, ClosedForm))
		must(t, dynamic, err)
		table, err := DynamicRating(params(c.r, Tabulated))
		must(t, table, err)
		static, err := StaticRating(params(c.r, ClosedForm))
		must(t, static, err)
		rows = append(rows,
			published.Row{Name: c.name + ": γ", Got: c.r.gamma(), Printed: c.gamma, Source: source},
			published.Row{Name: c.name + ": f_c", Got: fc, Printed: c.fc, Source: source},
			published.Row{Name: c.name + ": C_r kN", Got: dynamic / 1e3, Printed: c.dynamic, Source: source},
			published.Row{Name: c.name + ": C_r kN, table", Got: table / 1e3, Printed: c.dynamic, Source: source,
				Within: 0.003, Why: "straight lines between the rows of the table"},
			published.Row{Name: c.name + ": C_0r kN", Got: static / 1e3, Printed: c.static, Source: source})
	}
	published.Check(t, rows)
}

// ISO 76 sets C_0 where the hardest pressed contact reaches 4000 MPa, the load
// on that roller being 5·F_r/(Z·cos α).
func TestStaticRatingIsAContactPressureOf4000MPa(t *testing.T) {
	var rows []published.Row
	for _, r := range []Rollers{flat, steep} {
		static, err := StaticRating(params(r, ClosedForm))
		must(t, static, err)
		hardest := 5 * static / (float64(r.Count) * math.Cos(r.CupAngle))
		p, err := ContactPressure(PressureParams{Rollers: r, Load: hardest, Raceway: Cone})
		rows = append(rows, published.Row{
			Name: "pressure on the cone at C_0, MPa", Got: must(t, p, err) / 1e6, Printed: "4000",
			Source: "ISO 76:2006, definition of C_0 for roller bearings: 4000 MPa (from memory)",
			Within: 0.01, Why: "44 is rounded and steel is taken a little differently",
		})
	}
	published.Check(t, rows)
}

func TestRatingsScaleAsTheirExponents(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := Rollers{
			Count:         rapid.IntRange(10, 24).Draw(t, "Z"),
			PitchDiameter: rapid.Float64Range(0.03, 0.12).Draw(t, "Dpw"),
			CupAngle:      rapid.Float64Range(8, 32).Draw(t, "α") * degree,
		}
		r.Diameter = 0.9 * r.chord()
		r.Length = 1.5 * r.Diameter
		c1, err1 := DynamicRating(params(r, ClosedForm))
		s1, err2 := StaticRating(params(r, ClosedForm))
		p := params(r, ClosedForm)
		p.Rows = 2
		c2, err3 := DynamicRating(p)
		s2, err4 := StaticRating(p)
		r.Length *= 1.1
		c3, err5 := DynamicRating(params(r, ClosedForm))
		s3, err6 := StaticRating(params(r, ClosedForm))
		for _, err := range []error{err1, err2, err3, err4, err5, err6} {
			if err != nil {
				t.Fatal(err)
			}
		}
		same := func(what string, got, want float64) {
			if math.Abs(got/want-1) > 1e-12 {
				t.Fatalf("%s: %g, want %g", what, got, want)
			}
		}
		same("C of two rows", c2/c1, math.Pow(2, 7./9))
		same("C_0 of two rows", s2/s1, 2)
		same("C with longer rollers", c3/c1, math.Pow(1.1, 7./9))
		same("C_0 with longer rollers", s3/s1, 1.1)
	})
}
