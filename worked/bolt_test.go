package worked_test

import (
	"fmt"
	"math"

	"axlewright/calc/bolt"
	"axlewright/calc/fit"
	"axlewright/calc/pin"
)

// boltDone hands on a value and stops the example on an error.
func boltDone[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// A 12 mm bolt clamps 20 mm of steel over 6 mm of grey iron.
//
//	  ___________  18 mm under the head
//	 /  13 steel \      E 207 GPa
//	/_____________\ ___ middle of the grip, 26 mm
//	\   7 steel   /
//	 \___________/      24.9 mm
//	  \  6 iron /       E 100 GPa
//	   ‾‾‾‾‾‾‾‾‾  18 mm over the nut
//
// Wanted: the stiffness of the parts, the load factor with a bolt of 744 MN/m,
// and by how much the load of 8.48 kN may grow before the bolt reaches its proof
// stress of 600 MPa (84.3 mm², preload 37.9 kN).
//
// Source: Shigley, Mechanical Engineering Design, 8th ed., solutions manual,
// problem 8-23: frusta 5316, 15 620 and 3887 MN/m (it rounds 24.93 to 24.9 mm).
// The manual then adds 1/55 620 for 1/15 620 and prints k_m 2158 MN/m, C 0.256
// and n 5.84; from the frusta it prints, 1963, 0.275 and 5.44 are right.
func Example_bolt1ThreeFrusta() {
	const mm, MN = 1e-3, 1e6
	const kb = 744 * MN

	// 1. Cones of 30° from head and nut meet half way down the grip; a change of
	// metal cuts one of them in two.
	parts := boltDone(bolt.FrustaStiffness(bolt.FrustaParams{
		Layers:  []bolt.Layer{{Thickness: 20 * mm, Modulus: 207e9}, {Thickness: 6 * mm, Modulus: 100e9}},
		Bearing: 18 * mm, Hole: 12 * mm, Slope: math.Pi / 6, Seat: bolt.Nut,
	}))
	fmt.Printf("1. frusta %.0f, %.0f and %.0f MN/m\n", parts.Frusta[0]/MN, parts.Frusta[1]/MN, parts.Frusta[2]/MN)

	// 2. Springs in a row: the iron at the nut is the softest.
	fmt.Printf("2. parts %.0f MN/m\n", parts.Stiffness/MN)

	// 3. The bolt feels this share of the load.
	C := boltDone(bolt.LoadFactor(bolt.LoadFactorParams{Bolt: 1 / kb, Members: 1 / parts.Stiffness, Introduction: 1}))
	fmt.Printf("3. load factor %.3f\n", C)

	// 4. Growth of the load up to the proof stress.
	n := boltDone(bolt.OverloadFactor(bolt.OverloadParams{
		Proof: 600e6, StressArea: 84.3e-6, Preload: 37.9e3, LoadFactor: C, Load: 8.48e3,
	}))
	fmt.Printf("4. overload factor %.2f\n", n)

	// 5. What the misprint would have made of it.
	misprint := 1 / (1/parts.Frusta[0] + 1/55620e6 + 1/parts.Frusta[2])
	fmt.Printf("5. with 55 620 misread for 15 620: parts %.0f MN/m\n", misprint/MN)

	// Output:
	// 1. frusta 5316, 15660 and 3888 MN/m
	// 2. parts 1964 MN/m
	// 3. load factor 0.275
	// 4. overload factor 5.44
	// 5. with 55 620 misread for 15 620: parts 2158 MN/m
}

// Two plates and a washer are clamped by a 1/2 in-20 UNF bolt with a washer face
// of 0.75 in: 0.095 in washer and 0.5 in plate of steel over 0.75 in of iron.
//
// Wanted: the stiffness of the parts, the same with both plates of steel by two
// methods, and the stiffness of the bolt (0.25 in plain, 1.095 in threaded
// within the grip).
//
// Source: Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th
// ed., ex. 8-2 (from memory): 9.378, 14.64, 14.92 and 3.69 Mlbf/in.
func Example_bolt2PlatesOfTwoMetals() {
	const inch, lbf, Mpsi = 0.0254, 4.4482216, 6.894757e9
	const M = 1e6 * lbf / inch // Mlbf/in
	stack := func(lower float64) bolt.FrustaResult {
		return boltDone(bolt.FrustaStiffness(bolt.FrustaParams{
			Layers:  []bolt.Layer{{Thickness: 0.595 * inch, Modulus: 30 * Mpsi}, {Thickness: 0.75 * inch, Modulus: lower}},
			Bearing: 0.75 * inch, Hole: 0.5 * inch, Slope: math.Pi / 6, Seat: bolt.Nut,
		}))
	}

	// 1. Steel over iron (14.5 Mpsi).
	mixed := stack(14.5 * Mpsi)
	fmt.Printf("1. steel over iron  %.2f Mlbf/in\n", mixed.Stiffness/M)

	// 2. Steel over steel, by cones.
	steel := stack(30 * Mpsi)
	fmt.Printf("2. steel over steel %.2f Mlbf/in\n", steel.Stiffness/M)

	// 3. The same by a formula fitted to finite elements.
	fitted := boltDone(bolt.WilemanStiffness(bolt.WilemanParams{
		Metal: bolt.Steel, Diameter: 0.5 * inch, Clamp: 1.345 * inch, Modulus: 30 * Mpsi,
	}))
	fmt.Printf("3. by the fit       %.2f Mlbf/in, %.1f %% more\n", fitted/M, 100*(fitted/steel.Stiffness-1))

	// 4. The bolt is much the softer spring: that is why a joint works.
	kb := boltDone(bolt.ShankStiffness(bolt.ShankStiffnessParams{
		ShankLength: 0.25 * inch, ThreadLength: 1.095 * inch,
		ShankArea: math.Pi / 4 * 0.25 * inch * inch, StressArea: 0.1599 * inch * inch, Modulus: 30 * Mpsi,
	}))
	fmt.Printf("4. bolt             %.2f Mlbf/in\n", kb/M)

	// Output:
	// 1. steel over iron  9.38 Mlbf/in
	// 2. steel over steel 14.64 Mlbf/in
	// 3. by the fit       14.92 Mlbf/in, 1.9 % more
	// 4. bolt             3.69 Mlbf/in
}

// The table of preloads and torques for hexagon bolts tightened to 90 % of
// yield, for one friction in the thread and under the head.
//
// Source: VDI 2230-1:2003, table A1 (from memory): M10 8.8 at 0.12 29.6 kN and
// 48 N·m, M10 10.9 at 0.12 43.4 and 71, M12 8.8 at 0.14 41.9 and 93, M12 10.9 at
// 0.12 63.2 and 123. The table rounds stress areas and bearing faces, so preloads
// differ by up to 0.5 % and torques by up to 2 %.
func Example_bolt3TorqueTable() {
	for _, row := range []struct {
		thread   bolt.Designation
		class    bolt.Class
		friction float64
	}{
		{"M10x1.5", bolt.Class8_8, 0.12}, {"M10x1.5", bolt.Class10_9, 0.12},
		{"M12x1.75", bolt.Class8_8, 0.14}, {"M12x1.75", bolt.Class10_9, 0.12},
	} {
		// 1. Sizes of thread and head, strength of the class.
		size := boltDone(bolt.StandardThread(row.thread))
		g := boltDone(bolt.ThreadGeometry(size.Form, size.Diameter, size.Pitch))
		head := boltDone(bolt.HexHead(size.Diameter))
		strength := boltDone(bolt.ClassStrength(row.class, size.Diameter))

		// 2. Preload: stretch and twist together may reach 0.9 of yield.
		preload := boltDone(bolt.AssemblyPreload(bolt.PreloadParams{
			StressDiameter: (g.PitchDiameter + g.CoreDiameter) / 2, PitchDiameter: g.PitchDiameter, Pitch: size.Pitch,
			ThreadFriction: row.friction, Yield: strength.Yield, Utilisation: 0.9,
		}))

		// 3. Torque for it.
		torque := boltDone(bolt.TighteningTorque(bolt.TorqueParams{
			Preload: preload, Pitch: size.Pitch, PitchDiameter: g.PitchDiameter,
			HeadDiameter:   boltDone(bolt.HeadFrictionDiameter(head.Bearing, head.Hole)),
			ThreadFriction: row.friction, HeadFriction: row.friction,
		}))

		// 4. The nut factor that this amounts to.
		fmt.Printf("%-8s %-4s µ %.2f  %.1f kN  %3.0f N·m  K %.3f\n",
			row.thread, row.class, row.friction, preload/1e3, torque, torque/(size.Diameter*preload))
	}

	// Output:
	// M10x1.5  8.8  µ 0.12  29.6 kN   48 N·m  K 0.163
	// M10x1.5  10.9 µ 0.12  43.5 kN   71 N·m  K 0.163
	// M12x1.75 8.8  µ 0.14  42.0 kN   93 N·m  K 0.184
	// M12x1.75 10.9 µ 0.12  63.3 kN  122 N·m  K 0.161
}

// A bearing cap of iron is held by two M12 10.9 bolts, 40 mm of grip, tapped into
// the iron casting. On each bolt the bearing pulls with 15 kN along it, and it
// pushes the cap sideways with 6 kN.
//
//	    15 kN
//	      ^
//	 _____|_____
//	|  cap 40 mm|  --> 6 kN
//	|___________|
//	////////////   grey iron, 20 mm of thread
//
// Wanted: does the joint slip, open, yield or strip, and would a dowel help, when a torque wrench
// tightens it with oil that is only estimated?
//
// Source: steps of VDI 2230-1:2015, chapter 4 (from memory). The whole is not
// printed anywhere; step 2 is in table A1 (63.2 kN at 0.12), embedding in table
// 5, the engagement is the trade's 1.23 d for this bolt in grey 200 iron. Every
// figure was worked a second time apart from this code, the cone as a sum of discs. Compares parts, rates none.
func Example_bolt4CapBolt() {
	const mm, kN, MPa = 1e-3, 1e3, 1e6
	const pull, push, grip = 15 * kN, 6 * kN, 40 * mm
	const steel, iron = 205e9, 110e9
	size := boltDone(bolt.StandardThread("M12x1.75"))
	g := boltDone(bolt.ThreadGeometry(size.Form, size.Diameter, size.Pitch))
	head := boltDone(bolt.HexHead(size.Diameter))
	strength := boltDone(bolt.ClassStrength(bolt.Class10_9, size.Diameter))
	area := boltDone(bolt.StressArea(size.Diameter, size.Pitch))
	d0 := (g.PitchDiameter + g.CoreDiameter) / 2

	// 1. Springs: bolt with its engaged thread, cap as a cone that its width cuts.
	s := boltDone(bolt.BoltResilience(bolt.BoltResilienceParams{
		Sections: []bolt.Section{{Length: 30 * mm, Diameter: size.Diameter}, {Length: 10 * mm, Diameter: g.CoreDiameter}},
		Diameter: size.Diameter, Core: g.CoreDiameter, Modulus: steel,
		Head: bolt.Hexagon, Seat: bolt.TappedHole, SeatModulus: iron,
	})).Resilience
	p := boltDone(bolt.MemberResilience(bolt.MemberParams{
		Bearing: head.Bearing, Hole: head.Hole, Outside: 30 * mm, Clamp: grip, Modulus: iron, Seat: bolt.TappedHole,
	})).Resilience
	Phi := boltDone(bolt.LoadFactor(bolt.LoadFactorParams{Bolt: s, Members: p, Introduction: 0.5}))
	fmt.Printf("1. resilience       bolt %.2f, cap %.2f µm/kN; load factor %.2f\n", s*1e9, p*1e9, Phi)

	// 2. The greatest preload that the bolt allows.
	greatest := boltDone(bolt.AssemblyPreload(bolt.PreloadParams{
		StressDiameter: d0, PitchDiameter: g.PitchDiameter, Pitch: size.Pitch,
		ThreadFriction: 0.12, Yield: strength.Yield, Utilisation: 0.9,
	}))

	// 3. The least that is left: scatter of the wrench, then embedding.
	scatter := boltDone(bolt.TighteningScatter(bolt.ByTorqueEstimated)).High
	bedding := boltDone(bolt.EmbeddingAmount(bolt.EmbeddingParams{
		Roughness: bolt.Turned, Load: bolt.Shear, Threads: 1, Faces: 1, Interfaces: 1,
	}))
	loss := boltDone(bolt.EmbeddingLoss(bedding, s+p))
	least := boltDone(bolt.LeastPreload(greatest, scatter)) - loss
	fmt.Printf("2. preload          %.1f kN at most\n", greatest/kN)
	fmt.Printf("3. preload          %.1f kN at least (factor %.1f, %.0f µm of embedding take %.1f kN)\n", least/kN, scatter, bedding*1e6, loss/kN)

	// 4. Slip.
	clamp := boltDone(bolt.ResidualClamp(bolt.JointLoadParams{Preload: least, LoadFactor: Phi, Load: pull}))
	holds := boltDone(bolt.SlipCapacity(clamp, 0.15, 1))
	fmt.Printf("4. slip             clamp %.1f kN holds %.1f of %.1f kN: %s\n", clamp/kN, holds/kN, push/kN, boltVerdict(holds >= push, "stays", "slips"))

	// 5. Opening.
	opens := boltDone(bolt.OpeningLoad(least, Phi))
	fmt.Printf("5. opening          at %.1f of %.1f kN: %s\n", opens/kN, pull/kN, boltVerdict(opens >= pull, "stays shut", "opens"))

	// 6. Yield, with the greatest preload and half of the twist.
	force := boltDone(bolt.BoltForce(bolt.JointLoadParams{Preload: greatest, LoadFactor: Phi, Load: pull}))
	stress := boltDone(bolt.WorkingStress(bolt.WorkingStressParams{
		Preload: greatest, Force: force, StressDiameter: d0, PitchDiameter: g.PitchDiameter, Pitch: size.Pitch,
		ThreadFriction: 0.12, TwistLeft: 0.5,
	})).Equivalent
	fmt.Printf("6. bolt             %.0f of %.0f MPa: %s\n", stress/MPa, strength.Yield/MPa, boltVerdict(stress <= strength.Yield, "elastic", "yields"))

	// 7. Stripping, should the bolt be broken.
	needs := boltDone(bolt.RequiredEngagement(bolt.EngagementParams{
		Form: size.Form, Diameter: size.Diameter, Pitch: size.Pitch,
		Force: strength.Tensile * area, Shear: boltDone(bolt.ShearRatio(bolt.TappedGreyIron)).Cautious * 200 * MPa, Keep: 1,
	}))
	fmt.Printf("7. thread in iron   needs %.1f mm (%.2f d) of 20 mm: %s\n", needs.Effective/mm, needs.Diameters, boltVerdict(needs.Total <= 20*mm, "bolt breaks first", "strips first"))

	// 8. A ring dowel round the bolt, 18 mm by 13 mm, 6 mm deep in the cap: once the
	// joint has slipped by the dowel's clearance, it carries the push.
	dowel := boltDone(pin.RingDowel(pin.RingDowelParams{
		Outside: 18 * mm, Inside: 13 * mm, Depth: 6 * mm, Shear: 480 * MPa, Crushing: 250 * MPa,
	}))
	fmt.Printf("8. ring dowel       shears at %.0f, crushes the iron at %.0f of %.1f kN: %s\n",
		dowel.Shear/kN, dowel.Crushing/kN, push/kN, boltVerdict(dowel.Capacity >= push, "stays", "gives way"))

	// Output:
	// 1. resilience       bolt 2.89, cap 1.00 µm/kN; load factor 0.13
	// 2. preload          63.3 kN at most
	// 3. preload          29.1 kN at least (factor 2.0, 10 µm of embedding take 2.6 kN)
	// 4. slip             clamp 16.0 kN holds 2.4 of 6.0 kN: slips
	// 5. opening          at 33.4 of 15.0 kN: stays shut
	// 6. bolt             817 of 940 MPa: elastic
	// 7. thread in iron   needs 14.8 mm (1.23 d) of 20 mm: bolt breaks first
	// 8. ring dowel       shears at 58, crushes the iron at 27 of 6.0 kN: stays
}

// boltVerdict puts a comparison into words.
func boltVerdict(holds bool, yes, no string) string {
	if holds {
		return yes
	}
	return no
}

// A threaded adjuster of pitch 1.5 mm holds a side bearing. A pin at 38 mm
// radius locks it. Either the gear's thrust of 27 kN tries to unwind it, or a
// bearing cup that has spun free drags it round with 35 kN at 40 mm, friction
// 0.15.
//
// Wanted: the force on the lock in each case, and which lock stands it.
//
// Source: pins by ISO 8752:2009, table 1; bolts with 0.6·R_m of ISO 898-1. The
// forces 170 N and 5.5 kN are figures of the trade, no source.
func Example_bolt5AdjusterLock() {
	const mm, kN = 1e-3, 1e3

	// 1. Thrust alone, all friction shaken out of the thread.
	unwinding := boltDone(bolt.UnwindingTorque(27*kN, 1.5*mm))
	fmt.Printf("1. thrust unwinds with %.1f N·m, %.0f N on the lock\n", unwinding, boltDone(bolt.LockForce(unwinding, 38*mm)))

	// 2. With friction 0.10 left in its thread of 75 mm pitch diameter it holds itself.
	kept := boltDone(bolt.AdjusterTorque(bolt.AdjusterParams{
		Thrust: 27 * kN, Pitch: 1.5 * mm, PitchDiameter: 75 * mm, FlankAngle: math.Pi / 6, Friction: 0.10,
	}))
	fmt.Printf("2. with friction 0.10 it holds itself by %.0f N·m; below friction %.4f it runs back\n", -kept.Unwinding, kept.Critical)

	// 3. A dragging cup.
	drag := boltDone(bolt.LockForce(boltDone(bolt.CupDragTorque(35*kN, 0.15, 40*mm)), 38*mm))
	fmt.Printf("3. a dragging cup puts %.1f kN on the lock\n", drag/kN)

	// 4. The locks in single shear.
	spring := boltDone(pin.SpringPin(pin.Heavy, 3*mm)).SingleShear
	thread := boltDone(bolt.StressArea(5*mm, 0.8*mm))
	screw := boltDone(bolt.UltimateShear(boltDone(bolt.ClassStrength(bolt.Class12_9, 5*mm)).Tensile, thread, 1))
	fmt.Printf("4. 3 mm spring pin %.1f kN: %s; M5 12.9 through its thread %.1f kN: %s\n",
		spring/kN, boltVerdict(spring >= drag, "stands", "shears"), screw/kN, boltVerdict(screw >= drag, "stands", "shears"))

	// 5. The ear of the casting that carries the lock, 8 mm by 5 mm.
	press := boltDone(pin.BearingPressure(drag, 8*mm, 5*mm))
	fmt.Printf("5. on an ear 8 mm by 5 mm that is %.0f MPa\n", press/1e6)

	// Output:
	// 1. thrust unwinds with 6.4 N·m, 170 N on the lock
	// 2. with friction 0.10 it holds itself by 110 N·m; below friction 0.0055 it runs back
	// 3. a dragging cup puts 5.5 kN on the lock
	// 4. 3 mm spring pin 3.2 kN: shears; M5 12.9 through its thread 10.4 kN: stands
	// 5. on an ear 8 mm by 5 mm that is 138 MPa
}

// A peg screw M12x1.5 with a bronze pad, 30 mm together, is turned up to touch the
// crown wheel's back face and backed off by a sixth of a turn. The back face runs
// out by 0.08 mm; casting and peg warm up by 80 K. The load on the peg may reach
// 13 kN, its free length is 25 mm.
//
// Wanted: the gap cold, at the tight spot and warm; how far from buckling.
//
// Source: gap 0.250 mm, 0.17 mm at the tight spot and 0.017 mm of closing are
// figures of the trade, no source; the column by Shigley's Mechanical
// Engineering Design, 9th ed., section 4-12 to 4-14 (from memory).
func Example_bolt6PegScrew() {
	const mm, kN = 1e-3, 1e3

	// 1. Gap at the slack spot.
	gap := boltDone(bolt.ScrewAdvance(math.Pi/3, 1.5*mm))
	fmt.Printf("1. gap %.3f mm\n", gap/mm)

	// 2. Gap at the tight spot.
	tight := boltDone(bolt.TightSpotGap(gap, 0.08*mm))
	fmt.Printf("2. at the tight spot %.2f mm\n", tight/mm)

	// 3. Warm: bronze grows more than iron.
	closes := boltDone(fit.ThermalClosing(fit.ThermalGapParams{
		PartLength: 30 * mm, PartExpansion: 18e-6, PartWarming: 80,
		BodyLength: 30 * mm, BodyExpansion: 11e-6, BodyWarming: 80,
	}))
	fmt.Printf("3. warm, %.3f mm less: %.2f mm\n", closes/mm, (tight-closes)/mm)

	// 4. The screw as a short column, foot held, head free.
	core := boltDone(bolt.ThreadGeometry(bolt.Metric, 12*mm, 1.5*mm)).CoreDiameter
	column := boltDone(bolt.ColumnLoad(bolt.ColumnParams{
		Diameter: core, Length: 25 * mm, EndFactor: 0.25, Modulus: 205e9, Yield: 640e6,
	}))
	fmt.Printf("4. slenderness %.0f: gives out at %.0f kN, crushes at %.0f kN, load %.0f kN\n",
		column.Slenderness, column.Buckling/kN, column.Crushing/kN, 13.0)

	// Output:
	// 1. gap 0.250 mm
	// 2. at the tight spot 0.17 mm
	// 3. warm, 0.017 mm less: 0.15 mm
	// 4. slenderness 10: gives out at 50 kN, crushes at 52 kN, load 13 kN
}

// A power screw, square thread with two starts, mean diameter 30 mm, pitch 4 mm,
// collar 40 mm, friction 0.08 in both, lifts 6.4 kN.
//
// Wanted: the torque to raise and to lower the load, and the efficiency.
//
// Source: Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th
// ed., ex. 8-1 (from memory): 26.18 N·m, 9.77 N·m, 0.311.
func Example_bolt7PowerScrew() {
	screw := bolt.ScrewParams{
		Force: 6400, Lead: 2 * 4e-3, PitchDiameter: 30e-3, ThreadFriction: 0.08, CollarFriction: 0.08, CollarDiameter: 40e-3,
	}

	// 1. Up: friction and load work together.
	up := boltDone(bolt.ScrewRaisingTorque(screw))
	fmt.Printf("1. raising  %.2f N·m\n", up)

	// 2. Down: the thread alone would run back, the collar holds it.
	down := boltDone(bolt.ScrewLoweringTorque(screw))
	bare := screw
	bare.CollarDiameter = 0
	fmt.Printf("2. lowering %.2f N·m, of which the thread %.3f N·m\n", down, boltDone(bolt.ScrewLoweringTorque(bare)))

	// 3. Efficiency: work on the load by work of the torque, in one turn.
	fmt.Printf("3. efficiency %.3f\n", screw.Force*screw.Lead/(2*math.Pi*up))

	// Output:
	// 1. raising  26.18 N·m
	// 2. lowering 9.77 N·m, of which the thread -0.466 N·m
	// 3. efficiency 0.311
}
