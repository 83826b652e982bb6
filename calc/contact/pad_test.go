package contact

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"
)

func TestPadPressurePublished(t *testing.T) {
	const source = "peg pads of 14 mm, common practice, no source"
	var rows []published.Row
	for _, c := range []struct {
		name    string
		force   float64
		printed string
	}{
		{"quarter of 27 kN, rounded to 7 kN", 7e3, "45"},
		{"half of 27 kN", 13.5e3, "88"},
	} {
		p, err := PadPressure(c.force, 0.014)
		if err != nil {
			t.Fatal(err)
		}
		rows = append(rows, published.Row{Name: c.name, Got: p / 1e6, Printed: c.printed, Source: source})
	}
	published.Check(t, rows)
}

// Heat is force times friction times speed, and also pv times friction times
// area: the two ways must agree.
func TestRubbingHeatIsFrictionTimesPVTimesArea(t *testing.T) {
	const force, diameter, friction = 9e3, 0.016, 0.12
	v, err := RubbingSpeed(0.09, -30)
	if err != nil || math.Abs(v-2.7) > 1e-12 {
		t.Fatalf("rubbing speed %g, %v; want 2.7 whichever way the wheel turns", v, err)
	}
	p, _ := PadPressure(force, diameter)
	pv, _ := PressureVelocity(p, v)
	q, err := RubbingHeat(friction, force, v)
	if err != nil {
		t.Fatal(err)
	}
	if want := friction * pv * math.Pi / 4 * diameter * diameter; math.Abs(q/want-1) > 1e-12 {
		t.Errorf("heat %g W, by pv and area %g W", q, want)
	}
}

func TestPadRefusesANegativeForce(t *testing.T) {
	var r *check.RangeError
	if _, err := PadPressure(-1, 0.014); !errors.As(err, &r) || r.Param != "force" {
		t.Errorf("got %v, want a range error on force: a pad cannot pull", err)
	}
}
