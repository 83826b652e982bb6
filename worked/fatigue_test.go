package worked_test

import (
	"fmt"
	"math"

	"axlewright/calc/contact"
	"axlewright/calc/fatigue"
	"axlewright/calc/survival"
)

// fatigueDone hands on a value and stops the example on an error.
func fatigueDone[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// A load runs through the peaks and valleys A to I.
//
//	 5 |        D
//	 4 |                      H
//	 3 |              F
//	 1 |   B
//	   +--------------------------
//	-1 |           E
//	-2 |A                        I
//	-3 |     C
//	-4 |                  G
//
// Wanted: its cycles by the rainflow count, and the damage they do to a part that
// lasts 10 000 cycles of range 10 on a line of slope 3.
//
// Source: ASTM E1049-85, figure 6: ranges 3, 4, 6, 8 and 9 with 0.5, 1.5, 0.5, 1.0
// and 0.5 cycles. The damage is derived, not published: 1094/10⁷ by hand.
func Example_fatigue1RainflowOfTheStandard() {
	history := []float64{-2, 1, -3, 5, -1, 3, -4, 4, -2}

	// 1. Cycles in the order in which they close; what does not close counts half.
	counted := fatigueDone(fatigue.Rainflow(history))
	totals := map[float64]float64{}
	for _, c := range counted.Cycles() {
		fmt.Printf("1. range %g about %4.1f: %.1f\n", c.Range, c.Mean, c.Count)
		totals[c.Range] += c.Count
	}

	// 2. By range.
	for _, width := range []float64{3, 4, 6, 8, 9} {
		fmt.Printf("2. range %g: %.1f cycles\n", width, totals[width])
	}

	// 3. Damage, each cycle by its range.
	damage := fatigueDone(fatigue.SpectrumDamage(fatigue.SpectrumDamageParams{
		Cycles: counted.Cycles(), Measure: fatigue.ByRange,
		Line: fatigue.SNLine{KneeLoad: 10, KneeCycles: 1e4, Slope: 3, SlopeBeyond: 3},
	}))
	fmt.Printf("3. damage %.4g, so the part lasts %.0f such histories\n", damage, 1/damage)

	// Output:
	// 1. range 3 about -0.5: 0.5
	// 1. range 4 about -1.0: 0.5
	// 1. range 4 about  1.0: 1.0
	// 1. range 8 about  1.0: 0.5
	// 1. range 9 about  0.5: 0.5
	// 1. range 8 about  0.0: 0.5
	// 1. range 6 about  1.0: 0.5
	// 2. range 3: 0.5 cycles
	// 2. range 4: 1.5 cycles
	// 2. range 6: 0.5 cycles
	// 2. range 8: 1.0 cycles
	// 2. range 9: 0.5 cycles
	// 3. damage 0.0001094, so the part lasts 9141 such histories
}

// A steel bar bears a reversed stress of 358.5 MPa; its endurance limit is 276 MPa
// and its tensile strength 551 MPa.
//
// Wanted: the factor of safety against endless life, and the life.
//
// Source: Shigley's Mechanical Engineering Design, 8th ed., problem 6-15 and its
// printed solution: 0.77 by each criterion, a = 891.0 MPa, b = −0.084 828,
// 45 800 cycles.
func Example_fatigue2LifeOfABar() {
	const amplitude, endurance, ultimate, yield = 358.5e6, 276e6, 551e6, 413e6

	// 1. Without steady stress all criteria say the same.
	for _, criterion := range []fatigue.Criterion{fatigue.Goodman, fatigue.Gerber, fatigue.ASMEEllipse} {
		n := fatigueDone(fatigue.FatigueSafety(fatigue.MeanStressParams{
			Criterion: criterion, Amplitude: amplitude, Endurance: endurance, Ultimate: ultimate, Yield: yield,
		}))
		fmt.Printf("1. safety by %-12s %.2f\n", criterion, n)
	}

	// 2. The line from 90 % of the tensile strength at 1000 cycles to the endurance
	// limit at a million.
	line := fatigueDone(fatigue.BasquinThrough(fatigue.BasquinParams{
		Cycles1: 1e3, Strength1: 0.9 * ultimate, Cycles2: 1e6, Strength2: endurance,
	}))
	fmt.Printf("2. a = %.1f MPa, b = %.6f\n", line.Coefficient/1e6, line.Exponent)

	// 3. The life on it, to three figures.
	life := fatigueDone(fatigue.BasquinLife(line, amplitude))
	fmt.Printf("3. life %.3g cycles\n", life)

	// Output:
	// 1. safety by goodman      0.77
	// 1. safety by gerber       0.77
	// 1. safety by asme-ellipse 0.77
	// 2. a = 891.0 MPa, b = -0.084828
	// 3. life 4.58e+04 cycles
}

// Seventy diesel generator fans were watched; twelve failed, the others were
// sound when last seen.
//
// Wanted: does the chance of failing rise with age, when have 10 % failed, and
// what is the mean life if it does not?
//
// Source: Nelson, Applied Life Data Analysis (1982): mean life 28 700 h by the
// exponential. The Weibull values 1.05845, 26296.8 h, −135.153 and 3137.24 h by
// survreg of R 4.2.2 (package survival 3.5-3) on the same data.
func Example_fatigue3FansThatFailed() {
	failed := []float64{450, 1150, 1150, 1600, 2070, 2070, 2080, 3100, 3450, 4600, 6100, 8750}
	sound := []float64{460, 1560, 1660, 1850, 1850, 1850, 1850, 1850, 2030, 2030, 2030, 2200, 3000, 3000, 3000, 3000, 3200, 3750, 3750,
		4150, 4150, 4150, 4150, 4300, 4300, 4300, 4300, 4850, 4850, 4850, 4850, 5000, 5000, 5000, 6100, 6100, 6100, 6300, 6450, 6450,
		6700, 7450, 7800, 7800, 8100, 8100, 8200, 8500, 8500, 8500, 8750, 8750, 9400, 9900, 10100, 10100, 10100, 11500}
	var fans []survival.Observation
	for _, hours := range failed {
		fans = append(fans, survival.Observation{Time: hours, Failed: true})
	}
	for _, hours := range sound {
		fans = append(fans, survival.Observation{Time: hours})
	}
	fmt.Printf("1. %d fans, %d failed\n", len(fans), len(failed))

	// 2. The likeliest Weibull distribution. A shape near 1 is chance, not wear.
	fit := fatigueDone(survival.WeibullFit(fans))
	fmt.Printf("2. shape %.5f ± %.2f, scale %.1f h, log-likelihood %.3f\n",
		fit.Shape, math.Sqrt(fit.ShapeVariance), fit.Scale, fit.LogLikelihood)

	// 3. When 10 % have failed, and how well that is known.
	b10 := fatigueDone(survival.WeibullLifeInterval(survival.LifeIntervalParams{
		Shape: fit.Shape, Scale: fit.Scale, ShapeVariance: fit.ShapeVariance, ScaleVariance: fit.ScaleVariance,
		Covariance: fit.Covariance, Fraction: 0.1, Confidence: 0.9,
	}))
	fmt.Printf("3. 10 %% failed by %.2f h, with 90 %% confidence between %.0f and %.0f h\n", b10.Life, b10.Low, b10.High)

	// 4. If it is chance alone, the mean life.
	mean := fatigueDone(survival.ExponentialFit(fans))
	limits := fatigueDone(survival.MeanLifeInterval(survival.MeanLifeIntervalParams{
		TotalTime: mean.TotalTime, Failures: mean.Failures, Confidence: 0.95,
	}))
	fmt.Printf("4. mean life %.1f h, with 95 %% confidence between %.0f and %.0f h\n", mean.Mean, limits.Low, limits.High)

	// 5. Twice the gain in log-likelihood, to be set against 3.84 (χ², 95 %).
	fmt.Printf("5. the shape gains %.2f: no sign that age matters\n", 2*(fit.LogLikelihood-mean.LogLikelihood))

	// Output:
	// 1. 70 fans, 12 failed
	// 2. shape 1.05845 ± 0.27, scale 26296.8 h, log-likelihood -135.153
	// 3. 10 % failed by 3137.24 h, with 90 % confidence between 1863 and 5282 h
	// 4. mean life 28703.3 h, with 95 % confidence between 16432 and 55550 h
	// 5. the shape gains 0.05: no sign that age matters
}

// A bush of alloy brass, bore 1 in and length 1 in, carries 500 lbf on a shaft that
// turns at 200 rev/min. It may wear by 0.005 in.
//
// Wanted: how long that takes, and how many turns; and the same for the book's
// example, 700 lbf at 33 ft/min. Wear factor 0.6·10⁻¹⁰ in³·min/(lbf·ft·h), clean
// place (f2 = 1), motion factors 1.8 and 1.3.
//
// Source: Shigley's Mechanical Engineering Design, 8th ed., problem 12-22 and its
// printed solution: 52.4 ft/min, 1388 h, 16.7 million turns (the book rounds the
// speed); example 12-7 (from memory): 891 psi, 2180 h, 16.5 million turns.
func Example_fatigue4BushThatWears() {
	const (
		inch   = 0.0254
		lbf    = 4.4482216152605
		psi    = lbf / (inch * inch)
		minute = 60.0
		hour   = 3600.0
		// in³·min/(lbf·ft·h) in m²/N
		wearUnit = inch * inch * inch * minute / (lbf * 12 * inch * hour)
	)
	for _, c := range []struct {
		name                     string
		motion, force, perMinute float64
	}{
		{"problem", 1.8, 500, 200},
		{"example", 1.3, 700, 12 * 33 / math.Pi}, // 33 ft/min at the bore
	} {
		// 1. Pressure and rubbing speed.
		r := fatigueDone(contact.BushingWear(contact.BushingWearParams{
			Diameter: 1 * inch, Length: 1 * inch, Depth: 0.005 * inch,
			Force: c.force * lbf, ShaftSpeed: c.perMinute * 2 * math.Pi / minute,
			WearFactor: 0.6e-10 * wearUnit, MotionFactor: c.motion, EnvironmentFactor: 1,
		}))
		fmt.Printf("1. %s: %.0f psi at most, %.1f ft/min\n", c.name, r.PeakPressure/psi, r.RubbingSpeed/(12*inch)*minute)

		// 2. Time and turns until it is worn.
		fmt.Printf("2. %s: %.0f h, %.1f million turns\n", c.name, r.Life/hour, r.Revolutions/1e6)
	}

	// Output:
	// 1. problem: 637 psi at most, 52.4 ft/min
	// 2. problem: 1389 h, 16.7 million turns
	// 1. example: 891 psi at most, 33.0 ft/min
	// 2. example: 2179 h, 16.5 million turns
}
