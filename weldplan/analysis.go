package weldplan

import (
	"math"

	"axlewright/axle"
	"axlewright/calc/material"
	"axlewright/calc/weld"
)

// An Analysis is what a steel is made of, as mass fractions: "0.18 % ± 0.02 %".
type Analysis struct {
	Carbon     axle.Ratio `yaml:"C"`
	Silicon    axle.Ratio `yaml:"Si,omitempty"`
	Manganese  axle.Ratio `yaml:"Mn,omitempty"`
	Chromium   axle.Ratio `yaml:"Cr,omitempty"`
	Molybdenum axle.Ratio `yaml:"Mo,omitempty"`
	Vanadium   axle.Ratio `yaml:"V,omitempty"`
	Nickel     axle.Ratio `yaml:"Ni,omitempty"`
	Copper     axle.Ratio `yaml:"Cu,omitempty"`
	Niobium    axle.Ratio `yaml:"Nb,omitempty"`
	Boron      axle.Ratio `yaml:"B,omitempty"`
}

// A steelBand is the leanest and the richest that a steel is taken to be, and
// where that is from.
type steelBand struct {
	low, typical, high weld.Composition
	source             string
}

// band is an analysis with its doubt.
func (a *Analysis) band() steelBand {
	pick := func(which func(axle.Number) float64) weld.Composition {
		return weld.Composition{
			Carbon: which(a.Carbon.Number), Silicon: which(a.Silicon.Number), Manganese: which(a.Manganese.Number),
			Chromium: which(a.Chromium.Number), Molybdenum: which(a.Molybdenum.Number), Vanadium: which(a.Vanadium.Number),
			Nickel: which(a.Nickel.Number), Copper: which(a.Copper.Number), Niobium: which(a.Niobium.Number), Boron: which(a.Boron.Number),
		}
	}
	return steelBand{
		low:     pick(func(n axle.Number) float64 { return math.Max(0, n.Low) }),
		typical: pick(func(n axle.Number) float64 { return n.Value }),
		high:    pick(func(n axle.Number) float64 { return n.High }),
		source:  "analysis of this piece, " + string(a.Carbon.Origin),
	}
}

// percent is a composition typed in per cent: C, Si, Mn, then Cr, Mo, V, Ni, Cu, Nb.
func percent(c, si, mn float64, rest ...float64) weld.Composition {
	all := weld.Composition{Carbon: c / 100, Silicon: si / 100, Manganese: mn / 100}
	for i, to := range []*float64{&all.Chromium, &all.Molybdenum, &all.Vanadium, &all.Nickel, &all.Copper, &all.Niobium} {
		if i < len(rest) {
			*to = rest[i] / 100
		}
	}
	return all
}

// usualSteels are what steels are taken to be made of when nobody has analysed
// them: the standard's greatest values as the rich end, our guess as the others.
var usualSteels = map[string]steelBand{
	"S235":        {percent(0.06, 0.05, 0.4), percent(0.13, 0.2, 0.7), percent(0.19, 0.4, 1.5), "EN 10025-2, ladle analysis (from memory); lean end and middle assumed"},
	"S275":        {percent(0.08, 0.05, 0.5), percent(0.15, 0.2, 0.9), percent(0.21, 0.4, 1.6), "EN 10025-2, ladle analysis (from memory); lean end and middle assumed"},
	"S355":        {percent(0.10, 0.15, 0.9), percent(0.16, 0.3, 1.35), percent(0.23, 0.55, 1.7), "EN 10025-2, product analysis (from memory); lean end and middle assumed"},
	"S420":        {percent(0.08, 0.1, 1.0), percent(0.14, 0.3, 1.4), percent(0.22, 0.65, 1.8, 0.35, 0.13, 0.14, 0.85, 0.6, 0.06), "EN 10025-3, product analysis (from memory); lean end and middle assumed"},
	"S460":        {percent(0.08, 0.1, 1.0), percent(0.15, 0.3, 1.5), percent(0.22, 0.65, 1.8, 0.35, 0.13, 0.22, 0.85, 0.6, 0.06), "EN 10025-3, product analysis (from memory); lean end and middle assumed"},
	"S355MC":      {percent(0.04, 0.02, 0.5), percent(0.07, 0.1, 1.0), percent(0.12, 0.5, 1.5, 0, 0, 0.1, 0, 0, 0.09), "EN 10149-2, greatest values (read in a copy); lean end and middle assumed"},
	"S420MC":      {percent(0.04, 0.02, 0.6), percent(0.07, 0.1, 1.1), percent(0.12, 0.5, 1.6, 0, 0, 0.1, 0, 0, 0.09), "EN 10149-2, greatest values (read in a copy); lean end and middle assumed"},
	"S500MC":      {percent(0.04, 0.02, 0.8), percent(0.07, 0.15, 1.3), percent(0.12, 0.5, 1.7, 0, 0, 0.1, 0, 0, 0.09), "EN 10149-2, greatest values (read in a copy); lean end and middle assumed"},
	"S600MC":      {percent(0.05, 0.05, 1.2), percent(0.07, 0.2, 1.6), percent(0.12, 0.5, 1.9, 0, 0.25, 0.1, 0, 0, 0.09), "EN 10149-2, greatest values (read in a copy); lean end and middle assumed"},
	"S700MC":      {percent(0.05, 0.05, 1.4), percent(0.07, 0.2, 1.8, 0.05, 0.05, 0.02, 0.05, 0.02, 0.05), percent(0.12, 0.6, 2.1, 0.1, 0.2, 0.05, 0.1, 0.05, 0.09), "EN 10149-2, greatest values (read in a copy); lean end and middle assumed"},
	"GE200":       {percent(0.12, 0.2, 0.4), percent(0.18, 0.4, 0.7), percent(0.25, 0.6, 1.2), "EN 10293 does not limit it; assumed"},
	"GE240":       {percent(0.17, 0.3, 0.5), percent(0.22, 0.45, 0.8, 0.1, 0.03, 0, 0.15, 0.1), percent(0.28, 0.6, 1.2, 0.3, 0.12, 0.03, 0.4, 0.3), "EN 10293 does not limit it; assumed"},
	"GE300":       {percent(0.32, 0.3, 0.6), percent(0.38, 0.45, 0.8), percent(0.45, 0.6, 1.0, 0.3, 0.1, 0, 0.4, 0.3), "EN 10293 does not limit it; assumed"},
	"G17Mn5+QT":   {percent(0.15, 0.2, 1.0), percent(0.17, 0.4, 1.3), percent(0.20, 0.6, 1.6), "EN 10293 (from memory)"},
	"G20Mn5+N":    {percent(0.17, 0.2, 1.0), percent(0.20, 0.4, 1.3, 0, 0, 0, 0.3), percent(0.23, 0.6, 1.6, 0, 0, 0, 0.8), "EN 10293 (from memory)"},
	"G20Mn5+QT":   {percent(0.17, 0.2, 1.0), percent(0.20, 0.4, 1.3, 0, 0, 0, 0.3), percent(0.23, 0.6, 1.6, 0, 0, 0, 0.8), "EN 10293 (from memory)"},
	"G26CrMo4+QT": {percent(0.22, 0.2, 0.5, 0.8, 0.15), percent(0.26, 0.4, 0.65, 1.0, 0.22), percent(0.29, 0.6, 0.8, 1.2, 0.3), "EN 10293 (from memory)"},
	"G42CrMo4+QT": {percent(0.38, 0.2, 0.6, 0.8, 0.15), percent(0.42, 0.4, 0.8, 1.0, 0.22), percent(0.45, 0.6, 1.0, 1.2, 0.3), "EN 10293 (from memory)"},
	"cast steel":  {percent(0.15, 0.2, 0.5), percent(0.24, 0.45, 0.9, 0.1, 0.03, 0, 0.15, 0.1), percent(0.32, 0.6, 1.5, 0.3, 0.12, 0.03, 0.4, 0.3), "assumed for a cast steel nobody has analysed"},
}

// steelOf is what a steel of this grade and family is taken to be made of; ok is
// false for a metal that the formulas of steel do not fit.
func steelOf(grade string, family material.Family, own *Analysis) (b steelBand, ok bool) {
	switch {
	case own != nil:
		return own.band(), true
	case iron(family) || family == material.Bronze:
		return b, false
	}
	for _, name := range []string{grade, nameOf(grade)} {
		if b, ok = usualSteels[name]; ok {
			return b, true
		}
	}
	if family == material.CastSteel {
		return usualSteels["cast steel"], true
	}
	return b, false
}

// nameOf is the grade's name in the tables.
func nameOf(grade string) string {
	if m, err := material.Lookup(grade); err == nil {
		return m.Name
	}
	return grade
}
