package axle

import "axlewright/calc/gear"

// A Vehicle is what drives the axle.
type Vehicle struct {
	Name       string `yaml:"name"`
	Engine     Torque `yaml:"engine"`                  // N·m, at the flywheel
	FirstGear  Ratio  `yaml:"first_gear"`              // reduction
	LowRange   Ratio  `yaml:"low_range"`               // reduction of the transfer box; 1 where there is none
	Efficiency Ratio  `yaml:"efficiency" range:"0..1"` // of gearbox, transfer box and axle together
	Shock      Ratio  `yaml:"shock" range:">= 1"`      // a wheel landing, a clutch dropped: multiplies the demand
	Share      Ratio  `yaml:"axle_share" range:"0..1"` // of the engine's torque that can reach this axle

	AxleLoad     Mass   `yaml:"axle_load"`                    // kg, on this axle, laden, standing level
	Laden        Mass   `yaml:"laden,omitempty"`              // kg, whole vehicle
	Wheelbase    Length `yaml:"wheelbase,omitempty"`          // m
	CentreOfMass Length `yaml:"centre_of_mass,omitempty"`     // m, height
	Grade        Angle  `yaml:"grade,omitempty" range:">= 0"` // rad, the steepest it climbs forward: it loads a rear axle more, a front one less
	PropJoint    Torque `yaml:"propshaft_joint,omitempty"`    // N·m at the propshaft, at which its joint yields, where known
	Tyre         Tyre   `yaml:"tyre"`                         // size on the wall, or loaded radius
	Friction     Ratio  `yaml:"friction"`                     // tyre on ground
	TopSpeed     Speed  `yaml:"top_speed,omitempty"`          // m/s
}

// Position says which end of the vehicle the axle is at.
type Position string

// The positions.
const (
	Front Position = "front"
	Rear  Position = "rear"
)

// Flank names the side of the crown wheel's teeth that carries.
type Flank = gear.Flank

// The flanks.
const (
	DriveFlank = gear.Drive // convex, pulls an ordinary rear axle forward
	CoastFlank = gear.Coast // concave
)

// OtherFlank returns the flank opposite to f.
func OtherFlank(f Flank) Flank {
	if f == DriveFlank {
		return CoastFlank
	}
	return DriveFlank
}

// A Duty is how hard and how long an axle is worked, and on which flank.
type Duty struct {
	Name   string  `yaml:"name"`
	Note   string  `yaml:"note,omitempty"`
	Life   Ratio   `yaml:"life_km"` // km wanted between rebuilds
	Blocks []Block `yaml:"blocks,omitempty"`
	Record string  `yaml:"record,omitempty"` // a CSV file of time, torque, speed, in place of blocks

	Cycles []TorqueCycle `yaml:"-"` // of a duty that was logged: what parts feel that do not turn past their load
}

// A TorqueCycle is one kind of rise and fall of torque in a logged duty.
type TorqueCycle struct {
	Low, High float64 // as fractions of the governing limit, positive where they pull forward
	PerMetre  float64 // how often it comes for each metre driven
}

// A Block is one line of a duty. It states its torque as a share of what the
// vehicle can do, which serves any vehicle, or as a torque of the axle, which
// serves the one it was measured on.
type Block struct {
	Name       string `yaml:"name"`
	Share      Ratio  `yaml:"share" range:"0..1"`                 // of the distance; a duty's shares add up to 1
	Torque     Ratio  `yaml:"torque,omitempty" range:">= 0"`      // as a fraction of the governing limit of the vehicle
	AxleTorque Torque `yaml:"axle_torque,omitempty" range:">= 0"` // N·m, at the axle, in place of torque
	Speed      Speed  `yaml:"speed" range:">= 0"`                 // m/s of the vehicle
	Going      Going  `yaml:"going"`                              // forward, overrun or reverse
}

// Going is what the vehicle does in a block of a duty.
type Going string

// The ways of going.
const (
	Forward Going = "forward" // pulling forward
	Overrun Going = "overrun" // forward, wheels driving the engine
	Reverse Going = "reverse" // pulling backward
)
