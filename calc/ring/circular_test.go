package ring

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"axlewright/calc/check"
	"axlewright/internal/published"
)

func TestDiscPublished(t *testing.T) {
	unit := DiscLoadParams{Radius: 1, Thickness: 0.01, Modulus: 1e9, Poisson: 0.3, Force: 1}
	coefficient := func(e Edge) float64 {
		p := unit
		p.Edge = e
		r, err := DiscUnderForce(p)
		if err != nil {
			t.Fatal(err)
		}
		return r.CentreDeflection * r.Rigidity
	}
	off := DiscLoadParams{Radius: 0.1, Thickness: 0.01, Modulus: 206e9, Poisson: 0.3, Force: 10e3, Eccentric: 0.06}
	centre := func(e Edge) float64 {
		p := off
		p.Edge = e
		r, err := DiscUnderForce(p)
		if err != nil {
			t.Fatal(err)
		}
		return r.CentreDeflection * 1e3
	}
	under, err := ClampedDiscDeflection(ClampedDiscParams{
		Radius: 0.1, Thickness: 0.01, Modulus: 206e9, Poisson: 0.3, Force: 10e3, LoadRadius: 0.06, ReadRadius: 0.06,
	})
	if err != nil {
		t.Fatal(err)
	}
	pressure, err := DiscUnderPressure(DiscPressureParams{
		Radius: 0.1, Thickness: 0.01, Modulus: 200e9, Poisson: 0.29, Edge: Clamped, Pressure: 4.2e6,
	})
	if err != nil {
		t.Fatal(err)
	}
	const plates = "Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed., "
	const formula = "derived from " + plates + "articles 19 and 64 (formula from memory)"
	published.Check(t, []published.Row{
		{Name: "simply supported, w·D/(P·a²)", Got: coefficient(SimplySupported), Printed: "0.0505", Source: plates + "article 19 (from memory)"},
		{Name: "clamped, w·D/(P·a²)", Got: coefficient(Clamped), Printed: "0.0199", Source: plates + "article 19 (from memory)"},
		{Name: "off centre, simply supported, centre, mm", Got: centre(SimplySupported), Printed: "0.132544", Source: formula},
		{Name: "off centre, clamped, centre, mm", Got: centre(Clamped), Printed: "0.0287067", Source: formula},
		{Name: "off centre, clamped, under the load, mm", Got: under * 1e3, Printed: "0.0431962", Source: formula},
		{Name: "clamped disc at 4.2 MPa, stress in MPa", Got: pressure.MaxStress * 1e-6, Printed: "315",
			Source: "Boresi and Schmidt, Advanced Mechanics of Materials, 6th ed., example 13.3"},
		{Name: "clamped disc at 4.2 MPa, deflection in mm", Got: pressure.CentreDeflection * 1e3, Printed: "0.36",
			Source: "Boresi and Schmidt, Advanced Mechanics of Materials, 6th ed., example 13.3"},
	})
}

// The disc is the annular plate whose hole vanishes.
func TestDiscIsTheAnnularPlateWithoutAHole(t *testing.T) {
	for _, edge := range []Edge{Clamped, SimplySupported} {
		whole, err := DiscUnderForce(DiscLoadParams{Radius: 0.1, Thickness: 0.004, Modulus: 2e11, Poisson: 0.3, Edge: edge, Force: 500, Eccentric: 0.04})
		if err != nil {
			t.Fatal(err)
		}
		holed, err := AnnularPlate(AnnularPlateParams{
			InnerRadius: 1e-5, OuterRadius: 0.1, Thickness: 0.004, Modulus: 2e11, Poisson: 0.3,
			InnerEdge: Free, OuterEdge: edge, RingLoad: 500, RingRadius: 0.04,
		})
		if err != nil {
			t.Fatal(err)
		}
		near(t, "ring load, "+string(edge), holed.InnerDeflection, whole.CentreDeflection, 1e-6)
		pressed, err := DiscUnderPressure(DiscPressureParams{Radius: 0.1, Thickness: 0.004, Modulus: 2e11, Poisson: 0.3, Edge: edge, Pressure: 1e5})
		if err != nil {
			t.Fatal(err)
		}
		guided, err := AnnularPlate(AnnularPlateParams{
			InnerRadius: 1e-5, OuterRadius: 0.1, Thickness: 0.004, Modulus: 2e11, Poisson: 0.3,
			InnerEdge: Guided, OuterEdge: edge, Pressure: 1e5,
		})
		if err != nil {
			t.Fatal(err)
		}
		near(t, "pressure, "+string(edge), guided.InnerDeflection, pressed.CentreDeflection, 1e-6)
		if edge == Clamped { // in the other the small plug doubles the stress round it
			near(t, "stress", guided.MaxStress, pressed.MaxStress, 1e-3)
		}
	}
}

func TestClampedDiscIsReciprocal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := ClampedDiscParams{
			Radius: 0.1, Thickness: 0.01, Modulus: 2e11, Poisson: 0.3, Force: 1,
			LoadRadius: rapid.Float64Range(0, 0.099).Draw(t, "load"),
			ReadRadius: rapid.Float64Range(0, 0.099).Draw(t, "read"),
			ReadAngle:  rapid.Float64Range(-4, 4).Draw(t, "angle"),
		}
		there, err := ClampedDiscDeflection(p)
		if err != nil {
			t.Fatal(err)
		}
		p.LoadRadius, p.ReadRadius, p.ReadAngle = p.ReadRadius, p.LoadRadius, -p.ReadAngle
		back, err := ClampedDiscDeflection(p)
		if err != nil {
			t.Fatal(err)
		}
		// Near the rim the answer is what is left of terms as large as the centre's 1e-8 m.
		if math.Abs(there-back) > 1e-12*math.Abs(there)+1e-22 || there < 0 {
			t.Errorf("there %g, back %g", there, back)
		}
	})
}

func TestDiscRefusesAFreeEdge(t *testing.T) {
	var r *check.RangeError
	if _, err := DiscUnderForce(DiscLoadParams{Radius: 0.1, Thickness: 0.01, Modulus: 2e11, Poisson: 0.3, Edge: Free, Force: 1}); !errors.As(err, &r) || r.Param != "Edge" {
		t.Errorf("got %v, want a range error on Edge", err)
	}
	if _, err := ClampedDiscDeflection(ClampedDiscParams{Radius: 0.1, Thickness: 0.01, Modulus: 2e11, Poisson: 0.3, Force: 1, LoadRadius: 0.1}); !errors.As(err, &r) || r.Param != "LoadRadius" {
		t.Errorf("got %v, want a range error on LoadRadius", err)
	}
	if _, err := DiscUnderPressure(DiscPressureParams{Radius: 0.1, Thickness: -1, Modulus: 2e11, Poisson: 0.3, Edge: Clamped}); !errors.As(err, &r) || r.Param != "Thickness" {
		t.Errorf("got %v, want a range error on Thickness", err)
	}
}
