package axle

import (
	"math"

	"axlewright/calc/traction"
)

// standardGravity is in m/s².
const standardGravity = 9.80665

// A Demand is what a vehicle can put through an axle in steady pulling, at the
// likeliest values of its figures.
type Demand struct {
	Engine    float64        // N·m, what the engine can bring to the axle
	Grip      float64        // N·m, at which the tyres let go
	Governing float64        // N·m, the lower of the two
	Governs   traction.Limit // which one that is
}

// Demand works out what the vehicle can put through an axle with these gears at
// this end. Shock is not in it.
//
// Errors: *check.RangeError for figures that make no vehicle.
func (v *Vehicle) Demand(g *GearSet, at Position) (Demand, error) {
	var d Demand
	var err error
	d.Engine, err = traction.EngineLimitedTorque(traction.DrivelineParams{
		EngineTorque: v.Engine.Value, Gearbox: v.FirstGear.Value, Transfer: v.LowRange.Value,
		Final: g.Ratio(), Efficiency: v.Efficiency.Value, Converter: 1, Shock: 1, AxleShare: v.Share.Value,
	})
	if err != nil {
		return d, err
	}
	d.Grip, err = traction.GripLimitedTorque(v.Friction.Value, v.AxleForce(at), v.Tyre.LoadedRadius.Value)
	if err != nil {
		return d, err
	}
	lower, err := traction.GoverningTorque(traction.GoverningParams{Engine: d.Engine, Grip: d.Grip})
	d.Governing, d.Governs = lower.Torque, lower.Governs
	return d, err
}

// AxleForce is the weight on the axle, N, on the steepest grade the vehicle
// climbs where that and what it takes are known, else on the level.
func (v *Vehicle) AxleForce(at Position) float64 {
	level := v.AxleLoad.Value * standardGravity
	if !v.Laden.Given() || !v.Wheelbase.Given() || !v.CentreOfMass.Given() || !v.Grade.Given() {
		return level
	}
	sin, cos := math.Sincos(v.Grade.Value)
	shift := v.Laden.Value * standardGravity * sin * v.CentreOfMass.Value / v.Wheelbase.Value
	if at == Front {
		shift = -shift
	}
	return math.Max(0, level*cos+shift)
}

// Ratio is the reduction of the gear set.
func (g *GearSet) Ratio() float64 { return float64(g.WheelTeeth) / float64(g.PinionTeeth) }
