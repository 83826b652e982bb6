package shaft

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"

	"axlewright/calc/check"
	"axlewright/internal/published"
)

const rigid = 1e15 // N/m, a support that does not give

var near = published.Near

func bend(t testing.TB, p BeamParams, loads []BeamLoad, places ...float64) BendResult {
	t.Helper()
	r, err := Bend(BendParams{Shaft: p, Loads: loads, Places: places})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// pinned returns two supports that hold a shaft as a simple beam.
func pinned(a, b float64) []Support {
	return []Support{{At: a, Axial: rigid, Y: rigid, Z: rigid}, {At: b, Y: rigid, Z: rigid}}
}

// A slender overhung shaft is the handbook's; in both planes alike.
func TestSlenderBeamIsTheHandbooksOverhungShaft(t *testing.T) {
	const l, a, d, e = 0.8, 0.5, 0.01, 206e9
	want, err := OverhungShaft(OverhungParams{Span: l, Overhang: a, Diameter: d, Modulus: e, Force: 10})
	if err != nil {
		t.Fatal(err)
	}
	p := BeamParams{Sections: []Section{{Length: l + a, Outer: d}}, Modulus: e, Poisson: 0.3, Supports: pinned(0, l)}
	r := bend(t, p, []BeamLoad{{At: l + a, Y: 10, Z: -20}}, 0, l, l+a)
	tip := r.Movements[2]
	near(t, "tip, y", tip.Y, want.DeflectionTip, 1e-3)
	near(t, "tip, z", tip.Z, -2*want.DeflectionTip, 1e-3)
	near(t, "slope at the tip", tip.TurnZ, want.SlopeTip, 1e-3)
	near(t, "slope at the tip, other plane", tip.TurnY, 2*want.SlopeTip, 1e-3)
	near(t, "slope at B", r.Movements[1].TurnZ, want.SlopeB, 1e-3)
	near(t, "slope at A", -r.Movements[0].TurnZ, want.SlopeA, 1e-3)
	near(t, "reaction A", -r.Reactions[0].Y, want.ReactionA, 1e-6)
	near(t, "reaction B", -r.Reactions[1].Y, want.ReactionB, 1e-6)
}

// A short stepped cantilever by hand: bending of each piece, and V·L/(κ·G·A).
func TestSteppedCantileverWithShear(t *testing.T) {
	const e, nu = 206e9, 0.3
	p := BeamParams{
		Sections: []Section{{Length: 0.03, Outer: 0.048}, {Length: 0.04, Outer: 0.038, Inner: 0.010}},
		Modulus:  e, Poisson: nu,
		Supports: []Support{{Axial: rigid, Y: rigid, Z: rigid, TurnY: rigid, TurnZ: rigid}},
	}
	tip := bend(t, p, []BeamLoad{{At: 0.07, Y: 1000}}, 0.07).Movements[0]
	i1 := math.Pi / 64 * math.Pow(0.048, 4)
	i2 := math.Pi / 64 * (math.Pow(0.038, 4) - math.Pow(0.010, 4))
	m := 0.010 / 0.038
	h := (1 + m*m) * (1 + m*m)
	kappa := func(m, h float64) float64 { return 6 * (1 + nu) * h / ((7+6*nu)*h + (20+12*nu)*m*m) }
	g := e / (2 * (1 + nu))
	want := (math.Pow(0.07, 3)-math.Pow(0.04, 3))/(3*e*i1) + math.Pow(0.04, 3)/(3*e*i2) +
		0.03/(kappa(0, 1)*g*math.Pi/4*0.048*0.048) + 0.04/(kappa(m, h)*g*math.Pi/4*(0.038*0.038-0.010*0.010))
	near(t, "tip", tip.Y, 1000*want, 1e-6)
	near(t, "solid κ", kappa(0, 1), 6*(1+nu)/(7+6*nu), 1e-12)
}

func drawBeam(t *rapid.T) BeamParams {
	p := BeamParams{Modulus: 206e9, Poisson: 0.3}
	for i := range rapid.IntRange(1, 4).Draw(t, "sections") {
		outer := rapid.Float64Range(0.02, 0.08).Draw(t, fmt.Sprint("outer ", i))
		p.Sections = append(p.Sections, Section{
			Length: rapid.Float64Range(0.02, 0.12).Draw(t, fmt.Sprint("length ", i)), Outer: outer,
			Inner:   outer * rapid.Float64Range(0, 0.8).Draw(t, fmt.Sprint("bore ", i)),
			Windows: rapid.Float64Range(0.5, 1).Draw(t, fmt.Sprint("windows ", i)),
		})
	}
	spring := func(name string) float64 { return rapid.Float64Range(1e7, 1e10).Draw(t, name) }
	p.Supports = []Support{
		{At: 0.1 * p.length(), Axial: spring("axial"), Y: spring("y1"), Z: spring("z1"), TurnY: 1e4, TurnZ: 1e5},
		{At: 0.8 * p.length(), Y: spring("y2"), Z: spring("z2")},
	}
	return p
}

func TestBendBalances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawBeam(t)
		force := func(name string) float64 { return rapid.Float64Range(-1e4, 1e4).Draw(t, name) }
		load := BeamLoad{
			At:    p.length() * rapid.Float64Range(0, 1).Draw(t, "at"),
			Axial: force("axial load"), Y: force("y"), Z: force("z"), TurnY: force("turn y"), TurnZ: force("turn z"),
		}
		r, err := Bend(BendParams{Shaft: p, Loads: []BeamLoad{load}})
		if err != nil {
			t.Fatal(err)
		}
		sum := [5]float64{load.Axial, load.Y, load.Z, load.TurnY - load.At*load.Z, load.TurnZ + load.At*load.Y}
		for _, q := range r.Reactions {
			sum[0] += q.Axial
			sum[1] += q.Y
			sum[2] += q.Z
			sum[3] += q.TurnY - q.At*q.Z
			sum[4] += q.TurnZ + q.At*q.Y
		}
		for i, s := range sum {
			if math.Abs(s) > 1e-9*1e4*10 {
				t.Errorf("freedom %d is out of balance by %g", i, s)
			}
		}
	})
}

// Influence is symmetric by Maxwell, positive, and agrees with Bend; cutting
// the shaft at more stations changes nothing.
func TestInfluenceAgreesWithBend(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawBeam(t)
		a := p.length() * rapid.Float64Range(0, 1).Draw(t, "a")
		b := p.length() * rapid.Float64Range(0, 1).Draw(t, "b")
		c, err := Influence(p, []float64{a, b})
		if err != nil {
			t.Fatal(err)
		}
		r, err := Bend(BendParams{Shaft: p, Loads: []BeamLoad{{At: a, Y: 1}, {At: a, TurnY: 1}}, Places: []float64{b, 0.33 * p.length()}})
		if err != nil {
			t.Fatal(err)
		}
		moved := r.Movements[0]
		wantY, wantZ := c.At(AlongY, Freedoms+AlongY), c.At(AboutY, Freedoms+AlongZ)
		if math.Abs(moved.Y-wantY) > 1e-9*math.Abs(wantY)+1e-18 || math.Abs(moved.Z-wantZ) > 1e-9*math.Abs(wantZ)+1e-18 {
			t.Errorf("moved %+v, influence %g, %g", moved, wantY, wantZ)
		}
		for i := range 2 * Freedoms {
			if c.At(i, i) <= 0 {
				t.Errorf("freedom %d moves against its own load: %g", i, c.At(i, i))
			}
		}
	})
}

// The free shaft passes rigid motions without force, and with springs added at
// its stations it is the shaft on springs.
func TestStationStiffnessIsThatOfTheFreeShaft(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawBeam(t)
		supports := p.Supports
		p.Supports = nil
		stations := []float64{supports[0].At, supports[1].At, p.length()}
		k, err := StationStiffness(p, stations)
		if err != nil {
			t.Fatal(err)
		}
		count := Freedoms * len(stations)
		for freedom := range Freedoms {
			rigidly := mat.NewVecDense(count, nil)
			for i, x := range stations {
				rigidly.SetVec(Freedoms*i+freedom, 1)
				if freedom == AboutY {
					rigidly.SetVec(Freedoms*i+AlongZ, -x)
				}
				if freedom == AboutZ {
					rigidly.SetVec(Freedoms*i+AlongY, x)
				}
			}
			var force mat.VecDense
			force.MulVec(k, rigidly)
			if mat.Norm(&force, math.Inf(1)) > 1e-6*mat.Norm(k, math.Inf(1))*p.length() {
				t.Errorf("rigid motion %d needs %v", freedom, mat.Formatted(&force))
			}
		}
		for i, s := range supports {
			for f, spring := range []float64{s.Axial, s.Y, s.Z, s.TurnY, s.TurnZ} {
				at := Freedoms*i + f
				k.SetSym(at, at, k.At(at, at)+spring)
			}
		}
		var solver mat.Cholesky
		if !solver.Factorize(k) {
			t.Fatal("not held")
		}
		load := mat.NewVecDense(count, nil)
		load.SetVec(2*Freedoms+AlongZ, 1000)
		var moved mat.VecDense
		if err := solver.SolveVecTo(&moved, load); solved(err) != nil {
			t.Fatal(err)
		}
		p.Supports = supports
		r, err := Bend(BendParams{Shaft: p, Loads: []BeamLoad{{At: p.length(), Z: 1000}}, Places: []float64{p.length()}})
		if err != nil {
			t.Fatal(err)
		}
		if got, want := moved.AtVec(2*Freedoms+AlongZ), r.Movements[0].Z; math.Abs(got-want) > 1e-6*want {
			t.Errorf("tip moves %g by stations, %g by Bend", got, want)
		}
	})
}

func TestWindowsSoftenTheBending(t *testing.T) {
	p := BeamParams{Sections: []Section{{Length: 0.1, Outer: 0.1, Inner: 0.09}}, Modulus: 2e11, Poisson: 0.3, Supports: pinned(0, 0.1)}
	load := []BeamLoad{{At: 0.05, Y: 1000}}
	whole := bend(t, p, load, 0.05).Movements[0].Y
	p.Sections[0].Windows = 0.6
	near(t, "with windows", bend(t, p, load, 0.05).Movements[0].Y, whole/0.6, 1e-6)
}

func TestBendRefusesAShaftThatIsNotHeld(t *testing.T) {
	good := BeamParams{Sections: []Section{{Length: 0.1, Outer: 0.04}}, Modulus: 2e11, Poisson: 0.3, Supports: pinned(0, 0.1)}
	for name, c := range map[string]struct {
		param string
		spoil func(*BeamParams)
	}{
		"one bearing":    {"Supports", func(p *BeamParams) { p.Supports = p.Supports[:1] }},
		"slides along x": {"Supports", func(p *BeamParams) { p.Supports = []Support{{Y: 1e9, Z: 1e9}, {At: 0.1, Y: 1e9, Z: 1e9}} }},
		"bore too large": {"Sections.Inner", func(p *BeamParams) { p.Sections = []Section{{Length: 0.1, Outer: 0.04, Inner: 0.04}} }},
		"off the shaft":  {"Supports.At", func(p *BeamParams) { p.Supports = pinned(0, 0.2) }},
		"no sections":    {"Sections", func(p *BeamParams) { p.Sections = nil }},
	} {
		bad := good
		c.spoil(&bad)
		var r *check.RangeError
		if _, err := Bend(BendParams{Shaft: bad}); !errors.As(err, &r) || r.Param != c.param {
			t.Errorf("%s: got %v, want a range error on %s", name, err, c.param)
		}
	}
	var r *check.RangeError
	if _, err := Influence(good, []float64{0.2}); !errors.As(err, &r) {
		t.Errorf("got %v, want a range error", err)
	}
	if _, err := StationStiffness(good, []float64{0.05, 0.02}); !errors.As(err, &r) || r.Param != "stations" {
		t.Errorf("got %v, want a range error on stations", err)
	}
}

func BenchmarkInfluence(b *testing.B) {
	p := BeamParams{
		Sections: []Section{{0.036, 0.048, 0, 0}, {0.088, 0.038, 0, 0}, {0.05, 0.03, 0, 0}}, Modulus: 206e9, Poisson: 0.3,
		Supports: []Support{{At: 0.036, Axial: 1e9, Y: 1e9, Z: 1e9}, {At: 0.124, Y: 1e9, Z: 1e9}},
	}
	for b.Loop() {
		if _, err := Influence(p, []float64{0, 0.036, 0.124}); err != nil {
			b.Fatal(err)
		}
	}
}
