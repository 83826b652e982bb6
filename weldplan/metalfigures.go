package weldplan

import "axlewright/calc/material"

// steelFigures are the figures of a plate's steel; an unknown name was refused
// when the job was read.
func steelFigures(name string) material.Metal {
	m, err := material.Lookup(name)
	if err != nil {
		m, _ = material.Lookup("S355")
	}
	return m
}

// yieldOf is the strength at which a metal gives way; a metal for which the
// standard gives none is taken at six tenths of its tensile strength.
func yieldOf(m material.Metal) float64 {
	if m.Yield > 0 {
		return m.Yield
	}
	return 0.6 * m.Tensile
}
