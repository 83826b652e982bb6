package axle_test

import (
	"strings"
	"testing"

	"axlewright/axle"
)

// The bands are common practice, no source.
func TestUnusualFiguresAreAskedAfter(t *testing.T) {
	e := axle.Enquiry{}
	set := func(load, engine, grip float64) string {
		e.Vehicle.AxleLoad.Value, e.Vehicle.Engine.Value, e.Vehicle.Friction.Value = load, engine, grip
		if asks := axle.Unusual(&e); len(asks) > 0 {
			return asks.Error()
		}
		return ""
	}
	for _, usual := range [][3]float64{{300, 60, 0.3}, {6000, 1200, 1.2}, {1450, 190, 0.7}} {
		if got := set(usual[0], usual[1], usual[2]); got != "" {
			t.Errorf("%v: %s", usual, got)
		}
	}
	got := set(14500, 2230, 7)
	for _, want := range []string{"Is it 1,450 kg (", "Is it 223 N·m (", "Is it 0.7?", "no source"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in %s", want, got)
		}
	}
	if got := set(299, 190, 0.7); !strings.Contains(got, "vehicle.axle_load") {
		t.Errorf("299 kg: %q", got)
	}
}
