package loadpath

import (
	"axlewright/calc/bearing"
	"axlewright/calc/gear"
)

// Flank says which flank of the crown wheel carries the load.
type Flank = gear.Flank

// The flanks. Which of them pulls the vehicle forward is for the caller to know.
const (
	Drive = gear.Drive // convex flank of the crown wheel
	Coast = gear.Coast // concave flank of the crown wheel
)

// Vector is a vector in the frame of the package.
type Vector struct {
	X float64 // along the pinion axis, out of the nose
	Y float64 // along the crown-wheel axis, from the pinion towards the back of the wheel
	Z float64 // square to both, z = x × y
}

// Axle is what the elastic load path needs to know of one axle, all in
// coherent SI. It is plain data: copy it, change it, prepare it again.
type Axle struct {
	Mesh   Mesh
	Layout Layout

	Pinion PinionShaft
	Centre DiffCentre

	Head bearing.Rollers // pinion bearing next to the teeth
	Tail bearing.Rollers // pinion bearing at the flange
	Near bearing.Rollers // side bearing on the crown-wheel side
	Far  bearing.Rollers // the other side bearing

	// Preload is the travel by which each pair was set from zero end play, m:
	// bearings and seats share it. Negative is end play; without torque the shaft
	// then rests in the middle of it.
	PinionPreload float64
	SidePreload   float64

	HeadSeat Seat
	TailSeat Seat
	NearSeat SideSeat
	FarSeat  SideSeat

	// CapDirection is the way the caps face, square to the wheel axis. Its
	// length does not matter.
	CapDirection Vector

	// Casting, where given, replaces the axial, radial and tilting stiffness of
	// the seats by one matrix with cross terms.
	Casting *Casting

	Plate Plate // crown wheel on its flange
	Peg   *Peg  // nil where there is none
}

// Mesh is where the teeth meet and which way they push.
type Mesh struct {
	MeanPoint   Vector  // m, mean point of the teeth
	PinionAxisZ float64 // m, place of the pinion axis along z
	Ratio       float64 // -, crown-wheel teeth over pinion teeth
	Drive       Vector  // 1/m, force on the crown wheel per torque at it, drive flank
	Coast       Vector  // 1/m, the same for the coast flank
}

// Layout is where things sit along the two axes.
type Layout struct {
	GearToHead  float64 // m, mean point to the centre of the head bearing's rollers
	HeadToTail  float64 // m, between the roller centres
	MeshToPlate float64 // m, mean point to the mid-plane of the crown wheel's plate, towards its back
	MeshToHub   float64 // m, mean point to the middle of the flange's hub, towards the back
	Near        float64 // m, crossing point to the near side bearing's roller centres
	Far         float64 // m, crossing point to the far side bearing's roller centres, as a distance
}

// Section is a length of shaft of one cross-section.
type Section struct {
	Length float64 // m
	Outer  float64 // m, outer diameter
	Inner  float64 // m, bore; zero for a solid shaft
	Share  float64 // -, share of the bending and shear stiffness left by windows; zero stands for one
}

// PinionShaft is the pinion from the mean point of its teeth to the tail bearing.
type PinionShaft struct {
	Neck    []Section // teeth to head bearing, in that order; lengths add up to GearToHead
	Shank   []Section // head bearing to tail bearing; lengths add up to HeadToTail
	Modulus float64   // Pa, Young's modulus
	Poisson float64   // -, Poisson's ratio

	// A spigot bearing on the far side of the teeth, where there is one.
	SpigotDistance  float64 // m, mean point to the middle of the spigot bearing, away from the head
	SpigotDiameter  float64 // m, shaft between teeth and spigot bearing
	SpigotStiffness float64 // N/m, radial, bearing and seat together; zero where there is none
}

// DiffCentre is what the crown wheel is bolted to, between the side bearings.
type DiffCentre struct {
	ToNear  []Section // hub to near bearing; lengths add up to that distance
	ToFar   []Section // hub to far bearing
	Modulus float64   // Pa, Young's modulus
	Poisson float64   // -, Poisson's ratio
}

// Seat is how stiffly the casting holds a pinion bearing, everything from the
// cup outwards and the cone's seat on the shaft.
type Seat struct {
	Axial  float64 // N/m
	Radial float64 // N/m
	Tilt   float64 // N·m/rad
}

// SideSeat is how stiffly the casting and the cap hold a side bearing.
type SideSeat struct {
	Inward float64 // N/m, pressed into the casting, away from the cap
	Leg    float64 // N/m, casting's leg drawn towards the cap
	Cap    float64 // N/m, cap, bolts and joint together, in series with the leg
	Across float64 // N/m, square to the cap's direction and to the wheel axis
	Axial  float64 // N/m, along the wheel axis
	Tilt   float64 // N·m/rad, about either axis square to the wheel axis
}

// Peg is the stop behind the crown wheel.
type Peg struct {
	Gap       float64 // m, on the assembled, preloaded, torque-free axle; negative where it was screwed in past touch
	Spot      Spot    // where on the turn the gap was measured
	RunOut    float64 // m, total run-out of the back face over a turn at the peg's radius
	Closing   float64 // m, by which the gap closes from cold to running heat
	Stiffness float64 // N/m, screw, thread, pad, plate, welds and, without a Casting, the iron behind them in series; zero for rigid
	Friction  float64 // -, between pad and back face

	Radius    float64 // m, from the wheel axis
	Angle     float64 // rad, from the mesh about the wheel axis, positive about +y
	BackFaceY float64 // m, mid-plane of the plate to the back face

	// AgainstTorque says that the wheel turns against the torque of the teeth
	// on it, as on the overrun; it only reverses the pad's friction.
	AgainstTorque bool
}

// Spot says where in a turn of the crown wheel the peg's gap was measured.
type Spot string

// The spots. An unknown one counts as the worse of the two for either purpose.
const (
	Middle  Spot = ""        // mean over a turn
	Tight   Spot = "tight"   // where the run-out brings the back face closest to the peg
	Slack   Spot = "slack"   // where it is farthest
	Unknown Spot = "unknown" // anywhere
)
