package assess

import (
	"testing"

	"axlewright/axle"
	"axlewright/calc/gear"
	"axlewright/quantity"
)

// Below the first touch the peg neither carries nor holds back; from there on it
// does both. The axle loads put the touch on either side of where paths have
// their knots. The touch itself is checked against single equilibria.
func TestPegCurveTurnsAtTheFirstTouch(t *testing.T) {
	for _, load := range []string{"1451 kg", "1700 kg"} {
		e, c := load01(t, load)
		a := adviceOn(t, e, c, 50)
		touch := 0.0 // the last torque without load
		for _, q := range a.Peg.Curve {
			if q.Load == 0 {
				touch = q.Torque
			}
			if held := q.Without - q.With; q.Load == 0 && !(held < 1e-7 && held > -1e-7) || q.Load > 100 && held < 1e-7 {
				t.Errorf("%s: at %.0f N·m the peg carries %.1f N and takes off %g m", load, q.Torque, q.Load, held)
			}
		}
		builds, err := c.BuildsFor(&e)
		if err != nil {
			t.Fatal(err)
		}
		checked := false
		for _, b := range builds {
			if b.Peg == nil || len(b.Upgrades) > 2 {
				continue
			}
			x, err := SolveLoad(&e, &c, b, gear.Coast, 3000)
			if err != nil {
				t.Fatal(err)
			}
			if tight, slack := *x.Peg.FirstTouchTorque, *x.Peg.FirstTouchSlack; touch <= tight || touch >= slack {
				t.Errorf("%s: first touched at %.0f N·m; tight spot at %.0f, slack one at %.0f", load, touch, tight, slack)
			}
			checked = true
			break
		}
		if !checked {
			t.Error("no build with nothing but a peg")
		}
	}
}

// load01 is the hill farm's enquiry with a shorter gear set and another axle load.
func load01(t *testing.T, axleLoad string) (axle.Enquiry, axle.Catalogue) {
	t.Helper()
	e, c := load(t, "01-hill-farm")
	q, err := quantity.Parse(axleLoad, quantity.Mass)
	if err != nil {
		t.Fatal(err)
	}
	e.Gears, e.Vehicle.AxleLoad.Value = "24-4.11", q.SI
	return e, c
}
