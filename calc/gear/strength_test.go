package gear

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"

	"pgregory.net/rapid"
)

func TestLifeFactorsPublished(t *testing.T) {
	const source = "ISO 6336-2 and -3, case-hardened, no pitting allowed: anchors from memory, figures derived from them"
	var rows []published.Row
	for i, n := range []float64{1e4, 1e5, 1e6} {
		rows = append(rows, published.Row{Name: "Y_NT", Got: must[float64](t)(RootLifeFactor(n)), Printed: [...]string{"1.92086", "1.47587", "1.13398"}[i], Source: source})
	}
	for i, n := range []float64{1e6, 1e7, 1e8} {
		rows = append(rows, published.Row{Name: "Z_NT", Got: must[float64](t)(FlankLifeFactor(n)), Printed: [...]string{"1.34428", "1.12944", "0.978963"}[i], Source: source})
	}
	// A fifth more torque: bending stress grows by as much, contact stress by its root.
	cycles := must[LifeResult](t)
	bending := cycles(RootLife(1.5*1.2)).Cycles / cycles(RootLife(1.5)).Cycles
	pitting := cycles(FlankLife(1.2*math.Sqrt(1.2))).Cycles / cycles(FlankLife(1.2)).Cycles
	const why = "the source rounds the slope"
	rows = append(rows,
		published.Row{Name: "life at 1.2 times the torque, bending", Got: bending, Printed: "0.203215", Source: source, Within: 5e-3, Why: why},
		published.Row{Name: "life at 1.2 times the torque, pitting", Got: pitting, Printed: "0.299648", Source: source, Within: 5e-3, Why: why})
	published.Check(t, rows)
}

func TestLifeIsTheInverseOfTheFactor(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		n := math.Pow(10, rapid.Float64Range(5.01, 9.99).Draw(rt, "lg N"))
		for name, f := range map[string]struct {
			factor func(float64) (float64, error)
			life   func(float64) (LifeResult, error)
		}{"root": {RootLifeFactor, RootLife}, "flank": {FlankLifeFactor, FlankLife}} {
			k, err := f.factor(n)
			if err != nil {
				rt.Fatal(err)
			}
			back, err := f.life(k)
			if err != nil || back.Beyond || math.Abs(back.Cycles/n-1) > 1e-9 {
				rt.Errorf("%s: %g cycles give %g, which gives %+v, %v", name, n, k, back, err)
			}
		}
	})
	if l, err := RootLife(0.5); err != nil || !l.Beyond || l.Cycles != 1e10 {
		t.Errorf("well below the limit: %+v, %v", l, err)
	}
}

func TestLewisBeamPublished(t *testing.T) {
	p := LewisBeamParams{Module: 4e-3, FaceWidth: 25e-3, Bending: 200e6, Lewis: 0.33264}
	published.Check(t, []published.Row{{Name: "beam strength, N", Got: must[float64](t)(LewisBeamStrength(p)), Printed: "6653",
		Source: "Jindal, Machine Design (2010), example 27-2"}})
	p.ConeDistance = 82e-3
	if got := must[float64](t)(LewisBeamStrength(p)); math.Abs(got-6652.8*(1-25.0/82)) > 1e-6 {
		t.Errorf("with the taper: %g", got)
	}
}

func TestLengthwiseCurvatureFactor(t *testing.T) {
	number := must[float64](t)
	// At 35° a cutter as large as the mean cone distance leaves the factor at one; smaller cutters raise it.
	if got := number(LengthwiseCurvatureFactor(0.1, 0.1, 35*degree)); got != 1 {
		t.Errorf("got %g, want 1", got)
	}
	small, smaller := number(LengthwiseCurvatureFactor(0.08, 0.1, 35*degree)), number(LengthwiseCurvatureFactor(0.075, 0.1, 35*degree))
	if !(1 < small && small < smaller && smaller <= 1.15) {
		t.Errorf("got %g and %g", small, smaller)
	}
}

func TestFaceLoadFactorPublished(t *testing.T) {
	const source = "ISO 10300-1:2014, method C (from memory)"
	number := must[float64](t)
	published.Check(t, []published.Row{
		{Name: "axle, each pair under light load", Got: number(FaceLoadFactor(OneOverhung, PairUnderLightLoad)), Printed: "1.65", Source: source},
		{Name: "industrial, sample", Got: number(FaceLoadFactor(BothStraddled, SamplePair)), Printed: "1.80", Source: source},
		{Name: "full load", Got: number(FaceLoadFactor(BothOverhung, PairUnderFullLoad)), Printed: "1.50", Source: source},
	})
}

// strengthPair is an invented 10/41 hypoid pair ready for its sums of strength.
type strengthPair struct {
	root  RootStressParams
	flank FlankStressParams
}

func pairForStrength(t testing.TB, offset float64, flank Flank) strengthPair {
	t.Helper()
	cones := must[PitchCones](t)(HypoidPitchCones(HypoidConesParams{PinionTeeth: 10, WheelTeeth: 41, Offset: offset, WheelSpiral: 34 * degree,
		WheelMeanRadius: 0.093, Condition: ApexAtCrossing}))
	depths := must[MeanDepths](t)(MeanToothDepths(DepthsParams{Cones: cones}))
	limit := must[float64](t)(LimitPressureAngle(cones))
	angles := must[PressureAngles](t)(FlankPressureAngles(PressureAnglesParams{20 * degree, 20 * degree, limit, 1}))
	virtual := must[VirtualGears](t)(VirtualCylindricalGears(VirtualParams{Cones: cones, PinionAddend: depths.PinionAddendum, WheelAddend: depths.WheelAddendum,
		FaceWidth: 36e-3, PressureAngle: angles.EffectiveDrive, Edition: ISO10300of2014}))
	return strengthPair{
		root:  RootStressParams{Cones: cones, Depths: depths, Virtual: virtual, WheelTorque: 3000, PressureAngle: angles.EffectiveDrive},
		flank: FlankStressParams{Cones: cones, Angles: angles, Virtual: virtual, WheelTorque: 3000, Flank: flank},
	}
}

func TestStressesScaleWithTorque(t *testing.T) {
	p := pairForStrength(t, 0.025, Drive)
	one, flankOne := must[RootStressResult](t)(RootStress(p.root)), must[FlankStressResult](t)(FlankStress(p.flank))
	p.root.WheelTorque *= 2
	p.flank.WheelTorque *= 2
	two, flankTwo := must[RootStressResult](t)(RootStress(p.root)), must[FlankStressResult](t)(FlankStress(p.flank))
	for what, pair := range map[string][2]float64{
		"pinion root": {two.Pinion, 2 * one.Pinion}, "wheel root": {two.Wheel, 2 * one.Wheel},
		"flank": {flankTwo.Stress, math.Sqrt2 * flankOne.Stress},
	} {
		if math.Abs(pair[0]/pair[1]-1) > 1e-12 {
			t.Errorf("%s: %g, want %g", what, pair[0], pair[1])
		}
	}
	if one.Pinion <= 0 || flankOne.Stress <= 0 {
		t.Error("no stress")
	}
}

// Twice as large a pair under eight times the torque is stressed alike.
func TestStressesScaleWithSize(t *testing.T) {
	p := pairForStrength(t, 0.025, Drive)
	one, flankOne := must[RootStressResult](t)(RootStress(p.root)), must[FlankStressResult](t)(FlankStress(p.flank))
	cones := must[PitchCones](t)(HypoidPitchCones(HypoidConesParams{PinionTeeth: 10, WheelTeeth: 41, Offset: 0.05, WheelSpiral: 34 * degree,
		WheelMeanRadius: 0.186, Condition: ApexAtCrossing}))
	depths := must[MeanDepths](t)(MeanToothDepths(DepthsParams{Cones: cones}))
	virtual := must[VirtualGears](t)(VirtualCylindricalGears(VirtualParams{Cones: cones, PinionAddend: depths.PinionAddendum, WheelAddend: depths.WheelAddendum,
		FaceWidth: 72e-3, PressureAngle: p.root.PressureAngle, Edition: ISO10300of2014}))
	p.root.Cones, p.root.Depths, p.root.Virtual, p.root.WheelTorque = cones, depths, virtual, 24000
	p.flank.Cones, p.flank.Virtual, p.flank.WheelTorque = cones, virtual, 24000
	two, flankTwo := must[RootStressResult](t)(RootStress(p.root)), must[FlankStressResult](t)(FlankStress(p.flank))
	for what, pair := range map[string][2]float64{
		"pinion root": {two.Pinion, one.Pinion}, "wheel root": {two.Wheel, one.Wheel}, "flank": {flankTwo.Stress, flankOne.Stress},
	} {
		if math.Abs(pair[0]/pair[1]-1) > 1e-9 {
			t.Errorf("%s: %g, want %g", what, pair[0], pair[1])
		}
	}
}

// Without offset the hypoid forms must give what they give for spiral bevel, both
// flanks alike; and the offset relieves the pinion, which it makes larger.
func TestStrengthOfAVanishingOffset(t *testing.T) {
	drive, coast := must[FlankStressResult](t)(FlankStress(pairForStrength(t, 0, Drive).flank)), must[FlankStressResult](t)(FlankStress(pairForStrength(t, 0, Coast).flank))
	if math.Abs(drive.Stress/coast.Stress-1) > 1e-12 || drive.SlideShare != 0 || drive.Hypoid != 1 {
		t.Errorf("spiral bevel: drive %+v, coast %+v", drive, coast)
	}
	hypoid := must[FlankStressResult](t)(FlankStress(pairForStrength(t, 0.025, Drive).flank))
	if hypoid.Stress >= drive.Stress {
		t.Errorf("an offset of 25 mm raises the contact stress from %.0f to %.0f MPa", drive.Stress/1e6, hypoid.Stress/1e6)
	}
	if !(hypoid.Hypoid < 1 && hypoid.SlideShare > 0.15) {
		t.Errorf("hypoid factor %g at a slide share of %g", hypoid.Hypoid, hypoid.SlideShare)
	}
}

func TestPermissibleStresses(t *testing.T) {
	limits := must[EnduranceLimits](t)(CaseHardenedLimits(GradeMQ))
	number := must[float64](t)
	const source = "ISO 6336-5 and -3 (from memory): 2 times σ_Flim at the endurance limit, 2.5 times that for a static overload"
	published.Check(t, []published.Row{
		{Name: "root, endurance, MPa", Got: number(PermissibleRootStress(PermissibleRootParams{Limit: limits.Root, Cycles: 3e6, NormalModule: 4e-3})) / 1e6, Printed: "922", Source: source},
		{Name: "root, overload, MPa", Got: number(PermissibleRootStress(PermissibleRootParams{Limit: limits.Root, Cycles: 1, NormalModule: 4e-3})) / 1e6, Printed: "2305", Source: source},
		{Name: "flank, endurance, smooth, MPa", Got: number(PermissibleFlankStress(PermissibleFlankParams{Limit: limits.Flank, Cycles: 5e7, Hypoid: 1, Lubrication: 1})) / 1e6, Printed: "1500", Source: source},
	})
	small, large := number(PermissibleRootStress(PermissibleRootParams{Limit: limits.Root, Cycles: 3e6, NormalModule: 5e-3})), number(PermissibleRootStress(PermissibleRootParams{Limit: limits.Root, Cycles: 3e6, NormalModule: 8e-3}))
	if math.Abs(large/small-0.97) > 1e-12 {
		t.Errorf("module 8 against 5: %g, want 0.97", large/small)
	}
}

func TestStrengthRefuses(t *testing.T) {
	p := pairForStrength(t, 0.025, Drive)
	var r *check.RangeError
	for param, change := range map[string]func(*strengthPair){
		"WheelTorque":       func(p *strengthPair) { p.root.WheelTorque, p.flank.WheelTorque = -1, -1 },
		"Crowning":          func(p *strengthPair) { p.root.Crowning, p.flank.Crowning = 9, 9 },
		"Load.Dynamic":      func(p *strengthPair) { p.root.Load.Dynamic, p.flank.Load.Dynamic = 0.5, 0.5 },
		"Virtual.Face":      func(p *strengthPair) { p.root.Virtual.Face, p.flank.Virtual.Face = 0, 0 },
		"WheelConeDistance": func(p *strengthPair) { p.root.Cones.WheelConeDistance, p.flank.Cones.WheelConeDistance = 1, 1 },
	} {
		q := p
		change(&q)
		if _, err := RootStress(q.root); !errors.As(err, &r) || r.Param != param {
			t.Errorf("%s, root: got %v", param, err)
		}
		if _, err := FlankStress(q.flank); !errors.As(err, &r) || r.Param != param {
			t.Errorf("%s, flank: got %v", param, err)
		}
	}
	for _, err := range []error{
		second(RootLifeFactor(0)), second(FlankLifeFactor(1e11)), second(RootLife(2.6)), second(FlankLife(0)),
		second(CaseHardenedLimits("")), second(PermissibleRootStress(PermissibleRootParams{Limit: 461, Cycles: 1e6, NormalModule: 4e-3})),
		second(PermissibleFlankStress(PermissibleFlankParams{Limit: 1500e6, Cycles: 1e6})), second(FaceLoadFactor("", SamplePair)),
		second(LengthwiseCurvatureFactor(0.1, 0.1, 35)), second(LewisBeamStrength(LewisBeamParams{})),
		second(LewisBeamStrength(LewisBeamParams{Module: 4e-3, FaceWidth: 40e-3, Bending: 2e8, Lewis: 0.3, ConeDistance: 80e-3})),
	} {
		if !errors.As(err, &r) {
			t.Errorf("got %v, want a range error", err)
		}
	}
}

func BenchmarkRootAndFlankStress(b *testing.B) {
	p := pairForStrength(b, 0.025, Drive)
	for b.Loop() {
		if _, err := RootStress(p.root); err != nil {
			b.Fatal(err)
		}
		if _, err := FlankStress(p.flank); err != nil {
			b.Fatal(err)
		}
	}
}
