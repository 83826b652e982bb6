package bolt

import (
	"testing"

	"axlewright/internal/published"

	"pgregory.net/rapid"
)

func TestThreeQuarterInchJointPublished(t *testing.T) {
	const source = "Shigley's Mechanical Engineering Design, 9th ed., ex. 8-3: 3/4-16 UNF grade 5, 25 kip preload, 6 kip load, k_b 6.50, k_m 13.8 Mlbf/in (from memory)"
	area := 0.373 * inch * inch // as tabled in the book
	c := must(LoadFactor(LoadFactorParams{1 / (6.50e6 * lbf / inch), 1 / (13.8e6 * lbf / inch), 1}))
	force := must(BoltForce(JointLoadParams{25e3 * lbf, c, 6e3 * lbf}))
	published.Check(t, []published.Row{
		{Name: "preload stress, kpsi", Got: 25e3 * lbf / area / kpsi, Printed: "67.02", Source: source},
		{Name: "load factor", Got: c, Printed: "0.320", Source: source},
		{Name: "stress under load, kpsi", Got: force / area / kpsi, Printed: "72.17", Source: source},
	})
}

func TestSlipAndSeparationPublished(t *testing.T) {
	const source = "derived: F_K = F_V − (1 − Φ)·F_A and F_Q = µ·Σ F_K of VDI 2230-1, four M10 10.9 at 30 kN, µ 0.14, 12 kN across, 20 kN along each, Φ 0.25"
	clamp := must(ResidualClamp(JointLoadParams{30 * kN, 0.25, 20 * kN}))
	holds := must(SlipCapacity(4*clamp, 0.14, 1))
	published.Check(t, []published.Row{
		{Name: "slip capacity, kN", Got: holds / kN, Printed: "8.4", Source: source},
		{Name: "slip margin", Got: holds / (12 * kN), Printed: "0.7", Source: source},
		{Name: "separation margin", Got: must(OpeningLoad(30*kN, 0.25)) / (20 * kN), Printed: "2", Source: source},
	})
}

func TestJointKeepsBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := JointLoadParams{
			Preload:    rapid.Float64Range(1, 100).Draw(t, "F_V") * kN,
			LoadFactor: rapid.Float64Range(0, 0.95).Draw(t, "Φ"),
		}
		opens := must(OpeningLoad(p.Preload, p.LoadFactor))
		p.Load = opens * rapid.Float64Range(0, 0.999).Draw(t, "share")
		force, clamp := must(BoltForce(p)), must(ResidualClamp(p))
		if !near(force, clamp+p.Load, 1e-9) {
			t.Errorf("bolt %g, clamp %g, load %g", force, clamp, p.Load)
		}
		if clamp < -1e-9 {
			t.Errorf("open at %g of the opening load", p.Load/opens)
		}
		p.Load = opens * 1.01
		if must(ResidualClamp(p)) >= 0 {
			t.Error("still closed past the opening load")
		}
		_, err := BoltForce(p)
		if err == nil {
			t.Error("the bolt force of an open joint must be refused")
		}
	})
}

func TestLoadFactorLimits(t *testing.T) {
	stiff := must(LoadFactor(LoadFactorParams{1e-9, 1e-15, 1}))
	soft := must(LoadFactor(LoadFactorParams{1e-15, 1e-9, 1}))
	if stiff > 1e-5 || soft < 1-1e-5 {
		t.Errorf("rigid parts %g, rigid bolt %g", stiff, soft)
	}
	if must(LoadFactor(LoadFactorParams{1e-9, 1e-9, 0})) != 0 {
		t.Error("a load at the joint face must not reach the bolt")
	}
}

func TestHeadPressureCarriesTheForce(t *testing.T) {
	p := must(HeadPressure(50*kN, 16.63*mm, 13.5*mm))
	published.Check(t, []published.Row{
		{Name: "50 kN under an M12 hexagon head, MPa", Got: p / mpa, Printed: "675.05", Source: "derived: 50 000/(π/4·(16.63² − 13.5²))"},
	})
}

func TestJointRefuses(t *testing.T) {
	_, err := LoadFactor(LoadFactorParams{1, 1, 1.1})
	refuses(t, "Introduction", err)
	_, err = ResidualClamp(JointLoadParams{-1, 0.2, 0})
	refuses(t, "Preload", err)
	_, err = OpeningLoad(1, 1)
	refuses(t, "loadFactor", err)
	_, err = OverloadFactor(OverloadParams{600 * mpa, 84.3e-6, 60 * kN, 0.3, 1})
	refuses(t, "Preload", err)
	_, err = HeadPressure(1, 13*mm, 13.5*mm)
	refuses(t, "hole", err)
}
