package traction

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"axlewright/internal/published"

	"gonum.org/v1/gonum/stat"
)

const (
	pound      = 0.45359237 // kg
	horsepower = 745.69987  // W
	sixtyMPH   = 26.8224    // m/s
	openData   = "data/cars.json of the npm package vega-datasets 3.2.1, after Ramos and Donoho, ASA Data Exposition (1983)"
)

type tested struct{ weight, power, seconds float64 } // lb, hp (NaN where unknown), s

func testedVehicles(t *testing.T) []tested {
	t.Helper()
	file, err := os.Open("testdata/vehicles.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	reader := csv.NewReader(file)
	reader.Comment = '#'
	rows, err := reader.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var list []tested
	for _, row := range rows[1:] {
		value := func(i int) float64 {
			if row[i] == "" {
				return math.NaN()
			}
			v, err := strconv.ParseFloat(row[i], 64)
			if err != nil {
				t.Fatal(err)
			}
			return v
		}
		list = append(list, tested{value(0), value(1), value(2)})
	}
	return list
}

func TestOpenVehicleTablePublished(t *testing.T) {
	var weights, powers []float64
	for _, v := range testedVehicles(t) {
		weights = append(weights, v.weight)
		if !math.IsNaN(v.power) {
			powers = append(powers, v.power)
		}
	}
	lowest, highest := weights[0], weights[0]
	for _, w := range weights {
		lowest, highest = math.Min(lowest, w), math.Max(highest, w)
	}
	published.Check(t, []published.Row{
		{Name: "vehicles", Got: float64(len(weights)), Printed: "406", Source: openData},
		{Name: "lightest, lb", Got: lowest, Printed: "1613", Source: openData},
		{Name: "heaviest, lb", Got: highest, Printed: "5140", Source: openData},
		{Name: "mean, lb", Got: stat.Mean(weights, nil), Printed: "2979.41", Source: openData},
		{Name: "with a power", Got: float64(len(powers)), Printed: "400", Source: openData},
		{Name: "mean power, hp", Got: stat.Mean(powers, nil), Printed: "105.082", Source: openData,
			Within: 1e-5, Why: "105.0825 stands between two last digits"},
	})
}

// fromRest is the time to reach a speed on the level, pulled by grip first and
// by power after.
func fromRest(t *testing.T, v tested) float64 {
	t.Helper()
	const (
		efficiency = 0.7 // of gross engine power, gears and shifting together: an assumption
		steps      = 200
	)
	weight := v.weight * pound * gravity
	grip, err := PullingGrip(GripParams{Drive: RearDrive, Friction: 0.8, Weight: weight, Wheelbase: 2.7, FrontToCentre: 1.25, Height: 0.55, LoadedRadius: 0.3})
	if err != nil {
		t.Fatal(err)
	}
	factor, err := RotatingMassFactor(6) // a middle gear
	if err != nil {
		t.Fatal(err)
	}
	seconds := 0.0
	for i := range steps {
		speed := (float64(i) + 0.5) / steps * sixtyMPH
		resistance, err := RoadResistance(RoadParams{Weight: weight, Rolling: 0.013, DragArea: 0.9, Density: 1.2}, speed)
		if err != nil {
			t.Fatal(err)
		}
		pull := math.Min(grip.Force, efficiency*v.power*horsepower/speed) - resistance.Total
		seconds += sixtyMPH / steps * factor * v.weight * pound / pull
	}
	return seconds
}

// Four hundred vehicles were driven from 0 to 60 mile/h. Weight and power
// alone, through grip, resistance and rotating mass, must rank them and come
// out near the stop watch; nothing is fitted.
func TestFourHundredVehiclesFromRest(t *testing.T) {
	var computed, measured, ratios []float64
	for _, v := range testedVehicles(t) {
		if math.IsNaN(v.power) {
			continue
		}
		s := fromRest(t, v)
		computed, measured = append(computed, s), append(measured, v.seconds)
		ratios = append(ratios, math.Log(s/v.seconds))
	}
	correlation := stat.Correlation(computed, measured, nil)
	mean, spread := stat.MeanStdDev(ratios, nil)
	t.Logf("correlation %.3f, computed over measured %.3f, spread × %.3f", correlation, math.Exp(mean), math.Exp(spread))
	if correlation < 0.7 {
		t.Errorf("computed and measured times go together by %.2f only", correlation)
	}
	if math.Abs(mean) > math.Log(1.25) || spread > math.Log(1.25) {
		t.Errorf("computed over measured %.2f, spread × %.2f", math.Exp(mean), math.Exp(spread))
	}
}
