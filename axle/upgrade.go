package axle

// An Upgrade is one thing the shop can do to a unit: what it fits, needs and
// excludes, which parts it puts in, and what it costs.
type Upgrade struct {
	Name     string   `yaml:"name"`  // one word, for lists: "peg"
	Title    string   `yaml:"title"` // for the sheet: "welded plate with a thrust peg"
	Note     string   `yaml:"note,omitempty"`
	Fits     []string `yaml:"fits"`               // castings
	Needs    []string `yaml:"needs,omitempty"`    // other upgrades
	Excludes []string `yaml:"excludes,omitempty"` // other upgrades
	Welds    bool     `yaml:"welds,omitempty"`    // a structural weld on the casting

	CapBolts    *Bolts     `yaml:"cap_bolts,omitempty"`
	Overlay     *Overlay   `yaml:"overlay,omitempty"`
	RingDowel   *RingDowel `yaml:"ring_dowel,omitempty"`
	Lock        *Lock      `yaml:"lock,omitempty"`
	Peg         *Peg       `yaml:"peg,omitempty"`
	WheelBolts  *Bolts     `yaml:"wheel_bolts,omitempty"`
	HeadBearing string     `yaml:"head_bearing,omitempty"`
	Neck        *Neck      `yaml:"pinion_neck,omitempty"`
	DiffCentre  string     `yaml:"diff_centre,omitempty"`
	HalfShafts  string     `yaml:"half_shafts,omitempty"`
	HeadWall    *Length    `yaml:"head_wall,omitempty"` // m, iron left round the cup after boring

	Minutes float64 `yaml:"minutes"` // of labour
	Parts   float64 `yaml:"parts"`   // of the shop's own money
}

// A Neck is a pinion's stem made to suit a larger head bearing.
type Neck struct {
	Diameter Length `yaml:"diameter"` // m
	Least    Length `yaml:"least"`    // m
}

// An Assembly is one build with every part chosen: a casting, a gear set,
// bearings, and what the upgrades put in. Optional parts are nil where absent.
type Assembly struct {
	Casting    Casting
	Gears      GearSet
	Head       Bearing
	Tail       Bearing
	Side       Bearing
	Centre     DiffCentre
	HalfShafts HalfShafts
	Overlay    *Overlay
	RingDowel  *RingDowel
	Peg        *Peg

	Upgrades []string // names, in catalogue order
	Minutes  float64
	Price    float64
	Welds    bool
}
