package fit

import (
	"math"
	"testing"

	"axlewright/internal/published"
)

func TestGapGeometryPublished(t *testing.T) {
	const bronze, iron = 18e-6, 11e-6 // 1/K, usual handbook figures
	closing := must(ThermalClosing(ThermalGapParams{30 * mm, bronze, 80, 30 * mm, iron, 80}))
	published.Check(t, []published.Row{
		{Name: "30 mm of bronze against iron, 80 K, mm", Got: closing / mm, Printed: "0.017", Source: "common practice, no source; worked out with 18 and 11 µm/(m·K)"},
		{Name: "0.05 mm over 140 mm, minutes of arc", Got: must(AngleOverLength(0.05*mm, 140*mm)) * 180 * 60 / math.Pi, Printed: "1.23", Source: "common practice, no source; geometry"},
	})
}

func TestThermalClosingSigns(t *testing.T) {
	same := ThermalGapParams{30 * mm, 11e-6, 80, 30 * mm, 11e-6, 80}
	if got := must(ThermalClosing(same)); got != 0 {
		t.Errorf("one metal, one warmth: %g", got)
	}
	same.PartWarming = 20 // body hotter: the gap opens
	if got := must(ThermalClosing(same)); got >= 0 {
		t.Errorf("hotter body: %g", got)
	}
}

func TestAngleOverLengthIsOddAndSmall(t *testing.T) {
	a, b := must(AngleOverLength(0.1*mm, 100*mm)), must(AngleOverLength(-0.1*mm, 100*mm))
	if a != -b || !near(a, 1e-3, 1e-6) {
		t.Errorf("%g and %g", a, b)
	}
}

func TestGapRefuses(t *testing.T) {
	_, err := ThermalClosing(ThermalGapParams{PartLength: 1, BodyExpansion: 1e-6})
	refuses(t, "PartExpansion", err)
	_, err = AngleOverLength(1, 0)
	refuses(t, "length", err)
}
