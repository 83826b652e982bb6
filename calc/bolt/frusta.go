package bolt

import (
	"fmt"
	"math"

	"axlewright/calc/check"
)

// Layer is one clamped part or washer.
type Layer struct {
	Thickness float64 // m, t: thickness within the grip
	Modulus   float64 // Pa, E: Young's modulus
}

// FrustaParams describes a stack of parts that a bolt clamps.
type FrustaParams struct {
	Layers  []Layer // -, parts from the head downward
	Bearing float64 // m, D: diameter of the face under head and nut, 1.5·d for a standard head
	Hole    float64 // m, d: diameter of the hole, taken as the bolt's
	Slope   float64 // rad, α: half angle of the cones, 30° by custom
	Seat    Seat    // name, nut (cones from both ends) or tapped hole (one cone from the head)
}

// FrustaResult is the stiffness of clamped parts.
type FrustaResult struct {
	Stiffness float64   // N/m, k_m: all parts in series
	Frusta    []float64 // N/m, stiffness of each frustum from the head downward
}

// FrustaStiffness returns the stiffness of clamped parts of several materials as a stack of hollow cones.
//
//	k_m = 1/Σ(1/k_i)
//	k_i = π·E·d·tan α/ln[(2·t·tan α + D − d)·(D + d)/((2·t·tan α + D + d)·(D − d))]
//
// Valid for parts wide enough to hold the cones; with a nut the cones meet half
// way down the grip, with a tapped hole the one cone runs to the end of the
// effective grip (top part plus half of the engaged length, at most d/2).
// Errors: *check.RangeError for 0 < d < D, 0 < α < π/2, thickness and modulus above zero not held, or an unknown seat.
// Source: Shigley's Mechanical Engineering Design, 9th ed., eqs. 8-18 to 8-20 (from memory).
func FrustaStiffness(p FrustaParams) (FrustaResult, error) {
	conditions := []check.Condition{
		check.Positive("Bearing", p.Bearing),
		check.That("Hole", p.Hole, p.Hole > 0 && p.Hole < p.Bearing, "0 < d < D"),
		check.That("Slope", p.Slope, p.Slope > 0 && p.Slope < math.Pi/2, "0 < α < π/2"),
		check.That("Seat", 0, p.Seat == Nut || p.Seat == TappedHole, fmt.Sprintf("%q or %q, not %q", Nut, TappedHole, p.Seat)),
		check.That("Layers", float64(len(p.Layers)), len(p.Layers) > 0, "at least one layer"),
	}
	grip := 0.0
	for _, l := range p.Layers {
		conditions = append(conditions, check.Positive("Layers", l.Thickness), check.Positive("Layers", l.Modulus))
		grip += l.Thickness
	}
	if err := check.All("bolt.FrustaStiffness", conditions...); err != nil {
		return FrustaResult{}, err
	}
	waist := grip // depth at which the cones are widest
	if p.Seat == Nut {
		waist = grip / 2
	}
	var r FrustaResult
	compliance := 0.0
	add := func(from, to, E float64) {
		if to-from <= 1e-12*grip {
			return
		}
		narrow := from // depth of the narrow end below the nearer face
		if from >= waist {
			narrow = grip - to
		}
		D := p.Bearing + 2*narrow*math.Tan(p.Slope)
		grow := 2 * (to - from) * math.Tan(p.Slope)
		d := p.Hole
		k := math.Pi * E * d * math.Tan(p.Slope) / math.Log((grow+D-d)*(D+d)/((grow+D+d)*(D-d)))
		r.Frusta = append(r.Frusta, k)
		compliance += 1 / k
	}
	top := 0.0
	for _, l := range p.Layers {
		bottom := top + l.Thickness
		cut := math.Min(math.Max(waist, top), bottom)
		add(top, cut, l.Modulus)
		add(cut, bottom, l.Modulus)
		top = bottom
	}
	r.Stiffness = 1 / compliance
	return r, nil
}

// ClampedMetal is a metal for which fitted stiffness constants are published.
type ClampedMetal string

// The metals of the table; AnyMetal is the fit over all.
const (
	Steel     ClampedMetal = "steel"
	Aluminium ClampedMetal = "aluminium"
	Copper    ClampedMetal = "copper"
	GreyIron  ClampedMetal = "grey iron"
	AnyMetal  ClampedMetal = "any"
)

var wilemanFits = map[ClampedMetal][2]float64{
	Steel: {0.78715, 0.62873}, Aluminium: {0.79670, 0.63816}, Copper: {0.79568, 0.63553},
	GreyIron: {0.77871, 0.61616}, AnyMetal: {0.78952, 0.62914},
}

// WilemanParams describes parts of one metal that a bolt clamps.
type WilemanParams struct {
	Metal    ClampedMetal // name, steel, aluminium, copper, grey iron or any
	Diameter float64      // m, d: bolt diameter
	Clamp    float64      // m, l: clamped length
	Modulus  float64      // Pa, E: Young's modulus of the clamped parts
}

// WilemanStiffness returns the stiffness of clamped parts of one metal from a fit to finite-element results.
//
//	k_m = E·d·A·exp(B·d/l)
//
//	k_m  stiffness of the clamped parts, N/m
//
// Valid for through bolts with washer-faced heads in wide parts of one metal, about 0.1 < d/l < 2.
// Errors: *check.RangeError for values of zero or below, d/l outside 0.1 to 2, or an unknown metal.
// Source: Wileman, Choudhury and Green, J. Mech. Des. 113 (1991) 432, as in Shigley's Mechanical Engineering Design, 9th ed., eq. 8-23 and table 8-8 (from memory; the range of d/l is that of the paper's figures).
func WilemanStiffness(p WilemanParams) (float64, error) {
	fit, known := wilemanFits[p.Metal]
	if err := check.All("bolt.WilemanStiffness",
		check.That("Metal", 0, known, fmt.Sprintf("a metal of the table, not %q", p.Metal)),
		check.Positive("Diameter", p.Diameter),
		check.Positive("Clamp", p.Clamp),
		check.That("Clamp", p.Clamp, p.Diameter >= 0.1*p.Clamp && p.Diameter <= 2*p.Clamp, "0.1 <= d/l <= 2"),
		check.Positive("Modulus", p.Modulus),
	); err != nil {
		return 0, err
	}
	return p.Modulus * p.Diameter * fit[0] * math.Exp(fit[1]*p.Diameter/p.Clamp), nil
}
