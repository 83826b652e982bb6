package axle

// A Catalogue is what a shop knows and sells. It may be spread over several
// files.
type Catalogue struct {
	Note          string         `yaml:"note,omitempty"`
	DefaultDoubts []DefaultDoubt `yaml:"default_doubts,omitempty"`
	Labour        float64        `yaml:"labour,omitempty"`           // money an hour
	Standard      StandardJob    `yaml:"standard_rebuild,omitempty"` // what every unit gets
	WantedChance  float64        `yaml:"wanted_chance,omitempty"`    // 0..1, the shop's threshold

	Castings    []Casting    `yaml:"castings,omitempty"`
	GearSets    []GearSet    `yaml:"gear_sets,omitempty"`
	Bearings    []Bearing    `yaml:"bearings,omitempty"`
	DiffCentres []DiffCentre `yaml:"diff_centres,omitempty"`
	HalfShafts  []HalfShafts `yaml:"half_shafts,omitempty"`
	Upgrades    []Upgrade    `yaml:"upgrades,omitempty"`
	Duties      []Duty       `yaml:"duties,omitempty"`

	Measurements []Measurement `yaml:"measurements,omitempty"`
}

// A Measurement is one way to narrow a figure's doubt, and its price.
type Measurement struct {
	Figures []string `yaml:"figures"` // places in an assembly: "Casting.CapBolts.Nut"
	How     string   `yaml:"how"`     // what to do, in words
	Minutes float64  `yaml:"minutes"`
	Parts   float64  `yaml:"parts,omitempty"`
	Leaves  float64  `yaml:"leaves"` // 0..1, share of the doubt's width that stays
}

// A DefaultDoubt is the doubt of a figure of one kind that states none.
type DefaultDoubt struct {
	Kind    string  `yaml:"kind"`    // a dimension in plain words: "length", "stiffness"
	Percent float64 `yaml:"percent"` // two standard deviations
}

// A StandardJob is the rebuild that every unit gets before upgrades.
type StandardJob struct {
	Minutes float64 `yaml:"minutes"`
	Parts   float64 `yaml:"parts"`
}
