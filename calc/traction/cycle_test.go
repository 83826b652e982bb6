package traction

import (
	_ "embed"
	"strconv"
	"strings"
	"testing"

	"axlewright/internal/published"
)

//go:embed testdata/udds.txt
var urbanSchedule string

func TestUrbanSchedulePublished(t *testing.T) {
	var points []CyclePoint
	for line := range strings.Lines(urbanSchedule) {
		if strings.HasPrefix(line, "#") {
			continue
		}
		for _, word := range strings.Fields(line) {
			mph, err := strconv.ParseFloat(word, 64)
			if err != nil {
				t.Fatal(err)
			}
			points = append(points, CyclePoint{float64(len(points)), mph * 0.44704})
		}
	}
	r, err := CycleDistance(points)
	if err != nil {
		t.Fatal(err)
	}
	const source = "40 CFR Part 86, Appendix I(a), urban dynamometer driving schedule: 7.45 miles, 1,369 s, 19.6 mph on average, 56.7 mph at most"
	published.Check(t, []published.Row{
		{Name: "length, miles", Got: r.Distance / 1609.344, Printed: "7.45", Source: source},
		{Name: "length by trapezium, m", Got: r.Distance, Printed: "11990", Source: "the same, added up second by second elsewhere"},
		{Name: "duration, s", Got: r.Duration, Printed: "1369", Source: source},
		{Name: "mean speed, mph", Got: r.MeanSpeed / 0.44704, Printed: "19.6", Source: source},
		{Name: "top speed, mph", Got: r.TopSpeed / 0.44704, Printed: "56.7", Source: source},
	})
}
