package document

import (
	"strings"
	"testing"

	"axlewright/assess"
)

// Far beyond its links a unit's figures begin with that word.
func TestLoadTextSaysWhatHasGivenOut(t *testing.T) {
	at := func(x float64) *float64 { return &x }
	c := assess.LoadCase{Label: "the standard rebuild", Torque: 25000, Links: []assess.LinkState{
		{Name: "cap walks", Demand: 33e3, Capacity: 0, Unit: "N", GiveOut: at(7970)},
		{Name: "tooth flanks pit", Demand: 58300, Capacity: 1, Unit: "1", GiveOut: at(4760)},
		{Name: "half-shaft yields", Demand: 25000, Capacity: 42100, Unit: "N·m"},
	}}
	said := func() string {
		var b strings.Builder
		if err := LoadText(&b, &c); err != nil {
			t.Fatal(err)
		}
		return strings.Join(strings.Fields(b.String()), " ")
	}
	for _, want := range []string{"✕ At this torque 2 of 3 links have given out; first: tooth flanks pit, at 4,760 N·m", "33.0 kN of nothing, as the cap's joint is open"} {
		if !strings.Contains(said(), want) {
			t.Errorf("no %q in %s", want, said())
		}
	}
	c.Torque = 4000
	if strings.Contains(said(), "given out") {
		t.Errorf("all links hold, and it says %s", said())
	}
}
