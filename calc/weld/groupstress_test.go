package weld

import (
	"fmt"
	"math"
	"testing"

	"axlewright/internal/published"
	"pgregory.net/rapid"
)

func TestGroupInTorsionPublished(t *testing.T) {
	const eighth = "Shigley, Mechanical Engineering Design, 8th ed., Solutions Manual "
	throat := 0.707 * 5.0 / 16 * inch // the book's 0.707
	pull := func(s Shape) GroupStressResult {
		g := asGroup(s, 2*inch, 2*inch)
		return must(GroupStress(GroupLoad{Group: g, Throat: throat, ForceY: -kip, AtX: 8 * inch, AtY: inch}))
	}
	two, round := pull(Levels), pull(Box)
	kpsi := 1000 * psi
	polar := throat * must(GroupProperties(asGroup(Levels, 2*inch, 2*inch))).UnitJ
	secondary := kip * 7 * inch * inch / polar // each way, at a corner 1 in off both axes
	ring := must(GroupStress(GroupLoad{Group: asGroup(Ring, 80*mm, 0), Throat: 0.707 * 5 * mm, MomentZ: 200e3 * mm}))
	published.Check(t, []published.Row{
		{Name: "two parallel: primary, kpsi/kip", Got: two.Direct / kpsi, Printed: "1.13", Source: eighth + "9-5"},
		{Name: "two parallel: J, in⁴", Got: polar / math.Pow(inch, 4), Printed: "1.18", Source: eighth + "9-5"},
		{Name: "two parallel: secondary each way, kpsi/kip", Got: secondary / kpsi, Printed: "5.93", Source: eighth + "9-5", Within: 2e-3, Why: "the solution rounds J to 1.18 in⁴"},
		{Name: "two parallel: greatest, kpsi/kip", Got: two.Stress / kpsi, Printed: "9.22", Source: eighth + "9-5", Within: 2e-3, Why: "the solution rounds J to 1.18 in⁴"},
		{Name: "two parallel: load at 20 kpsi, kip", Got: 20 / (two.Stress / kpsi), Printed: "2.17", Source: eighth + "9-5", Within: 3e-3, Why: "the solution rounds J to 1.18 in⁴"},
		{Name: "two parallel: load at 11 kpsi, kip", Got: 11 / (two.Stress / kpsi), Printed: "1.19", Source: eighth + "9-5(b)"},
		{Name: "all round: primary, kpsi/kip", Got: round.Direct / kpsi, Printed: "0.566", Source: eighth + "9-6"},
		{Name: "all round: greatest, kpsi/kip", Got: round.Stress / kpsi, Printed: "4.61", Source: eighth + "9-6", Within: 3e-3, Why: "the solution goes on with 0.556 for 0.566"},
		{Name: "ring r 40, leg 5, 200 N·m a kN, two welds: MPa/kN", Got: ring.Stress / 2 / mpa, Printed: "2.82", Source: eighth + "9-8", Within: 3e-3, Why: "the solution rounds J to 142 cm⁴"},
	})
}

func TestChannelGroupPublished(t *testing.T) {
	const source = "Shigley, Mechanical Engineering Design, 8th ed., example 9-1 (from memory)"
	g := asGroup(Channel, 56*mm, 190*mm)
	p := must(GroupProperties(g))
	throat := 0.707 * 6 * mm
	// The force acts 100 mm beyond the upright weld, on the side away from the free ends.
	load := GroupLoad{Group: g, Throat: throat, ForceY: -25e3, AtX: -100 * mm, AtY: 95 * mm}
	r := must(GroupStress(load))
	load.Group.Runs = g.Runs[1:] // the level welds alone, to see their free ends
	moment := 25e3 * (0.1 + p.CentroidX)
	secondary := moment * math.Hypot(56*mm-p.CentroidX, 95*mm) / (throat * p.UnitJ)
	published.Check(t, []published.Row{
		{Name: "throat area, mm²", Got: throat * p.Length / (mm * mm), Printed: "1280", Source: source, Within: 1e-3, Why: "the book rounds to three figures"},
		{Name: "primary shear, MPa", Got: r.Direct / mpa, Printed: "19.5", Source: source},
		{Name: "centroid from the upright weld, mm", Got: p.CentroidX / mm, Printed: "10.4", Source: source},
		{Name: "J, 1e6 mm⁴", Got: throat * p.UnitJ / 1e-6, Printed: "7.07", Source: source},
		{Name: "moment, N·m", Got: moment, Printed: "2760", Source: source},
		{Name: "secondary shear at a free end, MPa", Got: secondary / mpa, Printed: "41.1", Source: source, Within: 4e-3, Why: "the book rounds r to 105 mm and prints 41.0"},
		{Name: "greatest, at the corners, MPa", Got: r.Stress / mpa, Printed: "43.9", Source: source, Within: 2e-3, Why: "the book carries rounded shears"},
	})
	if r.X != 0 || (r.Y != 0 && r.Y != 190*mm) {
		t.Errorf("worst point at %g, %g, want a corner", r.X, r.Y)
	}
	// The same moment from the side of the free ends is worse: both shears go the same way there.
	load.Group, load.AtX = g, 2*p.CentroidX+100*mm
	mirrored := must(GroupStress(load))
	published.Check(t, []published.Row{{
		Name: "greatest with the force on the other side, MPa", Got: mirrored.Stress / mpa, Printed: "52.6",
		Source: "derived: data of Shigley, 8th ed., example 9-1, force mirrored about the centroid; vector sum by hand",
	}})
	near(t, "where", mirrored.X, 56*mm, 1e-12)
}

func TestBendingOfAWeldedBarPublished(t *testing.T) {
	// The line method on the table's I_u: M·c/I and V/A, square to each other.
	const b, d, arm, force = 50 * mm, 80 * mm, 150 * mm, 10e3
	throat := 4 * mm
	table := must(ShapeProperties(ShapeParams{Levels, b, d}))
	r := must(GroupStress(GroupLoad{Group: asGroup(Levels, b, d), Throat: throat, ForceY: -force, AtX: b / 2, AtY: d / 2, AtZ: arm}))
	bending := force * arm * d / 2 / (throat * table.UnitIx)
	shear := force / (throat * table.Length)
	near(t, "M·c/I with V/A", r.Stress, math.Hypot(bending, shear), 1e-12)
	near(t, "direct", r.Direct, shear, 1e-12)
}

// The forces on the weld make up the load: force and moment balance, integrated by
// Simpson's rule, which is exact for a linear stress on straight runs.
func TestGroupStressBalancesTheLoad(t *testing.T) {
	u := rapid.Float64Range(-0.2, 0.2)
	f := rapid.Float64Range(-5e4, 5e4)
	rapid.Check(t, func(t *rapid.T) {
		p := GroupLoad{
			Throat: 4 * mm, ForceX: f.Draw(t, "fx"), ForceY: f.Draw(t, "fy"), ForceZ: f.Draw(t, "fz"),
			AtX: u.Draw(t, "x"), AtY: u.Draw(t, "y"), AtZ: u.Draw(t, "z"),
			MomentX: f.Draw(t, "mx") / 10, MomentY: f.Draw(t, "my") / 10, MomentZ: f.Draw(t, "mz") / 10,
		}
		for i := range 3 {
			r := Run{u.Draw(t, fmt.Sprint("x1", i)), u.Draw(t, "y1"), u.Draw(t, "x2"), u.Draw(t, "y2"), rapid.Float64Range(0.5, 2).Draw(t, "w")}
			if math.Hypot(r.X1-r.X2, r.Y1-r.Y2) < 0.01 {
				t.Skip("no length")
			}
			p.Group.Runs = append(p.Group.Runs, r)
		}
		g := must(GroupProperties(p.Group))
		if g.principal().least < 1e-3*g.UnitJ {
			t.Skip("nearly one line: badly conditioned")
		}
		field, err := p.field("test", &g)
		if err != nil {
			t.Fatal(err)
		}
		greatest := must(GroupStress(p)).Stress
		var sum [6]float64
		for _, r := range p.Group.Runs {
			l := math.Hypot(r.X2-r.X1, r.Y2-r.Y1)
			for i, simpson := range []float64{1.0 / 6, 4.0 / 6, 1.0 / 6} {
				at := float64(i) / 2
				x, y := r.X1+at*(r.X2-r.X1), r.Y1+at*(r.Y2-r.Y1)
				s := field.at(x, y, 1, 0)
				if s.stress() > greatest*(1+1e-9) {
					t.Fatalf("stress %g above the greatest %g", s.stress(), greatest)
				}
				w := simpson * l * p.Throat * r.Weight
				qx, qy, qz := w*s.along, w*s.across, w*s.upright
				sum[0] += qx
				sum[1] += qy
				sum[2] += qz
				sum[3] += y * qz
				sum[4] -= x * qz
				sum[5] += x*qy - y*qx
			}
		}
		want := [6]float64{
			p.ForceX, p.ForceY, p.ForceZ,
			p.MomentX + p.AtY*p.ForceZ - p.AtZ*p.ForceY,
			p.MomentY + p.AtZ*p.ForceX - p.AtX*p.ForceZ,
			p.MomentZ + p.AtX*p.ForceY - p.AtY*p.ForceX,
		}
		for i := range want {
			if math.Abs(sum[i]-want[i]) > 1e-6 {
				t.Fatalf("balance %d: %g, want %g", i, sum[i], want[i])
			}
		}
	})
}

func TestWorstPointOnARingIsFound(t *testing.T) {
	const near = 1e-5 // where the throat turns from pull to push two humps may stand closer than the search's stations; they are as high to this
	u := rapid.Float64Range(-1, 1)
	rapid.Check(t, func(t *rapid.T) {
		b := Bend{0, 0, 0.03, u.Draw(t, "from"), 0, 0}
		b.To = b.From + 3.2 + 3*u.Draw(t, "turn")
		p := GroupLoad{
			Group: Group{Bends: []Bend{b}}, Throat: 3 * mm,
			ForceX: u.Draw(t, "fx"), ForceY: u.Draw(t, "fy"), ForceZ: u.Draw(t, "fz"),
			MomentX: u.Draw(t, "mx") * 0.03, MomentY: u.Draw(t, "my") * 0.03, MomentZ: u.Draw(t, "mz") * 0.03,
		}
		r := must(GroupStress(p))
		g := must(GroupProperties(p.Group))
		field, err := p.field("test", &g)
		if err != nil {
			t.Fatal(err)
		}
		for i := range 3601 {
			s := field.on(b, b.From+(b.To-b.From)*float64(i)/3600)
			if s.stress() > r.Stress*(1+near) || s.equivalent() > r.Equivalent*(1+near) || s.normal() > r.Normal*(1+near) {
				t.Fatalf("a worse point at station %d", i)
			}
		}
	})
}

// A single straight weld carries bending across its line and refuses bending about it.
func TestSingleStraightWeld(t *testing.T) {
	g := Group{Runs: []Run{{0, 0, 30 * mm, 40 * mm, 0}}}
	p := GroupLoad{Group: g, Throat: 4 * mm, AtX: 15 * mm, AtY: 20 * mm, MomentX: 0.8 * 100, MomentY: -0.6 * 100}
	r := must(GroupStress(p)) // 100 N·m square to the line; section modulus a·l²/6
	near(t, "bending across", r.Stress, 100*6/(4*mm*2500*mm*mm), 1e-9)
	p.MomentX, p.MomentY = 0.6*100, 0.8*100
	_, err := GroupStress(p)
	refused(t, "MomentX", err)
}

func TestDoubleThroatHalvesTheStressAndWeightScalesTheForce(t *testing.T) {
	p := GroupLoad{Group: asGroup(Channel, 56*mm, 190*mm), Throat: 4 * mm, ForceY: 1e4, AtX: 0.2, AtZ: 0.03, ForceZ: 5e3}
	r := must(GroupStress(p))
	p.Throat *= 2
	q := must(GroupStress(p))
	near(t, "stress", 2*q.Stress, r.Stress, 1e-12)
	near(t, "force along", q.Along, r.Along, 1e-12)
	near(t, "components", math.Sqrt(q.Along*q.Along+q.Across*q.Across+q.Upright*q.Upright), q.Stress*p.Throat, 1e-12)
	p.Throat /= 2
	for i := range p.Group.Runs {
		p.Group.Runs[i].Weight = 2
	}
	w := must(GroupStress(p))
	near(t, "weight 2 is double throat", w.Stress, q.Stress, 1e-12)
	near(t, "line force", w.Along, q.Along, 1e-12)
}

// The group's equivalent stress is what ThroatStresses gives with the bead on the worse side.
func TestGroupEquivalentAgreesWithThroatStresses(t *testing.T) {
	p := GroupLoad{Group: Group{Runs: []Run{{0, 0, 100 * mm, 0, 0}}}, Throat: 5 * mm, ForceX: 1e4, ForceY: 2e4, ForceZ: -3e4, AtX: 50 * mm}
	r := must(GroupStress(p))
	worst := 0.0
	for _, side := range []float64{1, -1} {
		s := must(ThroatStresses(ThroatForces{r.Along, side * r.Across, r.Upright, p.Throat}))
		c := must(DirectionalCheck(DirectionalParams{s, FilletStrengthParams{470 * mpa, 0.9, 1.25}}))
		worst = math.Max(worst, c.Equivalent)
	}
	near(t, "equivalent", r.Equivalent, worst, 1e-12)
}

func BenchmarkGroupStress(b *testing.B) {
	p := GroupLoad{Group: asGroup(Box, 0.1, 0.06), Throat: 4 * mm, ForceY: 1e4, ForceZ: 2e4, AtX: 0.2, AtZ: 0.03}
	for b.Loop() {
		if _, err := GroupStress(p); err != nil {
			b.Fatal(err)
		}
	}
}
