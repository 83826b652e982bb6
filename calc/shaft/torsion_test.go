package shaft

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"
)

func TestTorsionPublished(t *testing.T) {
	const inch, lbf, psi = 0.0254, 4.4482216, 6894.757
	bar, err := Torsion(TorsionParams{
		Sections: []Section{{Length: 54 * inch, Outer: 1.5 * inch}}, ShearModulus: 11.5e6 * psi, Torque: 250 * 12 * lbf * inch,
	})
	if err != nil {
		t.Fatal(err)
	}
	const source = "Gere, Mechanics of Materials, 5th ed., example 3-1 (from memory)"
	published.Check(t, []published.Row{
		{Name: "shear stress, psi", Got: bar.Stress / psi, Printed: "4530", Source: source, Within: 0.001, Why: "printed to three figures"},
		{Name: "twist, rad", Got: bar.Twist, Printed: "0.02834", Source: source},
	})
}

// Twist adds over the pieces, the thinnest has the largest stress.
func TestTorsionOfAStep(t *testing.T) {
	one := func(sections ...Section) TorsionResult {
		r, err := Torsion(TorsionParams{Sections: sections, ShearModulus: 80e9, Torque: 1500})
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	a, b := Section{Length: 0.1, Outer: 0.036}, Section{Length: 0.6, Outer: 0.033, Inner: 0.008}
	both := one(a, b)
	near(t, "twist", both.Twist, one(a).Twist+one(b).Twist, 1e-12)
	near(t, "stress", both.Stress, one(b).Stress, 1e-12)
	near(t, "stiffness", both.Stiffness*both.Twist, 1500, 1e-12)
}

func TestHalfShaftTorquePublished(t *testing.T) {
	r, err := HalfShaftTorque(HalfShaftParams{Diameter: 0.033, ShearYield: 620e6, Share: 0.75})
	if err != nil {
		t.Fatal(err)
	}
	published.Check(t, []published.Row{
		{Name: "plastic over first yield, solid shaft", Got: r.Plastic / r.Yield, Printed: "1.3333",
			Source: "Timoshenko, Strength of Materials, part II, 3rd ed., article 64 (4/3; from memory)"},
		{Name: "33 mm at 620 MPa, N·m", Got: r.Yield, Printed: "4375", Source: "derived: π·τ·d³/16"},
	})
	// At its yield torque the skin stands at the yield stress.
	s, err := Torsion(TorsionParams{Sections: []Section{{Length: 1, Outer: 0.033}}, ShearModulus: 80e9, Torque: r.Yield})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "skin stress", s.Stress, 620e6, 1e-12)
	near(t, "axle torque", r.AxleYield, r.Yield/0.75, 1e-12)
	thin, err := HalfShaftTorque(HalfShaftParams{Diameter: 0.04, Bore: 0.0399, ShearYield: 620e6, Share: 1})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "a thin tube has no reserve", thin.Plastic, thin.Yield, 0.005)
}

func TestNeckStressPublished(t *testing.T) {
	const inch, lbf, kpsi = 0.0254, 4.4482216, 6.894757e6
	r, err := NeckStress(NeckParams{Diameter: 1 * inch, Bending: 14e3 / 10.1859 * lbf * inch, Torque: 7e3 / 5.09296 * lbf * inch})
	if err != nil {
		t.Fatal(err)
	}
	const source = "derived: 32/π = 10.1859 and 16/π = 5.09296 for a bar of one inch"
	published.Check(t, []published.Row{
		{Name: "bending stress, kpsi", Got: r.BendingStress / kpsi, Printed: "14.00", Source: source},
		{Name: "shear stress, kpsi", Got: r.ShearStress / kpsi, Printed: "7.00", Source: source},
		{Name: "von Mises, kpsi", Got: r.VonMises / kpsi, Printed: "18.52", Source: source},
	})
	pulled, err := NeckStress(NeckParams{Diameter: 0.04, Bore: 0.01, Axial: -50e3})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "push alone", pulled.VonMises, 50e3/(math.Pi/4*(0.04*0.04-0.01*0.01)), 1e-12)
}

func TestTorsionRefusesAShaftWithoutMetal(t *testing.T) {
	var r *check.RangeError
	if _, err := Torsion(TorsionParams{ShearModulus: 8e10}); !errors.As(err, &r) || r.Param != "Sections" {
		t.Errorf("got %v, want a range error on Sections", err)
	}
	if _, err := HalfShaftTorque(HalfShaftParams{Diameter: 0.03, ShearYield: 6e8, Share: 1.2}); !errors.As(err, &r) || r.Param != "Share" {
		t.Errorf("got %v, want a range error on Share", err)
	}
	if _, err := NeckStress(NeckParams{Diameter: 0.03, Bore: 0.04}); !errors.As(err, &r) || r.Param != "Bore" {
		t.Errorf("got %v, want a range error on Bore", err)
	}
}
