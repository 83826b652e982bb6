package traction

import "axlewright/calc/check"

// Limit names what a vehicle runs out of first.
type Limit string

// The limits.
const (
	Engine Limit = "engine"
	Grip   Limit = "grip"
)

// GoverningParams are the two limits of an axle's torque.
type GoverningParams struct {
	Engine float64 // N·m, T_engine: torque the engine can bring to the axle
	Grip   float64 // N·m, T_grip: torque at which the tyres let go
}

// GoverningResult is the torque the axle can meet, and why no more.
type GoverningResult struct {
	Torque  float64 // N·m, T: the lower of the two
	Governs Limit   // name, what runs out first: engine or grip
}

// GoverningTorque returns the torque an axle can meet in steady pulling: the lower of what the engine brings and what the tyres hold.
//
//	T = min(T_engine, T_grip)
//
// Valid for steady pulling. A spinning wheel that bites again, or lands, can go
// past both: that is what the shock factor is for.
// Errors: *check.RangeError for a limit below zero.
// Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2 (from memory).
func GoverningTorque(p GoverningParams) (GoverningResult, error) {
	if err := check.All("traction.GoverningTorque",
		check.NotNegative("Engine", p.Engine),
		check.NotNegative("Grip", p.Grip),
	); err != nil {
		return GoverningResult{}, err
	}
	if p.Engine < p.Grip {
		return GoverningResult{Torque: p.Engine, Governs: Engine}, nil
	}
	return GoverningResult{Torque: p.Grip, Governs: Grip}, nil
}

// IndexParams compare a customer's vehicle with the same vehicle as it was made.
type IndexParams struct {
	Demand   float64 // N·m, T: governing torque of the customer's vehicle
	Standard float64 // N·m, T_0: governing torque of his own standard vehicle
}

// DemandIndex returns how many times the torque of the standard vehicle the customer's asks of the axle.
//
//	index = T/T_0
//
//	index  demand index, -
//
// Valid for both torques worked out alike, without a shock factor. It never
// decides alone.
// Errors: *check.RangeError for torques not above zero.
// Source: common practice, no source.
func DemandIndex(p IndexParams) (float64, error) {
	if err := check.All("traction.DemandIndex",
		check.Positive("Demand", p.Demand),
		check.Positive("Standard", p.Standard),
	); err != nil {
		return 0, err
	}
	return p.Demand / p.Standard, nil
}
