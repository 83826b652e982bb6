package ring

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"
)

func TestCurvedBeamPublished(t *testing.T) {
	frame, err := CurvedBeam(CurvedBeamParams{
		InnerRadius: 0.030, OuterRadius: 0.080, InnerWidth: 0.050, OuterWidth: 0.050,
		Force: 9500, Moment: 9500 * 0.155,
	})
	if err != nil {
		t.Fatal(err)
	}
	const inch, lbf, kpsi = 0.0254, 4.4482216, 6.894757e6
	hook, err := CurvedBeam(CurvedBeamParams{
		InnerRadius: 2 * inch, OuterRadius: 6 * inch, InnerWidth: 0.75 * inch, OuterWidth: 0.75 * inch,
		Force: 5000 * lbf, Moment: 5000 * lbf * 4 * inch,
	})
	if err != nil {
		t.Fatal(err)
	}
	const boresi = "Boresi and Schmidt, Advanced Mechanics of Materials, 6th ed., example 9.1"
	const shigley = "Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th ed., example 3-15 (radii from memory)"
	published.Check(t, []published.Row{
		{Name: "rectangle, inner stress, MPa", Got: frame.InnerStress * 1e-6, Printed: "106.2", Source: boresi},
		{Name: "rectangle, outer stress, MPa", Got: frame.OuterStress * 1e-6, Printed: "-49.3", Source: boresi},
		{Name: "crane hook, neutral radius, in", Got: hook.NeutralRadius / inch, Printed: "3.641", Source: shigley},
		{Name: "crane hook, eccentricity, in", Got: (hook.CentroidRadius - hook.NeutralRadius) / inch, Printed: "0.359", Source: shigley},
		{Name: "crane hook, inner stress, kpsi", Got: hook.InnerStress / kpsi, Printed: "16.9", Source: shigley},
		{Name: "crane hook, outer stress, kpsi", Got: hook.OuterStress / kpsi, Printed: "-5.63", Source: shigley},
	})
}

// Numerical sums over thin strips of a trapezoid: the stress must carry just
// the force and the moment.
func TestCurvedBeamCarriesItsLoad(t *testing.T) {
	p := CurvedBeamParams{InnerRadius: 0.03, OuterRadius: 0.07, InnerWidth: 0.04, OuterWidth: 0.015, Force: 4000, Moment: -250}
	r, err := CurvedBeam(p)
	if err != nil {
		t.Fatal(err)
	}
	// Stress is C0 + C1/r; the two faces give both constants.
	c1 := (r.InnerStress - r.OuterStress) / (1/p.InnerRadius - 1/p.OuterRadius)
	c0 := r.InnerStress - c1/p.InnerRadius
	const strips = 20000
	var force, moment float64
	for i := range strips {
		x := (float64(i) + 0.5) / strips
		radius := p.InnerRadius + x*(p.OuterRadius-p.InnerRadius)
		area := (p.InnerWidth + x*(p.OuterWidth-p.InnerWidth)) * (p.OuterRadius - p.InnerRadius) / strips
		stress := c0 + c1/radius
		force += stress * area
		moment += stress * area * (r.CentroidRadius - radius)
	}
	near(t, "force", force, p.Force, 1e-6)
	near(t, "moment", moment, p.Moment, 1e-6)
}

func TestOutOfPlaneArcPublished(t *testing.T) {
	quarter := CurvedArcParams{Radius: 1, Angle: math.Pi / 2, Force: 1, BendingStiffness: 1, TwistStiffness: 1e18}
	bend, err := OutOfPlaneArc(quarter)
	if err != nil {
		t.Fatal(err)
	}
	quarter.BendingStiffness, quarter.TwistStiffness = 1e18, 1
	twist, err := OutOfPlaneArc(quarter)
	if err != nil {
		t.Fatal(err)
	}
	const d = 0.020
	tip, err := OutOfPlaneArc(CurvedArcParams{
		Radius: 0.1, Angle: math.Pi / 2, Force: 1000,
		BendingStiffness: 206e9 * math.Pi * math.Pow(d, 4) / 64, TwistStiffness: 79.3e9 * math.Pi * math.Pow(d, 4) / 32,
	})
	if err != nil {
		t.Fatal(err)
	}
	const timoshenko = "Timoshenko, Strength of Materials, part I, 3rd ed., article 80 (from memory)"
	published.Check(t, []published.Row{
		{Name: "quarter ring, bending part", Got: bend, Printed: "0.785", Source: timoshenko},
		{Name: "quarter ring, twisting part", Got: twist, Printed: "0.356", Source: timoshenko},
		{Name: "20 mm round bar, 1 kN at 100 mm, mm", Got: tip * 1e3, Printed: "0.7714", Source: "derived from " + timoshenko},
	})
}

// A short arc of a large ring is a straight cantilever.
func TestShortArcIsAStraightCantilever(t *testing.T) {
	const length, ei = 0.1, 2000.0
	got, err := OutOfPlaneArc(CurvedArcParams{Radius: 10, Angle: length / 10, Force: 50, BendingStiffness: ei, TwistStiffness: 1500})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "tip", got, 50*length*length*length/(3*ei), 1e-3)
}

func TestCurvedBeamRefusesASectionInsideOut(t *testing.T) {
	var r *check.RangeError
	if _, err := CurvedBeam(CurvedBeamParams{InnerRadius: 0.05, OuterRadius: 0.04, InnerWidth: 0.01, OuterWidth: 0.01}); !errors.As(err, &r) || r.Param != "OuterRadius" {
		t.Errorf("got %v, want a range error on OuterRadius", err)
	}
	if _, err := OutOfPlaneArc(CurvedArcParams{Radius: 1, Angle: 7, BendingStiffness: 1, TwistStiffness: 1}); !errors.As(err, &r) || r.Param != "Angle" {
		t.Errorf("got %v, want a range error on Angle", err)
	}
}
