package fit

import (
	"math"

	"axlewright/calc/check"
)

// GradeFormula returns a standard tolerance by the formula behind the ISO table, before its rounding.
//
//	IT = k·i,  i = 0.45·∛D + 0.001·D in µm, D in mm
//	D = √(from·to),  k = 7, 10, 16, 25, 40, 64, 100, 160, 250, 400, 640, 1000, 1600, 2500 for IT5 to IT18
//
//	grade  number of the grade, -
//	from   lower end of the step of sizes, m
//	to     upper end of the step of sizes, m
//	IT     tolerance before rounding, m
//
// Valid for IT5 to IT18 and sizes up to 500 mm, 0 < from < to.
// Errors: *check.RangeError outside that range.
// Source: ISO 286-1:1988, A.3.1 (from memory).
func GradeFormula(grade int, from, to float64) (float64, error) {
	if err := check.All("fit.GradeFormula",
		check.That("grade", float64(grade), grade >= 5 && grade <= 18, "5 to 18"),
		check.Positive("from", from),
		check.That("to", to, to > from && to <= 0.5, "from < to <= 0.5 m"),
	); err != nil {
		return 0, err
	}
	k := [...]float64{7, 10, 16, 25, 40, 64, 100, 160, 250, 400, 640, 1000, 1600, 2500}[grade-5]
	D := math.Sqrt(from*to) * 1e3 // mm
	return k * (0.45*math.Cbrt(D) + 0.001*D) * 1e-6, nil
}

// Upper ends of the main steps of sizes, mm.
var steps = []float64{3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500}

// Standard tolerances in µm: one row a step, IT1 to IT14.
var grades = [][14]float64{
	{0.8, 1.2, 2, 3, 4, 6, 10, 14, 25, 40, 60, 100, 140, 250},
	{1, 1.5, 2.5, 4, 5, 8, 12, 18, 30, 48, 75, 120, 180, 300},
	{1, 1.5, 2.5, 4, 6, 9, 15, 22, 36, 58, 90, 150, 220, 360},
	{1.2, 2, 3, 5, 8, 11, 18, 27, 43, 70, 110, 180, 270, 430},
	{1.5, 2.5, 4, 6, 9, 13, 21, 33, 52, 84, 130, 210, 330, 520},
	{1.5, 2.5, 4, 7, 11, 16, 25, 39, 62, 100, 160, 250, 390, 620},
	{2, 3, 5, 8, 13, 19, 30, 46, 74, 120, 190, 300, 460, 740},
	{2.5, 4, 6, 10, 15, 22, 35, 54, 87, 140, 220, 350, 540, 870},
	{3.5, 5, 8, 12, 18, 25, 40, 63, 100, 160, 250, 400, 630, 1000},
	{4.5, 7, 10, 14, 20, 29, 46, 72, 115, 185, 290, 460, 720, 1150},
	{6, 8, 12, 16, 23, 32, 52, 81, 130, 210, 320, 520, 810, 1300},
	{7, 9, 13, 18, 25, 36, 57, 89, 140, 230, 360, 570, 890, 1400},
	{8, 10, 15, 20, 27, 40, 63, 97, 155, 250, 400, 630, 970, 1550},
}

// StandardTolerance returns a standard tolerance as the ISO table rounds it.
//
//	IT = table(grade, d)
//
//	grade  number of the grade, -
//	d      nominal size, m
//	IT     tolerance, m
//
// Valid for IT1 to IT14 and sizes up to 500 mm; a size on a step belongs to the smaller one.
// Errors: *check.RangeError outside that range.
// Source: ISO 286-1:2010, table 1 (from memory; IT1 to IT9 read in a reprint).
func StandardTolerance(grade int, d float64) (float64, error) {
	if err := check.All("fit.StandardTolerance",
		check.That("grade", float64(grade), grade >= 1 && grade <= 14, "1 to 14"),
		check.That("d", d, d > 0 && d <= 0.5+1e-9, "0 < d <= 0.5 m"),
	); err != nil {
		return 0, err
	}
	return grades[stepOf(steps, d)][grade-1] * 1e-6, nil
}

// stepOf is the index of the first step that holds d.
func stepOf(ends []float64, d float64) int {
	i := 0
	for i < len(ends)-1 && d*1e3 > ends[i]+1e-6 {
		i++
	}
	return i
}
