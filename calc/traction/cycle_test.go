package traction

import (
	_ "embed"
	"errors"
	"strconv"
	"strings"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"
)

//go:embed testdata/udds.txt
var urbanSchedule string // miles an hour

//go:embed testdata/wltc3b.txt
var worldCycle string // km/h

// secondBySecond reads a table of a speed at each second, in a unit of so many m/s.
func secondBySecond(t *testing.T, table string, unit float64) []CyclePoint {
	t.Helper()
	var points []CyclePoint
	for line := range strings.Lines(table) {
		if strings.HasPrefix(line, "#") {
			continue
		}
		for _, word := range strings.Fields(line) {
			speed, err := strconv.ParseFloat(word, 64)
			if err != nil {
				t.Fatal(err)
			}
			points = append(points, CyclePoint{float64(len(points)), speed * unit})
		}
	}
	return points
}

func cycleOf(t *testing.T, points []CyclePoint) CycleResult {
	t.Helper()
	r, err := CycleDistance(points)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestUrbanSchedulePublished(t *testing.T) {
	r := cycleOf(t, secondBySecond(t, urbanSchedule, 0.44704))
	const (
		source    = "40 CFR Part 86, Appendix I(a), urban dynamometer driving schedule: 7.45 miles, 1,369 s, 19.6 mph on average, 56.7 mph at most"
		elsewhere = "the same, added up second by second elsewhere"
		mile      = "added up from m/s with 1609.37 m to the mile"
	)
	published.Check(t, []published.Row{
		{Name: "length, miles", Got: r.Distance / 1609.344, Printed: "7.45", Source: source},
		{Name: "length by trapezium, m", Got: r.Distance, Printed: "11990.4", Source: elsewhere, Within: 2e-5, Why: mile},
		{Name: "duration, s", Got: r.Duration, Printed: "1369", Source: source},
		{Name: "mean speed, mph", Got: r.MeanSpeed / 0.44704, Printed: "19.6", Source: source},
		{Name: "mean speed, km/h", Got: r.MeanSpeed * 3.6, Printed: "31.53", Source: elsewhere},
		{Name: "top speed, mph", Got: r.TopSpeed / 0.44704, Printed: "56.7", Source: source},
		{Name: "top speed, m/s", Got: r.TopSpeed, Printed: "25.348", Source: elsewhere, Within: 4e-5, Why: mile},
	})
}

func TestWorldCyclePublished(t *testing.T) {
	points := secondBySecond(t, worldCycle, 1/3.6)
	phase := func(from, to int) float64 { return cycleOf(t, points[from:to+1]).Distance }
	whole := cycleOf(t, points)
	const source = "UN Global Technical Regulation No. 15, class 3b, its table added up second by second elsewhere"
	published.Check(t, []published.Row{
		{Name: "low, m", Got: phase(0, 589), Printed: "3094.5", Source: source},
		{Name: "medium, m", Got: phase(589, 1022), Printed: "4755.9", Source: source},
		{Name: "high, m", Got: phase(1022, 1477), Printed: "7161.7", Source: source},
		{Name: "extra high, m", Got: phase(1477, 1800), Printed: "8254.1", Source: source},
		{Name: "whole, m", Got: whole.Distance, Printed: "23266.3", Source: source},
		{Name: "duration, s", Got: whole.Duration, Printed: "1800", Source: source},
		{Name: "top speed, km/h", Got: whole.TopSpeed * 3.6, Printed: "131.3", Source: source},
	})
}

// extraUrban lists the legs of the extra-urban cycle: the speed reached, km/h,
// and the seconds it takes.
var extraUrban = [][2]float64{
	{0, 20}, {15, 5}, {15, 2}, {35, 9}, {35, 2}, {50, 8}, {50, 2}, {70, 13}, {70, 50}, {50, 8}, {50, 69},
	{70, 13}, {70, 50}, {100, 35}, {100, 30}, {120, 20}, {120, 10}, {80, 16}, {50, 8}, {0, 10}, {0, 20},
}

func TestCycleDistancePublished(t *testing.T) {
	points := []CyclePoint{{0, 0}}
	clock := 0.0
	for _, leg := range extraUrban {
		clock += leg[1]
		points = append(points, CyclePoint{clock, leg[0] / 3.6})
	}
	r := cycleOf(t, points)
	const source = "UN Regulation No. 83, extra-urban cycle (legs and length from memory; they agree)"
	published.Check(t, []published.Row{
		{Name: "length, km", Got: r.Distance / 1e3, Printed: "6.955", Source: source},
		{Name: "duration, s", Got: r.Duration, Printed: "400", Source: source},
		{Name: "mean speed, km/h", Got: r.MeanSpeed * 3.6, Printed: "62.6", Source: source},
		{Name: "top speed, km/h", Got: r.TopSpeed * 3.6, Printed: "120", Source: source},
	})
}

func TestCycleDistanceOfATrapezium(t *testing.T) {
	r := cycleOf(t, []CyclePoint{{0, 0}, {10, 20}, {40, 20}, {45, 0}, {60, 0}})
	if r.Distance != 100+600+50 || r.Duration != 60 || r.MeanSpeed != 12.5 || r.TopSpeed != 20 {
		t.Errorf("got %+v", r)
	}
	var e *check.RangeError
	if _, err := CycleDistance([]CyclePoint{{0, 0}, {0, 1}}); !errors.As(err, &e) || e.Param != "points[1].Time" {
		t.Errorf("time stands still: got %v", err)
	}
	if _, err := CycleDistance([]CyclePoint{{0, 0}, {1, -1}}); !errors.As(err, &e) {
		t.Errorf("a speed below zero: got %v", err)
	}
}
