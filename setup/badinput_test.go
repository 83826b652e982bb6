package setup

import (
	"math"
	"testing"

	"axlewright/axle"
	"axlewright/calc/bearing"
	"axlewright/calc/gear"
)

// Every question refuses what cannot be right, names the field and says what was
// expected.
func TestBadInputs(t *testing.T) {
	marksIn := func(change func(*ShimByMarks)) error {
		in := ShimByMarks{light, TowardsWheel, Read(1.37 * mm), thou(2), thou(-2)}
		change(&in)
		_, err := ShimFromMarks(in)
		return err
	}
	distanceIn := func(change func(*ShimByDistance)) error {
		in := ShimByDistance{Spec: light, ThickerPushes: TowardsWheel, Fitted: Read(1 * mm), Nominal: Read(78 * mm), Mark: thou(0), Method: BothBores,
			Left: BoreReading{Read(0.1 * mm), StemIn}, Right: BoreReading{Read(0), ""}}
		change(&in)
		_, err := ShimFromDistance(in)
		return err
	}
	preloadIn := func(change func(*PinionPreload)) error {
		in := PinionPreload{Spec: light, Bearings: NewBearings, Seal: SealOut, Tool: SpringBalance, Pull: Read(70), Radius: Read(32 * mm), When: WhileTurning}
		change(&in)
		_, err := JudgePinionPreload(in)
		return err
	}
	adjustIn := func(change func(*AdjustLash)) error {
		in := AdjustLash{Spec: light, Adjusters: sixteen, Lash: Read(0.2 * mm), Gears: NewGears}
		change(&in)
		_, err := NotchesForLash(in)
		return err
	}
	lashIn := func(change func(*LashRound)) error {
		in := lashAt(0.1, 0.12, 0.14, 0.12)
		change(&in)
		_, err := LashOfRound(in)
		return err
	}
	runOutIn := func(change func(*RunOutByTurning)) error {
		b := body{holes: 10, seat: 0.01 * mm, wheel: 0.01 * mm, noise: quiet}
		in := RunOutByTurning{Spec: light, Holes: 10, First: b.round(6, 0), Second: b.round(6, 5)}
		change(&in)
		_, err := SeparateRunOut(in)
		return err
	}
	patternIn := func(change func(*Pattern)) error {
		in := pattern(middle, middle, TaperedDepth)
		change(&in)
		_, err := ReadPattern(in)
		return err
	}
	pegIn := func(change func(*PegSetting)) error {
		in := pegSet(1)
		change(&in)
		_, err := SetPeg(in)
		return err
	}
	boreIn := func(change func(*BoreCheck)) error {
		in := goodBores()
		change(&in)
		_, err := JudgeBores(in)
		return err
	}
	for _, c := range []struct {
		field string
		err   error
	}{
		{"ThickerPushes", marksIn(func(in *ShimByMarks) { in.ThickerPushes = "up" })},
		{"OldShim", marksIn(func(in *ShimByMarks) { in.OldShim = Read(1.37) })}, // metres
		{"OldShim", marksIn(func(in *ShimByMarks) { in.OldShim = Read(math.NaN()) })},
		{"NewMark.Unit", marksIn(func(in *ShimByMarks) { in.NewMark.Unit = "mils" })},
		{"OldMark.Plus", marksIn(func(in *ShimByMarks) { in.OldMark.Plus = "plus" })},
		{"OldMark.Count", marksIn(func(in *ShimByMarks) { in.OldMark.Count = Read(7850) })},
		{"Method", distanceIn(func(in *ShimByDistance) { in.Method = "by eye" })},
		{"Left.Stem", distanceIn(func(in *ShimByDistance) { in.Left.Stem = "up" })},
		{"Right.Amount", distanceIn(func(in *ShimByDistance) { in.Right.Amount = Read(-0.2 * mm) })},
		{"Nominal", distanceIn(func(in *ShimByDistance) { in.Nominal = Read(0) })},
		{"Bearings", preloadIn(func(in *PinionPreload) { in.Bearings = "half worn" })},
		{"Radius", preloadIn(func(in *PinionPreload) { in.Radius = Read(0) })},
		{"Pull", preloadIn(func(in *PinionPreload) { in.Pull = Read(-1) })},
		{"Tool", preloadIn(func(in *PinionPreload) { in.Tool = "feel" })},
		{"When", preloadIn(func(in *PinionPreload) { in.When = "sometimes" })},
		{"Spec.Kind", preloadIn(func(in *PinionPreload) { in.Spec.Kind = "big" })},
		{"Adjusters.Pitch", adjustIn(func(in *AdjustLash) { in.Adjusters.Pitch = 0 })},
		{"Adjusters.Notches", adjustIn(func(in *AdjustLash) { in.Adjusters.Notches = 0 })},
		{"Adjusters.WheelSide", adjustIn(func(in *AdjustLash) { in.Adjusters.WheelSide = "front" })},
		{"Lash", adjustIn(func(in *AdjustLash) { in.Lash = Read(0.2) })},
		{"Wanted", adjustIn(func(in *AdjustLash) { in.Wanted = -0.1 * mm })},
		{"Gears", adjustIn(func(in *AdjustLash) { in.Gears = "so so" })},
		{"Readings[2]", lashIn(func(in *LashRound) { in.Readings[2] = Read(-0.1 * mm) })},
		{"Readings", lashIn(func(in *LashRound) { in.Readings = make([]Reading, 200) })},
		{"Plunger", lashIn(func(in *LashRound) { in.Plunger = gear.DialSetting("askew") })},
		{"Use", lashIn(func(in *LashRound) { in.Use = "parade" })},
		{"Mesh.DialRadius", lashIn(func(in *LashRound) { in.Mesh = pair354(t, 108) })},
		{"Holes", runOutIn(func(in *RunOutByTurning) { in.Holes = 0 })},
		{"Allowed[0]", runOutIn(func(in *RunOutByTurning) { in.Allowed = []int{10} })},
		{"Second.Turned", runOutIn(func(in *RunOutByTurning) { in.Second.Turned = -10 })},
		{"First.Readings[1]", runOutIn(func(in *RunOutByTurning) { in.First.Readings[1] = Read(math.Inf(1)) })},
		{"Drive.Along", patternIn(func(in *Pattern) { in.Drive.Along = "outside" })},
		{"Coast.Shape", patternIn(func(in *Pattern) { in.Coast.Shape = "round" })},
		{"Depth", patternIn(func(in *Pattern) { in.Depth = "deep" })},
		{"Pitch", pegIn(func(in *PegSetting) { in.Pitch = 0 })},
		{"RunOut", pegIn(func(in *PegSetting) { in.RunOut = Read(-1) })},
		{"Spot", pegIn(func(in *PegSetting) { in.Spot = "top" })},
		{"Locked[0]", pegIn(func(in *PegSetting) { in.Locked = []Reading{Read(-1 * mm)} })},
		{"Window.High", pegIn(func(in *PegSetting) { in.Window = Window{Low: 0.3 * mm, High: 0.2 * mm} })},
		{"Mandrel", boreIn(func(in *BoreCheck) { in.Mandrel = "wobbles" })},
		{"Left.Across", boreIn(func(in *BoreCheck) { in.Left.Across = Read(72) })},
		{"LineLength", boreIn(func(in *BoreCheck) { in.LineLength = Read(0) })},
	} {
		wantField(t, c.err, c.field)
	}
}

// All that is wrong is told at once.
func TestAllBadInputsAtOnce(t *testing.T) {
	_, err := NotchesForLash(AdjustLash{Spec: Spec{Kind: "x"}, Adjusters: Adjusters{Pitch: -1, WheelSide: "x"}, Lash: Read(-1), Gears: "x"})
	found, ok := err.(axle.Findings)
	if !ok || len(found) != 6 {
		t.Errorf("%d findings: %v", len(found), err)
	}
}

// What nobody has measured yet is no mistake.
func TestNothingMeasuredYet(t *testing.T) {
	marks, err1 := ShimFromMarks(ShimByMarks{})
	distance, err2 := ShimFromDistance(ShimByDistance{})
	gap, err3 := ShimFromGap(ShimByGap{})
	depth, err4 := ShimFromDepth(ShimByDepth{})
	other, err5 := ShimForOtherBearing(ShimForBearing{})
	preload, err6 := JudgePinionPreload(PinionPreload{})
	total, err7 := JudgeTotalTorque(TotalTorque{})
	spread, err8 := SideSpreadByMicrometer(CapSpread{})
	lash, err9 := LashOfRound(LashRound{})
	read, err10 := ReadPattern(Pattern{})
	set, err11 := SetPeg(PegSetting{Pitch: 1.5 * mm})
	bores, err12 := JudgeBores(BoreCheck{})
	weld, err13 := CompareBores(BoresAroundWelding{})
	adjust, err14 := NotchesForLash(AdjustLash{Adjusters: sixteen})
	line, err15 := NextNotchTighter(LineUp{Adjusters: sixteen})
	notches, err16 := SidePreloadByNotches(NotchPreload{Adjusters: sixteen})
	turned, err17 := SeparateRunOut(RunOutByTurning{Holes: 10, Second: Round{Turned: 5}})
	face, err18 := RunOutFromFace(RunOutByFace{Holes: 10, FlangeRadius: 60 * mm, BackFaceRadius: 90 * mm})
	spacer, err19 := SpacerFor(SpacerChange{Pair: pinionPair()})
	for i, c := range []struct {
		a   Answer
		err error
	}{
		{marks.Answer, err1}, {distance.Answer, err2}, {gap.Answer, err3}, {depth.Answer, err4}, {other.Answer, err5}, {preload.Answer, err6}, {total, err7},
		{spread.Answer, err8}, {lash.Answer, err9}, {read.Answer, err10}, {set.Answer, err11}, {bores.Answer, err12}, {weld.Answer, err13}, {adjust.Answer, err14},
		{line.Answer, err15}, {notches.Answer, err16}, {turned.Answer, err17}, {face.Answer, err18}, {spacer.Answer, err19},
	} {
		if c.err != nil {
			t.Errorf("question %d: %v", i+1, c.err)
			continue
		}
		wantState(t, c.a, NotYet, "Still to come: ")
		if len(c.a.Sum) != 0 {
			t.Errorf("question %d has a sum without readings", i+1)
		}
	}
}

// A pair that cannot be is refused by the formula and told like any field.
func TestFormulasRefuseInOurWords(t *testing.T) {
	mesh := pair354(t, 0)
	mesh.Drive = 80 * degree
	_, err := mesh.Sensitivity()
	wantField(t, err, "DrivePressureAngle")
	in := SpacerChange{Spec: light, Bearings: NewBearings, Pair: pinionPair(), Drag: Read(2)}
	in.Pair[1].Drag = bearing.PreloadedBearing{}
	_, err = SpacerFor(in)
	wantField(t, err, "MeanDiameter")
}

func TestGearSetOfTheCatalogue(t *testing.T) {
	var g axle.GearSet
	g.PinionTeeth, g.WheelTeeth = 13, 46
	g.OutsideDiameter.Value, g.Face.Value = 216*mm, 32*mm
	g.PinionSpiral.Value, g.DriveAngle.Value, g.CoastAngle.Value = 35*degree, 20*degree, 20*degree
	mesh := must[Mesh](t)(MeshOf(g))
	s := must[Sensitivity](t)(mesh.Sensitivity())
	onMeanCircle := mesh
	onMeanCircle.DialRadius = 0
	m := must[Sensitivity](t)(onMeanCircle.Sensitivity())
	if !near(0.1*m.Wheel.Likely, 0.086, 0.0006) { // the same angles and teeth as the pair of the set-up sheet
		t.Errorf("lash per movement %g on the mean circle, want 0.086 per 0.10", m.Wheel.Likely)
	}
	if !near(s.Wheel.Likely/m.Wheel.Likely, mesh.DialRadius/mesh.Cones.WheelMeanRadius, 1e-12) || s.Wheel.Likely <= m.Wheel.Likely {
		t.Errorf("at the heel %g, on the mean circle %g", s.Wheel.Likely, m.Wheel.Likely)
	}
	g.WheelTeeth = 3
	_, err := MeshOf(g)
	wantField(t, err, "WheelTeeth")
}
