package traction

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"
)

// tradeGravity is what the trade multiplies by.
const tradeGravity = 9.81

func radiusOf(t *testing.T, diameter float64) float64 {
	t.Helper()
	r, err := LoadedRadius(diameter)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func tyre(t *testing.T, width, aspect, rim float64) float64 {
	t.Helper()
	d, err := TyreDiameter(TyreParams{width / 1000, aspect / 100, rim * 0.0254})
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestTyrePublished(t *testing.T) {
	const source = "tyre size arithmetic and 0.965 of the radius under load, common practice, no source"
	published.Check(t, []published.Row{
		{Name: "235/85 R16, mm", Got: tyre(t, 235, 85, 16) * 1e3, Printed: "806", Source: source},
		{Name: "its loaded radius, mm", Got: radiusOf(t, tyre(t, 235, 85, 16)) * 1e3, Printed: "389", Source: source},
	})
	var r *check.RangeError
	if _, err := TyreDiameter(TyreParams{0.235, 85, 0.4064}); !errors.As(err, &r) || r.Param != "AspectRatio" {
		t.Errorf("85 for 0.85: got %v, want a range error on AspectRatio", err)
	}
}

// Enquiries of the kind a workshop gets: first gear, low range, all torque to
// one axle, 0.9 efficiency.
func TestEnquiriesPublished(t *testing.T) {
	const source = "worked enquiries of the trade, common practice, no source"
	const standard = 2674 // N·m: 1100 kg, 0.7, 354 mm
	old := 0.808          // 7.50 R16 by the tape: its size does not give the height of the wall
	for _, c := range []struct {
		name                       string
		engine, gear, low, final   float64
		diameter, mass, friction   float64
		engineTorque, grip, index_ string
	}{
		{"hill farm", 190, 3.6, 3.3, 3.54, tyre(t, 235, 85, 16), 1450, 0.7, "7191", "3872", "1.45"},
		{"overland", 360, 3.7, 3.2, 3.54, tyre(t, 255, 85, 16), 1900, 0.8, "13580", "6043", "2.26"},
		{"restorer", 140, 3.0, 2.9, 4.7, old, 1100, 0.7, "5152", "2945", "1.10"},
		{"expeditions", 330, 3.9, 3.2, 4.11, tyre(t, 255, 85, 16), 2100, 0.8, "15234", "6679", "2.50"},
		{"quarry", 330, 4.1, 3.3, 4.11, tyre(t, 285, 75, 16), 1900, 0.9, "16516", "6750", "2.52"},
	} {
		engine, err := EngineLimitedTorque(DrivelineParams{
			EngineTorque: c.engine, Gearbox: c.gear, Transfer: c.low, Final: c.final,
			Efficiency: 0.9, Converter: 1, Shock: 1, AxleShare: 1,
		})
		if err != nil {
			t.Fatal(err)
		}
		grip, err := GripLimitedTorque(c.friction, c.mass*tradeGravity, radiusOf(t, c.diameter))
		if err != nil {
			t.Fatal(err)
		}
		governing, err := GoverningTorque(GoverningParams{engine, grip})
		if err != nil || governing.Governs != Grip {
			t.Errorf("%s: governs %q, %v; want grip", c.name, governing.Governs, err)
		}
		index, err := DemandIndex(IndexParams{governing.Torque, standard})
		if err != nil {
			t.Fatal(err)
		}
		published.Check(t, []published.Row{
			{Name: c.name + ": engine, N·m", Got: engine, Printed: c.engineTorque, Source: source},
			{Name: c.name + ": grip, N·m", Got: grip, Printed: c.grip, Source: source},
			{Name: c.name + ": index", Got: index, Printed: c.index_, Source: source},
		})
	}
	base, err := GripLimitedTorque(0.7, 1100*tradeGravity, 0.354)
	if err != nil {
		t.Fatal(err)
	}
	given, _ := GripLimitedTorque(0.7, 1450*tradeGravity, radiusOf(t, tyre(t, 235, 85, 16)))
	published.Check(t, []published.Row{
		{Name: "the standard vehicle of the index, N·m", Got: base, Printed: "2674", Source: source},
		{Name: "1450 kg, 0.7, 235/85 R16, N·m", Got: given, Printed: "3872", Source: source},
	})
}

func TestEngineLimitedTorquePublished(t *testing.T) {
	p := DrivelineParams{EngineTorque: 220, Gearbox: 3.5, Transfer: 1, Final: 4.1, Efficiency: 0.9, Converter: 1, Shock: 1, AxleShare: 1}
	torque, err := EngineLimitedTorque(p)
	if err != nil {
		t.Fatal(err)
	}
	const source = "derived: 220 × 3.5 × 4.1 × 0.9, and that over 0.31 m"
	published.Check(t, []published.Row{
		{Name: "torque, N·m", Got: torque, Printed: "2841.3", Source: source},
		{Name: "force at the tyre, N", Got: torque / 0.31, Printed: "9165.48", Source: source},
	})
	p.Shock, p.Converter, p.AxleShare = 2, 1.8, 0.5
	shocked, _ := EngineLimitedTorque(p)
	if math.Abs(shocked/torque-1.8) > 1e-12 {
		t.Errorf("twice for shock, 1.8 for the converter, half the share: × %g, want 1.8", shocked/torque)
	}
	p.Shock = 0.5
	var r *check.RangeError
	if _, err := EngineLimitedTorque(p); !errors.As(err, &r) || r.Param != "Shock" {
		t.Errorf("a shock that eases: got %v, want a range error on Shock", err)
	}
}

func TestGoverningTorqueIsTheLower(t *testing.T) {
	for _, c := range []struct {
		engine, grip float64
		governs      Limit
	}{{100, 200, Engine}, {200, 100, Grip}} {
		r, err := GoverningTorque(GoverningParams{c.engine, c.grip})
		if err != nil || r.Torque != 100 || r.Governs != c.governs {
			t.Errorf("%+v: got %+v, %v", c, r, err)
		}
	}
	var r *check.RangeError
	if _, err := DemandIndex(IndexParams{100, 0}); !errors.As(err, &r) || r.Param != "Standard" {
		t.Errorf("no standard vehicle: got %v", err)
	}
}

func TestTorqueFromPowerGivesThePowerBack(t *testing.T) {
	torque, err := TorqueFromPower(PowerParams{Power: 60e3, WheelSpeed: 40})
	if err != nil || math.Abs(torque*40-60e3) > 1e-9 {
		t.Errorf("got %g N·m, %v", torque, err)
	}
	var r *check.RangeError
	if _, err := TorqueFromPower(PowerParams{Power: 60e3}); !errors.As(err, &r) {
		t.Errorf("wheels that stand: got %v", err)
	}
}
