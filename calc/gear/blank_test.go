package gear

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"
)

func bevel20by40(t testing.TB) BlankResult {
	t.Helper()
	b, err := BevelBlanks(BlankParams{PinionTeeth: 20, WheelTeeth: 40, OuterModule: 3e-3, FaceWidth: 20e-3, Form: SpiralTeeth})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestSpiralBevelBlankPublished(t *testing.T) {
	const source = "tapered-depth spiral bevel example, module 3, 20/40, in an open technical reference on gears (from memory)"
	b := bevel20by40(t)
	row := func(name string, got float64, printed string) published.Row {
		return published.Row{Name: name, Got: got, Printed: printed, Source: source}
	}
	lastDigit := func(r published.Row) published.Row {
		r.Within, r.Why = 1e-4, "one unit in the last printed digit, the source rounds its steps"
		return r
	}
	published.Check(t, []published.Row{
		row("δ1, °", b.Pinion.PitchAngle/degree, "26.565"),
		row("δ2, °", b.Wheel.PitchAngle/degree, "63.435"),
		row("R_e, mm", b.OuterConeDistance*1e3, "67.082"),
		row("h_ae1, mm", b.Pinion.Addendum*1e3, "3.4275"),
		row("h_ae2, mm", b.Wheel.Addendum*1e3, "1.6725"),
		row("h_fe1, mm", b.Pinion.Dedendum*1e3, "2.2365"),
		row("h_fe2, mm", b.Wheel.Dedendum*1e3, "3.9915"),
		row("θ_f1, °", b.Pinion.DedendumAngle/degree, "1.90952"),
		row("θ_f2, °", b.Wheel.DedendumAngle/degree, "3.40519"),
		row("δ_a1, °", b.Pinion.FaceAngle/degree, "29.9702"),
		lastDigit(row("δ_a2, °", b.Wheel.FaceAngle/degree, "65.3445")),
		row("δ_f1, °", b.Pinion.RootAngle/degree, "24.6555"),
		row("δ_f2, °", b.Wheel.RootAngle/degree, "60.0298"),
		row("d_ae1, mm", b.Pinion.OutsideDiameter*1e3, "66.1313"),
		row("d_ae2, mm", b.Wheel.OutsideDiameter*1e3, "121.496"),
		row("apex to crown 1, mm", b.Pinion.ApexToCrown*1e3, "58.4672"),
		row("apex to crown 2, mm", b.Wheel.ApexToCrown*1e3, "28.5041"),
	})
}

func TestMeanSectionDerived(t *testing.T) {
	const source = "derived: R_m = R_e − b/2, d_m = 2·R_m·sin δ, m_mn = m·(R_m/R_e)·cos β; the definitions of ISO 23509"
	b := bevel20by40(t)
	published.Check(t, []published.Row{
		{Name: "R_m, mm", Got: b.MeanConeDistance * 1e3, Printed: "57.082", Source: source},
		{Name: "d_m1, mm", Got: b.Pinion.MeanDiameter * 1e3, Printed: "51.0557", Source: source},
		{Name: "d_m2, mm", Got: b.Wheel.MeanDiameter * 1e3, Printed: "102.111", Source: source},
		{Name: "m_mn, mm", Got: b.MeanModule * math.Cos(35*degree) * 1e3, Printed: "2.09112", Source: source},
	})
}

func TestStraightBevelSizesPublished(t *testing.T) {
	const source = "Shigley, Mechanical Engineering Design, 8th ed., problem 13-5, solutions manual"
	const inch = 0.0254
	face := 2.91 * inch * 0.3
	b, err := BevelBlanks(BlankParams{PinionTeeth: 14, WheelTeeth: 32, OuterModule: inch / 6, FaceWidth: face, Form: StraightTeeth})
	if err != nil {
		t.Fatal(err)
	}
	published.Check(t, []published.Row{
		{Name: "cone distance, in", Got: b.OuterConeDistance / inch, Printed: "2.91", Source: source},
		{Name: "pinion pitch angle, °", Got: b.Pinion.PitchAngle / degree, Printed: "23.63", Source: source},
		{Name: "gear pitch angle, °", Got: b.Wheel.PitchAngle / degree, Printed: "66.37", Source: source},
		{Name: "pinion pitch diameter, in", Got: b.Pinion.PitchDiameter / inch, Printed: "2.333", Source: source},
		{Name: "gear pitch diameter, in", Got: b.Wheel.PitchDiameter / inch, Printed: "5.333", Source: source},
		{Name: "greatest face, 0.3 of the cone distance, in", Got: 0.3 * b.OuterConeDistance / inch, Printed: "0.873", Source: source},
	})
}

// The tips of one member run parallel to the roots of the other, and tips and
// roots add up.
func TestBlanksFitEachOther(t *testing.T) {
	for _, form := range []ToothForm{StraightTeeth, SpiralTeeth} {
		for z1 := 6; z1 <= 25; z1++ {
			if form == StraightTeeth && z1 < 12 {
				continue
			}
			b, err := BevelBlanks(BlankParams{PinionTeeth: z1, WheelTeeth: 3*z1 + 1, OuterModule: 5e-3, FaceWidth: 5e-3 * float64(z1) / 2.2, Form: form})
			if err != nil {
				t.Fatal(err)
			}
			near := func(what string, got, want float64) {
				if math.Abs(got-want) > 1e-12 {
					t.Errorf("%s, %d teeth: %s is %g, want %g", form, z1, what, got, want)
				}
			}
			near("face plus the mate's root angle", b.Pinion.FaceAngle+b.Wheel.RootAngle, math.Pi/2)
			near("the other way round", b.Wheel.FaceAngle+b.Pinion.RootAngle, math.Pi/2)
			near("addenda", b.Pinion.Addendum+b.Wheel.Addendum, b.WorkingDepth)
			near("tooth height", b.Pinion.Addendum+b.Pinion.Dedendum, b.WholeDepth)
			near("clearance at the toe", b.Wheel.MeanDedendum-b.Pinion.MeanAddendum, b.Wheel.Dedendum-b.Pinion.Addendum)
			// the outer tip edge lies on the face cone through the apex of that cone
			x := b.Pinion.ApexToCrown - b.Pinion.OutsideDiameter/2/math.Tan(b.Pinion.FaceAngle)
			near("inner tip edge on the same cone", b.Pinion.InsideDiameter/2/math.Tan(b.Pinion.FaceAngle)+x,
				b.Pinion.ApexToCrown-b.Pinion.FaceAlongAxis)
			if b.Pinion.Addendum <= b.Wheel.Addendum {
				t.Errorf("%s, %d teeth: the pinion should have the longer addendum", form, z1)
			}
		}
	}
}

// Outer proportions and mean proportions are two published ways to the same tooth.
func TestMeanDepthsAgreeWithTheBlank(t *testing.T) {
	for _, z := range [][2]int{{9, 37}, {10, 41}, {13, 46}, {14, 39}, {20, 40}} {
		b, err := BevelBlanks(BlankParams{PinionTeeth: z[0], WheelTeeth: z[1], OuterModule: 5e-3, FaceWidth: 30e-3, Form: SpiralTeeth})
		if err != nil {
			t.Fatal(err)
		}
		cones, err := BevelPitchCones(z[0], z[1], 35*degree, b.Wheel.MeanDiameter/2)
		cones = mustCones(t, cones, err)
		d, err := MeanToothDepths(DepthsParams{Cones: cones})
		if err != nil {
			t.Fatal(err)
		}
		for what, pair := range map[string][2]float64{
			"pinion addendum": {d.PinionAddendum, b.Pinion.MeanAddendum},
			"wheel addendum":  {d.WheelAddendum, b.Wheel.MeanAddendum},
			"pinion dedendum": {d.PinionDedendum, b.Pinion.MeanDedendum},
			"wheel dedendum":  {d.WheelDedendum, b.Wheel.MeanDedendum},
		} {
			if diff := math.Abs(pair[0]-pair[1]) / b.WholeDepth; diff > 0.05 {
				t.Errorf("%d/%d %s: %.3f and %.3f mm, apart by %.1f %% of the tooth height", z[0], z[1], what, pair[0]*1e3, pair[1]*1e3, diff*100)
			}
		}
	}
}

func TestBlanksRefuse(t *testing.T) {
	for param, p := range map[string]BlankParams{
		"Form":        {PinionTeeth: 20, WheelTeeth: 40, OuterModule: 3e-3, FaceWidth: 20e-3},
		"PinionTeeth": {PinionTeeth: 11, WheelTeeth: 40, OuterModule: 3e-3, FaceWidth: 20e-3, Form: StraightTeeth},
		"WheelTeeth":  {PinionTeeth: 20, WheelTeeth: 19, OuterModule: 3e-3, FaceWidth: 20e-3, Form: SpiralTeeth},
		"OuterModule": {PinionTeeth: 20, WheelTeeth: 40, FaceWidth: 20e-3, Form: SpiralTeeth},
		"FaceWidth":   {PinionTeeth: 20, WheelTeeth: 40, OuterModule: 3e-3, FaceWidth: 25e-3, Form: SpiralTeeth},
	} {
		var r *check.RangeError
		if _, err := BevelBlanks(p); !errors.As(err, &r) || r.Param != param {
			t.Errorf("%s: got %v", param, err)
		}
	}
}
