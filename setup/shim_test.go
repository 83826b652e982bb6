package setup

import (
	"testing"

	"pgregory.net/rapid"

	"axlewright/internal/published"
)

const sheetSource = "figures of a set-up sheet: common practice, no source"

func marks(t *testing.T, push Push, shim float64, old, new Mark) ShimResult {
	t.Helper()
	return must[ShimResult](t)(ShimFromMarks(ShimByMarks{light, push, Read(shim), old, new}))
}

func TestShimsOfASetUpSheet(t *testing.T) {
	byMarks := marks(t, TowardsWheel, 1.37*mm, thou(2), thou(-2))
	direct := must[ShimResult](t)(ShimFromDistance(ShimByDistance{
		Spec: light, ThickerPushes: TowardsWheel, Fitted: Read(1.20 * mm), Nominal: Read(78.00 * mm), Mark: hundredths(-8), Method: Directly, Measured: Read(78.10 * mm),
	}))
	bores := must[ShimResult](t)(ShimFromDistance(ShimByDistance{
		Spec: light, ThickerPushes: TowardsWheel, Fitted: Read(1.20 * mm), Nominal: Read(78 * mm), Mark: hundredths(0), Method: BothBores,
		Left: BoreReading{Read(0.152 * mm), StemIn}, Right: BoreReading{Read(0.203 * mm), StemOut},
	}))
	gap := must[ShimResult](t)(ShimFromGap(ShimByGap{
		Spec: light, ThickerPushes: TowardsWheel, Fitted: Read(0), Gap: Read(0.50 * mm), Allowance: Read(0.20 * mm), Mark: hundredths(2),
	}))
	depth := must[ShimResult](t)(ShimFromDepth(ShimByDepth{
		Spec: light, ThickerPushes: TowardsWheel, Depth: Read(118.46 * mm), Distance: Read(91.00 * mm), Bearing: Read(27.02 * mm), Mark: hundredths(5),
	}))
	published.Check(t, []published.Row{
		{Name: "old 1.37, marks +2 and −2 thou, mm", Got: byMarks.Shim / mm, Printed: "1.47", Source: sheetSource},
		{Name: "the same, shim thicker by, mm", Got: byMarks.Change / mm, Printed: "0.10", Source: sheetSource},
		{Name: "78.10 measured, 78.00 − 0.08 wanted, shim thicker by, mm", Got: direct.Change / mm, Printed: "0.18", Source: sheetSource},
		{Name: "bores +0.152 and −0.203, mean, mm", Got: bores.Towards / mm, Printed: "-0.0255", Source: "arithmetic; a worked example in print has this sum with the wrong sign"},
		{Name: "gauge gap 0.50, mark +2, allowance 0.20, mm", Got: gap.Shim / mm, Printed: "0.28", Source: "worked example of a gauge-gap method, published for one axle"},
		{Name: "118.46 − (91.00 + 0.05) − 27.02, mm", Got: depth.Shim / mm, Printed: "0.39", Source: "derived: chain of dimensions"},
	})
	for _, r := range []ShimResult{byMarks, direct, bores, gap, depth} {
		wantState(t, r.Answer, Fine)
	}
	wantState(t, byMarks.Answer, Fine, "Shim 1.47 mm (58 thou): 0.10 mm (4 thou) thicker", "in, towards the crown wheel")
}

// The sign trap: the same etched number, read the other way, is 0.10 mm out.
func TestTheOtherSenseOfTheMark(t *testing.T) {
	in := ShimByDepth{Spec: light, ThickerPushes: TowardsWheel, Depth: Read(118.46 * mm), Distance: Read(91.00 * mm), Bearing: Read(27.02 * mm), Mark: hundredths(5)}
	in.Mark.Plus = PlusNearer
	if r := must[ShimResult](t)(ShimFromDepth(in)); !near(r.Shim, 0.49*mm, 1e-9) {
		t.Errorf("with plus nearer: %g mm, want 0.49", r.Shim/mm)
	}
	in.Mark.Plus = ""
	wantState(t, must[ShimResult](t)(ShimFromDepth(in)).Answer, NotYet, "does plus on the pinion mean")
	in.Mark = hundredths(0)
	in.Mark.Plus = "" // a mark of nought has no sign to ask for
	if r := must[ShimResult](t)(ShimFromDepth(in)); !near(r.Shim, 0.44*mm, 1e-9) {
		t.Errorf("without a mark: %g mm, want 0.44", r.Shim/mm)
	}
}

// Two manuals print the same table with opposite signs, because the shim sits
// elsewhere. One sum gives both.
func TestTwoPublishedTablesOfOppositeSign(t *testing.T) {
	under := func(old, new float64) float64 {
		return marks(t, TowardsWheel, 1.4*mm, thou(old), thou(new)).Change / 25.4e-6
	}
	cage := func(old, new float64) float64 {
		return marks(t, AwayFromWheel, 1.4*mm, thou(old), thou(new)).Change / 25.4e-6
	}
	const add, take = "TM 9-2320-266-34, table 19-1, p. 19-7: shims under the rear bearing cup", "TM 5-3895-369-14, table 5-4, p. 5-409"
	var rows []published.Row
	for i, printed := range []string{"8", "7", "6", "5", "4", "3", "2", "1", "0"} {
		rows = append(rows, published.Row{Name: "old +4, thou", Got: under(4, float64(i-4)), Printed: printed, Source: add})
	}
	for i, printed := range []string{"0", "-1", "-2", "-3", "-4", "-5", "-6", "-7", "-8"} {
		rows = append(rows, published.Row{Name: "old −4, thou", Got: under(-4, float64(i-4)), Printed: printed, Source: add})
	}
	for i, printed := range []string{"-6", "-5", "-4", "-3", "-2", "-1", "0", "1", "2"} {
		rows = append(rows, published.Row{Name: "old +2, thou", Got: cage(2, float64(i-4)), Printed: printed, Source: take})
	}
	rows = append(rows,
		published.Row{Name: "old +2, new −1, subtract mm", Got: -cage(2, -1) * 0.0254, Printed: "0.076", Source: take},
		published.Row{Name: "old −4, new +4, mm", Got: cage(-4, 4) * 0.0254, Printed: "0.203", Source: take},
		published.Row{Name: "distance 5.901 in old, 5.904 in new, shim 0.031 in", Got: marks(t, TowardsWheel, 0.031*0.0254, thou(1), thou(4)).Shim / 0.0254, Printed: "0.028",
			Source: "TM 10-3930-671-24, pinion shims, first example"},
		published.Row{Name: "new distance smaller by 0.004 in, shim 0.031 in", Got: marks(t, TowardsWheel, 0.031*0.0254, thou(5), thou(1)).Shim / 0.0254, Printed: "0.035",
			Source: "TM 10-3930-671-24, pinion shims, second example; its figures name old and new the wrong way round"},
		published.Row{Name: "cage shims 0.040 in, old +3, new −1", Got: marks(t, AwayFromWheel, 0.040*0.0254, thou(3), thou(-1)).Shim / 0.0254, Printed: "0.036",
			Source: "rule of TM 10-3930-660-34, p. 8-20: less the old number, plus the new; figures ours"},
	)
	published.Check(t, rows)
}

func TestDistanceOverAnArbor(t *testing.T) {
	r := must[ShimResult](t)(ShimFromDistance(ShimByDistance{
		Spec: light, ThickerPushes: TowardsWheel, Fitted: Read(1.20 * mm), Nominal: Read(78 * mm), Mark: hundredths(-8),
		Method: OverArbor, Block: Read(39.50 * mm), Gap: Read(0.45 * mm), Arbor: Read(38.00 * mm), Face: Read(19.15 * mm),
	}))
	if !near(r.Change, 0.18*mm, 1e-9) { // 39.50 + 0.45 + 19.00 + 19.15 = 78.10
		t.Errorf("thicker by %g mm, want 0.18", r.Change/mm)
	}
	wrongStep := must[ShimResult](t)(ShimFromDistance(ShimByDistance{
		Spec: light, ThickerPushes: TowardsWheel, Fitted: Read(1.20 * mm), Nominal: Read(78 * mm), Mark: hundredths(-8),
		Method: OverArbor, Block: Read(38.93 * mm), Gap: Read(0.45 * mm), Arbor: Read(38.00 * mm), Face: Read(19.15 * mm),
	}))
	wantState(t, wrongStep.Answer, Look, "right step of the gauge block")
	impossible := must[ShimResult](t)(ShimFromDistance(ShimByDistance{
		Spec: light, ThickerPushes: TowardsWheel, Fitted: Read(1.20 * mm), Nominal: Read(78 * mm), Mark: hundredths(-8),
		Method: OverArbor, Block: Read(30.93 * mm), Gap: Read(0.45 * mm), Arbor: Read(38.00 * mm), Face: Read(19.15 * mm),
	}))
	wantState(t, impossible.Answer, Look, "cannot be")
}

func TestAskAgainWhereAMarkIsLarge(t *testing.T) {
	r := marks(t, TowardsWheel, 1.37*mm, thou(0), thou(-20))
	wantState(t, r.Answer, Look, "more than marks are", "does it count thou")
}

func TestShimForATallerBearing(t *testing.T) {
	in := ShimForBearing{Spec: light, ThickerPushes: TowardsWheel, OldShim: Read(1.37 * mm), OldStack: Read(29.37 * mm), NewStack: Read(30.16 * mm)}
	r := must[ShimResult](t)(ShimForOtherBearing(in))
	if !near(r.Shim, 0.58*mm, 1e-9) || r.Towards != 0 {
		t.Errorf("shim %g mm and pinion moved %g, want 0.58 and no movement", r.Shim/mm, r.Towards)
	}
	wantState(t, r.Answer, Fine, "0.79 mm (31 thou) thinner", "stays where it was")
	in.NewStack = Read(31 * mm)
	wantState(t, must[ShimResult](t)(ShimForOtherBearing(in)).Answer, Look, "cannot be")
	in.ThickerPushes = AwayFromWheel
	if r := must[ShimResult](t)(ShimForOtherBearing(in)); !near(r.Shim, 3.00*mm, 1e-9) {
		t.Errorf("under a cage flange: %g mm, want 3.00", r.Shim/mm)
	}
}

func TestShimFlipsWithTheWayItPushes(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		mark := func(name string) Mark {
			return Mark{Read(float64(rapid.IntRange(-9, 9).Draw(rt, name))), rapid.SampledFrom([]MarkUnit{MarkThou, MarkHundredths}).Draw(rt, name+" unit"),
				rapid.SampledFrom([]MarkSense{PlusFurther, PlusNearer}).Draw(rt, name+" sense")}
		}
		in := ShimByMarks{light, TowardsWheel, Read(rapid.Float64Range(1.0, 2.0).Draw(rt, "shim") * mm), mark("old"), mark("new")}
		a := must[ShimResult](t)(ShimFromMarks(in))
		in.ThickerPushes = AwayFromWheel
		b := must[ShimResult](t)(ShimFromMarks(in))
		if !near(a.Change, -b.Change, 1e-15) || !near(a.Towards, b.Towards, 1e-15) {
			rt.Errorf("thicker pushes in: %g, out: %g; the pinion moves %g and %g", a.Change, b.Change, a.Towards, b.Towards)
		}
		if !near(a.Shim, in.OldShim.SI+a.Towards, 1e-15) {
			rt.Errorf("shim %g from %g for a movement of %g", a.Shim, in.OldShim.SI, a.Towards)
		}
		in.OldMark, in.NewMark = in.NewMark, in.OldMark
		if c := must[ShimResult](t)(ShimFromMarks(in)); !near(c.Towards, -a.Towards, 1e-15) {
			rt.Errorf("marks exchanged: %g and %g", a.Towards, c.Towards)
		}
	})
}

// The two ways of measuring agree: a pinion set by its marks measures right.
func TestMarksAndDistanceAgree(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		push := rapid.SampledFrom([]Push{TowardsWheel, AwayFromWheel}).Draw(rt, "push")
		old, new := hundredths(float64(rapid.IntRange(-9, 9).Draw(rt, "old"))), hundredths(float64(rapid.IntRange(-9, 9).Draw(rt, "new")))
		byMarks := must[ShimResult](t)(ShimFromMarks(ShimByMarks{light, push, Read(1.4 * mm), old, new}))
		// With the old shim the pinion stands where the old mark wants it.
		stands := 78*mm + old.further()
		byDistance := must[ShimResult](t)(ShimFromDistance(ShimByDistance{Spec: light, ThickerPushes: push, Fitted: Read(1.4 * mm), Nominal: Read(78 * mm), Mark: new, Method: Directly, Measured: Read(stands)}))
		if !near(byMarks.Shim, byDistance.Shim, 1e-12) {
			rt.Errorf("%g by marks, %g by distance", byMarks.Shim, byDistance.Shim)
		}
	})
}
