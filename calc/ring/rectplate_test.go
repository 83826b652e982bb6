package ring

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"axlewright/calc/check"
	"axlewright/internal/published"
)

// pressed returns a plate of a × 1 m under a pressure of 1 Pa, D = 1 N·m·E/E.
func pressed(a float64, edges [4]Edge, nu float64) PatchPlateParams {
	return PatchPlateParams{
		Length: a, Width: 1, Thickness: 0.01, Modulus: 12 * (1 - nu*nu) * 1e6, Poisson: nu,
		Left: edges[0], Right: edges[1], Near: edges[2], Far: edges[3],
		Force: a, PatchX: a / 2, PatchY: 0.5, PatchA: a, PatchB: 1,
	}
}

// patched returns a square of 1 m with D = 1 N·m under 1 N on a central patch.
func patched(edge Edge, u, v float64) PatchPlateParams {
	p := pressed(1, [4]Edge{edge, edge, edge, edge}, 0.3)
	p.PatchA, p.PatchB = u, v
	return p
}

func patchPlate(t testing.TB, p PatchPlateParams) PatchPlateResult {
	t.Helper()
	r, err := PatchPlate(p)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func solved(t testing.TB, p PatchPlateParams) solvedPlate {
	t.Helper()
	if p.Degree == 0 {
		p.Degree = 8
	}
	s, _, err := solvePatchPlate(p)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

const (
	roark      = "Young and Budynas, Roark's Formulas for Stress and Strain, 7th ed., table 11.4, "
	timoshenko = "Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed., "
)

func TestSimplySupportedPlatePublished(t *testing.T) {
	all := [4]Edge{SimplySupported, SimplySupported, SimplySupported, SimplySupported}
	const es = 12 * (1 - 0.09) // E·h³ for D = 1
	var rows []published.Row
	for _, c := range []struct {
		ratio       float64
		alpha, beta string
	}{
		{1, "0.0444", "0.2874"}, {1.2, "0.0616", "0.3762"}, {1.4, "0.0770", "0.4530"}, {1.6, "0.0906", "0.5172"},
		{2, "0.1110", "0.6102"}, {3, "0.1335", "0.7134"}, {4, "0.1400", "0.7410"}, {5, "0.1417", "0.7476"},
	} {
		p := pressed(c.ratio, all, 0.3)
		p.Degree = 14
		r := patchPlate(t, p)
		name := fmt.Sprintf("pressure, a/b = %g", c.ratio)
		rows = append(rows,
			published.Row{Name: name + ", α", Got: r.Middle * es, Printed: c.alpha, Source: roark + "case 1a",
				Within: 0.005, Why: "the table is α to three or four figures, worked with rounded coefficients"},
			published.Row{Name: name + ", β", Got: 6 * r.Moment, Printed: c.beta, Source: roark + "case 1a",
				Within: 0.003, Why: "the table rounds the moment to four decimals before it multiplies by six"})
	}
	for _, c := range []struct {
		u, v    float64
		printed string
	}{
		{0.2, 0.2, "1.28"}, {0.2, 0.4, "1.08"}, {0.4, 0.4, "0.84"}, {0.4, 0.8, "0.62"}, {0.6, 0.6, "0.60"}, {0.8, 0.8, "0.42"},
	} {
		r := patchPlate(t, patched(SimplySupported, c.u, c.v))
		near(t, "largest stress of a hinged plate under its pad", r.PadStress, r.Stress, 1e-9)
		rows = append(rows, published.Row{Name: fmt.Sprintf("patch %g × %g of a square, β", c.u, c.v), Got: 6 * r.Moment, Printed: c.printed,
			Source: roark + "case 1c", Within: 0.015, Why: "the table is rounded to two decimals and unlike in its two directions"})
	}
	rows = append(rows, published.Row{Name: "small patch, w·D/(P·a²)", Got: patchPlate(t, patched(SimplySupported, 0.01, 0.01)).Middle, Printed: "0.01160",
		Source: timoshenko + "table 23 (from memory)", Within: 0.002, Why: "the table is for a point"})
	published.Check(t, rows)
}

func TestClampedPlatePublished(t *testing.T) {
	all := [4]Edge{Clamped, Clamped, Clamped, Clamped}
	var rows []published.Row
	for _, c := range []struct {
		ratio              float64
		deflection, moment string
	}{{1, "0.00126", "0.0513"}, {1.5, "0.00220", "0.0757"}, {2, "0.00254", "0.0829"}} {
		p := pressed(c.ratio, all, 0.3)
		p.Degree = 12
		r := patchPlate(t, p)
		name := fmt.Sprintf("clamped, b/a = %g", c.ratio)
		rows = append(rows,
			published.Row{Name: name + ", w·D/(q·a⁴)", Got: r.Middle, Printed: c.deflection, Source: timoshenko + "table 35 (from memory)",
				Within: 0.005, Why: "the table cuts its third figure"},
			published.Row{Name: name + ", edge moment/(q·a²)", Got: r.EdgeMoment, Printed: c.moment, Source: timoshenko + "table 35 (from memory)",
				Within: 0.002, Why: "the moment at the edge converges last"})
	}
	p := patched(Clamped, 0.02, 0.02)
	p.Degree = 12
	point := patchPlate(t, p)
	rows = append(rows,
		published.Row{Name: "clamped, central point, w·D/(P·a²)", Got: point.Middle, Printed: "0.00560", Source: timoshenko + "table 37 (from memory)"},
		published.Row{Name: "clamped, central point, edge moment/P", Got: point.EdgeMoment, Printed: "0.1257", Source: timoshenko + "table 37 (from memory)",
			Within: 0.01, Why: "the moment at the edge converges last"})
	published.Check(t, rows)
}

// half returns half a unit of the last digit of "0.xx", as a share.
func half(printed string) float64 {
	value, _ := strconv.ParseFloat(printed, 64)
	return 0.5 * math.Pow10(2-len(printed)) / value
}

func TestOneFreeEdgePublished(t *testing.T) {
	const es = 12 * (1 - 0.09)
	var rows []published.Row
	for _, c := range []struct {
		ratio       float64 // side at right angles to the free edge over the free edge
		alpha, beta string  // beta empty where the table is misprinted
	}{{0.5, "0.08", "0.36"}, {2.0 / 3, "0.106", ""}, {1, "0.14", "0.67"}, {1.5, "0.16", "0.77"}, {2, "0.165", "0.79"}, {4, "0.167", "0.80"}} {
		p := pressed(c.ratio, [4]Edge{SimplySupported, Free, SimplySupported, SimplySupported}, 0.3)
		r := patchPlate(t, p)
		w := solved(t, p).deflection(c.ratio, 0.5)
		name := fmt.Sprintf("three edges hinged, one free, a/b = %g", c.ratio)
		rows = append(rows, published.Row{Name: name + ", α", Got: w * es, Printed: c.alpha, Source: roark + "case 2a",
			Within: max(0.006, half(c.alpha)), Why: "the table is rounded to two or three figures and half a per cent high at a/b = 4"})
		if c.beta != "" {
			rows = append(rows, published.Row{Name: name + ", β", Got: 6 * r.Moment, Printed: c.beta, Source: roark + "case 2a",
				Within: 0.01, Why: "the table is rounded to two figures"})
		}
	}
	for _, c := range []struct {
		ratio         float64
		opposite, mid string
	}{{0.5, "", "0.066"}, {0.75, "", "0.148"}, {1, "0.321", "0.259"}, {1.5, "0.727", "0.484"}, {2, "1.226", "0.605"}, {3, "2.105", "0.519"}} {
		// The source counts in the depth from the fixed to the free edge, here 1 m.
		s := solved(t, PatchPlateParams{
			Length: 1, Width: c.ratio, Thickness: 0.01, Modulus: 12 * 0.96 * 1e6, Poisson: 0.2,
			Left: Clamped, Right: Free, Near: Clamped, Far: Clamped, Degree: 10,
			Force: c.ratio, PatchX: 0.5, PatchY: c.ratio / 2, PatchA: 1, PatchB: c.ratio,
		})
		name := fmt.Sprintf("three edges fixed, one free, a/b = %g", c.ratio)
		opposite, _, _ := s.moments(0, c.ratio/2)
		_, mid, _ := s.moments(1, c.ratio/2)
		rows = append(rows, published.Row{Name: name + ", middle of the free edge", Got: 6 * mid, Printed: c.mid, Source: roark + "case 10a (from memory)",
			Within: 0.02, Why: "the table comes from finite differences, for ν = 0.2"})
		if c.opposite != "" {
			rows = append(rows, published.Row{Name: name + ", middle of the fixed edge opposite", Got: -6 * opposite, Printed: c.opposite, Source: roark + "case 10a (from memory)",
				Within: 0.06, Why: "the table comes from finite differences, which take the peak at a fixed edge too low"})
		}
	}
	published.Check(t, rows)
}

// A strip with free sides and ν = 0 is a beam; the welds are then the springs
// of frames: end moment q·L²/12·3·f/(2 + f).
func TestWeldedStripIsABeamWithTurningEnds(t *testing.T) {
	for _, f := range []float64{0, 0.2, 0.5, 0.9, 1} {
		p := pressed(2, [4]Edge{Welded, Welded, Free, Free}, 0)
		p.Fixity = f
		s := solved(t, p)
		end, _, _ := s.moments(0, 0.5)
		middle, _, _ := s.moments(1, 0.5)
		held := 4.0 / 12 * 3 * f / (2 + f)
		if math.Abs(-end-held) > 1e-6 {
			t.Errorf("fixity %g: end moment %g, want %g", f, -end, held)
		}
		near(t, fmt.Sprintf("fixity %g, middle", f), middle, 4.0/8-held, 1e-6)
	}
}

func TestPlateStiffensWithFixity(t *testing.T) {
	p := PatchPlateParams{
		Length: 0.09, Width: 0.07, Thickness: 0.008, Modulus: 206e9, Poisson: 0.3,
		Left: Welded, Right: Welded, Near: Welded, Far: Free, Force: 10e3,
		PatchX: 0.045, PatchY: 0.045, PatchA: 0.02, PatchB: 0.02,
	}
	last := 0.0
	for _, f := range []float64{0, 0.25, 0.5, 0.75, 0.95, 1} {
		p.Fixity = f
		r := patchPlate(t, p)
		if r.Stiffness <= last {
			t.Errorf("fixity %g: stiffness %g does not grow from %g", f, r.Stiffness, last)
		}
		last = r.Stiffness
	}
	p.Fixity = 1
	clamped := p
	clamped.Left, clamped.Right, clamped.Near = Clamped, Clamped, Clamped
	near(t, "fixity 1 is clamped", patchPlate(t, p).Stiffness, patchPlate(t, clamped).Stiffness, 1e-12)
	p.Fixity = 0
	hinged := p
	hinged.Left, hinged.Right, hinged.Near = SimplySupported, SimplySupported, SimplySupported
	near(t, "fixity 0 is hinged", patchPlate(t, p).Stiffness, patchPlate(t, hinged).Stiffness, 1e-12)
}

// Scaling: deflection goes with 1/E and 1/h³, stress with 1/h²; a plate turned
// by a quarter turn is the same plate.
func TestPatchPlateScalesAndTurns(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edges := rapid.SampledFrom([][4]Edge{
			{Clamped, Free, Clamped, Clamped}, {Welded, Welded, Welded, Free}, {SimplySupported, Clamped, SimplySupported, Free}, {Clamped, Free, Free, Free},
		}).Draw(t, "edges")
		p := PatchPlateParams{
			Length: 0.08, Width: rapid.Float64Range(0.05, 0.15).Draw(t, "width"), Thickness: 0.005, Modulus: 2e11, Poisson: 0.3,
			Left: edges[0], Right: edges[1], Near: edges[2], Far: edges[3], Fixity: 0.5, Force: 1000, PatchA: 0.02, PatchB: 0.015,
			PatchX: rapid.Float64Range(0.011, 0.069).Draw(t, "x"), PatchY: 0.025, Degree: 6,
		}
		solve := func(p PatchPlateParams) PatchPlateResult {
			r, err := PatchPlate(p)
			if err != nil {
				t.Fatal(err)
			}
			return r
		}
		base := solve(p)
		agree := func(what string, got, want float64) {
			if math.Abs(got-want) > 1e-6*math.Abs(want) {
				t.Errorf("%s: got %g, want %g", what, got, want)
			}
		}
		thick := p
		thick.Thickness, thick.Modulus = 2*p.Thickness, 3*p.Modulus
		r := solve(thick)
		agree("deflection", r.Deflection, base.Deflection/24)
		agree("stress", r.Stress, base.Stress/4)
		turned := p
		turned.Length, turned.Width = p.Width, p.Length
		turned.Left, turned.Right, turned.Near, turned.Far = p.Near, p.Far, p.Left, p.Right
		turned.PatchX, turned.PatchY, turned.PatchA, turned.PatchB = p.PatchY, p.PatchX, p.PatchB, p.PatchA
		r = solve(turned)
		agree("deflection, turned", r.Deflection, base.Deflection)
		agree("stress, turned", r.Stress, base.Stress)
	})
}

func TestPatchPlateRefusesAPlateThatIsNotHeld(t *testing.T) {
	good := patched(Clamped, 0.2, 0.2)
	for name, c := range map[string]struct {
		param string
		spoil func(*PatchPlateParams)
	}{
		"patch over the edge": {"PatchX", func(p *PatchPlateParams) { p.PatchX = 0.05 }},
		"no patch":            {"PatchY", func(p *PatchPlateParams) { p.PatchB = 0 }},
		"held by one hinge": {"Left", func(p *PatchPlateParams) {
			p.Left, p.Right, p.Near, p.Far = SimplySupported, Free, Free, Free
		}},
		"no edge":     {"Left", func(p *PatchPlateParams) { p.Far = "" }},
		"too thick":   {"Thickness", func(p *PatchPlateParams) { p.Thickness = 0.6 }},
		"fixity past": {"Fixity", func(p *PatchPlateParams) { p.Fixity = 1.1 }},
		"degree":      {"Degree", func(p *PatchPlateParams) { p.Degree = 3 }},
	} {
		bad := good
		c.spoil(&bad)
		var r *check.RangeError
		if _, err := PatchPlate(bad); !errors.As(err, &r) || r.Param != c.param {
			t.Errorf("%s: got %v, want a range error on %s", name, err, c.param)
		}
	}
}

func BenchmarkPatchPlate(b *testing.B) {
	p := patched(Clamped, 0.2, 0.2)
	for b.Loop() {
		if _, err := PatchPlate(p); err != nil {
			b.Fatal(err)
		}
	}
}
