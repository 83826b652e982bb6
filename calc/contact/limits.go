package contact

import (
	"math"

	"axlewright/calc/check"
)

// PadMaterial names a plain-bearing material.
type PadMaterial string

// The plain-bearing materials with published limits.
const (
	CastBronze      PadMaterial = "cast bronze"
	PorousBronze    PadMaterial = "porous bronze"
	PorousIron      PadMaterial = "porous iron"
	ManganeseBronze PadMaterial = "manganese bronze"
	AluminiumBronze PadMaterial = "aluminium bronze"
	LeadedTinBronze PadMaterial = "leaded tin bronze"
)

// PadLimits are what a plain bearing stands for long under boundary
// lubrication. A brief push may go past them; a lasting one may not.
type PadLimits struct {
	Pressure         float64 // Pa, p: mean pressure; 0 where the source gives none
	Speed            float64 // m/s, v: rubbing speed; 0 where the source gives none
	PressureVelocity float64 // Pa·m/s, pv: pressure times speed
}

const (
	psi           = 6894.757293168      // Pa
	footPerMinute = 0.3048 / 60         // m/s
	psiFoot       = psi * footPerMinute // Pa·m/s from psi·ft/min
)

// padLimits holds the tables in the units they are printed in. The solid
// bronzes, as a peg's pad is mostly made of, are printed with pv only.
var padLimits = map[PadMaterial]PadLimits{
	CastBronze:      {4500 * psi, 1500 * footPerMinute, 50_000 * psiFoot},
	PorousBronze:    {4500 * psi, 1500 * footPerMinute, 50_000 * psiFoot},
	PorousIron:      {8000 * psi, 800 * footPerMinute, 50_000 * psiFoot},
	ManganeseBronze: {PressureVelocity: 150_000 * psiFoot},
	AluminiumBronze: {PressureVelocity: 125_000 * psiFoot},
	LeadedTinBronze: {PressureVelocity: 75_000 * psiFoot},
}

// PadMaterialLimits returns the published limits of a plain-bearing material under boundary lubrication.
//
//	p, v, pv = row of the table for the material
//
//	material  plain-bearing material, name
//
// Valid for cast bronze, porous bronze, porous iron, manganese bronze,
// aluminium bronze and leaded tin bronze at workshop temperature; makers' own
// figures go first.
// Errors: *check.RangeError for another material.
// Source: Shigley's Mechanical Engineering Design, 8th ed., table 12-8 (from
// memory) for cast and porous metals; Mott, Machine Elements in Mechanical
// Design, table 16-1, for the solid bronzes.
func PadMaterialLimits(material PadMaterial) (PadLimits, error) {
	limits, known := padLimits[material]
	if err := check.All("contact.PadMaterialLimits", isKnown(known)); err != nil {
		return PadLimits{}, err
	}
	return limits, nil
}

// isKnown refuses a material that is in no table. A name is no number, so the
// error carries NaN for its value.
func isKnown(known bool) check.Condition {
	return check.Condition{Param: "material", Value: math.NaN(), Holds: known,
		Range: "cast bronze, porous bronze, porous iron, manganese bronze, aluminium bronze, leaded tin bronze"}
}

// PadUseParams describe a pad at work.
type PadUseParams struct {
	Material PadMaterial // name, plain-bearing material
	Pressure float64     // Pa, p: mean pressure
	Speed    float64     // m/s, v: rubbing speed
}

// PadUseResult says how much of each limit is used. A share of 0 for a
// pressure or speed that is not 0 means the source gives no limit.
type PadUseResult struct {
	PressureShare         float64 // -, pressure over its limit
	SpeedShare            float64 // -, rubbing speed over its limit
	PressureVelocityShare float64 // -, pressure times speed over its limit
	Worst                 string  // name, the limit that is used most: pressure, speed or pv
	WorstShare            float64 // -, the largest of the shares; above 1 the pad is overworked
}

// PadUse returns how much of its published limits a pad uses; pressure, speed and their product each count alone.
//
//	share = p/p_limit, v/v_limit and p·v/pv_limit
//
// Valid for the materials of PadMaterialLimits and lasting contact.
// Errors: *check.RangeError for another material or a value below zero.
// Source: Shigley's Mechanical Engineering Design, 8th ed., 12-15 (from memory).
func PadUse(p PadUseParams) (PadUseResult, error) {
	limits, known := padLimits[p.Material]
	if err := check.All("contact.PadUse",
		isKnown(known),
		check.NotNegative("Pressure", p.Pressure),
		check.NotNegative("Speed", p.Speed),
	); err != nil {
		return PadUseResult{}, err
	}
	r := PadUseResult{PressureVelocityShare: p.Pressure * p.Speed / limits.PressureVelocity}
	r.Worst, r.WorstShare = "pv", r.PressureVelocityShare
	if limits.Pressure > 0 {
		r.PressureShare = p.Pressure / limits.Pressure
	}
	if limits.Speed > 0 {
		r.SpeedShare = p.Speed / limits.Speed
	}
	if r.PressureShare > r.WorstShare {
		r.Worst, r.WorstShare = "pressure", r.PressureShare
	}
	if r.SpeedShare > r.WorstShare {
		r.Worst, r.WorstShare = "speed", r.SpeedShare
	}
	return r, nil
}
