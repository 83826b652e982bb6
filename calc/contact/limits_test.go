package contact

import (
	"errors"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"
)

func TestPadMaterialLimitsPublished(t *testing.T) {
	const (
		shigley = "Shigley's Mechanical Engineering Design, 8th ed., table 12-8 (from memory)"
		exact   = shigley + ", converted without rounding"
		mott    = "Mott, Machine Elements in Mechanical Design, table 16-1"
		mottWhy = "the book converts with 3.5e-5 MPa·m/s for 1 psi·ft/min, exact 3.5025e-5"
	)
	limits := func(m PadMaterial) PadLimits {
		l, err := PadMaterialLimits(m)
		if err != nil {
			t.Fatal(err)
		}
		return l
	}
	cast, bronze, iron := limits(CastBronze), limits(PorousBronze), limits(PorousIron)
	published.Check(t, []published.Row{
		{Name: "cast bronze p, MPa", Got: cast.Pressure / 1e6, Printed: "31.0264", Source: exact},
		{Name: "cast bronze v, m/s", Got: cast.Speed, Printed: "7.62", Source: exact},
		{Name: "cast bronze pv, MPa·m/s", Got: cast.PressureVelocity / 1e6, Printed: "1.75127", Source: exact},
		{Name: "cast bronze p, MPa", Got: cast.Pressure / 1e6, Printed: "31", Source: shigley},
		{Name: "cast bronze v, m/s", Got: cast.Speed, Printed: "7.6", Source: shigley},
		{Name: "cast bronze pv, MPa·m/s", Got: cast.PressureVelocity / 1e6, Printed: "1.75", Source: shigley},
		{Name: "porous bronze p, psi", Got: bronze.Pressure / psi, Printed: "4500", Source: shigley},
		{Name: "porous bronze v, ft/min", Got: bronze.Speed / footPerMinute, Printed: "1500", Source: shigley},
		{Name: "porous bronze pv, MPa·m/s", Got: bronze.PressureVelocity / 1e6, Printed: "1.750", Source: mott, Within: 0.001, Why: mottWhy},
		{Name: "porous iron p, psi", Got: iron.Pressure / psi, Printed: "8000", Source: shigley},
		{Name: "porous iron v, ft/min", Got: iron.Speed / footPerMinute, Printed: "800", Source: shigley},
		{Name: "porous iron pv, psi·ft/min", Got: iron.PressureVelocity / psiFoot, Printed: "50000", Source: shigley},
		{Name: "manganese bronze pv, MPa·m/s", Got: limits(ManganeseBronze).PressureVelocity / 1e6, Printed: "5.250", Source: mott, Within: 0.001, Why: mottWhy},
		{Name: "aluminium bronze pv, MPa·m/s", Got: limits(AluminiumBronze).PressureVelocity / 1e6, Printed: "4.375", Source: mott, Within: 0.001, Why: mottWhy},
		{Name: "leaded tin bronze pv, MPa·m/s", Got: limits(LeadedTinBronze).PressureVelocity / 1e6, Printed: "2.625", Source: mott, Within: 0.001, Why: mottWhy},
	})
}

// Pressure, speed and their product each count alone: a pad may be within two
// of them and past the third.
func TestPadUseJudgesEachLimitAlone(t *testing.T) {
	for _, c := range []struct {
		pressure, speed float64
		worst           string
	}{
		{40e6, 0.001, "pressure"},
		{1e3, 9, "speed"},
		{10e6, 3, "pv"},
	} {
		r, err := PadUse(PadUseParams{CastBronze, c.pressure, c.speed})
		if err != nil {
			t.Fatal(err)
		}
		if r.Worst != c.worst || r.WorstShare <= 1 {
			t.Errorf("%g Pa at %g m/s: worst %s at %g, want %s above 1", c.pressure, c.speed, r.Worst, r.WorstShare, c.worst)
		}
	}
	solid, err := PadUse(PadUseParams{AluminiumBronze, 10e6, 0.3})
	if err != nil || solid.PressureShare != 0 || solid.SpeedShare != 0 || solid.Worst != "pv" {
		t.Errorf("a bronze with pv only: got %+v, %v", solid, err)
	}
}

func TestUnknownPadMaterialIsRefused(t *testing.T) {
	var r *check.RangeError
	if _, err := PadMaterialLimits("butter"); !errors.As(err, &r) || r.Param != "material" {
		t.Errorf("got %v, want a range error on material", err)
	}
	if _, err := PadUse(PadUseParams{"", 1, 1}); !errors.As(err, &r) {
		t.Errorf("got %v, want a range error", err)
	}
}
