package worked_test

import (
	"fmt"
	"math"

	"axlewright/calc/gear"
)

// gearDone hands on a value and stops the example on an error.
func gearDone[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

const gearDegree = math.Pi / 180

// A straight bevel pair at a right angle carries 8 kW at 400 1/min of the
// pinion, ratio 2, pressure angle 20°. The pinion's pitch radius at the large
// end is 200 mm, the face a fifth of the cone distance.
//
//	      |  \
//	      |    \  wheel       F_t  along the circle
//	______|_____\             F_r  apart, towards the member's own axis
//	  pinion    |             F_a  away from the member's own apex
//	______ _____/
//
// Wanted: the tooth force in its parts, on both members.
//
// Source: Jindal, Machine Design (2010), ex. 27-1, p. 712: 1061, 386.18, 345.41
// and 172.71 N.
func Example_gear1StraightBevelForces() {
	// 1. Half the face lies inside, so the mean radius is a tenth smaller. To put
	// the force at the large end is the classic error.
	meanRadius := 0.200 * (1 - 0.2/2)
	fmt.Printf("1. mean radius of the pinion %.1f mm\n", meanRadius*1e3)

	// 2. Torques.
	pinionTorque := 8000 / (400 * 2 * math.Pi / 60)
	fmt.Printf("2. torque %.2f N·m at the pinion, %.2f N·m at the wheel\n", pinionTorque, 2*pinionTorque)

	// 3. Pitch cones and forces.
	cones := gearDone(gear.BevelPitchCones(20, 40, 0, 2*meanRadius))
	f := gearDone(gear.MeshForces(gear.MeshParams{
		Cones: cones, WheelTorque: 2 * pinionTorque, Flank: gear.Drive, PinionHand: gear.LeftHand,
		DrivePressureAngle: 20 * gearDegree, CoastPressureAngle: 20 * gearDegree,
	}))
	fmt.Printf("3. tangential %.0f N, separating %.2f N\n", f.Pinion.Tangential, math.Hypot(f.Pinion.AxialAway, f.Pinion.RadialApart))
	fmt.Printf("4. pinion: apart %.2f N, away from its apex %.2f N\n", f.Pinion.RadialApart, f.Pinion.AxialAway)
	fmt.Printf("5. wheel:  apart %.2f N, away from its apex %.2f N, the two changed places\n", f.Wheel.RadialApart, f.Wheel.AxialAway)

	// Output:
	// 1. mean radius of the pinion 180.0 mm
	// 2. torque 190.99 N·m at the pinion, 381.97 N·m at the wheel
	// 3. tangential 1061 N, separating 386.18 N
	// 4. pinion: apart 345.41 N, away from its apex 172.71 N
	// 5. wheel:  apart 172.71 N, away from its apex 345.41 N, the two changed places
}

// A spiral bevel pair of module 3 mm at the large end has 20 and 40 teeth, 35°
// of spiral, 20° of pressure angle and a face of 20 mm. Its teeth taper.
//
// Wanted: the blanks to turn.
//
// Source: tapered-depth spiral bevel example in an open technical reference on
// gears (from memory): R_e 67.082, addenda 3.4275 and 1.6725, face angles
// 29.9702° and 65.3445°, outside diameters 66.1313 and 121.496, apex to crown
// 58.4672 and 28.5041 mm.
func Example_gear2SpiralBevelBlank() {
	b := gearDone(gear.BevelBlanks(gear.BlankParams{
		PinionTeeth: 20, WheelTeeth: 40, OuterModule: 3e-3, FaceWidth: 20e-3, Form: gear.SpiralTeeth,
	}))
	fmt.Printf("1. pitch angles       %.3f° and %.3f°, cone distance %.3f mm\n",
		b.Pinion.PitchAngle/gearDegree, b.Wheel.PitchAngle/gearDegree, b.OuterConeDistance*1e3)
	fmt.Printf("2. working depth      %.3f mm, whole depth %.3f mm\n", b.WorkingDepth*1e3, b.WholeDepth*1e3)
	fmt.Printf("3. addenda            %.4f and %.4f mm: the pinion has the longer tip\n", b.Pinion.Addendum*1e3, b.Wheel.Addendum*1e3)
	fmt.Printf("4. dedendum angles    %.4f° and %.4f°; each is the mate's addendum angle\n",
		b.Pinion.DedendumAngle/gearDegree, b.Wheel.DedendumAngle/gearDegree)
	fmt.Printf("5. face angles        %.4f° and %.2f°\n", b.Pinion.FaceAngle/gearDegree, b.Wheel.FaceAngle/gearDegree)
	fmt.Printf("6. root angles        %.4f° and %.4f°\n", b.Pinion.RootAngle/gearDegree, b.Wheel.RootAngle/gearDegree)
	fmt.Printf("7. outside diameters  %.4f and %.3f mm\n", b.Pinion.OutsideDiameter*1e3, b.Wheel.OutsideDiameter*1e3)
	fmt.Printf("8. apex to crown      %.4f and %.4f mm\n", b.Pinion.ApexToCrown*1e3, b.Wheel.ApexToCrown*1e3)

	// Output:
	// 1. pitch angles       26.565° and 63.435°, cone distance 67.082 mm
	// 2. working depth      5.100 mm, whole depth 5.664 mm
	// 3. addenda            3.4275 and 1.6725 mm: the pinion has the longer tip
	// 4. dedendum angles    1.9095° and 3.4052°; each is the mate's addendum angle
	// 5. face angles        29.9702° and 65.34°
	// 6. root angles        24.6555° and 60.0298°
	// 7. outside diameters  66.1313 and 121.496 mm
	// 8. apex to crown      58.4672 and 28.5041 mm
}

// Two like straight bevel gears of 25 teeth and diametral pitch 5 run at 600
// 1/min, both overhung, uncrowned, of quality 7, through-hardened grade 1 of 180
// HB; face 1.10 in, J = 0.216, I = 0.065.
//
// Wanted: the power by bending and by wear for 10⁷ cycles at 0.99 reliability;
// then for 10⁹ cycles at 0.995 with a factor of safety of 1.5.
//
// Source: Budynas and Nisbett, Shigley's Mechanical Engineering Design, 8th
// ed., ex. 15-1 (from memory): 13.2 hp in bending and 10.9 hp in wear, then 7.0 hp
// in bending and 3.9 hp in wear. The book rounds between the steps (552.6 lbf).
func Example_gear3StraightBevelRating() {
	const inch, lbf, hp = 0.0254, 4.4482216, 745.6999
	const module, face, diameter, teeth = inch / 5, 1.10 * inch, 5 * inch, 25

	// 1. Velocity and the factors of the teeth and their mounting.
	v := math.Pi * diameter * 600 / 60
	dynamic := gearDone(gear.BevelDynamicFactor(v, 7))
	size := gearDone(gear.BevelSizeFactor(module))
	pitSize := gearDone(gear.BevelPittingSizeFactor(face))
	load := gearDone(gear.BevelLoadDistribution(face, gear.BothOverhung))
	fmt.Printf("1. v %.1f ft/min, K_v %.3f, K_s %.3f, C_s %.3f, K_m %.3f\n", v/0.00508, dynamic.Factor, size, pitSize, load)

	// 2. What the steel stands.
	steel := gearDone(gear.BevelAllowableStresses(gear.ThroughHardenedGrade1, 180))
	const psi = lbf / (inch * inch)
	fmt.Printf("2. bending %.0f psi, contact %.0f psi\n", steel.Bending/psi, steel.Contact/psi)

	// 3. Stress per pound of tangential load.
	tooth := gear.BevelRatingParams{
		Edition: gear.AGMA2003B97, Tangential: lbf, OuterModule: module, FaceWidth: face, PinionPitch: diameter,
		Overload: 1, Dynamic: dynamic.Factor, Size: size, Distribution: load, Lengthwise: 1, Crowning: 2, Geometry: 0.216,
	}
	bending := gearDone(gear.BevelBendingStress(tooth))
	tooth.Size, tooth.Geometry = pitSize, 0.065
	contact := gearDone(gear.BevelContactStress(tooth))
	fmt.Printf("3. a pound of load makes %.2f psi in the root\n", bending/psi)

	// 4. Load and power for a life, a reliability and a factor of safety, which
	// contact feels by its root.
	rate := func(step string, cycles, reliability, safety float64) {
		bend := gearDone(gear.BevelBendingCycleFactor(cycles, gear.CriticalService))
		pit := gearDone(gear.BevelPittingCycleFactor(cycles))
		sure := gearDone(gear.BevelReliabilityFactor(reliability))
		root := steel.Bending * bend / (safety * sure) / bending
		wear := math.Pow(steel.Contact*pit/(math.Sqrt(safety)*math.Sqrt(sure))/contact, 2)
		fmt.Printf("%s bending %.0f lbf, %.1f hp; wear %.0f lbf, %.1f hp\n", step, root, root*lbf*v/hp, wear, wear*lbf*v/hp)
	}
	rate("4.", 1e7, 0.99, 1)
	rate("5.", 1e9, 0.995, 1.5)

	// Output:
	// 1. v 785.4 ft/min, K_v 1.299, K_s 0.529, C_s 0.575, K_m 1.254
	// 2. bending 10020 psi, contact 85000 psi
	// 3. a pound of load makes 18.15 psi in the root
	// 4. bending 552 lbf, 13.1 hp; wear 458 lbf, 10.9 hp
	// 5. bending 295 lbf, 7.0 hp; wear 163 lbf, 3.9 hp
}

// A hypoid pair has 10 and 39 teeth, 32 mm of offset, a wheel of 200 mm outer
// pitch diameter and 30 mm face with a pitch angle of 72°, and 50° of spiral on a
// left-hand pinion. 2000 N·m at the wheel, 20° on either flank.
//
//	z                            the pinion lies below the wheel's axis,
//	|      wheel, seen from      z = −32 mm, on the right
//	|      its teeth
//	+------------- x  out of the nose
//	      \___ pinion ==== flange
//
// Wanted: the pitch cones, and what pushes where, pulling and on the overrun.
//
// Source: pitch-plane relations and force forms of ISO 23509; the figures were
// derived with vectors, apart from this code: δ1 16.9236°, ζ 20.5356°, β2
// 29.4644°, then 22 474.8 and 5202.09 N of thrust pulling, −16 797.3 and
// 13 347.3 N on the overrun.
func Example_gear4HypoidBothFlanks() {
	// 1. Pitch cones: the offset turns the spiral angles apart and makes the pinion larger.
	cones := gearDone(gear.HypoidPitchCones(gear.HypoidConesParams{
		PinionTeeth: 10, WheelTeeth: 39, Offset: 32e-3, PinionSpiral: 50 * gearDegree,
		WheelPitchDiameter: 200e-3, FaceWidth: 30e-3,
		Condition: gear.GivenWheelPitchAngle, WheelPitchAngle: 72 * gearDegree,
	}))
	fmt.Printf("1. pinion pitch angle %.4f°, offset angle %.4f°, wheel spiral %.4f°\n",
		cones.PinionPitchAngle/gearDegree, cones.OffsetAngle/gearDegree, cones.WheelSpiral/gearDegree)
	fmt.Printf("   mean radii %.3f and %.3f mm; without offset the pinion had %.3f mm\n",
		cones.PinionMeanRadius*1e3, cones.WheelMeanRadius*1e3, cones.WheelMeanRadius*10/39*1e3)

	// 2. The limit pressure angle, about which the flanks must be unequal to work alike.
	limit := gearDone(gear.LimitPressureAngle(cones))
	angles := gearDone(gear.FlankPressureAngles(gear.PressureAnglesParams{
		DesignDrive: 20 * gearDegree, DesignCoast: 20 * gearDegree, Limit: limit, Influence: 1}))
	fmt.Printf("2. limit pressure angle %.2f°: a maker would cut %.2f° drive and %.2f° coast\n",
		limit/gearDegree, angles.GeneratedDrive/gearDegree, angles.GeneratedCoast/gearDegree)

	// 3. Forces on either flank, here with 20° on both.
	p := gear.MeshParams{Cones: cones, WheelTorque: 2000, PinionHand: gear.LeftHand,
		DrivePressureAngle: 20 * gearDegree, CoastPressureAngle: 20 * gearDegree}
	for i, flank := range []gear.Flank{gear.Drive, gear.Coast} {
		p.Flank = flank
		f := gearDone(gear.MeshForces(p))
		fmt.Printf("%d. %s: pinion %+.0f N out of the nose, wheel %+.0f N off the pinion\n", 3+i, flank, f.Pinion.AxialAway, f.Wheel.AxialAway)
	}

	// 5. The same force as a vector balances itself, and turns both members at their ratio.
	v := gearDone(gear.MeshForceVectors(p))
	fmt.Printf("5. overrun, on the wheel: x %.0f, y %.0f, z %.0f N at %.2f, %.2f, %.2f mm\n", v.OnWheel.X, v.OnWheel.Y, v.OnWheel.Z,
		v.MeanPoint.X*1e3, v.MeanPoint.Y*1e3, v.MeanPoint.Z*1e3)
	fmt.Printf("   pinion axis at z = %.0f mm, torques %.0f and %.2f N·m\n", v.PinionAxisZ*1e3, math.Abs(v.WheelTorqueY), math.Abs(v.PinionTorqueX))

	// Output:
	// 1. pinion pitch angle 16.9236°, offset angle 20.5356°, wheel spiral 29.4644°
	//    mean radii 29.776 and 85.734 mm; without offset the pinion had 21.983 mm
	// 2. limit pressure angle -6.29°: a maker would cut 13.71° drive and 26.29° coast
	// 3. drive: pinion +22475 N out of the nose, wheel +5202 N off the pinion
	// 4. coast: pinion -16797 N out of the nose, wheel +13347 N off the pinion
	// 5. overrun, on the wheel: x 16797, y 13347, z 18780 N at 80.76, 29.60, -28.77 mm
	//    pinion axis at z = -32 mm, torques 2000 and 512.82 N·m
}

// A crown wheel of 46 teeth on a pinion of 13, 20° and 35°, is set up with 0.24
// mm of lash where 0.15 mm is wanted. The adjusters have a pitch of 1.5 mm and 16
// notches. A second dial, set square to the tooth by mistake, reads 0.115 mm.
//
// Wanted: how far to move the wheel, and what the second dial really saw.
//
// Source: Δj = 2·Δa·tan α·sin δ2/cos β, derived from the flanks; that 0.10 mm of wheel
// gives 0.086 mm of lash and that 0.115 mm square to the tooth is 0.149 mm of lash
// are figures of the trade (common practice, no source).
func Example_gear5LashByTheWheel() {
	cones := gearDone(gear.BevelPitchCones(13, 46, 35*gearDegree, 94e-3))

	// 1. What a tenth does, at the mean circle.
	tenth := gearDone(gear.LashChange(gear.LashChangeParams{Cones: cones, DrivePressureAngle: 20 * gearDegree,
		CoastPressureAngle: 20 * gearDegree, Shift: gear.MeshShift{WheelAway: 0.1e-3}}))
	fmt.Printf("1. wheel 0.10 mm off the pinion: lash %.3f mm more, %.3f mm square to the tooth\n", tenth.Transverse*1e3, tenth.NormalDrive*1e3)

	// 2. The move for 0.09 mm less, read on the mean circle.
	move := gearDone(gear.WheelShiftForLash(gear.WheelShiftParams{Cones: cones, DrivePressureAngle: 20 * gearDegree,
		CoastPressureAngle: 20 * gearDegree, LashGrowth: -0.09e-3, Radius: 94e-3}))
	fmt.Printf("2. wheel %.3f mm towards the pinion\n", -move*1e3)

	// 3. In notches: both adjusters the same count, so that the preload stays.
	notch := 1.5e-3 / 16
	fmt.Printf("3. %.1f notches of %.3f mm\n", -move/notch, notch*1e3)

	// 4. The dial that stood square to the tooth.
	lash := gearDone(gear.LashFromDial(gear.DialLashParams{Lash: 0.115e-3, LashRadius: 94e-3, DialRadius: 94e-3,
		Setting: gear.DialSquare, SpiralAngle: 35 * gearDegree, PressureAngle: 20 * gearDegree}))
	fmt.Printf("4. the second dial saw %.3f mm of lash\n", lash*1e3)

	// Output:
	// 1. wheel 0.10 mm off the pinion: lash 0.086 mm more, 0.066 mm square to the tooth
	// 2. wheel 0.105 mm towards the pinion
	// 3. 1.1 notches of 0.094 mm
	// 4. the second dial saw 0.149 mm of lash
}

// Case-hardened teeth are loaded to one and a half times their endurance limit in
// the root and 1.2 times on the flank. The customer fits taller tyres: a fifth more torque.
//
// Wanted: what is left of the life of the teeth.
//
// Source: life factors of ISO 6336-2 and -3 for case-hardened steel (anchors from
// memory); by their slopes of 8.74 and 13.2 the life falls to 0.203 and 0.300.
func Example_gear6AFifthMoreTorque() {
	life := func(of func(float64) (gear.LifeResult, error), share float64) float64 {
		return gearDone(of(share)).Cycles
	}

	// 1. Bending stress grows as the torque.
	before, after := life(gear.RootLife, 1.5), life(gear.RootLife, 1.5*1.2)
	fmt.Printf("1. root:  %.0f to %.0f thousand cycles, %.3f of the life\n", before/1e3, after/1e3, after/before)

	// 2. Contact stress grows as the root of the torque.
	before, after = life(gear.FlankLife, 1.2), life(gear.FlankLife, 1.2*math.Sqrt(1.2))
	fmt.Printf("2. flank: %.1f to %.1f million cycles, %.3f of the life\n", before/1e6, after/1e6, after/before)

	// Output:
	// 1. root:  87 to 18 thousand cycles, 0.203 of the life
	// 2. flank: 4.5 to 1.3 million cycles, 0.300 of the life
}
