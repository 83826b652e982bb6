package worked_test

import (
	"fmt"
	"math"

	"axlewright/calc/bearing"
)

// bearingDone hands on a value and stops the example on an error.
func bearingDone[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// A helical gear on a shaft between two tapered roller bearings, directly
// mounted (cups pressed in from the ends).
//
//	A |<------ 100 mm ------>| gear |<- 50 mm ->| B
//	/\                       F_t 3980 N           /\
//	||                       F_r 1770 N           ||
//	                     <-- F_a 1690 N at r = 100 mm
//
// Wanted: the rating of each bearing for 800 1/min, 5000 h, a chance of 0.99 for
// the pair (0.995 each), K = 1.5 as a first trial, from a catalogue that rates
// for 90 million revolutions (Weibull 0, 4.48, 1.5).
//
// Source: Shigley, Mechanical Engineering Design, 9th ed., ex. 11-8, first trial
// (from memory): 2170 and 2654 N, 680 and 832 N, 4651 N, 11 486 and 6554 N. The
// book rounds between the steps.
func Example_bearing1TaperPairDirect() {
	const Ft, Fr, Fa, r, a, span = 3980, 1770, 1690, 0.100, 0.100, 0.150

	// 1. Reactions, in the plane of F_t and in the plane of F_r, where the axial
	// force tips the shaft by its lever r.
	tB := Ft * a / span
	tA := Ft - tB
	rB := (Fr*a - Fa*r) / span
	rA := Fr - rB
	FrA, FrB := math.Hypot(tA, rA), math.Hypot(tB, rB)
	fmt.Printf("1. radial loads     A %.0f N, B %.0f N\n", FrA, FrB)

	// 2. Thrust that each bearing induces by itself.
	const K = 1.5
	FiA := bearingDone(bearing.InducedThrust(FrA, K, bearing.RatioK))
	FiB := bearingDone(bearing.InducedThrust(FrB, K, bearing.RatioK))
	fmt.Printf("2. induced thrust   A %.0f N, B %.0f N\n", FiA, FiB)

	// 3. The gear pushes the shaft towards A; mounted directly, that seats A.
	pair := bearingDone(bearing.PairThrust(bearing.PairParams{
		Mounting: bearing.Direct, InducedA: FiA, InducedB: FiB, Thrust: -Fa,
	}))
	fmt.Printf("3. axial loads      A %.0f N, B %.0f N, %s is seated\n", pair.AxialA, pair.AxialB, pair.Seated)

	// 4. Equivalent loads: A with its thrust, B with its own induced thrust only.
	FeA := 0.4*FrA + K*pair.AxialA
	FeB := FrB
	fmt.Printf("4. equivalent loads A %.0f N, B %.0f N\n", FeA, FeB)

	// 5. Ratings for the wanted life and chance.
	rating := func(load float64) float64 {
		return bearingDone(bearing.CatalogueRating(bearing.CatalogueRatingParams{
			Load: load, Application: 1, LifeRatio: 5000 * 60 * 800 / 90e6, Reliability: 0.995,
			Scale: 4.48, Shape: 1.5, Form: bearing.FailedPortion, Element: bearing.Roller,
		}))
	}
	fmt.Printf("5. ratings          A %.0f N, B %.0f N\n", rating(FeA), rating(FeB))

	// Output:
	// 1. radial loads     A 2170 N, B 2654 N
	// 2. induced thrust   A 680 N, B 832 N
	// 3. axial loads      A 2522 N, B 832 N, A is seated
	// 4. equivalent loads A 4650 N, B 2654 N
	// 5. ratings          A 11484 N, B 6554 N
}

// A hub turns on a standing shaft on two tapered roller bearings. The upper one,
// A, carries 12 kN radially, the lower one, B, 25 kN; the hub pushes down with
// 5 kN. 250 1/min, 8 h a day, 5 days a week, 5 years; chance 0.9 each,
// application factor 1.2, K = 1.5, a catalogue of 90 million revolutions as in
// the first example.
//
// Source: Shigley, Mechanical Engineering Design, 10th ed., problem 11-43
// (statement read, figure and printed answer not at hand; that A is seated is
// taken to mean a direct mounting; figures worked a second time apart from this
// code: 24.05, 34.40 and 35.76 kN).
func Example_bearing2TaperPairOfAHub() {
	const FrA, FrB, push, K = 12e3, 25e3, 5e3, 1.5

	// 1. Thrust that each bearing induces by itself.
	FiA := bearingDone(bearing.InducedThrust(FrA, K, bearing.RatioK))
	FiB := bearingDone(bearing.InducedThrust(FrB, K, bearing.RatioK))
	fmt.Printf("1. induced thrust   A %.2f kN, B %.2f kN\n", FiA/1e3, FiB/1e3)

	// 2. The hub pushes its cups from A towards B. To the bearings that is the
	// same as a push on the shaft the other way.
	pair := bearingDone(bearing.PairThrust(bearing.PairParams{
		Mounting: bearing.Direct, InducedA: FiA, InducedB: FiB, Thrust: -push,
	}))
	fmt.Printf("2. axial loads      A %.2f kN, B %.2f kN, %s is seated\n", pair.AxialA/1e3, pair.AxialB/1e3, pair.Seated)

	// 3. Equivalent loads. B, with its own thrust only, counts with its radial load.
	FeA := 0.4*FrA + K*pair.AxialA
	fmt.Printf("3. equivalent loads A %.2f kN, B %.2f kN\n", FeA/1e3, FrB/1e3)

	// 4. Wanted life as a multiple of the catalogue's.
	xD := 5. * 52 * 5 * 8 * 60 * 250 / 90e6
	fmt.Printf("4. life ratio       %.3f\n", xD)

	// 5. Ratings. At 0.9 the approximate form of the chance gives 0.965, not 1, of
	// the rating life.
	rating := func(load float64) float64 {
		return bearingDone(bearing.CatalogueRating(bearing.CatalogueRatingParams{
			Load: load, Application: 1.2, LifeRatio: xD, Reliability: 0.9,
			Scale: 4.48, Shape: 1.5, Form: bearing.FailedPortion, Element: bearing.Roller,
		}))
	}
	fmt.Printf("5. ratings          A %.2f kN, B %.2f kN\n", rating(FeA)/1e3, rating(FrB)/1e3)

	// Output:
	// 1. induced thrust   A 3.76 kN, B 7.83 kN
	// 2. axial loads      A 12.83 kN, B 7.83 kN, A is seated
	// 3. equivalent loads A 24.05 kN, B 25.00 kN
	// 4. life ratio       1.733
	// 5. ratings          A 34.40 kN, B 35.76 kN
}

// A ball bearing runs at 1440, 1080 and 720 1/min under 3, 4 and 5 kN for a
// quarter, a half and a quarter of the time. Wanted: its rating for 10 000 h.
//
// Source: Jindal, Machine Design (2010), ex. 18-9 (read): 34 219 N.
func Example_bearing3DutyCycle() {
	const rpm, hour = math.Pi / 30, 3600.
	duty := []bearing.DutyBlock{
		{Time: 0.25, Speed: 1440 * rpm, Load: 3000},
		{Time: 0.50, Speed: 1080 * rpm, Load: 4000},
		{Time: 0.25, Speed: 720 * rpm, Load: 5000},
	}

	// 1. The steady load that does the same damage, and the mean speed.
	mean := bearingDone(bearing.MeanLoad(bearing.MeanLoadParams{Blocks: duty, Element: bearing.Ball}))
	fmt.Printf("1. cubic mean load %.0f N at %.0f 1/min\n", mean.Load, mean.Speed/rpm)

	// 2. Revolutions in 10 000 h.
	revolutions := mean.Speed / (2 * math.Pi) * 10000 * hour
	fmt.Printf("2. revolutions     %.0f million\n", revolutions/1e6)

	// 3. Rating.
	C := bearingDone(bearing.RequiredRating(bearing.RequiredRatingParams{
		Load: mean.Load, Revolutions: revolutions, Element: bearing.Ball,
	}))
	fmt.Printf("3. rating          %.0f N\n", C)

	// 4. The other way round: with that rating the duty lasts 10 000 h, and the
	// long middle block does most of the damage.
	life := bearingDone(bearing.DutyLife(bearing.DutyLifeParams{Rating: C, Blocks: duty, Element: bearing.Ball}))
	fmt.Printf("4. life            %.0f h; damage %.0f, %.0f and %.0f %%\n",
		life.Time/hour, 100*life.Shares[0], 100*life.Shares[1], 100*life.Shares[2])

	// Output:
	// 1. cubic mean load 3954 N at 1080 1/min
	// 2. revolutions     648 million
	// 3. rating          34219 N
	// 4. life            10000 h; damage 15, 52 and 34 %
}

// A deep-groove ball bearing is to last 30 000 h at 300 1/min under 1.898 kN with
// an application factor of 1.2 and a chance of 0.9; the catalogue rates for a
// million revolutions (Weibull 0.02, 4.459, 1.483). Wanted: the rating, and the
// chance with the next larger bearing of the table, 19.5 kN.
//
// Source: Shigley, Mechanical Engineering Design, 8th ed., solution to problem
// 11-1 (read): 540, 2.278 kN, 18.59 kN, 0.919.
func Example_bearing4ChanceOfTheBearingChosen() {
	// 1. Wanted life as a multiple of the rating life, and the load.
	xD := 30000. * 300 * 60 / 1e6
	load := 1.2 * 1898
	fmt.Printf("1. life ratio %.0f, load %.3f kN\n", xD, load/1e3)

	// 2. Rating wanted.
	C := bearingDone(bearing.CatalogueRating(bearing.CatalogueRatingParams{
		Load: load, Application: 1, LifeRatio: xD, Reliability: 0.9,
		Guaranteed: 0.02, Scale: 4.459, Shape: 1.483, Form: bearing.Logarithm, Element: bearing.Ball,
	}))
	fmt.Printf("2. rating     %.2f kN\n", C/1e3)

	// 3. Chance with the bearing that the table has.
	R := bearingDone(bearing.Reliability(bearing.ReliabilityParams{
		Load: load, Rating: 19.5e3, LifeRatio: xD,
		Guaranteed: 0.02, Scale: 4.459, Shape: 1.483, Element: bearing.Ball,
	}))
	fmt.Printf("3. chance     %.3f\n", R)

	// Output:
	// 1. life ratio 540, load 2.278 kN
	// 2. rating     18.59 kN
	// 3. chance     0.919
}

// A tapered roller bearing without a maker's page: 17 rollers of 8.5 mm and 16 mm
// effective length on a pitch circle of 49 mm, half angle of the cup 14.04°. Its
// ratings are wanted, and a check of the static one from the other end: the
// standard defines it by a contact pressure of 4000 MPa on the cone where the
// hardest pressed roller carries 5·F_r/(Z·cos α).
//
// Source: ISO 281:2007 and ISO 76:2006 (from memory), worked a second time apart
// from this code: f_c 88.71, 68.67 and 82.08 kN, e 0.375, Y 1.600.
func Example_bearing5RatingsFromCalipers() {
	rollers := bearing.Rollers{
		Count: 17, Diameter: 8.5e-3, Length: 16e-3, PitchDiameter: 49e-3, CupAngle: 14.04 * math.Pi / 180,
	}

	// 1. Factor of the dynamic rating.
	gamma := rollers.Diameter * math.Cos(rollers.CupAngle) / rollers.PitchDiameter
	fc := bearingDone(bearing.RatingFactor(gamma, bearing.ClosedForm))
	fmt.Printf("1. γ = %.4f, f_c = %.2f\n", gamma, fc)

	// 2. Ratings and factors.
	r := bearingDone(bearing.RatingFromRollers(bearing.RatingParams{
		Rollers: rollers, Rows: 1, MaterialFactor: bearing.TaperRollerMaterialFactor, Method: bearing.ClosedForm,
	}))
	fmt.Printf("2. C = %.2f kN, C_0 = %.2f kN, e = %.3f, Y = %.3f\n", r.Dynamic/1e3, r.Static/1e3, r.E, r.Y)

	// 3. Pressure on the cone at C_0, to the two figures that 44 in the formula of
	// C_0 allows.
	hardest := 5 * r.Static / (float64(rollers.Count) * math.Cos(rollers.CupAngle))
	p := bearingDone(bearing.ContactPressure(bearing.PressureParams{Rollers: rollers, Load: hardest, Raceway: bearing.Cone}))
	fmt.Printf("3. p_max = %.1f GPa\n", p/1e9)

	// Output:
	// 1. γ = 0.1683, f_c = 88.71
	// 2. C = 68.67 kN, C_0 = 82.08 kN, e = 0.375, Y = 1.600
	// 3. p_max = 4.0 GPa
}
