package axle

// Bolts are the bolts of one joint: two to a cap, ten or so to a crown wheel.
type Bolts struct {
	Count    int    `yaml:"count"`                           // to one cap, or to the crown wheel
	Thread   string `yaml:"thread"`                          // "M12x1.75", "7/16-20 UNF"
	Grade    string `yaml:"grade"`                           // ISO 898-1 class or a Unified grade: "10.9"
	Torque   Torque `yaml:"torque"`                          // N·m, as tightened
	Nut      Ratio  `yaml:"nut_factor"`                      // K: torque over preload and diameter
	Grip     Length `yaml:"grip"`                            // m, clamped length
	Engaged  Length `yaml:"engagement"`                      // m, of thread in the casting or wheel
	Friction Ratio  `yaml:"friction"`                        // of the joint faces
	Radius   Length `yaml:"radius,omitempty"`                // m, of the bolt circle, for a crown wheel
	Settling Length `yaml:"settling,omitempty" range:">= 0"` // m, embedding of threads and faces
}

// An Overlay is a steel strap welded over a cap.
type Overlay struct {
	Thickness Length `yaml:"thickness"`         // m
	Width     Length `yaml:"width"`             // m
	Metal     string `yaml:"metal"`             // of calc/material, such as "S355J2"
	Bond      Ratio  `yaml:"bond" range:"0..1"` // 0 lies loose, 1 works as one with the cap
	Throat    Length `yaml:"throat"`            // m, of its welds
}

// A RingDowel is a hollow dowel round a cap bolt.
type RingDowel struct {
	Outer Length `yaml:"outer"`              // m
	Inner Length `yaml:"inner"`              // m
	Depth Length `yaml:"depth"`              // m, in the cap
	Yield Stress `yaml:"yield"`              // Pa
	Share Ratio  `yaml:"share" range:"0..1"` // of its strength that counts beside friction; a loose one closes its fit first
}

// A Peg is the thrust screw behind the crown wheel with its pad and plate.
type Peg struct {
	Angle       Angle         `yaml:"angle" range:"any"`    // rad, round the wheel from the mesh
	Radius      Length        `yaml:"radius"`               // m, from the wheel's axis
	Gap         Length        `yaml:"gap" range:"any"`      // m, on the assembled, preloaded, torque-free axle, at the tight spot of the turn
	RunOut      Length        `yaml:"run_out" range:">= 0"` // m, of the back face, total
	PadDiameter Length        `yaml:"pad_diameter"`         // m
	PadMetal    string        `yaml:"pad_metal"`            // of calc/material, such as "CuSn12-C"
	PadBrief    Stress        `yaml:"pad_brief"`            // Pa, pressure the pad stands for moments
	PadSteady   Stress        `yaml:"pad_steady"`           // Pa, and always
	PadRubbing  PressureSpeed `yaml:"pad_rubbing"`          // Pa·m/s, pressure times speed it stands
	Friction    Ratio         `yaml:"friction"`             // between pad and back face
	ScrewThread string        `yaml:"screw_thread"`         // "M22x1.5"
	ScrewPitch  Length        `yaml:"screw_pitch"`          // m
	Screw       Length        `yaml:"screw_diameter"`       // m
	ScrewLength Length        `yaml:"screw_length"`         // m, free, from pad to plate
	ScrewYield  Stress        `yaml:"screw_yield"`          // Pa
	ThreadStiff Stiffness     `yaml:"thread_stiffness"`     // N/m, of the screw's thread in its plate
	Plate       PegPlate      `yaml:"plate"`
}

// A PegPlate is the welded plate that the peg's screw stands in.
type PegPlate struct {
	Long      Length `yaml:"long"`                // m
	Short     Length `yaml:"short"`               // m
	Thickness Length `yaml:"thickness"`           // m
	Count     int    `yaml:"count"`               // plates that share the load
	Fixity    Ratio  `yaml:"fixity" range:"0..1"` // 0 hinged edges, 1 clamped
	Welded    Ratio  `yaml:"welded" range:"0..1"` // share of the edge that is welded
	Throat    Length `yaml:"throat"`              // m, of the weld
	WeldLimit Stress `yaml:"weld_limit"`          // Pa, on the throat
	Yield     Stress `yaml:"yield"`               // Pa
}
