package casting

import "axlewright/calc/material"

// Verdict is where an identification stands.
type Verdict string

// The verdicts.
const (
	SureEnough     Verdict = "sure enough"
	Likely         Verdict = "likely"
	Open           Verdict = "open"
	NoneOfThese    Verdict = "none of these"
	ModifiedBefore Verdict = "modified before"
)

// An Identification is the answer to "what is this casting?". It is complete:
// what is printed or drawn is taken from it and from nothing else.
type Identification struct {
	Casting        string          `json:"casting"`
	Verdict        Verdict         `json:"verdict"`
	Sentence       string          `json:"sentence"`
	Do             []string        `json:"do"`                   // what to do now, one instruction a line
	Enough         bool            `json:"enough"`               // nothing more need be looked at for the kit's sake
	Why            string          `json:"why"`                  // why it is enough, or not
	Again          string          `json:"look_again,omitempty"` // feature to look at again before anything else
	Ranked         []Candidate     `json:"ranked"`               // the likeliest first; "none of these" among them
	New            NewVariantSigns `json:"new_variant"`
	Modified       ModifiedSigns   `json:"modified_before"`
	Evidence       []Weighed       `json:"evidence"` // for and against the leader, the heaviest first
	Unseen         []string        `json:"cannot_see,omitempty"`
	Missing        []string        `json:"not_looked_at,omitempty"`
	Contradictions []Contradiction `json:"contradictions,omitempty"`
	Warnings       []string        `json:"warnings,omitempty"`
	Questions      []Question      `json:"questions,omitempty"` // the best first
	Metal          MetalFinding    `json:"metal"`
	Stops          []Stop          `json:"stops,omitempty"`
}

// A Candidate is one thing that the casting may be.
type Candidate struct {
	Variant string          `json:"variant"`
	Chance  float64         `json:"chance"`
	Kit     string          `json:"kit,omitempty"`
	Metal   material.Family `json:"metal,omitempty"`
	Seen    float64         `json:"seen"` // castings confirmed before
}

// NewVariantSigns is what speaks for a variant that the catalogue does not know.
type NewVariantSigns struct {
	Chance  float64  `json:"chance"`
	Like    string   `json:"like,omitempty"`    // the known variant it would be the sister of
	Differs []string `json:"differs,omitempty"` // features in which it would differ from that
}

// ModifiedSigns is what speaks for an earlier repair.
type ModifiedSigns struct {
	Chance  float64  `json:"chance"`
	Signs   []string `json:"signs,omitempty"`
	Demands []string `json:"demands,omitempty"` // what must be done before anything else
}

// A Weighed piece of evidence says how much it speaks for or against the leader.
type Weighed struct {
	Feature   string   `json:"feature"`
	Said      string   `json:"said"`
	Trust     float64  `json:"trust"`    // how far the reading is believed at all
	Decibans  float64  `json:"decibans"` // above zero for the leader
	Strength  string   `json:"strength"`
	Sentence  string   `json:"sentence"`
	Disproves []string `json:"disproves,omitempty"` // variants that it speaks strongly against
}

// A Contradiction is a reading that does not go with the leader.
type Contradiction struct {
	Feature  string  `json:"feature"`
	Said     string  `json:"said"`
	Expected string  `json:"expected"`
	Misread  float64 `json:"misread"` // chance, if the leader is right, that it was misread or is not this casting's own
	Sentence string  `json:"sentence"`
}

// A Stop holds the work until somebody answers for going on.
type Stop struct {
	What     string `json:"what"`
	Why      string `json:"why"`
	Overrule string `json:"overrule"` // who may, and how
}

// A Question is a look or a measurement that is still to be had.
type Question struct {
	Feature  string    `json:"feature"`
	Ask      string    `json:"ask"`
	Tool     string    `json:"tool"`
	Cost     float64   `json:"cost"`  // 1 is a measurement with a caliper
	Bits     float64   `json:"bits"`  // expected information about what the casting is
	Gain     float64   `json:"gain"`  // expected rise of the chance of being right
	Worth    bool      `json:"worth"` // the rise is worth more than the trouble
	Outcomes []Outcome `json:"outcomes,omitempty"`
	Sketch   string    `json:"sketch,omitempty"`
	Caution  string    `json:"caution,omitempty"`
}

// An Outcome is what one answer to a question would mean.
type Outcome struct {
	Says      string   `json:"says"`
	Chance    float64  `json:"chance"`
	Leads     string   `json:"leads"`               // the likeliest after it
	After     float64  `json:"after"`               // its chance then
	Disproves []string `json:"disproves,omitempty"` // what it would rule out
}
