package assess

import (
	"axlewright/axle"
	"axlewright/calc/traction"
)

// Advice is the finished answer to an enquiry. It is stored and printed as it
// is, never recomputed. Torques are at the axle, both wheels together, in N·m.
type Advice struct {
	Enquiry  string        `json:"enquiry"`
	Customer string        `json:"customer"`
	Casting  string        `json:"casting"`
	Gears    string        `json:"gears"`
	Mounting axle.Mounting `json:"mounting"`
	From     []Given       `json:"from,omitempty"` // what of the vehicle the sums took; none in advice of old
	Draws    int           `json:"draws"`
	Seed     uint64        `json:"seed"`

	Demand   Demand  `json:"demand"`
	Wanted   float64 `json:"wanted_chance"` // 0..1
	Distance float64 `json:"wanted_km"`

	Builds      []Build      `json:"builds"`    // by price, the dominated ones set aside
	SetAside    []SetAside   `json:"set_aside"` // dearer and in no link stronger than another
	Comparisons []Comparison `json:"comparisons"`

	Verdict     Verdict `json:"verdict"`
	Best        int     `json:"best"`        // index into Builds: the recommended one, else the one that comes nearest
	Recommended int     `json:"recommended"` // index into Builds; -1 where none is good enough
	NextUp      int     `json:"next_up"`     // index into Builds; -1 where there is none
	NextFixes   string  `json:"next_fixes"`  // what the next one up fixes and what it does not
	Peg         PegView `json:"peg"`
	Rules       []Rule  `json:"rules"` // use-type rules that changed or add to the advice

	Loads []BearingShare `json:"bearing_loads"` // of the best build at the peak, every figure at its value

	Shares  []Share  `json:"doubt_shares"` // largest first
	Measure []Narrow `json:"measure_next"` // best first
	Unknown []string `json:"not_known"`
	Caution []string `json:"cautions"`
}

// A Given is one thing of the enquiry as the sums took it, in words.
type Given struct {
	Name string `json:"name"` // "axle load"
	Text string `json:"text"` // "1,450 kg (3,200 lb)"
}

// A Verdict is the kind of answer.
type Verdict string

// The verdicts.
const (
	Strengthen     Verdict = "strengthen"
	Standard       Verdict = "rebuild as standard"
	NotThisAxle    Verdict = "not this axle"
	NothingCarries Verdict = "no build carries it with the wanted chance"
)

// Demand is what the vehicle can put through the axle.
type Demand struct {
	Engine    Band           `json:"engine"`    // N·m, what the driveline can send
	Grip      Band           `json:"grip"`      // N·m, what the tyres can hold
	Governing Band           `json:"governing"` // N·m, the lower of the two, steady
	Peak      Band           `json:"peak"`      // N·m, with shock; what overload links must carry
	Limit     traction.Limit `json:"limit"`     // "grip" or "engine", which governs more often
	Share     float64        `json:"limit_share"`
	Why       string         `json:"why"`
	Forward   float64        `json:"forward_share"`  // of the peak that reaches the flank that pulls forward
	Backward  float64        `json:"backward_share"` // and the other flank
	Index     float64        `json:"index"`          // against the customer's own standard vehicle; 0 where it was not given
	IndexText string         `json:"index_text"`
}

// A Build is one build and what the draws make of it.
type Build struct {
	Name     string   `json:"name"`
	Upgrades []string `json:"upgrades"`
	Titles   []string `json:"titles"`
	Price    float64  `json:"price"`
	Minutes  float64  `json:"minutes"`
	Welds    bool     `json:"welds"`

	Frontier   bool   `json:"frontier"`    // no cheaper build carries the demand as surely
	GiveOut    Band   `json:"give_out"`    // N·m, of the weakest link, draw by draw
	Carries    Chance `json:"carries"`     // chance that every link that breaks or moves holds the peak
	Lasts      Chance `json:"lasts"`       // chance that no link wears out before the wanted distance
	Life       Band   `json:"life_km"`     // of the link that wears out first, under the duty
	Weak       int    `json:"weak"`        // index into Links: most often the first to break or move; -1 where none does
	RunnerUp   int    `json:"runner_up"`   // the second; -1 where there is none
	WearsFirst int    `json:"wears_first"` // the link most often first to wear out; -1 where none does
	Links      []Rung `json:"links"`       // lowest median first
}

// A Rung is one link of one build on the ladder.
type Rung struct {
	Name    string     `json:"name"`
	Part    string     `json:"part"`
	Kind    Kind       `json:"kind"`
	Flank   axle.Flank `json:"flank"`       // on which it gives out first; empty for a link of the whole duty
	GiveOut Band       `json:"give_out"`    // N·m
	First   float64    `json:"first_to_go"` // 0..1, share of draws in which it is the first of its kind
	Carries Chance     `json:"carries"`
	Outside bool       `json:"outside"`           // not in the casting: shaft, centre, joint
	Life    *Band      `json:"life_km,omitempty"` // of a link that wears, under the duty as it is
}

// Kind is what giving out means for a link.
type Kind string

// The kinds of giving out.
const (
	Breaks Kind = "breaks" // or yields, slips, opens: at once
	Moves  Kind = "moves"  // too far for the teeth
	Wears  Kind = "wears"  // out before the wanted distance, under the duty
)

// SetAside is a dominated build.
type SetAside struct {
	Name   string  `json:"name"`
	Price  float64 `json:"price"`
	Better string  `json:"better"` // the build that is cheaper and nowhere weaker
}

// A Comparison sets two neighbours in price side by side, draw by draw.
type Comparison struct {
	Cheaper  int    `json:"cheaper"` // indexes into Builds
	Dearer   int    `json:"dearer"`
	Stronger Chance `json:"stronger"` // chance that the dearer one gives out later
	TooClose bool   `json:"too_close"`
	Text     string `json:"text"`
}

// PegView is what the sums say about a peg on this axle.
type PegView struct {
	Offered bool       `json:"offered"` // a build with a peg exists
	Brings  bool       `json:"brings"`
	Gap     *GapAdvice `json:"gap_window,omitempty"`
	Gain    float64    `json:"gain"`   // in the chance to carry the demand, against the same build without it
	Longer  float64    `json:"longer"` // share by which the median give-out torque grows
	Flank   axle.Flank `json:"flank"`  // the one that loads it
	Text    string     `json:"text"`
	Curve   []PegPoint `json:"curve"`
}

// A PegPoint is one torque of the peg curve, on the flank that loads the peg.
type PegPoint struct {
	Torque  float64 `json:"torque"`  // N·m
	Load    float64 `json:"load"`    // N, on the pad
	With    float64 `json:"with"`    // m, movement of the wheel with the peg
	Without float64 `json:"without"` // m, and without
}

// A Rule is a piece of advice that does not come from the sums.
type Rule struct {
	Because   string `json:"because"` // the use or fault that calls for it
	Text      string `json:"text"`
	Overrides bool   `json:"overrides"` // it changed the recommendation
}

// A Share is one figure's part in the doubt of the recommended build's give-out torque.
type Share struct {
	Figure string      `json:"figure"` // in words
	Place  string      `json:"place"`
	Share  float64     `json:"share"` // 0..1 of the variance
	Origin axle.Origin `json:"origin"`
}

// Narrow is one measurement worth making.
type Narrow struct {
	How     string   `json:"how"`
	Figures []string `json:"figures"`
	Cost    float64  `json:"cost"`     // of the shop's own money
	Before  float64  `json:"before"`   // N·m, width of the 10 to 90 % band
	After   float64  `json:"after"`    // N·m, expected
	PerCost float64  `json:"per_cost"` // N·m a unit of money
}

// A BearingShare is what one bearing carries at the peak, by flank.
type BearingShare struct {
	Bearing     string  `json:"bearing"`
	DriveRadial float64 `json:"drive_radial"` // N
	DriveAxial  float64 `json:"drive_axial"`  // N, pressing the rollers into the cup
	CoastRadial float64 `json:"coast_radial"`
	CoastAxial  float64 `json:"coast_axial"`
}
