package weldplan

import (
	"axlewright/calc/material"
)

// A Filler is a class of filler metal by a standard, never a brand.
type Filler struct {
	Class    string  `json:"class"`
	Standard string  `json:"standard"`
	Why      string  `json:"why"`
	Yield    float64 `json:"yield"`    // Pa, of the weld metal, about
	Tensile  float64 `json:"tensile"`  // Pa, least
	Density  float64 `json:"density"`  // kg/m³
	Diameter float64 `json:"diameter"` // m, of rod or wire
	Hydrogen float64 `json:"hydrogen"` // m³/kg, diffusible, taken for it
	Source   string  `json:"source"`
	nickel   bool
	braze    bool
}

const mlPer100g = 1e-5 // m³/kg

var (
	steelRod = Filler{
		Class: "W 42 5 W3Si1", Standard: "EN ISO 636-A (ER70S-6 in AWS A5.18)", Why: "matches plates up to S420; beside a 700 MPa plate it is the weaker and the tougher, and casting and throat govern anyway",
		Yield: 420e6, Tensile: 500e6, Density: 7850, Hydrogen: 3 * mlPer100g, Source: "EN ISO 636 (from memory)",
	}
	steelWire = Filler{
		Class: "G 42 4 M21 3Si1", Standard: "EN ISO 14341-A (ER70S-6 in AWS A5.18)", Why: "matches plates up to S420; beside a 700 MPa plate it is the weaker and the tougher, and casting and throat govern anyway",
		Yield: 420e6, Tensile: 500e6, Density: 7850, Hydrogen: 5 * mlPer100g, Source: "EN ISO 14341 (from memory)",
	}
	steelStick = Filler{
		Class: "E 42 4 B 42 H5", Standard: "EN ISO 2560-A (E7018 in AWS A5.1)", Why: "basic covering, dried: low in hydrogen",
		Yield: 420e6, Tensile: 500e6, Density: 7850, Hydrogen: 5 * mlPer100g, Source: "EN ISO 2560 (from memory)",
	}
	nickelIron = Filler{
		Class: "NiFe", Standard: "EN ISO 1071 (ENiFe-CI in AWS A5.15)", Why: "gives way before the iron's edge cracks, and takes up its carbon",
		Yield: 295e6, Tensile: 400e6, Density: 8300, Hydrogen: 5 * mlPer100g, Source: "AWS A5.15, usual weld metal (from memory)", nickel: true,
	}
	siliconBronze = Filler{
		Class: "S Cu 6560 (CuSi3Mn1)", Standard: "EN ISO 24373 (ERCuSi-A in AWS A5.7)", Why: "brazed, not melted: malleable iron that melts turns white and brittle",
		Yield: 140e6, Tensile: 350e6, Density: 8500, Hydrogen: 3 * mlPer100g, Source: "EN ISO 24373 (from memory)", braze: true,
	}
)

// fillerFor is the filler for a casting's family and a process.
func fillerFor(family material.Family, process Process) Filler {
	var f Filler
	switch {
	case family == material.BlackheartIron:
		f = siliconBronze
	case iron(family):
		f = nickelIron
	case process == MAG:
		f = steelWire
	case process == Stick:
		f = steelStick
	default:
		f = steelRod
	}
	return f
}

// diameterFor is the rod, wire or electrode for a plate. Of TIG the handbook rows
// for fillets; of the others common practice, no source.
func diameterFor(process Process, thickness float64) float64 {
	switch {
	case process == MAG:
		return 1.0e-3
	case process == Stick && thickness < 3.5e-3:
		return 2.5e-3
	case process == Stick:
		return 3.2e-3
	case thickness < 2.4e-3:
		return 1.6e-3
	case thickness < 4e-3:
		return 2.4e-3
	}
	return 3.2e-3
}
