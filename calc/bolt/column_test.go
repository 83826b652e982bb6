package bolt

import (
	"math"
	"testing"

	"axlewright/internal/published"

	"pgregory.net/rapid"
)

func TestColumnsPublished(t *testing.T) {
	const slender = "Shigley's Mechanical Engineering Design, 9th ed., ex. 4-16: round column 1.5 m, both ends pinned, 22 kN × 4, S_y 500 MPa, E 207 GPa, d 37.48 mm (from memory)"
	const short = "Shigley's Mechanical Engineering Design, 9th ed., ex. 4-17: the same, 375 mm long, d 19.0 mm (from memory)"
	euler := must(ColumnLoad(ColumnParams{37.48 * mm, 1.5, 1, 207 * gpa, 500 * mpa}))
	johnson := must(ColumnLoad(ColumnParams{19.0 * mm, 0.375, 1, 207 * gpa, 500 * mpa}))
	published.Check(t, []published.Row{
		{Name: "transition slenderness", Got: euler.Transition, Printed: "90.4", Source: slender},
		{Name: "Euler load, kN", Got: euler.Buckling / kN, Printed: "88", Source: slender},
		{Name: "Johnson load, kN", Got: johnson.Buckling / kN, Printed: "88", Source: short},
	})
	if !euler.Elastic || johnson.Elastic {
		t.Errorf("Euler governs %v, %v; want the slender one only", euler.Elastic, johnson.Elastic)
	}
}

func TestEulerAndJohnsonMeet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := ColumnParams{
			Diameter: rapid.Float64Range(5, 30).Draw(t, "d") * mm, EndFactor: rapid.Float64Range(0.25, 4).Draw(t, "C"),
			Modulus: rapid.Float64Range(100, 210).Draw(t, "E") * gpa, Yield: rapid.Float64Range(200, 1100).Draw(t, "S_y") * mpa,
		}
		p.Length = must(ColumnLoad(p)).Transition * p.Diameter / 4
		below, above := p, p
		below.Length *= 1 - 1e-9
		above.Length *= 1 + 1e-9
		a, b := must(ColumnLoad(below)), must(ColumnLoad(above))
		if a.Elastic || !b.Elastic || !near(a.Buckling, b.Buckling, 1e-6) {
			t.Errorf("Johnson %+v, Euler %+v", a, b)
		}
		if !near(a.Stress, p.Yield/2, 1e-6) {
			t.Errorf("they meet at %g, want half of yield %g", a.Stress, p.Yield)
		}
	})
}

func TestShortColumnCrushes(t *testing.T) {
	r := must(ColumnLoad(ColumnParams{10 * mm, 0, 1, 207 * gpa, 640 * mpa}))
	if r.Buckling != r.Crushing || !near(r.Crushing, 640*mpa*math.Pi/4*1e-4, 1e-12) {
		t.Errorf("no free length: %+v", r)
	}
}

func TestColumnRefuses(t *testing.T) {
	_, err := ColumnLoad(ColumnParams{10 * mm, 0.05, 5, 207 * gpa, 640 * mpa})
	refuses(t, "EndFactor", err)
	_, err = ColumnLoad(ColumnParams{10 * mm, -0.05, 1, 207 * gpa, 640 * mpa})
	refuses(t, "Length", err)
}
