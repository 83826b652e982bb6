package weld

import (
	"math"

	"axlewright/calc/check"
)

// FilletArea returns the area of the section of a fillet weld between its two legs.
//
//	A_w = z_1·z_2·sin(θ)/2
//
//	A_w  area with a flat face, m²
//
// Valid for flat faces and 60° <= θ <= 120°; a crowned face is allowed for as overfill.
// Errors: *check.RangeError outside that range.
// Source: area of a triangle.
func FilletArea(p FilletShape) (float64, error) {
	if err := check.All("weld.FilletArea",
		check.Positive("LegA", p.LegA),
		check.Positive("LegB", p.LegB),
		faceAngle("Angle", p.Angle),
	); err != nil {
		return 0, err
	}
	return p.LegA * p.LegB * math.Sin(p.Angle) / 2, nil
}

// DepositParams is a weld to be laid.
type DepositParams struct {
	Area       float64 // m², A_w: area of the weld's section
	Length     float64 // m, l: length of weld
	Density    float64 // kg/m³, ρ: density of the weld metal
	Overfill   float64 // -, extra metal over the drawn section, 0.1 for a tenth; optional
	Efficiency float64 // -, share of the filler bought that ends in the weld, 0.65 to 1
	Diameter   float64 // m, diameter of rod or wire
	Runs       int     // -, number of runs
	Speed      float64 // m/s, v: travel speed of each run
}

// DepositResult is the metal and the time of a weld.
type DepositResult struct {
	Volume       float64 // m³, metal laid
	Mass         float64 // kg, metal laid
	FillerMass   float64 // kg, filler used, stubs and spatter with it
	FillerLength float64 // m, rod or wire used
	ArcTime      float64 // s, with the arc burning
}

// Deposit returns the metal, the filler and the arc time of a weld.
//
//	m = A_w·l·(1 + overfill)·ρ
//	m_filler = m/efficiency
//	t = runs·l/v
//
// Valid for any filler; efficiency by FillerEfficiency or the shop's own.
// Errors: *check.RangeError for figures that are not positive, overfill outside 0 to 1 or efficiency outside 0.3 to 1.
// Source: geometry; handling time comes on top.
func Deposit(p DepositParams) (DepositResult, error) {
	if err := check.All("weld.Deposit",
		check.Positive("Area", p.Area),
		check.Positive("Length", p.Length),
		check.Positive("Density", p.Density),
		check.Within("Overfill", p.Overfill, 0, 1),
		check.Within("Efficiency", p.Efficiency, 0.3, 1),
		check.Positive("Diameter", p.Diameter),
		check.That("Runs", float64(p.Runs), p.Runs >= 1, ">= 1"),
		check.Positive("Speed", p.Speed),
	); err != nil {
		return DepositResult{}, err
	}
	r := DepositResult{Volume: p.Area * p.Length * (1 + p.Overfill)}
	r.Mass = r.Volume * p.Density
	r.FillerMass = r.Mass / p.Efficiency
	r.FillerLength = r.FillerMass / (p.Density * math.Pi / 4 * p.Diameter * p.Diameter)
	r.ArcTime = float64(p.Runs) * p.Length / p.Speed
	return r, nil
}

// FillerEfficiency returns the share of the filler bought that ends in the weld.
//
//	η_f = 0.95 TIG and MAG, 0.85 flux-cored, 0.65 stick, 0.99 submerged arc
//
//	process  welding process, name
//	η_f      share of the filler's mass, -
//
// Valid for estimates of cost, as round figures; plasma as TIG.
// Errors: *check.RangeError for a process that is not in the table.
// Source: common practice, no source.
func FillerEfficiency(process Process) (float64, error) {
	switch process {
	case TIG, Plasma, MAG:
		return 0.95, nil
	case FluxCored:
		return 0.85, nil
	case StickWelding:
		return 0.65, nil
	case SubmergedArc:
		return 0.99, nil
	}
	return 0, notNamed("weld.FillerEfficiency", "process", process, processes)
}
