package bolt

import (
	"math"

	"axlewright/calc/check"
)

// ColumnParams describes a screw that is pressed along its axis, such as a peg screw.
type ColumnParams struct {
	Diameter  float64 // m, d: core diameter, or smallest plain diameter
	Length    float64 // m, l: free length
	EndFactor float64 // -, C: end condition: 1/4 fixed and free, 1 both rounded, 1.2 fixed and fixed by custom, 4 in theory
	Modulus   float64 // Pa, E: Young's modulus
	Yield     float64 // Pa, S_y: yield strength in compression
}

// ColumnResult says at what load a column gives out and how.
type ColumnResult struct {
	Slenderness float64 // -, l/k: length by radius of gyration
	Transition  float64 // -, (l/k)_1: slenderness from which it buckles elastically
	Stress      float64 // Pa, P_cr/A: critical stress
	Buckling    float64 // N, P_cr: load at which it buckles or, short, yields
	Crushing    float64 // N, S_y·A: load at which the section yields in plain compression
	Elastic     bool    // -, yes where Euler's formula governs, no where Johnson's does
}

// ColumnLoad returns the load at which a round screw buckles, by Euler where slender and by Johnson's parabola where short.
//
//	P_cr/A = C·π²·E/(l/k)² (Euler, l/k >= (l/k)_1)
//	P_cr/A = S_y − (S_y·l/(2·π·k))²/(C·E) (Johnson)
//	(l/k)_1 = √(2·π²·C·E/S_y),  k = d/4
//
// Valid for loads on the axis; an off-centre pad or a bent screw gives out sooner.
// Errors: *check.RangeError for values of zero or below (length: below), or C outside 1/4 to 4.
// Source: Shigley's Mechanical Engineering Design, 9th ed., eqs. 4-43 to 4-47 (from memory).
func ColumnLoad(p ColumnParams) (ColumnResult, error) {
	if err := check.All("bolt.ColumnLoad",
		check.Positive("Diameter", p.Diameter),
		check.NotNegative("Length", p.Length),
		check.Within("EndFactor", p.EndFactor, 0.25, 4),
		check.Positive("Modulus", p.Modulus),
		check.Positive("Yield", p.Yield),
	); err != nil {
		return ColumnResult{}, err
	}
	k, area := p.Diameter/4, math.Pi/4*p.Diameter*p.Diameter
	r := ColumnResult{
		Slenderness: p.Length / k,
		Transition:  math.Sqrt(2 * math.Pi * math.Pi * p.EndFactor * p.Modulus / p.Yield),
		Crushing:    p.Yield * area,
	}
	r.Elastic = r.Slenderness >= r.Transition
	if r.Elastic {
		r.Stress = p.EndFactor * math.Pi * math.Pi * p.Modulus / (r.Slenderness * r.Slenderness)
	} else {
		r.Stress = p.Yield - math.Pow(p.Yield*r.Slenderness/(2*math.Pi), 2)/(p.EndFactor*p.Modulus)
	}
	r.Buckling = r.Stress * area
	return r, nil
}
