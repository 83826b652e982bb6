package weldplan

import (
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"axlewright/internal/published"
)

func TestVentsStayOpenUntilLast(t *testing.T) {
	j := &Job{Cavities: []Cavity{
		{Name: "a", Vent: &Vent{Hole: length(3.5), AtTop: true}},
		{Name: "b", Vent: &Vent{Unwelded: length(7), Run: "r"}, Backfill: true},
		{Name: "c", Vent: &Vent{Hole: length(8), AtTop: true}},
		{Name: "d"}, // no vent: a stop, not a plan
	}}
	plans := j.ventsOf()
	if len(plans) != 3 {
		t.Fatalf("%d plans", len(plans))
	}
	for _, p := range plans {
		if !strings.Contains(p.Last, "Open until every") || p.Why == "" {
			t.Errorf("%s: %q", p.Cavity, p.Last)
		}
	}
	if len(plans[0].Notes) != 0 {
		t.Errorf("a usual vent has notes: %v", plans[0].Notes)
	}
	if len(plans[1].Notes) != 1 || !strings.Contains(plans[1].Notes[0], "top") || !strings.Contains(plans[1].Last, "never welded over") {
		t.Errorf("not at the top, filled: %+v", plans[1])
	}
	if len(plans[2].Notes) != 1 || !strings.Contains(plans[2].Notes[0], "usual") {
		t.Errorf("a hole of 8 mm: %+v", plans[2])
	}
}

func TestBackfillByTheCavity(t *testing.T) {
	var area Area
	area.Value, area.Origin = 40e-4, "measured"
	j := &Job{Cavities: []Cavity{{Name: "a", Area: area, Depth: length(60), Backfill: true, Vent: &Vent{Hole: length(3)}}, {Name: "b"}}}
	fills := j.backfillsOf()
	if len(fills) != 1 {
		t.Fatalf("%d fills", len(fills))
	}
	f := fills[0]
	published.Check(t, []published.Row{
		{Name: "volume, cm³", Got: f.Volume * 1e6, Printed: "240", Source: "by hand: 40 cm² · 6 cm"},
		{Name: "least mass, g", Got: f.Mass.Low * 1e3, Printed: "384", Source: "trade custom: 1.6 g/cm³"},
		{Name: "most mass, g", Got: f.Mass.High * 1e3, Printed: "576", Source: "trade custom: 2.4 g/cm³"},
		{Name: "lifts of 25 mm", Got: float64(f.Lifts), Printed: "3", Source: "trade custom: lifts of 20 to 25 mm"},
		{Name: "pots of 200 g", Got: float64(f.Pots), Printed: "3", Source: "trade custom: 200 g at once"},
	})
	for _, word := range []string{"never structure", "71 °C"} {
		if !strings.Contains(f.Limit, word) {
			t.Errorf("%q is not in %q", word, f.Limit)
		}
	}
}

func TestTacksHoldEveryRun(t *testing.T) {
	m := modelOf(t, manyRuns(t, 9))
	names := make([]string, len(m.runs))
	for i := range names {
		names[i] = string(rune('a' + i))
	}
	count := map[string]int{}
	lastPlate := -1
	for _, tack := range tacksOf(m, names) {
		count[tack.Run]++
		run := int(tack.Run[0] - 'a')
		at := vecOf(tack.At)
		l := m.runs[run].line
		off := 1.0
		for i := range 1001 {
			off = min(off, r3.Norm(r3.Sub(l.at(float64(i)/1000), at)))
		}
		if off > 1e-4 {
			t.Errorf("a tack of %s lies %g m off it", tack.Run, off)
		}
		if m.runs[run].plate < lastPlate {
			t.Error("back to a plate that was done")
		}
		lastPlate = m.runs[run].plate
	}
	for i, n := range names {
		want := m.runs[i].line.length / tackPitch
		if float64(count[n]) < want-1 || float64(count[n]) > want+1.5 || count[n] == 0 {
			t.Errorf("%d tacks on %g m", count[n], m.runs[i].line.length)
		}
	}
}

func TestBackstepsCoverTheRunBackwards(t *testing.T) {
	l := straight(0, 0, 0.1, 0)
	for _, reversed := range []bool{false, true} {
		list := backsteps(l, 4, reversed)
		way := 1.0
		start := 0.0
		if reversed {
			way, start = -1, 0.1
		}
		for i, p := range list {
			if want := start + way*0.025*float64(i); abs(p.To[0]-want) > 1e-12 || abs(p.From[0]-want-way*0.025) > 1e-12 {
				t.Errorf("reversed %v, bead %d from %g to %g", reversed, i, p.From[0], p.To[0])
			}
		}
	}
	if one := backsteps(l, 1, false)[0]; one.From[0] != 0 || one.To[0] != 0.1 {
		t.Errorf("a single bead goes as drawn: %+v", one)
	}
}
