package fit

import "axlewright/calc/check"

// Upper ends of the steps of casting sizes, mm.
var castingSteps = []float64{10, 16, 25, 40, 63, 100, 160, 250, 400, 630, 1000}

// Total tolerances in mm: one row a step, DCTG 1 to 16; zero where the standard gives none.
var castingTolerances = [][16]float64{
	{0.09, 0.13, 0.18, 0.26, 0.36, 0.52, 0.74, 1, 1.5, 2, 2.8, 4.2, 0, 0, 0, 0},
	{0.1, 0.14, 0.2, 0.28, 0.38, 0.54, 0.78, 1.1, 1.6, 2.2, 3, 4.4, 0, 0, 0, 0},
	{0.11, 0.15, 0.22, 0.3, 0.42, 0.58, 0.82, 1.2, 1.7, 2.4, 3.2, 4.6, 6, 8, 10, 12},
	{0.12, 0.17, 0.24, 0.32, 0.46, 0.64, 0.9, 1.3, 1.8, 2.6, 3.6, 5, 7, 9, 11, 14},
	{0.13, 0.18, 0.26, 0.36, 0.5, 0.7, 1, 1.4, 2, 2.8, 4, 5.6, 8, 10, 12, 16},
	{0.14, 0.2, 0.28, 0.4, 0.56, 0.78, 1.1, 1.6, 2.2, 3.2, 4.4, 6, 9, 11, 14, 18},
	{0.15, 0.22, 0.3, 0.44, 0.62, 0.88, 1.2, 1.8, 2.5, 3.6, 5, 7, 10, 12, 16, 20},
	{0, 0.24, 0.34, 0.5, 0.7, 1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 14, 18, 22},
	{0, 0, 0.4, 0.56, 0.78, 1.1, 1.6, 2.2, 3.2, 4.4, 6.2, 9, 12, 16, 20, 25},
	{0, 0, 0, 0.64, 0.9, 1.2, 1.8, 2.6, 3.6, 5, 7, 10, 14, 18, 22, 28},
	{0, 0, 0, 0, 1, 1.4, 2, 2.8, 4, 6, 8, 11, 16, 20, 25, 32},
}

// CastingTolerance returns the total tolerance of a size of a raw casting.
//
//	T = table(grade, size)
//
//	grade  dimensional casting tolerance grade, 1 to 16, -
//	size   nominal size of the raw casting, m
//	T      total tolerance, half to each side of nominal, m
//
// Valid for sizes up to 1000 mm; sand castings of iron and steel run from grade 8 to 14 by process and series.
// Walls take one grade more. Machining allowance is separate.
// Errors: *check.RangeError outside that range or where the standard gives no figure.
// Source: ISO 8062-3:2007, table 2 (read to 400 mm; above from memory).
func CastingTolerance(grade int, size float64) (float64, error) {
	const fn = "fit.CastingTolerance"
	if err := check.All(fn,
		check.That("grade", float64(grade), grade >= 1 && grade <= 16, "1 to 16"),
		check.That("size", size, size > 0 && size <= 1+1e-9, "0 < size <= 1 m"),
	); err != nil {
		return 0, err
	}
	tolerance := castingTolerances[stepOf(castingSteps, size)][grade-1]
	return tolerance * 1e-3, check.All(fn,
		check.That("size", size, tolerance > 0, "a size for which the standard gives this grade"))
}
