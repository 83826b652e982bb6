package material

import (
	"fmt"

	"axlewright/calc/check"
)

// Scale is a hardness scale.
type Scale string

// Scales of the table.
const (
	Vickers   Scale = "HV"
	Brinell   Scale = "HBW"
	RockwellC Scale = "HRC"
)

func (s Scale) known(fn, param string) error {
	if s != Vickers && s != Brinell && s != RockwellC {
		return notNamed(fn, param, string(s), "HV, HBW, HRC")
	}
	return nil
}

func (s Scale) column(c conversion) float64 {
	switch s {
	case Vickers:
		return c.hv
	case Brinell:
		return c.hbw
	}
	return c.hrc
}

// HardnessParams is a hardness to be converted.
type HardnessParams struct {
	Value float64 // -, hardness read
	From  Scale   // name, scale it was read on
	To    Scale   // name, scale wanted
}

// ConvertHardness returns a hardness on another scale.
//
//	H = table A.1, straight lines between its rows
//
//	H  hardness on the scale wanted, -
//
// Valid for unalloyed and low-alloy steel and cast steel, HV 80 to 940, HBW 76 to 618,
// HRC 20.3 to 68. A converted value is a guide: it never replaces a reading.
// Errors: *check.RangeError where either scale does not reach or is not in the table.
// Source: ISO 18265:2013, table A.1 (DIN 50150), read in a copy.
func ConvertHardness(p HardnessParams) (float64, error) {
	const fn = "material.ConvertHardness"
	if err := p.From.known(fn, "From"); err != nil {
		return 0, err
	}
	if err := p.To.known(fn, "To"); err != nil {
		return 0, err
	}
	return along(fn, "Value", p.Value, p.From.column, p.To.column)
}

// StrengthParams is a hardness from which a strength is to be told.
type StrengthParams struct {
	Value  float64 // -, hardness read
	Scale  Scale   // name, scale it was read on
	Family Family  // name, family of the metal
}

// TensileFromHardness returns the tensile strength that goes with a hardness.
//
//	R_m = table A.1, straight lines between its rows; about 3.2 MPa to each HV
//
//	R_m  tensile strength, Pa
//
// Valid for the families of steel only, HV 80 to 650; on a case-hardened part for the core.
// It is the least reliable of the conversions. Iron of one hardness may have half or
// twice the strength: it is refused.
// Errors: *check.RangeError for iron and bronze, or outside the table.
// Source: ISO 18265:2013, table A.1 (DIN 50150), read in a copy.
func TensileFromHardness(p StrengthParams) (float64, error) {
	const fn = "material.TensileFromHardness"
	if err := steel(fn, p.Family, p.Scale); err != nil {
		return 0, err
	}
	rm, err := along(fn, "Value", p.Value, p.Scale.column, func(c conversion) float64 { return c.rm })
	return rm * 1e6, err
}

// TensileParams is a tensile strength from which a hardness is to be told.
type TensileParams struct {
	Tensile float64 // Pa, R_m: tensile strength
	Scale   Scale   // name, scale wanted
	Family  Family  // name, family of the metal
}

// HardnessFromTensile returns the hardness that goes with a tensile strength.
//
//	H = table A.1, straight lines between its rows
//
//	H  hardness on the scale wanted, -
//
// Valid for the families of steel only, 255 to 2180 MPa.
// Errors: *check.RangeError for iron and bronze, or outside the table.
// Source: ISO 18265:2013, table A.1 (DIN 50150), read in a copy.
func HardnessFromTensile(p TensileParams) (float64, error) {
	const fn = "material.HardnessFromTensile"
	if err := steel(fn, p.Family, p.Scale); err != nil {
		return 0, err
	}
	return along(fn, "Tensile", p.Tensile/1e6, func(c conversion) float64 { return c.rm }, p.Scale.column)
}

func steel(fn string, family Family, scale Scale) error {
	if err := scale.known(fn, "Scale"); err != nil {
		return err
	}
	f, err := FamilyOf(family)
	if err != nil || !f.FromHardness {
		return notNamed(fn, "Family", string(family), "the families of steel")
	}
	return nil
}

// along goes from one column of the table to another by straight lines.
func along(fn, param string, value float64, from, to func(conversion) float64) (float64, error) {
	var low, high float64
	for i := 1; i < len(conversions); i++ {
		a, b := conversions[i-1], conversions[i]
		if from(a) == 0 || from(b) == 0 || to(a) == 0 || to(b) == 0 {
			continue
		}
		if low == 0 {
			low = from(a)
		}
		high = from(b)
		if value >= from(a) && value <= from(b) {
			share := (value - from(a)) / (from(b) - from(a))
			return to(a) + share*(to(b)-to(a)), nil
		}
	}
	return 0, check.All(fn, check.Condition{Param: param, Value: value, Range: fmt.Sprintf("%g to %g", low, high)})
}

// nameError says that a name does not fit; it unwraps to a *check.RangeError.
type nameError struct {
	outside *check.RangeError
	given   string
}

func (e *nameError) Error() string {
	return fmt.Sprintf("%s: %s %q is not one of %s", e.outside.Func, e.outside.Param, e.given, e.outside.Range)
}

func (e *nameError) Unwrap() error { return e.outside }

func notNamed(fn, param, given, known string) error {
	return &nameError{&check.RangeError{Func: fn, Param: param, Range: known}, given}
}
