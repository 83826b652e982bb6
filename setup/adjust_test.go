package setup

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"axlewright/internal/published"
)

var sixteen = Adjusters{Pitch: 1.5 * mm, Notches: 16, WheelSide: Left, SeenFrom: "the pinion flange"}

func notches(t testing.TB, in AdjustLash) AdjustResult {
	t.Helper()
	return must[AdjustResult](t)(NotchesForLash(in))
}

func TestOneNotchPublished(t *testing.T) {
	trade := must[NotchResult](t)(OneNotch(sixteen, Mesh{}))
	geometry := must[NotchResult](t)(OneNotch(sixteen, pair354(t, 0)))
	fine := sixteen
	fine.Notches = 24
	fineNotch := must[NotchResult](t)(OneNotch(fine, pairOf(t, 11, 41, 0)))
	published.Check(t, []published.Row{
		{Name: "1.5 mm, 16 notches, mm a notch", Got: trade.Move.Likely / mm, Printed: "0.094", Source: sheetSource},
		{Name: "lash a notch by the rule of 0.7, mm", Got: trade.Lash.Low / mm, Printed: "0.066", Source: sheetSource},
		{Name: "lash a notch by 0.855, mm", Got: trade.Lash.High / mm, Printed: "0.080", Source: sheetSource},
		{Name: "lash a notch by geometry, 46/13, mm", Got: geometry.Lash.Likely / mm, Printed: "0.080", Source: sheetSource},
		{Name: "1.5 mm, 24 notches, mm a notch", Got: fineNotch.Move.Likely / mm, Printed: "0.0625", Source: "derived: pitch over notches"},
		{Name: "its lash, mm", Got: fineNotch.Lash.Likely / mm, Printed: "0.0536437", Source: "derived: 2·Δa·tan 20°·sin 74.98°/cos 35°", Within: 1e-4, Why: "the printed case has its pitch angle rounded"},
		{Name: "wheel moved 0.10 mm, lash, mm", Got: 0.1 * must[Sensitivity](t)(pair354(t, 0).Sensitivity()).Wheel.Likely, Printed: "0.086", Source: sheetSource},
		{Name: "pinion moved 0.10 mm, lash, mm", Got: 0.1 * must[Sensitivity](t)(pair354(t, 0).Sensitivity()).Pinion.Likely, Printed: "0.024", Source: sheetSource},
	})
}

func TestNotchesInWords(t *testing.T) {
	in := AdjustLash{Spec: light, Adjusters: sixteen, Mesh: pair354(t, 0), Lash: Read(0.29 * mm), Gears: NewGears}
	r := notches(t, in)
	wantState(t, r.Answer, Look, "Crown wheel in, towards the pinion: left adjuster 2 notches tighter, right 2 slacker (seen from the pinion flange).",
		"Slacken the right one 3 notches and bring it back 1, then tighten the left one 2. Last move tightening")
	in.Adjusters.WheelSide = Right
	wantState(t, notches(t, in).Answer, Look, "Crown wheel in, towards the pinion: right adjuster 2 notches tighter, left 2 slacker")
	in.Lash = Read(0.03 * mm)
	wantState(t, notches(t, in).Answer, Look, "Crown wheel out, away from the pinion: left adjuster 1 notch tighter, right 1 slacker")
	in.Adjusters.HalfStep = true
	in.Lash = Read(0.25 * mm)
	wantState(t, notches(t, in).Answer, Look, "right adjuster 1½ notches tighter, left 1½ slacker")
	in.Lash = Read(0.13 * mm)
	wantState(t, notches(t, in).Answer, Fine, "Leave the adjusters")
}

// One notch of 0.094 mm takes lash from 0.19 to 0.12 mm, through a window of
// 0.03 mm that only half a notch meets.
func TestHalfStepLockIsNeeded(t *testing.T) {
	window := light.With(Maker(Lash, 0.14*mm, 0.17*mm, "54-9"))
	in := AdjustLash{Spec: window, Adjusters: sixteen, Lash: Read(0.19 * mm), Gears: NewGears}
	r := notches(t, in)
	if !r.HalfNeeded || !near(math.Abs(r.Left), 1, 1e-12) && r.Left != 0 {
		t.Errorf("half needed %v, left %g", r.HalfNeeded, r.Left)
	}
	wantState(t, r.Answer, Look, "A lock with half steps is needed")
	in.Adjusters.HalfStep = true
	r = notches(t, in)
	if r.HalfNeeded || r.Left != 0.5 || !window.Limit(Lash).Holds(r.After.Likely) {
		t.Errorf("with half steps: %g notches, lash %g", r.Left, r.After.Likely/mm)
	}
}

// Public manuals agree: too much lash, wheel towards the pinion; both nuts alike.
func TestDirectionOfPublicManuals(t *testing.T) {
	const source = "TM 9-2320-289-34, p. 6-102: 0.003 to 0.012 in allowed, 0.005 to 0.008 preferred, one slot on each side"
	spec := light.With(Limit{Item: Lash, Low: 0.003 * 0.0254, High: 0.012 * 0.0254, AimLow: 0.005 * 0.0254, AimHigh: 0.008 * 0.0254, Tag: MakersPage, Page: "6-102"})
	l := spec.Limit(Lash)
	published.Check(t, []published.Row{
		{Name: "allowed from, mm", Got: l.Low / mm, Printed: "0.076", Source: source},
		{Name: "allowed to, mm", Got: l.High / mm, Printed: "0.305", Source: source},
		{Name: "preferred from, mm", Got: l.AimLow / mm, Printed: "0.127", Source: source},
		{Name: "preferred to, mm", Got: l.AimHigh / mm, Printed: "0.203", Source: source},
	})
	r := notches(t, AdjustLash{Spec: spec, Adjusters: sixteen, Lash: Read(0.0095 * 0.0254), Gears: NewGears})
	if r.Left != 1 || r.Right != -1 || !l.Aimed(r.After.Likely) {
		t.Errorf("lash 0.0095 in: left %g, right %g, then %g mm", r.Left, r.Right, r.After.Likely/mm)
	}
	// TM 9-2320-289-34, p. 6-22: over 0.008 in add behind the crown wheel and
	// take the same off the other side; under 0.005 in the reverse. A thicker
	// shim there is a tighter adjuster.
	over := notches(t, AdjustLash{Spec: spec, Adjusters: sixteen, Lash: Read(0.014 * 0.0254), Gears: NewGears})
	under := notches(t, AdjustLash{Spec: spec, Adjusters: sixteen, Lash: Read(0.002 * 0.0254), Gears: NewGears})
	if !(over.Left > 0 && over.WheelIn > 0 && under.Left < 0 && under.WheelIn < 0) {
		t.Errorf("too much lash: crown side %g; too little: %g", over.Left, under.Left)
	}
}

func TestUsedGearsGoBack(t *testing.T) {
	in := AdjustLash{Spec: light, Adjusters: sixteen, Mesh: pair354(t, 0), Lash: Read(0.16 * mm), Gears: UsedGears, AsFound: Read(0.32 * mm)}
	r := notches(t, in)
	if r.WheelIn >= 0 || !near(r.After.Likely, 0.32*mm, 0.05*mm) {
		t.Errorf("a set found at 0.32 is taken to %g mm", r.After.Likely/mm)
	}
	in.Lash = Read(0.33 * mm)
	wantState(t, notches(t, in).Answer, Fine, "goes back to the lash it had")
}

func TestAdjustingKeepsTheSidePreload(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		in := AdjustLash{
			Spec: light, Lash: Read(rapid.Float64Range(0.02, 0.6).Draw(rt, "lash") * mm), Wanted: rapid.Float64Range(0.05, 0.4).Draw(rt, "wanted") * mm, Gears: NewGears,
			Adjusters: Adjusters{Pitch: rapid.Float64Range(1, 3).Draw(rt, "pitch") * mm, Notches: rapid.IntRange(8, 40).Draw(rt, "notches"),
				HalfStep: rapid.Bool().Draw(rt, "half"), WheelSide: rapid.SampledFrom([]Side{Left, Right}).Draw(rt, "side")},
		}
		r := notches(t, in)
		if r.Left+r.Right != 0 {
			rt.Errorf("left %g and right %g: preload is not kept", r.Left, r.Right)
		}
		if step := in.Adjusters.step(); math.Mod(r.Left, step) != 0 {
			rt.Errorf("%g notches, the lock holds steps of %g", r.Left, step)
		}
		if r.WheelIn*(in.Lash.SI-r.After.Likely) < 0 {
			rt.Errorf("wheel in by %g and lash from %g to %g", r.WheelIn, in.Lash.SI, r.After.Likely)
		}
		crown := r.Left
		if in.Adjusters.WheelSide == Right {
			crown = r.Right
		}
		if crown*r.WheelIn < 0 {
			rt.Errorf("crown side %g notches tighter, wheel in %g", crown, r.WheelIn)
		}
		// There and back: wanting the old lash from the new undoes the move.
		back := in
		back.Lash, back.Wanted = Read(r.After.Likely), in.Lash.SI
		q := notches(t, back)
		if q.Left != -r.Left || !near(q.After.Likely, in.Lash.SI, 1e-12) {
			limit := light.Limit(Lash) // one of two as near may be taken for lying in the range
			if !limit.Holds(q.After.Likely) {
				rt.Errorf("there %g, back %g, lash %g from %g", r.Left, q.Left, q.After.Likely, in.Lash.SI)
			}
		}
	})
}

func TestNextNotchTighter(t *testing.T) {
	in := LineUp{Spec: light, Adjusters: sixteen, Mesh: pair354(t, 0), Left: Read(0.4), Right: Read(0.1), Spread: Read(0.22 * mm), Lash: Read(0.15 * mm)}
	r := must[LineUpResult](t)(NextNotchTighter(in))
	published.Check(t, []published.Row{
		{Name: "0.4 and 0.1 of 0.09375 mm, mm", Got: r.Squeeze / mm, Printed: "0.0469", Source: "by hand"},
		{Name: "half of the difference, mm", Got: r.WheelIn / mm, Printed: "0.0141", Source: "by hand"},
	})
	wantState(t, r.Answer, Fine, "Left adjuster 0.4 of a notch tighter", "Never slacken to find a slot")
	in.Spread = Read(0.28 * mm)
	wantState(t, must[LineUpResult](t)(NextNotchTighter(in)).Answer, Look, "a lock with half steps")
	in.Adjusters.HalfStep = true
	in.Left, in.Right = Read(0.5), Read(0)
	wantState(t, must[LineUpResult](t)(NextNotchTighter(in)).Answer, Fine, "Both locks fit")
}

func TestLiningUpLeavesThePreloadNoLower(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		in := LineUp{Spec: light, Adjusters: sixteen, Left: Read(rapid.Float64Range(0, 1).Draw(rt, "left")), Right: Read(rapid.Float64Range(0, 1).Draw(rt, "right"))}
		a := must[LineUpResult](t)(NextNotchTighter(in))
		in.Adjusters.WheelSide = Right
		b := must[LineUpResult](t)(NextNotchTighter(in))
		if a.Squeeze < 0 || a.Squeeze != b.Squeeze || !near(a.WheelIn, -b.WheelIn, 1e-15) {
			rt.Errorf("squeeze %g and %g, wheel in %g and %g", a.Squeeze, b.Squeeze, a.WheelIn, b.WheelIn)
		}
	})
}

// What a movement does, by geometry and by the rule of the trade.
func TestLashOfMove(t *testing.T) {
	mesh := pair354(t, 0)
	a := must[Answer](t)(LashOfMove(MoveOfMesh{Mesh: mesh, Wheel: Read(0.10 * mm), Pinion: Read(0.10 * mm)}))
	got := a.Sum[len(a.Sum)-1].Value
	published.Check(t, []published.Row{{Name: "both moved 0.10 mm, lash, mm", Got: got / mm, Printed: "0.110", Source: sheetSource + ": 0.086 and 0.024 together"}})
	wantState(t, a, Fine, "Lash grows by")
	a = must[Answer](t)(LashOfMove(MoveOfMesh{Wheel: Read(-0.10 * mm)}))
	if !a.Has("from −0.086 to −0.07 mm") && !a.Has("−0.09 to −0.07 mm") {
		t.Errorf("by the rule\n%s", told(a))
	}
	_, err := LashOfMove(MoveOfMesh{Wheel: Read(80 * mm)})
	wantField(t, err, "Wheel")
}
