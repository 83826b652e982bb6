package weld

import (
	"fmt"

	"axlewright/calc/check"
)

// Composition is the analysis of a steel, by mass.
type Composition struct {
	Carbon     float64 // -, C: mass fraction, 0.0018 for 0.18 %
	Silicon    float64 // -, Si: mass fraction; optional
	Manganese  float64 // -, Mn: mass fraction; optional
	Chromium   float64 // -, Cr: mass fraction; optional
	Molybdenum float64 // -, Mo: mass fraction; optional
	Vanadium   float64 // -, V: mass fraction; optional
	Nickel     float64 // -, Ni: mass fraction; optional
	Copper     float64 // -, Cu: mass fraction; optional
	Niobium    float64 // -, Nb: mass fraction; optional
	Boron      float64 // -, B: mass fraction; optional
}

// check refuses figures that are not a steel: above 0.6 % C or 2 % of an alloying
// element (3.5 % Ni) the equivalents below were never fitted, and a fraction typed as
// per cent is a hundred times too large. Manganese goes to 2.1 %, the most that
// EN 10149-2:2013, table 1, lets S700MC have.
func (c Composition) check(fn string) error {
	const percent = 0.01
	for _, e := range []struct {
		name  string
		value float64
		most  float64
	}{
		{"Carbon", c.Carbon, 0.6}, {"Silicon", c.Silicon, 2}, {"Manganese", c.Manganese, 2.1},
		{"Chromium", c.Chromium, 2}, {"Molybdenum", c.Molybdenum, 1}, {"Vanadium", c.Vanadium, 0.5},
		{"Nickel", c.Nickel, 3.5}, {"Copper", c.Copper, 2}, {"Niobium", c.Niobium, 0.2}, {"Boron", c.Boron, 0.01},
	} {
		holds := e.value >= 0 && e.value <= e.most*percent*(1+1e-9)
		if err := check.All(fn, check.That(e.name, e.value, holds, fmt.Sprintf("0 to %g (mass fraction)", e.most*percent))); err != nil {
			return err
		}
	}
	return check.All(fn, check.Positive("Carbon", c.Carbon))
}

// CarbonEquivalentIIW returns the carbon equivalent of the International Institute of Welding.
//
//	CE = C + Mn/6 + (Cr + Mo + V)/5 + (Ni + Cu)/15
//
//	CE  carbon equivalent, -
//
// Valid for carbon-manganese and low-alloy steel; used with method A of EN 1011-2.
// Errors: *check.RangeError for an analysis outside that of such steels.
// Source: EN 1011-2:2001, C.2.1, eq. (C.1) (from memory).
func CarbonEquivalentIIW(c Composition) (float64, error) {
	if err := c.check("weld.CarbonEquivalentIIW"); err != nil {
		return 0, err
	}
	return c.Carbon + c.Manganese/6 + (c.Chromium+c.Molybdenum+c.Vanadium)/5 + (c.Nickel+c.Copper)/15, nil
}

// CarbonEquivalentCET returns the carbon equivalent for preheat by method B.
//
//	CET = C + (Mn + Mo)/10 + (Cr + Cu)/20 + Ni/40
//
//	CET  carbon equivalent, -
//
// Valid for steels of up to 1000 MPa yield; fitted for C 0.05 to 0.32 %, Si up to 0.8 %,
// Mn 0.5 to 1.9 %, Cr up to 1.5 %, Mo up to 0.75 %, Ni up to 2.5 %, Cu up to 0.7 %.
// Errors: *check.RangeError for an analysis outside that of weldable steels.
// Source: EN 1011-2:2001, C.3.2.1, eq. (C.2) (from memory).
func CarbonEquivalentCET(c Composition) (float64, error) {
	if err := c.check("weld.CarbonEquivalentCET"); err != nil {
		return 0, err
	}
	return c.Carbon + (c.Manganese+c.Molybdenum)/10 + (c.Chromium+c.Copper)/20 + c.Nickel/40, nil
}

// CarbonEquivalentPcm returns the cracking parameter of Ito and Bessyo, for low-carbon steel.
//
//	P_cm = C + Si/30 + (Mn + Cu + Cr)/20 + Ni/60 + Mo/15 + V/10 + 5·B
//
//	P_cm  cracking parameter, -
//
// Valid for modern steels with little carbon, up to about 0.18 %; above that the IIW figure is the better guide.
// Errors: *check.RangeError for an analysis outside that of weldable steels.
// Source: Ito and Bessyo, IIW Doc. IX-631-69, 1969 (from memory).
func CarbonEquivalentPcm(c Composition) (float64, error) {
	if err := c.check("weld.CarbonEquivalentPcm"); err != nil {
		return 0, err
	}
	return c.Carbon + c.Silicon/30 + (c.Manganese+c.Copper+c.Chromium)/20 + c.Nickel/60 + c.Molybdenum/15 + c.Vanadium/10 + 5*c.Boron, nil
}

// GoverningParams are the carbon equivalents of the two metals in a joint.
type GoverningParams struct {
	Parent float64 // -, CET_P: of the parent metal
	Filler float64 // -, CET_W: of the weld metal
}

// GoverningCET returns the carbon equivalent that the preheat of a joint is worked out with.
//
//	CET = max(CET_P, CET_W + 0.0003)
//
//	CET  carbon equivalent for the preheat, -
//
// Valid for method B; the weld metal counts with 0.03 % more than its own.
// Errors: *check.RangeError for figures outside 0 to 0.01.
// Source: EN 1011-2:2001, C.3.2.1 (from memory).
func GoverningCET(p GoverningParams) (float64, error) {
	if err := check.All("weld.GoverningCET",
		check.Within("Parent", p.Parent, 0, 0.01),
		check.Within("Filler", p.Filler, 0, 0.01),
	); err != nil {
		return 0, err
	}
	return max(p.Parent, p.Filler+0.0003), nil
}
