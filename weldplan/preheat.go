package weldplan

import (
	"errors"
	"fmt"
	"math"

	"axlewright/axle"
	"axlewright/calc/check"
	"axlewright/calc/weld"
)

// A Preheat is the least temperature against cold cracking, of one joint in steel.
type Preheat struct {
	Method       string  `json:"method"`
	Low          float64 `json:"low"`  // K, leanest steel, most heat
	High         float64 `json:"high"` // K, richest steel, least heat
	Needed       bool    `json:"needed"`
	CET          float64 `json:"cet"` // -, typical
	CE           float64 `json:"ce"`  // -, of the institute, typical
	Pcm          float64 `json:"pcm"`
	Thickness    float64 `json:"thickness"` // m, it was worked out with
	Reason       string  `json:"reason"`
	Source       string  `json:"source"`
	OutsideRange bool    `json:"outside_range,omitempty"` // the method does not reach this joint
}

const methodBThinnest = 10e-3 // m

// preheatOf works out the preheat by method B of EN 1011-2 over the doubt of
// steel, thickness and heat input. Where the joint is thinner than the method
// reaches, the method at its thinnest is an upper bound, since it asks for less
// the thinner the plate is; it is given as that, with what applies instead.
func preheatOf(steel steelBand, thickness axle.Number, hydrogen float64, heat Band) (Preheat, error) {
	p := Preheat{Source: "EN 1011-2:2001, C.3 (formula read); steel by " + steel.source, Thickness: thickness.Value}
	var err error
	if p.CET, err = weld.CarbonEquivalentCET(steel.typical); err != nil {
		return p, err
	}
	if p.CE, err = weld.CarbonEquivalentIIW(steel.typical); err != nil {
		return p, err
	}
	if p.Pcm, err = weld.CarbonEquivalentPcm(steel.typical); err != nil {
		return p, err
	}
	thin := thickness.Value < methodBThinnest
	at := func(c weld.Composition, d, q float64) (float64, error) {
		cet, err := weld.CarbonEquivalentCET(c)
		if err != nil {
			return 0, err
		}
		if cet < 0.002 { // the method begins at 0.20 %; less asks for less
			cet = 0.002
		}
		r, err := weld.Preheat(weld.PreheatParams{CET: cet, Thickness: math.Max(d, methodBThinnest), Hydrogen: math.Max(hydrogen, mlPer100g), HeatInput: math.Max(q, 0.5e6)})
		return r.Temperature, err
	}
	low, high := thickness.Low, thickness.High
	if p.Low, err = at(steel.low, low, heat.High); err == nil {
		p.High, err = at(steel.high, high, heat.Low)
	}
	var outside *check.RangeError
	switch {
	case errors.As(err, &outside):
		p.Method, p.OutsideRange = "none", true
		p.Reason = fmt.Sprintf("%s is beyond method B (%s, it takes %s): a welding engineer's procedure trial, nothing less.", outside.Param, figure(outside), outside.Range)
		return p, nil
	case err != nil:
		return p, err
	}
	p.Needed = p.High > warmShop
	p.Method = "B"
	if heat.Low < 0.5e6 {
		p.Reason = "The heat input may lie below the 0.5 kJ/mm at which method B begins; worked out at 0.5 kJ/mm, and a smaller bead asks for more."
	}
	if thin {
		p.Method = "bound by B at 10 mm"
		p.OutsideRange = true
		p.Reason = "Method B begins at 10 mm, and thinner metal asks for less: the figure is an upper bound. What applies instead: dry metal at 20 °C or more, low hydrogen (scale D or E), and a trial weld."
		p.coldLimit(hydrogen, heat)
	} else if p.Reason == "" {
		p.Reason = "Leanest steel with most heat to richest steel with least heat."
	}
	return p, nil
}

// coldLimit adds what the examples of method A say, where they reach.
func (p *Preheat) coldLimit(hydrogen float64, heat Band) {
	limit, err := weld.ThicknessWithoutPreheat(weld.ColdLimitParams{CarbonEquivalent: p.CE, Hydrogen: hydrogen, HeatInput: heat.Low})
	if err != nil {
		p.Reason += " Method A's examples do not reach this joint either (CE up to 0.49 %, 1 kJ/mm and more)."
		return
	}
	p.Reason += fmt.Sprintf(" Method A allows no preheat up to a combined thickness of %s.", mm(limit))
}

// figure is the value that a formula refused, in the words of its field.
func figure(e *check.RangeError) string {
	switch e.Param {
	case "CET":
		return fmt.Sprintf("%.2f %%", 100*e.Value)
	case "Thickness":
		return mm(e.Value)
	}
	return fmt.Sprintf("%.3g", e.Value)
}
