package ring

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"axlewright/calc/check"
	"axlewright/internal/published"
)

func capOf(t testing.TB, p CapParams) CapResult {
	t.Helper()
	r, err := Cap(p)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// thinCap is thin enough that only bending counts.
func thinCap() CapParams {
	return CapParams{
		BoreRadius: 1, Layers: []SectionLayer{{Thickness: 0.002, Width: 0.01, Modulus: 2e11}},
		Poisson: 0.3, Force: 1, HalfArc: 0.001, Load: EvenLoad,
	}
}

// A cap whose feet cannot turn but may slide is half of a closed ring pulled
// apart by two opposite forces.
func TestCapIsHalfAPulledRing(t *testing.T) {
	p := thinCap()
	p.FootSlide = 1e9
	r := capOf(t, p)
	radius := 1.001
	ei := 2e11 * 0.01 * math.Pow(0.002, 3) / 12
	published.Check(t, []published.Row{
		{Name: "growth of the diameter along the force, E·I/(F·R³)", Got: 2 * r.Deflection * ei / math.Pow(radius, 3), Printed: "0.149",
			Source: "Timoshenko, Strength of Materials, part II, 3rd ed., thin ring under two forces (from memory)"},
		{Name: "moment under the force, M/(F·R)", Got: -r.CrownMoment / radius, Printed: "0.318",
			Source: "Timoshenko, Strength of Materials, part II, 3rd ed., thin ring under two forces (from memory)"},
		{Name: "moment a quarter turn on, M/(F·R)", Got: r.FootMoment / radius, Printed: "0.182",
			Source: "Timoshenko, Strength of Materials, part II, 3rd ed., thin ring under two forces (from memory)"},
	})
	if math.Abs(r.FootThrust) > 1e-6 {
		t.Errorf("a foot that slides still pushes with %g N", r.FootThrust)
	}
}

// With hinged, sliding feet the cap is statically determinate.
func TestCapOnHingesAndSlides(t *testing.T) {
	p := thinCap()
	p.FootSlide, p.FootTurn = 1e9, 1e9
	r := capOf(t, p)
	radius := 1.001
	ei := 2e11 * 0.01 * math.Pow(0.002, 3) / 12
	near(t, "moment in the middle", r.CrownMoment, -radius/2, 1e-3)
	near(t, "deflection", (r.Deflection-p.FootSlide*r.FootThrust*r.FootThrust)*ei/math.Pow(radius, 3), (3*math.Pi/4-2)/2, 5e-3)
}

// Pressure all round on a half ring whose feet slide freely is hoop tension only.
func TestEvenPressureAllRoundIsHoopTension(t *testing.T) {
	p := CapParams{
		BoreRadius: 0.042, Layers: []SectionLayer{{Thickness: 0.005, Width: 0.026, Modulus: 168e9}},
		Poisson: 0.3, Force: 1000, HalfArc: math.Pi / 2, Load: EvenLoad, FootSlide: 1e3,
	}
	r := capOf(t, p)
	near(t, "hoop force", r.CrownForce, 500, 1e-3)
	near(t, "stress at the foot, mean of hoop tension", r.FootInner, 500/(0.005*0.026), 0.07)
}

// The force must reach the feet, and the section must carry what Cap says.
func TestCapBalances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := CapParams{
			BoreRadius: rapid.Float64Range(0.03, 0.06).Draw(t, "bore"),
			Layers: []SectionLayer{
				{rapid.Float64Range(0.008, 0.025).Draw(t, "t"), 0.026, 168e9},
				{rapid.Float64Range(0.003, 0.01).Draw(t, "overlay"), 0.026, 206e9},
			},
			Bond: rapid.Float64Range(0, 1).Draw(t, "bond"), Poisson: 0.3, Force: 20e3,
			HalfArc:   rapid.Float64Range(0.05, math.Pi/2).Draw(t, "arc"),
			Load:      rapid.SampledFrom([]ArcLoad{EvenLoad, CosineLoad}).Draw(t, "load"),
			FootTurn:  rapid.Float64Range(0, 1e-6).Draw(t, "turn"),
			FootSlide: rapid.Float64Range(0, 1e-8).Draw(t, "slide"),
		}
		s := newCurvedSection(p.BoreRadius, p.Layers, p.Bond, p.Poisson)
		a := newCapArch(p, s)
		n0, m0 := a.redundants()
		foot := a.forces(math.Pi/2, n0, m0)
		if math.Abs(foot.n-p.Force/2) > 1e-9*p.Force {
			t.Errorf("each foot carries %g of %g", foot.n, p.Force)
		}
		// The least energy belongs to the true hoop force and moment.
		least := a.energy(n0, m0)
		for _, d := range [][2]float64{{100, 0}, {-100, 0}, {0, 5}, {0, -5}} {
			if a.energy(n0+d[0], m0+d[1]) < least {
				t.Errorf("energy falls away from the solution by %v", d)
			}
		}
		// Sum of stress over the section.
		var force, moment float64
		const strips = 2000
		for i, l := range s.layers {
			for k := range strips {
				r := l.inner + (l.outer-l.inner)*(float64(k)+0.5)/strips
				dA := l.area / strips
				sigma := s.stress(i, r, foot.n, foot.m)
				force += sigma * dA
				moment += sigma * dA * (s.centroid - r)
			}
		}
		if math.Abs(force-foot.n) > 1e-5*p.Force || math.Abs(moment-foot.m) > 1e-5*(math.Abs(foot.m)+p.Force*s.centroid*1e-2) {
			t.Errorf("section carries %g N, %g N·m; want %g, %g", force, moment, foot.n, foot.m)
		}
	})
}

func TestCapStressIsThatOfTheCurvedBeam(t *testing.T) {
	p := CapParams{
		BoreRadius: 0.042, Layers: []SectionLayer{{0.017, 0.026, 168e9}},
		Poisson: 0.26, Force: 30e3, HalfArc: 1, Load: CosineLoad,
	}
	r := capOf(t, p)
	b, err := CurvedBeam(CurvedBeamParams{
		InnerRadius: 0.042, OuterRadius: 0.059, InnerWidth: 0.026, OuterWidth: 0.026, Force: r.CrownForce, Moment: r.CrownMoment,
	})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "inner", r.CrownInner, b.InnerStress, 1e-9)
	near(t, "outer", r.CrownOuter, b.OuterStress, 1e-9)
}

func TestTwoBondedLayersOfOneMetalAreOne(t *testing.T) {
	p := CapParams{BoreRadius: 0.042, Layers: []SectionLayer{{0.017, 0.026, 168e9}}, Poisson: 0.26, Force: 30e3, HalfArc: 1, Load: CosineLoad}
	whole := capOf(t, p)
	p.Layers, p.Bond = []SectionLayer{{0.010, 0.026, 168e9}, {0.007, 0.026, 168e9}}, 1
	split := capOf(t, p)
	near(t, "stiffness", split.Stiffness, whole.Stiffness, 1e-9)
	near(t, "inner stress", split.CrownInner, whole.CrownInner, 1e-9)
	near(t, "outer stress", split.CrownOuter, whole.CrownOuter, 1e-9)
	p.Bond = 0
	if loose := capOf(t, p); loose.Stiffness >= split.Stiffness {
		t.Errorf("sliding layers are as stiff as one: %g, %g", loose.Stiffness, split.Stiffness)
	}
}

// As the bore grows the layered ring becomes the straight layered beam.
func TestLargeRingIsAStraightBeam(t *testing.T) {
	layers := []SectionLayer{{0.014, 0.06, 165e9}, {0.006, 0.06, 206e9}}
	for _, bond := range []float64{0, 0.4, 1} {
		const bore = 20.0
		s := newCurvedSection(bore, layers, bond, 0.3)
		// A moment that straightens pulls at the inner face, the bottom.
		straight := composite(t, CompositeParams{Layers: layers, Bond: bond, Moment: 100})
		near(t, "stiffness", s.bend*s.centroid, straight.Stiffness, 2e-3)
		near(t, "inner stress", s.stress(0, bore, 0, 100), straight.BottomStress[0], 2e-3)
		near(t, "outer stress", s.stress(1, bore+0.020, 0, 100), straight.TopStress[1], 2e-3)
	}
}

func TestOverlayStiffensAndRelievesTheCap(t *testing.T) {
	p := CapParams{BoreRadius: 0.042, Layers: []SectionLayer{{0.017, 0.026, 168e9}}, Poisson: 0.26, Force: 30e3, HalfArc: 1, Load: CosineLoad}
	bare := capOf(t, p)
	p.Layers = append(p.Layers, SectionLayer{0.006, 0.026, 206e9})
	last := bare.Stiffness
	for _, bond := range []float64{0, 0.5, 1} {
		p.Bond = bond
		r := capOf(t, p)
		if r.Stiffness <= last {
			t.Errorf("bond %g: stiffness %g does not grow from %g", bond, r.Stiffness, last)
		}
		if r.MaxTension >= bare.MaxTension {
			t.Errorf("bond %g: tension %g is not below the bare cap's %g", bond, r.MaxTension, bare.MaxTension)
		}
		last = r.Stiffness
	}
}

func TestCapRefusesAnArcPastItsFeet(t *testing.T) {
	good := CapParams{BoreRadius: 0.042, Layers: []SectionLayer{{0.017, 0.026, 168e9}}, Poisson: 0.26, Force: 30e3, HalfArc: 1, Load: EvenLoad}
	for name, spoil := range map[string]func(*CapParams){
		"HalfArc":  func(p *CapParams) { p.HalfArc = 2 },
		"Force":    func(p *CapParams) { p.Force = 0 },
		"Load":     func(p *CapParams) { p.Load = "" },
		"Bond":     func(p *CapParams) { p.Bond = -0.1 },
		"FootTurn": func(p *CapParams) { p.FootTurn = math.NaN() },
	} {
		bad := good
		spoil(&bad)
		var r *check.RangeError
		if _, err := Cap(bad); !errors.As(err, &r) || r.Param != name {
			t.Errorf("got %v, want a range error on %s", err, name)
		}
	}
}

// The bearing's pressure in closed form against a sum of thin slices.
func TestPressureOnTheArchAgreesWithSlices(t *testing.T) {
	for _, load := range []ArcLoad{EvenLoad, CosineLoad} {
		for _, arc := range []float64{0.3, math.Pi / 3, math.Pi / 2} {
			a := capArch{p: CapParams{HalfArc: arc, Load: load}, s: curvedSection{centroid: 0.05}, pressure: 1}
			for _, phi := range []float64{0.1, 0.9, math.Pi / 2} {
				const slices = 20000
				var n, v float64
				end := math.Min(phi, arc)
				for i := range slices {
					s := end * (float64(i) + 0.5) / slices
					q := end / slices
					if load == CosineLoad {
						q *= math.Cos(math.Pi / 2 * s / arc)
					}
					n, v = n+q*math.Sin(phi-s), v-q*math.Cos(phi-s)
				}
				got := a.bearing(phi)
				if math.Abs(got.n-n) > 1e-8 || math.Abs(got.v-v) > 1e-8 || math.Abs(got.m-0.05*n) > 1e-9 {
					t.Errorf("%s over %g at %g: %+v, slices %g and %g", load, arc, phi, got, n, v)
				}
			}
		}
	}
}

func BenchmarkCap(b *testing.B) {
	p := CapParams{
		BoreRadius: 0.042, Layers: []SectionLayer{{0.017, 0.026, 168e9}, {0.010, 0.026, 206e9}}, Bond: 0.35, Poisson: 0.27,
		Force: 1, HalfArc: math.Pi / 3, Load: CosineLoad,
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Cap(p); err != nil {
			b.Fatal(err)
		}
	}
}
