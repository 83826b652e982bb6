package bolt

import (
	"fmt"

	"axlewright/calc/check"
)

// Designation names a standard thread as it is written on a drawing or a tap:
// "M12x1.75", "7/16-20 UNF", "3/8 BSF".
type Designation string

// ThreadSizeResult is one standard thread with its usual tapping drill.
type ThreadSizeResult struct {
	Form     Form    // name, form of thread
	Diameter float64 // m, d: nominal diameter
	Pitch    float64 // m, P: thread pitch
	Drill    float64 // m, usual tapping drill, nearest 0.1 mm to d − P
}

const inch = 0.0254 // m, exact

type standardSize struct {
	form     Form
	diameter float64 // mm, or inch for the inch forms
	pitch    float64 // mm, or threads per inch
	drill    float64 // mm
}

// The sizes found on drive axles of cars and light trucks. Pitches: ISO 261,
// ASME B1.1, BS 84 (from memory). Drills: common practice, no source.
var standardSizes = map[Designation]standardSize{
	"M5x0.8": {Metric, 5, 0.8, 4.2}, "M6x1": {Metric, 6, 1, 5.0},
	"M8x1.25": {Metric, 8, 1.25, 6.8}, "M8x1": {Metric, 8, 1, 7.0},
	"M10x1.5": {Metric, 10, 1.5, 8.5}, "M10x1.25": {Metric, 10, 1.25, 8.8}, "M10x1": {Metric, 10, 1, 9.0},
	"M12x1.75": {Metric, 12, 1.75, 10.2}, "M12x1.5": {Metric, 12, 1.5, 10.5}, "M12x1.25": {Metric, 12, 1.25, 10.8},
	"M14x2": {Metric, 14, 2, 12.0}, "M14x1.5": {Metric, 14, 1.5, 12.5},
	"M16x2": {Metric, 16, 2, 14.0}, "M16x1.5": {Metric, 16, 1.5, 14.5},
	"M18x2.5": {Metric, 18, 2.5, 15.5}, "M18x1.5": {Metric, 18, 1.5, 16.5},
	"M20x2.5": {Metric, 20, 2.5, 17.5}, "M20x1.5": {Metric, 20, 1.5, 18.5},
	"M22x2.5": {Metric, 22, 2.5, 19.5}, "M22x1.5": {Metric, 22, 1.5, 20.5},
	"M24x3": {Metric, 24, 3, 21.0}, "M24x2": {Metric, 24, 2, 22.0},

	"1/4-20 UNC": {Unified, 1. / 4, 20, 5.1}, "1/4-28 UNF": {Unified, 1. / 4, 28, 5.5},
	"5/16-18 UNC": {Unified, 5. / 16, 18, 6.5}, "5/16-24 UNF": {Unified, 5. / 16, 24, 6.9},
	"3/8-16 UNC": {Unified, 3. / 8, 16, 8.0}, "3/8-24 UNF": {Unified, 3. / 8, 24, 8.5},
	"7/16-14 UNC": {Unified, 7. / 16, 14, 9.3}, "7/16-20 UNF": {Unified, 7. / 16, 20, 9.9},
	"1/2-13 UNC": {Unified, 1. / 2, 13, 10.8}, "1/2-20 UNF": {Unified, 1. / 2, 20, 11.5},
	"9/16-12 UNC": {Unified, 9. / 16, 12, 12.2}, "9/16-18 UNF": {Unified, 9. / 16, 18, 12.9},
	"5/8-11 UNC": {Unified, 5. / 8, 11, 13.5}, "5/8-18 UNF": {Unified, 5. / 8, 18, 14.5},
	"3/4-10 UNC": {Unified, 3. / 4, 10, 16.5}, "3/4-16 UNF": {Unified, 3. / 4, 16, 17.5},

	"1/4 BSW": {Whitworth, 1. / 4, 20, 5.1}, "1/4 BSF": {Whitworth, 1. / 4, 26, 5.3},
	"5/16 BSW": {Whitworth, 5. / 16, 18, 6.5}, "5/16 BSF": {Whitworth, 5. / 16, 22, 6.8},
	"3/8 BSW": {Whitworth, 3. / 8, 16, 7.9}, "3/8 BSF": {Whitworth, 3. / 8, 20, 8.3},
	"7/16 BSW": {Whitworth, 7. / 16, 14, 9.3}, "7/16 BSF": {Whitworth, 7. / 16, 18, 9.7},
	"1/2 BSW": {Whitworth, 1. / 2, 12, 10.5}, "1/2 BSF": {Whitworth, 1. / 2, 16, 11.1},
	"9/16 BSF": {Whitworth, 9. / 16, 16, 12.7}, "5/8 BSW": {Whitworth, 5. / 8, 11, 13.5},
	"5/8 BSF": {Whitworth, 5. / 8, 14, 14.0}, "3/4 BSW": {Whitworth, 3. / 4, 10, 16.5},
	"3/4 BSF": {Whitworth, 3. / 4, 12, 16.9},
}

// StandardThread returns the form, diameter, pitch and tapping drill of a standard thread.
//
//	d = table(designation)
//
//	designation  thread as written on a drawing, name
//
// Valid for the sizes of the table: M5 to M24, UNC, UNF, BSW and BSF from 1/4 to 3/4 inch.
// Errors: *check.RangeError for a designation that the table does not hold.
// Source: ISO 261:1998, ASME B1.1-2003, BS 84:1956 (from memory); drills are common practice, no source.
func StandardThread(designation Designation) (ThreadSizeResult, error) {
	size, known := standardSizes[designation]
	if err := check.All("bolt.StandardThread",
		check.That("designation", 0, known, fmt.Sprintf("the sizes M5 to M24 and 1/4 to 3/4 inch, not %q", designation)),
	); err != nil {
		return ThreadSizeResult{}, err
	}
	result := ThreadSizeResult{Form: size.form, Diameter: size.diameter * 1e-3, Pitch: size.pitch * 1e-3, Drill: size.drill * 1e-3}
	if size.form != Metric {
		result.Diameter, result.Pitch = size.diameter*inch, inch/size.pitch
	}
	return result, nil
}

// HexHeadResult is what a hexagon head bears on.
type HexHeadResult struct {
	AcrossFlats float64 // m, s: width across flats
	Bearing     float64 // m, d_W: least diameter of the bearing face, without a washer
	Hole        float64 // m, d_h: clearance hole, medium series
}

// By nominal diameter in mm: s and d_W,min of product grade A (ISO 4014), d_h
// of ISO 273 medium, all in mm.
var hexHeads = map[float64][3]float64{
	5: {8, 6.88, 5.5}, 6: {10, 8.88, 6.6}, 8: {13, 11.63, 9}, 10: {16, 14.63, 11},
	12: {18, 16.63, 13.5}, 14: {21, 19.64, 15.5}, 16: {24, 22.49, 17.5}, 18: {27, 25.34, 20},
	20: {30, 28.19, 22}, 22: {34, 31.71, 24}, 24: {36, 33.61, 26},
}

// HexHead returns the bearing face and the clearance hole of a metric hexagon bolt.
//
//	d_W = table(d)
//
//	d  nominal diameter, m
//
// Valid for M5 to M24 of ISO 4014/4017, product grade A, without washer or flange.
// Errors: *check.RangeError for a diameter that the table does not hold.
// Source: ISO 4014:2011, table 1; ISO 273:1979, medium (from memory).
func HexHead(d float64) (HexHeadResult, error) {
	row, known := hexHeads[keyMM(d)]
	if err := check.All("bolt.HexHead",
		check.That("d", d, known, "a standard size of M5 to M24"),
	); err != nil {
		return HexHeadResult{}, err
	}
	return HexHeadResult{AcrossFlats: row[0] * 1e-3, Bearing: row[1] * 1e-3, Hole: row[2] * 1e-3}, nil
}
