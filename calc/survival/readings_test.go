package survival

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"

	"pgregory.net/rapid"
)

const certified = "certified to 15 digits; the test asks for 9"

// norris holds y and x of the NIST data set of that name.
var norris = [][2]float64{
	{0.1, 0.2}, {338.8, 337.4}, {118.1, 118.2}, {888.0, 884.6}, {9.2, 10.1}, {228.1, 226.5}, {668.5, 666.3},
	{998.5, 996.3}, {449.1, 448.6}, {778.9, 777.0}, {559.2, 558.2}, {0.3, 0.4}, {0.1, 0.6}, {778.1, 775.5},
	{668.8, 666.9}, {339.3, 338.0}, {448.9, 447.5}, {10.8, 11.6}, {557.7, 556.0}, {228.3, 228.1}, {998.0, 995.8},
	{888.8, 887.6}, {119.6, 120.2}, {0.3, 0.3}, {0.6, 0.3}, {557.6, 556.8}, {339.3, 339.1}, {888.0, 887.2},
	{998.5, 999.0}, {778.9, 779.0}, {10.2, 11.1}, {117.6, 118.3}, {228.9, 229.2}, {668.4, 669.1}, {449.2, 448.9},
	{0.2, 0.5},
}

func TestLinearRegressionPublished(t *testing.T) {
	const source = "NIST Statistical Reference Datasets, Norris, certified values"
	var points []Point
	for _, pair := range norris {
		points = append(points, Point{X: pair[1], Y: pair[0]})
	}
	r, err := LinearRegression(points)
	if err != nil {
		t.Fatal(err)
	}
	published.Check(t, []published.Row{
		{Name: "B0", Got: r.Intercept, Printed: "-0.262323073774029", Source: source, Within: 1e-9, Why: certified},
		{Name: "B1", Got: r.Slope, Printed: "1.00211681802045", Source: source, Within: 1e-9, Why: certified},
		{Name: "residual SD", Got: r.ResidualSD, Printed: "0.884796396144373", Source: source, Within: 1e-9, Why: certified},
		{Name: "R²", Got: r.RSquared, Printed: "0.999993745883712", Source: source, Within: 1e-9, Why: certified},
		{Name: "error of B0", Got: r.InterceptError, Printed: "0.232818234301152", Source: source + " (from memory)", Within: 1e-9, Why: certified},
		{Name: "error of B1", Got: r.SlopeError, Printed: "0.429796848199937e-3", Source: source + " (from memory)", Within: 1e-9, Why: certified},
	})
}

// speedOfLight holds Michelson's readings of 1879, km/s above 299000, in the
// order of the NIST data set Michelso and of R's morley.
var speedOfLight = []float64{
	850, 740, 900, 1070, 930, 850, 950, 980, 980, 880, 1000, 980, 930, 650, 760, 810, 1000, 1000, 960, 960,
	960, 940, 960, 940, 880, 800, 850, 880, 900, 840, 830, 790, 810, 880, 880, 830, 800, 790, 760, 800,
	880, 880, 880, 860, 720, 720, 620, 860, 970, 950, 880, 910, 850, 870, 840, 840, 850, 840, 840, 840,
	890, 810, 810, 820, 800, 770, 760, 740, 750, 760, 910, 920, 890, 860, 880, 720, 840, 850, 850, 780,
	890, 840, 780, 810, 760, 810, 790, 810, 820, 850, 870, 870, 810, 740, 810, 940, 950, 800, 810, 870,
}

func TestSummaryPublished(t *testing.T) {
	const source = "NIST Statistical Reference Datasets, Michelso, certified values"
	values := make([]float64, len(speedOfLight))
	for i, v := range speedOfLight {
		values[i] = 299 + v/1000
	}
	r, err := Summary(values)
	if err != nil {
		t.Fatal(err)
	}
	published.Check(t, []published.Row{
		{Name: "mean", Got: r.Mean, Printed: "299.852400000000", Source: source, Within: 1e-9, Why: certified},
		{Name: "standard deviation", Got: r.SD, Printed: "0.0790105478190518", Source: source, Within: 1e-9, Why: certified},
		{Name: "lag-1 autocorrelation", Got: r.Lag1, Printed: "0.535199668621283", Source: source, Within: 1e-9, Why: certified},
	})
}

// Residuals stand square on the line and on the mean; a line put in comes out.
func TestLinearRegressionLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 30).Draw(t, "points")
		slope, intercept := rapid.Float64Range(-50, 50).Draw(t, "slope"), rapid.Float64Range(-1e3, 1e3).Draw(t, "intercept")
		exact, noisy := make([]Point, n), make([]Point, n)
		for i := range exact {
			x := float64(i) + rapid.Float64Range(0, 0.9).Draw(t, "x")
			exact[i] = Point{x, intercept + slope*x}
			noisy[i] = Point{x, exact[i].Y + rapid.Float64Range(-5, 5).Draw(t, "noise")}
		}
		if math.Abs(slope) > 1e-3 {
			r, err := LinearRegression(exact)
			if err != nil {
				t.Fatal(err)
			}
			if math.Abs(r.Slope-slope) > 1e-8*(1+math.Abs(intercept)) || math.Abs(r.Intercept-intercept) > 1e-7*(1+math.Abs(intercept)) {
				t.Errorf("put in %g and %g, got %+v", slope, intercept, r)
			}
		}
		r, err := LinearRegression(noisy)
		if err != nil {
			t.Skip("readings all alike")
		}
		var sum, moment float64
		for _, p := range noisy {
			d := p.Y - r.Intercept - r.Slope*p.X
			sum, moment = sum+d, moment+d*p.X
		}
		if math.Abs(sum) > 1e-8*float64(n) || math.Abs(moment) > 1e-6*float64(n) {
			t.Errorf("residuals add up to %g, their moment to %g", sum, moment)
		}
	})
}

func TestReadingsRefusals(t *testing.T) {
	var r *check.RangeError
	if _, err := LinearRegression([]Point{{1, 2}, {1, 3}, {1, 4}}); !errors.As(err, &r) || r.Param != "spread of X" {
		t.Errorf("one place: got %v", err)
	}
	if _, err := LinearRegression([]Point{{1, 2}, {2, 3}}); !errors.As(err, &r) {
		t.Errorf("two points leave no doubt to estimate: got %v", err)
	}
	if _, err := Summary([]float64{5, 5, 5}); !errors.As(err, &r) || r.Param != "spread" {
		t.Errorf("readings all alike: got %v", err)
	}
	if _, err := Summary([]float64{5, math.Inf(1)}); !errors.As(err, &r) || r.Param != "values[1]" {
		t.Errorf("an infinite reading: got %v", err)
	}
}
