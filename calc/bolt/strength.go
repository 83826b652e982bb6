package bolt

import (
	"fmt"
	"math"

	"axlewright/calc/check"
)

// Class is a strength class of metric bolts, as stamped on the head.
type Class string

// The classes of ISO 898-1.
const (
	Class4_6  Class = "4.6"
	Class4_8  Class = "4.8"
	Class5_6  Class = "5.6"
	Class5_8  Class = "5.8"
	Class6_8  Class = "6.8"
	Class8_8  Class = "8.8"
	Class9_8  Class = "9.8"
	Class10_9 Class = "10.9"
	Class12_9 Class = "12.9"
)

// StrengthResult holds the least strength that a bolt of a class or grade must have.
type StrengthResult struct {
	Tensile float64 // Pa, R_m: least tensile strength
	Yield   float64 // Pa, R_p0.2: least yield or proof strength (lower yield for 4.6 and 5.6)
	Proof   float64 // Pa, S_p: stress under proof load
}

// Least values in MPa: R_m, yield, S_p up to 16 mm and above.
var classStrengths = map[Class][2][3]float64{
	Class4_6:  {{400, 240, 225}, {400, 240, 225}},
	Class4_8:  {{420, 340, 310}, {420, 340, 310}},
	Class5_6:  {{500, 300, 280}, {500, 300, 280}},
	Class5_8:  {{520, 420, 380}, {520, 420, 380}},
	Class6_8:  {{600, 480, 440}, {600, 480, 440}},
	Class8_8:  {{800, 640, 580}, {830, 660, 600}},
	Class9_8:  {{900, 720, 650}, {}}, // the class ends at 16 mm
	Class10_9: {{1040, 940, 830}, {1040, 940, 830}},
	Class12_9: {{1220, 1100, 970}, {1220, 1100, 970}},
}

// ClassStrength returns the least strength of a metric bolt by its strength class and diameter.
//
//	R_m = table(class, d)
//
//	class  strength class stamped on the head, name
//	d      nominal diameter, m
//
// Valid for M1.6 to M39 (9.8 to M16), of carbon or alloy steel at room temperature.
// Errors: *check.RangeError outside that range or for an unknown class.
// Source: ISO 898-1:2013, table 3 (from memory).
func ClassStrength(class Class, d float64) (StrengthResult, error) {
	rows, known := classStrengths[class]
	if err := check.All("bolt.ClassStrength",
		check.That("class", 0, known, fmt.Sprintf("4.6 to 12.9, not %q", class)),
		check.Within("d", d, 1.6e-3, 39e-3),
		check.That("d", d, class != Class9_8 || d <= 16e-3, "up to 16 mm for 9.8"),
	); err != nil {
		return StrengthResult{}, err
	}
	row := rows[0]
	if d > 16e-3+1e-9 {
		row = rows[1]
	}
	return StrengthResult{Tensile: row[0] * 1e6, Yield: row[1] * 1e6, Proof: row[2] * 1e6}, nil
}

// ProofLoad returns the proof load of an ISO metric bolt.
//
//	F_p = S_p·A_s
//
//	class  strength class stamped on the head, name
//	d      nominal diameter, m
//	pitch  thread pitch P, m
//	F_p    proof load, N
//
// Valid for M1.6 to M39 (9.8 to M16) with 0 < pitch < d/2.
// Errors: *check.RangeError outside that range or for an unknown class.
// Source: ISO 898-1:2013, tables 5 and 7 (from memory).
func ProofLoad(class Class, d, pitch float64) (float64, error) {
	if err := checkThread("bolt.ProofLoad", d, pitch); err != nil {
		return 0, err
	}
	area, err := StressArea(d, pitch)
	if err != nil {
		return 0, err
	}
	strength, err := ClassStrength(class, d)
	if err != nil {
		return 0, err
	}
	return strength.Proof * area, nil
}

// UnifiedGrade is a grade of inch bolts by SAE J429, read from the marks on the head.
type UnifiedGrade string

// The grades of SAE J429.
const (
	Grade1  UnifiedGrade = "1"
	Grade2  UnifiedGrade = "2"
	Grade4  UnifiedGrade = "4"
	Grade5  UnifiedGrade = "5"
	Grade52 UnifiedGrade = "5.2"
	Grade7  UnifiedGrade = "7"
	Grade8  UnifiedGrade = "8"
	Grade82 UnifiedGrade = "8.2"
)

type gradeRow struct {
	upTo                  float64 // inch, largest diameter
	proof, tensile, yield float64 // kpsi, least
}

var gradeRows = map[UnifiedGrade][]gradeRow{
	Grade1:  {{1.5, 33, 60, 36}},
	Grade2:  {{0.75, 55, 74, 57}, {1.5, 33, 60, 36}},
	Grade4:  {{1.5, 65, 115, 100}},
	Grade5:  {{1, 85, 120, 92}, {1.5, 74, 105, 81}},
	Grade52: {{1, 85, 120, 92}},
	Grade7:  {{1.5, 105, 133, 115}},
	Grade8:  {{1.5, 120, 150, 130}},
	Grade82: {{1, 120, 150, 130}},
}

// UnifiedStrength returns the least strength of an inch bolt by its grade and diameter.
//
//	R_m = table(grade, d)
//
//	grade  grade read from the head marks, name
//	d      nominal diameter, m
//
// Valid for 1/4 to 1 1/2 inch (5.2 and 8.2 to 1 inch).
// Errors: *check.RangeError outside that range or for an unknown grade.
// Source: SAE J429, as tabled in Shigley's Mechanical Engineering Design, 9th ed., table 8-9 (from memory).
func UnifiedStrength(grade UnifiedGrade, d float64) (StrengthResult, error) {
	rows, known := gradeRows[grade]
	if err := check.All("bolt.UnifiedStrength",
		check.That("grade", 0, known, fmt.Sprintf("1, 2, 4, 5, 5.2, 7, 8 or 8.2, not %q", grade)),
		check.Within("d", d, 0.25*inch-1e-9, 1.5*inch+1e-9),
	); err != nil {
		return StrengthResult{}, err
	}
	const kpsi = 6.894757e6 // Pa
	for _, r := range rows {
		if d <= r.upTo*inch+1e-9 {
			return StrengthResult{Tensile: r.tensile * kpsi, Yield: r.yield * kpsi, Proof: r.proof * kpsi}, nil
		}
	}
	return StrengthResult{}, check.All("bolt.UnifiedStrength",
		check.That("d", d, false, fmt.Sprintf("up to %g inch for grade %s", rows[len(rows)-1].upTo, grade)))
}

// OldGrade is a letter grade of old British high-tensile bolts, read from the head.
type OldGrade string

// The letters met on BSF and early UNF bolts.
const (
	OldGradeR OldGrade = "R"
	OldGradeS OldGrade = "S"
	OldGradeT OldGrade = "T"
	OldGradeV OldGrade = "V"
)

var oldTensile = map[OldGrade]float64{OldGradeR: 45, OldGradeS: 50, OldGradeT: 55, OldGradeV: 65} // tonf/in²

// OldGradeTensile returns the least tensile strength of an old British bolt by the letter on its head.
//
//	R_m = table(grade)
//
//	grade  letter on the head, name
//	R_m    least tensile strength, Pa
//
// Valid for marked bolts only; an unmarked head says nothing.
// Errors: *check.RangeError for an unknown letter.
// Source: BS 1083 and BS 1768 letters, 45, 50, 55 and 65 tonf/in² (from memory, medium confidence: check against the mark).
func OldGradeTensile(grade OldGrade) (float64, error) {
	tons, known := oldTensile[grade]
	if err := check.All("bolt.OldGradeTensile",
		check.That("grade", 0, known, fmt.Sprintf("R, S, T or V, not %q", grade)),
	); err != nil {
		return 0, err
	}
	const tonfPerIn2 = 15.4443e6 // Pa
	return tons * tonfPerIn2, nil
}

// keyMM is a length in mm to the nearest µm, to find table keys.
func keyMM(length float64) float64 { return math.Round(length*1e6) / 1e3 }
