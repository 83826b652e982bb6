package fit

import (
	"fmt"
	"strconv"
	"strings"

	"axlewright/calc/check"
)

// Zone is a tolerance class: capital letters for holes, small ones for shafts: "K7", "m6".
type Zone string

// LimitsResult holds the limit deviations of a size.
type LimitsResult struct {
	Upper float64 // m, ES or es: upper deviation from the nominal size
	Lower float64 // m, EI or ei: lower deviation from the nominal size
}

// Lower deviations ei in µm of shafts that have one figure a main step.
var mainDeviations = map[string][]float64{
	"k": {0, 1, 1, 1, 2, 2, 2, 3, 3, 4, 4, 4, 5}, // IT4 to IT7 only
	"m": {2, 4, 6, 7, 8, 9, 11, 13, 15, 17, 20, 21, 23},
	"n": {4, 8, 10, 12, 15, 17, 20, 23, 27, 31, 34, 37, 40},
	"p": {6, 12, 15, 18, 22, 26, 32, 37, 43, 50, 56, 62, 68},
}

// Upper deviations es in µm of clearance shafts.
var clearanceDeviations = map[string][]float64{
	"f": {-6, -10, -13, -16, -20, -25, -30, -36, -43, -50, -56, -62, -68},
	"g": {-2, -4, -5, -6, -7, -9, -10, -12, -14, -15, -17, -18, -20},
	"h": {0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0},
}

// Finer steps, mm, and the lower deviations ei in µm that follow them.
var fineSteps = []float64{3, 6, 10, 18, 30, 50, 65, 80, 100, 120, 140, 160, 180, 200, 225, 250}

var fineDeviations = map[string][]float64{
	"r": {10, 15, 19, 23, 28, 34, 41, 43, 51, 54, 63, 65, 68, 77, 80, 84},
	"s": {14, 19, 23, 28, 35, 43, 53, 59, 71, 79, 92, 100, 108, 122, 130, 140},
}

// The class J follows no formula: ES in µm of J6, J7, J8.
var holeJ = map[int][]float64{
	6: {2, 5, 5, 6, 8, 10, 13, 16, 18, 22, 25, 29, 33},
	7: {4, 6, 8, 10, 12, 14, 18, 22, 26, 30, 36, 39, 43},
	8: {6, 10, 12, 15, 20, 24, 28, 34, 41, 47, 55, 60, 66},
}

// A zoneRule says how the deviation of a letter is found and for which grades.
type zoneRule struct {
	from, to int       // grades
	table    []float64 // µm: ei of the shaft, es for f, g and h; nil for js and J
	fine     bool      // table follows the finer steps
}

func ruleOf(letter string) (zoneRule, bool) {
	switch letter {
	case "js", "JS":
		return zoneRule{from: 5, to: 12}, true
	case "h", "H":
		return zoneRule{from: 5, to: 12, table: clearanceDeviations["h"]}, true
	case "f", "g", "F", "G":
		return zoneRule{from: 5, to: 9, table: clearanceDeviations[strings.ToLower(letter)]}, true
	case "J":
		return zoneRule{from: 6, to: 8}, true
	case "k", "m", "n", "p":
		return zoneRule{from: 5, to: 7, table: mainDeviations[letter]}, true
	case "K", "M", "N":
		return zoneRule{from: 6, to: 8, table: mainDeviations[strings.ToLower(letter)]}, true
	case "P":
		return zoneRule{from: 6, to: 7, table: mainDeviations["p"]}, true
	case "r", "s":
		return zoneRule{from: 5, to: 7, table: fineDeviations[letter], fine: true}, true
	case "R", "S":
		return zoneRule{from: 6, to: 7, table: fineDeviations[strings.ToLower(letter)], fine: true}, true
	}
	return zoneRule{}, false
}

// Limits returns the limit deviations of a size in a tolerance class.
//
//	ES, EI = table(zone, d)
//	shaft k to s: es = ei + IT;  shaft f to h: ei = es − IT;  js and JS: ± IT/2
//	hole F to H: EI = −es of the shaft;  hole K to S: ES = −ei + IT_n − IT_n−1
//
//	zone  tolerance class, name
//	d     nominal size, m
//
// Valid for js, JS, h and H with IT5 to IT12; f, g, F, G with IT5 to IT9; k, m, n, p, r, s with IT5 to IT7;
// J, K, M, N with IT6 to IT8; P, R, S with IT6 and IT7; up to 500 mm, r, s, R, S up to 250 mm, J to S above 3 mm.
// Errors: *check.RangeError outside that range or for an unknown class.
// Source: ISO 286-1:2010, tables 2 to 5, and ISO 286-2:2010; deviations from memory, checked against reprints of the tables.
func Limits(zone Zone, d float64) (LimitsResult, error) {
	const fn = "fit.Limits"
	letter := strings.TrimRight(string(zone), "0123456789")
	grade, _ := strconv.Atoi(string(zone)[len(letter):]) // no digits leave 0, which no letter knows
	rule, known := ruleOf(letter)
	hole := known && letter[0] < 'a'
	transition := hole && letter != "JS" && letter > "H"
	if err := check.All(fn,
		check.That("zone", 0, known && grade >= rule.from && grade <= rule.to,
			fmt.Sprintf("a class of the table, such as K7 or m6, not %q", zone)),
		check.That("d", d, d > 0 && d <= 0.5+1e-9, "0 < d <= 0.5 m"),
		check.That("d", d, !rule.fine || d <= 0.25+1e-9, "up to 250 mm for r and s"),
		check.That("d", d, !transition || d > 3e-3+1e-9, "above 3 mm for holes J to S"),
	); err != nil {
		return LimitsResult{}, err
	}
	i := stepOf(steps, d)
	it, step := grades[i][grade-1], i
	if rule.fine {
		step = stepOf(fineSteps, d)
	}
	var upper float64 // µm
	switch {
	case letter == "js" || letter == "JS":
		upper = it / 2
	case letter == "J":
		upper = holeJ[grade][i]
	case letter == "f" || letter == "g" || letter == "h":
		upper = rule.table[step]
	case letter == "F" || letter == "G" || letter == "H":
		upper = it - rule.table[step]
	case letter == "M" && grade == 6 && steps[i] == 315:
		upper = -9 // the one exception of the standard, where the rule gives −11
	case hole:
		upper = -rule.table[step] + it - grades[i][grade-2]
	default:
		upper = rule.table[step] + it
	}
	return LimitsResult{Upper: upper * 1e-6, Lower: (upper - it) * 1e-6}, nil
}

// FitResult holds what a hole and a shaft make of each other.
type FitResult struct {
	Loosest  float64 // m, greatest clearance, negative where even the loosest pair interferes
	Tightest float64 // m, least clearance, negative for interference
	Middle   float64 // m, clearance of the middles of both tolerances
}

// Clearance returns the loosest and tightest pair of a hole and a shaft of one nominal size.
//
//	c_max = ES − ei,  c_min = EI − es
//
//	hole   tolerance class of the hole, name
//	shaft  tolerance class of the shaft, name
//	d      nominal size, m
//
// Valid for the classes and sizes of Limits; bearings have tolerances of their own (ISO 492).
// Errors: *check.RangeError outside that range, or where hole and shaft are mistaken for each other.
// Source: ISO 286-1:2010, 3.3 and 3.4 (from memory).
func Clearance(hole, shaft Zone, d float64) (FitResult, error) {
	if err := check.All("fit.Clearance",
		check.That("hole", 0, hole != "" && hole[0] < 'a', fmt.Sprintf("a capital letter, not %q", hole)),
		check.That("shaft", 0, shaft != "" && shaft[0] >= 'a', fmt.Sprintf("a small letter, not %q", shaft)),
	); err != nil {
		return FitResult{}, err
	}
	h, err := Limits(hole, d)
	if err != nil {
		return FitResult{}, err
	}
	s, err := Limits(shaft, d)
	if err != nil {
		return FitResult{}, err
	}
	r := FitResult{Loosest: h.Upper - s.Lower, Tightest: h.Lower - s.Upper}
	r.Middle = (r.Loosest + r.Tightest) / 2
	return r, nil
}
