package weld

import (
	"fmt"
	"math"
	"testing"

	"axlewright/internal/published"
	"pgregory.net/rapid"
)

// asGroup draws a published pattern as runs and bends.
func asGroup(shape Shape, b, d float64) Group {
	switch shape {
	case Line:
		return Group{Runs: []Run{{0, 0, 0, d, 0}}}
	case Parallel:
		return Group{Runs: []Run{{0, 0, 0, d, 0}, {b, 0, b, d, 0}}}
	case Levels:
		return Group{Runs: []Run{{0, 0, b, 0, 0}, {0, d, b, d, 0}}}
	case Corner:
		return Group{Runs: []Run{{0, 0, 0, d, 0}, {0, 0, b, 0, 0}}}
	case Channel:
		return Group{Runs: []Run{{0, 0, 0, d, 0}, {0, 0, b, 0, 0}, {0, d, b, d, 0}}}
	case Box:
		return Group{Runs: []Run{{0, 0, b, 0, 0}, {b, 0, b, d, 0}, {b, d, 0, d, 0}, {0, d, 0, 0, 0}}}
	}
	return Group{Bends: []Bend{{0, 0, b / 2, 0, 2 * math.Pi, 0}}}
}

// The integrals over lines and the closed forms of the table are two separate roads.
func TestShapesAgreeWithTheirLines(t *testing.T) {
	size := rapid.Float64Range(0.01, 0.3)
	rapid.Check(t, func(t *rapid.T) {
		shape := rapid.SampledFrom(shapes).Draw(t, "shape")
		b, d := size.Draw(t, "b"), size.Draw(t, "d")
		table := must(ShapeProperties(ShapeParams{shape, b, d}))
		lines := must(GroupProperties(asGroup(shape, b, d)))
		scale := math.Pow(b+d, 3)
		for _, c := range []struct {
			what            string
			got, want, unit float64
		}{
			{"L", lines.Length, table.Length, b + d}, {"x̄", lines.CentroidX, table.CentroidX, b + d},
			{"ȳ", lines.CentroidY, table.CentroidY, b + d}, {"Ix", lines.UnitIx, table.UnitIx, scale},
			{"Iy", lines.UnitIy, table.UnitIy, scale}, {"Ixy", lines.UnitIxy, table.UnitIxy, scale},
			{"J", lines.UnitJ, table.UnitJ, scale},
			{"reach x", lines.FarthestX, table.FarthestX, b + d}, {"reach y", lines.FarthestY, table.FarthestY, b + d},
		} {
			if math.Abs(c.got-c.want) > 1e-10*c.unit {
				t.Fatalf("%s: %s by lines %g, by table %g", shape, c.what, c.got, c.want)
			}
		}
		if lines.OneLine != (shape == Line) {
			t.Fatalf("%s: OneLine = %v", shape, lines.OneLine)
		}
	})
}

func TestFiguresOfMeritPublished(t *testing.T) {
	const source = "Shigley, Mechanical Engineering Design, 8th ed., Solutions Manual 9-9 (read): J_u/l in units of a²"
	var rows []published.Row
	for _, c := range []struct {
		shape   Shape
		printed string
	}{{Line, "0.0833"}, {Parallel, "0.3333"}, {Corner, "0.2083"}, {Channel, "0.3056"}, {Box, "0.3333"}, {Ring, "0.25"}} {
		g := must(GroupProperties(asGroup(c.shape, 1, 1)))
		rows = append(rows, published.Row{Name: string(c.shape), Got: g.UnitJ / g.Length, Printed: c.printed, Source: source})
	}
	published.Check(t, rows)
}

func TestUnitPropertiesPublished(t *testing.T) {
	const eighth = "Shigley, Mechanical Engineering Design, 8th ed., Solutions Manual "
	ju := func(s Shape, b, d, unit float64) float64 {
		return must(GroupProperties(asGroup(s, b*unit, d*unit))).UnitJ / math.Pow(unit, 3)
	}
	published.Check(t, []published.Row{
		{Name: "two parallel, b = d = 2 in: J_u, in³", Got: ju(Parallel, 2, 2, inch), Printed: "5.333", Source: eighth + "9-5"},
		{Name: "all round, b = d = 2 in: J_u, in³", Got: ju(Box, 2, 2, inch), Printed: "10.67", Source: eighth + "9-6"},
		{Name: "ring, r 4 cm: J_u, cm³", Got: ju(Ring, 8, 0, 0.01), Printed: "402", Source: eighth + "9-8"},
		{Name: "ring, r 4 cm, leg 5 mm: J, cm⁴", Got: 0.707 * 0.5 * ju(Ring, 8, 0, 0.01), Printed: "142", Source: eighth + "9-8"},
		{Name: "levels 6 in by 8 in: I_u, in³", Got: must(GroupProperties(asGroup(Levels, 6*inch, 8*inch))).UnitIx / math.Pow(inch, 3), Printed: "192", Source: "Shigley, Mechanical Engineering Design, 7th ed., Solutions Manual 9-19"},
	})
}

// Second moments turn with the group: J stays, the principal moments stay.
func TestTurningAndShiftingAGroup(t *testing.T) {
	u := rapid.Float64Range(-0.2, 0.2)
	rapid.Check(t, func(t *rapid.T) {
		var g, h Group
		phi, sx, sy := u.Draw(t, "phi")*15, u.Draw(t, "sx"), u.Draw(t, "sy")
		s, c := math.Sincos(phi)
		turn := func(x, y float64) (float64, float64) { return c*x - s*y + sx, s*x + c*y + sy }
		for i := range 3 {
			r := Run{u.Draw(t, fmt.Sprint("x1", i)), u.Draw(t, "y1"), u.Draw(t, "x2"), u.Draw(t, "y2"), 0}
			if math.Hypot(r.X1-r.X2, r.Y1-r.Y2) < 1e-3 {
				t.Skip("no length")
			}
			g.Runs = append(g.Runs, r)
			r.X1, r.Y1 = turn(r.X1, r.Y1)
			r.X2, r.Y2 = turn(r.X2, r.Y2)
			h.Runs = append(h.Runs, r)
		}
		b := Bend{u.Draw(t, "bx"), u.Draw(t, "by"), 0.05, 0.3, 2.9, 0}
		g.Bends = []Bend{b}
		b.X, b.Y = turn(b.X, b.Y)
		b.From, b.To = b.From+phi, b.To+phi
		h.Bends = []Bend{b}
		p, q := must(GroupProperties(g)), must(GroupProperties(h))
		x, y := turn(p.CentroidX, p.CentroidY)
		pp, qp := p.principal(), q.principal()
		for _, d := range []float64{q.CentroidX - x, q.CentroidY - y, q.UnitJ - p.UnitJ, qp.greatest - pp.greatest, qp.least - pp.least, q.Length - p.Length} {
			if math.Abs(d) > 1e-9 {
				t.Fatalf("turning changes the group by %g", d)
			}
		}
	})
}

// An arc is the limit of many short chords.
func TestBendIsTheLimitOfChords(t *testing.T) {
	b := Bend{0.02, -0.01, 0.06, 0.4, 4.1, 1.5}
	var chords Group
	const n = 4000
	point := func(i int) (float64, float64) {
		s, c := math.Sincos(b.From + (b.To-b.From)*float64(i)/n)
		return b.X + b.Radius*c, b.Y + b.Radius*s
	}
	for i := range n {
		x1, y1 := point(i)
		x2, y2 := point(i + 1)
		chords.Runs = append(chords.Runs, Run{x1, y1, x2, y2, b.Weight})
	}
	p, q := must(GroupProperties(Group{Bends: []Bend{b}})), must(GroupProperties(chords))
	near(t, "L", p.Length, q.Length, 1e-6)
	near(t, "x̄ + 1", p.CentroidX+1, q.CentroidX+1, 1e-8)
	near(t, "ȳ + 1", p.CentroidY+1, q.CentroidY+1, 1e-8)
	near(t, "Ix", p.UnitIx, q.UnitIx, 1e-6)
	near(t, "Iy", p.UnitIy, q.UnitIy, 1e-6)
	near(t, "Ixy", p.UnitIxy, q.UnitIxy, 1e-6)
	near(t, "reach x", p.FarthestX, q.FarthestX, 1e-6)
	near(t, "reach y", p.FarthestY, q.FarthestY, 1e-6)
}

func TestGroupRefusals(t *testing.T) {
	_, err := GroupProperties(Group{})
	refused(t, "Runs", err)
	_, err = GroupProperties(Group{Runs: []Run{{1, 1, 1, 1, 0}}})
	refused(t, "X2", err)
	_, err = GroupProperties(Group{Bends: []Bend{{0, 0, 1, 0, 6.3, 0}}})
	refused(t, "To", err)
	_, err = GroupProperties(Group{Runs: []Run{{0, 0, 1, 1, -1}}})
	refused(t, "Weight", err)
	_, err = ShapeProperties(ShapeParams{Shape: Box, Width: 1})
	refused(t, "Depth", err)
	_, err = ShapeProperties(ShapeParams{Shape: "star", Width: 1, Depth: 1})
	refused(t, "Shape", err)
}
