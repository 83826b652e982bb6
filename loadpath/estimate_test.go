package loadpath

import (
	"math"
	"testing"

	"axlewright/calc/bearing"
	"axlewright/internal/published"
)

// Shigley's overhung helical pinion, turned into our frame: a radial and a
// tangential force 13 in from one bearing and 3 in beyond the other.
func TestDeterminateReactionsPublished(t *testing.T) {
	const inch = 1.0
	var a, b SeatLoad
	rollers := bearing.Rollers{Count: 16, Diameter: 0.2, Length: 0.3, PitchDiameter: 2, CupAngle: 15 * degree}
	// A at 0, B at 10 in; the force acts at 13 in on a radius of 0.866 in. Along
	// the shaft 23.3 lbf, radial 17.0 lbf, tangential 40.4 lbf.
	force := Vector{X: -23.3, Y: 17.0, Z: -40.4}
	r := Vector{X: 13 * inch, Y: -0.866 * inch}
	if err := determinate(pinionShaft, force, r, 0, 10*inch, pairOf{&a, &b, rollers, rollers, bearing.Indirect}); err != nil {
		t.Fatal(err)
	}
	const source = "Shigley, Mechanical Engineering Design, example 13-9 (gear forces and bearing reactions)"
	published.Check(t, []published.Row{
		{Name: "B, radial plane", Got: math.Abs(b.Force.Y), Printed: "20.1", Source: source},
		{Name: "A, radial plane", Got: math.Abs(a.Force.Y), Printed: "3.1", Source: source},
		{Name: "B, tangential plane", Got: math.Abs(b.Force.Z), Printed: "52.5", Source: source},
		{Name: "A, tangential plane", Got: math.Abs(a.Force.Z), Printed: "12.1", Source: source},
	})
}

func TestEstimateBalancesAtThePressureCentres(t *testing.T) {
	for _, id := range []string{"A", "B"} {
		a := referenceAxle(t, id)
		e, err := NewEstimate(a)
		if err != nil {
			t.Fatal(err)
		}
		for _, flank := range flanks {
			s, err := e.Solve(flank, 6000)
			if err != nil {
				t.Fatal(err)
			}
			pinion := s.OnPinion.minus(s.Head.Force).minus(s.Tail.Force)
			wheel := s.OnWheel.minus(s.Near.Force).minus(s.Far.Force).minus(Vector{Y: s.Peg.Load})
			if pinion.norm() > 1e-9*s.OnPinion.norm() || wheel.norm() > 1e-9*s.OnWheel.norm() {
				t.Errorf("%s %s: %v and %v are left over", id, flank, pinion, wheel)
			}
			l := a.Layout
			turn := a.Mesh.MeanPoint.cross(s.OnWheel).
				minus(Vector{Y: l.Near - loadCentre(a.Near)}.cross(s.Near.Force)).
				minus(Vector{Y: -l.Far + loadCentre(a.Far)}.cross(s.Far.Force))
			if s.Peg.Load > 0 {
				arm, _ := a.pegArm()
				turn = turn.plus(arm.cross(Vector{Y: -s.Peg.Load}))
			}
			turn.Y = 0
			if turn.norm() > 1e-9*s.OnWheel.norm() {
				t.Errorf("%s %s: a moment of %v is left over on the wheel", id, flank, turn)
			}
			if !s.Estimate {
				t.Error("an estimate that does not say so")
			}
		}
	}
}

// The estimate is a first guess: the same order and the same direction as the
// elastic path, no more.
func TestEstimateIsOfTheSameOrderAsTheElasticPath(t *testing.T) {
	a := referenceAxle(t, "B")
	guess, err := NewEstimate(a)
	if err != nil {
		t.Fatal(err)
	}
	for _, flank := range flanks {
		s := solved(t, a, flank, 4000)
		g, err := guess.Solve(flank, 4000)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range []struct {
			name      string
			got, want float64
		}{
			{"free movement", g.Peg.FreeMovement, s.Peg.FreeMovement}, {"pinion", g.Mesh.PinionAxial, s.Mesh.PinionAxial},
			{"head", g.Head.Radial, s.Head.Radial}, {"near", g.Near.Radial, s.Near.Radial},
			{"peg", g.Peg.Load + 1, s.Peg.Load + 1},
		} {
			if ratio := c.got / c.want; !(ratio > 0.4 && ratio < 2.5) {
				t.Errorf("%s %s: guess %g, elastic %g", flank, c.name, c.got, c.want)
			}
		}
	}
}
