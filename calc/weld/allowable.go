package weld

import (
	"math"

	"axlewright/calc/check"
)

// Electrode is the strength class of the weld metal in the American numbering:
// the number is the tensile strength in ksi.
type Electrode string

// Electrode classes of the allowable-stress table.
const (
	E60  Electrode = "E60"
	E70  Electrode = "E70"
	E80  Electrode = "E80"
	E90  Electrode = "E90"
	E100 Electrode = "E100"
	E110 Electrode = "E110"
	E120 Electrode = "E120"
)

var electrodes = []Electrode{E60, E70, E80, E90, E100, E110, E120}

var electrodeKsi = map[Electrode]float64{E60: 60, E70: 70, E80: 80, E90: 90, E100: 100, E110: 110, E120: 120}

const ksi = 6.894757293168e6 // Pa

// ElectrodeAllowable returns the allowable shear on the throat of a fillet weld by electrode class.
//
//	τ_all = 0.30·F_EXX
//
//	electrode  strength class of the weld metal, name
//	τ_all      allowable shear on the throat, Pa
//
// Valid for static load and filler that matches the parts; the parts beside the weld
// are checked apart. It is an allowable stress: no partial factor is added.
// Errors: *check.RangeError for a class that is not in the table.
// Source: AWS D1.1 as given in Shigley, Mechanical Engineering Design, 8th ed., tables 9-4 and 9-6 (from memory).
func ElectrodeAllowable(electrode Electrode) (float64, error) {
	strength, ok := electrodeKsi[electrode]
	if !ok {
		return 0, notNamed("weld.ElectrodeAllowable", "electrode", electrode, electrodes)
	}
	return 0.30 * strength * ksi, nil
}

// AllowableLineForce returns the allowable force on each metre of an equal-legged square fillet.
//
//	f = 0.707·h·τ_all
//
//	electrode  strength class of the weld metal, name
//	leg        leg h, m
//	f          allowable force for each metre of weld, N/m
//
// Valid for static load and matching filler. The factor is the rounded 0.707 of the published table, not √2/2.
// Errors: *check.RangeError for an unknown class or a leg that is not positive.
// Source: Shigley, Mechanical Engineering Design, 8th ed., table 9-6 (from memory).
func AllowableLineForce(electrode Electrode, leg float64) (float64, error) {
	if err := check.All("weld.AllowableLineForce", check.Positive("leg", leg)); err != nil {
		return 0, err
	}
	allowable, err := ElectrodeAllowable(electrode)
	if err != nil {
		return 0, err
	}
	return 0.707 * leg * allowable, nil
}

// BaseMetalParams is the strength of a part beside a weld, as-rolled: cold work is lost there.
type BaseMetalParams struct {
	Tensile float64 // Pa, S_ut: tensile strength of the part
	Yield   float64 // Pa, S_y: yield strength of the part
}

// BaseMetalAllowable returns the allowable shear on a throat that is diluted by the part's own metal.
//
//	τ_all = min(0.30·S_ut, 0.40·S_y)
//
//	τ_all  allowable shear, Pa
//
// Valid for static load on steel parts.
// Errors: *check.RangeError unless 0 < S_y <= S_ut.
// Source: Shigley, Mechanical Engineering Design, 8th ed., table 9-4 as used in Solutions Manual 9-3.
func BaseMetalAllowable(p BaseMetalParams) (float64, error) {
	if err := check.All("weld.BaseMetalAllowable",
		check.Positive("Tensile", p.Tensile),
		check.That("Yield", p.Yield, p.Yield > 0 && p.Yield <= p.Tensile, "0 < Yield <= Tensile"),
	); err != nil {
		return 0, err
	}
	return math.Min(0.30*p.Tensile, 0.40*p.Yield), nil
}

// NotchAt names a place in a welded joint where fatigue starts.
type NotchAt string

// Places with a fatigue notch factor.
const (
	ReinforcedButt NotchAt = "reinforced butt weld"
	TransverseToe  NotchAt = "toe of transverse fillet"
	ParallelEnd    NotchAt = "end of parallel fillet"
	SharpTeeButt   NotchAt = "tee butt joint with sharp corners"
)

var notches = []NotchAt{ReinforcedButt, TransverseToe, ParallelEnd, SharpTeeButt}

// NotchFactor returns the fatigue notch factor of a place in a welded joint, for nominal-stress sums on parts.
//
//	K_fs = table 9-5 by place
//
//	place  place in the joint, name
//	K_fs   fatigue notch factor, -
//
// 1.2 reinforced butt, 1.5 toe of a transverse fillet, 2.7 end of a parallel fillet,
// 2.0 tee butt with sharp corners.
// Valid for steel. Use either this or the detail categories, never both.
// Errors: *check.RangeError for a place that is not in the table.
// Source: Shigley, Mechanical Engineering Design, 8th ed., table 9-5 (from memory).
func NotchFactor(place NotchAt) (float64, error) {
	switch place {
	case ReinforcedButt:
		return 1.2, nil
	case TransverseToe:
		return 1.5, nil
	case ParallelEnd:
		return 2.7, nil
	case SharpTeeButt:
		return 2.0, nil
	}
	return 0, notNamed("weld.NotchFactor", "place", place, notches)
}
