//go:build reference

package reference

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"os/exec"
	"slices"
	"testing"

	"axlewright/calc/contact"
	"axlewright/calc/fatigue"
	"axlewright/calc/survival"
	"axlewright/calc/traction"
)

// python is Debian's own, the one that its package python3-scipy belongs to.
const python = "/usr/bin/python3"

// askSciPy solves problems of one kind with SciPy and returns an answer to each.
// Where SciPy is missing the test fails: a check that was left out is no check.
func askSciPy[Answer any](t *testing.T, kind string, problems ...any) []Answer {
	t.Helper()
	input, err := json.Marshal(problems)
	if err != nil {
		t.Fatal(err)
	}
	command := exec.Command(python, "scipy_check.py", kind)
	command.Stdin = bytes.NewReader(input)
	var complaint bytes.Buffer
	command.Stderr = &complaint
	output, err := command.Output()
	if err != nil {
		t.Fatalf("SciPy did not answer (Debian package python3-scipy): %v\n%s", err, complaint.String())
	}
	var answers []Answer
	if err := json.Unmarshal(output, &answers); err != nil {
		t.Fatalf("%v in %s", err, output)
	}
	if len(answers) != len(problems) {
		t.Fatalf("%d problems, %d answers", len(problems), len(answers))
	}
	return answers
}

// agree fails where two values differ by more than a relative tolerance.
func agree(t *testing.T, name string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance*math.Abs(want)) {
		t.Errorf("%s: %.12g, the reference says %.12g", name, got, want)
	}
}

// fans are hours of 70 diesel generator fans: Nelson, Applied Life Data
// Analysis (1982). Each entry: hours, fans, whether they failed.
var fans = []struct {
	hours  float64
	number int
	failed bool
}{
	{450, 1, true}, {460, 1, false}, {1150, 2, true}, {1560, 1, false}, {1600, 1, true}, {1660, 1, false}, {1850, 5, false},
	{2030, 3, false}, {2070, 2, true}, {2080, 1, true}, {2200, 1, false}, {3000, 4, false}, {3100, 1, true}, {3200, 1, false},
	{3450, 1, true}, {3750, 2, false}, {4150, 4, false}, {4300, 4, false}, {4600, 1, true}, {4850, 4, false}, {5000, 3, false},
	{6100, 1, true}, {6100, 3, false}, {6300, 1, false}, {6450, 2, false}, {6700, 1, false}, {7450, 1, false}, {7800, 2, false},
	{8100, 2, false}, {8200, 1, false}, {8500, 3, false}, {8750, 1, true}, {8750, 2, false}, {9400, 1, false}, {9900, 1, false},
	{10100, 3, false}, {11500, 1, false},
}

func TestWeibullFitAgainstSciPy(t *testing.T) {
	var list []survival.Observation
	var problem struct {
		Times  []float64 `json:"times"`
		Failed []bool    `json:"failed"`
	}
	for _, f := range fans {
		for range f.number {
			list = append(list, survival.Observation{Time: f.hours, Failed: f.failed})
			problem.Times, problem.Failed = append(problem.Times, f.hours), append(problem.Failed, f.failed)
		}
	}
	if len(list) != 70 {
		t.Fatalf("%d fans, want 70", len(list))
	}
	fit, err := survival.WeibullFit(list)
	if err != nil {
		t.Fatal(err)
	}
	want := askSciPy[struct {
		Shape, Scale, B10, Covariance float64
		LogLikelihood                 float64 `json:"log_likelihood"`
		ShapeVariance                 float64 `json:"shape_variance"`
		ScaleVariance                 float64 `json:"scale_variance"`
	}](t, "weibull", problem)[0]
	agree(t, "β", fit.Shape, want.Shape, 1e-6)
	agree(t, "η", fit.Scale, want.Scale, 1e-6)
	agree(t, "log-likelihood", fit.LogLikelihood, want.LogLikelihood, 1e-11)
	agree(t, "B10", fit.B10, want.B10, 1e-6)
	agree(t, "variance of β", fit.ShapeVariance, want.ShapeVariance, 1e-3)
	agree(t, "variance of η", fit.ScaleVariance, want.ScaleVariance, 1e-3)
	agree(t, "covariance", fit.Covariance, want.Covariance, 1e-3)
}

// The script counts by the four-point rule from turning points found by a peak
// search. Where no two ranges are equal it must find the same cycles.
func TestRainflowAgainstNumpy(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 11))
	history := make([]float64, 3000)
	for i := 1; i < len(history); i++ {
		history[i] = 0.95*history[i-1] + random.NormFloat64()
	}
	const exponent = 5
	counted, err := fatigue.Rainflow(history)
	if err != nil {
		t.Fatal(err)
	}
	want := askSciPy[struct {
		Ranges, Means, Counts []float64
		Sum                   float64
	}](t, "rainflow", map[string]any{"history": history, "exponent": exponent})[0]
	cycles := counted.Cycles()
	slices.SortFunc(cycles, func(a, b fatigue.Cycle) int {
		switch {
		case a.Range < b.Range:
			return -1
		case a.Range > b.Range:
			return 1
		}
		return 0
	})
	if len(cycles) != len(want.Ranges) {
		t.Fatalf("%d cycles, numpy counts %d", len(cycles), len(want.Ranges))
	}
	sum := 0.0
	for i, c := range cycles {
		if c.Range != want.Ranges[i] || math.Abs(c.Mean-want.Means[i]) > 1e-12 || c.Count != want.Counts[i] {
			t.Fatalf("cycle %d: %+v, numpy says range %g, mean %g, count %g", i, c, want.Ranges[i], want.Means[i], want.Counts[i])
		}
		sum += c.Count * math.Pow(c.Range, exponent)
	}
	agree(t, "Σ count·range⁵", sum, want.Sum, 1e-12)
	// the same sum through a stress-life line of that slope
	damage, err := fatigue.SpectrumDamage(fatigue.SpectrumDamageParams{
		Cycles: counted.Cycles(), Measure: fatigue.ByRange,
		Line: fatigue.SNLine{KneeLoad: 1, KneeCycles: 1, Slope: exponent, SlopeBeyond: exponent},
	})
	if err != nil {
		t.Fatal(err)
	}
	agree(t, "damage", damage, want.Sum, 1e-12)
}

func TestSpeedFromPowerAgainstBrentq(t *testing.T) {
	var problems []any
	var speeds []float64
	for _, c := range []struct{ grade, power float64 }{{0.05, 60e3}, {-0.08, 5e3}, {0.45, 40e3}} {
		road := traction.RoadParams{Weight: 18e3, Grade: c.grade, Rolling: 0.015, DragArea: 1.1, Density: 1.2}
		v, err := traction.SpeedFromPower(road, c.power)
		if err != nil {
			t.Fatal(err)
		}
		speeds = append(speeds, v)
		problems = append(problems, map[string]any{"weight": road.Weight, "grade": road.Grade, "rolling": road.Rolling,
			"drag_area": road.DragArea, "density": road.Density, "power": c.power})
	}
	for i, want := range askSciPy[struct{ Speed float64 }](t, "speed", problems...) {
		agree(t, "speed", speeds[i], want.Speed, 1e-11)
	}
}

func TestEllipticalContactAgainstSciPy(t *testing.T) {
	var problems []any
	var results []contact.EllipseResult
	for _, large := range []float64{12.5486, 30, 400, 5e4} {
		p := contact.EllipseParams{Force: 4500, SmallCurvature: 8.38086, LargeCurvature: large, Modulus: 109e9}
		r, err := contact.EllipticalContact(p)
		if err != nil {
			t.Fatal(err)
		}
		results = append(results, r)
		problems = append(problems, map[string]any{"small": p.SmallCurvature, "large": p.LargeCurvature, "force": p.Force, "modulus": p.Modulus})
	}
	for i, want := range askSciPy[struct{ Long, Short, Pressure, Approach float64 }](t, "ellipse", problems...) {
		agree(t, "long half axis", results[i].LongSemiAxis, want.Long, 1e-8)
		agree(t, "short half axis", results[i].ShortSemiAxis, want.Short, 1e-8)
		agree(t, "peak pressure", results[i].PeakPressure, want.Pressure, 1e-8)
		agree(t, "approach", results[i].Approach, want.Approach, 1e-8)
	}
}

func TestPadHeatingAgainstQuadrature(t *testing.T) {
	var problems []any
	var rises []float64
	for _, seconds := range []float64{0.02, 1, 30, 3600} {
		p := contact.PadHeatingParams{Heat: 400, Radius: 0.007, Conductivity: 60, Diffusivity: 1.7e-5, Duration: seconds}
		rise, err := contact.PadHeatingRise(p)
		if err != nil {
			t.Fatal(err)
		}
		rises = append(rises, rise)
		problems = append(problems, map[string]any{"heat": p.Heat, "radius": p.Radius, "conductivity": p.Conductivity,
			"diffusivity": p.Diffusivity, "duration": p.Duration})
	}
	for i, want := range askSciPy[struct{ Rise float64 }](t, "heating", problems...) {
		agree(t, "rise", rises[i], want.Rise, 1e-9)
	}
}

type limits struct{ Low, High float64 }

func TestChancesAgainstSciPy(t *testing.T) {
	var problems []any
	var results []survival.ClopperPearsonResult
	for _, c := range []survival.ClopperPearsonParams{
		{Cases: 0, Trials: 12, Confidence: 0.9}, {Cases: 3, Trials: 17, Confidence: 0.95}, {Cases: 40, Trials: 41, Confidence: 0.8},
	} {
		r, err := survival.ClopperPearson(c)
		if err != nil {
			t.Fatal(err)
		}
		results = append(results, r)
		problems = append(problems, map[string]any{"cases": c.Cases, "trials": c.Trials, "confidence": c.Confidence})
	}
	for i, want := range askSciPy[limits](t, "proportion", problems...) {
		agree(t, "lower end", results[i].Low, want.Low, 1e-9)
		agree(t, "upper end", results[i].High, want.High, 1e-9)
	}
	p := survival.MeanLifeIntervalParams{TotalTime: 344440, Failures: 12, Confidence: 0.95}
	r, err := survival.MeanLifeInterval(p)
	if err != nil {
		t.Fatal(err)
	}
	want := askSciPy[limits](t, "mean_life", map[string]any{"time": p.TotalTime, "failures": p.Failures, "confidence": p.Confidence})[0]
	agree(t, "mean life, lower end", r.Low, want.Low, 1e-9)
	agree(t, "mean life, upper end", r.High, want.High, 1e-9)
}

func TestLinearRegressionAgainstSciPy(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 5))
	var points []survival.Point
	var x, y []float64
	for i := range 40 {
		p := survival.Point{X: float64(i), Y: 78 - 0.003*float64(i) + 0.02*random.NormFloat64()}
		points, x, y = append(points, p), append(x, p.X), append(y, p.Y)
	}
	r, err := survival.LinearRegression(points)
	if err != nil {
		t.Fatal(err)
	}
	line := askSciPy[struct {
		Slope, Intercept float64
		SlopeError       float64 `json:"slope_error"`
		InterceptError   float64 `json:"intercept_error"`
	}](t, "regression", map[string]any{"x": x, "y": y})[0]
	agree(t, "slope", r.Slope, line.Slope, 1e-9)
	agree(t, "intercept", r.Intercept, line.Intercept, 1e-12)
	agree(t, "error of slope", r.SlopeError, line.SlopeError, 1e-9)
	agree(t, "error of intercept", r.InterceptError, line.InterceptError, 1e-9)
}

func TestControlChartAgainstSciPy(t *testing.T) {
	factors, err := survival.ControlChart(5)
	if err != nil {
		t.Fatal(err)
	}
	chart := askSciPy[struct{ D2, D3, C4 float64 }](t, "chart", map[string]any{"n": 5})[0]
	agree(t, "d2", factors.RangeMean, chart.D2, 1e-9)
	agree(t, "d3", factors.RangeSpread, chart.D3, 1e-7)
	agree(t, "c4", factors.SDMean, chart.C4, 1e-9)
}
