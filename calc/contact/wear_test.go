package contact

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"
)

const (
	inch     = 0.0254
	lbf      = 4.4482216152605
	hour     = 3600.0
	perMin   = 2 * math.Pi / 60
	wearUnit = inch * inch * inch * 60 / (lbf * 0.3048 * hour) // m²/N from in³·min/(lbf·ft·h)
)

func alloyBrass(motion, force, perMinute float64) BushingWearParams {
	return BushingWearParams{
		Diameter: 1 * inch, Length: 1 * inch, Depth: 0.005 * inch,
		Force: force * lbf, ShaftSpeed: perMinute * perMin,
		WearFactor: 0.6e-10 * wearUnit, MotionFactor: motion, EnvironmentFactor: 1,
	}
}

func TestBushingWearPublished(t *testing.T) {
	const (
		problem = "Shigley's Mechanical Engineering Design, 8th ed., problem 12-22 and its printed solution"
		example = "Shigley's Mechanical Engineering Design, 8th ed., example 12-7 (from memory)"
		derived = "derived: the bush of example 12-7 at 33 rev/min, recomputed from eq. 12-32"
		rounded = "the book rounds the speed before it divides"
	)
	wear := func(p BushingWearParams) BushingWearResult {
		r, err := BushingWear(p)
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	solved := wear(alloyBrass(1.8, 500, 200))
	printed := wear(alloyBrass(1.3, 700, 12*33/math.Pi)) // 33 ft/min at the rubbing face
	slow := wear(alloyBrass(1.3, 700, 33))
	published.Check(t, []published.Row{
		{Name: "problem: V, ft/min", Got: solved.RubbingSpeed / footPerMinute, Printed: "52.4", Source: problem},
		{Name: "problem: life, h", Got: solved.Life / hour, Printed: "1388", Source: problem, Within: 0.001, Why: rounded},
		{Name: "problem: life, min", Got: solved.Life / 60, Printed: "83270", Source: problem, Within: 0.001, Why: rounded},
		{Name: "problem: turns, millions", Got: solved.Revolutions / 1e6, Printed: "16.7", Source: problem},
		{Name: "example: P_max, psi", Got: printed.PeakPressure / psi, Printed: "891", Source: example},
		{Name: "example: PV, psi·ft/min", Got: printed.PressureVelocity / psiFoot, Printed: "23100", Source: example},
		{Name: "example: life, h", Got: printed.Life / hour, Printed: "2180", Source: example, Within: 0.0005, Why: "printed to three figures"},
		{Name: "example: turns, millions", Got: printed.Revolutions / 1e6, Printed: "16.5", Source: example},
		{Name: "slow: P_max, psi", Got: slow.PeakPressure / psi, Printed: "891.268", Source: derived},
		{Name: "slow: V, ft/min", Got: slow.RubbingSpeed / footPerMinute, Printed: "8.63938", Source: derived},
		{Name: "slow: PV, psi·ft/min", Got: slow.PressureVelocity / psiFoot, Printed: "6047.57", Source: derived},
		{Name: "slow: life, h", Got: slow.Life / hour, Printed: "8325.01", Source: derived},
		{Name: "slow: turns, millions", Got: slow.Revolutions / 1e6, Printed: "16.4835", Source: derived},
	})
}

// A faster shaft wears the bush out sooner, but after the same number of turns.
func TestBushLastsTheSameNumberOfTurnsAtAnySpeed(t *testing.T) {
	slow, _ := BushingWear(alloyBrass(1.3, 700, 10))
	fast, _ := BushingWear(alloyBrass(1.3, 700, 1000))
	if math.Abs(slow.Revolutions/fast.Revolutions-1) > 1e-12 || math.Abs(slow.Life/fast.Life-100) > 1e-9 {
		t.Errorf("slow %+v, fast %+v", slow, fast)
	}
}

func TestPadWearIsProportionalAndRefusesNegativeTime(t *testing.T) {
	p := PadWearParams{Pressure: 30e6, Speed: 2, Duration: 60, WearFactor: 1.2e-17, MotionFactor: 1.5, EnvironmentFactor: 2}
	one, err := PadWear(p)
	if err != nil {
		t.Fatal(err)
	}
	p.Duration *= 3
	if three, _ := PadWear(p); math.Abs(three/one-3) > 1e-12 {
		t.Errorf("three times as long wears %g times as deep", three/one)
	}
	p.Duration = -1
	var r *check.RangeError
	if _, err := PadWear(p); !errors.As(err, &r) || r.Param != "Duration" {
		t.Errorf("got %v, want a range error on Duration", err)
	}
}
