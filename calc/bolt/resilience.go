package bolt

import (
	"fmt"
	"math"

	"axlewright/calc/check"
)

// Section is a plain or threaded length of a bolt.
type Section struct {
	Length   float64 // m, l_i: length within the grip
	Diameter float64 // m, d_i: diameter; d3 for thread
}

// HeadKind is the kind of bolt head.
type HeadKind string

// The two heads of the guideline.
const (
	Hexagon HeadKind = "hexagon"
	Socket  HeadKind = "socket"
)

// Seat says what the thread of a bolt sits in.
type Seat string

// A nut, or a tapped hole in the last part.
const (
	Nut        Seat = "nut"
	TappedHole Seat = "tapped hole"
)

// BoltResilienceParams describes a bolt as a row of springs.
type BoltResilienceParams struct {
	Sections    []Section // -, lengths within the grip from head to interface of nut or tapped hole, free thread at d3
	Diameter    float64   // m, d: nominal diameter
	Core        float64   // m, d_3: core diameter of the thread
	Modulus     float64   // Pa, E_S: Young's modulus of the bolt
	Head        HeadKind  // name, hexagon or socket
	Seat        Seat      // name, nut or tapped hole
	SeatModulus float64   // Pa, E_M: Young's modulus of the nut or of the tapped part
}

// BoltResilienceResult is the resilience of a bolt and of its parts.
type BoltResilienceResult struct {
	Head       float64 // m/N, δ_SK: head
	Grip       float64 // m/N, all sections within the grip
	Thread     float64 // m/N, δ_G: core of the engaged thread
	Seat       float64 // m/N, δ_M: nut or tapped hole
	Resilience float64 // m/N, δ_S: whole bolt
}

// BoltResilience returns the axial resilience of a bolt with its head and its engaged thread.
//
//	δ_S = δ_SK + Σ l_i/(E_S·π/4·d_i²) + δ_G + δ_M
//	δ_SK = l_SK/(E_S·A_N),  l_SK = 0.5·d hexagon, 0.4·d socket
//	δ_G = 0.5·d/(E_S·π/4·d3²)
//	δ_M = l_M/(E_M·A_N),  l_M = 0.4·d nut, 0.33·d tapped hole
//	A_N = π/4·d²
//
// Valid for bolts pulled without bending, below yield.
// Errors: *check.RangeError for a length, diameter or modulus of zero or below, d3 >= d, or an unknown head or seat.
// Source: VDI 2230-1:2015, 5.1.1.1 (from memory).
func BoltResilience(p BoltResilienceParams) (BoltResilienceResult, error) {
	head := map[HeadKind]float64{Hexagon: 0.5, Socket: 0.4}[p.Head]
	seat := map[Seat]float64{Nut: 0.4, TappedHole: 0.33}[p.Seat]
	conditions := []check.Condition{
		check.Positive("Diameter", p.Diameter),
		check.That("Core", p.Core, p.Core > 0 && p.Core < p.Diameter, "0 < d3 < d"),
		check.Positive("Modulus", p.Modulus),
		check.Positive("SeatModulus", p.SeatModulus),
		check.That("Head", 0, head > 0, fmt.Sprintf("%q or %q, not %q", Hexagon, Socket, p.Head)),
		check.That("Seat", 0, seat > 0, fmt.Sprintf("%q or %q, not %q", Nut, TappedHole, p.Seat)),
		check.That("Sections", float64(len(p.Sections)), len(p.Sections) > 0, "at least one section"),
	}
	for _, s := range p.Sections {
		conditions = append(conditions, check.Positive("Sections", s.Length), check.Positive("Sections", s.Diameter))
	}
	if err := check.All("bolt.BoltResilience", conditions...); err != nil {
		return BoltResilienceResult{}, err
	}
	AN := math.Pi / 4 * p.Diameter * p.Diameter
	r := BoltResilienceResult{
		Head:   head * p.Diameter / (p.Modulus * AN),
		Thread: 0.5 * p.Diameter / (p.Modulus * math.Pi / 4 * p.Core * p.Core),
		Seat:   seat * p.Diameter / (p.SeatModulus * AN),
	}
	for _, s := range p.Sections {
		r.Grip += s.Length / (p.Modulus * math.Pi / 4 * s.Diameter * s.Diameter)
	}
	r.Resilience = r.Head + r.Grip + r.Thread + r.Seat
	return r, nil
}

// ShankStiffnessParams describes a bolt as two springs.
type ShankStiffnessParams struct {
	ShankLength  float64 // m, l_d: plain length within the grip
	ThreadLength float64 // m, l_t: threaded length within the grip
	ShankArea    float64 // m², A_d: area of the plain shank
	StressArea   float64 // m², A_t: tensile stress area
	Modulus      float64 // Pa, E: Young's modulus of the bolt
}

// ShankStiffness returns the stiffness of a bolt from the plain and threaded length within the grip only.
//
//	k_b = A_d·A_t·E/(A_d·l_t + A_t·l_d)
//
//	k_b  stiffness of the bolt, N/m
//
// Valid for long bolts; it leaves out head and engaged thread, so it is stiffer than BoltResilience.
// Errors: *check.RangeError for an area or modulus of zero or below, or no length.
// Source: Shigley's Mechanical Engineering Design, 9th ed., eq. 8-17 (from memory).
func ShankStiffness(p ShankStiffnessParams) (float64, error) {
	if err := check.All("bolt.ShankStiffness",
		check.NotNegative("ShankLength", p.ShankLength),
		check.That("ThreadLength", p.ThreadLength, p.ThreadLength >= 0 && p.ThreadLength+p.ShankLength > 0, ">= 0, with some grip"),
		check.Positive("ShankArea", p.ShankArea),
		check.Positive("StressArea", p.StressArea),
		check.Positive("Modulus", p.Modulus),
	); err != nil {
		return 0, err
	}
	return p.ShankArea * p.StressArea * p.Modulus / (p.ShankArea*p.ThreadLength + p.StressArea*p.ShankLength), nil
}
