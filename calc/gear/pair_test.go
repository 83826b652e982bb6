package gear

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
)

// forest is an invented 41/10 hypoid pair of 25 mm offset.
func forest() PairMeasurements {
	return PairMeasurements{PinionTeeth: 10, WheelTeeth: 41, WheelOutsideDiameter: 0.222, FaceWidth: 0.034, Offset: 0.025,
		PinionSpiral: 45 * degree, PressureAngle: 22.5 * degree}
}

func TestPairAsMeasuredClosesOnItsOwnMeasurements(t *testing.T) {
	for name, change := range map[string]func(*PairMeasurements){
		"hypoid":              func(*PairMeasurements) {},
		"by the cutter":       func(p *PairMeasurements) { p.CutterRadius = 0.095 },
		"by the wheel spiral": func(p *PairMeasurements) { p.PinionSpiral, p.WheelSpiral = 0, 32*degree },
		"spiral bevel":        func(p *PairMeasurements) { p.Offset, p.PinionSpiral = 0, 35*degree },
		"straight bevel":      func(p *PairMeasurements) { p.Offset, p.PinionSpiral, p.PinionTeeth = 0, 0, 14 },
	} {
		m := forest()
		change(&m)
		p := must[Pair](t)(PairAsMeasured(m))
		near := func(what string, got, want float64) {
			if math.Abs(got-want) > 1e-12 {
				t.Errorf("%s, %s: %g, want %g", name, what, got, want)
			}
		}
		near("outside diameter", p.WheelPitchDiameter+2*p.WheelOuterAddendum*math.Cos(p.Cones.WheelPitchAngle), m.WheelOutsideDiameter)
		near("mean radius", p.Cones.WheelMeanRadius, (p.WheelPitchDiameter-m.FaceWidth*math.Sin(p.Cones.WheelPitchAngle))/2)
		near("outer cone distance", p.WheelOuterDistance, p.Cones.WheelConeDistance+m.FaceWidth/2)
		if m.Offset == 0 {
			near("pinion tip beside wheel root", p.PinionFaceAngle+p.WheelRootAngle, math.Pi/2)
			near("pinion root beside wheel tip", p.PinionRootAngle+p.WheelFaceAngle, math.Pi/2)
			near("limit angle", p.Angles.Limit, 0)
		} else if p.Angles.Limit >= 0 || p.Angles.GeneratedDrive >= p.Angles.GeneratedCoast {
			t.Errorf("%s: the drive flank should be the steeper: %+v", name, p.Angles)
		}
		if !(p.PinionRootAngle < p.Cones.PinionPitchAngle && p.Cones.PinionPitchAngle < p.PinionFaceAngle) {
			t.Errorf("%s: pinion cones %g, %g, %g out of order", name, p.PinionRootAngle, p.Cones.PinionPitchAngle, p.PinionFaceAngle)
		}
		t.Logf("%s: δ1 %.2f δ2 %.2f ζ %.2f β1 %.2f β2 %.2f r_m1 %.2f r_m2 %.2f α_lim %.2f ε %.2f+%.2f", name, p.Cones.PinionPitchAngle/degree,
			p.Cones.WheelPitchAngle/degree, p.Cones.OffsetAngle/degree, p.Cones.PinionSpiral/degree, p.Cones.WheelSpiral/degree,
			p.Cones.PinionMeanRadius*1e3, p.Cones.WheelMeanRadius*1e3, p.Angles.Limit/degree, p.Drive.ProfileOverlap, p.Drive.FaceOverlap)
	}
}

// A spiral bevel wheel measured over the tips leads back to the blank it was cut from.
func TestPairAsMeasuredFindsTheBlank(t *testing.T) {
	b := bevel20by40(t)
	p := must[Pair](t)(PairAsMeasured(PairMeasurements{PinionTeeth: 20, WheelTeeth: 40, WheelOutsideDiameter: b.Wheel.OutsideDiameter,
		FaceWidth: 20e-3, PinionSpiral: 35 * degree, PressureAngle: 20 * degree}))
	if math.Abs(p.WheelPitchDiameter/b.Wheel.PitchDiameter-1) > 2e-3 {
		t.Errorf("outer pitch diameter %.3f mm, cut to %.3f", p.WheelPitchDiameter*1e3, b.Wheel.PitchDiameter*1e3)
	}
	if math.Abs(p.Cones.WheelMeanRadius/(b.Wheel.MeanDiameter/2)-1) > 2e-3 {
		t.Errorf("mean radius %.3f mm, cut to %.3f", p.Cones.WheelMeanRadius*1e3, b.Wheel.MeanDiameter*500)
	}
}

func TestTeethThatCannotMeshAreRefused(t *testing.T) {
	for name, c := range map[string]struct {
		param  string
		change func(*PairMeasurements)
	}{
		"ratio below one":       {"WheelTeeth", func(p *PairMeasurements) { p.WheelTeeth = 9 }},
		"five pinion teeth":     {"PinionTeeth", func(p *PairMeasurements) { p.PinionTeeth = 5 }},
		"face past 0.35 of R_e": {"FaceWidth", func(p *PairMeasurements) { p.FaceWidth = 0.042 }},
		"offset too large":      {"Offset", func(p *PairMeasurements) { p.Offset = 0.06 }},
		"no diameter":           {"WheelOutsideDiameter", func(p *PairMeasurements) { p.WheelOutsideDiameter = 0 }},
		"no pressure angle":     {"DesignDrive", func(p *PairMeasurements) { p.PressureAngle = 0 }},
		"spiral in degrees":     {"PinionSpiral", func(p *PairMeasurements) { p.PinionSpiral = 45 }},
		"both spirals":          {"WheelSpiral", func(p *PairMeasurements) { p.WheelSpiral = 0.6 }},
	} {
		m := forest()
		c.change(&m)
		var r *check.RangeError
		if _, err := PairAsMeasured(m); !errors.As(err, &r) || r.Param != c.param {
			t.Errorf("%s: got %v", name, err)
		}
	}
}

func BenchmarkPairAsMeasured(b *testing.B) {
	m := forest()
	for b.Loop() {
		if _, err := PairAsMeasured(m); err != nil {
			b.Fatal(err)
		}
	}
}
