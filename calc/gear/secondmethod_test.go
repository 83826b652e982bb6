package gear

import (
	"math"
	"testing"
)

// Relative curvature from the motion of the two bodies alone: with K the wheel
// flank's curvature along the tooth (cutter radius), v12 and ω12 the relative
// velocity and turning, p = K·v12 + ω12 × n, the flanks differ in curvature by
// |p|²/(q − p·v12) along p and by nothing across it.
func kinematicCurvature(c PitchCones, flank Flank, alpha, cutter float64) float64 {
	f := c.frame(RightHand)
	n := f.flankNormal(flank, alpha)
	w2, w1 := vector{Y: 1}, vector{X: float64(c.WheelTeeth) / float64(c.PinionTeeth)}
	v2 := w2.cross(f.mean)
	from := f.mean.plus(vector{Z: -f.pinionAxisZ})
	if math.Abs(n.dot(w1.cross(from).plus(v2.times(-1)))) > 1e-9*math.Sqrt(v2.dot(v2)) {
		w1 = w1.times(-1)
	}
	v12 := w1.cross(from).plus(v2.times(-1))
	w12 := w1.plus(w2.times(-1))
	along := math.Cos(alpha) / cutter
	if flank == Coast {
		along = -along
	}
	p := f.tooth.times(along * f.tooth.dot(v12)).plus(w12.cross(n))
	q := n.dot(w12.cross(v2)) + v12.dot(w2.cross(n))
	return math.Abs(q-p.dot(v12)) / p.dot(p)
}

func TestRelativeCurvatureAgreesWithKinematics(t *testing.T) {
	for _, offset := range []float64{0, 0.015, 0.025, 0.032} {
		for _, flank := range []Flank{Drive, Coast} {
			p := pairForStrength(t, offset, flank).flank
			r := must[FlankStressResult](t)(FlankStress(p))
			alpha := p.Angles.GeneratedDrive
			if flank == Coast {
				alpha = p.Angles.GeneratedCoast
			}
			for _, cutter := range []float64{0.08, 0.095, 0.115} {
				exact := kinematicCurvature(p.Cones, flank, alpha, cutter)
				slack := 1e-9 // without offset the two agree to rounding, whatever the cutter
				if offset > 0 {
					slack = 0.06
				}
				if math.Abs(r.Curvature/exact-1) > slack {
					t.Errorf("offset %g, %s, cutter %g: %.3f mm by the standard, %.3f by kinematics", offset, flank, cutter, r.Curvature*1e3, exact*1e3)
				}
			}
		}
	}
}

// ISO and American sums for the straight bevel pair of Shigley, 8th ed., problem
// 15-1: 20/60 teeth, diametral pitch 6, face 1.25 in, J of 0.249 and 0.216 (printed
// there), I of 0.083 (chart of ANSI/AGMA 2003-B97, from memory). Load factors are
// one, but for the crowning, which both put at 1.5 for the flank, so that only the
// tooth is compared. The roots are to agree within 15 %, the flanks within 10 % of
// the bevel factor 0.85 that ISO alone has.
func TestISOAgainstAGMAOnStraightBevels(t *testing.T) {
	const force = 690 * poundForce // at the large end
	module, face := inch/6, 1.25*inch
	blank := must[BlankResult](t)(BevelBlanks(BlankParams{PinionTeeth: 20, WheelTeeth: 60, OuterModule: module, FaceWidth: face, Form: StraightTeeth}))
	cones := must[PitchCones](t)(BevelPitchCones(20, 60, 0, blank.Wheel.MeanDiameter/2))
	m := cones.NormalModule
	depths := MeanDepths{
		Working: 2 * m, Whole: blank.Pinion.MeanAddendum + blank.Pinion.MeanDedendum, Clearance: 0.188 * m,
		PinionAddendum: blank.Pinion.MeanAddendum, WheelAddendum: blank.Wheel.MeanAddendum,
		PinionShift: (blank.Pinion.MeanAddendum - blank.Wheel.MeanAddendum) / (2 * m),
	}
	virtual := must[VirtualGears](t)(VirtualCylindricalGears(VirtualParams{Cones: cones, PinionAddend: depths.PinionAddendum, WheelAddend: depths.WheelAddendum,
		FaceWidth: face, PressureAngle: 20 * degree, Edition: ISO10300of2014}))
	ones := LoadFactors{Application: 1, Dynamic: 1, FaceLoad: 1, Transverse: 1, Lengthwise: 1}
	torque := force * blank.Wheel.PitchDiameter / 2
	root := must[RootStressResult](t)(RootStress(RootStressParams{Cones: cones, Depths: depths, Virtual: virtual, WheelTorque: torque, PressureAngle: 20 * degree, Load: ones}))
	ones.FaceLoad = 1.5 // where the American form has C_xc
	flank := must[FlankStressResult](t)(FlankStress(FlankStressParams{Cones: cones, Angles: PressureAngles{0, 20 * degree, 20 * degree, 20 * degree, 20 * degree},
		Virtual: virtual, WheelTorque: torque, Flank: Drive, Load: ones}))
	american := func(stress func(BevelRatingParams) (float64, error), geometry, crowning float64) float64 {
		return must[float64](t)(stress(BevelRatingParams{Edition: AGMA2003B97, Tangential: force, OuterModule: module, FaceWidth: face,
			PinionPitch: blank.Pinion.PitchDiameter, Overload: 1, Dynamic: 1, Size: 1, Distribution: 1, Lengthwise: 1, Crowning: crowning, Geometry: geometry}))
	}
	for _, c := range []struct {
		what          string
		iso, american float64
		ratio, slack  float64
	}{
		{"pinion root", root.Pinion, american(BevelBendingStress, 0.249, 0), 1, 0.15},
		{"gear root", root.Wheel, american(BevelBendingStress, 0.216, 0), 1, 0.15},
		{"flank", flank.Stress, american(BevelContactStress, 0.083, 1.5), 0.85, 0.10},
	} {
		ratio := c.iso / c.american
		t.Logf("%s: ISO %.1f MPa, AGMA %.1f MPa, ratio %.2f", c.what, c.iso/1e6, c.american/1e6, ratio)
		if math.Abs(ratio/c.ratio-1) > c.slack {
			t.Errorf("%s: ratio %.3f, want %.2f within %.0f %%", c.what, ratio, c.ratio, c.slack*100)
		}
	}
	// The torques at which the pinion's root gives out: carburized grade 2 with the
	// American size factor against grade MQ with the ISO face load factor of 1.5.
	size := must[float64](t)(BevelSizeFactor(module))
	byAGMA := must[AllowableResult](t)(BevelAllowableStresses(CarburizedGrade2, 0)).Bending / (american(BevelBendingStress, 0.249, 0) * size)
	limits := must[EnduranceLimits](t)(CaseHardenedLimits(GradeMQ))
	byISO := must[float64](t)(PermissibleRootStress(PermissibleRootParams{Limit: limits.Root, Cycles: 3e6, NormalModule: m})) / (root.Pinion * 1.5)
	ratio := byISO / byAGMA
	t.Logf("torque at which the pinion's root gives out: ISO %.2f times AGMA", ratio)
	if ratio < 1/1.5 || ratio > 1.5 {
		t.Errorf("torque at which the pinion's root gives out: ISO %.2f times AGMA; more than half apart", ratio)
	}
}
