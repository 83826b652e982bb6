package shaft

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"
)

func TestOverhungShaftPublished(t *testing.T) {
	r, err := OverhungShaft(OverhungParams{Span: 0.080, Overhang: 0.050, Diameter: 0.040, Modulus: 206e9, Force: 10e3})
	if err != nil {
		t.Fatal(err)
	}
	const source = "derived from Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th ed., table A-9, case 10 (formula from memory)"
	published.Check(t, []published.Row{
		{Name: "R_A, kN", Got: r.ReactionA * 1e-3, Printed: "-6.25", Source: source},
		{Name: "R_B, kN", Got: r.ReactionB * 1e-3, Printed: "16.25", Source: source},
		{Name: "slope in A, mrad", Got: r.SlopeA * 1e3, Printed: "0.257532", Source: source},
		{Name: "slope in B, mrad", Got: r.SlopeB * 1e3, Printed: "0.515065", Source: source},
		{Name: "slope at the tip, mrad", Got: r.SlopeTip * 1e3, Printed: "0.997938", Source: source},
		{Name: "deflection at the tip, mm", Got: r.DeflectionTip * 1e3, Printed: "0.041849", Source: source},
	})
}

func TestOverhungGearReactionsPublished(t *testing.T) {
	const lbf, inch = 4.4482216, 0.0254
	// The source rounds the power to a transmitted load of 40.4 lbf.
	w := 33000.0 / 816
	angle := func(degrees float64) float64 { return math.Tan(degrees * math.Pi / 180) }
	r, err := OverhungGearReactions(GearReactionParams{
		Span: 10 * inch, Overhang: 3 * inch, Radius: 0.866 * inch,
		Tangential: w * lbf, Radial: w * angle(22.8) * lbf, Axial: w * angle(30) * lbf,
	})
	if err != nil {
		t.Fatal(err)
	}
	const source = "Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th ed., example 13-9"
	const why = "the source rounds the forces to a tenth of a pound before it goes on"
	published.Check(t, []published.Row{
		{Name: "F_By, lbf", Got: r.BY / lbf, Printed: "20.1", Source: source, Within: 0.005, Why: why},
		{Name: "F_Ay, lbf", Got: r.AY / lbf, Printed: "3.1", Source: source, Within: 0.01, Why: why},
		{Name: "F_Bz, lbf", Got: r.BZ / lbf, Printed: "52.5", Source: source, Within: 0.005, Why: why},
		{Name: "F_Az, lbf", Got: r.AZ / lbf, Printed: "12.1", Source: source, Within: 0.005, Why: why},
		{Name: "torque, lbf·in", Got: r.Torque / (lbf * inch), Printed: "35.0", Source: source},
	})
}

// The stepped shaft on stiff springs must carry what statics says.
func TestGearReactionsAgreeWithTheShaftOnSprings(t *testing.T) {
	p := GearReactionParams{Span: 0.088, Overhang: 0.036, Radius: 0.03, Tangential: 20e3, Radial: -4e3, Axial: 14e3}
	want, err := OverhungGearReactions(p)
	if err != nil {
		t.Fatal(err)
	}
	// A at x = 0, B at the span, the gear beyond; its axial force runs towards −x.
	r := bend(t, BeamParams{
		Sections: []Section{{Length: p.Span, Outer: 0.038}, {Length: p.Overhang, Outer: 0.048}}, Modulus: 206e9, Poisson: 0.3,
		Supports: pinned(0, p.Span),
	}, []BeamLoad{{At: p.Span + p.Overhang, Axial: -p.Axial, Y: -p.Radial, Z: p.Tangential, TurnZ: p.Axial * p.Radius}})
	near(t, "B, y", r.Reactions[1].Y, want.BY, 1e-6)
	near(t, "A, y", -r.Reactions[0].Y, want.AY, 1e-6)
	near(t, "B, z", -r.Reactions[1].Z, want.BZ, 1e-6)
	near(t, "A, z", r.Reactions[0].Z, want.AZ, 1e-6)
	near(t, "axial", r.Reactions[0].Axial, want.Axial, 1e-6)
}

func TestOverhungRefusesNoSpan(t *testing.T) {
	var r *check.RangeError
	if _, err := OverhungShaft(OverhungParams{Overhang: 0.05, Diameter: 0.04, Modulus: 2e11}); !errors.As(err, &r) || r.Param != "Span" {
		t.Errorf("got %v, want a range error on Span", err)
	}
	if _, err := OverhungGearReactions(GearReactionParams{Span: 0.1, Overhang: 0.05}); !errors.As(err, &r) || r.Param != "Radius" {
		t.Errorf("got %v, want a range error on Radius", err)
	}
}
