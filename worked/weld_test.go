package worked_test

import (
	"fmt"
	"math"

	"axlewright/calc/material"
	"axlewright/calc/weld"
)

// weldDone hands on a value and stops the example on an error.
func weldDone[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// A fitting welded to a frame along three sides; the force hangs 100 mm beyond
// the upright weld.
//
//	         56 mm
//	       +-------     6 mm fillets
//	       |
//	<----->| 190 mm
//	100 mm |
//	   |   |
//	   v   +-------
//	 25 kN
//
// Wanted: the greatest shear on the throat.
//
// Source: Shigley, Mechanical Engineering Design, 8th ed., example 9-1 (from
// memory): 1280 mm², 19.5 MPa, 10.4 mm, 7.07e6 mm⁴, 2760 N·m, 43.9 MPa at the
// corners and 37.0 MPa at the free ends.
func Example_weld1ChannelGroup() {
	const leg, b, d, force, beyond = 6e-3, 56e-3, 190e-3, 25e3, 0.100

	// 1. Throat, with the book's 0.707.
	throat := 0.707 * leg

	// 2. The three welds as lines: length, centroid, polar second moment.
	group := weld.Group{Runs: []weld.Run{
		{X1: 0, Y1: 0, X2: 0, Y2: d}, // upright
		{X1: 0, Y1: 0, X2: b, Y2: 0}, // lower
		{X1: 0, Y1: d, X2: b, Y2: d}, // upper
	}}
	g := weldDone(weld.GroupProperties(group))
	fmt.Printf("2. throat area %.0f mm², centroid %.1f mm, J %.2fe6 mm⁴\n",
		throat*g.Length*1e6, g.CentroidX*1e3, throat*g.UnitJ*1e12/1e6)

	// 3. Primary shear is even; the moment about the centroid adds the secondary.
	moment := force * (beyond + g.CentroidX)
	fmt.Printf("3. primary %.1f MPa, moment %.0f N·m\n", force/(throat*g.Length)/1e6, moment)

	// 4. At a free end the two shears partly cancel, at a corner they add.
	secondary := func(x, y float64) (float64, float64) {
		return moment / (throat * g.UnitJ) * (d/2 - y), moment / (throat * g.UnitJ) * (x - g.CentroidX)
	}
	sx, sy := secondary(b, 0)
	fmt.Printf("4. at a free end %.1f MPa\n", math.Hypot(sx, sy-force/(throat*g.Length))/1e6)

	// 5. The same, and the worst place, in one call.
	r := weldDone(weld.GroupStress(weld.GroupLoad{Group: group, Throat: throat, ForceY: -force, AtX: -beyond, AtY: d / 2}))
	fmt.Printf("5. greatest %.1f MPa at x = %.0f mm, a corner\n", r.Stress/1e6, r.X*1e3)

	// Output:
	// 2. throat area 1281 mm², centroid 10.4 mm, J 7.07e6 mm⁴
	// 3. primary 19.5 MPa, moment 2760 N·m
	// 4. at a free end 37.1 MPa
	// 5. greatest 43.9 MPa at x = 0 mm, a corner
}

// A bar held by two fillets of 5/16 in, 2 in long and 2 in apart, with a force
// 7 in from their centre.
//
// Wanted: the force that 20 kpsi on the throat allows, and what is left when the
// metal of the parts (1020 and 1015, hot-rolled) counts instead.
//
// Source: Shigley, Mechanical Engineering Design, 8th ed., Solutions Manual 9-5
// (read): 1.13·F, 9.22·F, 2.17 kip; 11 kpsi, 1.19 kip. The book rounds J.
func Example_weld2TwoFilletsInTorsion() {
	const inch, kip = 0.0254, 4448.2216152605
	const kpsi = kip / (inch * inch)

	// 1. Greatest stress for a force of one kip.
	throat := 0.707 * 5.0 / 16 * inch
	group := weld.Group{Runs: []weld.Run{
		{X1: 0, Y1: 0, X2: 2 * inch, Y2: 0},
		{X1: 0, Y1: 2 * inch, X2: 2 * inch, Y2: 2 * inch},
	}}
	r := weldDone(weld.GroupStress(weld.GroupLoad{Group: group, Throat: throat, ForceY: -kip, AtX: 8 * inch, AtY: inch}))
	fmt.Printf("1. primary %.2f kpsi, greatest %.2f kpsi, for each kip\n", r.Direct/kpsi, r.Stress/kpsi)

	// 2. The force at 20 kpsi.
	fmt.Printf("2. %.2f kip at 20 kpsi\n", 20*kpsi/r.Stress)

	// 3. The electrode would bear more, the parts beside it less.
	electrode := weldDone(weld.ElectrodeAllowable(weld.E70))
	bar := weldDone(weld.BaseMetalAllowable(weld.BaseMetalParams{Tensile: 55 * kpsi, Yield: 30 * kpsi}))
	support := weldDone(weld.BaseMetalAllowable(weld.BaseMetalParams{Tensile: 50 * kpsi, Yield: 27.5 * kpsi}))
	fmt.Printf("3. electrode %.0f, bar %.0f, support %.0f kpsi\n", electrode/kpsi, bar/kpsi, support/kpsi)
	fmt.Printf("   so %.2f kip\n", math.Min(bar, support)/r.Stress)

	// Output:
	// 1. primary 1.13 kpsi, greatest 9.24 kpsi, for each kip
	// 2. 2.17 kip at 20 kpsi
	// 3. electrode 21, bar 12, support 11 kpsi
	//    so 1.19 kip
}

// A plate is to be welded to a cast-steel wall of 20 mm with a single-run fillet.
// The laboratory found C 0.25, Si 0.45, Mn 0.90, Cr 0.15, Mo 0.05, Ni 0.20,
// Cu 0.10 %.
//
// Wanted: must it be preheated, how far, and how hard will the metal beside the
// weld be with and without?
//
// Source: EN 1011-2:2001, C.3 and annex D; hardness by Düren and by Yurioka, which
// scatter by 28 HV; limit of 380 HV of ISO 15614-1 for parts left as welded. The
// first three figures are checked by hand: CE = 0.25 + 0.15 + 0.04 + 0.02,
// CET = 0.25 + 0.095 + 0.0125 + 0.005, Q = 0.8·22·150/4.
func Example_weld3FromAnalysisToHardness() {
	steel := weld.Composition{
		Carbon: 0.0025, Silicon: 0.0045, Manganese: 0.0090, Chromium: 0.0015,
		Molybdenum: 0.0005, Nickel: 0.0020, Copper: 0.0010,
	}
	const wall, hydrogen, celsius = 20e-3, 4e-5, 273.15

	// 1. Carbon equivalents.
	ce := weldDone(weld.CarbonEquivalentIIW(steel))
	cet := weldDone(weld.CarbonEquivalentCET(steel))
	fmt.Printf("1. CE %.3f %%, CET %.4f %%\n", ce*100, cet*100)

	// 2. Heat input: MAG, 22 V, 150 A, 4 mm a second.
	q := weldDone(weld.HeatInput(weld.HeatInputParams{Process: weld.MAG, Voltage: 22, Current: 150, Speed: 4e-3}))
	scale := weldDone(weld.HydrogenScale(hydrogen))
	fmt.Printf("2. heat input %.2f kJ/mm, hydrogen scale %s\n", q/1e6, scale.Scale)

	// 3. Preheat by method B.
	pre := weldDone(weld.Preheat(weld.PreheatParams{CET: cet, Thickness: wall, Hydrogen: hydrogen, HeatInput: q}))
	fmt.Printf("3. preheat %.0f °C: steel %+.0f, wall %+.0f, hydrogen %+.0f, heat %+.0f\n",
		pre.Temperature-celsius, pre.FromSteel, pre.FromThickness, pre.FromHydrogen, pre.FromHeatInput)

	// 4. Cooling time and hardness, from a cold wall and from a preheated one.
	shape := weldDone(weld.ShapeFactors(weld.TeeFillet))
	for _, start := range []float64{20 + celsius, pre.Temperature} {
		cool := weldDone(weld.CoolingTime(weld.CoolingParams{
			HeatInput: q, Preheat: start, Thickness: wall, TwoFactor: shape.TwoLow, Three: shape.Three,
		}))
		d := weldDone(weld.HardnessDuren(weld.HardnessParams{Steel: steel, Time: cool.Time}))
		y := weldDone(weld.HardnessYurioka(weld.HardnessParams{Steel: steel, Time: cool.Time}))
		fmt.Printf("4. from %3.0f °C: %.1f s, %.0f HV by Düren, %.0f HV by Yurioka\n", start-celsius, cool.Time, d.Hardness, y.Hardness)
	}

	// 5. The preheat lets the hydrogen out; it does not bring the hardness under
	// 380 HV. For that the run would have to cool much more slowly, with more heat
	// than a small fillet takes: better a second run that tempers the first.
	more := weldDone(weld.HeatInputForCoolingTime(weld.HeatForCoolingParams{
		Time: 12, Preheat: pre.Temperature, Thickness: wall, TwoFactor: shape.TwoLow, Three: shape.Three,
	}))
	slow := weldDone(weld.HardnessDuren(weld.HardnessParams{Steel: steel, Time: 12}))
	fmt.Printf("5. for 12 s: %.1f kJ/mm, %.0f HV by Düren\n", more/1e6, slow.Hardness)

	// Output:
	// 1. CE 0.460 %, CET 0.3625 %
	// 2. heat input 0.66 kJ/mm, hydrogen scale D
	// 3. preheat 100 °C: steel +122, wall -27, hydrogen +1, heat +4
	// 4. from  20 °C: 2.3 s, 506 HV by Düren, 490 HV by Yurioka
	// 4. from 100 °C: 2.9 s, 506 HV by Düren, 478 HV by Yurioka
	// 5. for 12 s: 2.6 kJ/mm, 371 HV by Düren
}

// A round boss of 40 mm, welded to a plate all round with 4 mm throat, is pushed
// along the plate with 12 kN at 25 mm height, off its middle by 6 mm.
//
// Wanted: the use of the weld by the simplified and the directional method
// (S355, f_u 470 MPa), and its life under a force that goes between 0 and 4 kN.
//
// Source: derived by hand. With r = 20 mm the line has L = 2·π·r = 125.7 mm,
// J_u = 2·π·r³ = 50 265 mm³, I_u = 25 133 mm³. At the front the ring carries
// 12 000/125.7 = 95.5 N/mm from the force, 12 000·6·20/50 265 = 28.6 from the turn
// and 12 000·25·20/25 133 = 238.7 from the tilt, each square to the others:
// 258.7/4 = 64.7 MPa. EN 1993-1-8:2005, 4.5.3; EN 1993-1-9:2005, 7 (from memory).
func Example_weld4RoundBoss() {
	const r, throat, force, height, off = 20e-3, 4e-3, 12e3, 25e-3, 6e-3
	boss := weld.GroupLoad{
		Group:  weld.Group{Bends: []weld.Bend{{Radius: r, From: 0, To: 2 * math.Pi}}},
		Throat: throat, ForceX: force, AtY: off, AtZ: height,
	}

	// 1. The ring as a line.
	g := weldDone(weld.GroupProperties(boss.Group))
	fmt.Printf("1. L %.1f mm, J %.0f mm³, I %.0f mm³\n", g.Length*1e3, g.UnitJ*1e9, g.UnitIx*1e9)

	// 2. Greatest stress.
	s := weldDone(weld.GroupStress(boss))
	fmt.Printf("2. vector sum %.1f MPa: along %.1f, across %.1f, upright %.1f N/mm\n",
		s.Stress/1e6, s.Along/1e3, s.Across/1e3, s.Upright/1e3)

	// 3. Strength, both methods; the bead lies on the worse side.
	strength := weld.FilletStrengthParams{
		Tensile: 470e6, Correlation: weldDone(weld.CorrelationFactor(weld.S355)), PartialFactor: 1.25,
	}
	simple := weldDone(weld.FilletShearStrength(strength))
	directional := strength.Tensile / (strength.Correlation * strength.PartialFactor)
	fmt.Printf("3. use %.2f simplified, %.2f directional\n", s.Stress/simple, s.Equivalent/directional)

	// 4. Fatigue of the root, category 36: the stress scales with the force.
	root := weldDone(weld.DetailCategory(weld.DetailParams{Detail: weld.RootOfFillet, Length: 40e-3, Thickness: 10e-3}))
	life := weldDone(weld.FatigueLife(weld.FatigueLifeParams{
		Range:  math.Hypot(s.Across, s.Upright) / throat * 4 / 12,
		Curve:  weld.CategoryParams{Category: root.Category, PartialFactor: 1.15, Kind: weld.StressKind(root.Kind)},
		Course: weld.VariableAmplitude,
	}))
	fmt.Printf("4. category %.0f MPa: %.1f million cycles of 4 kN\n", root.Category/1e6, life.Cycles/1e6)

	// Output:
	// 1. L 125.7 mm, J 50265 mm³, I 25133 mm³
	// 2. vector sum 64.7 MPa: along -33.2, across -95.4, upright -238.5 N/mm
	// 3. use 0.27 simplified, 0.25 directional
	// 4. category 36 MPa: 7.3 million cycles of 4 kN
}

// A ball dent on an unknown casting reads 180 HBW.
//
// Wanted: what strength may be told from it?
//
// Source: ISO 18265:2013, table A.1 (read in a copy); EN 1561:1997, informative
// annex (from memory).
func Example_weld5WhatHardnessTells() {
	// 1. If it is cast steel, the table answers.
	steel := weldDone(material.TensileFromHardness(material.StrengthParams{Value: 180, Scale: material.Brinell, Family: material.CastSteel}))
	fmt.Printf("1. cast steel: %.0f MPa\n", steel/1e6)

	// 2. If it is grey iron, one dent means anything in a wide band.
	hard := weldDone(material.GreyIronTensile(material.GreyIronParams{Hardness: 180, Relative: 0.8}))
	soft := weldDone(material.GreyIronTensile(material.GreyIronParams{Hardness: 180, Relative: 1.2}))
	fmt.Printf("2. grey iron: %.0f to %.0f MPa\n", soft/1e6, hard/1e6)

	// 3. If it is ductile iron, the program will not say.
	_, err := material.TensileFromHardness(material.StrengthParams{Value: 180, Scale: material.Brinell, Family: material.DuctileIron})
	fmt.Println("3.", err)

	// 4. So the metal comes first; what each family bears beside a weld:
	for _, f := range []material.Family{material.CastSteel, material.DuctileIron, material.GreyIron} {
		info := weldDone(material.FamilyOf(f))
		fmt.Printf("4. %s: %s, %.0f to %.0f %% left at the toe (%s)\n", f, info.Weldability, info.ToeLow*100, info.ToeHigh*100, info.ToeSource)
	}

	// Output:
	// 1. cast steel: 607 MPa
	// 2. grey iron: 146 to 284 MPa
	// 3. material.TensileFromHardness: Family "ductile iron" is not one of the families of steel
	// 4. cast steel: weldable by a tried procedure, 85 to 100 % left at the toe (trade custom, no source)
	// 4. ductile iron: weldable by a tried procedure, 60 to 90 % left at the toe (trade custom: 70 to 90 % of the static strength with nickel-iron filler)
	// 4. grey iron: do not weld structurally, 0 to 60 % left at the toe (trade custom, no source)
}
