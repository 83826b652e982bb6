package assess

import (
	"math"
	"testing"

	"axlewright/axle"
	"axlewright/calc/gear"
)

// One kind of cycle, from rest to a pull on the coast flank, against the curve
// of EN 1993-1-9 worked by hand: N = 2·10⁶·(Δσ_C/Δσ)³.
func TestPegWeldTiresByItsCurve(t *testing.T) {
	e, c, build := referenceBuild(t, "b")
	e.Mounting.Forward = gear.Coast
	build.Casting.Metal = "G20Mn5+N" // cast steel, which loses little beside a weld
	s := &study{catalogue: &c, enquiry: &e, builds: []axle.Assembly{build}, doubts: newModelDoubts()}
	u, _, err := s.nominalUnit(&build, 0)
	if err != nil {
		t.Fatal(err)
	}
	if reach, err := pegWeldTires(u, nil); err != nil || reach != nil {
		t.Errorf("a duty that was not logged is judged: %v", err)
	}
	const torque, often = 6000, 0.001 // N·m, a metre
	u.duty.Cycles = []axle.TorqueCycle{{Low: -0.5, High: 1, PerMetre: often}}
	reach, err := pegWeldTires(u, nil)
	if err != nil {
		t.Fatal(err)
	}
	toe, err := toeShare(u, nil)
	if err != nil {
		t.Fatal(err)
	}
	stress := throatStress(u, u.at(gear.Coast, pegLoad, torque))
	if stress < 0.737*36e6*toe || stress > 210e6*toe { // on the steep part of the curve
		t.Fatalf("%g Pa on the throat", stress)
	}
	want := often * u.duty.Life.Value * 1000 / (2e6 * math.Pow(36e6*toe/stress, 3))
	if damage, stands := reach(gear.Drive, torque, nil); math.Abs(damage/want-1) > 1e-9 || stands != u.doubts.WeldLife.Value {
		t.Errorf("damage %g, by hand %g; stands %g", damage, want, stands)
	}
	// A cycle all on the peg counts from its own lowest load.
	u.duty.Cycles[0].Low = 0.9
	if damage, _ := reach(gear.Drive, torque, nil); damage >= want {
		t.Errorf("a small cycle high up does %g, a whole one %g", damage, want)
	}
}

// The quarry's log counts against the peg's weld, the more the harder the same
// journey is driven.
func TestLoggedDutyJudgesThePegsWeld(t *testing.T) {
	e, c := load(t, "09-quarry-logged")
	e.Fitted = []string{"peg-31"}
	builds, err := c.BuildsFor(&e)
	if err != nil {
		t.Fatal(err)
	}
	s := &study{catalogue: &c, enquiry: &e, builds: builds[:1], doubts: newModelDoubts()}
	u, _, err := s.nominalUnit(&builds[0], 0)
	if err != nil {
		t.Fatal(err)
	}
	reach, err := pegWeldTires(u, nil)
	if err != nil || reach == nil {
		t.Fatalf("the weld is not judged by the log: %v", err)
	}
	last := 0.0
	for _, times := range []float64{1, 2, 4, 8} {
		damage, _ := reach(e.Mounting.Forward, times*u.governing, nil)
		if damage < last {
			t.Errorf("%g times as hard: damage %g after %g", times, damage, last)
		}
		last = damage
	}
	if last == 0 {
		t.Error("eight times as hard a journey does the weld nothing")
	}
}
