package worked_test

import (
	"fmt"
	"math"

	"axlewright/calc/gear"
	"axlewright/quantity"
	"axlewright/setup"
)

// setupDone hands on a value and stops the example on an error.
func setupDone[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

const (
	setupDegree = math.Pi / 180
	setupInch   = 0.0254 // m
	setupPound  = 4.4482216152605
)

// setupSays prints how an answer stands and what is to be done.
func setupSays(step string, a setup.Answer) {
	fmt.Println(step, a.State.Symbol(), a.State)
	for _, s := range a.Say {
		fmt.Println("  ", s)
	}
}

// setupTyped reads a figure as a fitter types it.
func setupTyped(text string, dim quantity.Dimension) setup.Reading {
	return setup.Typed(setupDone(quantity.Parse(text, dim)))
}

// A pinion marked +2 thou is replaced by one marked −1 thou; 0.055 in of shims
// came out. In one axle the shims lie under the rear bearing cup and push the
// pinion in, in the other under something that pushes it out.
//
//	  crown wheel axis
//	------+------                 ------+------
//	      |  distance                   |
//	    [teeth]                       [teeth]
//	  ==bearing==                   ==bearing==
//	  ::shim:::::  thicker: in      | cage    |
//	  ###casting#                   |::shim::|   thicker: out
//	                                ##casting##
//
// Wanted: the shims for the new pinion, in both.
//
// Source: TM 9-2320-266-34, table 19-1: old +2, new −1 is +0.003 in.
// TM 5-3895-369-14, step 21 and table 5-4: the same marks are −0.003 in (0.076 mm).
func Example_setup1TwoTablesOfOppositeSign() {
	// 1. Plus says in both that the pinion sits further out.
	old := setup.Mark{Count: setup.Read(2), Unit: setup.MarkThou, Plus: setup.PlusFurther}
	new := setup.Mark{Count: setup.Read(-1), Unit: setup.MarkThou, Plus: setup.PlusFurther}
	fmt.Println("1. the new pinion has to come in by 2 − (−1) = 3 thou")

	// 2. The sum is one; the way that a thicker shim pushes gives it its sign.
	ask := setup.ShimByMarks{ThickerPushes: setup.TowardsWheel, OldShim: setupTyped("55 thou", quantity.Length), OldMark: old, NewMark: new}
	under := setupDone(setup.ShimFromMarks(ask))
	fmt.Printf("2. under the cup:  %+.3f in\n", under.Change/setupInch)
	ask.ThickerPushes = setup.AwayFromWheel
	cage := setupDone(setup.ShimFromMarks(ask))
	fmt.Printf("3. pushing out:    %+.3f in (%.3f mm)\n", cage.Change/setupInch, cage.Change*1e3)

	// 3. In words, with the sum.
	setupSays("4.", under.Answer)
	for _, l := range under.Sum {
		fmt.Printf("   %1s %-6s%s\n", l.Sign, l.Symbol, l.Shown)
	}

	// 5. From a shelf with shims of 3, 5 and 10 thou, six of each.
	pack := setupDone(setup.NearestPack(setup.PackChoice{Wanted: under.Shim, Most: 8, ThickerPushes: setup.TowardsWheel, Stock: []setup.Shim{
		{Thickness: 0.003 * setupInch, Count: 6}, {Thickness: 0.005 * setupInch, Count: 6}, {Thickness: 0.010 * setupInch, Count: 6}}}))
	setupSays("5.", pack.Answer)

	// Output:
	// 1. the new pinion has to come in by 2 − (−1) = 3 thou
	// 2. under the cup:  +0.003 in
	// 3. pushing out:    -0.003 in (-0.076 mm)
	// 4. ✓ fine
	//    Shim 1.47 mm (58 thou): 0.076 mm (3 thou) thicker than before. That moves the pinion 0.076 mm (3 thou) in, towards the crown wheel.
	//      m_old 0.051 mm (2 thou)
	//    − m_new −0.025 mm (−1 thou)
	//    = a     0.076 mm (3 thou)
	//      S_old 1.40 mm (55 thou)
	//    + a     0.076 mm (3 thou)
	//    = S     1.47 mm (58 thou)
	// 5. ✓ fine
	//    Take 5 × 0.25 mm (10 thou), 1 × 0.13 mm (5 thou) and 1 × 0.076 mm (3 thou): together 1.47 mm (58 thou).
}

// The pinion of a truck sits in a cage of 6 in diameter. A wire is wrapped round
// the cage and pulled with a pound scale; the cage turns steadily at 5 lb. The
// manual allows 5 to 15 pound-inches, rolling.
//
// Wanted: the torque, whether it is right, and what the scale may show.
//
// Source: TM 5-3895-359-14&P, p. 5-16: "5 pounds pull would equal 15 pound-inches";
// thinner spacer for more.
func Example_setup2PreloadOfACage() {
	spec := setup.Spec{Name: "truck"}.With(setup.Maker(setup.PinionNew, 5*setupPound*setupInch, 15*setupPound*setupInch, "5-16"))
	ask := setup.PinionPreload{
		Spec: spec, Bearings: setup.NewBearings, Seal: setup.SealOut, When: setup.WhileTurning,
		Tool: setup.SpringBalance, Pull: setupTyped("5 lbf", quantity.Force), Radius: setupTyped("3 in", quantity.Length),
	}
	r := setupDone(setup.JudgePinionPreload(ask))
	fmt.Printf("1. 5 lb at 3 in: %.1f pound-inches\n", r.Torque/(setupPound*setupInch))
	fmt.Println("2.", r.State, "-", r.Reason)
	fmt.Printf("3. the scale may show %.2f to %.2f lb\n", r.PullLow/setupPound, r.PullHigh/setupPound)

	// 4. The same wrench read in pound-feet is caught.
	ask.Tool, ask.Torque = setup.TorqueWrench, setupTyped("10 lbf ft", quantity.Torque)
	r = setupDone(setup.JudgePinionPreload(ask))
	fmt.Println("4.", r.State, "-", r.Ask[0])

	// 5. Three pound-inches, two less than the least.
	ask.Torque = setupTyped("3 lbf in", quantity.Torque)
	r = setupDone(setup.JudgePinionPreload(setup.PinionPreload{Spec: spec, Bearings: setup.NewBearings, Seal: setup.SealOut,
		When: setup.WhileTurning, Tool: setup.TorqueWrench, Torque: ask.Torque}))
	setupSays("5.", r.Answer)

	// Output:
	// 1. 5 lb at 3 in: 15.0 pound-inches
	// 2. fine - Drag of the new bearings 1.7 N·m (15 lbf·inch) is within 0.56 to 1.7 N·m (5 to 15 lbf·inch) (maker's page 5-16).
	// 3. the scale may show 1.67 to 5.00 lb
	// 4. look - Was it read in pound-inches and written as pound-feet? Then it is 1.1 N·m (10 lbf·inch).
	// 5. △ look
	//    More preload: a thinner spacer or shim between the bearings, or crush the crush tube a little further.
}

// A crown wheel and pinion of 46/13 teeth, 35° of spiral and 20° of pressure
// angle, is set with adjusters of 1.5 mm pitch and 16 notches. A dial whose
// plunger stood square to the tooth reads 0.20, 0.22, 0.23 and 0.21 mm. Wanted is
// 0.076 to 0.177 mm.
//
//	  left             right
//	[adjuster]|crown|     [adjuster]
//	  ==>     |wheel|<pinion
//	tighter: wheel in, less lash
//
// By hand: the plunger shows cos 20°·cos 35° = 0.7698 of the lash, so the mean
// of 0.215 is 0.2793 mm. A notch is 1.5/16 = 0.09375 mm, and lash does
// 2·tan 20°·sin 74.2°/cos 35° = 0.855 of that, 0.0802 mm. From 0.2793 to the
// middle, 0.1265, are 0.1528 mm or 1.91 notches: 2.
//
// Source: common practice of setting, figures invented; 0.094 and 0.080 mm a
// notch as on a set-up sheet of the trade; both adjusters alike as in
// TM 9-2320-289-34, p. 6-102.
func Example_setup3LashByNotches() {
	mesh := setup.Mesh{Cones: setupDone(gear.BevelPitchCones(13, 46, 35*setupDegree, 0.094)), Drive: 20 * setupDegree, Coast: 20 * setupDegree}
	spec := setup.Spec{Name: "T24", Kind: setup.LightAdjusted}

	// 1. The readings, put right.
	round := setup.LashRound{Spec: spec, Mesh: mesh, Plunger: gear.DialSquare, Gears: setup.NewGears}
	for _, text := range []string{"0.20 mm", "0.22 mm", "0.23 mm", "0.21 mm"} {
		round.Readings = append(round.Readings, setupTyped(text, quantity.Length))
	}
	lash := setupDone(setup.LashOfRound(round))
	fmt.Printf("1. the plunger shows %.4f of the lash; mean %.4f mm, variation %.3f mm\n", lash.Sum[0].Value, lash.Mean*1e3, lash.Variation*1e3)

	// 2. What one notch does.
	adjusters := setup.Adjusters{Pitch: 1.5e-3, Notches: 16, WheelSide: setup.Left, SeenFrom: "the pinion flange"}
	notch := setupDone(setup.OneNotch(adjusters, mesh))
	fmt.Printf("2. one notch: %.5f mm, lash %.4f mm\n", notch.Move.Likely*1e3, notch.Lash.Likely*1e3)

	// 3. Turn.
	turn := setupDone(setup.NotchesForLash(setup.AdjustLash{Spec: spec, Adjusters: adjusters, Mesh: mesh, Lash: setup.Read(lash.Mean), Gears: setup.NewGears}))
	fmt.Printf("3. from %.4f to %.4f mm: %.2f notches, so %g\n", lash.Mean*1e3, turn.Target*1e3, turn.Sum[len(turn.Sum)-1].Value, turn.Left)
	setupSays("4.", turn.Answer)
	fmt.Printf("5. left %+g and right %+g notches: the side preload is kept; lash to expect %.3f mm\n", turn.Left, turn.Right, turn.After.Likely*1e3)

	// Output:
	// 1. the plunger shows 0.7698 of the lash; mean 0.2793 mm, variation 0.039 mm
	// 2. one notch: 0.09375 mm, lash 0.0802 mm
	// 3. from 0.2793 to 0.1265 mm: 1.91 notches, so 2
	// 4. △ look
	//    Crown wheel in, towards the pinion: left adjuster 2 notches tighter, right 2 slacker (seen from the pinion flange).
	//    Slacken the right one 3 notches and bring it back 1, then tighten the left one 2. Last move tightening, of each.
	//    Measure lash again at 4 to 8 points.
	// 5. left +2 and right -2 notches: the side preload is kept; lash to expect 0.119 mm
}

// The back face of a crown wheel on ten bolts reads +0.03, +0.04, −0.03 and
// −0.04 mm at 0°, 90°, 180° and 270° of the diff centre. The wheel is taken off
// and put back half a turn further: now +0.03, −0.04, −0.03 and +0.04 mm.
//
// By hand: what half of the sum shows stays, the seat: +0.03, 0, −0.03, 0, high
// at 0°. What half of the difference shows turns, the wheel: 0, +0.04, 0, −0.04,
// high at 90° of its own. Now the wheel is high at 270°. Opposite to the seat is
// 180°, 90° back or 2½ holes; there is a hole at 2 back, 18° off:
// √(0.03² + 0.04² − 2·0.03·0.04·cos 18°) = 0.01475 mm, so the dial swings by 0.0295.
//
// Source: two vectors, drawn and measured; figures invented.
func Example_setup4IndexTheCrownWheel() {
	round := func(turned int, mm ...float64) setup.Round {
		r := setup.Round{Turned: turned}
		for _, v := range mm {
			r.Readings = append(r.Readings, setup.Read(v*1e-3))
		}
		return r
	}
	r := setupDone(setup.SeparateRunOut(setup.RunOutByTurning{
		Spec: setup.Spec{Kind: setup.LightAdjusted, Pegged: true}, Holes: 10,
		First: round(0, 0.03, 0.04, -0.03, -0.04), Second: round(5, 0.03, -0.04, -0.03, 0.04),
	}))
	fmt.Printf("1. seat  %.3f mm, high at %.0f°\n", r.Seat.Amplitude*1e3, math.Mod(r.Seat.High/setupDegree+1e-6, 360))
	fmt.Printf("2. wheel %.3f mm, high at %.0f° from its own mark\n", r.Wheel.Amplitude*1e3, r.Wheel.High/setupDegree)
	fmt.Printf("3. as it sits the dial swings by %.3f mm once a turn\n", r.AtHoles[0].Full*1e3)
	fmt.Printf("4. %d holes on, or %d back: %.4f mm\n", r.Best.Turned, 10-r.Best.Turned, r.Best.Full*1e3)
	setupSays("5.", r.Answer)

	// Output:
	// 1. seat  0.030 mm, high at 0°
	// 2. wheel 0.040 mm, high at 90° from its own mark
	// 3. as it sits the dial swings by 0.100 mm once a turn
	// 4. 8 holes on, or 2 back: 0.0295 mm
	// 5. ✓ fine
	//    Turn the crown wheel 2 bolt holes back, against the way the places are counted: run-out once a turn falls from 0.10 mm (4 thou) to about 0.029 mm (1 thou).
	//    Clean seat and wheel, tighten crosswise, and measure again.
}

// A peg with a thread of 7/16-20 is nipped up to touch at the tight spot of the
// crown wheel and turned back a quarter turn. The back face runs out by 0.05 mm.
//
// By hand: pitch 25.4/20 = 1.27 mm, a quarter of it 0.3175 mm or 12.5 thou; at the
// slack spot 0.3675 mm.
//
// Source: TM 10-3930-643-34, p. 16-30: clearance of a thrust screw 0.010 to
// 0.015 in, lock nut 140 to 170 lb-ft; the quarter turn is common practice.
func Example_setup5PegByAngle() {
	spec := setup.Spec{Name: "forklift"}.With(
		setup.Maker(setup.PegGap, 0.010*setupInch, 0.015*setupInch, "16-30"),
		setup.Maker(setup.PegLockTorque, 189.8, 230.5, "16-30"))
	ask := setup.PegSetting{Spec: spec, Pitch: setupInch / 20, Angle: setupTyped("90 deg", quantity.Angle), RunOut: setupTyped("0.05 mm", quantity.Length),
		Spot: setup.TightSpot, SidePreload: true}
	r := setupDone(setup.SetPeg(ask))
	fmt.Printf("1. gap %.4f mm, %.1f thou\n", r.Gap*1e3, r.Gap/setupInch*1e3)
	fmt.Printf("2. tight spot %.4f mm, slack spot %.4f mm\n", r.Tight*1e3, r.Slack*1e3)
	setupSays("3.", r.Answer)

	// 4. After locking it is read again.
	for _, text := range []string{"0.30 mm", "0.33 mm", "0.35 mm", "0.32 mm"} {
		ask.Locked = append(ask.Locked, setupTyped(text, quantity.Length))
	}
	fmt.Println("4.", setupDone(setup.SetPeg(ask)).State)
	ask.Locked[0] = setupTyped("0 mm", quantity.Length)
	setupSays("5.", setupDone(setup.SetPeg(ask)).Answer)

	// Output:
	// 1. gap 0.3175 mm, 12.5 thou
	// 2. tight spot 0.3175 mm, slack spot 0.3675 mm
	// 3. · not yet
	//    Hold the screw, tighten the lock nut to 190 to 231 N·m (140 to 170 lbf·foot), and read the gap at four places.
	// 4. fine
	// 5. ✕ stop
	//    Back the peg off before the wheel turns again.
}

// The side bores of a welded nose casting are measured with the caps torqued.
// Before welding both were 72.000 mm at all angles; after it the left one is
// 72.000 along the joint, 71.990 aslant and 71.960 through the crown of the cap,
// and lies 0.05 mm off the line of the right one, over 140 mm.
//
// By hand: mean of the square pair 71.980, half of its difference 0.020, aslant
// 0.010 over the mean: the oval is 2·√(0.020² + 0.010²) = 0.0447 mm although the
// three differ by 0.040 only, widest at ½·atan(0.010/0.020) = 13.3°. The line is off
// by atan(0.05/140) = 1.23′.
//
// Source: geometry of an ellipse; 1.23 minutes as in a list of the trade.
func Example_setup6BoresAfterWelding() {
	round := func(along, aslant, across float64) setup.Bore {
		return setup.Bore{Along: setup.Read(along * 1e-3), Aslant: setup.Read(aslant * 1e-3), Across: setup.Read(across * 1e-3)}
	}
	spec := setup.Spec{Name: "T24", Kind: setup.LightAdjusted}
	before := setup.BoreCheck{Spec: spec, Caps: setup.CapsTorqued, Mandrel: setup.MandrelFree, Left: round(72, 72, 72), Right: round(72, 72, 72)}
	after := before
	after.Left, after.Mandrel = round(72, 71.99, 71.96), setup.MandrelStiff
	after.OffLine, after.LineLength = setup.Read(0.05e-3), setup.Read(0.140)
	r := setupDone(setup.CompareBores(setup.BoresAroundWelding{Spec: spec, Before: before, After: after}))
	fmt.Printf("1. left bore: mean %.3f mm, oval %.4f mm, widest at %.1f°\n", r.After.Left.Mean*1e3, r.After.Left.Oval*1e3, r.After.Left.Widest/setupDegree)
	fmt.Printf("2. out of line by %.2f′\n", r.After.LineAngle/setupDegree*60)
	setupSays("3.", r.Answer)
	fmt.Println("4.", r.After.Verdict)

	// 5. Measured with loose caps the same figures say nothing.
	after.Caps = setup.CapsNotTorqued
	loose := setupDone(setup.CompareBores(setup.BoresAroundWelding{Spec: spec, Before: before, After: after}))
	fmt.Println("5.", loose.State, "-", loose.Reason)

	// Output:
	// 1. left bore: mean 71.980 mm, oval 0.0447 mm, widest at 13.3°
	// 2. out of line by 1.23′
	// 3. △ look
	//    Most moved: left bore at 90°, through the crown of the cap closed by 0.04 mm (2 thou).
	//    Blue the mandrel or a cup, scrape the high places, caps torqued, and measure again.
	// 4. scrape with blue
	// 5. stop - After welding: The caps were not torqued: bores change by 0.02 to 0.05 mm when they are, so these readings say nothing.
}

// Cap bolts M12x1.75 of class 10.9 are oiled and tightened to 94 N·m.
//
// By hand: F = 94/(0.15·0.012) = 52.2 kN; stress area π/4·((10.863 + 9.853)/2)² =
// 84.3 mm², proof load 84.3·830 = 69.9 kN; used 75 %.
//
// Source: ISO 898-1:2013 for area and proof stress (from memory), nut factor 0.15
// common practice.
func Example_setup7CapBolts() {
	bolts := setup.Tightening{Joint: "cap bolts", Thread: "M12x1.75", Grade: "10.9", Finish: setup.Oiled, Washer: setup.HardenedWasher,
		Source: "shop sheet 4", Torque: setupTyped("94 N m", quantity.Torque)}
	r := setupDone(setup.JudgeTightening(setup.Spec{}, bolts))
	fmt.Printf("1. preload %.1f kN, from %.0f to %.0f\n", r.Preload.Likely/1e3, r.Preload.Low/1e3, r.Preload.High/1e3)
	fmt.Printf("2. %.0f %% of the proof load\n", r.Use.Likely*100)

	// 3. The number alone is refused.
	_, err := setup.JudgeTightening(setup.Spec{}, setup.Tightening{Torque: bolts.Torque})
	fmt.Println("3.", err)

	// Output:
	// 1. preload 52.2 kN, from 39 to 78
	// 2. 75 % of the proof load
	// 3. Thread: is missing, and 94 N·m (69 lbf·foot) means nothing without it: expected a thread such as "M12x1.75"
	// Grade: is missing, and 94 N·m (69 lbf·foot) means nothing without it: expected the mark on the head such as "10.9", or "unmarked"
	// Finish: is missing, and 94 N·m (69 lbf·foot) means nothing without it: expected "oiled" or "dry"
	// Washer: is missing, and 94 N·m (69 lbf·foot) means nothing without it: expected "none", "plain", "hardened" or "wedge-lock"
	// Source: is missing, and 94 N·m (69 lbf·foot) means nothing without it: expected where the torque is from, such as the page of the manual
}
