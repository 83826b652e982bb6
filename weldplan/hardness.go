package weldplan

import (
	"fmt"
	"math"

	"axlewright/calc/material"
	"axlewright/calc/weld"
	"axlewright/quantity"
)

// A Toe is how hard the metal beside a weld is expected to become.
type Toe struct {
	Where   string  `json:"where"` // plate or casting
	Formula bool    `json:"formula"`
	Low     float64 `json:"low"` // HV10
	Middle  float64 `json:"middle"`
	High    float64 `json:"high"`
	Limit   float64 `json:"limit,omitempty"`
	Above   bool    `json:"above,omitempty"` // the limit lies within the doubt, or below it
	Note    string  `json:"note"`
	Source  string  `json:"source"`
}

// Limits and doubts of the hardness beside a weld.
const (
	hardnessLimit = 380.0 // HV10, ISO 15614-1, groups 1 and 2 without heat treatment (from memory)
	hardnessSD    = 28.0  // HV, scatter of such formulas in published trials
	ironEdgeLow   = 500.0 // HV, white edge beside a weld in iron, trade custom
	ironEdgeHigh  = 700.0
	shortestT     = 1.0 // s, the formulas begin there
	longestT      = 500.0
)

// toeOf estimates the hardness at a toe. In steel it is the mean of two published
// formulas, its doubt made of cooling time, analysis and the formulas' own scatter;
// in iron there is no formula.
func toeOf(where string, family material.Family, steel steelBand, known bool, c Cooling, braze bool) Toe {
	t := Toe{Where: where}
	switch {
	case braze:
		t.Note = "brazed: the iron is not melted, so long as the arc stays on the steel"
		t.Source = customary
		return t
	case iron(family):
		t.Low, t.Middle, t.High = ironEdgeLow, (ironEdgeLow+ironEdgeHigh)/2, ironEdgeHigh
		t.Note = "white edge at the fusion line, a few tenths of a millimetre; no formula reaches iron: a trial piece, cut and tested"
		t.Source = "trade custom: 500 to 700 HV"
		return t
	case !known:
		t.Note = "no analysis and none to assume: have it analysed"
		t.Source = "none"
		return t
	case c.Note != "":
		t.Note = c.Note
		t.Source = "none"
		return t
	}
	hard := func(s weld.Composition, time float64) (float64, bool) {
		p := weld.HardnessParams{Steel: s, Time: math.Min(longestT, math.Max(shortestT, time))}
		d, err := weld.HardnessDuren(p)
		if err != nil {
			return 0, false
		}
		y, err := weld.HardnessYurioka(p)
		if err != nil {
			return d.Hardness, true
		}
		return (d.Hardness + y.Hardness) / 2, true
	}
	middle, ok := hard(steel.typical, c.First)
	low, okLow := hard(steel.low, c.High)
	high, okHigh := hard(steel.high, c.Low)
	if !ok || !okLow || !okHigh {
		t.Note = "this steel is outside the formulas: a trial piece"
		t.Source = "none"
		return t
	}
	// The ends of analysis and time together are two standard deviations apart
	// from the middle; the formulas' own scatter comes on top.
	down := math.Hypot(middle-low, 2*hardnessSD)
	up := math.Hypot(high-middle, 2*hardnessSD)
	t.Formula = true
	t.Low, t.Middle, t.High = middle-down, middle, middle+up
	t.Limit = hardnessLimit
	t.Above = t.High > t.Limit
	t.Note = fmt.Sprintf("limit %s for these steels without heat treatment", quantity.Format(t.Limit, quantity.HardnessVickers))
	if c.Low < shortestT || c.First > longestT {
		t.Note += "; cooling time beyond the formulas, the nearest they take stands for it"
	}
	t.Source = "mean of Düren 1985 and Yurioka 1987 (from memory); steel by " + steel.source + "; limit ISO 15614-1 (from memory)"
	return t
}
