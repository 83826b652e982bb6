package gear

import (
	"math"

	"axlewright/calc/check"
)

// LoadFactors raise the nominal tooth load to the one that acts. Each may be
// left out; the value then taken and its usual spread stand beside it.
type LoadFactors struct {
	Application float64 // -, K_A: shock from outside; optional, 1.00, because the torque given is to hold it
	Dynamic     float64 // -, K_v: load from the pair's own errors; optional, 1.05 (1.00 to 1.20) at the speeds of an axle
	FaceLoad    float64 // -, K_Hβ: uneven load along the face, flank; optional, 1.65 (1.50 to 2.00), an overhung pinion with the pattern of each pair checked under light load
	Transverse  float64 // -, K_Hα: uneven sharing between tooth pairs; optional, 1.00 (1.00 to 1.15)
	Lengthwise  float64 // -, K_F0: relief of the root by the curve of the tooth; optional, 1.00 (1.00 to 1.15)
}

// filled puts in what was left out.
func (l LoadFactors) filled() LoadFactors {
	return LoadFactors{orElse(l.Application, 1), orElse(l.Dynamic, 1.05), orElse(l.FaceLoad, 1.65),
		orElse(l.Transverse, 1), orElse(l.Lengthwise, 1)}
}

func (l LoadFactors) conditions() []check.Condition {
	return []check.Condition{
		check.Within("Load.Application", l.Application, 0.5, 5), check.Within("Load.Dynamic", l.Dynamic, 1, 3),
		check.Within("Load.FaceLoad", l.FaceLoad, 1, 4), check.Within("Load.Transverse", l.Transverse, 1, 3),
		check.Within("Load.Lengthwise", l.Lengthwise, 1, 1.15),
	}
}

// Mounting says how the two members are held.
type Mounting string

const (
	BothStraddled Mounting = "both straddled" // bearings on both sides of either member
	OneOverhung   Mounting = "one overhung"   // the usual axle: pinion overhung, wheel between bearings
	BothOverhung  Mounting = "both overhung"
)

// PatternCheck says how the contact pattern was verified.
type PatternCheck string

const (
	PairUnderFullLoad  PatternCheck = "pair under full load"  // each pair in its own casting
	PairUnderLightLoad PatternCheck = "pair under light load" // each pair in its own casting
	SamplePair         PatternCheck = "sample pair"           // one pair for all, full load estimated
)

// FaceLoadFactor returns the factor for uneven load along the face, of the flank.
//
//	K_Hβ = 1.5·K_Hβbe
//	K_Hβbe by mounting (both straddled, one overhung, both overhung)
//	pair under full load:  1.00, 1.00, 1.00
//	pair under light load: 1.05, 1.10, 1.25
//	sample pair:           1.20, 1.32, 1.50
//
//	mounting  how the members are held, name
//	pattern   how the contact pattern was verified, name
//	K_Hβ      face load factor of the flank, -
//
// Valid for a pattern that covers 0.85 of the face or more under full load.
// Errors: *check.RangeError for an unknown mounting or check.
// Source: ISO 10300-1:2014, method C of the face load factor (from memory).
func FaceLoadFactor(mounting Mounting, pattern PatternCheck) (float64, error) {
	rows := map[PatternCheck][3]float64{
		PairUnderFullLoad:  {1.00, 1.00, 1.00},
		PairUnderLightLoad: {1.05, 1.10, 1.25},
		SamplePair:         {1.20, 1.32, 1.50},
	}
	columns := map[Mounting]int{BothStraddled: 0, OneOverhung: 1, BothOverhung: 2}
	row, known := rows[pattern]
	column, held := columns[mounting]
	if err := check.All("gear.FaceLoadFactor",
		check.That("mounting", 0, held, "a mounting of the list"), check.That("pattern", 0, known, "a check of the list"),
	); err != nil {
		return 0, err
	}
	return 1.5 * row[column], nil
}

// LengthwiseCurvatureFactor returns the relief that the curve of a spiral tooth
// gives its root, because it makes the load shift less to the ends.
//
//	K_F0 = 0.211·(r_c0/R_m2)^q + 0.789
//	q = 0.279/lg(sin β2)
//	held between 1.00 and 1.15
//
//	cutter    cutter radius r_c0, m
//	distance  mean cone distance of the wheel R_m2, m
//	spiral    mean spiral angle of the wheel β2, rad
//	K_F0      lengthwise curvature factor, -
//
// Valid for 10° ≤ spiral ≤ 60°. The limits are the standard's own; straight teeth take 1.
// Errors: *check.RangeError outside that range.
// Source: ISO 10300-1:2014, lengthwise curvature factor; ANSI/AGMA 2003-B97, K_x (both from memory).
func LengthwiseCurvatureFactor(cutter, distance, spiral float64) (float64, error) {
	if err := check.All("gear.LengthwiseCurvatureFactor",
		check.Positive("cutter", cutter), check.Positive("distance", distance),
		check.That("spiral", spiral, within(spiral, 10, 60), "10° to 60°"),
	); err != nil {
		return 0, err
	}
	q := 0.279 / math.Log10(math.Sin(spiral))
	return min(1.15, max(1, 0.211*math.Pow(cutter/distance, q)+0.789)), nil
}
