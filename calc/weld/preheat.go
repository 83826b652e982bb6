package weld

import (
	"math"

	"axlewright/calc/check"
)

// PreheatParams is what the preheat of a joint hangs on.
type PreheatParams struct {
	CET       float64 // -, CET: carbon equivalent, mass fraction, 0.0034 for 0.34 %
	Thickness float64 // m, d: plate thickness, the greater of the two, not their sum
	Hydrogen  float64 // m³/kg, HD: diffusible hydrogen of the weld metal, 5e-5 for 5 ml/100 g
	HeatInput float64 // J/m, Q: heat input, with efficiency
}

// PreheatResult is the preheat and the four shares that make it up.
type PreheatResult struct {
	Temperature   float64 // K, T_p: preheat and interpass temperature
	Needed        bool    // -, T_p is above a shop of 20 °C; if not, warm and dry is enough
	FromSteel     float64 // K, T_pCET: share of the carbon equivalent
	FromThickness float64 // K, T_pd: share of the thickness
	FromHydrogen  float64 // K, T_pHD: share of the hydrogen
	FromHeatInput float64 // K, T_pQ: share of the heat input
}

// mlPer100g is the unit of diffusible hydrogen: 1 ml in 100 g of deposited metal.
const mlPer100g = 1e-5 // m³/kg

// Preheat returns the least preheat against cold cracking by method B of EN 1011-2.
//
//	T_p = 697·CET + 160·tanh(d/35) + 62·HD^0.35 + (53·CET − 32)·Q − 328
//	T_pCET = 750·CET − 150,  T_pd = 160·tanh(d/35) − 110
//	T_pHD = 62·HD^0.35 − 100,  T_pQ = (53·CET − 32)·Q − 53·CET + 32
//
// In the standard's letters T_p is in °C, CET in %, d in mm, HD in ml/100 g, Q in kJ/mm;
// the four shares add up to T_p. Valid for steel and cast steel of up to 1000 MPa yield with
// 0.2 % <= CET <= 0.5 %, 10 mm <= d <= 90 mm, 1 <= HD <= 20 ml/100 g, 0.5 <= Q <= 4 kJ/mm.
// Thin plate lies outside: there the practice is dry, warm and low in hydrogen.
// Errors: *check.RangeError outside that range.
// Source: EN 1011-2:2001, C.3 (formula read, equation numbers (C.3) to (C.7) from memory). Two wrong forms are about: one with √d, one with the combined thickness.
func Preheat(p PreheatParams) (PreheatResult, error) {
	const fn = "weld.Preheat"
	cet, d, hd, q := p.CET*100, p.Thickness*1e3, p.Hydrogen/mlPer100g, p.HeatInput/kJperMm
	within := func(value, low, high float64) bool { return value >= low*(1-1e-9) && value <= high*(1+1e-9) }
	if err := check.All(fn,
		check.That("CET", p.CET, within(cet, 0.2, 0.5), "0.002 to 0.005"),
		check.That("Thickness", p.Thickness, within(d, 10, 90), "0.01 to 0.09"),
		check.That("Hydrogen", p.Hydrogen, within(hd, 1, 20), "1e-5 to 2e-4"),
		check.That("HeatInput", p.HeatInput, within(q, 0.5, 4), "5e5 to 4e6"),
	); err != nil {
		return PreheatResult{}, err
	}
	r := PreheatResult{
		FromSteel:     750*cet - 150,
		FromThickness: 160*math.Tanh(d/35) - 110,
		FromHydrogen:  62*math.Pow(hd, 0.35) - 100,
		FromHeatInput: (53*cet-32)*q - 53*cet + 32,
	}
	tp := 697*cet + 160*math.Tanh(d/35) + 62*math.Pow(hd, 0.35) + (53*cet-32)*q - 328
	r.Temperature = tp + zeroCelsius
	r.Needed = tp > 20
	return r, nil
}
