package assess

import (
	"math"
	"strings"
	"testing"

	"axlewright/axle"
	"axlewright/calc/gear"
)

// benchOn makes readings as the model itself would give them for a casting
// whose figures lie at the given scores.
func benchOn(t *testing.T, e *axle.Enquiry, c *axle.Catalogue, at map[string]float64) axle.Bench {
	t.Helper()
	var bench axle.Bench
	add := func(name string, torque float64, flank axle.Flank) {
		r := axle.BenchReading{Name: name, Flank: flank}
		r.Torque.Number = axle.Number{Value: torque, Low: torque, High: torque, Origin: axle.Measured}
		bench.Readings = append(bench.Readings, r)
	}
	add("coast low", 150, gear.Coast)
	add("coast high", 400, gear.Coast)
	add("drive", 400, gear.Drive)
	jack := axle.BenchReading{Name: "jack"}
	jack.Jack.Number = axle.Number{Value: 10e3, Low: 10e3, High: 10e3, Origin: axle.Measured}
	jack.JackRadius.Number = axle.Number{Value: 0.095, Low: 0.095, High: 0.095, Origin: axle.Measured}
	bench.Readings = append(bench.Readings, jack)
	builds, err := c.BuildsFor(e)
	if err != nil {
		t.Fatal(err)
	}
	b, err := newBenchModel(&builds[0], &bench)
	if err != nil {
		t.Fatal(err)
	}
	z := make([]float64, len(b.places))
	for i, place := range b.places {
		z[i] = at[place]
	}
	readings, err := b.predict(z)
	if err != nil {
		t.Fatal(err)
	}
	for k := range bench.Readings {
		r, err := readings[k], 0.002e-3
		bench.Readings[k].Reading.Number = axle.Number{Value: r, Low: r - 2*err, High: r + 2*err, Shape: axle.Normal, Origin: axle.Measured}
	}
	return bench
}

func TestCalibrationExplainsItsReadingsAndNarrows(t *testing.T) {
	const soft = "Casting.Seats.Side.Axial"
	e, c := load(t, "14-front-coast")
	bench := benchOn(t, &e, &c, map[string]float64{soft: -2.5})
	fit, err := Calibrate(&e, &c, &bench)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range fit.Readings {
		if math.Abs(r.After-r.Read) > math.Abs(r.Before-r.Read)+1e-9 && math.Abs(r.After-r.Read) > r.Error {
			t.Errorf("%s: read %.4f mm, explained %.4f before and %.4f after", r.Name, 1e3*r.Read, 1e3*r.Before, 1e3*r.After)
		}
	}
	for _, f := range fit.Figures {
		if f.Left > 1+1e-9 {
			t.Errorf("%s: a reading cannot widen its doubt to %.2f", f.Place, f.Left)
		}
		if f.Place == soft && !(f.After.Median < f.Before.Median && f.Left < 0.9) {
			t.Errorf("a soft leg is not seen: %+v", f)
		}
	}
	if len(fit.Warnings) > 0 {
		t.Errorf("readings that agree are doubted: %v", fit.Warnings)
	}
	// A softer casting lets the wheel move farther: the stock build gives out sooner.
	before := adviceOn(t, e, c, fewDraws)
	s, err := newStudy(&e, &c, Options{Draws: fewDraws, Calibration: &fit.Calibration})
	if err != nil {
		t.Fatal(err)
	}
	if err := s.run(t.Context(), nil); err != nil {
		t.Fatal(err)
	}
	after, err := s.advice()
	if err != nil {
		t.Fatal(err)
	}
	const link = "crown wheel pushed off the pinion"
	was, _ := before.Builds[0].Rung(link)
	is, _ := after.Builds[0].Rung(link)
	if !(is.GiveOut.Median < was.GiveOut.Median) {
		t.Errorf("%s: %.0f before, %.0f after", link, was.GiveOut.Median, is.GiveOut.Median)
	}
}

func TestCalibrationTellsAReadingThatContradicts(t *testing.T) {
	e, c := load(t, "14-front-coast")
	bench := benchOn(t, &e, &c, nil)
	r := &bench.Readings[1].Reading
	r.Value, r.Low, r.High = 5*r.Value, 5*r.Value-4e-6, 5*r.Value+4e-6 // a slip of the decimal
	fit, err := Calibrate(&e, &c, &bench)
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(strings.Join(fit.Warnings, " "), "contradict") {
		t.Errorf("no warning: %+v", fit.Readings)
	}
}

func TestJackAndStopBalance(t *testing.T) {
	e, c := load(t, "14-front-coast")
	one, two := benchOn(t, &e, &c, nil), benchOn(t, &e, &c, nil)
	builds, err := c.BuildsFor(&e)
	if err != nil {
		t.Fatal(err)
	}
	jack := len(one.Readings) - 1
	two.Readings[jack].Jack.Value *= 2
	b1, err := newBenchModel(&builds[0], &one)
	if err != nil {
		t.Fatal(err)
	}
	b2, err := newBenchModel(&builds[0], &two)
	if err != nil {
		t.Fatal(err)
	}
	x, err := b1.one(jack)
	if err != nil {
		t.Fatal(err)
	}
	y, err := b2.one(jack)
	if err != nil {
		t.Fatal(err)
	}
	// A jack pushes the wheel towards the pinion, and twice the force moves it
	// about twice as far: rollers stiffen a little, preload lets go a little.
	if x >= 0 || y/x < 1.5 || y/x > 3.2 {
		t.Errorf("10 kN moves %.4f mm, 20 kN %.4f mm", 1e3*x, 1e3*y)
	}
}

func TestConditionedDrawsHaveTheFitsMeanAndSpread(t *testing.T) {
	e, c := load(t, "14-front-coast")
	bench := benchOn(t, &e, &c, map[string]float64{"Casting.Seats.Side.Axial": -1})
	fit, err := Calibrate(&e, &c, &bench)
	if err != nil {
		t.Fatal(err)
	}
	s, err := newStudy(&e, &c, Options{Draws: 2000, Calibration: &fit.Calibration})
	if err != nil {
		t.Fatal(err)
	}
	for i, place := range fit.Places {
		var z []float64
		for k := range s.draws.n {
			_, row := s.draws.row(k)
			z = append(z, row[s.figureAt[place]])
		}
		mean, squares := meanAndSquares(z)
		variance := squares / float64(len(z))
		if math.Abs(mean-fit.Mean[i]) > 0.08 || math.Abs(variance/fit.Covariance.At(i, i)-1) > 0.15 {
			t.Errorf("%s: mean %.3f, variance %.3f; want %.3f and %.3f", place, mean, variance, fit.Mean[i], fit.Covariance.At(i, i))
		}
	}
}
