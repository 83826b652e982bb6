package axle

// A Casting is one variant of nose casting: what is the same in every unit
// built in it, before any upgrade.
type Casting struct {
	Name  string `yaml:"name"`
	Maker string `yaml:"maker,omitempty"`
	Note  string `yaml:"note,omitempty"`
	Metal string `yaml:"metal"` // a metal of calc/material, such as "EN-GJS-400-15"

	Layout Layout `yaml:"layout"`
	Seats  Seats  `yaml:"seats"`
	// Compliance, where given, replaces the stiffness of seats and peg_wall for
	// the freedoms that it names. What cap and leg give more, drawn towards the
	// cap, than the seat gives when pressed still comes from the seats.
	Compliance *Compliance `yaml:"compliance,omitempty"` // of the whole casting, from a finite-element run or a bench test
	Leg        Leg         `yaml:"leg"`
	Cap        Cap         `yaml:"cap"`
	CapBolts   Bolts       `yaml:"cap_bolts"`
	Adjuster   Adjuster    `yaml:"adjuster"`
	Lock       Lock        `yaml:"lock"`
	Preload    Preload     `yaml:"preload"`
	Limits     Limits      `yaml:"limits"`

	HeadBearing string    `yaml:"head_bearing"` // names of bearings of the catalogue
	TailBearing string    `yaml:"tail_bearing"`
	SideBearing string    `yaml:"side_bearing"`
	DiffCentre  string    `yaml:"diff_centre"`
	HalfShafts  string    `yaml:"half_shafts"`
	GearSets    []string  `yaml:"gear_sets"` // those that fit
	HeadWall    Length    `yaml:"head_wall"` // iron round the head bearing cup, m
	PegWall     Stiffness `yaml:"peg_wall"`  // casting behind the peg's plate, N/m
}

// Layout is where things sit along the two axes.
type Layout struct {
	GearToHead  Length `yaml:"gear_to_head"`  // m, mean point of the teeth to the centre of the head bearing's rollers
	HeadToTail  Length `yaml:"head_to_tail"`  // m, between the roller centres
	MeshToPlate Length `yaml:"mesh_to_plate"` // m, mean point to the mid-plane of the crown wheel's plate
	MeshToHub   Length `yaml:"mesh_to_hub"`   // m, mean point to the hub of the diff centre's flange
	Near        Length `yaml:"near"`          // m, crossing point to the side bearing's rollers on the crown-wheel side
	Far         Length `yaml:"far"`           // m, the same on the other side
	DialRadius  Length `yaml:"dial_radius"`   // m, where a dial sits on the back face
}

// Seats is how stiffly the casting holds each bearing.
type Seats struct {
	Head Seat     `yaml:"head"`
	Tail Seat     `yaml:"tail"`
	Side SideSeat `yaml:"side"`
}

// A Seat holds a pinion bearing.
type Seat struct {
	Axial  Stiffness     `yaml:"axial"`  // N/m
	Radial Stiffness     `yaml:"radial"` // N/m
	Tilt   TiltStiffness `yaml:"tilt"`   // N·m/rad
}

// A SideSeat holds a side bearing between casting and cap; the two sides are
// alike.
type SideSeat struct {
	Inward Stiffness     `yaml:"inward"`           // N/m, pressed into the casting, away from the cap
	Leg    Stiffness     `yaml:"leg"`              // N/m, leg pulled towards the cap; the cap and its bolts are in series
	Across Stiffness     `yaml:"across,omitempty"` // N/m, along the cap's joint; estimated from leg where left out
	Axial  Stiffness     `yaml:"axial,omitempty"`  // N/m, the leg bent sideways by thrust; estimated from leg where left out
	Tilt   TiltStiffness `yaml:"tilt"`             // N·m/rad
}

// A Leg carries a side bearing; it bends at its root under side thrust.
type Leg struct {
	Height Length `yaml:"height"` // m, root to bearing axis
	Width  Length `yaml:"width"`  // m, along the joint at the root
	Depth  Length `yaml:"depth"`  // m, along the wheel axis at the root
}

// A Cap is the half ring that holds a side bearing down.
type Cap struct {
	BoreRadius   Length `yaml:"bore_radius"`                 // m
	Thickness    Length `yaml:"thickness"`                   // m, radial, at the crown of the arch
	Width        Length `yaml:"width"`                       // m, along the bore
	Modulus      Stress `yaml:"modulus"`                     // Pa
	Yield        Stress `yaml:"yield"`                       // Pa
	Friction     Ratio  `yaml:"friction"`                    // of the cap's joint
	Prying       Ratio  `yaml:"prying"`                      // bolt force over half the bearing's lift, arch effect
	LoadPlane    Ratio  `yaml:"load_plane" range:"0..1"`     // n of VDI 2230: where in the joint the load enters
	ThreadShare  Ratio  `yaml:"thread_share" range:"0..1"`   // share of the side force that bolts and dowels take by themselves
	CreepShare   Ratio  `yaml:"creep_share" range:"0..1"`    // share of cup load that drags the adjuster when the cup creeps
	JointOutward Ratio  `yaml:"joint_outward" range:"0..1"`  // share of the bearing's side load that lifts the cap
	JointAcross  Ratio  `yaml:"joint_sideways" range:"0..1"` // share that pushes it sideways
	Facing       Facing `yaml:"facing"`                      // which way the caps face
}

// Facing is the direction in which the caps face, seen from the wheel axis.
type Facing string

// The facings.
const (
	AwayFromNose Facing = "away from the nose"
	TowardsNose  Facing = "towards the nose"
)

// An Adjuster is the threaded side nut that sets lash and side preload.
type Adjuster struct {
	Pitch        Length `yaml:"pitch"`                      // m
	Notches      int    `yaml:"notches"`                    // round the nut
	ThreadRadius Length `yaml:"thread_radius"`              // m
	FrictionKept Ratio  `yaml:"friction_kept" range:"0..1"` // share of thread friction left under vibration
	FaceFriction Ratio  `yaml:"face_friction"`              // between cup and adjuster, and in the thread
	FaceRadius   Length `yaml:"face_radius"`                // m, where the cup rubs on it
}

// A Lock keeps an adjuster from turning.
type Lock struct {
	Name   string `yaml:"name"`   // what it is: "split pin", "tab"
	Radius Length `yaml:"radius"` // m, from the bore's axis
	Shear  Force  `yaml:"shear"`  // N, at which it shears
}

// Preload is how the bearings are set.
type Preload struct {
	Pinion Length `yaml:"pinion" range:"any"` // m, axial approach of the pair from zero end play; negative is end play
	Side   Length `yaml:"side" range:"any"`   // m, the same of the side bearings
}

// Limits is how far the mesh may move before the teeth no longer meet.
type Limits struct {
	WheelAxial  Length `yaml:"wheel_axial"`   // m, wheel pushed from the pinion
	PinionAxial Length `yaml:"pinion_axial"`  // m
	Offset      Length `yaml:"offset"`        // m
	ShaftAngle  Angle  `yaml:"shaft_angle"`   // rad
	StaticMin   Ratio  `yaml:"static_safety"` // C0 over the load, the least for raceways without dents
}
