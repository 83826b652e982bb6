package bolt

import (
	"math"
	"testing"

	"axlewright/internal/published"

	"pgregory.net/rapid"
)

func TestLeastPreloadPublished(t *testing.T) {
	published.Check(t, []published.Row{
		{Name: "41.9 kN at α_A 1.8, kN", Got: must(LeastPreload(41.9*kN, 1.8)) / kN, Printed: "23.3",
			Source: "worked example on reference values for preload and torque, fastener supplier's guide after VDI 2230 (M12x40, torque wrench)"},
	})
}

// The spread of the preload is printed beside the factor; the one must give the other.
func TestSpreadOfEachMethodPublished(t *testing.T) {
	const source = "VDI 2230, 1986 edition, guide values of tightening factors, as printed in a fastener supplier's guide"
	var rows []published.Row
	for _, c := range []struct {
		method    Method
		low, high string // ± %
	}{
		{ByHydraulics, "9", "23"},
		{ByTorqueMeasured, "17", "23"},
		{ByPowerDriver, "26", "43"},
		{ByImpact, "43", "60"},
	} {
		s := must(TighteningScatter(c.method))
		rows = append(rows,
			published.Row{Name: string(c.method) + " careful, ± %", Got: must(PreloadSpread(s.Low)) * 100, Printed: c.low, Source: source},
			published.Row{Name: string(c.method) + " rough, ± %", Got: must(PreloadSpread(s.High)) * 100, Printed: c.high, Source: source})
	}
	published.Check(t, rows)
}

func TestScatterGrowsFromSoundToImpact(t *testing.T) {
	last := 0.0
	for _, m := range []Method{ByUltrasonics, ByYield, ByTorqueMeasured, ByTorqueEstimated, ByPowerDriver, ByImpact} {
		s := must(TighteningScatter(m))
		if s.Low <= last || s.High <= s.Low {
			t.Errorf("%s: %+v after %g", m, s, last)
		}
		last = s.Low
	}
	_, err := TighteningScatter("feel")
	refuses(t, "method", err)
}

// What the joint needs is what is left of the needed preload in the worst case.
func TestNeededPreloadIsJustEnough(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := NeededPreloadParams{
			Factor:     rapid.Float64Range(1, 4).Draw(t, "α"),
			Clamp:      rapid.Float64Range(0, 50).Draw(t, "K") * kN,
			LoadFactor: rapid.Float64Range(0, 0.9).Draw(t, "Φ"),
			Load:       rapid.Float64Range(0, 30).Draw(t, "A") * kN,
			Embedding:  rapid.Float64Range(0, 5).Draw(t, "Z") * kN,
		}
		const spare = 1e-6 // N, so that rounding leaves no negative preload
		least := must(LeastPreload(must(NeededPreload(p)), p.Factor)) - p.Embedding + spare
		left := must(ResidualClamp(JointLoadParams{least, p.LoadFactor, p.Load}))
		if math.Abs(left-p.Clamp) > 2*spare {
			t.Errorf("left %g, needed %g", left, p.Clamp)
		}
	})
}

func TestScatterRefuses(t *testing.T) {
	_, err := PreloadSpread(0.9)
	refuses(t, "factor", err)
	_, err = LeastPreload(1, 0.5)
	refuses(t, "factor", err)
	_, err = NeededPreload(NeededPreloadParams{Factor: 1.6, LoadFactor: 1.2})
	refuses(t, "LoadFactor", err)
}
