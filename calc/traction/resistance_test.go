package traction

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"

	"pgregory.net/rapid"
)

func TestRoadResistancePublished(t *testing.T) {
	r, err := RoadResistance(RoadParams{Weight: 1800 * gravity, Grade: 0.2, Rolling: 0.015}, 0)
	if err != nil {
		t.Fatal(err)
	}
	v, err := SpeedFromPower(RoadParams{Weight: 1800 * gravity, Grade: 0.05, Rolling: 0.015, DragArea: 0.7, Density: 1.2}, 60e3)
	if err != nil {
		t.Fatal(err)
	}
	const source = "derived: sine and cosine of the slope's angle; the cubic of power and speed"
	published.Check(t, []published.Row{
		{Name: "slope 20 %, N", Got: r.Grade, Printed: "3461.84", Source: source},
		{Name: "rolling, N", Got: r.Rolling, Printed: "259.638", Source: source},
		{Name: "both, N", Got: r.Total, Printed: "3721.47", Source: source},
		{Name: "60 kW up 5 %, m/s", Got: v, Printed: "35.6927", Source: source},
	})
}

func TestRotatingMassFactorPublished(t *testing.T) {
	factor, err := RotatingMassFactor(3.5 * 4.1)
	if err != nil {
		t.Fatal(err)
	}
	published.Check(t, []published.Row{
		{Name: "first gear 3.5, axle 4.1", Got: factor, Printed: "1.555", Source: "derived: 1.04 + 0.0025·(3.5·4.1)², the form of Gillespie (1992), eq. 2-9b (from memory)"},
	})
	var r *check.RangeError
	if _, err := RotatingMassFactor(-1); !errors.As(err, &r) || r.Param != "ratio" {
		t.Errorf("got %v, want a range error on ratio", err)
	}
}

// At the speed found, the resistance times the speed is the power.
func TestSpeedFromPowerUsesThePower(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		road := RoadParams{
			Weight:   rapid.Float64Range(5e3, 1e5).Draw(t, "W"),
			Grade:    rapid.Float64Range(-0.3, 0.6).Draw(t, "grade"),
			Rolling:  rapid.Float64Range(0.005, 0.3).Draw(t, "rolling"),
			DragArea: rapid.Float64Range(0.3, 8).Draw(t, "CdA"),
			Density:  1.2,
		}
		power := rapid.Float64Range(100, 3e5).Draw(t, "P")
		v, err := SpeedFromPower(road, power)
		if err != nil {
			t.Fatal(err)
		}
		r, err := RoadResistance(road, v)
		if err != nil {
			t.Fatal(err)
		}
		if v <= 0 || math.Abs(r.Total*v/power-1) > 1e-9 {
			t.Errorf("%g W gives %g m/s, which takes %g W", power, v, r.Total*v)
		}
		more, _ := SpeedFromPower(road, 2*power)
		if more <= v {
			t.Errorf("twice the power is slower: %g, then %g", v, more)
		}
	})
}

func TestSpeedWithoutAirIsPowerOverForce(t *testing.T) {
	road := RoadParams{Weight: 2e4, Grade: 0.1, Rolling: 0.02}
	r, _ := RoadResistance(road, 0)
	v, err := SpeedFromPower(road, 30e3)
	if err != nil || math.Abs(v-30e3/r.Total) > 1e-9 {
		t.Errorf("got %g, %v; want %g", v, err, 30e3/r.Total)
	}
	road.Grade = -0.1
	var e *check.RangeError
	if _, err := SpeedFromPower(road, 30e3); !errors.As(err, &e) || e.Param != "Grade" {
		t.Errorf("downhill with nothing to hold back: got %v", err)
	}
}
