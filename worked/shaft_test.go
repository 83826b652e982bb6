package worked_test

import (
	"fmt"
	"math"

	"axlewright/calc/shaft"
)

// A one-horsepower motor drives an overhung helical pinion; its bearings A and
// B stand 10 in apart and the pinion 3 in beyond B.
//
//	 A <------ 10 in ------> B <- 3 in -> pinion, r = 0.866 in
//	/\                      /\            W_t = 33000/816 = 40.4 lbf
//	                                      W_r = W_t·tan 22.8° = 17.0 lbf
//	                                      W_a = W_t·tan 30°   = 23.3 lbf
//
// Wanted: what the bearings carry.
//
// Source: Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th
// ed., ex. 13-9: F_B 20.1 and 52.5 lbf, F_A 3.1 and 12.1 lbf, T = 35 lbf·in.
func Example_shaft1OverhungPinion() {
	const inch, lbf = 0.0254, 4.4482216

	// 1. The tooth force in its three parts, rounded as the book rounds them.
	tenth := func(x float64) float64 { return math.Round(10*x) / 10 }
	wt := tenth(33000.0 / 816)
	wr := tenth(wt * math.Tan(22.8*math.Pi/180))
	wa := tenth(wt * math.Tan(30*math.Pi/180))
	fmt.Printf("1. tangential %.1f, radial %.1f, axial %.1f lbf\n", wt, wr, wa)

	// 2. Moments about A, in both planes; the axial force tilts the shaft by
	// its radius.
	r := ringDone(shaft.OverhungGearReactions(shaft.GearReactionParams{
		Span: 10 * inch, Overhang: 3 * inch, Radius: 0.866 * inch,
		Tangential: wt * lbf, Radial: wr * lbf, Axial: wa * lbf,
	}))
	fmt.Printf("2. B carries %.1f lbf against the radial and %.1f lbf against the tangential force\n", r.BY/lbf, r.BZ/lbf)
	fmt.Printf("3. A carries %.1f and %.1f lbf, the other way\n", r.AY/lbf, r.AZ/lbf)
	fmt.Printf("4. torque %.1f lbf·in\n", r.Torque/(lbf*inch))

	// Output:
	// 1. tangential 40.4, radial 17.0, axial 23.3 lbf
	// 2. B carries 20.1 lbf against the radial and 52.5 lbf against the tangential force
	// 3. A carries 3.1 and 12.1 lbf, the other way
	// 4. torque 35.0 lbf·in
}

// A shaft of 40 mm runs in bearings 80 mm apart and carries 10 kN on its end,
// 50 mm beyond the second. E = 206 GPa.
//
//	 A <-- 80 mm --> B <- 50 mm -> F
//	/\              /\             |
//	                               V
//
// Wanted: how the shaft leans in its bearings and how far its end moves, by
// bending alone as in the handbook, then with shear, then on bearings that give.
//
// Source: Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th
// ed., table A-9, case 10 (formula from memory); shear and springs are derived.
func Example_shaft2OverhungShaft() {
	const l, a, d, e, f = 0.080, 0.050, 0.040, 206e9, 10e3

	// 1. The handbook.
	h := ringDone(shaft.OverhungShaft(shaft.OverhungParams{Span: l, Overhang: a, Diameter: d, Modulus: e, Force: f}))
	fmt.Printf("1. handbook: A %.2f kN, B %.2f kN; lean in B %.3f mrad; end %.1f µm\n",
		h.ReactionA/1e3, h.ReactionB/1e3, h.SlopeB*1e3, h.DeflectionTip*1e6)

	// 2. The same shaft with shear, on bearings that do not give: on so
	// short a shaft shear adds more than a fifth.
	const stiff = 1e14
	beam := shaft.BeamParams{
		Sections: []shaft.Section{{Length: l + a, Outer: d}}, Modulus: e, Poisson: 0.3,
		Supports: []shaft.Support{{At: 0, Axial: stiff, Y: stiff, Z: stiff}, {At: l, Y: stiff, Z: stiff}},
	}
	load := []shaft.BeamLoad{{At: l + a, Y: f}}
	sheared := ringDone(shaft.Bend(shaft.BendParams{Shaft: beam, Loads: load, Places: []float64{l + a}}))
	fmt.Printf("2. with shear the end moves %.1f µm\n", sheared.Movements[0].Y*1e6)

	// 3. On bearings of 1400 and 1000 N/µm.
	beam.Supports[0].Y, beam.Supports[1].Y = 1.0e9, 1.4e9
	soft := ringDone(shaft.Bend(shaft.BendParams{Shaft: beam, Loads: load, Places: []float64{l + a}}))
	fmt.Printf("3. on bearings that give, %.1f µm; A %.2f kN, B %.2f kN as before\n",
		soft.Movements[0].Y*1e6, -soft.Reactions[0].Y/1e3, -soft.Reactions[1].Y/1e3)

	// 4. Checked by hand: the bearings' own movement, carried out to the end.
	yA, yB := h.ReactionA/1.0e9, h.ReactionB/1.4e9
	fmt.Printf("4. by hand %.1f µm\n", (sheared.Movements[0].Y+yB+(yB-yA)*a/l)*1e6)

	// Output:
	// 1. handbook: A -6.25 kN, B 16.25 kN; lean in B 0.515 mrad; end 41.8 µm
	// 2. with shear the end moves 51.1 µm
	// 3. on bearings that give, 73.8 µm; A -6.25 kN, B 16.25 kN as before
	// 4. by hand 73.8 µm
}
