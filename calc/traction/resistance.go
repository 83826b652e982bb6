package traction

import (
	"math"

	"axlewright/calc/check"
)

// RoadParams are a vehicle and the road it is on.
type RoadParams struct {
	Weight   float64 // N, W: weight of the vehicle
	Grade    float64 // -, tan θ: rise over run, uphill positive
	Rolling  float64 // -, C_rr: rolling resistance coefficient
	DragArea float64 // m², C_d·A: drag coefficient times frontal area
	Density  float64 // kg/m³, ρ: of the air, about 1.2
}

// conditions are those of the road.
func (p RoadParams) conditions() []check.Condition {
	return []check.Condition{
		check.Positive("Weight", p.Weight),
		check.Finite("Grade", p.Grade),
		check.NotNegative("Rolling", p.Rolling),
		check.NotNegative("DragArea", p.DragArea),
		check.NotNegative("Density", p.Density),
	}
}

// climb is the force of slope and rolling, without air.
func (p RoadParams) climb() (grade, rolling float64) {
	theta := math.Atan(p.Grade)
	return p.Weight * math.Sin(theta), p.Rolling * p.Weight * math.Cos(theta)
}

// ResistanceResult is what a vehicle has to be pushed with to keep its speed.
type ResistanceResult struct {
	Grade   float64 // N, F_g: of the slope, below zero downhill
	Rolling float64 // N, F_r: of the tyres on the ground
	Air     float64 // N, F_a: of the air
	Total   float64 // N, F: all together
}

// RoadResistance returns the force that keeps a vehicle at a steady speed on a slope.
//
//	F = W·sin θ + C_rr·W·cos θ + ½·ρ·C_d·A·v²
//
//	road   vehicle and road
//	speed  of the vehicle v, m/s
//
// Valid for still air and hard ground; soft ground takes far more.
// Errors: *check.RangeError for a weight not above zero, other values below zero.
// Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 4; Wong,
// Theory of Ground Vehicles, 3.1 (both from memory).
func RoadResistance(road RoadParams, speed float64) (ResistanceResult, error) {
	if err := check.All("traction.RoadResistance", append(road.conditions(), check.NotNegative("speed", speed))...); err != nil {
		return ResistanceResult{}, err
	}
	var r ResistanceResult
	r.Grade, r.Rolling = road.climb()
	r.Air = road.Density / 2 * road.DragArea * speed * speed
	r.Total = r.Grade + r.Rolling + r.Air
	return r, nil
}

// SpeedFromPower returns the steady speed that a power at the wheels keeps up on a slope.
//
//	v from P = v·(W·sin θ + C_rr·W·cos θ) + ½·ρ·C_d·A·v³
//
//	road   vehicle and road
//	power  at the wheels P, W
//	v      speed of the vehicle, m/s
//
// Valid for a power above zero; downhill only where there is air to hold the
// vehicle back.
// Errors: *check.RangeError outside that range.
// Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 4 (from memory).
func SpeedFromPower(road RoadParams, power float64) (float64, error) {
	const fn = "traction.SpeedFromPower"
	if err := check.All(fn, append(road.conditions(), check.Positive("power", power))...); err != nil {
		return 0, err
	}
	grade, rolling := road.climb()
	steady, air := grade+rolling, road.Density/2*road.DragArea
	if air == 0 {
		if err := check.All(fn, check.That("Grade", road.Grade, steady > 0, "uphill or rolling, for nothing else holds the vehicle back")); err != nil {
			return 0, err
		}
		return power / steady, nil
	}
	// The curve bends upward, so Newton's method comes down from any speed that
	// is too high and never crosses the root.
	v := math.Cbrt(power / air)
	if steady < 0 {
		v += math.Sqrt(-steady / air)
	} else if steady > 0 {
		v = math.Min(v, power/steady)
	}
	for range 200 {
		next := v - (air*v*v*v+steady*v-power)/(3*air*v*v+steady)
		if math.Abs(next-v) <= 1e-15*v {
			return next, nil
		}
		v = next
	}
	return v, nil
}

// RotatingMassFactor returns how much heavier a vehicle is to set moving than to lift, because its wheels and engine must be turned up too.
//
//	γ = 1.04 + 0.0025·i²
//
//	ratio  reduction from engine to wheels i, -
//	γ      mass to be set moving over mass, -
//
// Valid for light vehicles with a piston engine engaged.
// Errors: *check.RangeError for a ratio below zero.
// Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), eq. 2-9b (from memory).
func RotatingMassFactor(ratio float64) (float64, error) {
	if err := check.All("traction.RotatingMassFactor", check.NotNegative("ratio", ratio)); err != nil {
		return 0, err
	}
	return 1.04 + 0.0025*ratio*ratio, nil
}
