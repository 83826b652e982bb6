package contact

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"
)

var settled = PadFaceParams{Heat: 2e3, Radius: 0.008, Speed: 2, PadConductivity: 60, WheelConductivity: 45, WheelDiffusivity: 1.2e-5}

func TestMovingDiscFactorPublished(t *testing.T) {
	published.Check(t, []published.Row{{
		Name: "mean rise under a fast round source, factor of Q/(k·a)·√(α/(v·a))", Got: movingDisc, Printed: "0.308",
		Source: "Stachowiak and Batchelor, Engineering Tribology, circular contact at high Peclet number (from memory)",
		Within: 0.01, Why: "exact for an even heat flow is 0.30995; the book rounds on the way",
	}})
}

// The factor, derived in closed form, against a sum over the disc: each point
// has been under the source for the time it took from its leading edge.
func TestMovingDiscFactorIsTheMeanOverTheDisc(t *testing.T) {
	const n = 400
	sum, points := 0.0, 0
	for i := range n {
		y := (float64(i)+0.5)/n*2 - 1
		edge := math.Sqrt(1 - y*y)
		for j := range n {
			x := (float64(j)+0.5)/n*2 - 1
			if math.Abs(x) < edge {
				sum += 2 / math.Sqrt(math.Pi) * math.Sqrt(x+edge)
				points++
			}
		}
	}
	got := sum / float64(points) / math.Pi // q = Q/(π·a²)
	if math.Abs(got/movingDisc-1) > 2e-3 {
		t.Errorf("summed %g, closed form %g", got, movingDisc)
	}
}

func TestPadFaceSharesTheHeatSoThatBothSidesAreAsWarm(t *testing.T) {
	r, err := PadFaceRise(settled)
	if err != nil {
		t.Fatal(err)
	}
	padAlone := 8 * settled.Heat * r.PadShare / (3 * math.Pi * math.Pi * settled.PadConductivity * settled.Radius)
	if math.Abs(padAlone/r.Rise-1) > 1e-12 {
		t.Errorf("pad %g K, face %g K", padAlone, r.Rise)
	}
	if r.PadShare <= 0 || r.PadShare >= 0.5 {
		t.Errorf("the pad takes %g of the heat; a passing wheel takes most", r.PadShare)
	}
	faster := settled
	faster.Speed *= 4
	f, _ := PadFaceRise(faster)
	if f.PadShare >= r.PadShare || f.Rise >= r.Rise {
		t.Errorf("the same heat into a faster wheel must warm the pad less: %+v then %+v", r, f)
	}
	slow := settled
	slow.Speed = 0.001
	var e *check.RangeError
	if _, err := PadFaceRise(slow); !errors.As(err, &e) || e.Param != "Peclet" {
		t.Errorf("got %v, want a range error on Peclet", err)
	}
}

func TestPadHeatingHasItsTwoLimits(t *testing.T) {
	p := PadHeatingParams{Heat: 500, Radius: 0.007, Conductivity: 60, Diffusivity: 1.7e-5}
	q := p.Heat / (math.Pi * p.Radius * p.Radius)
	rise := func(seconds float64) float64 {
		p.Duration = seconds
		r, err := PadHeatingRise(p)
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	short := 2 * q / p.Conductivity * math.Sqrt(p.Diffusivity*0.01/math.Pi)
	if got := rise(0.01); math.Abs(got/short-1) > 1e-6 {
		t.Errorf("after 0.01 s %g K, straight in %g K", got, short)
	}
	long := q * p.Radius / p.Conductivity
	if got := rise(1e9); math.Abs(got/long-1) > 1e-4 {
		t.Errorf("after long %g K, settled %g K", got, long)
	}
	last := 0.0
	for s := 0.001; s < 1e5; s *= 2 {
		if got := rise(s); got <= last || got >= long {
			t.Fatalf("after %g s %g K, before %g, settled %g", s, got, last, long)
		} else {
			last = got
		}
	}
}

// A textbook problem of a steel face suddenly heated: the surface by the same
// short-time law, and the depth of 2.5 cm by its companion in the source.
func TestShortHeatingPublished(t *testing.T) {
	const q, k, alpha, seconds, depth = 3.2e5, 45, 1.4e-5, 30, 0.025
	spread := 2 * math.Sqrt(alpha*seconds)
	ierfc := func(x float64) float64 { return math.Exp(-x*x)/math.Sqrt(math.Pi) - x*math.Erfc(x) }
	face, err := PadHeatingRise(PadHeatingParams{Heat: q * math.Pi, Radius: 1, Conductivity: k, Diffusivity: alpha, Duration: seconds})
	if err != nil {
		t.Fatal(err)
	}
	inside := face * ierfc(depth/spread) * math.Sqrt(math.Pi)
	published.Check(t, []published.Row{{
		Name: "temperature 2.5 cm inside after 30 s at 320 kW/m², °C", Got: 35 + inside, Printed: "79.3",
		Source: "Holman, Heat Transfer, 10th ed., example 4-2 (from memory)",
	}})
}

func TestBulkHeatingGivesTheHeatBack(t *testing.T) {
	r, err := BulkHeatingRise(BulkHeatingParams{Heat: 300, Duration: 600, Mass: 6, SpecificHeat: 460})
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(r*6*460-300*600) > 1e-6 {
		t.Errorf("6 kg warmed by %g K hold %g J, put in 180000 J", r, r*6*460)
	}
}
