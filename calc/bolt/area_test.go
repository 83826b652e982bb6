package bolt

import (
	"errors"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"
)

func TestStressAreaPublished(t *testing.T) {
	const source = "ISO 898-1:2013, tables 4 to 7 (from memory)"
	var rows []published.Row
	for _, c := range []struct {
		name     string
		d, pitch float64
		printed  string // mm²
	}{
		{"M5", 5, 0.8, "14.2"},
		{"M8", 8, 1.25, "36.6"},
		{"M10", 10, 1.5, "58.0"},
		{"M12", 12, 1.75, "84.3"},
		{"M16", 16, 2, "157"},
		{"M10x1.25", 10, 1.25, "61.2"},
		{"M12x1.5", 12, 1.5, "88.1"},
		{"M16x1.5", 16, 1.5, "167"},
	} {
		area, err := StressArea(c.d*1e-3, c.pitch*1e-3)
		if err != nil {
			t.Fatal(err)
		}
		rows = append(rows, published.Row{Name: c.name, Got: area * 1e6, Printed: c.printed, Source: source})
	}
	published.Check(t, rows)
}

func TestStressAreaRefusesAPitchThatLeavesNoCore(t *testing.T) {
	var r *check.RangeError
	if _, err := StressArea(0.012, 0.006); !errors.As(err, &r) || r.Param != "pitch" {
		t.Errorf("got %v, want a range error on pitch", err)
	}
}
