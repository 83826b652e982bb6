package shop

import (
	"axlewright/quantity"
)

// StepKey names a step: "lash".
type StepKey string

// A Step is one of the things a unit goes through. Steps are the same for all
// jobs and are filled in any order.
type Step struct {
	Key      StepKey
	Title    string   // in the fitter's words
	Decides  string   // one sentence: what is found out or done here
	Pictures []string // keys of its line drawings, in the order they are wanted
	For      []Work   // belongs only to jobs with one of these works; empty is every job
	Cautions []string // two lines at most, shown at the step
	Fields   []Field
	Papers   []Paper // what may be printed from here
	Mistake  string  // the usual mistake and what it costs
}

// A Field is one box to fill at a step.
type Field struct {
	Key      string
	Title    string
	Hint     string // how to measure it, what to look at
	Kind     FieldKind
	Optional bool // leaving it empty is no gap
	For      []Work

	// Figure.
	Dim    quantity.Dimension
	Unit   string  // what the shop usually types: "mm"
	Bands  []Band  // ranges of package setup; the first whose When holds is judged against
	Whole  bool    // less than nothing is no answer: a weight, a shim
	Limits []Limit // bands of the trade for what setup does not know; the shop's own spec goes before them

	// Several places: places round the wheel, stations, pieces. Empty is one place without a name.
	Places []string
	Wanted int  // how many places to fill before it is no gap; 0 is all
	Open   bool // places beyond the list may be named freely
	Run    bool // of one run of weld, which its place names: filled at the weld log, not at the step

	Options []Option // Choice, Choices
	Card    CardKind // Link
	Lot     LotKind  // Part
}

// FieldKind is what a field holds.
type FieldKind string

// The kinds of field, and the part of Value that each fills.
const (
	FieldFigure  FieldKind = "figure"  // Typed, SI, Dim
	FieldChoice  FieldKind = "choice"  // Words, exactly one of Options
	FieldChoices FieldKind = "choices" // Words, any of Options
	FieldText    FieldKind = "text"    // Text
	FieldDay     FieldKind = "day"     // Day
	FieldSum     FieldKind = "sum"     // Sum
	FieldLink    FieldKind = "link"    // Link to a card of kind Card
	FieldPart    FieldKind = "part"    // Link to a lot of kind Lot, Quantity, Reserved
)

// An Option is one word of a choice and what it means for the unit.
type Option struct {
	Word    string
	Verdict Verdict // NotYet where the word is neither good nor bad
	Says    string  // why, where it is not fine
	Picture string  // key of its line drawing; empty where the word is enough
}

// A Limit is the range in which a figure is fine, in SI, and where the range
// comes from. An open end is nil.
type Limit struct {
	Low    *float64 `json:"low,omitempty"`
	High   *float64 `json:"high,omitempty"`
	Typed  string   `json:"typed,omitempty"` // as the shop wrote its own: "5 to 9 thou"
	Kind   string   `json:"kind,omitempty"`  // of which axles: "light 4x4 with adjusters"
	Origin Origin   `json:"origin"`
	Source string   `json:"source"`          // in words; a page of the shop's own manual
	Hard   bool     `json:"hard,omitempty"`  // outside is a stop, not only a look
	When   *When    `json:"when,omitempty"`  // it holds only where this word was chosen
	Vague  bool     `json:"vague,omitempty"` // it spans several kinds of axle, because the kind is not known: inside is not yet fine
}

// When is a condition on another field of the same step.
type When struct {
	Field string `json:"field"`
	Word  string `json:"word"`
}

// Verdict is what there is to say about a reading.
type Verdict string

// The verdicts, each with its sign in Sign.
const (
	NotYet Verdict = "not yet"
	Fine   Verdict = "fine"
	Look   Verdict = "look"
	Halt   Verdict = "stop"
)

// Sign is the sign that stands beside the word.
func (v Verdict) Sign() string {
	switch v {
	case Fine:
		return "✓"
	case Look:
		return "△"
	case Halt:
		return "✕"
	}
	return "·"
}

// Worst orders verdicts: a stop outweighs a look, a look a fine.
func Worst(a, b Verdict) Verdict {
	for _, v := range []Verdict{Halt, Look, Fine} {
		if a == v || b == v {
			return v
		}
	}
	return NotYet
}

// Work is what is done to a unit beyond a rebuild as standard.
type Work string

// The works.
const (
	WorkFixings Work = "better fixings"
	WorkPeg     Work = "peg"
	WorkPlates  Work = "plates"
	WorkBearing Work = "big pinion bearing"
)

// Works lists them in the order in which they are offered.
var Works = []Work{WorkFixings, WorkPeg, WorkPlates, WorkBearing}

// State is where a job stands.
type State string

// The states. A job may go from any to any other; the record shows the way.
const (
	StateEnquiry  State = "enquiry"
	StateQuoted   State = "quoted"
	StateAccepted State = "accepted"
	StateBench    State = "on the bench"
	StateWaiting  State = "waiting"
	StateReady    State = "ready"
	StateOut      State = "handed over"
	StateBack     State = "come back"
	StateDeclined State = "declined"
	StateScrapped State = "scrapped"
)

// States lists them in the order of a job's life.
var States = []State{StateEnquiry, StateQuoted, StateAccepted, StateBench, StateWaiting, StateReady, StateOut,
	StateBack, StateDeclined, StateScrapped}

// Paper names a paper of the job.
type Paper string

// The papers.
const (
	PaperEnquiry        Paper = "enquiry sheet"
	PaperRecommendation Paper = "recommendation"
	PaperQuote          Paper = "quote"
	PaperDonorTag       Paper = "donor tag"
	PaperIdentification Paper = "identification card"
	PaperWeldLog        Paper = "weld log"
	PaperSetUpSheet     Paper = "set-up sheet"
	PaperBuildRecord    Paper = "build record"
	PaperCertificate    Paper = "certificate"
	PaperCare           Paper = "care sheet"
	PaperReturn         Paper = "return form"
	PaperRecord         Paper = "record" // every entry, in the order of writing
)
