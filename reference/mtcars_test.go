//go:build reference

package reference

import (
	"bytes"
	"math"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"axlewright/calc/survival"
	"axlewright/calc/traction"
	"axlewright/internal/published"
)

// rScript makes R print its data set of 32 cars of 1974 (Motor Trend, by
// Henderson and Velleman, 1981): rear axle ratio and gross power, and what R
// itself works out from them. One number a line, 15 digits.
//
// Assumed, the same here as there: 60 mile/h, in a direct top gear, on tyres of
// 0.30 m loaded radius, 90 % of the power at the wheels.
const rScript = `
number <- function(x) cat(formatC(x, digits = 15, format = "g"), sep = "\n")
with(mtcars, {
  number(length(drat))
  number(c(mean(drat), median(drat), min(drat), max(drat), sd(drat)))
  number(drat)
  number(hp)
  wheel <- 60 * 1609.344 / 3600 / 0.30
  power <- hp * 745.69987158227
  number(power / (wheel * drat))
  number(0.9 * power / wheel)
  number(coef(lm(hp ~ drat)))
  number(summary(lm(hp ~ drat))$sigma)
})`

// askR runs a script. Where R is missing the test fails: a check that was left
// out is no check.
func askR(t *testing.T, script string) []float64 {
	t.Helper()
	command := exec.Command("Rscript", "--vanilla", "-e", script)
	var complaint bytes.Buffer
	command.Stderr = &complaint
	output, err := command.Output()
	if err != nil {
		t.Fatalf("R did not answer (Debian package r-base-core): %v\n%s", err, complaint.String())
	}
	var numbers []float64
	for _, word := range strings.Fields(string(output)) {
		v, err := strconv.ParseFloat(word, 64)
		if err != nil {
			t.Fatalf("R printed %q", word)
		}
		numbers = append(numbers, v)
	}
	return numbers
}

func TestAxleRatiosAndTorquesAgainstR(t *testing.T) {
	answer := askR(t, rScript)
	const cars = 32
	if len(answer) != 1+5+4*cars+3 || answer[0] != cars {
		t.Fatalf("R printed %d numbers, the first %g", len(answer), answer[0])
	}
	statistics, answer := answer[1:6], answer[6:]
	ratio, power, engine, axle := answer[:cars], answer[cars:2*cars], answer[2*cars:3*cars], answer[3*cars:4*cars]
	line := answer[4*cars:]

	const source = "R 4.2.2, data set mtcars (Henderson and Velleman, 1981), column drat"
	summary, err := survival.Summary(ratio)
	if err != nil {
		t.Fatal(err)
	}
	published.Check(t, []published.Row{
		{Name: "mean axle ratio", Got: statistics[0], Printed: "3.59656", Source: source},
		{Name: "median", Got: statistics[1], Printed: "3.695", Source: source},
		{Name: "smallest", Got: statistics[2], Printed: "2.76", Source: source},
		{Name: "largest", Got: statistics[3], Printed: "4.93", Source: source},
		{Name: "standard deviation", Got: statistics[4], Printed: "0.5347", Source: source},
		{Name: "our mean", Got: summary.Mean, Printed: "3.59656", Source: source},
		{Name: "our standard deviation", Got: summary.SD, Printed: "0.5347", Source: source},
	})
	agree(t, "mean ratio", summary.Mean, statistics[0], 1e-13)
	agree(t, "standard deviation of the ratios", summary.SD, statistics[4], 1e-13)

	const (
		hp         = 745.69987158227
		radius     = 0.30
		efficiency = 0.9
	)
	wheel := 60 * 1609.344 / 3600 / radius
	var points []survival.Point
	for i := range cars {
		points = append(points, survival.Point{X: ratio[i], Y: power[i]})
		// the engine turns faster than the wheels by the axle's ratio
		engineTorque, err := traction.TorqueFromPower(traction.PowerParams{Power: power[i] * hp, WheelSpeed: wheel * ratio[i]})
		if err != nil {
			t.Fatal(err)
		}
		agree(t, "engine torque", engineTorque, engine[i], 1e-12)
		torque, err := traction.EngineLimitedTorque(traction.DrivelineParams{
			EngineTorque: engineTorque, Gearbox: 1, Transfer: 1, Final: ratio[i],
			Efficiency: efficiency, Converter: 1, Shock: 1, AxleShare: 1,
		})
		if err != nil {
			t.Fatal(err)
		}
		agree(t, "axle torque", torque, axle[i], 1e-12)
		if math.IsNaN(torque) || torque < 300 || torque > 3000 {
			t.Errorf("%g hp at 60 mile/h make %g N·m at the axle: out of all reason", power[i], torque)
		}
	}
	fit, err := survival.LinearRegression(points)
	if err != nil {
		t.Fatal(err)
	}
	agree(t, "intercept of power on ratio", fit.Intercept, line[0], 1e-11)
	agree(t, "slope of power on ratio", fit.Slope, line[1], 1e-11)
	agree(t, "residual standard deviation", fit.ResidualSD, line[2], 1e-11)
}

// Michelson's readings of the speed of light come with R and are the NIST data
// set Michelso: the summary must agree with R's own and with the certificate.
func TestSummaryAgainstR(t *testing.T) {
	answer := askR(t, `
number <- function(x) cat(formatC(x, digits = 15, format = "g"), sep = "\n")
x <- 299 + morley$Speed / 1000
number(x)
number(c(mean(x), sd(x), acf(x, plot = FALSE)$acf[2]))`)
	if len(answer) != 103 {
		t.Fatalf("R printed %d numbers", len(answer))
	}
	r, err := survival.Summary(answer[:100])
	if err != nil {
		t.Fatal(err)
	}
	agree(t, "mean", r.Mean, answer[100], 1e-13)
	agree(t, "standard deviation", r.SD, answer[101], 1e-11)
	agree(t, "lag-1 autocorrelation", r.Lag1, answer[102], 1e-11)
	const source = "NIST Statistical Reference Datasets, Michelso, certified values"
	const why = "certified to 15 digits; the test asks for 9"
	published.Check(t, []published.Row{
		{Name: "mean", Got: r.Mean, Printed: "299.852400000000", Source: source, Within: 1e-9, Why: why},
		{Name: "standard deviation", Got: r.SD, Printed: "0.0790105478190518", Source: source, Within: 1e-9, Why: why},
		{Name: "lag-1 autocorrelation", Got: r.Lag1, Printed: "0.535199668621283", Source: source, Within: 1e-9, Why: why},
	})
}
