package gear

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"

	"pgregory.net/rapid"
)

func TestHypoidPitchConesDerived(t *testing.T) {
	const source = "derived from vectors in three dimensions, apart from this code; the pitch-plane relations of ISO 23509, annex A"
	c := hypoidExample(t)
	alpha, err := LimitPressureAngle(c)
	if err != nil {
		t.Fatal(err)
	}
	rho, err := LimitCurvature(c)
	if err != nil {
		t.Fatal(err)
	}
	published.Check(t, []published.Row{
		{Name: "r_m2, mm", Got: c.WheelMeanRadius * 1e3, Printed: "85.7342", Source: source},
		{Name: "ζ, °", Got: c.OffsetAngle / degree, Printed: "20.5356", Source: source},
		{Name: "δ1, °", Got: c.PinionPitchAngle / degree, Printed: "16.9236", Source: source},
		{Name: "β_m2, °", Got: c.WheelSpiral / degree, Printed: "29.4644", Source: source},
		{Name: "r_m1, mm", Got: c.PinionMeanRadius * 1e3, Printed: "29.7763", Source: source},
		{Name: "R_m1, mm", Got: c.PinionConeDistance * 1e3, Printed: "102.291", Source: source},
		{Name: "R_m2, mm", Got: c.WheelConeDistance * 1e3, Printed: "90.1462", Source: source},
		{Name: "m_mn, mm", Got: c.NormalModule * 1e3, Printed: "3.82797", Source: source},
		{Name: "α_lim, °", Got: alpha / degree, Printed: "-6.29116", Source: source},
		{Name: "ρ_lim, mm", Got: rho * 1e3, Printed: "91.2103", Source: source},
	})
}

func TestMatchedCutterFindsTheSamePair(t *testing.T) {
	want := hypoidExample(t)
	rho, err := LimitCurvature(want)
	if err != nil {
		t.Fatal(err)
	}
	got, err := HypoidPitchCones(HypoidConesParams{PinionTeeth: 10, WheelTeeth: 39, Offset: 0.032, PinionSpiral: 50 * degree,
		WheelPitchDiameter: 0.200, FaceWidth: 0.030, Condition: MatchedCutter, CutterRadius: rho})
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(got.WheelPitchAngle-want.WheelPitchAngle) > 1e-9 {
		t.Errorf("wheel pitch angle %.9f°, want %.9f°", got.WheelPitchAngle/degree, want.WheelPitchAngle/degree)
	}
	if back, err := LimitCurvature(got); err != nil || math.Abs(back/rho-1) > 1e-9 {
		t.Errorf("limit curvature %g, %v; want the cutter radius %g", back, err, rho)
	}
}

// With the offset taken away the hypoid pair becomes the spiral bevel pair.
func TestZeroOffsetIsTheSpiralBevelPair(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		z1 := rapid.IntRange(5, 20).Draw(rt, "z1")
		z2 := rapid.IntRange(z1, 6*z1).Draw(rt, "z2")
		spiral := rapid.Float64Range(0, 50).Draw(rt, "spiral") * degree
		hypoid, err := HypoidPitchCones(HypoidConesParams{PinionTeeth: z1, WheelTeeth: z2, PinionSpiral: spiral, WheelMeanRadius: 0.1, Condition: ApexAtCrossing})
		if err != nil {
			rt.Fatal(err)
		}
		bevel, err := BevelPitchCones(z1, z2, spiral, 0.1)
		if err != nil {
			rt.Fatal(err)
		}
		for _, pair := range [][2]float64{
			{hypoid.PinionPitchAngle, bevel.PinionPitchAngle}, {hypoid.WheelPitchAngle, bevel.WheelPitchAngle},
			{hypoid.WheelSpiral, bevel.WheelSpiral}, {hypoid.PinionMeanRadius, bevel.PinionMeanRadius},
			{hypoid.PinionConeDistance, bevel.PinionConeDistance}, {hypoid.WheelConeDistance, bevel.WheelConeDistance},
			{hypoid.PinionApexX, 0}, {hypoid.WheelApexY, 0}, {bevel.PinionConeDistance, bevel.WheelConeDistance},
		} {
			if math.Abs(pair[0]-pair[1]) > 1e-12 {
				rt.Errorf("%+v against %+v", hypoid, bevel)
			}
		}
		if alpha, err := LimitPressureAngle(bevel); err != nil || math.Abs(alpha) > 1e-12 {
			rt.Errorf("limit pressure angle %g, %v; want zero", alpha, err)
		}
	})
}

func TestApexAtCrossingPutsTheApexThere(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		c := drawPair(rt).Cones
		if math.Abs(c.WheelApexY) > 1e-12 {
			rt.Errorf("apex at y = %g", c.WheelApexY)
		}
		if err := c.valid("test"); err != nil {
			rt.Error(err)
		}
		if c.Offset*(c.PinionSpiral-c.WheelSpiral) < 0 {
			rt.Errorf("offset %g with spiral angles %g and %g", c.Offset, c.PinionSpiral, c.WheelSpiral)
		}
	})
}

// An offset makes the pinion bigger than the spiral bevel pinion of the same ratio: what hypoids are for.
func TestOffsetEnlargesThePinion(t *testing.T) {
	last := 0.0
	for _, offset := range []float64{-0.01, 0, 0.01, 0.02, 0.03} {
		c, err := HypoidPitchCones(HypoidConesParams{PinionTeeth: 10, WheelTeeth: 41, Offset: offset, PinionSpiral: 45 * degree, WheelMeanRadius: 0.093, Condition: ApexAtCrossing})
		if err != nil {
			t.Fatal(err)
		}
		if c.PinionMeanRadius <= last {
			t.Errorf("offset %g: pinion radius %g, not above %g", offset, c.PinionMeanRadius, last)
		}
		last = c.PinionMeanRadius
	}
}

func TestHypoidPitchConesRefuses(t *testing.T) {
	good := HypoidConesParams{PinionTeeth: 10, WheelTeeth: 39, Offset: 0.032, PinionSpiral: 50 * degree,
		WheelPitchDiameter: 0.200, FaceWidth: 0.030, Condition: GivenWheelPitchAngle, WheelPitchAngle: 72 * degree}
	for name, c := range map[string]struct {
		param  string
		change func(*HypoidConesParams)
	}{
		"two teeth":             {"PinionTeeth", func(p *HypoidConesParams) { p.PinionTeeth = 2 }},
		"ratio below one":       {"WheelTeeth", func(p *HypoidConesParams) { p.WheelTeeth = 9 }},
		"offset past the wheel": {"Offset", func(p *HypoidConesParams) { p.Offset = 0.1 }},
		"no offset":             {"Offset", func(p *HypoidConesParams) { p.Offset = 0 }},
		"no condition":          {"Condition", func(p *HypoidConesParams) { p.Condition = "" }},
		"no diameter":           {"WheelPitchDiameter", func(p *HypoidConesParams) { p.WheelPitchDiameter = 0 }},
		"both sizes":            {"WheelPitchDiameter", func(p *HypoidConesParams) { p.WheelMeanRadius = 0.1 }},
		"no face":               {"FaceWidth", func(p *HypoidConesParams) { p.FaceWidth = 0 }},
		"degrees":               {"PinionSpiral", func(p *HypoidConesParams) { p.PinionSpiral = 50 }},
		"no wheel angle":        {"WheelPitchAngle", func(p *HypoidConesParams) { p.WheelPitchAngle = 0 }},
		"no cutter":             {"CutterRadius", func(p *HypoidConesParams) { p.Condition = MatchedCutter }},
		"tiny cutter":           {"CutterRadius", func(p *HypoidConesParams) { p.Condition, p.CutterRadius = MatchedCutter, 0.001 }},
		"not a number":          {"Offset", func(p *HypoidConesParams) { p.Offset = math.NaN() }},
	} {
		p := good
		c.change(&p)
		var r *check.RangeError
		if _, err := HypoidPitchCones(p); !errors.As(err, &r) || r.Param != c.param {
			t.Errorf("%s: got %v", name, err)
		}
	}
	var r *check.RangeError
	if _, err := BevelPitchCones(10, 9, 0.6, 0.1); !errors.As(err, &r) || r.Param != "z2" {
		t.Errorf("got %v", err)
	}
	bevel, err := BevelPitchCones(10, 40, 0.6, 0.1)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := LimitCurvature(bevel); !errors.As(err, &r) {
		t.Errorf("limit curvature of a spiral bevel pair: got %v", err)
	}
}

func BenchmarkHypoidPitchCones(b *testing.B) {
	p := HypoidConesParams{PinionTeeth: 10, WheelTeeth: 39, Offset: 0.032, PinionSpiral: 50 * degree,
		WheelPitchDiameter: 0.200, FaceWidth: 0.030, Condition: MatchedCutter, CutterRadius: 0.0912}
	for b.Loop() {
		if _, err := HypoidPitchCones(p); err != nil {
			b.Fatal(err)
		}
	}
}
