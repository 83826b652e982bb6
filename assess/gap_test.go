package assess

import (
	"math"
	"strings"
	"testing"

	"axlewright/axle"
	"axlewright/calc/contact"
	"axlewright/loadpath"
)

func referenceBuild(t *testing.T, id string) (axle.Enquiry, axle.Catalogue, axle.Assembly) {
	t.Helper()
	e, c, err := axle.LoadEnquiry("../examples/reference/build-" + id + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	builds, err := c.BuildsFor(&e)
	if err != nil {
		t.Fatal(err)
	}
	return e, c, builds[0]
}

// At the least gap, hot, the road leaves the peg alone, and slow work rubs the
// pad as hard as it stands and no harder. Worked out from single equilibria.
func TestLeastGapKeepsRoadAndPad(t *testing.T) {
	e, c, build := referenceBuild(t, "b")
	gap, err := PegGap(&e, &c, build)
	if err != nil {
		t.Fatal(err)
	}
	closing, err := pegClosing(build.Peg)
	if err != nil {
		t.Fatal(err)
	}
	peg := *build.Peg
	peg.Gap.Value = gap.Least - closing
	build.Peg = &peg
	duty, err := c.Duty(e.Duty)
	if err != nil {
		t.Fatal(err)
	}
	driving, hardest := 0.0, 0.0
	for _, b := range duty.Blocks {
		driving += b.Share.Value / b.Speed.Value
	}
	for _, b := range duty.Blocks {
		x, err := SolveLoad(&e, &c, build, e.Mounting.FlankOf(b.Going), b.AxleTorque.Value)
		if err != nil {
			t.Fatal(err)
		}
		if b.Speed.Value >= roadSpeed {
			if x.Peg.Load > 0 {
				t.Errorf("%s: the peg carries %g N", b.Name, x.Peg.Load)
			}
			continue
		}
		if b.Share.Value/b.Speed.Value < 0.01*driving {
			continue // over before the pad warms
		}
		speed := b.Speed.Value / e.Vehicle.Tyre.LoadedRadius.Value * peg.Radius.Value
		pressure := x.Peg.Load / (math.Pi / 4 * math.Pow(peg.PadDiameter.Value, 2))
		hardest = math.Max(hardest, pressure*speed)
		if pressure > peg.PadSteady.Value*(1+1e-6) {
			t.Errorf("%s: %g Pa on the pad", b.Name, pressure)
		}
	}
	if math.Abs(hardest/peg.PadRubbing.Value-1) > 1e-3 {
		t.Errorf("the hardest slow work rubs with %g Pa·m/s, the pad stands %g", hardest, peg.PadRubbing.Value)
	}
	if text := strings.Join(gap.Text, " "); !strings.Contains(text, "In slow work it rubs with up to") || !strings.Contains(text, "drawn by pressure times rubbing speed of the pad in slow work") || strings.Contains(text, "is closer than that") {
		t.Error(text)
	}
	peg.Gap.Value = 0.9 * gap.Least
	if close, err := PegGap(&e, &c, build); err != nil || !strings.Contains(strings.Join(close.Text, " "), "is closer than that") {
		t.Errorf("a gap closer than the least passes: %v %v", close.Text, err)
	}
	// A pad that stands twice of it may be set closer.
	peg.PadRubbing.Value *= 2
	closer, err := PegGap(&e, &c, build)
	if err != nil || closer.Least >= gap.Least {
		t.Errorf("least gap %g m with a better pad, %g m before: %v", closer.Least, gap.Least, err)
	}
}

// A limit that the wheel passes even on its peg: no window, what is in the way,
// and by how much it would have to change.
func TestShutWindowSaysByHowMuch(t *testing.T) {
	e, c, build := referenceBuild(t, "b")
	build.Casting.Limits.WheelAxial.Value = 0.2e-3
	peg := *build.Peg
	peg.PadRubbing.Value = 2e6
	build.Peg = &peg
	gap, err := PegGap(&e, &c, build)
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Join(gap.Text, " ")
	if gap.Verdict != loadpath.WindowShut || gap.Most == nil || *gap.Most >= gap.Least || !strings.Contains(text, "No window") || !strings.Contains(text, "What would open it: a pad of ") {
		t.Errorf("%s: %s", gap.Verdict, text)
	}
}

// A plate's weld is as strong as the weaker of weld and iron, by the casting's metal.
func TestIronBesideThePegsWeldCounts(t *testing.T) {
	e, c, build := referenceBuild(t, "b")
	s := &study{catalogue: &c, enquiry: &e, builds: []axle.Assembly{build}, doubts: newModelDoubts()}
	capacity := func(metal string) float64 {
		b := build
		b.Casting.Metal = metal
		u, _, err := s.nominalUnit(&b, 6000)
		if err != nil {
			t.Fatal(err)
		}
		reach, err := pegWeld(u, nil)
		if err != nil {
			t.Fatal(err)
		}
		_, stands := reach(axle.CoastFlank, 6000, nil)
		return stands
	}
	if got := capacity("G20Mn5+N"); got != build.Peg.Plate.WeldLimit.Value {
		t.Errorf("in cast steel the weld stands %g Pa, its limit is %g", got, build.Peg.Plate.WeldLimit.Value)
	}
	if got := capacity("EN-GJL-150"); got >= build.Peg.Plate.WeldLimit.Value {
		t.Errorf("in grey iron the weld stands %g Pa", got)
	}
}

// What the peg carries at the peaks is told apart by flank and by what the vehicle does.
func TestGapTextNamesThePeaks(t *testing.T) {
	demands := []loadpath.Demand{{Flank: axle.DriveFlank}, {Flank: axle.CoastFlank}}
	w := loadpath.GapWindow{Verdict: loadpath.NotNeeded, Uses: []loadpath.PegUse{{Touches: true}, {Touches: true}}}
	text := strings.Join(gapAdvice(&w, demands, &axle.Peg{}, axle.CoastFlank).Text, " ")
	for _, want := range []string{"At the peak in reverse or on the overrun, on the drive flank", "At the peak pulling forward, on the coast flank"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in %s", want, text)
		}
	}
}

// The gap is set where the back face comes closest: run-out only opens it.
func TestGapIsSetAtTheTightSpot(t *testing.T) {
	e, c, build := referenceBuild(t, "b")
	at := func(runOut float64) LoadCase {
		peg := *build.Peg
		peg.RunOut.Value = runOut
		build.Peg = &peg
		x, err := SolveLoad(&e, &c, build, axle.CoastFlank, 3000)
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	even, wobbling := at(0), at(0.08e-3)
	if wobbling.Peg.Gap != even.Peg.Gap || math.Abs(*wobbling.Peg.FirstTouchTorque/(*even.Peg.FirstTouchTorque)-1) > 1e-6 {
		t.Errorf("set to %g m, tight spot touches at %g N·m; without run-out %g", wobbling.Peg.Gap, *wobbling.Peg.FirstTouchTorque, *even.Peg.FirstTouchTorque)
	}
	if !(*wobbling.Peg.FirstTouchSlack > *wobbling.Peg.FirstTouchTorque && wobbling.Peg.Load < even.Peg.Load) {
		t.Errorf("slack spot at %g N·m, load %g N against %g", *wobbling.Peg.FirstTouchSlack, wobbling.Peg.Load, even.Peg.Load)
	}
}

// The heat that a pad stands warms its face by just what is allowed; a wheel
// that hardly turns makes none worth a limit.
func TestPadHeatWarmsTheFaceAsFarAsAllowed(t *testing.T) {
	_, _, build := referenceBuild(t, "b")
	const speed = 3.0 // rad/s
	heat, err := padHeat(build.Peg, speed)
	if err != nil {
		t.Fatal(err)
	}
	face, err := contact.PadFaceRise(contact.PadFaceParams{
		Heat: heat, Radius: build.Peg.PadDiameter.Value / 2, Speed: speed * build.Peg.Radius.Value,
		PadConductivity: bronzeConducts, WheelConductivity: steelConducts, WheelDiffusivity: steelDiffuses,
	})
	if err != nil || math.Abs(face.Rise-padWarming) > 1e-9 {
		t.Errorf("%g W warm the face by %g K: %v", heat, face.Rise, err)
	}
	if heat, err := padHeat(build.Peg, 1e-3); heat != 0 || err != nil {
		t.Errorf("a wheel that hardly turns: %g W, %v", heat, err)
	}
}
