package axle

// An Enquiry is what a customer asks, with all that was found out on the
// telephone.
type Enquiry struct {
	Number    string   `yaml:"number"`
	Customer  string   `yaml:"customer"`
	Note      string   `yaml:"note,omitempty"`
	Catalogue []string `yaml:"catalogue"` // files, beside the enquiry's

	Casting  string   `yaml:"casting"`
	Gears    string   `yaml:"gears"`
	Centre   string   `yaml:"diff_centre,omitempty"` // where not the casting's own
	Mounting Mounting `yaml:"mounting"`

	Vehicle  Vehicle  `yaml:"vehicle"`
	Standard *Vehicle `yaml:"standard,omitempty"` // the same vehicle as its maker sold it
	Use      []Use    `yaml:"use"`
	Duty     string   `yaml:"duty"`
	History  []Fault  `yaml:"history,omitempty"` // what broke before
	Fitted   []string `yaml:"fitted,omitempty"`  // upgrades that are in it already

	Wanted float64 `yaml:"wanted_chance,omitempty"` // 0..1, chance to carry the demand; the shop's own where absent
	Budget float64 `yaml:"budget,omitempty"`
	Labour float64 `yaml:"labour,omitempty"` // money an hour; the catalogue's where absent
}

// Mounting is how the axle sits in the vehicle, and so which flank pulls.
type Mounting struct {
	Position Position `yaml:"position" json:"position"`
	Forward  Flank    `yaml:"forward" json:"forward"` // flank of the crown wheel that carries when the vehicle pulls forward
}

// FlankOf returns the flank that carries in a way of going. Overrun and
// reverse load the flank opposite to pulling forward.
func (m Mounting) FlankOf(going Going) Flank {
	if going == Forward {
		return m.Forward
	}
	return OtherFlank(m.Forward)
}

// Use is a kind of use that changes the advice beyond the sums.
type Use string

// The kinds of use.
const (
	Road        Use = "road"
	Farm        Use = "farm"
	Forest      Use = "forest"
	Towing      Use = "towing"
	Expedition  Use = "expedition"
	Competition Use = "competition"
	Rock        Use = "rock"
	Salt        Use = "salt"     // sea water, winter roads
	Original    Use = "original" // the owner wants it as it was made
)

// Fault is something that went wrong before.
type Fault string

// The faults that change the advice.
const (
	HeelBreaks    Fault = "heel breaks"    // heel ends of crown-wheel teeth broken off
	ShockFracture Fault = "shock fracture" // one or two teeth gone
	PinionStem    Fault = "pinion stem"
	HeadBearing   Fault = "head bearing"
	CapWalk       Fault = "cap walk"
	OilStarved    Fault = "oil starved"
)
