package loadpath

// Path finds the state of one prepared axle under torque.
type Path interface {
	// Solve returns the state at a torque at the crown wheel (a magnitude, N·m)
	// carried by the flank. The error is a *NotConverged where no equilibrium
	// was found; the state then holds the last attempt.
	Solve(flank Flank, torque float64) (State, error)
}

// State is an axle in equilibrium. Movements count from the assembled,
// preloaded axle without torque.
type State struct {
	Flank  Flank
	Torque float64 // N·m, at the crown wheel

	OnPinion     Vector  // N, tooth force on the pinion, at the mean point
	OnWheel      Vector  // N, tooth force on the crown wheel, the reverse
	PinionTorque float64 // N·m, at the pinion, without losses

	Head SeatLoad
	Tail SeatLoad
	Near SeatLoad
	Far  SeatLoad

	Spigot Vector // N, force on the casting at a spigot bearing

	Mesh   MeshMovement // of the teeth against each other
	Axes   AxisMovement // of the axes against each other
	Pinion Motion       // of the pinion at the mean point
	Wheel  Motion       // of the crown wheel's teeth at the mean point
	Peg    PegState
	Dial   float64 // m, back face at the dial, positive away from the pinion

	Iterations int     // Newton steps over both systems
	Residual   float64 // -, greatest force left over, against the load
	Converged  bool
	Estimate   bool // from the statically determinate path: a first guess
}

// SeatLoad is what a bearing does to the casting and how it sits.
type SeatLoad struct {
	Force  Vector // N, on the casting
	Moment Vector // N·m, on the casting, about the centre of the rollers

	Radial    float64 // N, magnitude square to the bearing's axis
	Axial     float64 // N, along the axis, positive where it presses the rollers into the cup
	Tilting   float64 // N·m, magnitude of the moment
	MaxRoller float64 // N, on the hardest pressed roller
	Loaded    int     // -, rollers that carry load

	Facing   float64  // -, +1 where the rollers load up when the cone moves along its axis, −1 against it
	Approach Approach // of the cone into the cup, preload included
	Movement Motion   // of the cup, from the assembled axle
}

// Approach is how far a cone has moved into its cup from the place where all
// rollers just touch, along the bearing's own axes.
type Approach struct {
	Axial   float64 // m, positive into the cup
	Radial1 float64 // m, pinion bearings: along y; side bearings: along z
	Radial2 float64 // m, pinion bearings: along z; side bearings: along x
	Tilt1   float64 // rad, about the axis of Radial1
	Tilt2   float64 // rad, about the axis of Radial2
}

// Motion is the small movement of a point of a body.
type Motion struct {
	Shift Vector // m
	Turn  Vector // rad, about axes through the point
}

// MeshMovement is how the members have moved at the mean point against each
// other, as the teeth see it. The wheel's part includes its plate.
type MeshMovement struct {
	WheelAxial  float64 // m, wheel along its axis, positive away from the pinion
	PinionAxial float64 // m, pinion along its axis, positive out of the nose
	Offset      float64 // m, positive where the offset has grown; with zero offset, pinion along +z
	ShaftAngle  float64 // rad, positive where the angle between the axes has grown
}

// PegState is what the peg does.
type PegState struct {
	Present bool
	Gap     float64 // m, in the middle of the run-out, hot, before load
	Load    float64 // N, on the pad, zero or more

	Movement     float64 // m, of the back face at the peg, towards the peg
	FreeMovement float64 // m, what it would be at this torque without the peg

	TouchTight Touch // at which torque the tightest spot first touches
	TouchSlack Touch // at which torque the slackest spot does

	Friction   float64 // N, on the back face
	DragTorque float64 // N·m, of the friction about the wheel axis
}

// Touch is a torque of first touch.
type Touch struct {
	Torque  float64 // N·m, at the crown wheel
	Touches bool    // false: not at any torque up to twice the torque asked for
}
