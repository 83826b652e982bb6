package bearing

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"axlewright/internal/published"
)

func TestRollingDragPublished(t *testing.T) {
	const source = "derived: Palmgren's formulas (from memory) worked a second time outside this code"
	d, err := RollingDrag(DragParams{Load: 2 * 1.6 * 3000, MeanDiameter: 60e-3, F0: 6, F1: 0.0004})
	must(t, d, err)
	fast, err := RollingDrag(DragParams{MeanDiameter: 60e-3, F0: 6, Viscosity: 20e-6, Speed: 3000 * rpm})
	must(t, fast, err)
	published.Check(t, []published.Row{
		{Name: "M_1", Got: d.FromLoad, Printed: "0.2304", Source: source},
		{Name: "M_0 at hand speed", Got: d.FromOil, Printed: "0.020736", Source: source},
		{Name: "M", Got: d.Total, Printed: "0.251136", Source: source},
		{Name: "M_0 at 3000 1/min in 20 mm²/s", Got: fast.FromOil, Printed: "0.1986", Source: "derived: 1e-7·6·60 000^(2/3)·60³ N·mm by hand, Palmgren (from memory)"},
	})
	// the branches meet at ν·n = 2000
	at := func(n float64) float64 { return oilDrag(6, 60e-3, 20e-6*n*rpm) }
	near(t, "M_0 across the branch", at(100.001), at(99.999), 0.01)
}

func TestSpringBalancePullPublished(t *testing.T) {
	torque := 20 * 0.1129848 // 20 lbf·in
	pull, err := SpringBalancePull(torque, 32e-3)
	must(t, pull, err)
	const source = "workshop practice: 20 lbf·in of pinion drag on a 32 mm radius (conversion by hand)"
	published.Check(t, []published.Row{
		{Name: "torque", Got: torque, Printed: "2.26", Source: source},
		{Name: "pull, N", Got: pull, Printed: "70.6", Source: source},
		{Name: "pull, kgf", Got: pull / 9.80665, Printed: "7.2", Source: source},
	})
}

// pinion is an invented pair.
func pinion() TurningTorqueParams {
	return TurningTorqueParams{F0: 6, F1: 0.0004, Bearings: []PreloadedBearing{
		{MeanDiameter: 60e-3, Y: 1.6, HalfTaper: 2 * degree, RibHeight: 1.1e-3},
		{MeanDiameter: 50e-3, Y: 1.6, HalfTaper: 2 * degree, RibHeight: 0.9e-3},
	}}
}

func TestTorqueAndPreloadUndoEachOther(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := pinion()
		p.Preload = rapid.Float64Range(1, 2e4).Draw(t, "F_a")
		p.Seal = rapid.Float64Range(0, 0.6).Draw(t, "seal")
		m, err := TurningTorque(p)
		if err != nil {
			t.Fatal(err)
		}
		if !(m.Low < m.Likely && m.Likely < m.High) {
			t.Fatalf("%+v", m)
		}
		if sum := m.Rolling + m.Oil + m.Rib + p.Seal; math.Abs(sum-m.Likely) > 1e-12 {
			t.Fatalf("shares add up to %g of %g", sum, m.Likely)
		}
		f, err := PreloadFromTorque(p, m.Likely)
		if err != nil || math.Abs(f.Likely/p.Preload-1) > 1e-9 || !(f.Low < f.Likely && f.Likely < f.High) {
			t.Fatalf("preload %+v, want %g (%v)", f, p.Preload, err)
		}
		mu, err := RibFriction(p, m.High)
		if err != nil || math.Abs(mu/RibFrictionHigh-1) > 1e-6 {
			t.Fatalf("µ = %g (%v)", mu, err)
		}
		p.Friction = mu // calibrated: the spread closes
		c, err := TurningTorque(p)
		if err != nil || math.Abs(c.Likely/m.High-1) > 1e-9 || c.Low != c.High {
			t.Fatalf("calibrated %+v (%v)", c, err)
		}
	})
}

// Ribs add half to twice the rolling drag at hand speed: common practice, no source.
func TestRibShareIsThatOfCommonPractice(t *testing.T) {
	p := pinion()
	p.Preload = 5000
	m, err := TurningTorque(p)
	must(t, m, err)
	low := (m.Low - m.Oil - m.Rolling) / m.Rolling
	high := (m.High - m.Oil - m.Rolling) / m.Rolling
	if low < 0.4 || low > 0.7 || high < 1.6 || high > 2.4 {
		t.Errorf("ribs add %g to %g of the rolling drag", low, high)
	}
}

// An independent road to the rib term: one roller rolls on two cones; its end
// slides on the rib as fast as the roller turns about the cone's contact line.
// Angular velocities add up as vectors: roller against cup along the cup line,
// cone against cup along the axis.
func TestRibTermIsThePowerOfSliding(t *testing.T) {
	p, err := Proportions(sample)
	must(t, p, err)
	const omega, mu, h, fa = 10., 0.1, 1e-3, 4000.
	z, alpha := float64(sample.Rollers.Count), sample.Rollers.CupAngle
	// w along the cup line (angle α), minus omega along the axis, must lie along
	// the cone line (angle α_i): its part across that line is zero
	w := omega * math.Sin(p.ConeAngle) / math.Sin(p.ConeAngle-alpha)
	x, y := w*math.Cos(alpha)-omega, w*math.Sin(alpha)
	across := -x*math.Sin(p.ConeAngle) + y*math.Cos(p.ConeAngle)
	if math.Abs(across) > 1e-9*math.Abs(w) {
		// the roller turns the other way about the cup line
		w = -w
		x, y = w*math.Cos(alpha)-omega, w*math.Sin(alpha)
		across = -x*math.Sin(p.ConeAngle) + y*math.Cos(p.ConeAngle)
	}
	if math.Abs(across) > 1e-9*math.Abs(w) {
		t.Fatalf("roller does not roll on the cone: %g", across)
	}
	slide := math.Hypot(x, y) * h
	rib := 2 * math.Sin(p.HalfTaper) * fa / (z * math.Sin(alpha))
	want := z * mu * rib * slide / omega
	params := TurningTorqueParams{F1: 0.0004, Preload: fa, Friction: mu, Bearings: []PreloadedBearing{
		{MeanDiameter: 57.5e-3, Y: 1.5, HalfTaper: p.HalfTaper, RibHeight: h},
	}}
	m, err := TurningTorque(params)
	near(t, "rib torque", must(t, m, err).Rib, want, 1e-9)
}

func TestTurningRefuses(t *testing.T) {
	p := pinion()
	if _, err := PreloadFromTorque(p, 0.001); err == nil {
		t.Error("a torque below the oil drag is accepted")
	}
	p.Bearings = nil
	if _, err := TurningTorque(p); err == nil {
		t.Error("no bearing is accepted")
	}
	p = pinion()
	p.Preload = -1
	if _, err := TurningTorque(p); err == nil {
		t.Error("a negative preload is accepted")
	}
	if _, err := RollingDrag(DragParams{Load: math.NaN(), MeanDiameter: 1}); err == nil {
		t.Error("NaN is accepted")
	}
}
