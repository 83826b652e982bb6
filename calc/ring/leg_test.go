package ring

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"axlewright/calc/check"
	"axlewright/internal/published"
)

func leg(t testing.TB, p LegParams) LegResult {
	t.Helper()
	r, err := TaperedLeg(p)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// A leg of even depth is the cantilever of every handbook.
func TestEvenLegIsACantilever(t *testing.T) {
	p := LegParams{Length: 1, TipDepth: 0.01, RootDepth: 0.01, Width: 0.02, Modulus: 12e12 / 0.02, Poisson: 0.3, Force: 3}
	r := leg(t, p) // E·I = 1 MN·m², long enough that shear is 0.01 %
	const source = "Gere, Mechanics of Materials, 5th ed., table G-1, case 4"
	published.Check(t, []published.Row{
		{Name: "δ·E·I/(F·L³)", Got: r.Deflection * 1e6 / 3, Printed: "0.333", Source: source},
		{Name: "θ·E·I/(F·L²)", Got: r.Slope * 1e6 / 3, Printed: "0.500", Source: source},
	})
	near(t, "root stress", r.RootStress, 6*3/(0.02*0.01*0.01), 1e-12)
}

// The taper's integral in closed form.
func TestTaperedLegAgreesWithItsIntegral(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := LegParams{
			Length:    0.09,
			TipDepth:  rapid.Float64Range(0.02, 0.05).Draw(t, "tip"),
			Width:     0.05,
			RootDepth: rapid.Float64Range(0.055, 0.12).Draw(t, "root"),
			Modulus:   168e9, Poisson: 0.27, Force: 20e3,
		}
		r, err := TaperedLeg(p)
		if err != nil {
			t.Fatal(err)
		}
		k := (p.RootDepth - p.TipDepth) / p.Length
		q := p.TipDepth / p.RootDepth
		bend := 12 * p.Force / (p.Modulus * p.Width * k * k * k) * (math.Log(1/q) + 2*q - q*q/2 - 1.5)
		shear := 1.2 * p.Force / (p.Modulus / (2 * 1.27) * p.Width * k) * math.Log(1/q)
		if math.Abs(r.Deflection-bend-shear) > 1e-9*(bend+shear) {
			t.Errorf("deflection %g, in closed form %g", r.Deflection, bend+shear)
		}
		for i := 1; i <= 200; i++ {
			x := p.Length * float64(i) / 200
			h := p.TipDepth + k*x
			if s := 6 * p.Force * x / (p.Width * h * h); s > r.MaxStress*(1+1e-12) {
				t.Errorf("stress %g at %g is above the largest, %g at %g", s, x, r.MaxStress, r.MaxPlace)
			}
		}
	})
}

func TestLegRefusesNoWidth(t *testing.T) {
	var r *check.RangeError
	if _, err := TaperedLeg(LegParams{Length: 0.1, TipDepth: 0.02, RootDepth: 0.03, Modulus: 1e11, Force: 1}); !errors.As(err, &r) || r.Param != "Width" {
		t.Errorf("got %v, want a range error on Width", err)
	}
}
