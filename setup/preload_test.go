package setup

import (
	"testing"

	"pgregory.net/rapid"

	"axlewright/internal/published"
)

const poundForce = 4.4482216152605 // N, exact by definition

func wrench(spec Spec, torque float64) PinionPreload {
	return PinionPreload{Spec: spec, Bearings: NewBearings, Seal: SealOut, Tool: TorqueWrench, Torque: Read(torque), When: WhileTurning}
}

func judged(t testing.TB, in PinionPreload) PreloadResult {
	t.Helper()
	return must[PreloadResult](t)(JudgePinionPreload(in))
}

func TestTurningTorquePublished(t *testing.T) {
	cage := PinionPreload{Spec: light, Bearings: NewBearings, Seal: SealOut, Tool: SpringBalance, Pull: Read(5 * poundForce), Radius: Read(3 * 0.0254), When: WhileTurning}
	// One pull belongs to 20 lbf·inch at 32 mm: a range that is nothing else shows it.
	one := light.With(Maker(PinionNew, 20*poundInch, 20*poundInch, "any"))
	byRadius := wrench(one, 20*poundInch)
	byRadius.Radius = Read(32 * mm)
	pulls := judged(t, byRadius)
	published.Check(t, []published.Row{
		{Name: "5 lbf on a cage of 6 in diameter, lbf·inch", Got: judged(t, cage).Torque / poundInch, Printed: "15", Source: "TM 5-3895-359-14&P, p. 5-16, example"},
		{Name: "20 lbf·inch, N·m", Got: pulls.Torque, Printed: "2.26", Source: sheetSource},
		{Name: "the same at 32 mm, N", Got: pulls.PullLow, Printed: "70.6", Source: sheetSource},
		{Name: "the same, kgf", Got: pulls.PullHigh / 9.80665, Printed: "7.2", Source: sheetSource},
		{Name: "8 lbf·foot, lbf·inch", Got: judged(t, wrench(light, 8*12*poundInch)).Torque / poundInch, Printed: "96", Source: sheetSource},
	})
	if !pulls.Has("70.6 N (7.2 kgf, 15.9 lbf)") {
		t.Errorf("the balance is not said as it is marked\n%s", told(pulls.Answer))
	}
}

// 5 to 45 lbf·inch for new, 10 to 30 for reused bearings, rolling.
func TestRangesOfAManual(t *testing.T) {
	spec := light.With(Maker(PinionNew, 5*poundInch, 45*poundInch, "8-18"), Maker(PinionUsed, 10*poundInch, 30*poundInch, "8-18"))
	published.Check(t, []published.Row{
		{Name: "5 lbf·inch, N·m", Got: spec.Limit(PinionNew).Low, Printed: "0.565", Source: "TM 10-3930-660-34, p. 8-18, converted"},
		{Name: "45 lbf·inch, N·m", Got: spec.Limit(PinionNew).High, Printed: "5.08", Source: "TM 10-3930-660-34, p. 8-18, converted"},
		{Name: "10 lbf·inch, N·m", Got: spec.Limit(PinionUsed).Low, Printed: "1.130", Source: "TM 10-3930-660-34, p. 8-18, converted"},
		{Name: "30 lbf·inch, N·m", Got: spec.Limit(PinionUsed).High, Printed: "3.390", Source: "TM 10-3930-660-34, p. 8-18, converted"},
		{Name: "2 lbf·inch of rise, N·m", Got: 2 * poundInch, Printed: "0.2", Source: "TM 5-3805-260-24, p. 3-243"},
		{Name: "4 lbf·inch of rise, N·m", Got: 4 * poundInch, Printed: "0.5", Source: "TM 5-3805-260-24, p. 3-243"},
		{Name: "0.6 lbf·foot without seal, N·m", Got: 0.6 * 12 * poundInch, Printed: "0.8", Source: "TM 5-3810-307-24-1-2"},
		{Name: "0.9 lbf·foot without seal, N·m", Got: 0.9 * 12 * poundInch, Printed: "1.2", Source: "TM 5-3810-307-24-1-2"},
	})
	wantState(t, judged(t, wrench(spec, 20*poundInch)).Answer, Fine, "maker's page 8-18")
	wantState(t, judged(t, wrench(spec, 50*poundInch)).Answer, Look, "thicker spacer", "crush tube is not slackened")
	used := wrench(spec, 6*poundInch)
	used.Bearings = UsedBearings
	wantState(t, judged(t, used).Answer, Look, "thinner spacer")
	used.Torque = Read(35 * poundInch)
	wantState(t, judged(t, used).Answer, Look, "thicker spacer")
}

func TestInchForFootIsAsked(t *testing.T) {
	old := Spec{Kind: SmallPassenger}
	r := judged(t, wrench(old, 8*12*poundInch))
	wantState(t, r.Answer, Look, "inch and foot differ 12 times", "read in pound-inches and written as pound-feet")
	if !near(r.Meant, 8*poundInch, 1e-9) {
		t.Errorf("meant %g lbf·inch, want 8", r.Meant/poundInch)
	}
	if r := judged(t, wrench(old, 8*poundInch/12)); !near(r.Meant, 8*poundInch, 1e-9) || !r.Has("read in pound-feet and written as pound-inches") {
		t.Errorf("twelve times too low: meant %g\n%s", r.Meant, told(r.Answer))
	}
	wantState(t, judged(t, wrench(light, 7)).Answer, Look, "pound-inches or in pound-feet") // over 5 N·m, not twelve-fold
	if r := judged(t, wrench(light, 3)); len(r.Ask) != 0 || r.Meant != 0 {
		t.Errorf("a right reading is asked about: %v", r.Ask)
	}
}

func TestSealLeavesADoubt(t *testing.T) {
	in := wrench(light, 2.4) // 1.8 to 2.1 without the seal, wanted 2.0 to 4.5
	in.Seal = SealIn
	r := judged(t, in)
	wantState(t, r.Answer, Look, "the seal leaves open", "with the seal out")
	if !near(r.Drag.Low, 1.8, 1e-9) || !near(r.Drag.High, 2.1, 1e-9) {
		t.Errorf("drag %v, want 1.8 to 2.1", r.Drag)
	}
	in.OwnSeal = Read(0.35)
	wantState(t, judged(t, in).Answer, Fine)
	in.When = BreakingAway
	wantState(t, judged(t, in).Answer, Look, "10 to 20 times")
}

func TestWithoutAKindNothingIsFine(t *testing.T) {
	wantState(t, judged(t, wrench(Spec{}, 2.3)).Answer, Look, "Say the kind")
	wantState(t, judged(t, wrench(Spec{Kind: LightTruck85}, 2.5)).Answer, Fine)
}

// Both tools give one answer.
func TestWrenchAndBalanceAgree(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		torque := rapid.Float64Range(0.1, 9).Draw(rt, "torque")
		radius := rapid.Float64Range(0.02, 0.08).Draw(rt, "radius")
		a := wrench(light, torque)
		b := a
		b.Tool, b.Torque, b.Pull, b.Radius = SpringBalance, Reading{}, Read(torque/radius), Read(radius)
		ra, rb := judged(t, a), judged(t, b)
		if ra.State != rb.State || !near(ra.Torque, rb.Torque, 1e-9) {
			rt.Errorf("%s at %g by wrench, %s at %g by balance", ra.State, ra.Torque, rb.State, rb.Torque)
		}
	})
}

func TestTotalTorque(t *testing.T) {
	judge := func(pinion, total float64) Answer {
		return must[Answer](t)(JudgeTotalTorque(TotalTorque{Spec: light, Pinion: Read(pinion), Total: Read(total)}))
	}
	wantState(t, judge(2.3, 3.3), Fine)
	wantState(t, judge(2.3, 2.6), Look, "More side preload")
	wantState(t, judge(2.3, 4.6), Look, "Less side preload")
	wantState(t, judge(2.3, 2.0), Look, "one of the two was read otherwise")
	wantState(t, judge(0.3, 3.6), Look, "pound-inches")
	wantState(t, must[Answer](t)(JudgeTotalTorque(TotalTorque{Spec: light, Pinion: Read(2)})), NotYet, "with the crown wheel in")
}
