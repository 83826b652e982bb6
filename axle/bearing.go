package axle

// A Bearing is a single-row tapered roller bearing, by what calipers give;
// a maker's ratings go before computed ones where they stand.
type Bearing struct {
	Name string `yaml:"name"` // what the catalogue calls it
	Note string `yaml:"note,omitempty"`

	Bore    Length `yaml:"bore"`    // m
	Outside Length `yaml:"outside"` // m
	Width   Length `yaml:"width"`   // m, over all

	AsGiven bool `yaml:"sizes_as_given,omitempty"` // the sizes are taken as they stand, though such rollers would not fit in it

	Rollers        int    `yaml:"rollers"`         // how many
	RollerDiameter Length `yaml:"roller_diameter"` // m, mean
	RollerLength   Length `yaml:"roller_length"`   // m, effective
	PitchDiameter  Length `yaml:"pitch_diameter"`  // m, at mid-length of the rollers
	CupAngle       Angle  `yaml:"cup_angle"`       // rad, half angle of the cup

	Dynamic Force `yaml:"dynamic,omitempty"` // N, C of the maker
	Static  Force `yaml:"static,omitempty"`  // N, C0 of the maker

	Price float64 `yaml:"price,omitempty"` // of the shop's own money, for lists of parts
}
