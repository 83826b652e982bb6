package axle

// A Vehicle is what drives the axle.
type Vehicle struct {
	Name       string `yaml:"name"`
	Engine     Torque `yaml:"engine"`     // N·m, at the flywheel
	FirstGear  Ratio  `yaml:"first_gear"` // reduction
	LowRange   Ratio  `yaml:"low_range"`  // reduction of the transfer box; 1 where there is none
	Efficiency Ratio  `yaml:"efficiency"`
	Shock      Ratio  `yaml:"shock"`      // a wheel landing, a clutch dropped: multiplies the demand
	Share      Ratio  `yaml:"axle_share"` // of the engine's torque that can reach this axle

	AxleLoad     Mass   `yaml:"axle_load"` // kg, on this axle, laden, standing level
	Laden        Mass   `yaml:"laden"`     // kg, whole vehicle
	Wheelbase    Length `yaml:"wheelbase"`
	CentreOfMass Length `yaml:"centre_of_mass"` // m, height
	Grade        Angle  `yaml:"grade"`          // rad, the steepest it climbs; loads a rear axle more
	Tyre         Tyre   `yaml:"tyre"`
	Friction     Ratio  `yaml:"friction"` // tyre on ground
	TopSpeed     Speed  `yaml:"top_speed,omitempty"`
}

// Position says which end of the vehicle the axle is at.
type Position string

// The positions.
const (
	Front Position = "front"
	Rear  Position = "rear"
)

// Flank names the side of the crown wheel's teeth that carries.
type Flank string

// The flanks.
const (
	DriveFlank Flank = "drive" // convex flank of the crown wheel
	CoastFlank Flank = "coast" // concave flank of the crown wheel
)

// Other returns the opposite flank.
func (f Flank) Other() Flank {
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
	Blocks []Block `yaml:"blocks"`
	Record string  `yaml:"record,omitempty"` // a CSV file of time, torque, speed, in place of blocks
}

// A Block is one line of a duty.
type Block struct {
	Name   string `yaml:"name"`
	Share  Ratio  `yaml:"share"`  // of the distance; a duty's shares add up to 1
	Torque Ratio  `yaml:"torque"` // as a fraction of the governing limit of the vehicle
	Speed  Speed  `yaml:"speed"`  // m/s of the vehicle
	Going  Going  `yaml:"going"`
}

// Going is what the vehicle does in a block of a duty.
type Going string

// The ways of going.
const (
	Forward Going = "forward" // pulling forward
	Overrun Going = "overrun" // forward, wheels driving the engine
	Reverse Going = "reverse" // pulling backward
)
